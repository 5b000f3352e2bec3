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

START_TEST(each_keyword_alone_opts_out)
{
    static const char *const words[] = {
        /* Per se words in a reply: 47 CFR 64.1200(a)(10), 89 FR 15756 (5 March 2024). */
        "stop", "quit", "end", "revoke", "opt out", "cancel", "unsubscribe",
        /* CTIA Messaging Principles and Best Practices, May 2023, and short-code handbook. */
        "STOP", "STOPALL", "UNSUBSCRIBE", "CANCEL", "END", "QUIT",
        /* The same rule's words as keywords, REMOVE and the Spanish ones (common practice, no
         * source). */
        "REVOKE", "OPT OUT", "OPTOUT", "REMOVE", "PARAR", "ALTO", "CANCELAR", "BAJA", "NO MAS",
        /* Case, blanks and punctuation do not count. */
        "stop.", " quit ", "opt-out", "no más", "stop!!!", "Stop please"};
    size_t i;

    for (i = 0; i < sizeof words / sizeof words[0]; i++) {
        stage->context.conversation = (struct conversation){0};
        fixture_text(stage, words[i]);
        ck_assert_msg(stage->verdict.consent == CONSENT_OUT, "\"%s\" did not opt out", words[i]);
        ck_assert_uint_eq(stage->verdict.reply_count, 1);
    }
}
END_TEST

START_TEST(a_keyword_inside_a_sentence_does_not)
{
    static const char *const texts[] = {"when does my rental end", "cancel my pickup",
                                        "the machine quit", "stop by the office when",
                                        "should i stop at the lodge"};
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        fixture_text(stage, texts[i]);
        ck_assert_msg(stage->verdict.consent == CONSENT_KEEP, "\"%s\" opted out", texts[i]);
    }
}
END_TEST

START_TEST(opting_out_is_confirmed_once_and_staff_agree_another_way)
{
    fixture_text(stage, "STOP");
    fixture_says(stage, "no more texts");
    fixture_alerts(stage, ALERT_OFFICE, "consent:out");
    ck_assert(stage->context.conversation.opted_out);
    fixture_text(stage, "STOP");
    ck_assert_uint_eq(stage->verdict.reply_count, 0);
}
END_TEST

START_TEST(opting_in_is_only_possible_from_opted_out)
{
    fixture_text(stage, "YES");
    ck_assert_int_eq(stage->verdict.consent, CONSENT_KEEP);
    stage->context.conversation.opted_out = true;
    fixture_text(stage, "SÍ");
    ck_assert_int_eq(stage->verdict.consent, CONSENT_IN);
    fixture_says(stage, "Larkspur Air Rentals");
    fixture_says(stage, "STOP");
    ck_assert(!stage->context.conversation.opted_out);
}
END_TEST

START_TEST(an_open_question_is_answered_first)
{
    fixture_text(stage, "machine stopped");
    ck_assert_int_eq(stage->context.conversation.question, QUESTION_FLOWING);
    fixture_wait_minutes(stage, 4);
    fixture_text(stage, "YES");
    ck_assert_int_eq(stage->verdict.consent, CONSENT_KEEP);
    ck_assert_ptr_nonnull(fixture_answer(stage, "flowing-again"));
    fixture_text(stage, "how long have i got left");
    fixture_text(stage, "cancel");
    ck_assert_int_eq(stage->verdict.consent, CONSENT_KEEP);
    ck_assert_int_eq(stage->context.conversation.question, QUESTION_NONE);
    fixture_text(stage, "how long have i got left");
    fixture_text(stage, "STOP"); /* that one always means it */
    ck_assert_int_eq(stage->verdict.consent, CONSENT_OUT);
}
END_TEST

START_TEST(who_opted_out_still_gets_the_emergency_answer_and_a_person)
{
    stage->context.conversation.opted_out = true;
    fixture_text(stage, "he stopped breathing");
    fixture_alerts(stage, ALERT_EMERGENCY, "sign:trouble-breathing");
    ck_assert_uint_eq(stage->verdict.reply_count, 2);
    fixture_wait_minutes(stage, 10);
    fixture_text(stage, "i feel dizzy");
    fixture_alerts(stage, ALERT_URGENT, "sign:dizzy");
    ck_assert_uint_eq(stage->verdict.reply_count, 1);
    ck_assert_int_eq(strncmp(stage->verdict.replies[0].text, "Call 911 if", 11), 0);
}
END_TEST

START_TEST(who_opted_out_gets_nothing_else_but_a_person_hears_of_it)
{
    stage->context.conversation.opted_out = true;
    fixture_text(stage, "when is it due");
    ck_assert_uint_eq(stage->verdict.reply_count, 0);
    fixture_alerts(stage, ALERT_OFFICE, "opted-out");
    fixture_text(stage, "thanks");
    ck_assert_uint_eq(stage->verdict.reply_count, 0);
    ck_assert_int_eq(stage->verdict.alert.level, ALERT_NONE);
}
END_TEST

