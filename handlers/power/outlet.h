/*
 * What an outlet must give. Pure arithmetic.
 *
 *   watts to charge  = 80 % of a battery's watt-hours in the hours that it takes to 80 %
 *   watts at 12 volt = watts of the unit and of charging / 0.85
 *
 * Through a cord that changes the voltage about 85 % arrive, and of what a fuse of the car holds
 * 80 % may be drawn for long (facts A5, common practice). An inverter is rated a quarter above what
 * it feeds (the same).
 */
#ifndef OUTLET_H
#define OUTLET_H

#include <stdbool.h>

#include "equipment.h"

/* Most watts that charging draws at this rate; 0 if the file gives no watt-hours. */
int outlet_charge_watts(const struct equipment *equipment, const struct charge_minutes *rate);

/* The fuse, in amperes at 12 volts, that so many watts need. */
int outlet_fuse_amps(int watts);

/* `watts`, through the cord, are no more than `amps` at 12 volts give. */
bool outlet_feeds(int amps, int watts);

/* The rating of an inverter for so many watts. */
int outlet_inverter_watts(int watts);

#endif
