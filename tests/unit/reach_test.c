/* How the record says that a renter is reached: blind, landline, a second phone beside a talk. */
#include <string.h>

#include "fixture.h"
#include "in_words.h"
#include "parts.h"

#define SENDER "+12085550101"
#define ROBIN "+12085550190"

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

/* ---- In words ------------------------------------------------------------------------------- */

START_TEST(signs_and_short_forms_are_said_in_words)
{
    static const struct {
        enum language language;
        const char *text, *said;
    } cases[] = {
        {LANGUAGE_EN, "Plan on 2 h 15 min, to about 1:30 pm.",
         "Plan on 2 hours 15 minutes, to about 1:30 pm."},
        {LANGUAGE_EN, "1 h, 1 min, 21 min, 1.5 h, 45min",
         "1 hour, 1 minute, 21 minutes, 1.5 hours, 45 minutes"},
        {LANGUAGE_EN, "I read: 100%, ~40%.", "I read: 100 percent, about 40 percent."},
        {LANGUAGE_EN, "Off -> wait -> on", "Off to wait to on"},
        {LANGUAGE_EN, "1/2 full or 3/4", "one half full or three quarters"},
        {LANGUAGE_EN, "2 L/min, 9 ft, 10 lb, 98 Wh",
         "2 liters a minute, 9 feet, 10 pounds, 98 watt hours"},
        {LANGUAGE_EN, "[##--] 2 + 1 & more", "##-- 2 and 1 and more"},
        {LANGUAGE_EN, "<60 min left, >=2 batteries", "under 60 minutes left, at least 2 batteries"},
        {LANGUAGE_ES, "2 h 1 min, 80%, 2 L/min",
         "2 horas 1 minuto, 80 por ciento, 2 litros por minuto"},
        /* what is no short form stays: phones, dates, addresses, clock times */
        {LANGUAGE_EN, "+12085550123, 208-555-0100, 1/2/26, 11/2, 24/7",
         "+12085550123, 208-555-0100, 1/2/26, 11/2, 24/7"},
        {LANGUAGE_EN, "4 High Road, Condo 3B, 5 hot meals, 2 minutes",
         "4 High Road, Condo 3B, 5 hot meals, 2 minutes"},
    };
    size_t i;

    for (i = 0; i < sizeof(cases) / sizeof(cases[0]); i++) {
        ck_assert_str_eq(in_words(stage->arena, cases[i].language, cases[i].text), cases[i].said);
    }
}
END_TEST

START_TEST(a_blind_renter_is_answered_in_words_and_others_as_ever)
{
    fixture_text(stage, "2 batteries, one 100% and one 50%, how long do i have?");
    fixture_says(stage, "%");
    fixture_says(stage, " min");
    stage->rentals[0].in_words = true;
    fixture_text(stage, "2 batteries, one 100% and one 50%, how long do i have?");
    fixture_says(stage, "Plan on 1 hour 2");
    fixture_says(stage, "100 percent, 50 percent");
    fixture_says_not(stage, "%");
    fixture_says_not(stage, " min,");
}
END_TEST

/* 3GPP TS 23.040: 160 septets. */
START_TEST(the_first_part_of_an_emergency_stays_one_part)
{
    stage->rentals[0].in_words = true;
    fixture_text(stage, "i have chest pain");
    ck_assert_uint_eq(parts_count(stage->verdict.replies[0].text).parts, 1);
}
END_TEST

/* ---- Landline ------------------------------------------------------------------------------- */

static void
landline(void)
{
    stage->rentals[0].phones[0] = (struct phone){.number = SENDER, .reach = REACH_LANDLINE};
    stage->rentals[0].phone_count = 1;
}

START_TEST(that_someone_is_never_rung_staff_read_once_in_an_alert)
{
    struct open_alert *alert;

    stage->rentals[0].phones[0].reach = REACH_NEVER_RING;
    fixture_text(stage, "the handle is cracked");
    ck_assert_str_eq(stage->verdict.alert.brief, "unit trouble; never ring, text");
    alert = fixture_alert(stage, 12, "trouble:other");
    alert->brief = "unit trouble; never ring, text";
    fixture_text(stage, "it is cracked");
    ck_assert_str_eq(stage->verdict.alert.brief, "unit trouble");
}
END_TEST

