#include "fixture.h"

/* Mountain time of 2026: clocks go forward on 8 March at 09:00 UTC and back on 1 November at 08:00
 * UTC (15 U.S.C. 260a: second Sunday of March, first Sunday of November, at 2 am). */
static const struct zone_step steps[] = {
    {1762070400, -7 * 3600}, {1772960400, -6 * 3600}, {1793520000, -7 * 3600}};
static const struct zone mountain = {steps, 3};

static void
shows(int64_t utc_s, int year, int month, int day, int hour, int minute, int weekday)
{
    struct local_time local = zone_local(&mountain, utc_s);

    ck_assert_int_eq(local.year, year);
    ck_assert_int_eq(local.month, month);
    ck_assert_int_eq(local.day, day);
    ck_assert_int_eq(local.hour, hour);
    ck_assert_int_eq(local.minute, minute);
    ck_assert_int_eq(local.weekday, weekday);
}

START_TEST(the_wall_shows_local_time_on_both_sides_of_each_change)
{
    shows(1770747300, 2026, 2, 10, 11, 15, 2);
    shows(1772960399, 2026, 3, 8, 1, 59, 0);
    shows(1772960400, 2026, 3, 8, 3, 0, 0);
    shows(1793519999, 2026, 11, 1, 1, 59, 0);
    shows(1793520000, 2026, 11, 1, 1, 0, 0);
}
END_TEST

START_TEST(days_before_1970_and_leap_days_are_right)
{
    static const struct zone_step utc_step = {0, 0};
    static const struct zone utc = {&utc_step, 1};
    struct local_time local = zone_local(&utc, -1);

    ck_assert_int_eq(local.year, 1969);
    ck_assert_int_eq(local.day, 31);
    ck_assert_int_eq(local.second, 59);
    ck_assert_int_eq(local.weekday, 3);
    local = zone_local(&utc, 951782400); /* 2000-02-29 */
    ck_assert_int_eq(local.month, 2);
    ck_assert_int_eq(local.day, 29);
    ck_assert_int_eq(local.weekday, 2);
}
END_TEST

START_TEST(a_wall_time_leads_back_to_its_moment)
{
    int64_t utc_s;

    for (utc_s = 1762070400; utc_s < 1800000000; utc_s += 1799) {
        struct local_time local = zone_local(&mountain, utc_s);
        bool shown_twice = utc_s >= 1793520000 && utc_s < 1793520000 + 3600;

        ck_assert_int_eq(zone_utc(&mountain, &local), utc_s - (shown_twice ? 3600 : 0));
    }
}
END_TEST

START_TEST(of_two_moments_the_earlier_and_in_a_gap_the_old_offset)
{
    struct local_time twice = {2026, 11, 1, 1, 30, 0, 0};
    struct local_time never = {2026, 3, 8, 2, 30, 0, 0};

    ck_assert_int_eq(zone_utc(&mountain, &twice), 1793520000 - 1800);
    ck_assert_int_eq(zone_utc(&mountain, &never), 1772960400 + 1800);
}
END_TEST

int
main(void)
{
    TCase *tests = tcase_create("zone");

    tcase_add_test(tests, the_wall_shows_local_time_on_both_sides_of_each_change);
    tcase_add_test(tests, days_before_1970_and_leap_days_are_right);
    tcase_add_test(tests, a_wall_time_leads_back_to_its_moment);
    tcase_add_test(tests, of_two_moments_the_earlier_and_in_a_gap_the_old_offset);
    return fixture_run(tests);
}
