/*
 * Whether a bare number is told of a battery: by the words that lead from it to one ("the other is
 * at 8", "machine 64", "la tres tiene 15"), or because it is joined to a charge ("62 and a full
 * one"). Part of bare_numbers.c. Pure.
 */
#ifndef TOLD_OF_H
#define TOLD_OF_H

#include "items.h"

/* `after` is the item behind the number and what belongs to it. */
bool is_told_of_battery(const struct items *items, size_t at, size_t after);
bool is_joined_to_charge(const struct items *items, size_t at, size_t after);

#endif
