#include <check.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include <jansson.h>

#include "log.h"

static FILE *caught;

static void
catch_log(void)
{
    caught = tmpfile();
    ck_assert_ptr_nonnull(caught);
    ck_assert_int_ge(dup2(fileno(caught), STDERR_FILENO), 0);
}

/* What was logged since catch_log(), without the time in front. */
static const char *
logged(void)
{
    static char text[4096];
    size_t length;

    rewind(caught);
    length = fread(text, 1, sizeof(text) - 1, caught);
    text[length] = '\0';
    return text;
}

static const char *
after_time(const char *line)
{
    ck_assert_int_eq(strncmp(line, "at=20", 5), 0);
    return strchr(line, ' ') + 1;
}

START_TEST(a_line_is_an_event_with_its_pairs)
{
    log_event(LOG_INFO, "text-stored", "gateway", "valley", "id", log_number(-17), NULL);
    ck_assert_str_eq(after_time(logged()), "level=info event=text-stored gateway=valley id=-17\n");
}
END_TEST

START_TEST(a_null_value_leaves_its_pair_out)
{
    log_event(LOG_WARNING, "x", "a", (char *)NULL, "b", "1", NULL);
    ck_assert_str_eq(after_time(logged()), "level=warning event=x b=1\n");
}
END_TEST

START_TEST(logfmt_quotes_what_would_read_as_something_else)
{
    log_event(LOG_INFO, "x", "a", "two words", "b", "", "c", "k=v", "d", "\"q\"\\", "e",
              "line\nend\x7f", "f", "bad \xff byte", "g", "caf\xc3\xa9", NULL);
    ck_assert_str_eq(after_time(logged()),
                     "level=info event=x a=\"two words\" b=\"\" c=\"k=v\" d=\"\\\"q\\\"\\\\\" "
                     "e=\"line\\u000aend\\u007f\" f=\"bad \xef\xbf\xbd byte\" g=\"caf\xc3\xa9\"\n");
}
END_TEST

/* RFC 8259, read back with a JSON parser that is not ours. */
START_TEST(json_reads_back_as_it_was_told)
{
    json_t *line;

    log_setup(LOG_INFO, LOG_JSON);
    log_event(LOG_ERROR_LEVEL, "x", "a", "two \"words\"\n\\", "b", "bad \xff\xc3", NULL);
    line = json_loads(logged(), 0, NULL);
    ck_assert_ptr_nonnull(line);
    ck_assert_str_eq(json_string_value(json_object_get(line, "level")), "error");
    ck_assert_str_eq(json_string_value(json_object_get(line, "event")), "x");
    ck_assert_str_eq(json_string_value(json_object_get(line, "a")), "two \"words\"\n\\");
    ck_assert_str_eq(json_string_value(json_object_get(line, "b")), "bad \xef\xbf\xbd\xef\xbf\xbd");
    json_decref(line);
}
END_TEST

START_TEST(what_is_below_the_level_is_not_written)
{
    log_event(LOG_DEBUG, "hidden", NULL);
    ck_assert_str_eq(logged(), "");
    log_setup(LOG_DEBUG, LOG_LOGFMT);
    log_event(LOG_DEBUG, "shown", NULL);
    ck_assert_str_eq(after_time(logged()), "level=debug event=shown\n");
}
END_TEST

START_TEST(a_phone_shows_its_last_four_digits_only)
{
    ck_assert_str_eq(log_phone("+12085550123"), "\xe2\x80\xa6"
                                                "0123");
    ck_assert_str_eq(log_phone("911"), "911");
    ck_assert_str_eq(log_phone(""), "");
}
END_TEST

START_TEST(four_numbers_fit_one_event)
{
    log_event(LOG_INFO, "x", "a", log_number(1), "b", log_number(INT64_MIN), "c", log_number(3),
              "d", log_phone("+12085550104"), NULL);
    ck_assert_str_eq(after_time(logged()), "level=info event=x a=1 b=-9223372036854775808 c=3 "
                                           "d=\"\xe2\x80\xa6"
                                           "0104\"\n");
}
END_TEST

int
main(void)
{
    TCase *tests = tcase_create("log");
    Suite *suite = suite_create("log");
    SRunner *runner = srunner_create(suite);
    int failed;

    tcase_add_checked_fixture(tests, catch_log, NULL);
    tcase_add_test(tests, a_line_is_an_event_with_its_pairs);
    tcase_add_test(tests, a_null_value_leaves_its_pair_out);
    tcase_add_test(tests, logfmt_quotes_what_would_read_as_something_else);
    tcase_add_test(tests, json_reads_back_as_it_was_told);
    tcase_add_test(tests, what_is_below_the_level_is_not_written);
    tcase_add_test(tests, a_phone_shows_its_last_four_digits_only);
    tcase_add_test(tests, four_numbers_fit_one_event);
    suite_add_tcase(suite, tests);
    srunner_run_all(runner, CK_NORMAL);
    failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
