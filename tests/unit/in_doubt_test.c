/* What may tell of danger or of none is taken for danger: an all-clear that may be none, a cry for
 * help, who must not be answered. */
#include "shipped_stage.h"

#include <string.h>

#include "parts.h"
#include "talk_stage.h"

/* What it began with, and who came, may be told in the words of an all-clear. */
START_TEST(what_may_be_no_all_clear_leaves_the_emergency_open)
{
    static const char *const texts[] = {"just woke up with it", "he woke up like this",
                                        "me desperte asi",      "i just woke up",
                                        "they're here",         "ya llegaron"};
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        said_after("he has chest pain", texts[i]);
        ck_assert_msg(fixture_answer(stage, "is-over") == NULL, "%s", texts[i]);
        fixture_says(stage, "911");
        fixture_wait_minutes(stage, 5);
        fixture_text(stage, "when is it due");
        fixture_says(stage, "911");
    }
    said_after("he has chest pain", "he woke up and is talking fine");
    ck_assert_ptr_nonnull(fixture_answer(stage, "is-over"));
}
END_TEST

START_TEST(who_came_is_believed_to_be_help_after_a_call_until_that_is_taken_back)
{
    said_after("he has chest pain", "i called 911");
    fixture_alerts(stage, ALERT_OFFICE, "called-911");
    fixture_wait_minutes(stage, 5);
    fixture_text(stage, "they're here");
    fixture_alerts(stage, ALERT_OFFICE, "is-over");
    fixture_wait_minutes(stage, 5);
    fixture_text(stage, "not the ambulance, my neighbors");
    fixture_alerts(stage, ALERT_EMERGENCY, "help:late");
    fixture_says(stage, "call 911 now");
}
END_TEST

START_TEST(help_shouted_stretched_or_misspelt_is_a_cry_whoever_writes)
{
    static const char *const english[] = {"HELP!!!!",
                                          "Help!",
                                          "help...",
                                          "helpp",
                                          "heeellp",
                                          "hlp",
                                          "hep me",
                                          "can someone help",
                                          "pls someone help us"};
    static const char *const spanish[] = {"AYUDA!!!",      "ayudaaa",  "ayuda ayuda",
                                          "ayudeme porfa", "auxilioo", "alguien que me ayude"};
    size_t i;

    for (i = 0; i < sizeof english / sizeof english[0]; i++) {
        begin_anew();
        fixture_stranger(stage);
        fixture_text(stage, english[i]);
        ck_assert_msg(stage->verdict.alert.level == ALERT_URGENT, "%s", english[i]);
        fixture_says(stage, "In danger? Call 911. Staff were alerted.");
    }
    for (i = 0; i < sizeof spanish / sizeof spanish[0]; i++) {
        begin_anew();
        fixture_stranger(stage);
        fixture_text(stage, spanish[i]);
        ck_assert_msg(stage->verdict.alert.level == ALERT_URGENT, "%s", spanish[i]);
        fixture_says(stage, "¿En peligro? Llame al 911. El personal ya lo sabe.");
    }
}
END_TEST

START_TEST(the_keyword_alone_and_help_with_something_are_no_cry)
{
    static const char *const texts[] = {"help",
                                        "HELP",
                                        "Help.",
                                        "\"help\"",
                                        "ayuda",
                                        "Ayuda.",
                                        "thanks for help",
                                        "help desk",
                                        "self help",
                                        "can you help me with the filter",
                                        "necesito ayuda con el filtro"};
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        begin_anew();
        fixture_stranger(stage);
        fixture_text(stage, texts[i]);
        ck_assert_msg(stage->verdict.alert.level == ALERT_NONE, "%s: %s", texts[i],
                      stage->verdict.alert.reason);
    }
}
END_TEST

START_TEST(a_cry_in_an_open_emergency_calls_a_person_again_and_tells_no_terms)
{
    said_after("he has chest pain", "help me");
    fixture_alerts(stage, ALERT_EMERGENCY, "help");
    fixture_says_not(stage, "STOP");
}
END_TEST

/* ---- Who is threatened ------------------------------------------------------------------------
 */

START_TEST(who_hurts_or_threatens_is_not_told_in_the_words_of_an_injury)
{
    static const char *const english[] = {"he's going to hurt me", "hes gonna shoot us",
                                          "my husband has his hands round my neck",
                                          "my uncle here keeps touching me when im on the machine"};
    static const char *const spanish[] = {"dice que me va a lastimar",
                                          "mi yerno le pega a mi mama y me escondo de el"};
    size_t i;

    for (i = 0; i < sizeof english / sizeof english[0]; i++) {
        shipped_talk_anew();
        fixture_text(stage, english[i]);
        fixture_alerts(stage, ALERT_EMERGENCY, "sign:in-danger");
        ck_assert_msg(strstr(stage->verdict.replies[0].text, "safe place") != NULL, "%s: %s",
                      english[i], stage->verdict.replies[0].text);
    }
    for (i = 0; i < sizeof spanish / sizeof spanish[0]; i++) {
        shipped_talk_anew();
        fixture_text(stage, spanish[i]);
        fixture_alerts(stage, ALERT_EMERGENCY, "sign:in-danger");
        ck_assert_msg(strstr(stage->verdict.replies[0].text, "lugar seguro") != NULL, "%s: %s",
                      spanish[i], stage->verdict.replies[0].text);
    }
    shipped_talk_anew();
    fixture_text(stage, "fish bone, cant cough, hands at his neck");
    fixture_alerts(stage, ALERT_EMERGENCY, "sign:choking");
    shipped_talk_anew();
    fixture_text(stage, "i want to kill him and myself");
    fixture_alerts(stage, ALERT_EMERGENCY, "sign:self-harm");
    shipped_talk_anew();
    fixture_text(stage, "my wife grabbed me because i cant breathe");
    fixture_alerts(stage, ALERT_EMERGENCY, "sign:trouble-breathing");
}
END_TEST

