/* Who is on call by the rota, and how the shell shows it. */
#include <check.h>
#include <stdlib.h>
#include <string.h>

#include "duty.h"
#include "duty_calendar.h"
#include "memory.h"
#include "turns.h"

/* Mountain time of 2026, as in zone_test.c: 15 U.S.C. 260a. */
static const struct zone_step steps[] = {
    {1762070400, -7 * 3600}, {1772960400, -6 * 3600}, {1793520000, -7 * 3600}};
static const struct staff staff[] = {{.name = "Robin", .phone = "+12085550190"},
                                     {.name = "Kim", .phone = "+12085550191"},
                                     {.name = "Wilhelmina of the mill", .phone = "+12085550192"}};
static const size_t robin_kim[] = {0, 1}, kim[] = {1}, wilhelmina[] = {2};
static const struct rota_turn turns[] = {{0, 1, 540, {robin_kim, 2}}, {0, 5, 1080, {kim, 1}}};
static const struct rota_swap swaps[] = {
    {{2026, 3, 7, 20, 0, 0, 0}, {2026, 3, 8, 8, 0, 0, 0}, {wilhelmina, 1}}};
static const struct rota rota = {1, 20485, turns, 2, swaps, 1}; /* from 1 February 2026 */
static const struct office_hours hours = {.days = {[1] = {480, 1080}, [2] = {480, 1080}}};
static struct config config;
static void *arena;

static void
set_up(void)
{
    arena = talloc_new(NULL);
    config = (struct config){.zone_name = "America/Denver",
                             .zone = {steps, 3},
                             .staff = staff,
                             .staff_count = 3,
                             .rota = &rota};
}

static void
tear_down(void)
{
    talloc_free(arena);
}

static int64_t
at(int month, int day, int hour)
{
    const struct local_time local = {2026, month, day, hour, 0, 0, 0};

    return zone_utc(&config.zone, &local);
}

START_TEST(without_a_rota_it_is_the_staff_as_listed)
{
    struct duty duty;

    config.rota = NULL;
    duty = duty_at(arena, &config, at(3, 4, 12));
    ck_assert_uint_eq(duty.count, 3);
    ck_assert_uint_eq(duty.on_turn, 3);
    ck_assert_str_eq(duty.line[0]->name, "Robin");
    ck_assert_str_eq(duty.line[1]->name, "Kim");
}
END_TEST

START_TEST(those_of_the_turn_come_first_and_nobody_is_left_out)
{
    struct duty duty = duty_at(arena, &config, at(3, 6, 19));

    ck_assert_uint_eq(duty.count, 3);
    ck_assert_uint_eq(duty.on_turn, 1);
    ck_assert_str_eq(duty.line[0]->name, "Kim");
    ck_assert_str_eq(duty.line[1]->name, "Robin");
    ck_assert_uint_eq(duty_place(&duty, "+12085550192"), 2);
    ck_assert_uint_eq(duty_place(&duty, "+12085550199"), 3);
    ck_assert_int_eq(duty.since_utc_s, at(3, 6, 18));
    ck_assert_int_eq(duty.until_utc_s, at(3, 7, 20));
}
END_TEST

START_TEST(a_swap_leads_the_line_while_it_lasts)
{
    ck_assert_str_eq(duty_at(arena, &config, at(3, 7, 21)).line[0]->phone, "+12085550192");
    ck_assert(duty_at(arena, &config, at(3, 7, 21)).is_swap);
    ck_assert_str_eq(duty_at(arena, &config, at(3, 8, 8)).line[0]->name, "Kim");
}
END_TEST

static const char *
shown(int64_t at_utc_s)
{
    const struct duty duty = duty_at(arena, &config, at_utc_s);

    return duty_calendar(arena, &config, &duty, at_utc_s);
}

