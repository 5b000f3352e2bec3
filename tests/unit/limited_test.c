/* Floods and loops, as the handlers decide on them. */
#include "fixture.h"

#include <string.h>

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

static void
over(enum limit limit, bool told)
{
    stage->context.limit = limit;
    stage->context.limit_told = told;
}

START_TEST(the_first_text_too_many_is_told_and_the_office_hears)
{
    over(LIMIT_SENDER, false);
    fixture_text(stage, "does it charge in the car");
    ck_assert_uint_eq(stage->verdict.reply_count, 1);
    fixture_says(stage, "emergencies only");
    fixture_says(stage, "208-555-0100");
    fixture_alerts(stage, ALERT_OFFICE, "too-many-texts");
}
END_TEST

START_TEST(the_next_ones_are_not_answered_and_nobody_is_called)
{
    over(LIMIT_SENDER, true);
    fixture_text(stage, "does it charge in the car");
    ck_assert_uint_eq(stage->verdict.reply_count, 0);
    fixture_text(stage, "what colour is the moon made of cheese");
    ck_assert_uint_eq(stage->verdict.reply_count, 0);
    ck_assert_int_eq(stage->verdict.alert.level, ALERT_NONE);
    ck_assert_ptr_nonnull(fixture_answer(stage, "held-back"));
}
END_TEST

START_TEST(a_sign_is_answered_and_called_whatever_the_limit)
{
    static const enum limit limits[] = {LIMIT_SENDER, LIMIT_ALL};
    size_t i, told;

    for (i = 0; i < 2; i++) {
        for (told = 0; told < 2; told++) {
            tear_down();
            set_up();
            over(limits[i], told == 1);
            fixture_text(stage, "he stopped breathing");
            fixture_says(stage, "911");
            fixture_alerts(stage, ALERT_EMERGENCY, "sign:trouble-breathing");
            tear_down();
            set_up();
            over(limits[i], told == 1);
            fixture_text(stage, "i feel dizzy");
            fixture_says(stage, "911");
            fixture_alerts(stage, ALERT_URGENT, "sign:dizzy");
        }
    }
}
END_TEST

START_TEST(an_urgent_call_is_never_held_back_and_is_answered_once_a_minute)
{
    over(LIMIT_SENDER, true);
    fixture_text(stage, "HELP");
    fixture_says(stage, "911");
    fixture_alerts(stage, ALERT_URGENT, "help");
    fixture_text(stage, "HELP");
    ck_assert_uint_eq(stage->verdict.reply_count, 0);
    fixture_alerts(stage, ALERT_URGENT, "help");
    fixture_wait_minutes(stage, 1);
    fixture_text(stage, "HELP");
    ck_assert_uint_eq(stage->verdict.reply_count, 1);
}
END_TEST

START_TEST(no_oxygen_after_all_is_an_emergency_whatever_the_limit)
{
    fixture_text(stage, "machine stopped");
    ck_assert_int_eq(stage->context.conversation.question, QUESTION_FLOWING);
    over(LIMIT_SENDER, true);
    fixture_text(stage, "NO");
    ck_assert_int_eq(stage->verdict.alert.level, ALERT_EMERGENCY);
    fixture_says(stage, "911");
}
END_TEST

START_TEST(a_yes_still_closes_what_was_asked)
{
    fixture_text(stage, "machine stopped");
    over(LIMIT_SENDER, true);
    fixture_text(stage, "YES");
    ck_assert_int_eq(stage->context.conversation.question, QUESTION_NONE);
    ck_assert_uint_eq(stage->verdict.reply_count, 0);
}
END_TEST

START_TEST(a_question_that_is_not_sent_is_not_open)
{
    over(LIMIT_SENDER, true);
    fixture_text(stage, "how long have i got left");
    ck_assert_uint_eq(stage->verdict.reply_count, 0);
    ck_assert_int_eq(stage->context.conversation.question, QUESTION_NONE);
}
END_TEST

START_TEST(opting_out_is_kept_and_confirmed_whatever_the_limit)
{
    over(LIMIT_SENDER, true);
    fixture_text(stage, "STOP");
    ck_assert_int_eq(stage->verdict.consent, CONSENT_OUT);
    ck_assert_uint_eq(stage->verdict.reply_count, 1);
}
END_TEST

START_TEST(in_a_flood_from_everywhere_renters_are_told_and_strangers_are_not)
{
    over(LIMIT_ALL, false);
    fixture_text(stage, "does it charge in the car");
    fixture_says(stage, "Very many texts reach us");
    fixture_stranger(stage);
    fixture_text(stage, "does it charge in the car");
    ck_assert_uint_eq(stage->verdict.reply_count, 0);
    ck_assert_int_eq(stage->verdict.alert.level, ALERT_NONE);
}
END_TEST

