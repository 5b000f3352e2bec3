/*
 * Run time of batteries. Pure arithmetic: no clock, no I/O, no allocation.
 *
 * Every quantity is a closed interval. A renter may plan on `low`; results are rounded outwards
 * (low down, high up), so an interval never claims too much ("have low, need high").
 */
#ifndef BATTERY_TIME_H
#define BATTERY_TIME_H

#include <stdbool.h>

#include "interval.h"

/*
 * Minutes that one battery still lasts: full x health x charge (a product of shares; the physics is
 * runtime = rated energy x health x usable / load, common practice).
 *
 *   full    what one new battery lasts at this mode and setting (equipment file)
 *   health  measured capacity as a share of a new battery's
 *   charge  what the gauge shows; two lights of four are {25, 50}
 *
 * Cannot fail: intervals are checked where they are read in, so a bad one here is a bug (assert).
 */
struct minutes battery_time(struct minutes full, struct percent health, struct percent charge);

/* a + b, end by end. */
struct minutes minutes_sum(struct minutes a, struct minutes b);

/*
 * What is left after `elapsed` minutes. They count fully against the low end, and against the high
 * end only if the unit is known to have run on battery all that time. Never below zero.
 */
struct minutes minutes_after(struct minutes left, int elapsed, bool on_battery);

/* Minutes to keep in hand before a plug must be reached: 15 min or 20 %, the greater, at most all.
 */
int plug_reserve(int low_minutes);

#endif
