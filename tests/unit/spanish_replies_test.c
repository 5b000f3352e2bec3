/* What is said to those who text in Spanish, or in a language that we do not speak, with the signs
 * of kb/signs as they are. */
#include "shipped_stage.h"

#include <string.h>

#include "fill.h"
#include "parts.h"
#include "say.h"

#define COUNT(list) ((int)(sizeof(list) / sizeof((list)[0])))

/* ---- What is said --------------------------------------------------------------------------- */

START_TEST(every_first_part_fits_one_text)
{
    const struct house *house = &stage->house;
    struct filling with = {.house = house};
    const struct sign *signs;
    size_t count, i;

    signs = kb_signs(shipped_kb(), &count);
    ck_assert_uint_gt(count, 40);
    for (i = 0; i < count; i++) {
        struct parts parts;

        with.language = signs[i].language;
        parts = parts_count(fill(stage->arena, signs[i].reply, &with, NULL));
        ck_assert_msg(parts.gsm7, "%s is not in the alphabet of GSM 03.38", signs[i].file);
        if (signs[i].level == SIGN_EMERGENCY) {
            ck_assert_msg(parts.parts == 1, "%s has %zu septets", signs[i].file, parts.units);
        } else {
            ck_assert_msg(parts.parts <= 2, "%s has %zu septets", signs[i].file, parts.units);
        }
    }
}
END_TEST

START_TEST(every_english_sign_has_a_spanish_reply)
{
    const struct sign *signs;
    size_t count, i;

    signs = kb_signs(shipped_kb(), &count);
    for (i = 0; i < count; i++) {
        ck_assert_msg(kb_sign(shipped_kb(), signs[i].id, LANGUAGE_ES)->language == LANGUAGE_ES,
                      "signs/es/%s.md is missing", signs[i].id);
    }
}
END_TEST

START_TEST(every_spanish_sentence_keeps_to_the_short_alphabet)
{
    int phrase;

    for (phrase = 0; phrase < PHRASE_COUNT; phrase++) {
        const char *text = say(stage->arena, &stage->house, LANGUAGE_ES, (enum phrase)phrase, "1",
                               "2", "3", "4", NULL);

        ck_assert_msg(parts_count(text).gsm7, "\"%s\"", text);
    }
}
END_TEST

/* The unit is an "aparato" and the cylinder a "tanque", and nothing else; é stands where it
 * belongs, as the alphabet of texts has it. */
static void
check_names(const char *text)
{
    static const char *const others[] = {"equipo",  "Equipo",         "cilindro", "Cilindro",
                                         "bombona", "concentrador",   "maquina",  "m\u00e1quina",
                                         "tambien", "despues",        "telefono", "Sientese",
                                         "ingles",  "de que se trata"};
    size_t i;

    for (i = 0; i < sizeof others / sizeof others[0]; i++) {
        ck_assert_msg(strstr(text, others[i]) == NULL, "\"%s\" in \"%s\"", others[i], text);
    }
}

START_TEST(unit_and_cylinder_have_one_name_each_in_every_spanish_reply)
{
    const struct filling with = {.house = &stage->house,
                                 .zone = &stage->zone,
                                 .language = LANGUAGE_ES,
                                 .rental = &stage->rentals[0],
                                 .equipment = kb_equipment(stage->kb, stage->rentals[0].unit)};
    size_t topic_count, sign_count, i;
    const struct topic *topics = kb_topics(shipped_kb(), &topic_count);
    const struct sign *signs = kb_signs(shipped_kb(), &sign_count);
    int phrase;

    for (phrase = 0; phrase < PHRASE_COUNT; phrase++) {
        check_names(say(stage->arena, &stage->house, LANGUAGE_ES, (enum phrase)phrase, "1", "2",
                        "3", "4", NULL));
    }
    for (i = 0; i < topic_count; i++) {
        if (topics[i].language == LANGUAGE_ES) {
            check_names(fill(stage->arena, topics[i].answer, &with, NULL));
        }
    }
    for (i = 0; i < sign_count; i++) {
        if (signs[i].language == LANGUAGE_ES) {
            check_names(fill(stage->arena, signs[i].reply, &with, NULL));
            check_names(signs[i].in_brief);
        }
    }
}
END_TEST

