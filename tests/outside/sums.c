/*
 * Prints what the arithmetic of handlers/power makes of random input, a case a line: its name, its
 * input, "=", its result. sums_test.py works each out a second time and compares.
 */
#include <inttypes.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "battery_set.h"
#include "charging.h"
#include "cylinder.h"
#include "flight.h"
#include "outlet.h"
#include "source.h"
#include "trip.h"

/* Numerical Recipes' linear congruential generator, high bits. */
static uint64_t state;

static int
any(int low, int high)
{
    state = state * 6364136223846793005u + 1442695040888963407u;
    return low + (int)((state >> 33) % (uint64_t)(high - low + 1));
}

static struct percent
any_percent(void)
{
    int a = any(0, 100), b = any(0, 3) == 0 ? a : any(0, 100);

    return a < b ? (struct percent){a, b} : (struct percent){b, a};
}

static struct minutes
any_minutes(int low, int high)
{
    int a = any(low, high), b = any(low, high);

    return a < b ? (struct minutes){a, b} : (struct minutes){b, a};
}

static void
print_battery_time(void)
{
    struct minutes full = any_minutes(0, 1000);
    struct percent health = any_percent(), charge = any_percent();
    struct minutes time = battery_time(full, health, charge);
    int elapsed = any(0, 500), on_battery = any(0, 1);
    struct minutes after = minutes_after(time, elapsed, on_battery == 1);

    printf("battery_time %d %d %d %d %d %d = %d %d\n", full.low, full.high, health.low, health.high,
           charge.low, charge.high, time.low, time.high);
    printf("minutes_after %d %d %d %d = %d %d\n", time.low, time.high, elapsed, on_battery,
           after.low, after.high);
    printf("plug_reserve %d = %d\n", time.low, plug_reserve(time.low));
}

static void
print_battery_set(void)
{
    struct rental rental = {.battery_count = (size_t)any(1, 4)};
    struct equipment equipment = {.retirement_health = any(50, 90)};
    struct minutes full = any_minutes(1, 600), time;
    struct percent charges[4];
    size_t count = (size_t)any(1, 4), i;

    printf("battery_set %d %d %d %zu %zu", equipment.retirement_health, full.low, full.high,
           rental.battery_count, count);
    for (i = 0; i < rental.battery_count; i++) {
        /* now is 400 days after 0, so half of the measurements are older than a year */
        rental.batteries[i].health_percent = any(0, 100);
        rental.batteries[i].measured_utc_s = any(0, 1) * INT64_C(200) * 86400;
        printf(" %d %" PRId64, rental.batteries[i].health_percent,
               rental.batteries[i].measured_utc_s / 86400);
    }
    for (i = 0; i < count; i++) {
        charges[i] = any_percent();
        printf(" %d %d", charges[i].low, charges[i].high);
    }
    if (battery_set_time(&rental, &equipment, full, charges, count, 0, INT64_C(400) * 86400,
                         &time)) {
        printf(" = %d %d\n", time.low, time.high);
    } else {
        printf(" = none\n");
    }
}

static void
print_charging(void)
{
    struct charge_minutes rate = {.known = true, .to_80 = any_minutes(20, 400)};
    struct percent from = any_percent();
    int to = any(0, 1) == 0 ? 80 : any(0, 100), minutes = any(0, 600);
    struct minutes time;
    struct percent level;

    rate.to_full.low = rate.to_80.low + any(10, 200);
    rate.to_full.high = rate.to_full.low + (rate.to_80.high - rate.to_80.low) + any(0, 100);
    time = charging_time(&rate, from, to);
    level = charging_level(&rate, from, minutes);
    printf("charging_time %d %d %d %d %d %d %d = %d %d\n", rate.to_80.low, rate.to_80.high,
           rate.to_full.low, rate.to_full.high, from.low, from.high, to, time.low, time.high);
    printf("charging_level %d %d %d %d %d %d %d = %d %d\n", rate.to_80.low, rate.to_80.high,
           rate.to_full.low, rate.to_full.high, from.low, from.high, minutes, level.low,
           level.high);
}

static void
print_flight(void)
{
    int gates[4], ground = any(0, 600), lasts[6], another = any(1, 400), need, i;
    size_t flights = (size_t)any(1, 4), count = (size_t)any(0, 6), j;
    int tenths_wh = any(0, 2000), held = any(1, 2);

    for (j = 0; j < flights; j++) {
        gates[j] = any(0, 900);
    }
    for (j = 0; j < count; j++) {
        lasts[j] = any(0, 400);
    }
    need = flight_need(gates, flights, ground);
    printf("flight_need %d", ground);
    for (j = 0; j < flights; j++) {
        printf(" %d", gates[j]);
    }
    printf(" = %d\nflight_batteries %d %d", need, need, another);
    for (j = 0; j < count; j++) {
        printf(" %d", lasts[j]);
    }
    printf(" = %d\n", flight_batteries(need, lasts, count, another));
    i = (int)flight_watt_hours(tenths_wh / 10.0, 0, 0);
    printf("watt_hours %d %d = %d %d\n", tenths_wh, held, i,
           flight_batteries_allowed((enum watt_hours)i, held));
}

