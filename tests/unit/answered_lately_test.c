#include <check.h>
#include <stdio.h>
#include <stdlib.h>

#include "answered_lately.h"

static struct answered_lately *lately;

static void
begin(void)
{
    lately = answered_lately_new();
}

static void
end(void)
{
    answered_lately_free(lately);
}

START_TEST(a_sender_is_answered_once_in_five_minutes)
{
    ck_assert(!answered_lately(lately, "+12085550123", ALERT_URGENT, 1000));
    answered_lately_note(lately, "+12085550123", ALERT_URGENT, 1000);
    ck_assert(answered_lately(lately, "+12085550123", ALERT_URGENT, 1299));
    ck_assert(!answered_lately(lately, "+12085550123", ALERT_URGENT, 1300));
    ck_assert(!answered_lately(lately, "+12085550124", ALERT_URGENT, 1001));
}
END_TEST

START_TEST(something_graver_is_let_through_and_something_lesser_is_not)
{
    answered_lately_note(lately, "+12085550123", ALERT_URGENT, 1000);
    ck_assert(!answered_lately(lately, "+12085550123", ALERT_EMERGENCY, 1010));
    answered_lately_note(lately, "+12085550123", ALERT_EMERGENCY, 1010);
    ck_assert(answered_lately(lately, "+12085550123", ALERT_EMERGENCY, 1020));
    ck_assert(answered_lately(lately, "+12085550123", ALERT_URGENT, 1020));
}
END_TEST

START_TEST(a_clock_that_was_set_back_silences_nobody)
{
    answered_lately_note(lately, "+12085550123", ALERT_EMERGENCY, 100000);
    ck_assert(!answered_lately(lately, "+12085550123", ALERT_EMERGENCY, 1000));
}
END_TEST

START_TEST(it_never_remembers_more_than_it_may)
{
    char phone[32];
    int i;

    for (i = 0; i < 2 * ANSWERED_SENDERS_MAX + 5; i++) {
        snprintf(phone, sizeof(phone), "+1208%07d", i);
        answered_lately_note(lately, phone, ALERT_URGENT, 1000);
        ck_assert_uint_le(answered_lately_count(lately), ANSWERED_SENDERS_MAX);
        ck_assert(answered_lately(lately, phone, ALERT_URGENT, 1000));
    }
}
END_TEST

int
main(void)
{
    TCase *tests = tcase_create("answered_lately");
    Suite *suite = suite_create("answered_lately");
    SRunner *runner = srunner_create(suite);
    int failed;

    tcase_add_checked_fixture(tests, begin, end);
    tcase_add_test(tests, a_sender_is_answered_once_in_five_minutes);
    tcase_add_test(tests, something_graver_is_let_through_and_something_lesser_is_not);
    tcase_add_test(tests, a_clock_that_was_set_back_silences_nobody);
    tcase_add_test(tests, it_never_remembers_more_than_it_may);
    suite_add_tcase(suite, tests);
    srunner_run_all(runner, CK_NORMAL);
    failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