/* True if the text has one of these words, each with a blank on either side. */
static bool
has_english(const char *text)
{
    static const char *const english[] = {" the ", " now ", " you ", " your ",    " is ",  " was ",
                                          " and ", " to ",  " of ",  " stopped ", " will "};
    size_t i;

    for (i = 0; i < sizeof(english) / sizeof(english[0]); i++) {
        if (strstr(text, english[i]) != NULL) {
            return true;
        }
    }
    return false;
}

START_TEST(an_emergency_in_spanish_is_answered_wholly_in_spanish)
{
    const struct verdict *verdict = fixture_text(stage, "no puedo respirar");
    const char *replies = fixture_replies(stage);

    ck_assert_int_eq(verdict->route, ROUTE_EMERGENCY);
    ck_assert_int_eq(verdict->language, LANGUAGE_ES);
    ck_assert_uint_eq(verdict->reply_count, 2);
    ck_assert_int_eq(strncmp(verdict->replies[0].text, "Llame al 911 ya", 15), 0);
    ck_assert_msg(!has_english(replies), "%s", replies);
    fixture_says(stage, "Le contesta un programa de Larkspur Air Rentals, no una persona.");
    fixture_says(stage, "14 Tarn Road, Cabin 4");
    fixture_says(stage, "su reserva (tanque E)");
    fixture_says(stage, "El personal ya lo sabe. No lo espere.");
    fixture_alerts(stage, ALERT_EMERGENCY, "sign:trouble-breathing");
    ck_assert_str_eq(verdict->alert.brief, "trouble breathing"); /* staff read English */
}
END_TEST

/* The record says English, and nothing of the text tells its language but the sign. */
START_TEST(the_language_is_that_of_the_sign_if_the_text_does_not_tell)
{
    fixture_text(stage, "AMBULANCIA");
    ck_assert_int_eq(stage->verdict.language, LANGUAGE_ES);
    fixture_text(stage, "help mama no respira");
    ck_assert_int_eq(stage->verdict.language, LANGUAGE_ES);
    fixture_says(stage, "Llame al 911");
}
END_TEST

START_TEST(a_sign_of_either_language_is_said_in_the_language_of_the_text)
{
    fixture_text(stage, "mi esposo esta muy grave llame al 911");
    ck_assert_int_eq(stage->verdict.language, LANGUAGE_ES);
    fixture_text(stage, "he has chest pain");
    ck_assert_int_eq(stage->verdict.language, LANGUAGE_EN);
    fixture_says(stage, "Call 911 now");
}
END_TEST

/* The record says English: only what was texted tells that they speak Spanish. */
START_TEST(an_english_word_or_two_of_earlier_do_not_turn_a_spanish_talk_to_english)
{
    fixture_text(stage, "cuanto me dura la bateria si me queda la mitad");
    ck_assert_int_eq(stage->verdict.language, LANGUAGE_ES);
    fixture_text(stage, "the battery");
    ck_assert_int_eq(stage->verdict.language, LANGUAGE_ES);
    fixture_text(stage, "80%");
    ck_assert_int_eq(stage->verdict.language, LANGUAGE_ES);
}
END_TEST

START_TEST(an_english_word_that_made_us_ask_does_not_turn_a_spanish_talk_to_english)
{
    stage->rentals[0].language = LANGUAGE_ES;
    stage->context.conversation.question = QUESTION_WHICH_CHARGE;
    stage->context.conversation.asked_utc_s = stage->context.now_utc_s;
    stage->context.conversation.asked_about = "battery left";
    fixture_text(stage, "80%");
    ck_assert_int_eq(stage->verdict.language, LANGUAGE_ES);
}
END_TEST

START_TEST(a_whole_english_text_turns_the_talk_to_english)
{
    fixture_text(stage, "cuanto me dura la bateria si me queda la mitad");
    fixture_text(stage, "how long will my battery last");
    fixture_text(stage, "80%");
    ck_assert_int_eq(stage->verdict.language, LANGUAGE_EN);
}
END_TEST

