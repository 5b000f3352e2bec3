/*
 * How long something has run, told in other ways than "2 hours ago". Part of times.c and
 * corrections.c. Pure.
 */
#ifndef ELAPSED_H
#define ELAPSED_H

#include "items.h"

/* "an hour ago, maybe an hour and a half": the longer holds, and is told no second time. Before
 * clocks_make(). */
void elapsed_take_longer(struct items *items);

/* "the power has been out since noon so 3 hours": the length at `at` counts from then. */
bool elapsed_since(const struct items *items, size_t at);

/* "it has been on battery for 45 min", "off the charger 30 min", "for half an hour she has been on
 * the battery": how long it has run or charged so. */
bool elapsed_on_power(const struct items *items, size_t at);
/* "can it be off the charger 30 min?": still to come */
bool length_is_wished(const struct items *items, size_t at);

#endif
