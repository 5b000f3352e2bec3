#include "trip_plan.h"

#include <assert.h>

#include "battery_set.h"
#include "cold.h"

/* The foot is 0.3048 m exactly (NIST SP 811). */
enum { FEET_PER_10000_M = 32808, NO_CHARGE_BELOW_CELSIUS = 0 };

/* ---- cold and height ------------------------------------------------------------------------- */

static int
told_feet(const struct told *told)
{
    if (told->altitude_ft.told) {
        return told->altitude_ft.value;
    }
    return told->altitude_m.told
               ? (int)((told->altitude_m.value * (long long)FEET_PER_10000_M + 9999) / 10000)
               : 0;
}

/* False if no number can be given for such a temperature. */
static bool
take_surroundings(const struct equipment *equipment, const struct told *told,
                  struct trip_plan *plan)
{
    struct trip *trip = &plan->trip;
    int celsius;

    plan->too_high = equipment->altitude_ft > 0 && told_feet(told) > equipment->altitude_ft;
    plan->cold_percent = 100;
    if (!cold_told(told, &celsius)) {
        return true;
    }
    if (celsius < NO_CHARGE_BELOW_CELSIUS ||
        (equipment->charging.known && celsius < equipment->charging.low_celsius)) {
        trip->wall.charges = trip->car.charges = false;
    }
    return cold_share(equipment, celsius, &plan->cold_percent);
}

/* ---- outlets and batteries ------------------------------------------------------------------- */

static void
take_outlets(const struct equipment *equipment, struct trip *trip)
{
    bool charges = equipment->charging_running.known;

    trip->wall =
        (struct trip_outlet){.runs = true, .charges = charges, .rate = equipment->charging_running};
    trip->car = (struct trip_outlet){.runs = equipment->car.known && equipment->car.runs,
                                     .charges = charges && equipment->car.known &&
                                                equipment->car.both_at_once,
                                     .rate = equipment->charging_running};
}

/* Upwards; sets are tiny. */
static size_t
healths(const struct rental *rental, const struct equipment *equipment, size_t count,
        int64_t now_utc_s, int *sorted)
{
    size_t used = 0, i, at;

    for (i = 0; i < rental->battery_count || i < count; i++) {
        int health =
            i < rental->battery_count
                ? battery_health(&rental->batteries[i], equipment->retirement_health, now_utc_s)
                : equipment->retirement_health;

        for (at = used++; at > 0 && sorted[at - 1] > health; at--) {
            sorted[at] = sorted[at - 1];
        }
        sorted[at] = health;
    }
    return used;
}

/* How many come before this one when the fullest is first. */
static size_t
rank(const struct trip_battery *batteries, size_t count, size_t which)
{
    size_t before = 0, i;

    for (i = 0; i < count; i++) {
        before += batteries[i].charge > batteries[which].charge ||
                  (i < which && batteries[i].charge == batteries[which].charge);
    }
    return before;
}

static bool
take_batteries(const struct rental *rental, const struct equipment *equipment,
               const struct percent *charges, size_t count, int64_t now_utc_s,
               enum trip_plan_end end, struct trip_plan *plan)
{
    int sorted[TRIP_BATTERIES_MAX + RENTAL_BATTERIES_MAX];
    size_t used = healths(rental, equipment, count, now_utc_s, sorted), i;

    for (i = 0; i < count; i++) {
        plan->batteries[i].charge = end == TRIP_PLAN_LOW ? charges[i].low : charges[i].high;
    }
    for (i = 0; i < count; i++) {
        size_t at = rank(plan->batteries, count, i);

        plan->batteries[i].health = sorted[end == TRIP_PLAN_LOW ? at : used - 1 - at];
    }
    plan->trip.batteries = plan->batteries;
    plan->trip.battery_count = count;
    return sorted[0] > 0;
}

/* ---- legs ------------------------------------------------------------------------------------ */

static struct running
running_for(const struct rental *rental, const struct equipment *equipment, const struct told *told,
            bool has_activity, enum activity activity)
{
    struct told view = *told;

    view.has_activity = has_activity;
    view.activity = activity;
    return running_now(rental, equipment, &view);
}

/* What runs on a leg; who sits may also run what is ordered for another waking hour. */
static struct running
running_on(const struct rental *rental, const struct equipment *equipment, const struct told *told,
           const struct told_leg *leg)
{
    struct running seated;

    switch (leg->kind) {
    case LEG_HIKE:
        return running_for(rental, equipment, told, true, ACTIVITY_WALKING);
    case LEG_FLIGHT:
        return running_for(rental, equipment, told, true, ACTIVITY_FLIGHT);
    case LEG_DRIVE:
    case LEG_WAIT:
        if (told->has_activity) {
            break;
        }
        seated = running_for(rental, equipment, told, true, ACTIVITY_REST);
        if (seated.is == RUNNING_ORDERED || seated.is == RUNNING_NO_FIGURE) {
            return seated;
        }
        break;
    case LEG_OTHER:
        break;
    }
    return running_now(rental, equipment, told);
}

static bool
is_wall_only(const struct running *running, const struct equipment *equipment,
             const struct told *told)
{
    bool is_told = running->is == RUNNING_DIFFERS && told->has_setting;
    enum mode mode = is_told && told->has_mode ? told->mode : running->order->mode;

    return equipment_needs_wall(equipment, mode,
                                is_told ? told->setting_tenths : running->order->setting_tenths);
}

