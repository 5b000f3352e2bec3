/*
 * Power that is neither the wall's nor the car's: an inverter, a generator, a power station. Pure
 * arithmetic on intervals.
 *
 *   the unit takes   from what it runs on, to that and charging (outlet.h) together
 *   a source needs   1.25 x the most it takes (outlet_inverter_watts(); facts A5)
 *   a battery lasts  watt-hours / watts taken; at the least 90 % of it can be used (facts A3) and
 *                    85 % of that arrive (facts A5, both common practice)
 */
#ifndef SOURCE_H
#define SOURCE_H

#include <stdbool.h>

#include "interval.h"

struct watts {
    int low, high; /* 0 < low <= high */
};

/* `charge_watts` is 0 where it cannot charge while it runs. */
struct watts source_takes(int unit_watts, int charge_watts);

/* So many watts are enough, whatever the unit does. */
bool source_is_enough(int watts, struct watts takes);

/* How long so many tenths of a watt-hour feed it; at most SOURCE_MINUTES_MAX. */
enum { SOURCE_MINUTES_MAX = 6000 };
struct minutes source_lasts(int tenths_wh, struct watts takes);

#endif
