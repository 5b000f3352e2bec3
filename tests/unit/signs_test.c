#include "fixture.h"

#include "said_once.h"

#include <string.h>

#include "parts.h"

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

START_TEST(an_emergency_is_two_replies_and_the_first_stands_alone)
{
    const struct verdict *verdict = fixture_text(stage, "STOP he has chest pain");

    ck_assert_int_eq(verdict->route, ROUTE_EMERGENCY);
    ck_assert_uint_eq(verdict->reply_count, 2);
    ck_assert_int_eq(strncmp(verdict->replies[0].text, "Call 911 now", 12), 0);
    ck_assert_uint_eq(parts_count(verdict->replies[0].text).parts, 1);
    ck_assert(parts_count(verdict->replies[0].text).gsm7);
    ck_assert_int_eq(verdict->replies[0].urgency, URGENCY_EMERGENCY);
    ck_assert_ptr_nonnull(strstr(verdict->replies[1].text, "14 Tarn Road, Cabin 4"));
    ck_assert_ptr_nonnull(strstr(verdict->replies[1].text, "if you are still there"));
    ck_assert_ptr_nonnull(
        strstr(verdict->replies[1].text, "your E cylinder at the flow on its tag"));
    ck_assert_ptr_nonnull(strstr(verdict->replies[1].text, "not a person"));
    ck_assert_ptr_nonnull(strstr(verdict->replies[1].text, "Don't wait for them"));
    fixture_alerts(stage, ALERT_EMERGENCY, "sign:chest-pain");
    ck_assert_str_eq(verdict->alert.brief, "chest pain");
    ck_assert(verdict->alert.ring);
    ck_assert_int_eq(verdict->consent, CONSENT_KEEP);
}
END_TEST

START_TEST(without_backup_in_the_record_none_is_promised)
{
    stage->rentals[0].backup.known = false;
    fixture_text(stage, "chest pain");
    fixture_says(stage, "backup oxygen if you have one");
    fixture_says_not(stage, "cylinder");
}
END_TEST

START_TEST(after_a_fire_nobody_is_told_to_plug_in_or_use_more_oxygen)
{
    fixture_text(stage, "the cannula caught fire");
    fixture_alerts(stage, ALERT_EMERGENCY, "sign:face-burn-fire");
    fixture_says_not(stage, "Plug");
    fixture_says_not(stage, "cylinder");
    fixture_says(stage, "14 Tarn Road");
}
END_TEST

START_TEST(a_stranger_in_an_emergency_gets_help_and_nobodys_data)
{
    fixture_stranger(stage);
    fixture_text(stage, "i cant breathe");
    fixture_alerts(stage, ALERT_EMERGENCY, "sign:trouble-breathing");
    fixture_says(stage, "911");
    fixture_says_not(stage, "Tarn Road");
}
END_TEST

START_TEST(a_returned_rental_gives_no_address)
{
    stage->rentals[0].state = RENTAL_RETURNED;
    fixture_text(stage, "i cant breathe");
    fixture_alerts(stage, ALERT_EMERGENCY, NULL);
    fixture_says_not(stage, "Tarn Road");
}
END_TEST

START_TEST(with_two_rentals_a_sign_is_never_held_back_by_a_question)
{
    fixture_second_rental(stage);
    fixture_text(stage, "chest pain");
    fixture_alerts(stage, ALERT_EMERGENCY, "sign:chest-pain");
    fixture_says_not(stage, "Which rental");
    fixture_says_not(stage, "Tarn Road"); /* the two have different addresses */
    fixture_text(stage, "Ana has chest pain");
    fixture_says(stage, "Tarn Road");
}
END_TEST

START_TEST(a_clinical_sign_calls_staff_and_ends_with_when_to_call_911)
{
    const struct verdict *verdict = fixture_text(stage, "i feel dizzy");
    const char *text = verdict->replies[0].text;

    ck_assert_int_eq(verdict->route, ROUTE_CLINICAL);
    fixture_alerts(stage, ALERT_URGENT, "sign:dizzy");
    ck_assert(verdict->alert.ring);
    ck_assert_uint_eq(verdict->reply_count, 1);
    ck_assert_ptr_nonnull(strstr(text, "Call 911 if"));
    ck_assert_ptr_null(strstr(strstr(text, "911"), "Staff"));
}
END_TEST

