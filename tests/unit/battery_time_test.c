#include "fixture.h"

#include "battery_set.h"
#include "running.h"

/* One battery of a 2 L/min unit lasts 45 to 54 minutes (common practice, no source). */
static const struct minutes two_litre_unit = {45, 54};

START_TEST(two_lights_on_a_worn_battery_rounds_outwards)
{
    struct minutes left =
        battery_time(two_litre_unit, (struct percent){90, 90}, (struct percent){25, 50});

    ck_assert_int_eq(left.low, 10);  /* 45 x 0.90 x 0.25 = 10.125 */
    ck_assert_int_eq(left.high, 25); /* 54 x 0.90 x 0.50 = 24.3 */
}
END_TEST

START_TEST(full_and_new_lasts_what_the_file_says_and_empty_nothing)
{
    struct minutes full =
        battery_time(two_litre_unit, (struct percent){100, 100}, (struct percent){100, 100});
    struct minutes empty =
        battery_time(two_litre_unit, (struct percent){100, 100}, (struct percent){0, 0});

    ck_assert_int_eq(full.low, 45);
    ck_assert_int_eq(full.high, 54);
    ck_assert_int_eq(empty.high, 0);
}
END_TEST

START_TEST(elapsed_time_counts_against_the_high_end_only_on_battery)
{
    struct minutes left = minutes_after((struct minutes){100, 120}, 30, false);

    ck_assert_int_eq(left.low, 70);
    ck_assert_int_eq(left.high, 120);
    left = minutes_after((struct minutes){100, 120}, 110, true);
    ck_assert_int_eq(left.low, 0);
    ck_assert_int_eq(left.high, 10);
}
END_TEST

START_TEST(the_reserve_is_15_minutes_or_a_fifth_whichever_is_more)
{
    ck_assert_int_eq(plug_reserve(135), 27);
    ck_assert_int_eq(plug_reserve(60), 15);
    ck_assert_int_eq(plug_reserve(76), 16); /* 15.2, rounded up */
    ck_assert_int_eq(plug_reserve(10), 10);
    ck_assert_int_eq(plug_reserve(0), 0);
}
END_TEST

START_TEST(health_unmeasured_or_old_counts_as_the_retirement_limit)
{
    const int64_t now = fixture_start_utc_s;
    struct battery battery = {"B", 93, now - 300 * 86400};

    ck_assert_int_eq(battery_health(&battery, 80, now), 93);
    battery.measured_utc_s = now - 400 * 86400;
    ck_assert_int_eq(battery_health(&battery, 80, now), 80);
    battery.health_percent = 71; /* it does not get better by waiting */
    ck_assert_int_eq(battery_health(&battery, 80, now), 71);
    battery.health_percent = 0;
    ck_assert_int_eq(battery_health(&battery, 80, now), 80);
}
END_TEST

START_TEST(nobody_knows_which_battery_shows_which_charge)
{
    static const struct percent charges[] = {{100, 100}, {50, 50}};
    const struct equipment unit = {.retirement_health = 80, .batteries_held = 1};
    struct rental rental = {.battery_count = 3};
    struct minutes time;

    rental.batteries[0] = (struct battery){"A", 100, fixture_start_utc_s};
    rental.batteries[1] = (struct battery){"B", 80, fixture_start_utc_s};
    rental.batteries[2] = (struct battery){"C", 90, fixture_start_utc_s};
    ck_assert(battery_set_time(&rental, &unit, (struct minutes){100, 100}, charges, 2, 0,
                               fixture_start_utc_s, &time));
    ck_assert_int_eq(time.low, 80 + 45);   /* the weakest is full, the next weakest half */
    ck_assert_int_eq(time.high, 100 + 45); /* the best is full, the next best half */
    ck_assert(battery_set_time(&rental, &unit, (struct minutes){100, 100}, charges, 2, 1,
                               fixture_start_utc_s, &time));
    ck_assert_int_eq(time.low, 40); /* asleep: it may be the half one that is in the unit */
    ck_assert_int_eq(time.high, 100);
}
END_TEST

START_TEST(more_batteries_than_the_record_has_count_at_the_limit)
{
    static const struct percent charges[] = {{100, 100}, {100, 100}};
    const struct equipment unit = {.retirement_health = 80, .batteries_held = 1};
    const struct rental rental = {.battery_count = 1,
                                  .batteries = {{"A", 100, fixture_start_utc_s}}};
    struct minutes time;

    ck_assert(battery_set_time(&rental, &unit, (struct minutes){100, 100}, charges, 2, 0,
                               fixture_start_utc_s, &time));
    ck_assert_int_eq(time.low, 180);
}
END_TEST

