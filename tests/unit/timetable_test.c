#include <check.h>
#include <stdlib.h>

#include "outlet.h"
#include "timetable.h"

/* Invented: in the unit while it runs, and in a charger of its own. */
static const struct charge_minutes unit = {true, {180, 240}, {300, 390}};
static const struct charge_minutes charger = {true, {110, 130}, {180, 215}};

static struct timetable table;

static void
make(const struct percent *charges, size_t count, const struct charge_minutes *places,
     size_t place_count, int night_from, int until)
{
    timetable_make(charges, count, places, place_count, night_from, until, &table);
}

START_TEST(a_change_that_falls_into_the_night_waits_for_the_morning)
{
    const struct percent charges[] = {{0, 0}, {0, 0}};

    /* 10 pm, until 9 am: the first is full at 4:30, the second goes on at 6 and has 3 hours of the
     * 4 that it takes to 80 %. */
    make(charges, 2, &unit, 1, 0, 11 * 60);
    ck_assert_uint_eq(table.count, 2);
    ck_assert_int_eq(table.steps[0].at, 0);
    ck_assert_int_eq(table.steps[1].at, 8 * 60);
    ck_assert_int_eq(table.levels[0], 100);
    ck_assert_int_eq(table.levels[1], 60);
    ck_assert(!table.all_full);
    make(charges, 2, &unit, 1, TIMETABLE_NO_NIGHT, 13 * 60);
    ck_assert_int_eq(table.steps[1].at, 390);
    ck_assert(table.all_full);
}
END_TEST

START_TEST(the_one_that_takes_longest_goes_on_for_the_night)
{
    const struct percent charges[] = {{90, 90}, {0, 0}};

    /* 8 pm: the 90 % one takes 111 minutes (74 % of the 150 slow ones), is full at 9:51, and the
     * empty one has the night; the other way round somebody would have to get up. */
    make(charges, 2, &unit, 1, 120, 10 * 60);
    ck_assert_uint_eq(table.steps[0].battery, 0);
    ck_assert_int_eq(table.steps[0].at, 0);
    ck_assert_uint_eq(table.steps[1].battery, 1);
    ck_assert_int_eq(table.steps[1].at, 111);
    ck_assert(table.all_full);
}
END_TEST

START_TEST(before_the_night_a_battery_may_give_way_half_charged)
{
    const struct percent charges[] = {{0, 0}, {0, 0}};

    /* 8 pm until 6 am: two hours make 40 % of the one, the night fills the other. Left in, the
     * first would be full and the second still empty. */
    make(charges, 2, &unit, 1, 120, 10 * 60);
    ck_assert_uint_eq(table.count, 2);
    ck_assert_int_eq(table.steps[1].at, 120);
    ck_assert_int_eq(table.levels[0], 40);
    ck_assert_int_eq(table.levels[1], 100);
}
END_TEST

START_TEST(two_places_charge_at_once)
{
    const struct percent charges[] = {{0, 0}, {0, 0}, {100, 100}};
    const struct charge_minutes places[] = {unit, charger};

    make(charges, 3, places, 2, 180, 11 * 60);
    ck_assert_uint_eq(table.count, 2);
    ck_assert_int_eq(table.steps[0].at, 0);
    ck_assert_int_eq(table.steps[1].at, 0);
    ck_assert(table.all_full);
}
END_TEST

START_TEST(who_asks_in_the_night_is_up_now_and_then_not_until_morning)
{
    const struct percent charges[] = {{80, 80}, {0, 0}};
    size_t i;

    make(charges, 2, &charger, 1, -120, 12 * 60); /* midnight */
    ck_assert_int_eq(table.steps[0].at, 0);
    for (i = 1; i < table.count; i++) {
        ck_assert_int_ge(table.steps[i].at, 6 * 60);
    }
    ck_assert(!timetable_is_night(-120, 0));
    ck_assert(timetable_is_night(-120, 1));
    ck_assert(!timetable_is_night(-120, 360));
    ck_assert(timetable_is_night(-120, 24 * 60)); /* the next one */
    ck_assert(!timetable_is_night(TIMETABLE_NO_NIGHT, 700));
}
END_TEST

START_TEST(whatever_is_tried_nobody_gets_up_and_more_time_never_means_less)
{
    const struct charge_minutes places[] = {unit, charger};
    unsigned seed = 1;
    int round;

    for (round = 0; round < 400; round++) {
        struct percent charges[7];
        size_t count, place_count, i;
        int night_from, until, sum = 0, longer = 0;

        seed = seed * 1103515245 + 12345;
        count = 1 + seed / 65536 % 7;
        place_count = 1 + seed / 131072 % 2;
        night_from = (int)(seed / 1024 % 1440) - NIGHT_MINUTES;
        until = (int)(seed / 512 % 2000);
        for (i = 0; i < count; i++) {
            seed = seed * 1103515245 + 12345;
            charges[i].low = charges[i].high = (int)(seed / 65536 % 101);
        }
        make(charges, count, places, place_count, night_from, until);
        for (i = 0; i < table.count; i++) {
            ck_assert(!timetable_is_night(night_from, table.steps[i].at));
            ck_assert(table.steps[i].at < until);
            ck_assert(i == 0 || table.steps[i].at >= table.steps[i - 1].at);
        }
        for (i = 0; i < count; i++) {
            ck_assert_int_ge(table.levels[i], charges[i].low);
            sum += table.levels[i];
        }
        make(charges, count, places, place_count, night_from, until + 60);
        for (i = 0; i < count; i++) {
            longer += table.levels[i];
        }
        ck_assert_int_ge(longer, sum);
    }
}
END_TEST

/* Facts A5: 120 W through a cord of 85 % are 11.8 A at 12 V, more than a 10 A fuse holds; of a
 * fuse 80 % may be drawn for long. */
START_TEST(an_outlet_of_a_car_has_a_limit)
{
    struct equipment brook = {.rated_wh = 95};
    const struct charge_minutes off = {true, {105, 125}, {170, 205}};

    ck_assert(!outlet_feeds(10, 120));
    ck_assert(outlet_feeds(12, 120));
    ck_assert_int_eq(outlet_fuse_amps(120), 15);             /* 11.8 / 0.8 = 14.7 */
    ck_assert_int_eq(outlet_charge_watts(&brook, &off), 44); /* 76 Wh in 1.75 h = 43.4 W */
    ck_assert_int_eq(outlet_inverter_watts(120), 150);       /* 1.25 x the watts */
    brook.rated_wh = 0;
    ck_assert_int_eq(outlet_charge_watts(&brook, &off), 0);
}
END_TEST

int
main(void)
{
    Suite *suite = suite_create("timetable");
    TCase *tests = tcase_create("timetable");
    SRunner *runner = srunner_create(suite);
    int failed;

    tcase_add_test(tests, a_change_that_falls_into_the_night_waits_for_the_morning);
    tcase_add_test(tests, the_one_that_takes_longest_goes_on_for_the_night);
    tcase_add_test(tests, before_the_night_a_battery_may_give_way_half_charged);
    tcase_add_test(tests, two_places_charge_at_once);
    tcase_add_test(tests, who_asks_in_the_night_is_up_now_and_then_not_until_morning);
    tcase_add_test(tests, whatever_is_tried_nobody_gets_up_and_more_time_never_means_less);
    tcase_add_test(tests, an_outlet_of_a_car_has_a_limit);
    suite_add_tcase(suite, tests);
    srunner_run_all(runner, CK_NORMAL);
    failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