START_TEST(the_calendar_has_a_row_for_each_time_at_which_a_turn_starts)
{
    static const char expected[] =
        "Sat 7 Mar 21:00, America/Denver\n"
        "A swap, from Sat 7 Mar 20:00 until Sun 8 Mar 08:00.\n"
        "   1  +12085550192   Wilhelmina of the mill\n"
        "      not on this turn, called if none of them answers:\n"
        "   2  +12085550190   Robin\n"
        "   3  +12085550191   Kim\n"
        "\n"
        "      Sun 1     Mon 2     Tue 3     Wed 4     Thu 5     Fri 6     Sat 7\n"
        "00:00 Kim       Kim       Robin     Robin     Robin     Robin     Kim\n"
        "09:00 |         Robin     |         |         |         |         |\n"
        "18:00 |         |         |         |         |         Kim       |\n"
        "20:00 |         |         |         |         |         |         >Wilhelmi\n"
        "\n"
        "> the time asked about; | the same goes on\n";

    ck_assert_str_eq(shown(at(3, 7, 21)), expected);
}
END_TEST

START_TEST(the_week_of_the_change_to_summer_time_keeps_its_clock_times)
{
    const char *text = shown(at(3, 8, 8));

    ck_assert_ptr_nonnull(strstr(text, "\n08:00 >Kim      |         |"));
    ck_assert_ptr_nonnull(strstr(text, "\n09:00 |         Robin     |"));
}
END_TEST

START_TEST(it_says_when_the_office_opens)
{
    config.office_hours = &hours;
    ck_assert_ptr_nonnull(
        strstr(shown(at(3, 3, 19)), "The office is closed until Mon 9 Mar 08:00.\n"));
    ck_assert_ptr_nonnull(strstr(shown(at(3, 3, 12)), "The office is open.\n"));
}
END_TEST

START_TEST(no_line_is_wider_than_a_terminal)
{
    const char *line = shown(at(12, 31, 23));

    while (*line != '\0') {
        size_t length = strcspn(line, "\n");

        ck_assert_uint_le(length, DUTY_CALENDAR_COLUMNS);
        line += length + 1;
    }
}
END_TEST

/* ---- A turn is confirmed -------------------------------------------------------------------- */

static const char robins[] = "+12085550190", kims[] = "+12085550191",
                  wilhelminas[] = "+12085550192";

/* The turn of Friday, 18:00, after these events. */
static struct duty
after(const struct turn_row *rows, size_t count)
{
    struct duty duty = duty_at(arena, &config, at(3, 6, 18));

    duty_apply(arena, &duty, rows, count);
    return duty;
}

static enum turn_step
step(const struct duty *duty, int minutes, int next_minutes)
{
    int64_t next_utc_s;
    int64_t now_utc_s = at(3, 6, 18) + 60 * (int64_t)minutes;
    enum turn_step due = turn_step_due(duty, 600, now_utc_s, &next_utc_s);

    ck_assert_int_gt(next_utc_s, now_utc_s);
    if (due == TURN_WAIT) {
        ck_assert_int_eq(next_utc_s, at(3, 6, 18) + 60 * (int64_t)next_minutes);
    }
    return due;
}

enum { UNTIL_THE_SWAP = 26 * 60 };

START_TEST(whose_turn_begins_is_asked_and_passed_over_after_ten_minutes)
{
    const struct turn_row rows[] = {{TURN_ASKED, kims, at(3, 6, 18)}};
    struct duty unasked = after(NULL, 0), asked = after(rows, 1);

    ck_assert_int_eq(step(&unasked, 0, 0), TURN_ASK);
    ck_assert_int_eq(step(&asked, 0, 10), TURN_WAIT);
    ck_assert_int_eq(step(&asked, 9, 10), TURN_WAIT);
    ck_assert_int_eq(step(&asked, 10, 0), TURN_PASS);
    ck_assert_int_eq(step(&asked, 300, 0), TURN_PASS); /* the program was down meanwhile */
}
END_TEST

START_TEST(a_turn_that_began_long_ago_is_not_asked_about)
{
    struct duty unasked = after(NULL, 0);

    ck_assert_int_eq(step(&unasked, 59, 0), TURN_ASK);
    ck_assert_int_eq(step(&unasked, 60, UNTIL_THE_SWAP), TURN_WAIT);
}
END_TEST

