#include <check.h>
#include <stdlib.h>

#include "flight.h"

/* 14 CFR 382.133(h)(2), the table of facts A3. */
START_TEST(one_and_a_half_times_gate_to_gate_in_whole_batteries)
{
    static const struct {
        int gate, need, of_150, of_240;
    } rows[] = {{120, 180, 2, 1}, {270, 405, 3, 2}, {310, 465, 4, 2}, {460, 690, 5, 3}};
    size_t i;

    for (i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        int need = flight_need(&rows[i].gate, 1, 0);

        ck_assert_int_eq(need, rows[i].need);
        ck_assert_int_eq(flight_batteries(need, NULL, 0, 150), rows[i].of_150);
        ck_assert_int_eq(flight_batteries(need, NULL, 0, 240), rows[i].of_240);
    }
}
END_TEST

START_TEST(each_flight_counts_half_again_and_the_ground_once)
{
    static const int flights[] = {61, 120};

    ck_assert_int_eq(flight_need(flights, 2, 95), 92 + 180 + 95); /* 91.5 is rounded up */
    ck_assert_int_eq(flight_need(NULL, 0, 0), 0);
}
END_TEST

START_TEST(worn_batteries_are_counted_as_they_are_and_further_ones_as_given)
{
    static const int lasts[] = {140, 120};

    ck_assert_int_eq(flight_batteries(260, lasts, 2, 100), 2);
    ck_assert_int_eq(flight_batteries(261, lasts, 2, 100), 3);
    ck_assert_int_eq(flight_batteries(461, lasts, 2, 100), 5);
    ck_assert_int_eq(flight_batteries(0, lasts, 2, 100), 0);
}
END_TEST

/* facts A3: Wh = V x Ah, and its classes by 49 CFR 175.10 and the FAA's page for passengers. */
START_TEST(watt_hours_fall_into_the_classes_of_the_rule)
{
    static const struct {
        double rated, volts, amp_hours;
        enum watt_hours class;
    } rows[] = {{0, 14.4, 3.25, WATT_HOURS_FREE},   {0, 14.4, 6.8, WATT_HOURS_FREE},
                {0, 14.8, 6.6, WATT_HOURS_FREE},    {0, 10.8, 8.8, WATT_HOURS_FREE},
                {0, 14.8, 6.756, WATT_HOURS_FREE},  {0, 14.4, 11.2, WATT_HOURS_REFUSED},
                {0, 25.2, 6.4, WATT_HOURS_REFUSED}, {100, 14.8, 7.2, WATT_HOURS_FREE},
                {100.1, 0, 0, WATT_HOURS_APPROVAL}, {160, 0, 0, WATT_HOURS_APPROVAL},
                {160.1, 0, 0, WATT_HOURS_REFUSED},  {0, 14.4, 0, WATT_HOURS_UNKNOWN}};
    size_t i;

    for (i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        ck_assert_int_eq(flight_watt_hours(rows[i].rated, rows[i].volts, rows[i].amp_hours),
                         rows[i].class);
    }
}
END_TEST

START_TEST(what_is_needed_is_never_less_than_what_the_batteries_have)
{
    static const int lasts[] = {130, 120, 0, 45};
    int gate, another;

    for (gate = 0; gate < 1200; gate += 13) {
        for (another = 1; another < 300; another += 17) {
            int need = flight_need(&gate, 1, 0), has = 0, i;
            int count = flight_batteries(need, lasts, 4, another);

            for (i = 0; i < count; i++) {
                ck_assert_int_lt(has, need); /* one less would not do */
                has += i < 4 ? lasts[i] : another;
            }
            ck_assert_int_ge(has, need);
            ck_assert_int_ge(2 * need, 3 * gate);
        }
    }
}
END_TEST

START_TEST(above_100_watt_hours_two_spares_are_the_most)
{
    ck_assert_int_eq(flight_batteries_allowed(WATT_HOURS_FREE, 1), -1);
    ck_assert_int_eq(flight_batteries_allowed(WATT_HOURS_APPROVAL, 1), 3);
    ck_assert_int_eq(flight_batteries_allowed(WATT_HOURS_APPROVAL, 2), 4);
    ck_assert_int_eq(flight_batteries_allowed(WATT_HOURS_REFUSED, 1), 0);
    ck_assert_int_eq(flight_batteries_allowed(WATT_HOURS_UNKNOWN, 1), 0);
}
END_TEST

int
main(void)
{
    Suite *suite = suite_create("flight");
    TCase *tests = tcase_create("flight");
    SRunner *runner = srunner_create(suite);
    int failed;

    tcase_add_test(tests, one_and_a_half_times_gate_to_gate_in_whole_batteries);
    tcase_add_test(tests, each_flight_counts_half_again_and_the_ground_once);
    tcase_add_test(tests, worn_batteries_are_counted_as_they_are_and_further_ones_as_given);
    tcase_add_test(tests, watt_hours_fall_into_the_classes_of_the_rule);
    tcase_add_test(tests, what_is_needed_is_never_less_than_what_the_batteries_have);
    tcase_add_test(tests, above_100_watt_hours_two_spares_are_the_most);
    suite_add_tcase(suite, tests);
    srunner_run_all(runner, CK_ENV);
    failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
