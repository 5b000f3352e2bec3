/* What becomes of whole texts with the content as it ships: where words that only it lists decide,
 * or what it is likest to. */
#include "shipped_stage.h"

#include <string.h>

#include "memory.h"

static void
begin_anew(void)
{
    stage_tear_down();
    shipped_stage_set_up();
}

/* The answers' ids: "medicines fire-safety". */
static const char *
answered(const char *text)
{
    char *ids;
    size_t i;

    begin_anew();
    ids = memory_copy(stage->arena, "");
    fixture_text(stage, text);
    for (i = 0; i < stage->verdict.answer_count; i++) {
        memory_append(&ids, "%s%s", i > 0 ? " " : "", stage->verdict.answers[i].id);
    }
    return ids;
}

#define EACH_ANSWERED(texts, ids) each_answered(texts, sizeof(texts) / sizeof((texts)[0]), ids)

static void
each_answered(const char *const *texts, size_t count, const char *ids)
{
    size_t i;

    for (i = 0; i < count; i++) {
        const char *got = answered(texts[i]);

        ck_assert_msg(strcmp(got, ids) == 0, "\"%s\": %s", texts[i], got);
    }
}

/* ---- Medicines ------------------------------------------------------------------------------ */

START_TEST(whether_to_take_what_no_list_knows_is_for_a_person_like_any_medicine)
{
    static const char *const texts[] = {"can i take zyrlenta",
                                        "can he take Dunvexa?",
                                        "is it ok to take prolidin while on oxygen?",
                                        "should she take quartztab tonight",
                                        "can mom have her zintrapan tonight",
                                        "can i give my dad his fluvoran before bed",
                                        "took an extra zintrapan by accident what should i do",
                                        "gave her a second fluvoran by mistake",
                                        "should mom take her sleeping pill with the oxygen",
                                        "puedo tomar zyrlenta",
                                        "puede mi papa tomar dolotrexa con el oxigeno"};
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        const char *ids = answered(texts[i]);

        ck_assert_msg(strstr(ids, "medicines") != NULL && strstr(ids, "which-topic") == NULL,
                      "\"%s\": %s", texts[i], ids);
        ck_assert_int_ge(stage->verdict.alert.level, ALERT_URGENT);
    }
}
END_TEST

START_TEST(other_things_to_take_are_no_medicine)
{
    static const char *const texts[] = {"can i take pictures",
                                        "can i take Rover up the mountain",
                                        "can i take Jonathan with me",
                                        "can i take the funicular",
                                        "can i take lessons",
                                        "can dad have his charger tonight",
                                        "took an extra battery by accident",
                                        "can i have my deposit back tonight",
                                        "can we take it snowbording",
                                        "he took zyrlenta street to the lodge",
                                        "puedo tomar fotos",
                                        "puedo tomar el teleferico"};
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        const char *ids = answered(texts[i]);

        ck_assert_msg(strstr(ids, "medicines") == NULL, "\"%s\": %s", texts[i], ids);
    }
}
END_TEST

/* ---- Few words ------------------------------------------------------------------------------ */

START_TEST(no_battery_and_nothing_else_is_an_empty_one)
{
    static const char *const texts[] = {"sin pila", "sin bateria!", "no battery", "no batteries."};
    static const char *const others[] = {"no battery?", "no battery light",
                                         "sin pilas de repuesto"};
    size_t i;

    EACH_ANSWERED(texts, "ran-out flowing");
    for (i = 0; i < sizeof others / sizeof others[0]; i++) {
        ck_assert_msg(strstr(answered(others[i]), "ran-out") == NULL, "%s", others[i]);
    }
}
END_TEST

START_TEST(who_wants_to_give_it_back_is_told_how)
{
    static const char *const texts[] = {"quiero devolver", "quiero devolverlo ya",
                                        "queremos devolver el equipo"};

    EACH_ANSWERED(texts, "return-ship");
}
END_TEST

START_TEST(how_nice_it_was_wants_no_answer)
{
    static const char *const texts[] = {"thanks so much we had a great time",
                                        "thank you, it was a lovely stay and we loved every minute",
                                        "muchas gracias, la pasamos muy bien",
                                        "gracias por todo, nos encanto"};
    static const char *const others[] = {"thanks, mom had a hard time", "we had a bad time",
                                         "he had a great fall"};
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        const char *ids = answered(texts[i]);

        ck_assert_msg(stage->verdict.route == ROUTE_SMALLTALK, "\"%s\": %s", texts[i], ids);
        ck_assert_int_eq(stage->verdict.alert.level, ALERT_NONE);
    }
    for (i = 0; i < sizeof others / sizeof others[0]; i++) {
        const char *ids = answered(others[i]);

        ck_assert_msg(stage->verdict.route != ROUTE_SMALLTALK, "\"%s\": %s", others[i], ids);
    }
}
END_TEST