START_TEST(help_says_first_where_to_call_in_danger_and_who_we_are)
{
    const char *text;

    fixture_text(stage, "HELP");
    text = stage->verdict.replies[0].text;
    ck_assert_int_eq(strncmp(text, "In danger? Call 911.", 20), 0);
    fixture_says(stage, "208-555-0100");
    fixture_says(stage, "Larkspur Air Rentals");
    fixture_says(stage, "STOP");
    fixture_says(stage, "rates may apply");
    fixture_alerts(stage, ALERT_URGENT, "help");
    fixture_stranger(stage);
    fixture_text(stage, "help");
    fixture_says(stage, "In danger? Call 911.");
    fixture_says_not(stage, "alerted");
    ck_assert_int_eq(stage->verdict.alert.level, ALERT_NONE);
}
END_TEST

START_TEST(a_cry_for_help_names_the_emergency_number_to_anybody_and_calls_a_person_for_a_renter)
{
    static const char *const cries[] = {"HELP ME", "help please!!", "im scared", "ayudame",
                                        "socorro"};
    size_t i;

    for (i = 0; i < sizeof cries / sizeof cries[0]; i++) {
        fixture_free(stage);
        stage = fixture_new();
        fixture_text(stage, cries[i]);
        fixture_alerts(stage, ALERT_URGENT, "help");
        fixture_says(stage, "911");
    }
    fixture_stranger(stage);
    fixture_text(stage, "help me please");
    fixture_says(stage, "In danger? Call 911. Staff were alerted.");
    fixture_alerts(stage, ALERT_URGENT, "help"); /* what is said is so */
}
END_TEST

START_TEST(ayuda_is_answered_in_spanish_whatever_the_record_says)
{
    fixture_text(stage, "AYUDA");
    ck_assert_ptr_nonnull(strstr(stage->verdict.replies[0].text, "¿En peligro? Llame al 911."));
    fixture_says(stage, "208-555-0100");
    fixture_alerts(stage, ALERT_URGENT, "help");
}
END_TEST

START_TEST(stop_in_a_cry_for_help_withdraws_nothing)
{
    static const char *const texts[] = {"STOP chest pain", "stop stop he stopped breathing",
                                        "he cant breathe STOP", "STOP it help chest pain"};
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        fixture_free(stage);
        stage = fixture_new();
        fixture_text(stage, texts[i]);
        ck_assert_msg(stage->verdict.consent == CONSENT_KEEP, "%s", texts[i]);
        ck_assert_msg(stage->verdict.route == ROUTE_EMERGENCY, "%s", texts[i]);
    }
}
END_TEST

/* CTIA Messaging Principles and Best Practices, May 2023, and START of the carriers; the Spanish
 * ones are common practice, no source. */
START_TEST(each_start_keyword_opts_in_from_opted_out_and_only_then)
{
    static const char *const words[] = {"START", "YES", "UNSTOP", "EMPEZAR", "SI", "start.", "Sí"};
    size_t i;

    for (i = 0; i < sizeof words / sizeof words[0]; i++) {
        stage->context.conversation = (struct conversation){0};
        fixture_text(stage, words[i]);
        ck_assert_msg(stage->verdict.consent == CONSENT_KEEP, "\"%s\"", words[i]);
        stage->context.conversation = (struct conversation){.opted_out = true};
        fixture_text(stage, words[i]);
        ck_assert_msg(stage->verdict.consent == CONSENT_IN, "\"%s\"", words[i]);
        ck_assert_uint_eq(stage->verdict.reply_count, 1);
    }
}
END_TEST

/* CTIA Messaging Principles and Best Practices, May 2023: the reply tells who we are, a phone, how
 * to stop and that rates may apply. */
START_TEST(each_help_keyword_is_answered_with_what_the_carriers_ask)
{
    static const struct {
        const char *word, *rates;
    } rows[] = {
        {"HELP", "rates may apply"}, {"INFO", "rates may apply"}, {"AYUDA", "haber cargos"}};
    size_t i;

    for (i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        fixture_text(stage, rows[i].word);
        fixture_says(stage, "Larkspur Air Rentals");
        fixture_says(stage, "208-555-0100");
        fixture_says(stage, "STOP");
        fixture_says(stage, rows[i].rates);
    }
}
END_TEST

