/* What is told while an emergency is open or after it: they cannot call, it is there again, help
 * has come. */
#include "stage.h"

#include <string.h>

static void
begin_anew(const char *text)
{
    fixture_free(stage);
    stage = fixture_new();
    stage->keeps_alerts = true;
    fixture_text(stage, text);
    fixture_wait_minutes(stage, 3);
}

START_TEST(who_cannot_call_is_told_how_and_a_person_is_called_again)
{
    static const char *const texts[] = {"i can't call there is no signal",
                                        "no bars here",
                                        "no minutes left on my phone",
                                        "the call won't go through",
                                        "no puedo llamar no hay señal",
                                        "no tengo saldo",
                                        "no entra la llamada",
                                        "my cell doesnt have any service up here",
                                        "lost signal",
                                        "the phone is dead, im on her tablet",
                                        "we have no working phone",
                                        "i cant seem to get a call out",
                                        "calls keep failing, call dropped",
                                        "can you call them for us",
                                        "no me salen las llamadas",
                                        "el cel no agarra señal",
                                        "no traigo celular",
                                        "no hay forma de llamar aqui",
                                        "llamen ustedes por favor"};
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        begin_anew("he has chest pain");
        fixture_text(stage, texts[i]);
        ck_assert_msg(stage->verdict.alert.level == ALERT_EMERGENCY, "%s", texts[i]);
        ck_assert_msg(strstr(fixture_replies(stage), "credit") != NULL ||
                          strstr(fixture_replies(stage), "sin saldo") != NULL,
                      "%s", texts[i]);
        ck_assert_msg(strcmp(stage->verdict.alert.brief, "cannot call: call 911 for them") == 0,
                      "%s: %s", texts[i], stage->verdict.alert.brief);
    }
}
END_TEST

START_TEST(who_cannot_call_is_told_once_more_what_helps_and_that_staff_call_for_them)
{
    begin_anew("he has chest pain");
    fixture_text(stage, "we have no way to call");
    fixture_says(stage, "Sit up. If it stopped, use your");
    fixture_says(stage, "Staff were asked to call 911 for you.");
    begin_anew("he has chest pain");
    fixture_text(stage, "no puedo llamar, no hay señal");
    fixture_says(stage, "Siéntese. Si el aparato no funciona, use su");
    fixture_says(stage, "Pedimos al personal que llame al 911 por usted.");
    begin_anew("the battery is smoking");
    fixture_text(stage, "no signal to call");
    fixture_says(stage, "Staff were asked to call 911 for you.");
    fixture_says_not(stage, "Sit up");
    fixture_says_not(stage, "If it stopped");
}
END_TEST

START_TEST(what_only_looks_like_it_is_not_told_to_staff_as_that)
{
    static const char *const texts[] = {"she cant breathe call someone",
                                        "called them, no trouble with the phone",
                                        "no he is on the phone with them",
                                        "he does not want to call",
                                        "no hace falta llamar",
                                        "i called, no signal at first but they are on their way"};
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        begin_anew("he has chest pain");
        fixture_text(stage, texts[i]);
        ck_assert_msg(strstr(stage->verdict.alert.brief, "cannot call") == NULL, "%s", texts[i]);
    }
}
END_TEST

START_TEST(who_is_cut_off_from_help_has_a_person_called_again)
{
    static const char *const texts[] = {"no ambulance will come, the road is closed",
                                        "they say the pass is closed",
                                        "la ambulancia no puede subir"};
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        begin_anew("he has chest pain");
        fixture_text(stage, texts[i]);
        ck_assert_msg(stage->verdict.alert.level == ALERT_EMERGENCY, "%s", texts[i]);
        ck_assert_msg(strstr(fixture_replies(stage), "911") != NULL, "%s", texts[i]);
    }
}
END_TEST

START_TEST(whether_the_oxygen_stays_on_till_help_comes_is_answered)
{
    begin_anew("he has chest pain");
    fixture_text(stage, "called 911, should he keep the oxygen on");
    fixture_says(stage, "Keep the oxygen on as ordered");
    begin_anew("he has chest pain");
    fixture_text(stage, "the medics want to know his flow setting");
    fixture_says(stage, "display");
    fixture_text(stage, "thank you");
    ck_assert_ptr_null(strstr(fixture_replies(stage), "Keep the oxygen on"));
}
END_TEST

START_TEST(beside_a_sign_it_is_told_in_the_second_part)
{
    fixture_text(stage, "chest pain and my phone has no signal");
    fixture_says(stage, "Call 911 now.");
    fixture_says(stage, "even with no bars");
    fixture_says(stage, "Sit up.");
    fixture_says(stage, "Staff were asked to call 911 for you.");
    ck_assert_str_eq(stage->verdict.alert.brief, "cannot call: call 911 for them + chest pain");
}
END_TEST

START_TEST(whether_spanish_is_spoken_there_is_answered)
{
    begin_anew("he has chest pain");
    fixture_text(stage, "y el 911 habla español?");
    fixture_says(stage, "intérprete");
}
END_TEST

START_TEST(no_signal_without_an_emergency_calls_nobody)
{
    fixture_text(stage, "no tengo saldo");
    ck_assert_int_lt(stage->verdict.alert.level, ALERT_URGENT);
    fixture_says_not(stage, "911 sin saldo");
}
END_TEST