START_TEST(a_clinical_answer_in_spanish_ends_with_when_to_call)
{
    const char *text = fixture_text(stage, "me duele la cabeza")->replies[0].text;

    ck_assert_int_eq(stage->verdict.route, ROUTE_CLINICAL);
    ck_assert_ptr_nonnull(strstr(text, "Llame al 911"));
    ck_assert_msg(!has_english(text), "%s", text);
}
END_TEST

START_TEST(a_reading_in_spanish_is_answered_in_spanish)
{
    fixture_text(stage, "el oximetro marca 84");
    fixture_alerts(stage, ALERT_EMERGENCY, "sign:low-reading");
    fixture_says(stage, "Llame al 911 ya");
    fixture_text(stage, "mi oxigeno esta en 91");
    fixture_alerts(stage, ALERT_URGENT, "sign:reading");
    fixture_says(stage, "No podemos decir");
}
END_TEST

/* A value that is told without a word of falling says itself how grave it is. */
START_TEST(a_value_and_nothing_else_is_a_reading)
{
    static const char *const texts[] = {"mi saturacion esta en 92", "la saturacion es de 96",
                                        "el oximetro marca 91", "my saturation is at 92",
                                        "oxygen at 91 on the finger thing"};
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        fixture_wait_minutes(stage, 10); /* each by itself */
        fixture_text(stage, texts[i]);
        ck_assert_msg(stage->verdict.route == ROUTE_CLINICAL, "%s", texts[i]);
        fixture_alerts(stage, ALERT_URGENT, "sign:reading");
    }
    fixture_text(stage, "my saturation is 92 and dropping");
    fixture_alerts(stage, ALERT_EMERGENCY, "sign:low-oxygen");
}
END_TEST

START_TEST(ayuda_alone_says_first_where_to_call)
{
    const char *text = fixture_text(stage, "AYUDA")->replies[0].text;

    ck_assert_int_eq(strncmp(text,
                             "\xc2\xbf"
                             "En peligro? Llame al 911.",
                             strlen("\xc2\xbf"
                                    "En peligro? Llame al 911.")),
                     0);
    ck_assert_int_eq(stage->verdict.alert.level, ALERT_URGENT);
}
END_TEST

START_TEST(a_question_of_the_handout_in_spanish_is_answered_in_spanish)
{
    const char *text = fixture_text(stage, "como se lava la canula")->replies[0].text;

    ck_assert_int_eq(stage->verdict.route, ROUTE_ANSWER);
    ck_assert_str_eq(stage->verdict.answers[0].topic, "cannula-care");
    fixture_says(stage, "jabon suave");
    ck_assert_msg(!has_english(text), "%s", text);
}
END_TEST

START_TEST(what_the_record_has_is_told_in_spanish_too)
{
    fixture_text(stage, "que debe traer la maleta");
    ck_assert_str_eq(stage->verdict.answers[0].topic, "contents");
    fixture_says(stage, "Busque el aparato, ");
    fixture_says(stage, " y la bolsa");
}
END_TEST

START_TEST(every_topic_stands_in_both_languages)
{
    size_t count, i, english = 0;
    const struct topic *topics = kb_topics(stage->context.kb, &count);

    for (i = 0; i < count; i++) {
        const struct topic *spanish = kb_topic(stage->context.kb, topics[i].id, LANGUAGE_ES);

        english += topics[i].language == LANGUAGE_EN;
        ck_assert_msg(spanish->language == LANGUAGE_ES, "%s", topics[i].id);
    }
    ck_assert_uint_eq(count, 2 * english);
}
END_TEST

START_TEST(an_ordinary_question_in_spanish_goes_to_a_person_and_says_so_in_spanish)
{
    const char *text =
        fixture_text(stage, "donde compro boletos para el telesilla")->replies[0].text;

    ck_assert_int_eq(stage->verdict.route, ROUTE_UNANSWERED);
    ck_assert_msg(!has_english(text), "%s", text);
    fixture_says(stage, "\xc2\xbf"
                        "Le cuesta respirar? Llame al 911.");
}
END_TEST

START_TEST(thanks_of_many_words_call_nobody)
{
    fixture_text(stage, "mil gracias de corazon, muy amables, que dios los bendiga");
    ck_assert_int_eq(stage->verdict.route, ROUTE_SMALLTALK);
    ck_assert_int_eq(stage->verdict.alert.level, ALERT_NONE);
}
END_TEST

