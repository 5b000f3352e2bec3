#include <check.h>
#include <stdlib.h>

#include "alert_steps.h"

/* The times of the house's own table: emergency 2 and 5 min, re-check 5; urgent 10, 20, 15. Paging
 * at once, a second person after 2 minutes, the owner after 5: common practice, no source. */
static const struct alert_policy emergency = {.next_s = 120, .everyone_s = 300, .recheck_s = 300};
static const struct alert_policy urgent = {.next_s = 600, .everyone_s = 1200, .recheck_s = 900};
static const struct alert_policy office = {0, 0, 0, 0}, daily = {0, 0, 0, 86400};

enum { OPENED = 1000000, LINE = 4 };

static struct alert_call_step
untaken(const struct alert_policy *policy, int64_t age_s)
{
    struct alert_state state = {.level_utc_s = OPENED};

    return alert_steps_due(&state, policy, OPENED + age_s, LINE);
}

static struct alert_call_step
taken(const struct alert_policy *policy, size_t place, int64_t age_s)
{
    struct alert_state state = {
        .level_utc_s = OPENED - 60, .is_taken = true, .taken_utc_s = OPENED, .taken_place = place};

    return alert_steps_due(&state, policy, OPENED + age_s, LINE);
}

START_TEST(an_emergency_goes_to_one_then_two_then_everyone)
{
    static const struct {
        int64_t age_s;
        size_t count;
        int64_t next_age_s;
    } rows[] = {
        {0, 1, 120},   {119, 1, 120}, {120, 2, 240},   {240, 3, 300},
        {299, 3, 300}, {300, 4, 420}, {1000, 4, 1120},
    };
    size_t i;

    for (i = 0; i < sizeof(rows) / sizeof(rows[0]); i++) {
        struct alert_call_step step = untaken(&emergency, rows[i].age_s);

        ck_assert_uint_eq(step.from, 0);
        ck_assert_uint_eq(step.count, rows[i].count);
        ck_assert_int_eq(step.next_utc_s, OPENED + rows[i].next_age_s);
    }
}
END_TEST

START_TEST(an_urgent_alert_goes_on_after_10_and_20_minutes)
{
    ck_assert_uint_eq(untaken(&urgent, 0).count, 1);
    ck_assert_int_eq(untaken(&urgent, 0).next_utc_s, OPENED + 600);
    ck_assert_uint_eq(untaken(&urgent, 600).count, 2);
    ck_assert_int_eq(untaken(&urgent, 600).next_utc_s, OPENED + 1200);
    ck_assert_uint_eq(untaken(&urgent, 1200).count, LINE);
    ck_assert_int_eq(untaken(&urgent, 1200).next_utc_s, OPENED + 1800);
}
END_TEST

START_TEST(an_office_alert_is_called_once_or_once_a_day)
{
    ck_assert_uint_eq(untaken(&office, 0).count, 1);
    ck_assert_int_eq(untaken(&office, 0).next_utc_s, INT64_MAX);
    ck_assert_int_eq(untaken(&office, 100000).next_utc_s, INT64_MAX);
    ck_assert_int_eq(taken(&office, 0, 100000).next_utc_s, INT64_MAX);
    ck_assert_int_eq(untaken(&daily, 100).next_utc_s, OPENED + 100 + 86400);
    ck_assert_int_eq(taken(&daily, 0, 100).next_utc_s, OPENED + 100 + 86400);
    ck_assert_uint_eq(untaken(&daily, 900000).count, 1);
}
END_TEST

START_TEST(after_a_long_time_down_everyone_is_called_at_once)
{
    ck_assert_uint_eq(untaken(&emergency, 86400).count, LINE);
}
END_TEST

START_TEST(taken_without_outcome_goes_to_the_next_in_line_round_its_end)
{
    struct alert_call_step step = taken(&emergency, 3, 300);

    ck_assert_uint_eq(step.from, 3);
    ck_assert_uint_eq(step.count, 2); /* whoever took it, and the front of the line */
    ck_assert_int_eq(step.next_utc_s, OPENED + 600);
    ck_assert_uint_eq(taken(&emergency, 3, 600).count, 3);
    ck_assert_uint_eq(taken(&emergency, 3, 86400).count, LINE);
}
END_TEST

START_TEST(one_person_on_call_is_called_again_and_again)
{
    struct alert_state state = {.level_utc_s = OPENED};
    int64_t now = OPENED;
    int calls;

    for (calls = 0; calls < 100; calls++) {
        struct alert_call_step step = alert_steps_due(&state, &emergency, now, 1);

        ck_assert_uint_eq(step.count, 1);
        ck_assert_int_gt(step.next_utc_s, now);
        ck_assert_int_le(step.next_utc_s - now, emergency.next_s);
        now = step.next_utc_s;
    }
}
END_TEST

START_TEST(who_was_called_before_it_was_raised_is_called_with_the_first)
{
    struct alert_state state = {.level_utc_s = OPENED, .people_called = 2};

    ck_assert_uint_eq(alert_steps_due(&state, &emergency, OPENED, LINE).count, 2);
    ck_assert_int_eq(alert_steps_due(&state, &emergency, OPENED, LINE).next_utc_s, OPENED + 120);
    ck_assert_uint_eq(alert_steps_due(&state, &emergency, OPENED + 240, LINE).count, 3);
    state.people_called = 9; /* more than are on call by now */
    ck_assert_uint_eq(alert_steps_due(&state, &emergency, OPENED, LINE).count, LINE);
}
END_TEST

START_TEST(a_clock_that_was_set_back_still_calls)
{
    struct alert_call_step step = untaken(&emergency, -5000);

    ck_assert_uint_eq(step.count, 1);
    ck_assert_int_eq(step.next_utc_s, OPENED - 5000 + 120);
}
END_TEST

int
main(void)
{
    TCase *tests = tcase_create("alert_steps");
    Suite *suite = suite_create("alert_steps");
    SRunner *runner = srunner_create(suite);
    int failed;

    tcase_add_test(tests, an_emergency_goes_to_one_then_two_then_everyone);
    tcase_add_test(tests, an_urgent_alert_goes_on_after_10_and_20_minutes);
    tcase_add_test(tests, an_office_alert_is_called_once_or_once_a_day);
    tcase_add_test(tests, after_a_long_time_down_everyone_is_called_at_once);
    tcase_add_test(tests, taken_without_outcome_goes_to_the_next_in_line_round_its_end);
    tcase_add_test(tests, one_person_on_call_is_called_again_and_again);
    tcase_add_test(tests, who_was_called_before_it_was_raised_is_called_with_the_first);
    tcase_add_test(tests, a_clock_that_was_set_back_still_calls);
    suite_add_tcase(suite, tests);
    srunner_run_all(runner, CK_NORMAL);
    failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
