/* What only the office can do waits until it is open, unless the renter needs it before. */
#include "fixture.h"

#include <string.h>

static struct fixture *stage;
static int64_t opens_utc_s;

/* It is Tuesday, 11:15 am on the wall, and on this Tuesday the office is closed until Wednesday,
 * 8 am; Ana's rental is due on Saturday. */
static void
set_up(void)
{
    stage = fixture_new();
    opens_utc_s = fixture_start_utc_s + 20 * 3600 + 45 * 60;
    stage->context.office_opens_utc_s = opens_utc_s;
}

static void
tear_down(void)
{
    fixture_free(stage);
}

static void
waits(const char *text, bool does_wait)
{
    fixture_text(stage, text);
    ck_assert_msg(stage->verdict.alert.level == ALERT_OFFICE, "\"%s\" calls no office", text);
    ck_assert_msg(stage->verdict.alert.call_utc_s ==
                      (does_wait ? opens_utc_s : stage->context.now_utc_s),
                  "\"%s\" %s", text, does_wait ? "does not wait" : "waits");
}

START_TEST(while_the_office_is_closed_it_is_called_when_it_opens_and_the_reply_says_so)
{
    waits("can we keep it longer", true);
    fixture_says(stage, "The office is closed now. A person will answer when it is open.");
    fixture_says_not(stage, "8");
    stage->rentals[0].language = LANGUAGE_ES;
    waits("me puede llamar por favor", true);
    fixture_says(stage, "cuando abra");
}
END_TEST

START_TEST(what_nothing_answers_waits_too)
{
    waits("do penguins enjoy jazz", true);
    fixture_says(stage, "A person will answer when the office is open.");
}
END_TEST

START_TEST(while_it_is_open_it_is_called_at_once)
{
    stage->context.office_opens_utc_s = stage->context.now_utc_s;
    waits("can we keep it longer", false);
    fixture_says(stage, "The office was told");
}
END_TEST

START_TEST(a_rental_that_ends_or_begins_tomorrow_does_not_wait)
{
    stage->rentals[0].due_utc_s = fixture_start_utc_s + 24 * 3600;
    waits("can we keep it longer", false);
    fixture_says(stage, "The office was told");
    stage->rentals[0].due_utc_s = fixture_start_utc_s + 48 * 3600;
    waits("can we keep it longer", true);
    stage->rentals[0].state = RENTAL_BOOKED;
    stage->rentals[0].start_utc_s = fixture_start_utc_s + 24 * 3600;
    waits("can we keep it longer", false);
}
END_TEST

START_TEST(over_a_long_closing_what_falls_into_it_does_not_wait)
{
    opens_utc_s = fixture_start_utc_s + 6 * 86400;
    stage->context.office_opens_utc_s = opens_utc_s;
    waits("can we keep it longer", false);
}
END_TEST

START_TEST(a_flight_tomorrow_or_a_need_for_tonight_does_not_wait)
{
    waits("talk to a person please, our flight is tomorrow", false);
    waits("talk to a person please, our flight is in june", true);
    waits("talk to a person please, i need it tonight", false);
    waits("me puede llamar? el vuelo es mañana", false);
}
END_TEST

START_TEST(while_something_graver_is_open_about_them_nothing_waits)
{
    fixture_alert(stage, 12, "sign:dizzy");
    waits("can we keep it longer", false);
}
END_TEST

START_TEST(who_is_on_a_battery_with_no_record_does_not_wait)
{
    fixture_stranger(stage);
    waits("my battery shows 2 of 4 lights, how long will it last", false);
}
END_TEST

START_TEST(a_sign_is_never_held_back)
{
    fixture_text(stage, "my chest hurts");
    ck_assert_int_eq(stage->verdict.alert.level, ALERT_EMERGENCY);
    ck_assert(stage->verdict.alert.call_utc_s == stage->context.now_utc_s);
}
END_TEST

int
main(void)
{
    TCase *tests = tcase_create("office hours");

    tcase_add_checked_fixture(tests, set_up, tear_down);
    tcase_add_test(tests,
                   while_the_office_is_closed_it_is_called_when_it_opens_and_the_reply_says_so);
    tcase_add_test(tests, what_nothing_answers_waits_too);
    tcase_add_test(tests, while_it_is_open_it_is_called_at_once);
    tcase_add_test(tests, a_rental_that_ends_or_begins_tomorrow_does_not_wait);
    tcase_add_test(tests, over_a_long_closing_what_falls_into_it_does_not_wait);
    tcase_add_test(tests, a_flight_tomorrow_or_a_need_for_tonight_does_not_wait);
    tcase_add_test(tests, while_something_graver_is_open_about_them_nothing_waits);
    tcase_add_test(tests, who_is_on_a_battery_with_no_record_does_not_wait);
    tcase_add_test(tests, a_sign_is_never_held_back);
    return fixture_run(tests);
}
