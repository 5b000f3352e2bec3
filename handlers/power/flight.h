/*
 * Batteries for a flight. Pure arithmetic; what a person needs is rounded up.
 *
 * An airline may require enough charged batteries for 150 % of the expected maximum flight
 * duration, by the maker's estimate: 14 CFR 382.133(h)(2). That duration is gate to gate and the
 * airline's figure (382.3): the ticket's time in the air is only its least. The 150 % is of each
 * flight; the time on the ground between and before them comes on top once. Seat power counts as
 * nothing (common practice).
 */
#ifndef FLIGHT_H
#define FLIGHT_H

#include <stdbool.h>
#include <stddef.h>

#include "interval.h"

enum { FLIGHT_MINUTES_MAX = 2880 };

/* Minutes of battery that `count` flights of these gate-to-gate minutes need, and the ground. */
int flight_need(const int *gate_to_gate, size_t count, int ground_minutes);

/*
 * How many of the batteries it takes to last `need` minutes: `lasts` holds each battery's minutes,
 * fullest first; when they run out, further ones of `another` minutes are counted. `another` is
 * above 0.
 */
int flight_batteries(int need, const int *lasts, size_t count, int another);

/*
 * What a battery's energy means for passengers: 49 CFR 175.10(a)(18) and the FAA's page for them.
 * The rated watt-hours printed on the case decide; volts x amp-hours only without them.
 */
enum watt_hours {
    WATT_HOURS_UNKNOWN,
    WATT_HOURS_FREE,     /* to 100 Wh: any number for one's own use */
    WATT_HOURS_APPROVAL, /* above 100 to 160 Wh: the airline's approval, two spares at most */
    WATT_HOURS_REFUSED   /* above 160 Wh */
};

enum { SPARES_WITH_APPROVAL = 2 };

/* Each 0 if not known. */
enum watt_hours flight_watt_hours(double rated_wh, double volts, double amp_hours);

/* Most batteries one person may bring, `held` of them in the unit; -1 for no limit in number. */
int flight_batteries_allowed(enum watt_hours class, int held);

#endif