/* ---- Languages that we do not speak ---------------------------------------------------------- */

static const char *const foreign[] = {
    "\xd0\xbf\xd0\xbe\xd0\xbc\xd0\xbe\xd0\xb3\xd0\xb8\xd1\x82\xd0\xb5", /* Russian */
    "\xe6\x88\x91\xe7\x88\xb6\xe4\xba\xb2\xe6\xb2\xa1\xe6\x9c\x89\xe5\x91\xbc\xe5\x90\xb8",
    "\xd9\x84\xd8\xa7 \xd8\xa3\xd8\xb3\xd8\xaa\xd8\xb7\xd9\x8a\xd8\xb9", /* Arabic */
    "mon mari ne se reveille pas",
    "je ne peux pas dormir",
    "aidez moi",
    "ich bekomme keine luft",
    "hilfe",
    "meine mutter wacht nicht auf",
    "minha mae caiu e nao acorda",
    "mijn man krijg geen lucht",
    "hindi makahinga ang asawa ko",
    "nie moge oddychac",
    "szukam telefonu prosze",
    "vaimoni ei pysty hengittamaan kunnolla", /* Finnish: hardly a word is known */
};

/* Italian, Portuguese, French: what sounds like Spanish in danger is answered as that. */
static const char *const near_spanish[] = {"non riesco a respirare", "nao consigo respirar",
                                           "mon mari ne respire plus"};

START_TEST(an_emergency_in_a_language_near_spanish_is_one)
{
    fixture_text(stage, near_spanish[_i]);
    ck_assert_msg(stage->verdict.alert.level == ALERT_EMERGENCY, "\"%s\"", near_spanish[_i]);
    fixture_says(stage, "Llame al 911");
}
END_TEST

START_TEST(a_language_that_we_do_not_speak_gets_the_emergency_number_in_both_and_a_person)
{
    fixture_text(stage, foreign[_i]);
    ck_assert_msg(stage->verdict.alert.level == ALERT_URGENT, "\"%s\"", foreign[_i]);
    fixture_alerts(stage, ALERT_URGENT, "other-language");
    fixture_says(stage, "Emergency? Call 911.");
    fixture_says(stage, "Llame al 911.");
}
END_TEST

static const char *const not_foreign[] = {
    "ok",
    "k",
    "thx",
    "Ana",
    "Cabin 4",
    "2",
    "14 Tarn Road",
    "555-0101",
    "\xf0\x9f\x91\x8d",
    "merci",
    "danke",
    "gracias",
    "asap pls",
    "Jose Vell",
    "no",
    "si",
    "lol",
    "brb",
    "Wren 2",
    "Room 12 Larkspur lodge",
    "u there",
    "did it ship",
    "wheres my stuf",
    "cuando llega",
    "quiubole que onda",
    "tracking number",
    "hola",
    "\xe2\x9c\x94\xef\xb8\x8f",
};

START_TEST(a_short_text_a_name_or_a_number_is_not_taken_for_foreign)
{
    ck_assert_msg(!kb_is_foreign(shipped_kb(), not_foreign[_i]), "\"%s\"", not_foreign[_i]);
}
END_TEST

START_TEST(a_stranger_in_another_language_calls_nobody)
{
    fixture_stranger(stage);
    fixture_text(stage, "ich bekomme keine luft");
    ck_assert_int_eq(stage->verdict.alert.level, ALERT_NONE);
}
END_TEST

static void
add_languages(TCase *tests)
{
    tcase_add_loop_test(
        tests, a_language_that_we_do_not_speak_gets_the_emergency_number_in_both_and_a_person, 0,
        COUNT(foreign));
    tcase_add_loop_test(tests, an_emergency_in_a_language_near_spanish_is_one, 0,
                        COUNT(near_spanish));
    tcase_add_loop_test(tests, a_short_text_a_name_or_a_number_is_not_taken_for_foreign, 0,
                        COUNT(not_foreign));
    tcase_add_test(tests, a_stranger_in_another_language_calls_nobody);
}