START_TEST(beside_a_lesser_sign_a_question_with_an_answer_is_answered)
{
    fixture_text(stage, "should i change the setting? and can i charge it in the car?");
    fixture_alerts(stage, ALERT_URGENT, "sign:change-setting");
    ck_assert_ptr_nonnull(fixture_answer(stage, "charge-car"));
    ck_assert_int_eq(stage->verdict.route, ROUTE_CLINICAL);
}
END_TEST

START_TEST(any_reading_is_clinical_and_85_or_lower_an_emergency)
{
    fixture_text(stage, "my o2 is 91");
    fixture_alerts(stage, ALERT_URGENT, "sign:reading");
    ck_assert_int_eq(stage->verdict.route, ROUTE_CLINICAL);
    fixture_wait_minutes(stage, 30);
    fixture_text(stage, "now my o2 is 85");
    fixture_alerts(stage, ALERT_EMERGENCY, "sign:low-reading");
    ck_assert_str_eq(stage->verdict.alert.brief, "reading 85");
    fixture_wait_minutes(stage, 30);
    fixture_text(stage, "o2 sat 99");
    fixture_alerts(stage, ALERT_URGENT, "sign:reading");
}
END_TEST

START_TEST(a_number_in_the_record_can_only_raise)
{
    stage->rentals[0].call_below_reading = 90;
    fixture_text(stage, "o2 is 89");
    fixture_alerts(stage, ALERT_EMERGENCY, "sign:low-reading");
    stage->rentals[0].call_below_reading = 80;
    fixture_wait_minutes(stage, 30);
    fixture_text(stage, "o2 is 84");
    fixture_alerts(stage, ALERT_EMERGENCY, "sign:low-reading");
}
END_TEST

START_TEST(a_reading_with_a_symptom_is_an_emergency_in_one_text_or_two)
{
    fixture_text(stage, "o2 is 92 and i feel dizzy");
    fixture_alerts(stage, ALERT_EMERGENCY, "sign:low-reading");
    fixture_wait_minutes(stage, 30);
    fixture_text(stage, "o2 is 92");
    fixture_alerts(stage, ALERT_URGENT, "sign:reading");
    fixture_wait_minutes(stage, 1);
    fixture_text(stage, "and i feel dizzy");
    fixture_alerts(stage, ALERT_EMERGENCY, "sign:reading-and-symptom");
    ck_assert_ptr_nonnull(strstr(stage->verdict.replies[0].text, "Call 911 now"));
}
END_TEST

START_TEST(wanting_another_setting_is_no_symptom)
{
    fixture_text(stage, "o2 is 92 should i turn it up");
    fixture_alerts(stage, ALERT_URGENT, NULL);
}
END_TEST

START_TEST(no_oxygen_asks_whether_it_flows_again_and_with_a_symptom_is_an_emergency)
{
    fixture_text(stage, "no oxygen coming out");
    ck_assert_int_eq(stage->verdict.route, ROUTE_EQUIPMENT);
    fixture_alerts(stage, ALERT_URGENT, "sign:unit-stopped");
    fixture_says(stage, "Is oxygen flowing again? Text YES or NO.");
    ck_assert_int_eq(stage->context.conversation.question, QUESTION_FLOWING);
    fixture_wait_minutes(stage, 20);
    fixture_text(stage, "no oxygen coming out and dizzy");
    fixture_alerts(stage, ALERT_EMERGENCY, "sign:unit-and-symptom");
}
END_TEST

START_TEST(trouble_with_the_unit_is_when_hours_matter_most)
{
    fixture_text(stage, "the machine stopped, i have 2 full batteries, how long is that");
    fixture_alerts(stage, ALERT_URGENT, "sign:unit-stopped");
    ck_assert_ptr_nonnull(fixture_answer(stage, "hours-left")->estimate);
    fixture_says(stage, "Plan on 1 h 54 min");
}
END_TEST

