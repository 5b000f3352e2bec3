/* Trips told by the clock: "leave at 8, at the lake by 9:30, stay till 2, home by 3:30". Part of
 * spans.c. Pure. */
#ifndef CLOCK_CHAIN_H
#define CLOCK_CHAIN_H

#include "spans.h"

/* True if three times or more tell the legs, which are added with their kinds; marks them as
 * spent. Sets ready_by if the half of the day of the first is told. */
bool clock_chain_read(struct items *items, struct told *told, struct spans *spans);

#endif
