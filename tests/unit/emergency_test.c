/* What is said in an emergency, while it is open, and after a death. */
#include "fixture.h"

#include <string.h>

#include "parts.h"
#include "say.h"

static struct fixture *stage;

static void
set_up(void)
{
    stage = fixture_new();
    stage->keeps_alerts = true;
}

static void
tear_down(void)
{
    fixture_free(stage);
}

static bool
begins(const char *text, const char *words)
{
    return strncmp(text, words, strlen(words)) == 0;
}

START_TEST(an_ordinary_question_in_the_same_text_is_not_answered)
{
    fixture_text(stage, "i have chest pain. when is it due? can i charge it in the car?");
    ck_assert_uint_eq(stage->verdict.reply_count, 3); /* the car is power; the due date is not */
    fixture_says_not(stage, "Feb 14");
    ck_assert(begins(stage->verdict.replies[0].text, "Call 911 now"));
    ck_assert_ptr_null(strstr(stage->verdict.replies[0].text, "engine"));
    ck_assert_ptr_null(strstr(stage->verdict.replies[1].text, "engine"));
}
END_TEST

START_TEST(how_long_the_batteries_last_is_answered_after_it_in_a_text_of_its_own)
{
    fixture_text(stage, "he has chest pain. 2 full batteries how long do i have left?");
    ck_assert_uint_eq(stage->verdict.reply_count, 3);
    ck_assert_ptr_nonnull(strstr(stage->verdict.replies[2].text, "Plan on 1 h 54 min"));
    ck_assert(stage->verdict.replies[2].holds_time);
    ck_assert_int_gt(stage->verdict.replies[2].urgency, URGENCY_EMERGENCY);
    ck_assert(!stage->verdict.replies[0].holds_time);
}
END_TEST

START_TEST(nothing_is_asked_back_in_an_emergency)
{
    fixture_text(stage, "i have chest pain. how long have i got left?");
    ck_assert_uint_eq(stage->verdict.reply_count, 2);
    ck_assert_int_eq(stage->context.conversation.question, QUESTION_NONE);
}
END_TEST

START_TEST(beside_a_fire_no_battery_and_no_backup_are_spoken_of)
{
    fixture_text(stage, "the cannula caught fire. how do i open the backup?");
    ck_assert_uint_eq(stage->verdict.reply_count, 2);
    fixture_says_not(stage, "key on top");
}
END_TEST

START_TEST(a_later_question_gets_called_911_first_and_only_power_or_backup_answered)
{
    fixture_text(stage, "i have chest pain");
    fixture_wait_minutes(stage, 5);
    fixture_text(stage, "when is it due");
    ck_assert_uint_eq(stage->verdict.reply_count, 1);
    ck_assert(begins(stage->verdict.replies[0].text, "Called 911?"));
    fixture_says_not(stage, "Feb 14");
    fixture_alerts(stage, ALERT_OFFICE, "wrote-again");
    fixture_wait_minutes(stage, 5);
    fixture_text(stage, "how do i open the backup");
    ck_assert(begins(stage->verdict.replies[0].text, "Called 911?"));
    fixture_says(stage, "key on top");
    fixture_text(stage, "2 full batteries how long do i have left");
    ck_assert(begins(stage->verdict.replies[0].text, "Called 911?"));
    fixture_says(stage, "Plan on 1 h 54 min");
}
END_TEST

START_TEST(every_text_in_an_open_emergency_reaches_the_alert_and_thanks_are_not_answered)
{
    fixture_text(stage, "i have chest pain");
    fixture_wait_minutes(stage, 1);
    fixture_text(stage, "thank you");
    fixture_alerts(stage, ALERT_OFFICE, "wrote-again");
    ck_assert_uint_eq(stage->verdict.reply_count, 0);
    fixture_text(stage, "yes they are coming");
    fixture_alerts(stage, ALERT_OFFICE, "called-911");
    ck_assert_uint_eq(stage->verdict.reply_count, 0);
    fixture_text(stage, "no");
    fixture_says(stage, "call 911 now");
    fixture_text(stage, "not yet");
    fixture_says(stage, "call 911 now");
}
END_TEST

START_TEST(once_staff_have_closed_it_questions_are_answered_again)
{
    fixture_text(stage, "i have chest pain");
    stage->context.alert_count = 0;
    fixture_wait_minutes(stage, 60);
    fixture_text(stage, "when is it due");
    fixture_says(stage, "Feb 14");
    fixture_says_not(stage, "Called 911");
}
END_TEST

START_TEST(repeats_get_no_copies_yet_each_reaches_the_alert)
{
    int i;

    fixture_text(stage, "i cant breathe");
    ck_assert_uint_eq(stage->verdict.reply_count, 2);
    for (i = 0; i < 4; i++) {
        stage->context.now_utc_s += 15;
        fixture_text(stage, "i cant breathe!!");
        ck_assert_uint_eq(stage->verdict.reply_count, i == 0 ? 1 : 0);
        fixture_alerts(stage, ALERT_EMERGENCY, "sign:trouble-breathing");
    }
    fixture_wait_minutes(stage, 1);
    fixture_text(stage, "cant breathe");
    ck_assert_uint_eq(stage->verdict.reply_count, 1);
    ck_assert_ptr_nonnull(strstr(stage->verdict.replies[0].text, "call 911 now"));
    fixture_wait_minutes(stage, 10);
    fixture_text(stage, "cant breathe");
    ck_assert_uint_eq(stage->verdict.reply_count, 2);
}
END_TEST

