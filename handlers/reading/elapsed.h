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

/* "for half an hour now she has been on the battery": how long is told before what has been so. */
bool elapsed_has_been_so(const struct items *items, size_t at);

#endif
