/*
 * From what is told, the record and the unit to a trip that trip.h can play. Pure.
 *
 * Each leg counts with what is ordered for what they do on it: a hike with the order for walking, a
 * drive or a stay with the one for rest, a flight with its own; of what is not told, the most
 * draining one. Who tells a mode or setting is counted with that. Once there they may rest: what is
 * left counts with that order or the last leg's, whichever drains more. Cold takes its share of the
 * run time (the unit's cold table; facts A4), and below the unit's charging temperatures, or below
 * 0 C, an outlet charges nothing (facts A4). What the record has no cord for is no power.
 */
#ifndef TRIP_PLAN_H
#define TRIP_PLAN_H

#include "running.h"
#include "trip.h"

enum trip_plan_is {
    TRIP_PLAN_READY,
    TRIP_PLAN_NO_ORDER,  /* nothing is ordered for what they do on a leg; `running` tells what */
    TRIP_PLAN_NO_FIGURE, /* the unit's file has no time, temperature or health for it */
    TRIP_PLAN_WALL_ONLY  /* what is ordered on a leg runs from the wall alone */
};

/* What they have is counted with the low end; the high end is what may be at best. */
enum trip_plan_end { TRIP_PLAN_LOW, TRIP_PLAN_HIGH };

struct trip_plan {
    struct trip trip; /* points into this plan: do not copy it */
    struct trip_leg legs[TRIP_LEGS_MAX];
    struct trip_battery batteries[TRIP_BATTERIES_MAX];
    /* Of the leg that lacks something; else of one that differs, else of the one on battery that
     * drains most. */
    struct running running;
    struct running on[TRIP_LEGS_MAX];
    struct running after; /* what is left is counted with this */
    bool differs;         /* what runs on some leg is not what is ordered */
    bool too_high;        /* a height is told that the unit is not made for */
    bool no_car_cord;     /* the car was told as power, and the record has no cord */
    int cold_percent;     /* share of the run time that counts; 100 if no cold is told */
};

/*
 * `told` has 1 to TRIP_LEGS_MAX legs; `charges` are of 1 to TRIP_BATTERIES_MAX batteries in the
 * order in which they are used. The fullest are paired with the record's weakest batteries for the
 * low end, with its best for the high end.
 */
enum trip_plan_is trip_plan_make(const struct rental *rental, const struct equipment *equipment,
                                 const struct told *told, const struct percent *charges,
                                 size_t count, int64_t now_utc_s, enum trip_plan_end end,
                                 struct trip_plan *plan);

#endif