START_TEST(another_sign_is_no_repeat)
{
    fixture_text(stage, "i cant breathe");
    stage->context.now_utc_s += 15;
    fixture_text(stage, "and chest pain");
    ck_assert_uint_eq(stage->verdict.reply_count, 2);
    fixture_says(stage, "Say: chest pain");
}
END_TEST

START_TEST(a_few_words_in_spanish_are_answered_in_spanish_throughout)
{
    fixture_text(stage, "me ahogo");
    ck_assert_uint_eq(stage->verdict.reply_count, 2);
    ck_assert(begins(stage->verdict.replies[0].text, "Llame al 911 ya."));
    fixture_says(stage, "14 Tarn Road");
    fixture_says_not(stage, "Staff");
}
END_TEST

START_TEST(a_reading_and_a_symptom_told_long_after_it_are_an_emergency_while_nobody_has_come)
{
    fixture_text(stage, "o2 is 92");
    fixture_alerts(stage, ALERT_URGENT, "sign:reading");
    fixture_wait_minutes(stage, 40);
    fixture_text(stage, "now i feel dizzy");
    fixture_alerts(stage, ALERT_EMERGENCY, "sign:reading-and-symptom");
}
END_TEST

START_TEST(a_symptom_and_a_reading_told_long_after_it_are_one_too)
{
    fixture_text(stage, "i feel dizzy");
    fixture_wait_minutes(stage, 40);
    fixture_text(stage, "o2 is 92");
    fixture_alerts(stage, ALERT_EMERGENCY, "sign:low-reading");
}
END_TEST

START_TEST(what_staff_have_closed_does_not_count)
{
    fixture_text(stage, "o2 is 92");
    stage->context.alert_count = 0;
    fixture_wait_minutes(stage, 40);
    fixture_text(stage, "now i feel dizzy");
    fixture_alerts(stage, ALERT_URGENT, "sign:dizzy");
}
END_TEST

START_TEST(a_question_is_answered_after_a_clinical_instruction)
{
    fixture_text(stage, "i feel dizzy. how long do 2 full batteries last?");
    ck_assert_int_eq(stage->verdict.route, ROUTE_CLINICAL);
    fixture_says(stage, "Plan on 1 h 54 min");
    ck_assert_ptr_nonnull(strstr(strstr(stage->verdict.replies[0].text, "Sit down"), "Plan on"));
    ck_assert_ptr_nonnull(strstr(strstr(stage->verdict.replies[0].text, "Plan on"), "Call 911 if"));
}
END_TEST

START_TEST(a_death_stops_what_the_program_does_and_a_person_writes)
{
    fixture_text(stage, "machine stopped");
    fixture_wait_minutes(stage, 4);
    fixture_text(stage, "my wife passed away last night");
    ck_assert_int_eq(stage->verdict.route, ROUTE_STAFF);
    fixture_alerts(stage, ALERT_URGENT, "sign:death-told");
    ck_assert(stage->verdict.rests);
    ck_assert_int_eq(stage->context.conversation.question, QUESTION_NONE);
    fixture_says(stage, "We are so sorry.");
    fixture_says_not(stage, "911");
    fixture_says_not(stage, "flowing");
    fixture_text(stage, "what do i do with the machine");
    ck_assert_uint_eq(stage->verdict.reply_count, 0);
    fixture_alerts(stage, ALERT_OFFICE, "wrote-again");
    fixture_text(stage, "i have chest pain");
    fixture_alerts(stage, ALERT_EMERGENCY, "sign:chest-pain");
    fixture_says(stage, "Call 911 now");
}
END_TEST

START_TEST(stopped_breathing_is_an_emergency_whatever_is_said_of_death)
{
    fixture_text(stage, "he stopped breathing i think he has died");
    fixture_alerts(stage, ALERT_EMERGENCY, "sign:trouble-breathing");
    fixture_says_not(stage, "sorry");
    ck_assert(!stage->verdict.rests);
}
END_TEST

START_TEST(an_alert_of_a_number_that_opted_out_says_that_texts_may_be_blocked)
{
    stage->context.conversation.opted_out = true;
    fixture_text(stage, "chest pain");
    ck_assert_str_eq(stage->verdict.alert.brief,
                     "chest pain; opted out: carrier may block our text, ring");
    stage->context.alert_count = 0;
    fixture_text(stage, "when is it due");
    ck_assert_ptr_nonnull(strstr(stage->verdict.alert.brief, "ring"));
    ck_assert(stage->verdict.alert.ring);
}
END_TEST

