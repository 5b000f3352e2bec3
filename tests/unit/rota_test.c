#include <check.h>
#include <stdlib.h>

#include "rota.h"

/* Mountain time of 2026, as in zone_test.c: 15 U.S.C. 260a. */
static const struct zone_step steps[] = {
    {1762070400, -7 * 3600}, {1772960400, -6 * 3600}, {1793520000, -7 * 3600}};
static const struct zone mountain = {steps, 3};

static const size_t perrin[] = {0, 1}, ysolde[] = {1, 0}, kim[] = {2};

/* Weeks change hands on Monday at 9, in turn; on Friday of the second week Kim helps out at 18. */
static const struct rota_turn turns[] = {
    {0, 1, 9 * 60, {perrin, 2}}, {1, 1, 9 * 60, {ysolde, 2}}, {1, 5, 18 * 60, {kim, 1}}};

static const struct rota_swap swaps[] = {
    {{2026, 3, 7, 20, 0, 0, 0}, {2026, 3, 8, 8, 0, 0, 0}, {kim, 1}}};

static struct rota
the_rota(void)
{
    /* Sunday, 1 February 2026 */
    return (struct rota){2, zone_days(2026, 2, 1), turns, 3, swaps, 1};
}

static int64_t
at(int month, int day, int hour, int minute)
{
    const struct local_time local = {2026, month, day, hour, minute, 0, 0};

    return zone_utc(&mountain, &local);
}

static struct rota_now
on(int month, int day, int hour, int minute)
{
    const struct rota rota = the_rota();

    return rota_at(&rota, &mountain, at(month, day, hour, minute));
}

START_TEST(a_turn_lasts_until_the_next_starts_and_weeks_come_round)
{
    ck_assert_ptr_eq(on(2, 2, 9, 0).line.staff, perrin);
    ck_assert_ptr_eq(on(2, 9, 8, 59).line.staff, perrin);
    ck_assert_ptr_eq(on(2, 9, 9, 0).line.staff, ysolde);
    ck_assert_ptr_eq(on(2, 13, 17, 59).line.staff, ysolde);
    ck_assert_ptr_eq(on(2, 13, 18, 0).line.staff, kim);
    ck_assert_ptr_eq(on(2, 16, 8, 59).line.staff, kim);
    ck_assert_ptr_eq(on(2, 16, 9, 0).line.staff, perrin);
    ck_assert(on(2, 13, 18, 0).since_utc_s == at(2, 13, 18, 0));
    ck_assert(on(2, 13, 18, 0).until_utc_s == at(2, 16, 9, 0));
}
END_TEST

START_TEST(before_the_first_week_the_cycle_runs_backwards)
{
    ck_assert_ptr_eq(on(1, 26, 10, 0).line.staff, ysolde);
    ck_assert_ptr_eq(on(1, 19, 10, 0).line.staff, perrin);
    ck_assert_ptr_eq(on(2, 1, 10, 0).line.staff, kim);
}
END_TEST

START_TEST(a_swap_takes_the_place_of_a_turn_and_then_the_turn_goes_on)
{
    ck_assert(on(3, 7, 19, 59).until_utc_s == at(3, 7, 20, 0));
    ck_assert(!on(3, 7, 19, 59).is_swap);
    ck_assert_ptr_eq(on(3, 7, 20, 0).line.staff, kim);
    ck_assert(on(3, 7, 20, 0).is_swap);
    ck_assert(on(3, 8, 7, 59).until_utc_s == at(3, 8, 8, 0));
    ck_assert_ptr_eq(on(3, 8, 8, 0).line.staff, perrin);
    ck_assert(on(3, 8, 8, 0).since_utc_s == at(3, 8, 8, 0));
}
END_TEST

START_TEST(a_turn_starts_by_the_clock_on_the_wall_on_both_sides_of_summer_time)
{
    struct rota_now spring = on(3, 8, 12, 0), autumn = on(11, 1, 12, 0);

    /* one hour less and one more than the seven days */
    ck_assert(on(3, 2, 9, 0).since_utc_s == at(3, 2, 9, 0));
    ck_assert_int_eq((int)(spring.until_utc_s - at(3, 2, 9, 0)), 7 * 86400 - 3600);
    ck_assert_int_eq((int)(autumn.until_utc_s - at(10, 26, 9, 0)), 7 * 86400 + 3600);
}
END_TEST

static const int64_t holidays[] = {20511}; /* 2026-02-27 */

static struct office_hours
the_hours(void)
{
    struct office_hours hours = {.holidays = holidays, .holiday_count = 1};
    int day;

    for (day = 1; day <= 6; day++) {
        hours.days[day] = (struct office_day){8 * 60, 18 * 60};
    }
    return hours;
}

START_TEST(the_office_opens_at_its_next_hour_but_not_on_a_holiday_or_its_day_off)
{
    struct office_hours hours = the_hours();

    ck_assert_int_eq(holidays[0], zone_days(2026, 2, 27));
    ck_assert(office_opens(&hours, &mountain, at(2, 25, 3, 0)) == at(2, 25, 8, 0));
    ck_assert(office_opens(&hours, &mountain, at(2, 25, 8, 0)) == at(2, 25, 8, 0));
    ck_assert(office_opens(&hours, &mountain, at(2, 25, 17, 59)) == at(2, 25, 17, 59));
    ck_assert(office_opens(&hours, &mountain, at(2, 25, 18, 0)) == at(2, 26, 8, 0));
    ck_assert(office_opens(&hours, &mountain, at(2, 26, 18, 0)) == at(2, 28, 8, 0));
    ck_assert(office_opens(&hours, &mountain, at(2, 28, 19, 0)) == at(3, 2, 8, 0));
}
END_TEST

START_TEST(an_office_that_never_opens_says_so)
{
    const struct office_hours never = {.holidays = NULL};

    ck_assert(office_opens(&never, &mountain, at(2, 25, 3, 0)) == INT64_MAX);
}
END_TEST

int
main(void)
{
    Suite *suite = suite_create("rota");
    TCase *tests = tcase_create("rota");
    SRunner *runner = srunner_create(suite);
    int failed;

    tcase_add_test(tests, a_turn_lasts_until_the_next_starts_and_weeks_come_round);
    tcase_add_test(tests, before_the_first_week_the_cycle_runs_backwards);
    tcase_add_test(tests, a_swap_takes_the_place_of_a_turn_and_then_the_turn_goes_on);
    tcase_add_test(tests, a_turn_starts_by_the_clock_on_the_wall_on_both_sides_of_summer_time);
    tcase_add_test(tests, the_office_opens_at_its_next_hour_but_not_on_a_holiday_or_its_day_off);
    tcase_add_test(tests, an_office_that_never_opens_says_so);
    suite_add_tcase(suite, tests);
    srunner_run_all(runner, CK_ENV);
    failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
