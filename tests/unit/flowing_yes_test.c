/* What answers "Is oxygen flowing again?" with YES, what does not, and what only looks like it. */
#include "flowing_stage.h"

START_TEST(yes_in_usual_words_closes_the_question)
{
    static const char *const texts[] = {
        "YES",
        "yes thanks",
        "Yes!",
        "its ok now",
        "yes it is flowing",
        "working again thank you",
        "all good now",
        "still flowing",
        "yep no problem",
        "sí gracias",
        "ya funciona",
        "si",
        "power is back and the machine is running",
        "ya prendio la maquina",
        "ok yes",
    };

    EACH_IS(texts, ALERT_NONE, QUESTION_NONE);
}
END_TEST

START_TEST(yes_to_what_they_did_or_have_asks_again_and_names_the_backup)
{
    static const char *const texts[] = {"yes it's plugged in",
                                        "yes I tried another outlet",
                                        "Yes, I did check the tube",
                                        "yes we have a tank",
                                        "tried that",
                                        "si, esta enchufado",
                                        "yes we went to the other room and plugged it in there"};
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        ask_whether_it_flows();
        fixture_text(stage, texts[i]);
        ck_assert_msg(stage->context.conversation.question == QUESTION_FLOWING, "%s", texts[i]);
        ck_assert_msg(fixture_answer(stage, "flowing") != NULL, "%s", texts[i]);
        fixture_says(stage, " E"); /* cylinder */
    }
}
END_TEST

/* A unit that stopped does not run because the lights do. */
START_TEST(power_that_is_back_is_no_oxygen)
{
    static const char *const texts[] = {"power is back on",
                                        "lights back",
                                        "power back",
                                        "the lights are back on finally",
                                        "electricity came back",
                                        "ya volvio la luz, gracias",
                                        "regreso la corriente",
                                        "hay luz"};
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        ask_whether_it_flows();
        fixture_text(stage, texts[i]);
        ck_assert_msg(stage->context.conversation.question == QUESTION_FLOWING, "%s", texts[i]);
        ck_assert_msg(fixture_answer(stage, "flowing") != NULL, "%s", texts[i]);
    }
}
END_TEST

/* The emergency that NO began stays open, and the same is asked once more. */
START_TEST(what_came_back_after_no_is_asked_of_again)
{
    static const char *const texts[] = {"its back",       "power is back, unit running",
                                        "oxygen is back", "ya volvio la luz",
                                        "back on",        "lights are back"};
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        ask_whether_it_flows();
        stage->keeps_alerts = true;
        fixture_text(stage, "NO");
        fixture_alerts(stage, ALERT_EMERGENCY, "flowing:no");
        fixture_wait_minutes(stage, 2);
        fixture_text(stage, texts[i]);
        fixture_alerts(stage, ALERT_OFFICE, "wrote-again");
        ck_assert_msg(stage->context.conversation.question == QUESTION_FLOWING, "%s", texts[i]);
        fixture_text(stage, "yes");
        ck_assert_msg(fixture_answer(stage, "flowing-again") != NULL, "%s", texts[i]);
    }
}
END_TEST

START_TEST(what_is_neither_leaves_the_question_open_and_asks_again)
{
    static const char *const texts[] = {
        "ok",
        "thanks",
        "let me see",
        "how do i open the backup",
        "is it working?",
        "si se apaga que hago",
        "when is it due",
        "yes it's plugged in", /* a yes to something else */
        "yes I did check the tube",
        "si ya lo tengo enchufado",
    };
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        ask_whether_it_flows();
        fixture_text(stage, texts[i]);
        ck_assert_msg(stage->context.conversation.question == QUESTION_FLOWING, "%s", texts[i]);
        ck_assert_msg(stage->verdict.alert.level < ALERT_EMERGENCY, "%s", texts[i]);
        ck_assert_msg(fixture_answer(stage, "flowing") != NULL, "%s", texts[i]);
    }
}
END_TEST

START_TEST(yes_with_another_problem_does_not_close)
{
    ask_whether_it_flows();
    fixture_text(stage, "yes but i feel dizzy");
    ck_assert_int_eq(stage->verdict.route, ROUTE_CLINICAL);
    ck_assert_int_eq(stage->context.conversation.question, QUESTION_FLOWING);
    ask_whether_it_flows();
    fixture_text(stage, "yes but the machine stopped again");
    ck_assert_int_eq(stage->context.conversation.question, QUESTION_FLOWING);
    ck_assert_int_eq(stage->verdict.alert.level, ALERT_URGENT);
    fixture_says(stage, "Is oxygen flowing again?");
}
END_TEST