static enum trip_power
power_of(const struct rental *rental, const struct told_leg *leg, struct trip_plan *plan)
{
    if (leg->power == POWER_SOURCE_CAR && !rental->car_charger) {
        plan->no_car_cord = true;
        return TRIP_NO_POWER;
    }
    return leg->power == POWER_SOURCE_WALL  ? TRIP_WALL
           : leg->power == POWER_SOURCE_CAR ? TRIP_CAR
                                            : TRIP_NO_POWER;
}

/* Minutes of a new, full battery; 0 without a figure. */
static int
lasts_on(const struct running *running, enum trip_plan_end end, const struct trip_plan *plan)
{
    return running->figure == NULL ? 0
           : end == TRIP_PLAN_LOW  ? running->figure->lasts.low * plan->cold_percent / 100
                                   : running->figure->lasts.high;
}

static enum trip_plan_is
take_leg(const struct rental *rental, const struct equipment *equipment, const struct told *told,
         size_t at, enum trip_plan_end end, struct trip_plan *plan)
{
    const struct told_leg *told_leg = &told->legs[at];
    struct trip_leg *leg = &plan->legs[at];
    struct running *running = &plan->on[at];
    bool lacks;

    *running = running_on(rental, equipment, told, told_leg);
    *leg = (struct trip_leg){.minutes = told_leg->minutes,
                             .power = power_of(rental, told_leg, plan),
                             .asleep = told->has_activity && told->activity == ACTIVITY_SLEEP,
                             .drives = told_leg->kind == LEG_DRIVE,
                             .stays = told_leg->kind == LEG_WAIT};
    lacks = running->figure == NULL && leg->power != TRIP_WALL;
    plan->running = *running;
    plan->differs = plan->differs || running->is == RUNNING_DIFFERS;
    if (running->order == NULL) {
        return TRIP_PLAN_NO_ORDER;
    }
    if (leg->power != TRIP_WALL && is_wall_only(running, equipment, told)) {
        return TRIP_PLAN_WALL_ONLY;
    }
    if (lacks) {
        return TRIP_PLAN_NO_FIGURE;
    }
    leg->lasts = running->figure == NULL ? 1 : lasts_on(running, end, plan);
    return TRIP_PLAN_READY;
}

/* ---- what it is counted with ----------------------------------------------------------------- */

/* What no battery is known to run drains more than anything. */
static bool
drains_more(const struct running *running, const struct running *than)
{
    if (running->figure == NULL || than->figure == NULL) {
        return than->figure != NULL;
    }
    return running->figure->lasts.low < than->figure->lasts.low;
}

/* How much a leg has a say in what the trip is told to be counted with. */
static int
weight(const struct trip_plan *plan, size_t at)
{
    enum trip_power power = plan->legs[at].power;
    bool is_fed =
        (power == TRIP_WALL && plan->trip.wall.runs) || (power == TRIP_CAR && plan->trip.car.runs);

    return plan->on[at].is == RUNNING_DIFFERS ? 2 : is_fed ? 0 : 1;
}

static void
name_running(struct trip_plan *plan)
{
    size_t best = 0, i;

    for (i = 1; i < plan->trip.leg_count; i++) {
        if (weight(plan, i) > weight(plan, best) ||
            (weight(plan, i) == weight(plan, best) && drains_more(&plan->on[i], &plan->on[best]))) {
            best = i;
        }
    }
    plan->running = plan->on[best];
}

/* Once there they may go on as on the last leg or rest, with what is ordered for that. */
static void
take_after(const struct rental *rental, const struct equipment *equipment, enum trip_plan_end end,
           struct trip_plan *plan)
{
    const struct told nothing = {0};
    struct running rest = running_for(rental, equipment, &nothing, true, ACTIVITY_REST);

    plan->after = plan->on[plan->trip.leg_count - 1];
    if (rest.order != NULL && drains_more(&rest, &plan->after)) {
        plan->after = rest;
    }
    plan->trip.lasts_after = lasts_on(&plan->after, end, plan);
}

enum trip_plan_is
trip_plan_make(const struct rental *rental, const struct equipment *equipment,
               const struct told *told, const struct percent *charges, size_t count,
               int64_t now_utc_s, enum trip_plan_end end, struct trip_plan *plan)
{
    size_t i;

    assert(1 <= told->leg_count && told->leg_count <= TRIP_LEGS_MAX);
    assert(1 <= count && count <= TRIP_BATTERIES_MAX);
    *plan = (struct trip_plan){.trip = {.leg_count = told->leg_count}};
    plan->trip.legs = plan->legs;
    take_outlets(equipment, &plan->trip);
    if (!take_surroundings(equipment, told, plan) ||
        !take_batteries(rental, equipment, charges, count, now_utc_s, end, plan)) {
        plan->running = running_on(rental, equipment, told, &told->legs[0]);
        return TRIP_PLAN_NO_FIGURE;
    }
    for (i = 0; i < told->leg_count; i++) {
        enum trip_plan_is is = take_leg(rental, equipment, told, i, end, plan);

        if (is != TRIP_PLAN_READY) {
            return is;
        }
    }
    name_running(plan);
    take_after(rental, equipment, end, plan);
    return TRIP_PLAN_READY;
}