START_TEST(what_is_there_again_is_an_emergency_even_after_an_all_clear)
{
    static const char *const texts[] = {"ya no esta bien",      "recayo",
                                        "otra vez se puso mal", "le volvio a dar",
                                        "it started again",     "he is worse again",
                                        "she's not ok anymore"};
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        begin_anew("he has chest pain");
        fixture_text(stage, "false alarm, he is ok");
        ck_assert_ptr_nonnull(fixture_answer(stage, "is-over"));
        fixture_wait_minutes(stage, 6);
        fixture_text(stage, texts[i]);
        ck_assert_msg(stage->verdict.alert.level == ALERT_EMERGENCY, "%s", texts[i]);
        fixture_says(stage, "911");
    }
}
END_TEST

START_TEST(of_a_thing_or_out_of_the_blue_it_is_none)
{
    static const char *const things[] = {"the beeping started again", "el clima esta peor",
                                         "what if he gets worse"};
    static const char *const blue[] = {"recayo", "the traffic is getting worse"};
    size_t i;

    for (i = 0; i < sizeof things / sizeof things[0]; i++) {
        begin_anew("he has chest pain");
        fixture_text(stage, things[i]);
        ck_assert_msg(fixture_answer(stage, "worse-again") == NULL, "%s", things[i]);
    }
    for (i = 0; i < sizeof blue / sizeof blue[0]; i++) {
        fixture_free(stage);
        stage = fixture_new();
        fixture_text(stage, blue[i]);
        ck_assert_msg(fixture_answer(stage, "worse-again") == NULL, "%s", blue[i]);
    }
}
END_TEST

START_TEST(help_that_came_is_news_and_no_new_emergency)
{
    static const char *const texts[] = {
        "ya se lo llevaron al hospital",
        "ya llego la ambulancia, los paramedicos dicen que esta bien",
        "dijo el doctor que ya esta bien",
        "esta internado",
        "ya lo estan revisando los paramedicos",
        "they took him to hospital",
        "we took him to the hospital, he's better",
        "paramedics say he is fine"};
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        begin_anew("he has chest pain");
        fixture_text(stage, texts[i]);
        ck_assert_msg(fixture_answer(stage, "is-over") != NULL, "%s", texts[i]);
        fixture_alerts(stage, ALERT_OFFICE, "is-over");
    }
}
END_TEST

START_TEST(whom_helpers_call_ill_or_who_only_asks_for_them_is_not_over)
{
    static const char *const texts[] = {"paramedics say he is not fine",
                                        "los paramedicos que vengan",
                                        "should we take him to hospital",
                                        "el doctor dice que es grave", "lo llevamos al hospital?"};
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        begin_anew("he has chest pain");
        fixture_text(stage, texts[i]);
        ck_assert_msg(fixture_answer(stage, "is-over") == NULL, "%s", texts[i]);
    }
}
END_TEST

START_TEST(slang_answers_whether_oxygen_flows)
{
    begin_anew("se fue la luz");
    fixture_text(stage, "nel");
    fixture_alerts(stage, ALERT_EMERGENCY, "flowing:no");
    begin_anew("se fue la luz");
    fixture_text(stage, "simon ya jala");
    ck_assert_ptr_nonnull(fixture_answer(stage, "flowing-again"));
    begin_anew("the power went out");
    fixture_text(stage, "simon needs a cord");
    ck_assert_ptr_null(fixture_answer(stage, "flowing-again"));
}
END_TEST

START_TEST(who_has_no_tank_is_not_sent_to_it)
{
    begin_anew("se fue la luz");
    fixture_text(stage, "no tenemos tanque");
    fixture_says_not(stage, "use su tanque");
}
END_TEST

int
main(void)
{
    TCase *tests = tcase_create("told after");

    tcase_add_checked_fixture(tests, stage_set_up, stage_tear_down);
    tcase_add_test(tests, who_cannot_call_is_told_how_and_a_person_is_called_again);
    tcase_add_test(tests,
                   who_cannot_call_is_told_once_more_what_helps_and_that_staff_call_for_them);
    tcase_add_test(tests, what_only_looks_like_it_is_not_told_to_staff_as_that);
    tcase_add_test(tests, who_is_cut_off_from_help_has_a_person_called_again);
    tcase_add_test(tests, whether_the_oxygen_stays_on_till_help_comes_is_answered);
    tcase_add_test(tests, beside_a_sign_it_is_told_in_the_second_part);
    tcase_add_test(tests, whether_spanish_is_spoken_there_is_answered);
    tcase_add_test(tests, no_signal_without_an_emergency_calls_nobody);
    tcase_add_test(tests, what_is_there_again_is_an_emergency_even_after_an_all_clear);
    tcase_add_test(tests, of_a_thing_or_out_of_the_blue_it_is_none);
    tcase_add_test(tests, help_that_came_is_news_and_no_new_emergency);
    tcase_add_test(tests, whom_helpers_call_ill_or_who_only_asks_for_them_is_not_over);
    tcase_add_test(tests, slang_answers_whether_oxygen_flows);
    tcase_add_test(tests, who_has_no_tank_is_not_sent_to_it);
    return fixture_run(tests);
}
