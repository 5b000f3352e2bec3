/* What ordinary people write when nothing is wrong calls nobody and is answered; what sounds like
 * it and is a danger calls somebody. With the content as it ships; none of these texts stands in
 * it. */
#include "shipped_stage.h"

#include <string.h>

#define CALLS(texts, least)                                                                        \
    each_calls(texts, sizeof(texts) / sizeof((texts)[0]), least, ALERT_EMERGENCY)
#define CALLS_NOBODY(texts)                                                                        \
    each_calls(texts, sizeof(texts) / sizeof((texts)[0]), ALERT_NONE, ALERT_OFFICE)

static void
each_calls(const char *const *texts, size_t count, enum alert_level least, enum alert_level most)
{
    size_t i;

    for (i = 0; i < count; i++) {
        shipped_talk_anew();
        fixture_text(stage, texts[i]);
        ck_assert_msg(stage->verdict.alert.level >= least && stage->verdict.alert.level <= most,
                      "\"%s\": %s", texts[i],
                      stage->verdict.alert.reason == NULL ? "" : stage->verdict.alert.reason);
    }
}

START_TEST(who_sleeps_well_calls_nobody_and_who_will_not_wake_somebody)
{
    static const char *const calm[] = {"pops is napping in his rocker, snoring like a train lol",
                                       "my husband dozed off on the porch swing, snoring, all well",
                                       "he was out like a light in no time lol",
                                       "we got in dead tired, everything hums along",
                                       "mi suegro se quedo dormido en el sillon, ronca tranquilo"};
    static const char *const grave[] = {"he is snoring and wont wake up",
                                        "snoring funny and gurgling",
                                        "she went out like a light and isnt responding",
                                        "she fell asleep mid sentence and is hard to wake",
                                        "nodding off all day, cant stay awake",
                                        "he zonked out and his lips look gray",
                                        "mi papa ronca muy raro y no despierta"};

    CALLS_NOBODY(calm);
    CALLS(grave, ALERT_EMERGENCY);
}
END_TEST

START_TEST(what_the_tube_rubs_or_dries_is_answered_and_what_bleeds_or_ails_calls)
{
    static const char *const calm[] = {"his ears are raw from the tubing",
                                       "the hose makes the backs of my ears sore",
                                       "her nose gets dry",
                                       "can i put on eyeliner while wearing it",
                                       "me arden las orejas por el tubo",
                                       "tiene la nariz seca con el aparato"};
    static const char *const ill[] = {"nose dry and bleeding", "my ear hurts and i have a fever",
                                      "her ears are bleeding from the tube", "le sangra la oreja"};

    CALLS_NOBODY(calm);
    CALLS(ill, ALERT_URGENT);
}
END_TEST

START_TEST(figures_of_speech_and_questions_for_the_day_when_call_nobody)
{
    static const char *const calm[] = {"ando saturada de chamba",
                                       "can we park it next to the jacuzzi while we soak",
                                       "che, viene con mochila?",
                                       "text you or 911 in an emergency?",
                                       "if something bad happens do i text you or 911",
                                       "my wife laughs at me, i cant find the on switch"};
    static const char *const grave[] = {
        "su saturacion esta bajando",        "esta saturando 78",
        "machine got soaked by the hot tub", "dispatch an ambulance",
        "send help we are in cabin 9",       "he is laughing at nothing and confused"};

    CALLS_NOBODY(calm);
    CALLS(grave, ALERT_URGENT);
}
END_TEST

/* ---- What wants a kind word or a person ------------------------------------------------------ */

START_TEST(thanks_for_help_that_was_given_is_no_question_and_no_cry)
{
    static const char *const texts[] = {"Thank you so much for the quick help yesterday",
                                        "thanks for all your help",
                                        "Thanks, the guy fixed it. Excellent service",
                                        "good night, sleep tight",
                                        "wrong number sorry",
                                        "numero equivocado",
                                        "muchas gracias por ayudar a mi hermana"};
    static const char *const grave[] = {
        "thanks for the quick help, now send help", "thanks for the help, he is not breathing well",
        "gracias, ayuda a mi mama", "gracias por la ayuda pero mi papa no respira"};
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        shipped_talk_anew();
        fixture_text(stage, texts[i]);
        ck_assert_msg(stage->verdict.route == ROUTE_SMALLTALK, "\"%s\": %s", texts[i],
                      fixture_replies(stage));
    }
    CALLS(grave, ALERT_EMERGENCY);
    shipped_talk_anew();
    fixture_text(stage, "he cant breathe");
    fixture_wait_minutes(stage, 5);
    fixture_text(stage, "wrong number sorry");
    fixture_alerts(stage, ALERT_OFFICE, "is-over");
}
END_TEST