START_TEST(nobody_is_asked_if_the_configuration_says_so)
{
    struct duty unasked = after(NULL, 0);
    int64_t next_utc_s;

    ck_assert_int_eq(turn_step_due(&unasked, 0, at(3, 6, 18), &next_utc_s), TURN_WAIT);
}
END_TEST

START_TEST(who_was_asked_in_vain_goes_to_the_end_and_the_next_is_asked)
{
    const struct turn_row rows[] = {{TURN_ASKED, kims, at(3, 6, 18)},
                                    {TURN_PASSED, kims, at(3, 6, 18) + 600}};
    struct duty duty = after(rows, 2);

    ck_assert_str_eq(duty.line[0]->phone, robins);
    ck_assert_str_eq(duty.line[2]->phone, kims);
    ck_assert_uint_eq(duty.passed, 1);
    ck_assert_int_eq(step(&duty, 10, 0), TURN_ASK);
    ck_assert_int_eq(step(&duty, 200, 0), TURN_ASK); /* however late */
}
END_TEST

START_TEST(who_confirms_is_first_even_after_being_passed_over)
{
    const struct turn_row rows[] = {{TURN_ASKED, kims, at(3, 6, 18)},
                                    {TURN_PASSED, kims, at(3, 6, 18) + 600},
                                    {TURN_ASKED, robins, at(3, 6, 18) + 600},
                                    {TURN_CONFIRMED, kims, at(3, 6, 18) + 660}};
    struct duty duty = after(rows, 4);

    ck_assert_str_eq(duty.line[0]->phone, kims);
    ck_assert_str_eq(duty.line[1]->phone, robins);
    ck_assert_uint_eq(duty.count, 3);
    ck_assert_str_eq(duty.confirmed_by->phone, kims);
    ck_assert_int_eq(step(&duty, 30, UNTIL_THE_SWAP), TURN_WAIT);
}
END_TEST

START_TEST(if_all_were_asked_in_vain_the_line_is_as_the_rota_has_it)
{
    const struct turn_row rows[] = {{TURN_PASSED, kims, at(3, 6, 18)},
                                    {TURN_PASSED, robins, at(3, 6, 18) + 600},
                                    {TURN_PASSED, wilhelminas, at(3, 6, 18) + 1200}};
    struct duty duty = after(rows, 3);

    ck_assert_str_eq(duty.line[0]->phone, kims);
    ck_assert_uint_eq(duty.passed, duty.count);
    ck_assert_int_eq(step(&duty, 30, UNTIL_THE_SWAP), TURN_WAIT);
}
END_TEST

int
main(void)
{
    Suite *suite = suite_create("duty");
    TCase *tests = tcase_create("duty");
    SRunner *runner;
    int failed;

    tcase_add_checked_fixture(tests, set_up, tear_down);
    tcase_add_test(tests, without_a_rota_it_is_the_staff_as_listed);
    tcase_add_test(tests, those_of_the_turn_come_first_and_nobody_is_left_out);
    tcase_add_test(tests, a_swap_leads_the_line_while_it_lasts);
    tcase_add_test(tests, the_calendar_has_a_row_for_each_time_at_which_a_turn_starts);
    tcase_add_test(tests, the_week_of_the_change_to_summer_time_keeps_its_clock_times);
    tcase_add_test(tests, it_says_when_the_office_opens);
    tcase_add_test(tests, no_line_is_wider_than_a_terminal);
    tcase_add_test(tests, whose_turn_begins_is_asked_and_passed_over_after_ten_minutes);
    tcase_add_test(tests, a_turn_that_began_long_ago_is_not_asked_about);
    tcase_add_test(tests, nobody_is_asked_if_the_configuration_says_so);
    tcase_add_test(tests, who_was_asked_in_vain_goes_to_the_end_and_the_next_is_asked);
    tcase_add_test(tests, who_confirms_is_first_even_after_being_passed_over);
    tcase_add_test(tests, if_all_were_asked_in_vain_the_line_is_as_the_rota_has_it);
    suite_add_tcase(suite, tests);
    runner = srunner_create(suite);
    srunner_run_all(runner, CK_ENV);
    failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
