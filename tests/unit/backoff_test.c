#include <check.h>
#include <stdlib.h>

#include "backoff.h"

static const struct backoff plain = {.first_s = 2, .longest_s = 120, .longest_ask_s = 600};

START_TEST(the_wait_doubles_between_half_and_the_whole)
{
    static const struct {
        int tries;
        int64_t low, high;
    } rows[] = {{1, 1, 2}, {2, 2, 4}, {3, 4, 8}, {6, 32, 64}, {7, 60, 120}, {8, 60, 120}};
    size_t i;
    uint32_t random;

    for (i = 0; i < sizeof(rows) / sizeof(rows[0]); i++) {
        int64_t least = INT64_MAX;
        int64_t most = 0;

        for (random = 0; random < 1000; random++) {
            int64_t wait = backoff_wait_s(&plain, rows[i].tries, random, 0);

            least = wait < least ? wait : least;
            most = wait > most ? wait : most;
        }
        ck_assert_int_eq(least, rows[i].low);
        ck_assert_int_eq(most, rows[i].high);
    }
}
END_TEST

START_TEST(any_number_of_tries_and_any_random_number_stay_in_bounds)
{
    static const uint32_t randoms[] = {0, 1, 0x7fffffff, 0x80000000, UINT32_MAX};
    size_t i;

    for (i = 0; i < sizeof(randoms) / sizeof(randoms[0]); i++) {
        ck_assert_int_ge(backoff_wait_s(&plain, 2147483647, randoms[i], 0), 60);
        ck_assert_int_le(backoff_wait_s(&plain, 2147483647, randoms[i], 0), 120);
        ck_assert_int_ge(backoff_wait_s(&plain, 1, randoms[i], 0), 1);
    }
}
END_TEST

/* RFC 9110, 10.2.3: Retry-After is how long one ought to wait. */
START_TEST(retry_after_lengthens_the_wait_but_never_shortens_it)
{
    ck_assert_int_eq(backoff_wait_s(&plain, 1, 0, 300), 300);
    ck_assert_int_eq(backoff_wait_s(&plain, 7, 0, 1), 60);
    ck_assert_int_eq(backoff_wait_s(&plain, 1, 0, INT64_MAX), 600);
}
END_TEST

START_TEST(an_emergency_is_tried_again_within_half_a_minute_whatever_the_gateway_asks)
{
    struct backoff emergency = backoff_for(URGENCY_EMERGENCY);
    int tries;

    for (tries = 1; tries < 100; tries++) {
        ck_assert_int_le(backoff_wait_s(&emergency, tries, UINT32_MAX, 86400), 30);
        ck_assert_int_le(backoff_wait_s(&emergency, tries, UINT32_MAX, 0), 15);
    }
}
END_TEST

START_TEST(the_more_urgent_never_waits_longer)
{
    int urgency;

    for (urgency = URGENCY_EMERGENCY; urgency < URGENCY_OFFICE; urgency++) {
        struct backoff graver = backoff_for((enum urgency)urgency);
        struct backoff lesser = backoff_for((enum urgency)(urgency + 1));

        ck_assert_int_le(graver.first_s, lesser.first_s);
        ck_assert_int_le(graver.longest_s, lesser.longest_s);
        ck_assert_int_le(graver.longest_ask_s, lesser.longest_ask_s);
    }
}
END_TEST

int
main(void)
{
    TCase *tests = tcase_create("backoff");
    Suite *suite = suite_create("backoff");
    SRunner *runner = srunner_create(suite);
    int failed;

    tcase_add_test(tests, the_wait_doubles_between_half_and_the_whole);
    tcase_add_test(tests, any_number_of_tries_and_any_random_number_stay_in_bounds);
    tcase_add_test(tests, retry_after_lengthens_the_wait_but_never_shortens_it);
    tcase_add_test(tests,
                   an_emergency_is_tried_again_within_half_a_minute_whatever_the_gateway_asks);
    tcase_add_test(tests, the_more_urgent_never_waits_longer);
    suite_add_tcase(suite, tests);
    srunner_run_all(runner, CK_NORMAL);
    failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
