/* What only a person in the office can do is heard by the office in whatever words it is asked for,
 * and so is a fault of what is rented; what the handout answers is only answered. With the content
 * as it ships. */
#include "shipped_stage.h"

#include <string.h>

static const char *const wanted[] = {
    "hi, please have your man collect the machine on thursday rather than friday",
    "take my nephew off the reservation, he stays home",
    "could you leave one more battery with the lady at the desk today",
    "your driver was nasty to my husband and i want to complain",
    "put my niece's cell on the file too, 555-0147",
    "We have changed lodges. Kindly bring it to the chalet behind the church.",
    "que el chofer deje la maquina con mi cuñada, estamos en misa",
    "quiten a mi sobrino de la reserva, ya no viene",
    "mándeme otra vez la factura, al correo de mi yerno",
    "pasen a recoger el equipo el jueves en vez del viernes"};

static const char *const asked[] = {"do your drivers collect things on a sunday",
                                    "does the driver show us how it works",
                                    "how do i give it back",
                                    "which papers does the airline need",
                                    "please tell me how to wash the filter",
                                    "what day is my rental up",
                                    "el chofer explica como se usa?",
                                    "como lo devuelvo",
                                    "a que hora cierran",
                                    "me dice como se lava el filtro"};

#define COUNT(list) (sizeof(list) / sizeof((list)[0]))

/* Anew, from a renter or from somebody whose number no rental has. */
static const struct verdict *
text_from(bool renter, const char *text)
{
    stage_tear_down();
    shipped_stage_set_up();
    if (!renter) {
        fixture_stranger(stage);
    }
    return fixture_text(stage, text);
}

START_TEST(of_what_a_renter_wants_done_the_office_hears)
{
    size_t i;

    for (i = 0; i < COUNT(wanted); i++) {
        const struct verdict *verdict = text_from(true, wanted[i]);

        ck_assert_msg(verdict->route == ROUTE_STAFF && verdict->alert.level == ALERT_OFFICE &&
                          strncmp(verdict->alert.reason, "office:", 7) == 0,
                      "\"%s\"", wanted[i]);
    }
}
END_TEST

START_TEST(a_renter_gets_the_topics_answer_too_and_staff_its_title)
{
    (void)text_from(true, "please have your man collect the machine on thursday not on friday");
    ck_assert_ptr_nonnull(fixture_answer(stage, "return-ship"));
    fixture_alerts(stage, ALERT_OFFICE, "office:request");
    ck_assert_str_eq(stage->verdict.alert.brief, "wants something done: Giving or sending it back");
    fixture_says(stage, "The office was told and a person will answer.");
}
END_TEST

START_TEST(without_a_sure_topic_the_office_is_told_all_the_same)
{
    (void)text_from(true, "take my nephew off the reservation, he stays home");
    fixture_alerts(stage, ALERT_OFFICE, "office:request");
    ck_assert_str_eq(stage->verdict.alert.brief, "wants something done");
    fixture_says(stage, "The office was told and a person will answer.");
}
END_TEST

START_TEST(a_stranger_is_told_whom_to_call)
{
    size_t i;

    for (i = 0; i < COUNT(wanted); i++) {
        const struct verdict *verdict = text_from(false, wanted[i]);

        ck_assert_msg(verdict->alert.level == ALERT_NONE, "\"%s\"", wanted[i]);
        fixture_says(stage, "208-555-0100");
    }
}
END_TEST

START_TEST(what_a_topic_says_to_a_stranger_is_not_put_down_as_heard_by_staff)
{
    (void)text_from(false, "please bring us one more battery");
    ck_assert_ptr_nonnull(fixture_answer(stage, "extra-battery"));
    ck_assert_int_eq(stage->verdict.route, ROUTE_ANSWER);
}
END_TEST

START_TEST(another_wish_is_told_apart_from_the_one_that_staff_know)
{
    struct open_alert *alert;

    (void)text_from(true, "take my nephew off the reservation, he stays home");
    alert = fixture_alert(stage, 12, stage->verdict.alert.reason);
    alert->level = ALERT_OFFICE; /* called again about any further text */
    (void)fixture_text(stage, "put my niece's cell on the file too, 555-0147");
    fixture_alerts(stage, ALERT_OFFICE, "office:request");
    ck_assert_str_eq(stage->verdict.alert.brief, "wants something else done");
}
END_TEST

START_TEST(beside_a_graver_alert_another_wish_or_fault_is_a_reason_to_call)
{
    (void)text_from(true, "take my nephew off the reservation, he stays home");
    fixture_alert(stage, 12, "trouble:hot,office:request");
    (void)fixture_text(stage, "put my niece's cell on the file too, 555-0147");
    fixture_alerts(stage, ALERT_OFFICE, "office:request-2");
    stage->alerts[0].reasons = "trouble:hot,office:request,office:request-2,trouble:other";
    (void)fixture_text(stage, "tell your driver to come by the back gate");
    fixture_alerts(stage, ALERT_OFFICE, "office:request-3");
    (void)fixture_text(stage, "the plus key is stuck down");
    fixture_alerts(stage, ALERT_OFFICE, "trouble:other-2");
}
END_TEST