START_TEST(a_courtesy_that_asks_gets_a_word)
{
    fixture_text(stage, "all good?");
    ck_assert_int_eq(stage->verdict.route, ROUTE_SMALLTALK);
    fixture_says(stage, "Need a person?");
    shipped_talk_anew();
    fixture_text(stage, "all good");
    ck_assert_uint_eq(stage->verdict.reply_count, 0);
    fixture_text(stage, "hi, all good? when is it due");
    fixture_says_not(stage, "Need a person?");
}
END_TEST

START_TEST(who_missed_our_call_reaches_a_person)
{
    static const char *const texts[] = {"missed call from you, was it important", "you called me?",
                                        "me llamaron ustedes?"};
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        shipped_talk_anew();
        fixture_text(stage, texts[i]);
        fixture_alerts(stage, ALERT_OFFICE, "office:contact");
        ck_assert_uint_gt(stage->verdict.reply_count, 0);
    }
}
END_TEST

START_TEST(that_somebody_is_not_well_is_heard_and_what_else_is_not_well_calls_nobody)
{
    static const char *const ill[] = {"not okay",
                                      "Im not fine",
                                      "we are not alright please come",
                                      "nope not ok",
                                      "my wife isnt well",
                                      "i am really not ok right now",
                                      "no estoy nada bien",
                                      "ayuda, no estamos bien",
                                      "estoy muy mal",
                                      "mi suegra no se siente bien"};
    static const char *const calm[] = {"im not ok with that price",
                                       "the strap is not ok",
                                       "is it not ok to keep it in the car?",
                                       "not fine print please lol",
                                       "im ok",
                                       "la correa no esta bien puesta",
                                       "no estoy mal gracias"};
    static const char *const short_of_breath[] = {"hard to talk", "getting hard to speak",
                                                  "me cuesta hablar", "cuesta mucho hablar"};
    static const char *const talk[] = {"its hard to talk on the phone here",
                                       "me cuesta hablar ingles"};

    CALLS(ill, ALERT_URGENT);
    CALLS_NOBODY(calm);
    CALLS(short_of_breath, ALERT_EMERGENCY);
    CALLS_NOBODY(talk);
}
END_TEST

START_TEST(an_alarm_of_the_house_is_not_taken_for_the_units)
{
    static const char *const texts[] = {"smoke detector in our room chirps every minute",
                                        "do i take the battery out of the co alarm",
                                        "the carbon monoxide alarm has a low battery chirp",
                                        "la alarma de humo pita por la pila"};
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        shipped_talk_anew();
        fixture_text(stage, texts[i]);
        ck_assert_msg(fixture_answer(stage, "house-alarm") != NULL ||
                          stage->verdict.alert.level == ALERT_EMERGENCY,
                      "%s", texts[i]);
        fixture_says(stage, "911");
        fixture_says_not(stage, "display");
        fixture_says_not(stage, "outlet");
    }
    shipped_talk_anew();
    fixture_text(stage, "the unit chirps once a minute");
    ck_assert_ptr_null(fixture_answer(stage, "house-alarm"));
    shipped_talk_anew();
    fixture_text(stage, "the carbon monoxide alarm is going off");
    fixture_alerts(stage, ALERT_EMERGENCY, "sign:bad-gas");
    fixture_wait_minutes(stage, 5);
    fixture_text(stage, "should i take the battery out");
    fixture_says_not(stage, "Open the latch");
}
END_TEST

int
main(void)
{
    TCase *tests = tcase_create("calm");

    tcase_add_unchecked_fixture(tests, shipped_begin, shipped_end);
    tcase_add_checked_fixture(tests, shipped_talk_set_up, stage_tear_down);
    tcase_add_test(tests, who_sleeps_well_calls_nobody_and_who_will_not_wake_somebody);
    tcase_add_test(tests, what_the_tube_rubs_or_dries_is_answered_and_what_bleeds_or_ails_calls);
    tcase_add_test(tests, figures_of_speech_and_questions_for_the_day_when_call_nobody);
    tcase_add_test(tests, thanks_for_help_that_was_given_is_no_question_and_no_cry);
    tcase_add_test(tests, a_courtesy_that_asks_gets_a_word);
    tcase_add_test(tests, who_missed_our_call_reaches_a_person);
    tcase_add_test(tests,
                   that_somebody_is_not_well_is_heard_and_what_else_is_not_well_calls_nobody);
    tcase_add_test(tests, an_alarm_of_the_house_is_not_taken_for_the_units);
    tcase_set_timeout(tests, 120);
    return fixture_run(tests);
}
