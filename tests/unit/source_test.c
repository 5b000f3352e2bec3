/*
 * What other power gives against what a unit takes. Facts A3: usable 0.90; A5: 0.85 arrive, a
 * source is rated 1.25 x the watts (common practice).
 */
#include "source.h"

#include <check.h>
#include <stdlib.h>

START_TEST(a_source_must_feed_the_unit_and_its_charging)
{
    struct watts takes = source_takes(100, 26);

    ck_assert_int_eq(takes.low, 100);
    ck_assert_int_eq(takes.high, 126);
    ck_assert(source_is_enough(158, takes)); /* 1.25 x 126 = 157.5 */
    ck_assert(!source_is_enough(157, takes));
}
END_TEST

/* Facts A3: 95 Wh, usable 0.90, 35 W: 2.443 h; a source's outlet takes its 15 % before. */
START_TEST(a_battery_lasts_what_surely_arrives_and_at_most_all_it_holds)
{
    struct minutes lasts = source_lasts(950, source_takes(35, 0));

    ck_assert_int_eq(lasts.low, 124);  /* 2.443 h x .85 = 124.6 min */
    ck_assert_int_eq(lasts.high, 163); /* 95 / 35 h = 162.9 min */
    ck_assert_int_eq(source_lasts(0, source_takes(35, 0)).high, 0);
    ck_assert_int_eq(source_lasts(1000000, source_takes(1, 0)).high, SOURCE_MINUTES_MAX);
}
END_TEST

START_TEST(more_watt_hours_never_last_less_and_low_is_never_above_high)
{
    int watts, charge, wh;

    for (watts = 1; watts < 400; watts += 7) {
        for (charge = 0; charge < 100; charge += 33) {
            int before = 0;

            for (wh = 0; wh < 20000; wh += 111) {
                struct minutes lasts = source_lasts(wh, source_takes(watts, charge));

                ck_assert_int_le(lasts.low, lasts.high);
                ck_assert_int_ge(lasts.low, before);
                before = lasts.low;
            }
        }
    }
}
END_TEST

int
main(void)
{
    Suite *suite = suite_create("source");
    TCase *tests = tcase_create("source");
    SRunner *runner = srunner_create(suite);
    int failed;

    tcase_add_test(tests, a_source_must_feed_the_unit_and_its_charging);
    tcase_add_test(tests, a_battery_lasts_what_surely_arrives_and_at_most_all_it_holds);
    tcase_add_test(tests, more_watt_hours_never_last_less_and_low_is_never_above_high);
    suite_add_tcase(suite, tests);
    srunner_run_all(runner, CK_ENV);
    failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
