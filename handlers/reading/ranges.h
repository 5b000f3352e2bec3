/* Two numbers that are the ends of one range. Part of amounts.c. Pure. */
#ifndef RANGES_H
#define RANGES_H

#include "items.h"

/* Makes one number of the one at `at` and its upper end, if they are a range. */
void range_join(struct items *items, size_t at);

#endif