START_TEST(a_landline_gets_no_text_and_a_person_rings)
{
    landline();
    fixture_text(stage, "does it charge in the car?");
    ck_assert_uint_eq(stage->verdict.reply_count, 0);
    fixture_alerts(stage, ALERT_OFFICE, "landline");
    ck_assert_ptr_nonnull(strstr(stage->verdict.alert.brief, "landline: ring"));
}
END_TEST

START_TEST(what_is_urgent_stays_urgent_and_no_question_is_open)
{
    landline();
    fixture_text(stage, "the power is out");
    ck_assert_uint_eq(stage->verdict.reply_count, 0);
    fixture_alerts(stage, ALERT_URGENT, "sign:power-out-now");
    ck_assert_ptr_nonnull(strstr(stage->verdict.alert.brief, "landline: ring"));
    ck_assert_int_eq(stage->verdict.conversation.question, QUESTION_NONE);
}
END_TEST

START_TEST(the_emergency_line_that_they_asked_for_goes_out)
{
    landline();
    fixture_text(stage, "i have chest pain");
    fixture_says(stage, "Call 911 now");
    fixture_alerts(stage, ALERT_EMERGENCY, "sign:chest-pain");
}
END_TEST

START_TEST(thanks_of_a_landline_call_nobody)
{
    landline();
    fixture_text(stage, "thanks");
    ck_assert_uint_eq(stage->verdict.reply_count, 0);
    ck_assert_int_eq(stage->verdict.alert.level, ALERT_NONE);
}
END_TEST

/* ---- Beside a conversation ------------------------------------------------------------------ */

static void
robin_talks_with_ana(void)
{
    struct open_alert *alert = fixture_alert(stage, 12, "trouble:stopped");

    alert->taken_by = ROBIN;
    alert->has_talk = true;
}

START_TEST(a_second_phone_of_the_rental_is_answered_and_its_text_shown_to_who_talks)
{
    robin_talks_with_ana(); /* on another phone, so nobody has this conversation */
    fixture_text(stage, "does it charge in the car?");
    fixture_says(stage, "engine");
    ck_assert_str_eq(stage->verdict.relay.to, ROBIN);
    ck_assert_int_eq(stage->verdict.relay.number, 12);
    ck_assert_str_eq(stage->verdict.relay.text, "12 Ana, " SENDER ": does it charge in the car?");
}
END_TEST

START_TEST(without_a_conversation_nothing_is_shown)
{
    fixture_alert(stage, 12, "trouble:stopped")->taken_by = ROBIN;
    fixture_text(stage, "does it charge in the car?");
    ck_assert_ptr_null(stage->verdict.relay.to);
}
END_TEST

START_TEST(past_the_limits_only_a_sign_is_passed_on)
{
    stage->context.conversation.in_charge = ROBIN;
    stage->context.limit = LIMIT_SENDER;
    stage->context.limit_told = true;
    robin_talks_with_ana();
    fixture_text(stage, "and one more thing");
    ck_assert_ptr_null(stage->verdict.relay.to);
    stage->context.conversation.in_charge = ROBIN;
    fixture_text(stage, "i have chest pain");
    ck_assert_str_eq(stage->verdict.relay.to, ROBIN);
}
END_TEST

int
main(void)
{
    TCase *tests = tcase_create("reach");

    tcase_add_checked_fixture(tests, set_up, tear_down);
    tcase_add_test(tests, signs_and_short_forms_are_said_in_words);
    tcase_add_test(tests, a_blind_renter_is_answered_in_words_and_others_as_ever);
    tcase_add_test(tests, the_first_part_of_an_emergency_stays_one_part);
    tcase_add_test(tests, that_someone_is_never_rung_staff_read_once_in_an_alert);
    tcase_add_test(tests, a_landline_gets_no_text_and_a_person_rings);
    tcase_add_test(tests, what_is_urgent_stays_urgent_and_no_question_is_open);
    tcase_add_test(tests, the_emergency_line_that_they_asked_for_goes_out);
    tcase_add_test(tests, thanks_of_a_landline_call_nobody);
    tcase_add_test(tests, a_second_phone_of_the_rental_is_answered_and_its_text_shown_to_who_talks);
    tcase_add_test(tests, without_a_conversation_nothing_is_shown);
    tcase_add_test(tests, past_the_limits_only_a_sign_is_passed_on);
    return fixture_run(tests);
}