START_TEST(beside_a_wish_for_another_setting_no_time_is_worked_out)
{
    fixture_text(stage, "should i turn it up? how long do 2 full ones last on 3?");
    fixture_alerts(stage, ALERT_URGENT, "sign:change-setting");
    fixture_says_not(stage, "Plan on");
}
END_TEST

START_TEST(a_question_after_an_emergency_is_not_that_again)
{
    fixture_text(stage, "i have chest pain");
    fixture_alerts(stage, ALERT_EMERGENCY, "sign:chest-pain");
    fixture_text(stage, "is the laundry open on sunday");
    ck_assert_int_ne(stage->verdict.route, ROUTE_EMERGENCY);
}
END_TEST

START_TEST(two_texts_in_a_row_are_read_as_one)
{
    fixture_text(stage, "my chest");
    ck_assert_int_ne(stage->verdict.alert.level, ALERT_EMERGENCY);
    fixture_wait_minutes(stage, 1);
    fixture_text(stage, "hurts");
    fixture_alerts(stage, ALERT_EMERGENCY, "sign:chest-pain");
}
END_TEST

START_TEST(after_three_minutes_they_are_not)
{
    fixture_text(stage, "my chest");
    fixture_wait_minutes(stage, 4);
    fixture_text(stage, "hurts");
    ck_assert_int_ne(stage->verdict.alert.level, ALERT_EMERGENCY);
}
END_TEST

START_TEST(long_texts_before_do_not_hide_what_two_make_together)
{
    char text[3200];

    memset(text, 'z', sizeof text);
    text[sizeof text - 1] = '\0';
    fixture_text(stage, text);
    memcpy(text + sizeof text - sizeof "my chest", "my chest", sizeof "my chest");
    text[sizeof text - sizeof "my chest" - 1] = ' ';
    fixture_text(stage, text);
    fixture_text(stage, "hurts");
    fixture_alerts(stage, ALERT_EMERGENCY, "sign:chest-pain");
}
END_TEST

START_TEST(what_an_earlier_text_said_does_not_fire_again)
{
    fixture_text(stage, "chest pain");
    fixture_wait_minutes(stage, 1);
    fixture_text(stage, "when is it due");
    ck_assert_int_ne(stage->verdict.route, ROUTE_EMERGENCY);
    ck_assert_ptr_nonnull(fixture_answer(stage, "due-date"));
}
END_TEST

START_TEST(a_late_emergency_says_when_it_was_written_in_the_second_part)
{
    stage->message = (struct message){.gateway = "test",
                                      .sender = "+12085550101",
                                      .text = "chest pain",
                                      .sent_utc_s = fixture_start_utc_s,
                                      .received_utc_s = fixture_start_utc_s + 900};
    stage->context.now_utc_s += 900;
    handlers_decide(stage->arena, &stage->message, &stage->context, &stage->verdict);
    ck_assert_int_eq(strncmp(stage->verdict.replies[0].text, "Call 911 now", 12), 0);
    ck_assert_ptr_nonnull(strstr(stage->verdict.replies[1].text, "You wrote at 11:15 am:"));
    ck_assert(stage->verdict.alert.ring);
}
END_TEST

START_TEST(a_broken_store_still_gives_the_first_line_and_the_alert)
{
    fixture_stranger(stage);
    stage->message = (struct message){
        .text = "chest pain", .sender = "+12085550101", .sent_utc_s = fixture_start_utc_s};
    ck_assert(handlers_decide_unrecorded(stage->arena, &stage->message, &stage->context,
                                         &stage->verdict));
    ck_assert_uint_eq(stage->verdict.reply_count, 1);
    fixture_alerts(stage, ALERT_EMERGENCY, "sign:chest-pain");
    stage->message.text = "when is it due";
    ck_assert(!handlers_decide_unrecorded(stage->arena, &stage->message, &stage->context,
                                          &stage->verdict));
}
END_TEST

