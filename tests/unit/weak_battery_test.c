/* Batteries that are empty long before they should be. Ana's last 60 min new at rest, 48 when they
 * are retired. */
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

static const char *const short_ones[] = {
    "the battery drained in half an hour, is that normal",
    "battery dies after 20 min",
    "the battery only lasted 15 minutes",
    "my battery barely holds 25 min now",
    "a full battery was dead within 30 minutes",
    "the battery doesnt even last 20 minutes",
    "it only lasts 15 minutes now",
    "la bateria se descargo en media hora",
    "la pila no aguanta ni 20 minutos",
    "la bateria se acaba en 15 minutos",
    "how come my battery dies in 10 minutes",
    "the battery will only last 10 minutes now",
    "battery lasts 10 minutes",
    "battery goes from full to empty in 10 min. how long will 2 full last",
    "how come my battery dies in 10 minutes? i have 2 full, how long do they last",
};

START_TEST(a_battery_much_shorter_than_its_table_calls_the_office_and_gets_no_hours)
{
    fixture_text(stage, short_ones[_i]);
    ck_assert_int_eq(stage->verdict.route, ROUTE_EQUIPMENT);
    fixture_alerts(stage, ALERT_OFFICE, "trouble:weak-battery");
    fixture_says_not(stage, "Plan on");
    fixture_says_not(stage, "Cuente con");
    fixture_says_not(stage, "Don't count on any time");
}
END_TEST

START_TEST(from_a_number_that_we_do_not_know_too)
{
    fixture_stranger(stage);
    fixture_text(stage, short_ones[_i]);
    ck_assert_int_eq(stage->verdict.route, ROUTE_EQUIPMENT);
    fixture_alerts(stage, ALERT_OFFICE, "trouble:weak-battery");
}
END_TEST

static const char *const no_trouble[] = {
    "the battery lasted about an hour, is that ok",
    "will the battery die in 20 minutes?",
    "what if the battery only lasts 20 minutes",
    "the walk takes only 20 minutes, how long does a battery last",
    "my phone battery died in 20 min",
    "the meeting lasted only 20 minutes",
    "one battery at 40% was empty after 20 min",
};

START_TEST(a_time_that_its_table_allows_or_that_is_only_asked_is_no_trouble)
{
    fixture_text(stage, no_trouble[_i]);
    ck_assert_ptr_null(fixture_answer(stage, "weak-battery"));
}
END_TEST

START_TEST(much_shorter_than_the_same_text_says_it_was_is_trouble_whatever_the_table)
{
    fixture_text(stage, "the battery used to last 3 hours and now it only lasts 1 hour");
    fixture_alerts(stage, ALERT_OFFICE, "trouble:weak-battery");
}
END_TEST

START_TEST(what_is_dangerous_by_itself_goes_first)
{
    fixture_text(stage, "the battery runs only 20 minutes, there are sparks");
    fixture_alerts(stage, ALERT_URGENT, "trouble:danger");
    fixture_says_not(stage, "Use another one");
}
END_TEST

START_TEST(a_reminder_wished_for_beside_it_is_set)
{
    fixture_text(stage, "battery died after 10 min, remind me at 9 pm to call");
    ck_assert_ptr_nonnull(fixture_answer(stage, "weak-battery"));
    ck_assert_int_eq(stage->verdict.reminder.step, REMINDER_SET);
}
END_TEST

START_TEST(if_it_is_the_last_battery_someone_is_called_at_once)
{
    stage->rentals[0].battery_count = 1;
    fixture_text(stage, "the battery drained in half an hour");
    fixture_alerts(stage, ALERT_URGENT, "trouble:last-battery");
}
END_TEST

int
main(void)
{
    TCase *tests = tcase_create("weak battery");
    int count = (int)(sizeof short_ones / sizeof short_ones[0]);

    tcase_add_checked_fixture(tests, set_up, tear_down);
    tcase_add_loop_test(
        tests, a_battery_much_shorter_than_its_table_calls_the_office_and_gets_no_hours, 0, count);
    tcase_add_loop_test(tests, from_a_number_that_we_do_not_know_too, 0, count);
    tcase_add_loop_test(tests, a_time_that_its_table_allows_or_that_is_only_asked_is_no_trouble, 0,
                        (int)(sizeof no_trouble / sizeof no_trouble[0]));
    tcase_add_test(tests,
                   much_shorter_than_the_same_text_says_it_was_is_trouble_whatever_the_table);
    tcase_add_test(tests, if_it_is_the_last_battery_someone_is_called_at_once);
    tcase_add_test(tests, what_is_dangerous_by_itself_goes_first);
    tcase_add_test(tests, a_reminder_wished_for_beside_it_is_set);
    return fixture_run(tests);
}