static void
print_cylinder(void)
{
    static const char *const sizes[] = {"D", "E", "M", "G", "H", "K"};
    const char *size = sizes[any(0, 5)];
    int psi = any(0, 3000), bar = any(0, 200), tenths = any(1, 250);
    struct minutes time = cylinder_time(cylinder_factor(size), cylinder_gauge(psi), tenths);
    struct psi gauge = cylinder_gauge_bar(bar);

    printf("cylinder %s %d %d = %d %d\n", size, psi, tenths, time.low, time.high);
    printf("gauge_bar %d = %d %d\n", bar, gauge.low, gauge.high);
}

static void
print_outlet(void)
{
    struct equipment equipment = {.rated_wh = any(10, 200)};
    struct charge_minutes rate = {true, any_minutes(20, 400), {0, 0}};
    int watts = any(1, 400), amps = any(1, 30);

    printf("charge_watts %d %d = %d\n", (int)equipment.rated_wh, rate.to_80.low,
           outlet_charge_watts(&equipment, &rate));
    printf("outlet %d %d = %d %d %d\n", watts, amps, outlet_fuse_amps(watts),
           outlet_feeds(amps, watts), outlet_inverter_watts(watts));
}

static void
print_source(void)
{
    int unit = any(1, 300), charge = any(0, 1) == 0 ? 0 : any(1, 100), watts = any(1, 700);
    int tenths_wh = any(0, 30000);
    struct watts takes = source_takes(unit, charge);
    struct minutes lasts = source_lasts(tenths_wh, takes);

    printf("source %d %d %d = %d %d %d\n", unit, charge, watts, takes.low, takes.high,
           source_is_enough(watts, takes));
    printf("source_lasts %d %d %d = %d %d\n", unit, charge, tenths_wh, lasts.low, lasts.high);
}

static void
print_sleep(void)
{
    struct rental rental = {.battery_count = 3};
    struct equipment equipment = {.retirement_health = 80};
    struct minutes full = any_minutes(1, 600), time;
    struct percent charges[3];
    size_t held = (size_t)any(1, 2), i;

    printf("sleep %zu %d %d", held, full.low, full.high);
    for (i = 0; i < 3; i++) {
        rental.batteries[i] = (struct battery){"", any(50, 100), 1};
        charges[i] = any_percent();
        printf(" %d %d %d", rental.batteries[i].health_percent, charges[i].low, charges[i].high);
    }
    if (battery_set_time(&rental, &equipment, full, charges, 3, held, 1, &time)) {
        printf(" = %d %d\n", time.low, time.high);
    }
}

/* To 80 % at the most, where minutes go straight up. */
static void
print_charging_plan(void)
{
    struct charge_minutes places[2];
    struct percent charges[4];
    struct charging_plan plan;
    size_t place_count = (size_t)any(1, 2), count = (size_t)any(1, 4), i;
    int to = any(1, 80);

    printf("charging_plan %d %zu", to, place_count);
    for (i = 0; i < place_count; i++) {
        places[i] = (struct charge_minutes){true, any_minutes(20, 400), {0, 0}};
        places[i].to_full = (struct minutes){places[i].to_80.low + 60, places[i].to_80.high + 60};
        printf(" %d %d", places[i].to_80.low, places[i].to_80.high);
    }
    for (i = 0; i < count; i++) {
        charges[i] = any_percent();
        printf(" %d %d", charges[i].low, charges[i].high);
    }
    charging_plan(charges, count, places, place_count, to, &plan);
    printf(" = %d %d\n", plan.all_done.low, plan.all_done.high);
}

/* Without power, awake: what the batteries hold is used up in their order. */
static void
print_trip(void)
{
    struct trip_leg legs[4] = {{0}};
    struct trip_battery batteries[4];
    struct trip trip = {.legs = legs,
                        .leg_count = (size_t)any(1, 4),
                        .batteries = batteries,
                        .battery_count = (size_t)any(1, 4)};
    struct trip_outcome outcome;
    size_t i;

    printf("trip %zu", trip.leg_count);
    for (i = 0; i < trip.leg_count; i++) {
        legs[i].minutes = any(1, 300);
        legs[i].lasts = any(20, 300);
        printf(" %d %d", legs[i].minutes, legs[i].lasts);
    }
    for (i = 0; i < trip.battery_count; i++) {
        batteries[i] = (struct trip_battery){any(0, 100), any(50, 100)};
        printf(" %d %d", batteries[i].charge, batteries[i].health);
    }
    trip.lasts_after = legs[trip.leg_count - 1].lasts;
    trip_play(&trip, &outcome);
    printf(" = %d %d %d %d\n", outcome.total_minutes, outcome.lasts, outcome.runs_out_at,
           outcome.margin_minutes);
}

/* sums ROUNDS SEED */
int
main(int argc, char **argv)
{
    long rounds = argc > 1 ? strtol(argv[1], NULL, 10) : 1, i;

    state = argc > 2 ? strtoull(argv[2], NULL, 10) : 1;
    for (i = 0; i < rounds; i++) {
        print_battery_time();
        print_battery_set();
        print_charging();
        print_flight();
        print_cylinder();
        print_outlet();
        print_source();
        print_sleep();
        print_charging_plan();
        print_trip();
    }
    return 0;
}
