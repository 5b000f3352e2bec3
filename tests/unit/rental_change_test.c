/* What a new record changes: pure judgement over two records. */
#include <check.h>

#include "rental_change.h"

static struct rental before, after;

static void
set_up(void)
{
    before =
        (struct rental){.rental_id = "R-7",
                        .state = RENTAL_OUT,
                        .unit = "wren",
                        .serial = "W-1",
                        .orders = {[ACTIVITY_REST] = {.known = true,
                                                      .mode = MODE_PULSE,
                                                      .setting_tenths = 30,
                                                      .dated_utc_s = 1770000000,
                                                      .confirmed_by = "Dr. Quellin"}},
                        .batteries = {{.serial = "B-1", .health_percent = 90}, {.serial = "B-2"}},
                        .battery_count = 2};
    after = before;
}

static struct rental_change
change(void)
{
    return rental_change_of(&before, &after);
}

static bool
voids(void)
{
    struct rental_change made = change();

    return rental_change_voids_account(&made);
}

START_TEST(a_first_record_changes_nothing)
{
    struct rental_change made = rental_change_of(NULL, &after);

    ck_assert(!made.is_swap);
    ck_assert(!made.is_new_order);
    ck_assert_int_eq(made.confirm_pulse, ALERT_NONE);
}
END_TEST

START_TEST(a_new_day_of_return_voids_nothing)
{
    after.due_utc_s = 1771000000;
    after.batteries[0].health_percent = 85;
    after.orders[ACTIVITY_REST].confirmed_by = "Dr. Quellin's office";
    ck_assert(!voids());
}
END_TEST

START_TEST(another_serial_is_a_swap_but_the_same_model_needs_no_prescriber)
{
    after.serial = "W-2";
    ck_assert(change().is_swap);
    ck_assert(voids());
    ck_assert_int_eq(change().confirm_pulse, ALERT_NONE);
}
END_TEST

START_TEST(other_batteries_are_a_swap_and_the_same_in_another_order_are_not)
{
    after.batteries[0] = before.batteries[1];
    after.batteries[1] = before.batteries[0];
    ck_assert(!voids());
    after.batteries[1].serial = "B-9";
    ck_assert(change().is_swap);
    after.battery_count = 1;
    ck_assert(change().is_swap);
}
END_TEST

START_TEST(another_mode_or_setting_or_activity_is_a_new_order)
{
    after.orders[ACTIVITY_REST].setting_tenths = 20;
    ck_assert(change().is_new_order);
    ck_assert(voids());
    after = before;
    after.orders[ACTIVITY_REST].mode = MODE_CONTINUOUS;
    ck_assert(change().is_new_order);
    after = before;
    after.orders[ACTIVITY_SLEEP] = before.orders[ACTIVITY_REST];
    ck_assert(change().is_new_order);
    after = before;
    after.orders[ACTIVITY_REST].known = false;
    ck_assert(change().is_new_order);
}
END_TEST

/* Pulse settings are not comparable between models (ATS guideline 2020, table 2). */
START_TEST(a_pulse_setting_on_another_model_is_confirmed_by_the_prescriber)
{
    after.unit = "brook";
    ck_assert_int_eq(change().confirm_pulse, ALERT_URGENT);
    after.state = RENTAL_OVERDUE;
    ck_assert_int_eq(change().confirm_pulse, ALERT_URGENT);
    after.state = RENTAL_BOOKED; /* the renter does not breathe by it yet */
    ck_assert_int_eq(change().confirm_pulse, ALERT_OFFICE);
    after.state = RENTAL_RETURNED;
    ck_assert_int_eq(change().confirm_pulse, ALERT_NONE);
}
END_TEST

START_TEST(night_mode_is_confirmed_too_and_liters_a_minute_are_the_same_everywhere)
{
    after.unit = "brook";
    after.orders[ACTIVITY_REST].mode = MODE_NIGHT;
    ck_assert_int_eq(change().confirm_pulse, ALERT_URGENT);
    after.orders[ACTIVITY_REST].mode = MODE_CONTINUOUS;
    ck_assert_int_eq(change().confirm_pulse, ALERT_NONE);
}
END_TEST

START_TEST(an_order_dated_anew_with_who_confirmed_it_calls_nobody)
{
    after.unit = "brook";
    after.orders[ACTIVITY_REST].dated_utc_s = 1770500000;
    ck_assert_int_eq(change().confirm_pulse, ALERT_NONE);
    after.orders[ACTIVITY_REST].confirmed_by = NULL;
    ck_assert_int_eq(change().confirm_pulse, ALERT_URGENT);
    after.orders[ACTIVITY_REST].confirmed_by = "Dr. Quellin";
    after.orders[ACTIVITY_WALKING] = before.orders[ACTIVITY_REST];
    after.orders[ACTIVITY_WALKING].dated_utc_s = 0; /* of this one nobody says when */
    ck_assert_int_eq(change().confirm_pulse, ALERT_URGENT);
}
END_TEST

int
main(void)
{
    Suite *suite = suite_create("rental change");
    TCase *tests = tcase_create("rental change");
    SRunner *runner;
    int failed;

    tcase_add_checked_fixture(tests, set_up, NULL);
    tcase_add_test(tests, a_first_record_changes_nothing);
    tcase_add_test(tests, a_new_day_of_return_voids_nothing);
    tcase_add_test(tests, another_serial_is_a_swap_but_the_same_model_needs_no_prescriber);
    tcase_add_test(tests, other_batteries_are_a_swap_and_the_same_in_another_order_are_not);
    tcase_add_test(tests, another_mode_or_setting_or_activity_is_a_new_order);
    tcase_add_test(tests, a_pulse_setting_on_another_model_is_confirmed_by_the_prescriber);
    tcase_add_test(tests, night_mode_is_confirmed_too_and_liters_a_minute_are_the_same_everywhere);
    tcase_add_test(tests, an_order_dated_anew_with_who_confirmed_it_calls_nobody);
    suite_add_tcase(suite, tests);
    runner = srunner_create(suite);
    srunner_run_all(runner, CK_ENV);
    failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed == 0 ? 0 : 1;
}