/* 47 CFR 64.1200(a)(10): in any reasonable manner; CTIA 5.1.3. The sentences are ours. */
START_TEST(wanting_no_more_texts_in_words_of_ones_own_opts_out)
{
    static const char *const texts[] = {
        "Please stop texting me!",
        "please opt me out",
        "stop sending me these messages",
        "No more texts please",
        "do not text me again",
        "Don't ever text this number again",
        "I don't want any more messages from you",
        "take me off your list",
        "remove my number from your list please",
        "unsubscribe me",
        "I want to opt out",
        "I withdraw my consent",
        "leave me alone",
        "Quit texting me",
        "stopp",
        "no me manden más mensajes",
        "por favor no me escriban más",
        "ya no quiero recibir mensajes",
        "dejen de mandarme mensajes",
        "quiero darme de baja",
        "borren mi número",
        "basta de mensajes",
        "déjenme en paz",
    };
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        stage->context.conversation = (struct conversation){0};
        fixture_text(stage, texts[i]);
        ck_assert_msg(stage->verdict.consent == CONSENT_OUT, "\"%s\"", texts[i]);
        ck_assert_uint_eq(stage->verdict.reply_count, 1);
    }
}
END_TEST

START_TEST(what_only_sounds_like_it_does_not)
{
    static const char *const texts[] = {
        "it wont stop beeping",
        "don't stop texting me",
        "I got no text from you",
        "text me the end date",
        "please text me",
        "did you stop the rental",
        "stop, where do I plug it in",
        "send me a text when it is there",
        "no me llega mensaje",
        "they leave me alone with it all night",
    };
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        fixture_free(stage);
        stage = fixture_new();
        fixture_text(stage, texts[i]);
        ck_assert_msg(stage->verdict.consent == CONSENT_KEEP, "\"%s\"", texts[i]);
    }
}
END_TEST

START_TEST(where_it_may_be_meant_among_other_things_the_rest_is_served_and_the_way_is_told)
{
    fixture_text(stage, "does it charge in the car? and how do i stop these texts");
    ck_assert_int_eq(stage->verdict.consent, CONSENT_KEEP);
    fixture_says(stage, "engine");
    fixture_says(stage, "Want no more texts from us? Text STOP.");
}
END_TEST

START_TEST(who_is_never_rung_is_not_told_that_somebody_will_call)
{
    static const enum reach reaches[] = {REACH_NEVER_RING, REACH_TEXTS_ONLY};
    size_t i;

    for (i = 0; i < 2; i++) {
        fixture_free(stage);
        stage = fixture_new();
        fixture_text(stage, "i feel dizzy");
        fixture_says(stage, "will call you");
        ck_assert_ptr_null(strstr(stage->verdict.alert.brief, "never ring"));
        stage->context.conversation = (struct conversation){0};
        stage->rentals[0].phones[0] =
            (struct phone){.number = stage->message.sender, .reach = reaches[i]};
        stage->rentals[0].phone_count = 1;
        fixture_text(stage, "i feel dizzy");
        fixture_says_not(stage, "will call you");
        fixture_says(stage, "will text you");
        ck_assert_ptr_nonnull(strstr(stage->verdict.alert.brief, "; never ring, text"));
    }
}
END_TEST

START_TEST(spanish_keywords_are_answered_in_spanish)
{
    stage->rentals[0].language = LANGUAGE_ES;
    fixture_text(stage, "AYUDA");
    fixture_says(stage, "Llame al 208-555-0100");
}
END_TEST

int
main(void)
{
    TCase *tests = tcase_create("consent");

    tcase_add_checked_fixture(tests, set_up, tear_down);
    tcase_add_test(tests, each_keyword_alone_opts_out);
    tcase_add_test(tests, a_keyword_inside_a_sentence_does_not);
    tcase_add_test(tests, opting_out_is_confirmed_once_and_staff_agree_another_way);
    tcase_add_test(tests, opting_in_is_only_possible_from_opted_out);
    tcase_add_test(tests, an_open_question_is_answered_first);
    tcase_add_test(tests, who_opted_out_still_gets_the_emergency_answer_and_a_person);
    tcase_add_test(tests, who_opted_out_gets_nothing_else_but_a_person_hears_of_it);
    tcase_add_test(tests, help_says_first_where_to_call_in_danger_and_who_we_are);
    tcase_add_test(
        tests,
        a_cry_for_help_names_the_emergency_number_to_anybody_and_calls_a_person_for_a_renter);
    tcase_add_test(tests, wanting_no_more_texts_in_words_of_ones_own_opts_out);
    tcase_add_test(tests, what_only_sounds_like_it_does_not);
    tcase_add_test(tests,
                   where_it_may_be_meant_among_other_things_the_rest_is_served_and_the_way_is_told);
    tcase_add_test(tests, each_start_keyword_opts_in_from_opted_out_and_only_then);
    tcase_add_test(tests, each_help_keyword_is_answered_with_what_the_carriers_ask);
    tcase_add_test(tests, spanish_keywords_are_answered_in_spanish);
    tcase_add_test(tests, ayuda_is_answered_in_spanish_whatever_the_record_says);
    tcase_add_test(tests, stop_in_a_cry_for_help_withdraws_nothing);
    tcase_add_test(tests, stop_in_a_cry_for_help_withdraws_nothing);
    tcase_add_test(tests, who_is_never_rung_is_not_told_that_somebody_will_call);
    return fixture_run(tests);
}