/* "Ya anda", "ya quedo" and their like are told of people and of half a flow as well. */
START_TEST(it_runs_again_closes_the_question_only_with_nothing_else_beside_it)
{
    static const char *const closes[] = {
        "ya anda gracias",       "ya jala la maquina, todo bien", "ya sirve otra vez",
        "ya trabaja el aparato", "ya quedo, muchas gracias",      "ya sale el oxigeno"};
    static const char *const does_not[] = {"mi papa ya anda en las ultimas",
                                           "ya jala poco",
                                           "ya sirve a ratos",
                                           "mi papa ya quedo",
                                           "el ya quedo",
                                           "ya trabaja mal",
                                           "ya anda fallando",
                                           "ya sale poquito aire",
                                           "its working on and off",
                                           "yes but barely",
                                           "yes its flowing a little",
                                           "working again but a bit"};
    size_t i;

    EACH_IS(closes, ALERT_NONE, QUESTION_NONE);
    for (i = 0; i < sizeof does_not / sizeof does_not[0]; i++) {
        ask_whether_it_flows();
        fixture_text(stage, does_not[i]);
        ck_assert_msg(stage->context.conversation.question == QUESTION_FLOWING ||
                          stage->verdict.alert.level == ALERT_EMERGENCY,
                      "%s", does_not[i]);
        ck_assert_msg(fixture_answer(stage, "is-over") == NULL, "%s", does_not[i]);
    }
}
END_TEST

START_TEST(half_a_flow_is_no)
{
    static const char *const half[] = {
        "yes a little",         "yes but barely", "si pero poco", "only a little air",
        "its very weak",        "on and off",     "kind of",      "hardly",
        "ya sale poquito aire", "mas o menos",    "a ratos",      "apenas"};
    static const char *const of_else[] = {
        "yes its a little loud but flowing", "yes flowing fine, i was a little worried",
        "it was a little loose, its flowing again", "si ya sale, un poco tarde pero ya"};
    size_t i;

    EACH_IS(half, ALERT_EMERGENCY, QUESTION_NONE);
    for (i = 0; i < sizeof of_else / sizeof of_else[0]; i++) {
        ask_whether_it_flows();
        fixture_text(stage, of_else[i]);
        ck_assert_msg(stage->verdict.alert.level < ALERT_EMERGENCY, "%s", of_else[i]);
    }
}
END_TEST

/* Half, bad and sometimes are told of what their own clause names. */
START_TEST(half_of_something_else_is_no_half_flow)
{
    static const char *const closes[] = {"yes oxygen is coming out, the screen is only half lit",
                                         "yes its flowing, suena mal",
                                         "i turned it off and on and its working now"};
    static const char *const no_alarm[] = {"yes it flows fine, battery is only half",
                                           "battery is at half now",
                                           "the spare is at half",
                                           "yes, off and on again works",
                                           "yes. it does that sometimes",
                                           "yes it flows, the cannula was a little out",
                                           "yes its flowing, dont know what happened",
                                           "yes, works now, it happened sometimes",
                                           "yes, works, just the light is faint",
                                           "si sale oxigeno, huele mal pero bien",
                                           "si, sale bien. poco a poco",
                                           "si. la luz falla nomas"};
    static const char *const half[] = {
        "yes its flowing but barely", "yes, it flows. but only a little",
        "yes flowing at half",        "its working on and off",
        "si funciona pero mal",       "not sure if its flowing"};
    size_t i;

    EACH_IS(closes, ALERT_NONE, QUESTION_NONE);
    EACH_IS(half, ALERT_EMERGENCY, QUESTION_NONE);
    for (i = 0; i < sizeof no_alarm / sizeof no_alarm[0]; i++) {
        ask_whether_it_flows();
        fixture_text(stage, no_alarm[i]);
        ck_assert_msg(stage->verdict.alert.level < ALERT_EMERGENCY, "%s", no_alarm[i]);
    }
}
END_TEST