static const char *const faults[] = {"my aunt's machine has started to make a grinding sound",
                                     "the power key sank into the housing and stays there",
                                     "one of your batteries rattles inside",
                                     "the hose came with a slit in it",
                                     "the thing restarts by itself all evening",
                                     "your charger buzzes like a hornet and its lamp is off",
                                     "it jumps from 2 to 3 on its own",
                                     "the knob of the spare tank just turns and turns",
                                     "al equipo se le zafó la tapa y no se queda puesta",
                                     "la máquina hace un ruido como de piedritas desde anoche",
                                     "una de las pilas se acaba en quince minutos",
                                     "el cargador ya no prende su luz en ningún lado",
                                     "la manguera vino con una rajadita"};

START_TEST(of_a_fault_in_whatever_words_the_office_hears)
{
    size_t i;

    for (i = 0; i < COUNT(faults); i++) {
        const struct verdict *verdict = text_from(true, faults[i]);

        ck_assert_msg(verdict->alert.level >= ALERT_OFFICE && verdict->route <= ROUTE_EQUIPMENT,
                      "\"%s\"", faults[i]);
    }
}
END_TEST

static const char *const of_what_works[] = {"how do i clean the filter",
                                            "does it hum like this for everybody",
                                            "what is the tiny battery on the screen telling me",
                                            "which way up do the prongs go",
                                            "how many hours does it take to charge one",
                                            "may the batteries stay in the cold car overnight",
                                            "is the fan always on",
                                            "what do we do if the machine breaks on the trail",
                                            "cómo se limpia el filtro",
                                            "es normal que ronronee",
                                            "para qué lado va la pila",
                                            "qué hacemos si se descompone en el camino"};

START_TEST(a_question_about_a_thing_that_works_is_only_answered)
{
    size_t i;

    for (i = 0; i < COUNT(of_what_works); i++) {
        const struct verdict *verdict = text_from(true, of_what_works[i]);

        ck_assert_msg(verdict->alert.level == ALERT_NONE, "\"%s\"", of_what_works[i]);
    }
}
END_TEST

START_TEST(the_handouts_answer_stands_beside_a_fault)
{
    (void)text_from(true, "the machine has started to make a grinding noise");
    fixture_alerts(stage, ALERT_OFFICE, "trouble:other");
    ck_assert_ptr_nonnull(fixture_answer(stage, "noise"));
    fixture_says(stage, "A person will answer about the unit.");
}
END_TEST

START_TEST(what_is_broken_and_not_ours_is_no_fault)
{
    (void)text_from(true, "the coffee maker in our cabin leaks");
    ck_assert_int_ne(stage->verdict.route, ROUTE_EQUIPMENT);
    (void)text_from(true, "se tapó el lavabo del cuarto");
    ck_assert_int_ne(stage->verdict.route, ROUTE_EQUIPMENT);
}
END_TEST

START_TEST(a_question_about_the_same_matters_is_only_answered)
{
    size_t i;

    for (i = 0; i < COUNT(asked); i++) {
        const struct verdict *verdict = text_from(true, asked[i]);

        ck_assert_msg(verdict->route == ROUTE_ANSWER && verdict->alert.level == ALERT_NONE,
                      "\"%s\"", asked[i]);
    }
    ck_assert_int_eq(text_from(false, "what does one more battery cost")->route, ROUTE_ANSWER);
    ck_assert_int_eq(text_from(false, "can you extend a rental")->route, ROUTE_ANSWER);
}
END_TEST

START_TEST(danger_beside_a_request_comes_first)
{
    ck_assert_int_eq(text_from(true, "pick it up tuesday instead please. he has chest pain")->route,
                     ROUTE_EMERGENCY);
    ck_assert_int_eq(text_from(true, "send the driver earlier, my wife can't breathe")->route,
                     ROUTE_EMERGENCY);
    ck_assert_int_eq(
        text_from(true, "cambien la entrega al jueves, mi papa no puede respirar")->route,
        ROUTE_EMERGENCY);
}
END_TEST

START_TEST(what_another_house_is_asked_for_is_none_of_ours)
{
    (void)text_from(true, "please bring four more bath towels to our room");
    ck_assert_int_ne(stage->verdict.route, ROUTE_STAFF);
}
END_TEST

int
main(void)
{
    TCase *tests = tcase_create("request");

    tcase_set_timeout(tests, 120);
    tcase_add_unchecked_fixture(tests, shipped_begin, shipped_end);
    tcase_add_checked_fixture(tests, shipped_stage_set_up, stage_tear_down);
    tcase_add_test(tests, of_what_a_renter_wants_done_the_office_hears);
    tcase_add_test(tests, a_renter_gets_the_topics_answer_too_and_staff_its_title);
    tcase_add_test(tests, without_a_sure_topic_the_office_is_told_all_the_same);
    tcase_add_test(tests, a_stranger_is_told_whom_to_call);
    tcase_add_test(tests, what_a_topic_says_to_a_stranger_is_not_put_down_as_heard_by_staff);
    tcase_add_test(tests, another_wish_is_told_apart_from_the_one_that_staff_know);
    tcase_add_test(tests, beside_a_graver_alert_another_wish_or_fault_is_a_reason_to_call);
    tcase_add_test(tests, of_a_fault_in_whatever_words_the_office_hears);
    tcase_add_test(tests, a_question_about_a_thing_that_works_is_only_answered);
    tcase_add_test(tests, the_handouts_answer_stands_beside_a_fault);
    tcase_add_test(tests, what_is_broken_and_not_ours_is_no_fault);
    tcase_add_test(tests, a_question_about_the_same_matters_is_only_answered);
    tcase_add_test(tests, danger_beside_a_request_comes_first);
    tcase_add_test(tests, what_another_house_is_asked_for_is_none_of_ours);
    return fixture_run(tests);
}