START_TEST(that_it_is_no_emergency_leads_up_to_a_question)
{
    static const char *const texts[] = {"no es emergencia, nomas quiero saber a que hora abren",
                                        "no es una emergencia, cual es el telefono de la oficina",
                                        "no emergency here, what time do you close"};
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        const char *ids = answered(texts[i]);

        ck_assert_msg(strstr(ids, "is-over") == NULL && strstr(ids, "contact") != NULL,
                      "\"%s\": %s", texts[i], ids);
        ck_assert_uint_eq(stage->verdict.reply_count, 1);
    }
}
END_TEST

/* ---- Who is on oxygen ----------------------------------------------------------------------- */

START_TEST(who_only_introduces_somebody_is_asked_what_they_want_to_know)
{
    static const char *const texts[] = {
        "my mom is 84 and on oxygen", "my dad is 79 and uses oxygen",
        "Hi, my mother in law is 91, she uses oxygen at night", "mi mama tiene 84 y usa oxigeno",
        "hola, mi suegra tiene 81, usa oxigeno de noche"};

    EACH_ANSWERED(texts, "introduces");
    (void)answered(texts[0]);
    fixture_says(stage, "What would you like to know? If 84 is an oxygen reading and no age, call "
                        "911 now.");
    ck_assert_int_le(stage->verdict.alert.level, ALERT_OFFICE);
    (void)answered("my wife is 72 years old and on oxygen");
    fixture_says_not(stage, "reading");
}
END_TEST

START_TEST(that_the_number_of_who_was_introduced_is_a_reading_is_an_emergency)
{
    static const char *const about[] = {"my mom is 79 and on oxygen", "hi my uncle, 74, uses o2",
                                        "mi suegra tiene 78 y usa oxigeno"};
    static const char *const readings[] = {"thats her reading",  "yes",    "its a reading",
                                           "es su lectura",      "si",     "no, its the finger",
                                           "Yes her saturation", "oxigeno"};
    static const char *const ages[] = {"no", "her age", "no, he is 79 years old", "es la edad"};
    size_t i;

    for (i = 0; i < sizeof readings / sizeof readings[0]; i++) {
        (void)answered(about[i % 3]);
        fixture_text(stage, readings[i]);
        ck_assert_msg(stage->verdict.alert.level == ALERT_EMERGENCY, "%s", readings[i]);
        ck_assert_int_eq(stage->context.conversation.question, QUESTION_NONE);
    }
    for (i = 0; i < sizeof ages / sizeof ages[0]; i++) {
        (void)answered(about[i % 3]);
        ck_assert_int_eq(stage->context.conversation.question, QUESTION_READING_OR_AGE);
        fixture_text(stage, ages[i]);
        ck_assert_msg(stage->verdict.alert.level == ALERT_NONE, "%s", ages[i]);
        fixture_says(stage, "?");
        ck_assert_int_eq(stage->context.conversation.question, QUESTION_NONE);
    }
    ck_assert_int_eq(
        handlers_unanswered(&(struct conversation){.question = QUESTION_READING_OR_AGE}).level,
        ALERT_URGENT);
}
END_TEST

START_TEST(that_it_is_no_age_or_what_the_finger_shows_is_a_reading)
{
    static const char *const about[] = {"my mom is 79 and on oxygen",
                                        "mi suegra tiene 78 y usa oxigeno"};
    static const char *const readings[] = {"thats not her age",
                                           "no the 79 is off the finger clip, not her age",
                                           "it isnt her birthday, its the pulse ox",
                                           "thats what it shows",
                                           "exactly",
                                           "it is",
                                           "no, thats not how old she is",
                                           "no es la edad",
                                           "la lectura no la edad",
                                           "es del dedo no de la edad",
                                           "eso marca",
                                           "asi es"};
    size_t i;

    for (i = 0; i < sizeof readings / sizeof readings[0]; i++) {
        (void)answered(about[i >= 7]);
        fixture_text(stage, readings[i]);
        ck_assert_msg(stage->verdict.alert.level == ALERT_EMERGENCY, "%s", readings[i]);
    }
}
END_TEST