static struct minutes
set_time(const struct percent *charges, size_t count, size_t at_most)
{
    static const struct equipment unit = {.retirement_health = 80, .batteries_held = 1};
    static const struct rental rental = {
        .battery_count = 2,
        .batteries = {{"A", 97, 1}, {"B", 83, 1}},
    };
    struct minutes time;

    ck_assert(battery_set_time(&rental, &unit, (struct minutes){101, 137}, charges, count, at_most,
                               1, &time));
    return time;
}

START_TEST(more_charge_never_gives_less_time_and_low_is_never_above_high)
{
    struct percent charges[3] = {{35, 60}, {80, 80}, {5, 20}};
    size_t at_most, i;
    int more;

    for (at_most = 0; at_most < 3; at_most++) {
        for (i = 0; i < 3; i++) {
            const struct percent kept = charges[i];
            struct minutes before = set_time(charges, 3, at_most);

            for (more = 1; kept.high + more <= 100; more++) {
                struct minutes time;

                charges[i] = (struct percent){kept.low + more, kept.high + more};
                time = set_time(charges, 3, at_most);
                ck_assert_int_ge(time.low, before.low);
                ck_assert_int_ge(time.high, before.high);
                ck_assert_int_le(time.low, time.high);
                before = time;
            }
            charges[i] = kept;
        }
    }
}
END_TEST

/* Orders: continuous 2 at rest, pulse 3 for walking; 60 and 150 minutes. */
static struct running
runs(struct told told)
{
    static const struct run_time times[] = {{MODE_CONTINUOUS, 20, {60, 72}, true, false, 0},
                                            {MODE_PULSE, 30, {150, 180}, true, false, 0}};
    static const struct equipment unit = {.run_times = times, .run_time_count = 2};
    static const struct rental rental = {
        .orders = {{true, MODE_CONTINUOUS, 20, 0, NULL}, {true, MODE_PULSE, 30, 0, NULL}}};

    return running_now(&rental, &unit, &told);
}

START_TEST(who_does_not_tell_what_they_do_gets_the_most_draining_order)
{
    struct running running = runs((struct told){0});

    ck_assert_int_eq(running.is, RUNNING_ORDERED);
    ck_assert_int_eq(running.activity, ACTIVITY_REST);
    ck_assert_int_eq(running.figure->lasts.low, 60);
    running = runs((struct told){.has_activity = true, .activity = ACTIVITY_WALKING});
    ck_assert_int_eq(running.figure->lasts.low, 150);
    running = runs((struct told){.has_mode = true, .mode = MODE_PULSE});
    ck_assert_int_eq(running.activity, ACTIVITY_WALKING);
}
END_TEST

START_TEST(what_is_not_ordered_is_named_so_and_has_no_made_up_figure)
{
    struct running running = runs((struct told){.has_activity = true, .activity = ACTIVITY_SLEEP});

    ck_assert_int_eq(running.is, RUNNING_NO_ORDER);
    ck_assert_ptr_null(running.figure);
    running = runs((struct told){.has_setting = true,
                                 .setting_tenths = 30,
                                 .has_activity = true,
                                 .activity = ACTIVITY_REST});
    ck_assert_int_eq(running.is, RUNNING_DIFFERS);
    ck_assert_int_eq(running.order->setting_tenths, 20);
    ck_assert_ptr_null(running.figure); /* the file has no continuous 3 */
    running = runs((struct told){
        .has_mode = true, .mode = MODE_PULSE, .has_activity = true, .activity = ACTIVITY_REST});
    ck_assert_int_eq(running.is, RUNNING_DIFFERS);
    ck_assert_ptr_null(running.figure); /* pulse, but which number? */
}
END_TEST

int
main(void)
{
    TCase *tests = tcase_create("battery time");

    tcase_add_test(tests, two_lights_on_a_worn_battery_rounds_outwards);
    tcase_add_test(tests, full_and_new_lasts_what_the_file_says_and_empty_nothing);
    tcase_add_test(tests, elapsed_time_counts_against_the_high_end_only_on_battery);
    tcase_add_test(tests, the_reserve_is_15_minutes_or_a_fifth_whichever_is_more);
    tcase_add_test(tests, health_unmeasured_or_old_counts_as_the_retirement_limit);
    tcase_add_test(tests, nobody_knows_which_battery_shows_which_charge);
    tcase_add_test(tests, more_batteries_than_the_record_has_count_at_the_limit);
    tcase_add_test(tests, more_charge_never_gives_less_time_and_low_is_never_above_high);
    tcase_add_test(tests, who_does_not_tell_what_they_do_gets_the_most_draining_order);
    tcase_add_test(tests, what_is_not_ordered_is_named_so_and_has_no_made_up_figure);
    return fixture_run(tests);
}
