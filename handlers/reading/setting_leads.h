/*
 * What leads to a setting ("set on 2", "the order says 3", "2 is my number"), and what says of a
 * number that it is none. Part of settings.c. Pure.
 */
#ifndef SETTING_LEADS_H
#define SETTING_LEADS_H

#include "items.h"

enum { TENTHS_MAX = 100 }; /* of a setting */

/* What stands at `at`, right behind a number, says that it counts something. */
bool counts_something(const struct items *items, size_t at, bool strong);
/* "en 2 carros": a noun that is none of ours */
bool counts_plural(const struct items *items, size_t at);
/* Words before a number lead to it as a setting; *strong if they can mean nothing else. */
bool is_led(const struct items *items, size_t at, bool *strong);
/* "2 pulse" */
bool leads_mode(const struct items *items, size_t at);
/* "3 on the dial", "2 is my number" */
bool is_before_setting(const struct items *items, size_t at);
/* "caminando con 3", "walking at 2": the setting that one does it on. */
bool is_behind_activity(const struct items *items, size_t at);
/* "my order says 2", "la receta dice 3": what is ordered or written, not what is shown. */
/* "caminando con 3", "walking at 2": the setting that one does it on. */
bool is_behind_activity(const struct items *items, size_t at);
bool is_ordered(const struct items *items, size_t at);

/* "if he goes down to 1": a person turns the dial, and is not down to a charge. */
bool is_turned_by_person(const struct items *items, size_t at);
/* "I am using number 2", "uso el numero 3": no battery, for nothing is told of it. */
bool is_number_used(const struct items *items, size_t at);

#endif