START_TEST(what_staff_do_is_done_and_confirmed_but_a_machine_on_their_phone_is_not_answered)
{
    fixture_staff(stage);
    fixture_alert(stage, 12, "sign:dizzy");
    over(LIMIT_SENDER, false);
    fixture_text(stage, "MINE 12");
    ck_assert_int_eq(stage->verdict.alert_change.step, ALERT_STEP_TAKE);
    ck_assert_uint_eq(stage->verdict.reply_count, 1);
    fixture_text(stage, "I am away");
    ck_assert_uint_eq(stage->verdict.reply_count, 0);
    ck_assert_int_eq(stage->verdict.alert.level, ALERT_NONE);
}
END_TEST

/* ---- Machines ------------------------------------------------------------------------------- */

START_TEST(automatic_answers_of_phones_are_not_answered)
{
    static const char *const texts[] = {
        "Automatic reply: I am out until Monday.",
        "This is an automated message.",
        "Auto-reply: I can't talk, text me later",
        "I'm driving right now and will reply later.",
        "Sorry, I'm driving. I'll get back to you.",
        "I'm in a meeting, will call you back",
        "This number is not monitored.",
        "Please do not reply to this number.",
        "Respuesta automática: estoy fuera",
        "Estoy manejando, le contesto más tarde",
    };
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        fixture_text(stage, texts[i]);
        ck_assert_msg(stage->verdict.reply_count == 0, "answered: %s", texts[i]);
        ck_assert_int_eq(stage->verdict.alert.level, ALERT_NONE);
        ck_assert_ptr_nonnull(fixture_answer(stage, "automatic-reply"));
    }
}
END_TEST

START_TEST(people_who_write_of_driving_and_of_machines_are_answered)
{
    static const char *const texts[] = {
        "i'm driving to the lake, does it charge in the car",
        "is this an automatic reply",
        "are you an automated message",
        "stop the automated messages",
        "im driving and it stopped, will call you back",
        "can i charge it while driving? will reply later",
        "in a meeting at 5, how long will my battery last",
    };
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        fixture_text(stage, texts[i]);
        ck_assert_msg(fixture_answer(stage, "automatic-reply") == NULL, "%s", texts[i]);
    }
}
END_TEST

START_TEST(a_sign_in_an_automatic_answer_is_heard)
{
    fixture_text(stage, "Automatic reply: chest pain, call my wife");
    fixture_alerts(stage, ALERT_EMERGENCY, "sign:chest-pain");
    fixture_says(stage, "911");
}
END_TEST

START_TEST(our_own_words_given_back_are_not_answered_unless_they_show_a_sign)
{
    stage->context.is_echo = true;
    fixture_text(stage, "Plug it into the car outlet. Keep the engine on.");
    ck_assert_uint_eq(stage->verdict.reply_count, 0);
    ck_assert_ptr_nonnull(fixture_answer(stage, "echo"));
    fixture_text(stage, "he stopped breathing");
    fixture_says(stage, "911");
}
END_TEST

int
main(void)
{
    TCase *tests = tcase_create("limited");

    tcase_add_checked_fixture(tests, set_up, tear_down);
    tcase_add_test(tests, the_first_text_too_many_is_told_and_the_office_hears);
    tcase_add_test(tests, the_next_ones_are_not_answered_and_nobody_is_called);
    tcase_add_test(tests, a_sign_is_answered_and_called_whatever_the_limit);
    tcase_add_test(tests, an_urgent_call_is_never_held_back_and_is_answered_once_a_minute);
    tcase_add_test(tests, no_oxygen_after_all_is_an_emergency_whatever_the_limit);
    tcase_add_test(tests, a_yes_still_closes_what_was_asked);
    tcase_add_test(tests, a_question_that_is_not_sent_is_not_open);
    tcase_add_test(tests, opting_out_is_kept_and_confirmed_whatever_the_limit);
    tcase_add_test(tests, in_a_flood_from_everywhere_renters_are_told_and_strangers_are_not);
    tcase_add_test(
        tests, what_staff_do_is_done_and_confirmed_but_a_machine_on_their_phone_is_not_answered);
    tcase_add_test(tests, automatic_answers_of_phones_are_not_answered);
    tcase_add_test(tests, people_who_write_of_driving_and_of_machines_are_answered);
    tcase_add_test(tests, a_sign_in_an_automatic_answer_is_heard);
    tcase_add_test(tests, our_own_words_given_back_are_not_answered_unless_they_show_a_sign);
    return fixture_run(tests);
}