/* It is out of these that oxygen comes. */
START_TEST(half_a_flow_out_of_the_tube_or_off_and_on_again_is_no)
{
    static const char *const half[] = {"yes barely coming through the tubing",
                                       "a little air from the prongs",
                                       "just a little out of the hose",
                                       "yes a little out the mask",
                                       "hardly any on the battery",
                                       "yes kind of it sounds faint",
                                       "comes on and off again",
                                       "yes on and off again",
                                       "its off and on again",
                                       "poquito aire en la mascarilla",
                                       "si, apenas por la canula",
                                       "sale poco de la manguera"};
    static const char *const of_else[] = {
        "i switched it off and on again, its flowing",
        "yes its flowing, the tube was a little bent", "yes it flows, the hose is a little long",
        "si sale bien, la manguera estaba un poco suelta", "yes flowing, battery at half"};
    size_t i;

    EACH_IS(half, ALERT_EMERGENCY, QUESTION_NONE);
    for (i = 0; i < sizeof of_else / sizeof of_else[0]; i++) {
        ask_whether_it_flows();
        fixture_text(stage, of_else[i]);
        ck_assert_msg(stage->verdict.alert.level < ALERT_EMERGENCY, "%s", of_else[i]);
    }
}
END_TEST

START_TEST(what_is_said_of_a_phone_is_nothing_of_the_oxygen)
{
    static const char *const of_phone[] = {"my phone died again", "sorry, phone was off",
                                           "my cell died", "se me apago el celular",
                                           "se murio mi telefono"};
    static const char *const of_both[] = {"no my phone died", "my phone died and nothing comes",
                                          "phone died, machine still off"};
    size_t i;

    for (i = 0; i < sizeof of_phone / sizeof of_phone[0]; i++) {
        ask_whether_it_flows();
        fixture_text(stage, of_phone[i]);
        ck_assert_msg(stage->verdict.alert.level < ALERT_EMERGENCY, "%s", of_phone[i]);
        ck_assert_int_eq(stage->context.conversation.question, QUESTION_FLOWING);
    }
    EACH_IS(of_both, ALERT_EMERGENCY, QUESTION_NONE);
}
END_TEST

START_TEST(one_word_tells_that_it_is_back_or_gone)
{
    static const char *const back[] = {"back", "back again lol", "ok its back now"};
    static const char *const gone[] = {"gone again", "its gone", "power gone again"};
    static const char *const neither[] = {"i will be back", "back in a minute",
                                          "he is gone to the store for it"};
    size_t i;

    EACH_IS(back, ALERT_NONE, QUESTION_NONE);
    EACH_IS(gone, ALERT_EMERGENCY, QUESTION_NONE);
    for (i = 0; i < sizeof neither / sizeof neither[0]; i++) {
        ask_whether_it_flows();
        fixture_text(stage, neither[i]);
        ck_assert_int_eq(stage->context.conversation.question, QUESTION_FLOWING);
    }
}
END_TEST

START_TEST(a_question_beside_it_is_answered_and_oxygen_asked_about_again)
{
    ask_whether_it_flows();
    fixture_text(stage, "ya funciona, when is it due");
    fixture_says(stage, "Feb 14");
    ck_assert_int_eq(stage->context.conversation.question, QUESTION_FLOWING);
}
END_TEST

int
main(void)
{
    TCase *tests = tcase_create("flowing yes");

    tcase_add_checked_fixture(tests, stage_set_up, stage_tear_down);
    tcase_add_test(tests, power_that_is_back_is_no_oxygen);
    tcase_add_test(tests, what_came_back_after_no_is_asked_of_again);
    tcase_add_test(tests, yes_in_usual_words_closes_the_question);
    tcase_add_test(tests, yes_to_what_they_did_or_have_asks_again_and_names_the_backup);
    tcase_add_test(tests, what_is_neither_leaves_the_question_open_and_asks_again);
    tcase_add_test(tests, yes_with_another_problem_does_not_close);
    tcase_add_test(tests, it_runs_again_closes_the_question_only_with_nothing_else_beside_it);
    tcase_add_test(tests, half_a_flow_is_no);
    tcase_add_test(tests, half_of_something_else_is_no_half_flow);
    tcase_add_test(tests, half_a_flow_out_of_the_tube_or_off_and_on_again_is_no);
    tcase_add_test(tests, what_is_said_of_a_phone_is_nothing_of_the_oxygen);
    tcase_add_test(tests, one_word_tells_that_it_is_back_or_gone);
    tcase_add_test(tests, a_question_beside_it_is_answered_and_oxygen_asked_about_again);
    return fixture_run(tests);
}
