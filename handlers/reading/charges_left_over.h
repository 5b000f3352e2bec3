/*
 * Numbers that nobody took and that nothing says to be of another thing: they are the charges of
 * batteries that are counted, if there are as many of the one as of the other, or of one or two
 * where hours are asked for and no battery is told of. Part of charges.c. Pure.
 */
#ifndef CHARGES_LEFT_OVER_H
#define CHARGES_LEFT_OVER_H

#include "items.h"
#include "told.h"

/* Fills told->charges, which must be empty, and takes those from told->count, at most
 * TOLD_BATTERIES_MAX; the first item taken, items->count if none was. */
size_t charges_left_over(struct items *items, struct told *told);

/* A number above the hours that nobody took and that nothing says to be of another thing. */
bool nobody_took(const struct items *items, size_t at);

#endif