START_TEST(of_several_emergencies_the_gravest_leads_and_the_others_are_told_to_911_too)
{
    fixture_text(stage, "i cant breathe and have chest pain");
    ck_assert_ptr_nonnull(strstr(stage->verdict.replies[0].text, "chest pain"));
    ck_assert_uint_eq(stage->verdict.reply_count, 2);
    ck_assert_ptr_nonnull(strstr(stage->verdict.replies[1].text, "Tell 911 too: can't breathe."));
    fixture_text(stage, "my chest hurts");
    fixture_says_not(stage, "Tell 911 too");
}
END_TEST

START_TEST(what_two_clinical_signs_both_say_is_said_once)
{
    static const char first[] = "Rest now. A person was alerted and will call you. Worse? Call 911 "
                                "now.";

    ck_assert_str_eq(said_once(stage->arena, first,
                               "Rest now. Sit up. A person was alerted. Hard to breathe? Call 911 "
                               "now."),
                     "Sit up. Hard to breathe? Call 911 now.");
    ck_assert_str_eq(said_once(stage->arena, "", first), first);
    ck_assert_str_eq(said_once(stage->arena, first, first), "");
}
END_TEST

START_TEST(staff_hear_of_each_sign_of_a_text)
{
    fixture_text(stage, "chest pain and i cant breathe, should i turn it up");
    fixture_alerts(stage, ALERT_EMERGENCY, NULL);
    ck_assert_ptr_nonnull(strstr(stage->verdict.alert.brief, "chest pain"));
    ck_assert_ptr_nonnull(strstr(stage->verdict.alert.brief, "can't breathe"));
    ck_assert_ptr_null(strstr(stage->verdict.alert.brief, "setting"));
}
END_TEST

int
main(void)
{
    TCase *tests = tcase_create("signs");

    tcase_add_checked_fixture(tests, set_up, tear_down);
    tcase_add_test(tests, an_emergency_is_two_replies_and_the_first_stands_alone);
    tcase_add_test(tests, without_backup_in_the_record_none_is_promised);
    tcase_add_test(tests, after_a_fire_nobody_is_told_to_plug_in_or_use_more_oxygen);
    tcase_add_test(tests, a_stranger_in_an_emergency_gets_help_and_nobodys_data);
    tcase_add_test(tests, a_returned_rental_gives_no_address);
    tcase_add_test(tests, with_two_rentals_a_sign_is_never_held_back_by_a_question);
    tcase_add_test(tests, a_clinical_sign_calls_staff_and_ends_with_when_to_call_911);
    tcase_add_test(tests, beside_a_lesser_sign_a_question_with_an_answer_is_answered);
    tcase_add_test(tests, any_reading_is_clinical_and_85_or_lower_an_emergency);
    tcase_add_test(tests, a_number_in_the_record_can_only_raise);
    tcase_add_test(tests, a_reading_with_a_symptom_is_an_emergency_in_one_text_or_two);
    tcase_add_test(tests, wanting_another_setting_is_no_symptom);
    tcase_add_test(tests, no_oxygen_asks_whether_it_flows_again_and_with_a_symptom_is_an_emergency);
    tcase_add_test(tests, trouble_with_the_unit_is_when_hours_matter_most);
    tcase_add_test(tests, beside_a_wish_for_another_setting_no_time_is_worked_out);
    tcase_add_test(tests, a_question_after_an_emergency_is_not_that_again);
    tcase_add_test(tests, two_texts_in_a_row_are_read_as_one);
    tcase_add_test(tests, after_three_minutes_they_are_not);
    tcase_add_test(tests, long_texts_before_do_not_hide_what_two_make_together);
    tcase_add_test(tests, what_an_earlier_text_said_does_not_fire_again);
    tcase_add_test(tests, a_late_emergency_says_when_it_was_written_in_the_second_part);
    tcase_add_test(tests, a_broken_store_still_gives_the_first_line_and_the_alert);
    tcase_add_test(tests,
                   of_several_emergencies_the_gravest_leads_and_the_others_are_told_to_911_too);
    tcase_add_test(tests, what_two_clinical_signs_both_say_is_said_once);
    tcase_add_test(tests, staff_hear_of_each_sign_of_a_text);
    return fixture_run(tests);
}