START_TEST(who_is_threatened_and_asks_for_no_answer_gets_none_and_staff_hear_that)
{
    static const char *const texts[] = {"dont reply", "text nothing back", "he reads my phone",
                                        "no me contesten", "please dont tell"};
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        shipped_talk_anew();
        fixture_text(stage, "im scared of him");
        fixture_wait_minutes(stage, 5);
        fixture_text(stage, texts[i]);
        fixture_alerts(stage, ALERT_EMERGENCY, "no-reply");
        ck_assert_ptr_nonnull(strstr(stage->verdict.alert.brief, "asked not to be texted"));
        ck_assert_msg(stage->verdict.reply_count == 0, "%s", texts[i]);
        fixture_wait_minutes(stage, 5);
        fixture_text(stage, "he hit me");
        ck_assert_int_eq(stage->verdict.alert.level, ALERT_EMERGENCY);
        ck_assert_msg(stage->verdict.reply_count == 0, "%s", texts[i]);
    }
    shipped_talk_anew();
    fixture_text(stage, "mi marido lee mis mensajes");
    fixture_alerts(stage, ALERT_EMERGENCY, "no-reply");
    ck_assert_uint_eq(stage->verdict.reply_count, 0);
}
END_TEST

START_TEST(who_is_threatened_and_asks_not_to_be_called_is_texted_and_staff_hear_that)
{
    static const char *const texts[] = {"my son hit me and took the tube. dont call back",
                                        "he is beating me, do not ring this phone",
                                        "mi esposo me pega, no me llamen"};
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        shipped_talk_anew();
        fixture_text(stage, texts[i]);
        fixture_alerts(stage, ALERT_EMERGENCY, "sign:in-danger");
        fixture_says(stage, "911");
        ck_assert_ptr_nonnull(strstr(stage->verdict.alert.brief, "asked not to be called"));
    }
    shipped_talk_anew();
    fixture_text(stage, "im scared of him");
    fixture_wait_minutes(stage, 5);
    fixture_text(stage, "please dont call me");
    ck_assert_int_eq(stage->verdict.alert.level, ALERT_EMERGENCY);
    ck_assert_ptr_nonnull(strstr(stage->verdict.alert.brief, "asked not to be called"));
    ck_assert_uint_gt(stage->verdict.reply_count, 0);
}
END_TEST

START_TEST(who_asks_for_no_call_with_them_beside_is_shown_no_text_either)
{
    static const char *const texts[] = {
        "dont call or text me, hes home", "please dont call, he is right here",
        "he can see my phone, dont call", "dont ring, he will read it", "no me llamen, esta aqui"};
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        shipped_talk_anew();
        fixture_text(stage, "my husband is hurting me");
        fixture_wait_minutes(stage, 2);
        fixture_text(stage, texts[i]);
        ck_assert_msg(stage->verdict.reply_count == 0, "%s", texts[i]);
        ck_assert_int_eq(stage->verdict.alert.level, ALERT_EMERGENCY);
    }
}
END_TEST

START_TEST(who_is_not_threatened_is_answered_whatever_they_ask)
{
    static const char *const texts[] = {"no need to reply, thanks", "dont reply", "dont call me"};
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        shipped_talk_anew();
        fixture_text(stage, texts[i]);
        ck_assert_int_lt(stage->verdict.alert.level, ALERT_EMERGENCY);
    }
    shipped_talk_anew();
    fixture_text(stage, "i have chest pain");
    fixture_wait_minutes(stage, 5);
    fixture_text(stage, "please dont tell my wife");
    ck_assert_uint_gt(stage->verdict.reply_count, 0);
}
END_TEST

/* ---- Of helpers, with nothing open ------------------------------------------------------------
 */

static void
each_says(const char *const *texts, size_t count, const char *words)
{
    size_t i;

    for (i = 0; i < count; i++) {
        shipped_talk_anew();
        fixture_stranger(stage);
        fixture_text(stage, texts[i]);
        ck_assert_msg(stage->verdict.alert.level == ALERT_EMERGENCY, "%s", texts[i]);
        ck_assert_msg(strstr(stage->verdict.replies[0].text, words) != NULL, "%s: %s", texts[i],
                      stage->verdict.replies[0].text);
        ck_assert_msg(parts_count(stage->verdict.replies[0].text).parts == 1, "%s", texts[i]);
    }
}