START_TEST(figures_and_units_of_a_stranger_tell_the_language_too)
{
    static const char *const texts[] = {"vuelo 4 h 30", "satura 85", "E, 1500 psi, 2 litros",
                                        "2 luces"};
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        shipped_talk_anew();
        fixture_stranger(stage);
        fixture_text(stage, texts[i]);
        ck_assert_msg(stage->verdict.language == LANGUAGE_ES, "%s", texts[i]);
    }
    fixture_text(stage, "E, 1500 psi, flow 2");
    ck_assert_int_eq(stage->verdict.language, LANGUAGE_ES); /* it goes on */
    shipped_talk_anew();
    fixture_stranger(stage);
    fixture_text(stage, "E, 1500 psi, flow 2");
    ck_assert_int_eq(stage->verdict.language, LANGUAGE_EN);
}
END_TEST

START_TEST(a_number_alone_later_is_answered_in_the_language_of_the_talk)
{
    fixture_stranger(stage);
    fixture_text(stage, "buenos dias, mi saturacion esta en 88");
    fixture_wait_minutes(stage, 20);
    fixture_text(stage, "86");
    ck_assert_int_eq(stage->verdict.language, LANGUAGE_ES);
    fixture_text(stage, "and how do i clean the filter of it");
    fixture_wait_minutes(stage, 20);
    fixture_text(stage, "86");
    ck_assert_int_eq(stage->verdict.language, LANGUAGE_EN);
}
END_TEST

START_TEST(thanks_that_are_not_answered_tell_the_language_of_the_next_text)
{
    fixture_stranger(stage);
    fixture_text(stage, "muchas gracias");
    ck_assert_uint_eq(stage->verdict.reply_count, 0);
    ck_assert(stage->verdict.conversation_changed); /* it is written down */
    fixture_wait_minutes(stage, 20);
    fixture_text(stage, "78");
    ck_assert_int_eq(stage->verdict.language, LANGUAGE_ES);
    fixture_says(stage, "78");
}
END_TEST

int
main(void)
{
    TCase *tests = tcase_create("spanish_replies");

    tcase_add_unchecked_fixture(tests, shipped_begin, shipped_end);
    tcase_add_checked_fixture(tests, shipped_stage_set_up, stage_tear_down);
    tcase_set_timeout(tests, 60);
    tcase_add_test(tests, every_first_part_fits_one_text);
    tcase_add_test(tests, every_english_sign_has_a_spanish_reply);
    tcase_add_test(tests, every_spanish_sentence_keeps_to_the_short_alphabet);
    tcase_add_test(tests, unit_and_cylinder_have_one_name_each_in_every_spanish_reply);
    tcase_add_test(tests, an_emergency_in_spanish_is_answered_wholly_in_spanish);
    tcase_add_test(tests, the_language_is_that_of_the_sign_if_the_text_does_not_tell);
    tcase_add_test(tests, a_sign_of_either_language_is_said_in_the_language_of_the_text);
    tcase_add_test(tests, an_english_word_or_two_of_earlier_do_not_turn_a_spanish_talk_to_english);
    tcase_add_test(tests, an_english_word_that_made_us_ask_does_not_turn_a_spanish_talk_to_english);
    tcase_add_test(tests, a_whole_english_text_turns_the_talk_to_english);
    tcase_add_test(tests, a_clinical_answer_in_spanish_ends_with_when_to_call);
    tcase_add_test(tests, a_reading_in_spanish_is_answered_in_spanish);
    tcase_add_test(tests, a_value_and_nothing_else_is_a_reading);
    tcase_add_test(tests, ayuda_alone_says_first_where_to_call);
    tcase_add_test(tests, a_question_of_the_handout_in_spanish_is_answered_in_spanish);
    tcase_add_test(tests, what_the_record_has_is_told_in_spanish_too);
    tcase_add_test(tests, every_topic_stands_in_both_languages);
    tcase_add_test(tests, an_ordinary_question_in_spanish_goes_to_a_person_and_says_so_in_spanish);
    tcase_add_test(tests, thanks_of_many_words_call_nobody);
    add_languages(tests);
    tcase_add_test(tests, figures_and_units_of_a_stranger_tell_the_language_too);
    tcase_add_test(tests, a_number_alone_later_is_answered_in_the_language_of_the_talk);
    tcase_add_test(tests, thanks_that_are_not_answered_tell_the_language_of_the_next_text);
    return fixture_run(tests);
}
