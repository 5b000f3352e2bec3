/* Between clocks.c, which finds the clock times, and clock_days.c. */
#ifndef CLOCK_PARTS_H
#define CLOCK_PARTS_H

#include "items.h"

/* Sets the half of the day and the day of a clock time: words behind the time belong to it; then
 * those of its clause that no other time is nearer to. */
void clock_complete(struct items *items, size_t at);

#endif
