#include <check.h>
#include <stdlib.h>

#include "charging.h"

/* 0.5 C of facts A4: 80 % after 1.60 h, full after 2.62 h. */
static const struct charge_minutes half_c = {true, {96, 96}, {157, 157}};
static const struct charge_minutes rough = {true, {100, 120}, {170, 200}};

START_TEST(the_last_fifth_is_the_slow_one)
{
    struct minutes to_80 = charging_time(&half_c, (struct percent){0, 0}, 80);
    struct minutes full = charging_time(&half_c, (struct percent){0, 0}, 100);

    ck_assert_int_eq(to_80.high, 96);
    ck_assert_int_eq(full.high, 157);
    ck_assert_int_eq(to_80.high * 100 / full.high, 61); /* facts A4: 0.61, no straight line */
    ck_assert_int_eq(charging_time(&half_c, (struct percent){40, 40}, 80).high, 48);
    /* half of the last fifth: ln(0.55)/ln(0.1) = 0.26 of its minutes */
    ck_assert_int_eq(charging_time(&half_c, (struct percent){80, 80}, 90).high, 16);
}
END_TEST

START_TEST(who_needs_a_charge_is_told_the_longest_and_who_has_time_the_least)
{
    struct minutes time = charging_time(&rough, (struct percent){25, 50}, 100);
    struct percent level;

    ck_assert_int_eq(time.low, 107);  /* 170 - 100 x 50/80 = 107.5 */
    ck_assert_int_eq(time.high, 163); /* 200 - 120 x 25/80 = 162.5 */
    level = charging_level(&rough, (struct percent){25, 50}, 60);
    ck_assert_int_eq(level.low, 65);  /* 25 + 60 x 80/120 */
    ck_assert_int_ge(level.high, 91); /* 30 minutes into the slow part of 70: ln -> 0.43 */
    ck_assert_int_le(level.high, 95);
    ck_assert_int_eq(charging_level(&rough, (struct percent){25, 25}, 500).low, 100);
}
END_TEST

START_TEST(there_is_nothing_to_charge_in_what_is_full)
{
    ck_assert_int_eq(charging_time(&rough, (struct percent){100, 100}, 100).high, 0);
    ck_assert_int_eq(charging_time(&rough, (struct percent){90, 95}, 80).high, 0);
    ck_assert_int_eq(charging_level(&rough, (struct percent){100, 100}, 0).high, 100);
}
END_TEST

START_TEST(longer_on_the_charger_never_means_less_and_a_time_ends_where_its_level_is)
{
    int from, to;

    for (from = 0; from <= 100; from++) {
        int before = 0;

        for (to = 0; to <= 400; to += 5) {
            int low = charging_level(&rough, (struct percent){from, from}, to).low;

            ck_assert_int_ge(low, before);
            before = low;
        }
        for (to = from; to <= 100; to++) {
            int need = charging_time(&rough, (struct percent){from, from}, to).high;

            ck_assert_int_ge(charging_level(&rough, (struct percent){from, from}, need).low, to);
        }
    }
}
END_TEST

START_TEST(who_needs_a_charge_is_never_told_less_time_than_who_has_some_may_get)
{
    int low, high, to;

    for (low = 0; low <= 100; low += 7) {
        for (high = low; high <= 100; high += 11) {
            for (to = 0; to <= 100; to += 9) {
                struct minutes time = charging_time(&rough, (struct percent){low, high}, to);

                ck_assert_int_le(time.low, time.high);
                ck_assert_int_ge(charging_level(&rough, (struct percent){low, high}, time.high).low,
                                 low > to ? low : to);
            }
        }
    }
}
END_TEST

START_TEST(one_charger_takes_the_batteries_one_after_the_other_the_emptiest_first)
{
    static const struct percent charges[] = {{50, 50}, {0, 0}, {100, 100}};
    struct charging_plan plan;

    charging_plan(charges, 3, &half_c, 1, 100, &plan);
    ck_assert_uint_eq(plan.count, 2); /* the full one takes no turn */
    ck_assert_uint_eq(plan.steps[0].battery, 1);
    ck_assert_int_eq(plan.steps[0].end.high, 157);
    ck_assert_uint_eq(plan.steps[1].battery, 0);
    ck_assert_int_eq(plan.steps[1].start.high, 157);
    ck_assert_int_eq(plan.all_done.high, 157 + 97);
}
END_TEST

START_TEST(a_second_charger_shares_the_work)
{
    static const struct percent charges[] = {{0, 0}, {0, 0}, {0, 0}};
    const struct charge_minutes places[] = {half_c, rough};
    struct charging_plan plan;

    charging_plan(charges, 3, places, 2, 100, &plan);
    ck_assert_int_eq(plan.all_done.high, 157 * 2);
    ck_assert_uint_eq(plan.steps[1].place, 1);
    ck_assert_int_eq(plan.steps[1].start.high, 0);
}
END_TEST

START_TEST(by_a_given_hour_what_had_no_turn_is_as_it_was)
{
    static const struct percent charges[] = {{0, 0}, {40, 50}, {25, 25}};
    struct charging_plan plan;
    struct percent after[3];

    charging_plan(charges, 3, &rough, 1, 100, &plan);
    charging_levels_after(&plan, charges, 3, &rough, 210, after);
    ck_assert_int_eq(after[0].low, 100); /* surely full after 200 */
    ck_assert_int_eq(after[2].low, 31);  /* ten minutes at least */
    ck_assert_int_eq(after[1].low, 40);
    ck_assert_int_eq(after[1].high, 50);
}
END_TEST

int
main(void)
{
    Suite *suite = suite_create("charging");
    TCase *tests = tcase_create("charging");
    SRunner *runner = srunner_create(suite);
    int failed;

    tcase_add_test(tests, the_last_fifth_is_the_slow_one);
    tcase_add_test(tests, who_needs_a_charge_is_told_the_longest_and_who_has_time_the_least);
    tcase_add_test(tests, there_is_nothing_to_charge_in_what_is_full);
    tcase_add_test(tests,
                   longer_on_the_charger_never_means_less_and_a_time_ends_where_its_level_is);
    tcase_add_test(tests, who_needs_a_charge_is_never_told_less_time_than_who_has_some_may_get);
    tcase_add_test(tests, one_charger_takes_the_batteries_one_after_the_other_the_emptiest_first);
    tcase_add_test(tests, a_second_charger_shares_the_work);
    tcase_add_test(tests, by_a_given_hour_what_had_no_turn_is_as_it_was);
    suite_add_tcase(suite, tests);
    srunner_run_all(runner, CK_ENV);
    failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