#define EACH_SAYS(texts, words) each_says(texts, sizeof(texts) / sizeof((texts)[0]), words)

START_TEST(helpers_who_do_not_come_are_an_emergency_though_none_was_told)
{
    static const char *const late[] = {"the ambulance went to the wrong cabin",
                                       "the paramedics are at the wrong house"};
    static const char *const late_es[] = {"la ambulancia se fue a otra casa",
                                          "los paramedicos no llegan"};
    static const char *const no_way[] = {"they said the helicopter cant fly in this wind"};
    static const char *const no_way_es[] = {"el helicoptero no puede aterrizar"};
    static const char *const refused[] = {"no 911 he says", "dad refuses the ambulance"};

    EACH_SAYS(late, "call again: nobody is here");
    EACH_SAYS(late_es, "llame otra vez: nadie llega");
    EACH_SAYS(no_way, "say that the way is closed");
    EACH_SAYS(no_way_es, "no hay paso");
    EACH_SAYS(refused, "anyway, even if they say no");
    shipped_talk_anew();
    fixture_text(stage, "can i take a helicopter tour with it");
    ck_assert_int_lt(stage->verdict.alert.level, ALERT_URGENT);
    shipped_talk_anew();
    fixture_text(stage, "my delivery went to the wrong cabin");
    ck_assert_int_lt(stage->verdict.alert.level, ALERT_URGENT);
}
END_TEST

START_TEST(who_has_called_is_not_told_to_call)
{
    static const char *const called[] = {"I called 911 for my dad, theyre on the way",
                                         "911 called"};
    static const char *const called_es[] = {"ya llame al 911"};
    static const char *const there[] = {
        "the medics took him, we are at the hospital, 911 was quick"};
    static const char *const not_yet[] = {"should i call 911", "i called 911 but nobody answers",
                                          "send an ambulance please", "911"};

    EACH_SAYS(called, "Stay by the phone");
    EACH_SAYS(called_es, "Haga lo que diga el 911");
    EACH_SAYS(there, "Keep the oxygen on");
    EACH_SAYS(not_yet, "Call 911 now");
}
END_TEST

START_TEST(who_is_in_hospice_lives_and_is_answered_and_a_plain_death_is_believed)
{
    static const char *const told[] = {"He is on hospice, do not resuscitate", "mum has a DNR",
                                       "mi mama tiene orden de no reanimar"};
    size_t i;

    shipped_talk_anew();
    fixture_text(stage, "hospice patient here, she's comfortable, just need tubing");
    ck_assert_ptr_null(fixture_answer(stage, "death-told"));
    for (i = 0; i < sizeof told / sizeof told[0]; i++) {
        shipped_talk_anew();
        fixture_text(stage, told[i]);
        fixture_alerts(stage, ALERT_OFFICE, "hospice");
    }
    shipped_talk_anew();
    fixture_text(stage, "yes she's gone. no need to call anyone");
    fixture_alerts(stage, ALERT_URGENT, "sign:death-told");
    fixture_says_not(stage, "988");
    shipped_talk_anew();
    fixture_text(stage, "dont call anyone, i want to go tonight");
    fixture_alerts(stage, ALERT_EMERGENCY, "sign:self-harm");
}
END_TEST

int
main(void)
{
    TCase *tests = tcase_create("in doubt");

    tcase_add_unchecked_fixture(tests, shipped_begin, shipped_end);
    tcase_add_checked_fixture(tests, stage_set_up, stage_tear_down);
    tcase_add_test(tests, what_may_be_no_all_clear_leaves_the_emergency_open);
    tcase_add_test(tests, who_came_is_believed_to_be_help_after_a_call_until_that_is_taken_back);
    tcase_add_test(tests, help_shouted_stretched_or_misspelt_is_a_cry_whoever_writes);
    tcase_add_test(tests, the_keyword_alone_and_help_with_something_are_no_cry);
    tcase_add_test(tests, a_cry_in_an_open_emergency_calls_a_person_again_and_tells_no_terms);
    tcase_add_test(tests, who_hurts_or_threatens_is_not_told_in_the_words_of_an_injury);
    tcase_add_test(tests, who_is_threatened_and_asks_for_no_answer_gets_none_and_staff_hear_that);
    tcase_add_test(tests,
                   who_is_threatened_and_asks_not_to_be_called_is_texted_and_staff_hear_that);
    tcase_add_test(tests, who_asks_for_no_call_with_them_beside_is_shown_no_text_either);
    tcase_add_test(tests, who_is_not_threatened_is_answered_whatever_they_ask);
    tcase_add_test(tests, helpers_who_do_not_come_are_an_emergency_though_none_was_told);
    tcase_add_test(tests, who_has_called_is_not_told_to_call);
    tcase_add_test(tests, who_is_in_hospice_lives_and_is_answered_and_a_plain_death_is_believed);
    tcase_set_timeout(tests, 120);
    return fixture_run(tests);
}
