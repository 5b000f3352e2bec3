/*
 * What a trip plan costs, against one Jansson parse of a webhook's request: the plan from what is
 * told to the outcome, and with it what would mend the trip.
 *
 *     trip_speed [TIMES]      exits 1 if a plan costs more than TIMES parses (15)
 *
 * The machine may be shared: each time is the least of several rounds.
 */
#include <stdio.h>
#include <stdlib.h>
#include <time.h>

#include <jansson.h>

#include "trip_plan.h"

enum { ROUNDS = 40, TURNS = 500 };

static const char request[] =
    "{\"id\":\"m-000123\",\"from\":\"+12085550123\",\"to\":\"+12085550100\",\"body\":\"hi, we are "
    "heading up to the lake tomorow and my husband wants to know how long the battries will last "
    "on setting 2 and whether we can charge them in the car??\",\"at\":\"2026-02-03T03:12:45Z\"}";

/* One battery of a 2 L/min unit lasts 45 to 54 minutes (common practice, no source). */
static const struct run_time run_times[] = {{MODE_CONTINUOUS, 20, {45, 54}, true, false, 100}};

static const struct equipment unit = {
    .run_times = run_times,
    .run_time_count = 1,
    .retirement_health = 80,
    .charging_running = {true, {180, 240}, {300, 390}},
    .car = {.known = true, .runs = true},
    .batteries_held = 1,
};

/* A day out: 1 h 40 there, 3 h plugged in, a walk, 1 h 40 back; two batteries. */
static const struct told day_out = {.kind = TOLD_TRIP,
                                    .leg_count = 4,
                                    .legs = {{100, LEG_DRIVE, POWER_SOURCE_NONE},
                                             {180, LEG_WAIT, POWER_SOURCE_WALL},
                                             {60, LEG_OTHER, POWER_SOURCE_NONE},
                                             {100, LEG_DRIVE, POWER_SOURCE_NONE}}};
static const struct percent charges[] = {{100, 100}, {50, 75}};

static struct rental
renter(void)
{
    struct rental rental = {.battery_count = 2, .car_charger = true};

    rental.orders[ACTIVITY_REST] = (struct order){.known = true, .setting_tenths = 20};
    return rental;
}

static double
seconds(void)
{
    struct timespec now;

    clock_gettime(CLOCK_MONOTONIC, &now);
    return (double)now.tv_sec + (double)now.tv_nsec / 1e9;
}

static void
parse(const struct rental *rental)
{
    (void)rental;
    json_decref(json_loads(request, JSON_REJECT_DUPLICATES, NULL));
}

static void
must(bool is_so)
{
    if (!is_so) {
        fprintf(stderr, "trip_speed: the plan is not what it should be\n");
        exit(1);
    }
}

static void
plan(const struct rental *rental)
{
    struct trip_outcome outcome;
    struct trip_plan planned;

    must(trip_plan_make(rental, &unit, &day_out, charges, 2, 0, TRIP_PLAN_LOW, &planned) ==
         TRIP_PLAN_READY);
    trip_play(&planned.trip, &outcome);
    must(!outcome.lasts && outcome.total_minutes == 440);
}

static void
plan_and_mend(const struct rental *rental)
{
    struct trip_plan planned;

    plan(rental);
    (void)trip_plan_make(rental, &unit, &day_out, charges, 2, 0, TRIP_PLAN_LOW, &planned);
    must(trip_mend(&planned.trip, 80) == TRIP_MEND_CAR_CORD ||
         trip_mend(&planned.trip, 80) == TRIP_MEND_TWO_BATTERIES);
}

static double
time_of(void (*once)(const struct rental *rental), const struct rental *rental)
{
    double least = 1e9;
    int round, turn;

    for (round = 0; round < ROUNDS; round++) {
        double start = seconds(), took;

        for (turn = 0; turn < TURNS; turn++) {
            once(rental);
        }
        took = (seconds() - start) / TURNS;
        least = took < least ? took : least;
    }
    return least;
}

int
main(int count, char **arguments)
{
    const struct rental rental = renter();
    double limit = count > 1 ? strtod(arguments[1], NULL) : 15;
    double one_parse = time_of(parse, &rental), one_plan = time_of(plan, &rental);
    double mended = time_of(plan_and_mend, &rental);

    printf("one parse of a webhook request: %.2f us\n", 1e6 * one_parse);
    printf("  a trip of 4 legs, 7 h 20 min, planned  %6.2f us = %4.1f parses\n", 1e6 * one_plan,
           one_plan / one_parse);
    printf("  and what would mend it                 %6.2f us = %4.1f parses\n", 1e6 * mended,
           mended / one_parse);
    return one_plan <= limit * one_parse ? 0 : 1;
}
