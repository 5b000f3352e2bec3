/*
 * Batteries that are counted and numbers that nobody took: if there are as many of the one as of
 * the other, and nothing says what else a number could be, they are the charges. Part of charges.c.
 * Pure.
 */
#ifndef CHARGES_LEFT_OVER_H
#define CHARGES_LEFT_OVER_H

#include "items.h"
#include "told.h"

/* Fills told->charges of told->count; the first item taken, items->count if none was. */
size_t charges_left_over(struct items *items, struct told *told);

/* A number above the hours that nobody took and that nothing says to be of another thing. */
bool may_be_charge(const struct items *items, size_t at);

#endif
