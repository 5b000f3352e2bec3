/* What only a person in the office can do is heard by the office in whatever words it is asked for;
 * what the handout answers is only answered. With the content as it ships. */
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

        ck_assert_msg(verdict->route == ROUTE_STAFF && verdict->alert.level == ALERT_NONE, "\"%s\"",
                      wanted[i]);
        fixture_says(stage, "208-555-0100");
    }
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

    tcase_add_unchecked_fixture(tests, shipped_begin, shipped_end);
    tcase_add_checked_fixture(tests, shipped_stage_set_up, stage_tear_down);
    tcase_add_test(tests, of_what_a_renter_wants_done_the_office_hears);
    tcase_add_test(tests, a_renter_gets_the_topics_answer_too_and_staff_its_title);
    tcase_add_test(tests, without_a_sure_topic_the_office_is_told_all_the_same);
    tcase_add_test(tests, a_stranger_is_told_whom_to_call);
    tcase_add_test(tests, a_question_about_the_same_matters_is_only_answered);
    tcase_add_test(tests, danger_beside_a_request_comes_first);
    tcase_add_test(tests, what_another_house_is_asked_for_is_none_of_ours);
    return fixture_run(tests);
}
