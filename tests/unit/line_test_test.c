/* The test text: when it is due, and when an e-mail says it was written. */
#include <check.h>
#include <stdlib.h>

#include "clock.h"
#include "line_test.h"
#include "mailer.h"
#include "memory.h"

static void *arena;
static struct zone denver;

static void
set_up(void)
{
    struct fault fault;

    arena = talloc_new(NULL);
    ck_assert_int_eq(clock_zone(arena, "America/Denver", 1771034400, 5, &denver, &fault), 0);
}

static void
tear_down(void)
{
    talloc_free(arena);
}

/* As clock_read() reads it. */
static int64_t
at(const char *text)
{
    int64_t utc_s;

    ck_assert_int_eq(clock_read(text, &utc_s), 0);
    return utc_s;
}

static const struct {
    const char *last, *next;
    int at_minutes;
} times[] = {
    {"2026-02-13T09:00:00-07:00", "2026-02-13T10:00:00-07:00", 600},
    {"2026-02-13T10:00:00-07:00", "2026-02-14T10:00:00-07:00", 600},
    {"2026-02-13T10:00:01-07:00", "2026-02-14T10:00:00-07:00", 600},
    {"2026-02-28T23:59:59-07:00", "2026-03-01T00:00:00-07:00", 0},
    {"2026-12-31T23:00:00-07:00", "2027-01-01T10:30:00-07:00", 630},
    /* Clocks go forward on March 8 and back on November 1, 2026 (zone database). */
    {"2026-03-07T10:00:00-07:00", "2026-03-08T10:00:00-06:00", 600},
    {"2026-10-31T10:00:00-06:00", "2026-11-01T10:00:00-07:00", 600},
    /* 2:30 does not exist that night: the moment that the old offset gives, and only once. */
    {"2026-03-07T02:30:00-07:00", "2026-03-08T03:30:00-06:00", 150},
    {"2026-03-08T03:30:00-06:00", "2026-03-09T02:30:00-06:00", 150},
    /* 1:30 is there twice: the earlier one, and only once. */
    {"2026-10-31T01:30:00-06:00", "2026-11-01T01:30:00-06:00", 90},
    {"2026-11-01T01:30:00-06:00", "2026-11-02T01:30:00-07:00", 90},
};

START_TEST(it_is_due_when_the_wall_next_shows_its_time)
{
    int64_t next_utc_s = line_test_next(at(times[_i].last), times[_i].at_minutes, &denver);

    ck_assert_str_eq(clock_text(arena, next_utc_s), clock_text(arena, at(times[_i].next)));
}
END_TEST

/* RFC 5322, 3.3, with a day whose weekday RFC 9110, 5.6.7, tells. */
START_TEST(an_e_mail_is_dated_as_the_standard_wants_it)
{
    ck_assert_str_eq(mail_date(arena, 784111777), "Sun, 06 Nov 1994 08:49:37 +0000");
}
END_TEST

int
main(void)
{
    TCase *tests = tcase_create("line_test");
    Suite *suite = suite_create("line_test");
    SRunner *runner = srunner_create(suite);
    int failed;

    tcase_add_checked_fixture(tests, set_up, tear_down);
    tcase_add_loop_test(tests, it_is_due_when_the_wall_next_shows_its_time, 0,
                        sizeof(times) / sizeof(times[0]));
    tcase_add_test(tests, an_e_mail_is_dated_as_the_standard_wants_it);
    suite_add_tcase(suite, tests);
    srunner_run_all(runner, CK_NORMAL);
    failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
