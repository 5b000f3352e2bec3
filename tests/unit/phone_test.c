/*
 * ITU-T E.164: at most 15 digits, the first not 0, written with +. RFC 3966: "tel:", visual
 * separators, parameters. North American numbers are those set aside for fiction, 555-0100 to
 * 555-0199; those of other countries are invented digits.
 */
#include <check.h>
#include <stdlib.h>

#include "gateway.h"
#include "memory.h"

static const struct config america = {
    .country_code = "1", .national_prefix = "1", .national_digits = 10};
/* A country as many are: 0 is dialled before national numbers, whose length varies. */
static const struct config varied = {
    .country_code = "49", .national_prefix = "0", .national_digits = 0};
/* No prefix, eight digits: as long as the longest short code. */
static const struct config eight = {
    .country_code = "47", .national_prefix = "", .national_digits = 8};

static const struct {
    const struct config *config;
    const char *text;
    const char *number; /* NULL: refused */
} numbers[] = {
    {&america, "+12085550123", "+12085550123"},
    {&america, "tel:+1-208-555-0123", "+12085550123"},
    {&america, "TEL:+12085550123;ext=5", "+12085550123"},
    {&america, "(208) 555-0123", "+12085550123"},
    {&america, "208.555.0123", "+12085550123"},
    {&america, "1 208 555 0123", "+12085550123"},
    {&america, "12085550123", "+12085550123"},
    {&america, " 12085550123", "+12085550123"}, /* a form's + that was read as a space */
    {&america, "0012085550123", "+12085550123"},
    {&america, "011 49 3055 50123", "+49305550123"},
    {&america, "+49 30 5550123", "+49305550123"},
    {&america, "+123456789012345", "+123456789012345"},
    {&america, "+1234567890123456", NULL}, /* 16 digits */
    {&america, "+02085550123", NULL},
    {&america, "+", NULL},
    {&america, "", NULL},
    {&america, "555-0123-", "5550123"}, /* seven digits: no number here, but maybe a short code */
    {&america, "72345", "72345"},
    {&america, "911", "911"},
    {&america, "12", NULL},
    {&america, "123456789", NULL},
    {&america, "1085550123", NULL}, /* ten digits, but no area code starts with 1 */
    {&america, "INFO", NULL},
    {&america, "Grandma", NULL},
    {&america, "1-800-FLOWERS", NULL},
    {&america, "+1+2085550123", NULL},
    {&america, "208+5550123", NULL},
    {&varied, "030 5550123", "+49305550123"},
    {&varied, "0049 30 5550123", "+49305550123"},
    {&varied, "+49305550123", "+49305550123"},
    {&varied, "11833", "11833"},
    {&eight, "21 55 01 23", "+4721550123"},
    {&eight, "4721550123", "+4721550123"},
    {&eight, "2155", "2155"},
};

START_TEST(each_spelling_becomes_one_number)
{
    void *arena = talloc_new(NULL);
    const char *found = gateway_phone(arena, numbers[_i].config, numbers[_i].text);

    if (numbers[_i].number == NULL) {
        ck_assert_msg(found == NULL, "%s became %s", numbers[_i].text, found);
    } else {
        ck_assert_msg(found != NULL, "%s", numbers[_i].text);
        ck_assert_str_eq(found, numbers[_i].number);
    }
    talloc_free(arena);
}
END_TEST

START_TEST(a_number_once_written_stays_as_it_is)
{
    void *arena = talloc_new(NULL);

    if (numbers[_i].number != NULL) {
        const char *again = gateway_phone(arena, numbers[_i].config, numbers[_i].number);

        ck_assert_str_eq(again, numbers[_i].number);
    }
    talloc_free(arena);
}
END_TEST

int
main(void)
{
    Suite *suite = suite_create("phone");
    TCase *tests = tcase_create("phone");
    SRunner *runner;
    int count = (int)(sizeof(numbers) / sizeof(numbers[0]));
    int failed;

    tcase_add_loop_test(tests, each_spelling_becomes_one_number, 0, count);
    tcase_add_loop_test(tests, a_number_once_written_stays_as_it_is, 0, count);
    suite_add_tcase(suite, tests);
    runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
