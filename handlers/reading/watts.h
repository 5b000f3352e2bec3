/*
 * What a text tells of a source of power: "a 300 watt inverter", "power bank 20000 mAh 3.7 V",
 * "estacion de 1 kWh". Pure. Apart from told.h: nothing else there needs it.
 */
#ifndef WATTS_H
#define WATTS_H

#include <stdbool.h>

#include "tokens.h"

struct watts_told {
    int watts;        /* that it gives for long, the least that is told; 0 if none is */
    bool is_peak;     /* those are of a peak: what it gives for long is less, and not told */
    int tenths_wh;    /* that it holds, in tenths of a watt-hour; 0 if it is not told */
    bool lacks_volts; /* amp-hours are told without the volts that make watt-hours of them */
};

/*
 * Watt-hours as told, which are the label's; else volts x amp-hours, rounded down. Watts of a peak
 * ("600 W peak") count only if no others are told.
 */
void watts_read(const struct tokens *tokens, struct watts_told *told);

#endif