START_TEST(help_that_comes_is_not_asked_for_again_but_hello_gets_a_word)
{
    fixture_text(stage, "i have chest pain");
    fixture_wait_minutes(stage, 5);
    fixture_text(stage, "the ambulance is on the way");
    ck_assert_uint_eq(stage->verdict.reply_count, 0);
    fixture_text(stage, "i called 911 they are coming");
    ck_assert_uint_eq(stage->verdict.reply_count, 0);
    fixture_text(stage, "911 put me on hold");
    fixture_says(stage, "911");
    fixture_text(stage, "no ambulance can come here");
    fixture_says(stage, "call 911 now");
    fixture_text(stage, "hello?");
    fixture_says(stage, "call 911 now");
}
END_TEST

START_TEST(first_lines_of_our_own_are_one_plain_part_in_both_languages)
{
    static const enum phrase phrases[] = {SAY_EMERGENCY_FIRST, SAY_FLOWING_NO, SAY_CALLED_911};
    size_t i;
    int language;

    for (i = 0; i < sizeof phrases / sizeof phrases[0]; i++) {
        for (language = 0; language < LANGUAGE_COUNT; language++) {
            const char *text =
                say(stage->arena, &stage->house, (enum language)language, phrases[i], NULL);

            ck_assert_msg(parts_count(text).gsm7 && parts_count(text).parts == 1, "%s", text);
        }
    }
}
END_TEST

START_TEST(without_power_nobody_is_told_to_plug_in)
{
    fixture_text(stage, "i cant breathe");
    fixture_says(stage, "Plug the unit into the wall.");
    fixture_free(stage);
    stage = fixture_new();
    fixture_text(stage, "power is out and i cant breathe");
    fixture_says_not(stage, "Plug the unit");
    fixture_says(stage, "your E cylinder");
}
END_TEST

START_TEST(a_death_after_an_emergency_ends_the_questions_about_911)
{
    fixture_text(stage, "he cant breathe");
    fixture_wait_minutes(stage, 30);
    fixture_text(stage, "he passed away");
    fixture_says(stage, "We are so sorry.");
    fixture_wait_minutes(stage, 30);
    fixture_text(stage, "what happens with the machine now");
    ck_assert_uint_eq(stage->verdict.reply_count, 0);
}
END_TEST

START_TEST(an_emergency_after_a_death_is_somebody_elses_and_is_helped)
{
    fixture_text(stage, "my wife passed away");
    fixture_wait_minutes(stage, 30);
    fixture_text(stage, "i have chest pain");
    fixture_wait_minutes(stage, 5);
    fixture_text(stage, "how do i open the backup");
    fixture_says(stage, "Called 911?");
    fixture_says(stage, "key on top");
}
END_TEST

int
main(void)
{
    TCase *tests = tcase_create("emergency");

    tcase_add_checked_fixture(tests, set_up, tear_down);
    tcase_add_test(tests, an_ordinary_question_in_the_same_text_is_not_answered);
    tcase_add_test(tests, how_long_the_batteries_last_is_answered_after_it_in_a_text_of_its_own);
    tcase_add_test(tests, nothing_is_asked_back_in_an_emergency);
    tcase_add_test(tests, beside_a_fire_no_battery_and_no_backup_are_spoken_of);
    tcase_add_test(tests, a_later_question_gets_called_911_first_and_only_power_or_backup_answered);
    tcase_add_test(tests,
                   every_text_in_an_open_emergency_reaches_the_alert_and_thanks_are_not_answered);
    tcase_add_test(tests, once_staff_have_closed_it_questions_are_answered_again);
    tcase_add_test(tests, repeats_get_no_copies_yet_each_reaches_the_alert);
    tcase_add_test(tests, another_sign_is_no_repeat);
    tcase_add_test(tests, a_few_words_in_spanish_are_answered_in_spanish_throughout);
    tcase_add_test(
        tests, a_reading_and_a_symptom_told_long_after_it_are_an_emergency_while_nobody_has_come);
    tcase_add_test(tests, a_symptom_and_a_reading_told_long_after_it_are_one_too);
    tcase_add_test(tests, what_staff_have_closed_does_not_count);
    tcase_add_test(tests, a_question_is_answered_after_a_clinical_instruction);
    tcase_add_test(tests, a_death_stops_what_the_program_does_and_a_person_writes);
    tcase_add_test(tests, stopped_breathing_is_an_emergency_whatever_is_said_of_death);
    tcase_add_test(tests, an_alert_of_a_number_that_opted_out_says_that_texts_may_be_blocked);
    tcase_add_test(tests, help_that_comes_is_not_asked_for_again_but_hello_gets_a_word);
    tcase_add_test(tests, first_lines_of_our_own_are_one_plain_part_in_both_languages);
    tcase_add_test(tests, without_power_nobody_is_told_to_plug_in);
    tcase_add_test(tests, a_death_after_an_emergency_ends_the_questions_about_911);
    tcase_add_test(tests, an_emergency_after_a_death_is_somebody_elses_and_is_helped);
    return fixture_run(tests);
}