/* The call that waits for it is made, and a reading told then is heard. */
START_TEST(until_an_age_is_told_what_they_write_leaves_it_open)
{
    static const char *const others[] = {"how do I clean the cannula", "thanks", "hmm no age",
                                         "how long does a battery last", "how old is the unit"};
    static const char *const ages[] = {"that is how old she is", "not a reading",
                                       "no es la lectura", "tiene 79 anos",
                                       "no, her age. how long do batteries last"};
    size_t i;

    for (i = 0; i < sizeof others / sizeof others[0]; i++) {
        (void)answered("my mom is 79 and on oxygen");
        fixture_text(stage, others[i]);
        ck_assert_msg(stage->context.conversation.question == QUESTION_READING_OR_AGE, "%s",
                      others[i]);
        ck_assert_msg(stage->verdict.alert.level < ALERT_EMERGENCY, "%s", others[i]);
        fixture_text(stage, "yes thats the reading");
        ck_assert_msg(stage->verdict.alert.level == ALERT_EMERGENCY, "%s", others[i]);
    }
    for (i = 0; i < sizeof ages / sizeof ages[0]; i++) {
        (void)answered("my mom is 79 and on oxygen");
        fixture_text(stage, "thanks");
        fixture_text(stage, ages[i]);
        ck_assert_msg(stage->context.conversation.question == QUESTION_NONE, "%s", ages[i]);
        ck_assert_msg(stage->verdict.alert.level < ALERT_URGENT, "%s", ages[i]);
    }
}
END_TEST

START_TEST(what_may_be_a_reading_or_tells_more_stays_what_it_is)
{
    static const char *const texts[] = {"my mom is 84 on oxygen",
                                        "my mom is 84% and on oxygen",
                                        "my mom is 84 and on oxygen, dizzy",
                                        "my dad is 79 and out of oxygen",
                                        "hi, my mom has 79 and on o2",
                                        "my sister has 81, she is on oxygen",
                                        "mi papa esta en 79 y usa oxigeno"};
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        const char *ids = answered(texts[i]);

        ck_assert_msg(stage->verdict.alert.level >= ALERT_URGENT, "\"%s\": %s", texts[i], ids);
    }
}
END_TEST

START_TEST(a_mains_failure_by_its_name_alone_is_one_now)
{
    static const char *const now[] = {"power cut",       "powercut",    "Blackout!",
                                      "outage here",     "apagon",      "power outage",
                                      "hay apagón aquí", "corte de luz"};
    static const char *const plans[] = {"power cut plan?", "what do i do in a power cut",
                                        "blackout?", "que hago si hay apagon"};
    size_t i;

    for (i = 0; i < sizeof now / sizeof now[0]; i++) {
        shipped_talk_anew();
        fixture_text(stage, now[i]);
        ck_assert_msg(stage->verdict.alert.level == ALERT_URGENT, "%s", now[i]);
    }
    for (i = 0; i < sizeof plans / sizeof plans[0]; i++) {
        shipped_talk_anew();
        fixture_text(stage, plans[i]);
        ck_assert_msg(stage->verdict.alert.level < ALERT_URGENT, "%s", plans[i]);
    }
}
END_TEST

int
main(void)
{
    Suite *suite = suite_create("texts and the shipped content");
    TCase *tests = tcase_create("texts");
    SRunner *runner = srunner_create(suite);
    int failed;

    tcase_add_unchecked_fixture(tests, shipped_begin, shipped_end);
    tcase_add_checked_fixture(tests, shipped_stage_set_up, stage_tear_down);
    tcase_set_timeout(tests, 60);
    tcase_add_test(tests, whether_to_take_what_no_list_knows_is_for_a_person_like_any_medicine);
    tcase_add_test(tests, other_things_to_take_are_no_medicine);
    tcase_add_test(tests, no_battery_and_nothing_else_is_an_empty_one);
    tcase_add_test(tests, who_wants_to_give_it_back_is_told_how);
    tcase_add_test(tests, how_nice_it_was_wants_no_answer);
    tcase_add_test(tests, that_it_is_no_emergency_leads_up_to_a_question);
    tcase_add_test(tests, who_only_introduces_somebody_is_asked_what_they_want_to_know);
    tcase_add_test(tests, that_the_number_of_who_was_introduced_is_a_reading_is_an_emergency);
    tcase_add_test(tests, that_it_is_no_age_or_what_the_finger_shows_is_a_reading);
    tcase_add_test(tests, until_an_age_is_told_what_they_write_leaves_it_open);
    tcase_add_test(tests, what_may_be_a_reading_or_tells_more_stays_what_it_is);
    tcase_add_test(tests, a_mains_failure_by_its_name_alone_is_one_now);
    suite_add_tcase(suite, tests);
    srunner_run_all(runner, CK_ENV);
    failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed == 0 ? 0 : 1;
}
