/* Check values: WHATWG URL Standard, section 5 (application/x-www-form-urlencoded). */
#include <check.h>
#include <stdlib.h>
#include <string.h>

#include "form.h"
#include "memory.h"

static void *arena;

static void
set_up(void)
{
    arena = talloc_new(NULL);
}

static void
tear_down(void)
{
    talloc_free(arena);
}

static struct form
read_form(const char *bytes)
{
    struct fault fault = {""};
    struct form form;

    ck_assert_msg(form_read(arena, bytes, strlen(bytes), &form, &fault) == 0, "%s", fault.text);
    return form;
}

START_TEST(plus_and_percent_are_decoded)
{
    struct form form = read_form("from=%2B12085550123&body=Ma%C3%B1ana+a+las+8%21&empty=&bare");

    ck_assert_uint_eq(form.count, 4);
    ck_assert_str_eq(form_get(&form, "from"), "+12085550123");
    ck_assert_str_eq(form_get(&form, "body"), "Ma\xc3\xb1"
                                              "ana a las 8!");
    ck_assert_str_eq(form_get(&form, "empty"), "");
    ck_assert_str_eq(form_get(&form, "bare"), "");
    ck_assert_ptr_null(form_get(&form, "missing"));
}
END_TEST

START_TEST(what_is_no_escape_stays_and_empty_pairs_are_passed_over)
{
    struct form form = read_form("&&a=100%&b=%zz&&c=d=e&");

    ck_assert_uint_eq(form.count, 3);
    ck_assert_str_eq(form_get(&form, "a"), "100%");
    ck_assert_str_eq(form_get(&form, "b"), "%zz");
    ck_assert_str_eq(form_get(&form, "c"), "d=e");
}
END_TEST

START_TEST(nothing_is_an_empty_form)
{
    struct form form = read_form("");

    ck_assert_uint_eq(form.count, 0);
    form_sort(&form);
}
END_TEST

START_TEST(a_nul_is_refused_encoded_or_not)
{
    struct fault fault = {""};
    struct form form;

    ck_assert_int_eq(form_read(arena, "a=x%00y", 7, &form, &fault), -1);
    ck_assert_int_eq(form_read(arena, "a=x\0y", 5, &form, &fault), -1);
    ck_assert_ptr_nonnull(strstr(fault.text, "NUL"));
}
END_TEST

START_TEST(too_many_fields_are_refused)
{
    char *bytes = memory_copy(arena, "");
    struct fault fault = {""};
    struct form form;
    int i;

    for (i = 0; i <= FORM_PAIRS_MAX; i++) {
        memory_append(&bytes, "a=%d&", i);
    }
    ck_assert_int_eq(form_read(arena, bytes, strlen(bytes), &form, &fault), -1);
}
END_TEST

START_TEST(pairs_are_sorted_by_bytes_of_name_and_then_of_value)
{
    struct form form = read_form("b=1&a=2&B=3&a=1&ab=0");

    form_sort(&form);
    ck_assert_str_eq(form.pairs[0].name, "B");
    ck_assert_str_eq(form.pairs[1].value, "1");
    ck_assert_str_eq(form.pairs[2].value, "2");
    ck_assert_str_eq(form.pairs[3].name, "ab");
    ck_assert_str_eq(form.pairs[4].name, "b");
}
END_TEST

START_TEST(what_is_written_reads_back_the_same)
{
    static const char value[] = "1 + 1 = 2 & 100% ~ \xc3\xb1 \n \"{}\"";
    char *text = memory_copy(arena, "");
    struct form form;

    form_append(&text, "to", "+12085550123");
    form_append(&text, "a b&", value);
    ck_assert_ptr_nonnull(strstr(text, "to=%2B12085550123&a+b%26=1+%2B+1+%3D+2"));
    form = read_form(text);
    ck_assert_uint_eq(form.count, 2);
    ck_assert_str_eq(form_get(&form, "a b&"), value);
}
END_TEST

int
main(void)
{
    Suite *suite = suite_create("form");
    TCase *tests = tcase_create("form");
    SRunner *runner;
    int failed;

    tcase_add_checked_fixture(tests, set_up, tear_down);
    tcase_add_test(tests, plus_and_percent_are_decoded);
    tcase_add_test(tests, what_is_no_escape_stays_and_empty_pairs_are_passed_over);
    tcase_add_test(tests, nothing_is_an_empty_form);
    tcase_add_test(tests, a_nul_is_refused_encoded_or_not);
    tcase_add_test(tests, too_many_fields_are_refused);
    tcase_add_test(tests, pairs_are_sorted_by_bytes_of_name_and_then_of_value);
    tcase_add_test(tests, what_is_written_reads_back_the_same);
    suite_add_tcase(suite, tests);
    runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
