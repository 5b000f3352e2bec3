/*
 * What the number behind "no, sorry" puts right, and what it is not of. Items `old` and `number`
 * are what was told before and after the item `correction`. Part of corrections.c. Pure.
 */
#ifndef CORRECTED_H
#define CORRECTED_H

#include "items.h"

/* "6 with the dinner", "6 con la cena": what a length grows by; "6 with 2 full" is none of it. */
bool corrected_with_something(const struct items *items, size_t at);
/* "3 hrs actually flying. I got a half one": the number is of what is told next. */
bool corrected_is_next_sentence(const struct items *items, size_t correction, size_t number);
/* "40 min there and 40 back, no, an hour back": the way back alone, told as a bare number, which is
 * marked as spent. */
bool corrected_way_back(struct items *items, size_t correction, size_t number);
/* "unplugged 20 min ago at 100, no, 92": a charge, which stands nearer than the length. */
bool corrected_is_charge(const struct items *items, size_t old, size_t correction);
/* "60 % on 2, sorry, 3": the setting, which stands nearer than the charge. */
bool corrected_is_setting(const struct items *items, size_t old, size_t correction, size_t number);

#endif
