/*
 * How charging goes. Pure arithmetic.
 *
 * A lithium battery takes a constant current to about 80 %, then a constant voltage with a current
 * that falls until it is a twentieth of the capacity (facts A4, published charging guides). So the
 * first 80 % go straight up and the rest ever slower: of the minutes between 80 % and full, a
 * charge of x has used
 *
 *   share = -ln(1 - 0.9 (x - 80 %) / 20 %) / ln 10
 *
 * (exact for a charger of half the capacity an hour; others differ by little). The minutes to 80 %
 * and to full are the equipment file's. Who needs a charge is told the high end, who has some time
 * is promised the low one.
 */
#ifndef CHARGING_H
#define CHARGING_H

#include <stdbool.h>
#include <stddef.h>

#include "equipment.h"
#include "interval.h"

/* Minutes from a charge of `from` to `to` percent; nothing if it is there already. */
struct minutes charging_time(const struct charge_minutes *rate, struct percent from, int to);

/* The charge after `minutes` on the charger. */
struct percent charging_level(const struct charge_minutes *rate, struct percent from, int minutes);

/*
 * What one minute more surely adds at this charge, both in PERCENT_PARTS of a percent; for playing
 * a charge minute by minute.
 */
enum { PERCENT_PARTS = 100000 };
int charging_minute(const struct charge_minutes *rate, int charge);

enum { CHARGING_BATTERIES_MAX = 12, CHARGING_PLACES_MAX = 4 };

/* One battery's turn on a charger. */
struct charging_step {
    size_t battery;       /* index into the charges given */
    size_t place;         /* index into the places: the unit, a charger of its own */
    struct minutes start; /* from now */
    struct minutes end;
};

struct charging_plan {
    struct charging_step steps[CHARGING_BATTERIES_MAX]; /* by time of start, per place in turn */
    size_t count;
    struct minutes all_done; /* from now until the last one is there */
};

/*
 * Puts batteries on chargers one after the other until all are at `to` percent: the emptiest first,
 * each where it is done soonest. Those that are there already take no turn. `places` holds what
 * each charger needs, at least one; at most CHARGING_BATTERIES_MAX batteries and
 * CHARGING_PLACES_MAX places.
 */
void charging_plan(const struct percent *charges, size_t count, const struct charge_minutes *places,
                   size_t place_count, int to, struct charging_plan *plan);

/*
 * What they will have after `minutes` by that plan, with nobody changing batteries but between
 * steps; `after` has room for `count`.
 */
void charging_levels_after(const struct charging_plan *plan, const struct percent *charges,
                           size_t count, const struct charge_minutes *places, int minutes,
                           struct percent *after);

#endif
