/* It is Tuesday, Feb 10; Ana's rental is due on Saturday, Feb 14, at 10 am. */
#include "fixture.h"

static struct fixture *stage;

static void
set_up(void)
{
    stage = fixture_new();
}

static void
tear_down(void)
{
    fixture_free(stage);
}

START_TEST(how_many_batteries_and_by_when_is_told_to_the_office)
{
    fixture_text(stage, "can we get 2 more batteries by friday");
    fixture_alerts(stage, ALERT_OFFICE, "office:extra-battery");
    ck_assert_str_eq(stage->verdict.alert.brief, "wants 2 more batteries by Friday, Feb 13");
    fixture_says(stage, "Request: batteries more: 2, by Friday, Feb 13.");
    fixture_says(stage, "Office: 8 am to 6 pm.");
}
END_TEST

START_TEST(what_is_not_told_is_asked)
{
    fixture_text(stage, "can we get another battery");
    ck_assert_str_eq(stage->verdict.alert.brief, "wants 1 more battery");
    fixture_says(stage, "By what day?");
    fixture_text(stage, "more batteries by saturday");
    ck_assert_str_eq(stage->verdict.alert.brief, "wants a battery by Saturday, Feb 14");
    fixture_says(stage, "How many?");
}
END_TEST

START_TEST(a_longer_rental_is_counted_from_the_day_that_it_is_due)
{
    fixture_text(stage, "extend my rental two more days");
    fixture_alerts(stage, ALERT_OFFICE, "office:extend");
    ck_assert_str_eq(stage->verdict.alert.brief, "wants 2 more days to Monday, Feb 16");
    fixture_says(stage, "Request: days more: 2, to Monday, Feb 16.");
    fixture_text(stage, "i need another week");
    ck_assert_str_eq(stage->verdict.alert.brief, "wants 7 more days to Saturday, Feb 21");
    fixture_text(stage, "may i hang on to it until sunday");
    fixture_says(stage, "Request: keep it to Sunday, Feb 15.");
}
END_TEST

START_TEST(a_stranger_is_only_told_whom_to_call)
{
    fixture_stranger(stage);
    fixture_text(stage, "can we get 2 more batteries by friday");
    fixture_says_not(stage, "Request");
    ck_assert_int_eq(stage->verdict.alert.level, ALERT_NONE);
}
END_TEST

int
main(void)
{
    TCase *tests = tcase_create("office_request");

    tcase_add_checked_fixture(tests, set_up, tear_down);
    tcase_add_test(tests, how_many_batteries_and_by_when_is_told_to_the_office);
    tcase_add_test(tests, what_is_not_told_is_asked);
    tcase_add_test(tests, a_longer_rental_is_counted_from_the_day_that_it_is_due);
    tcase_add_test(tests, a_stranger_is_only_told_whom_to_call);
    return fixture_run(tests);
}
