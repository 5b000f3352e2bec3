/* Charging put together (charge_time.c) and said (charge_time_say.c). Private to the two. */
#ifndef CHARGE_TIME_PARTS_H
#define CHARGE_TIME_PARTS_H

#include "estimate_parts.h"
#include "timetable.h"

enum charge_place { PLACE_RUNNING, PLACE_OFF, PLACE_APART };

struct charge_sum {
    const struct told *told;
    struct charges charges;
    bool from_car;
    enum charge_place is[CHARGING_PLACES_MAX];
    struct charge_minutes places[CHARGING_PLACES_MAX];
    size_t place_count;
    int fuse_amps;                    /* of the car's outlet; 0 if not known */
    struct charging_plan full, to_80; /* one after the other, whoever gets up for it */
    bool for_plan;   /* who puts them on when is said, so their chargers count too */
    int off_minutes; /* until all are full in the unit while it is off; 0 if that is no question */
    int apart_minutes; /* the same with their chargers too */
    int night_from;    /* as for timetable_make() */
};

/*
 * Each gives `answer` its text, with what was read, and its extras.
 */

/* "All 3 full in up to 6 h, by about 1:10 am if you start now ..." */
void charge_say_when(const struct asked *asked, const struct charge_sum *sum,
                     struct answer *answer);
/* "After 1 h 30 min plan on at least 85%." */
void charge_say_after(const struct asked *asked, const struct charge_sum *sum, int minutes,
                      struct answer *answer);
/* "Plan: now 20% in the unit; ... At 6:30 am plan on at least 100%, 85%." */
void charge_say_plan(const struct asked *asked, const struct charge_sum *sum, int until,
                     struct answer *answer);

#endif
