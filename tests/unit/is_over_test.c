/* "It stopped beeping", "false alarm", "the ambulance is here": staff hear of it, and nothing is
 * called well. */
#include "talk_stage.h"

#include <string.h>

START_TEST(what_is_over_is_thanked_for_and_staff_hear_of_it)
{
    static const char *const texts[] = {"it stopped beeping now",
                                        "the power is back",
                                        "it works again, thanks",
                                        "the darn thing just quit beeping",
                                        "ya no pita",
                                        "volvio la luz",
                                        "ya quedo, gracias",
                                        "ya quedo la maquina",
                                        "ya se le paso",
                                        "he is ok again",
                                        "false alarm, sorry",
                                        "ya respira bien gracias a dios"};
    size_t i;
    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        begin_anew();
        fixture_text(stage, texts[i]);
        ck_assert_msg(fixture_answer(stage, "is-over") != NULL, "%s", texts[i]);
        fixture_alerts(stage, ALERT_OFFICE, "is-over");
        fixture_says(stage, "911");
    }
}
END_TEST
START_TEST(what_is_not_or_only_may_be_over_is_not)
{
    static const char *const texts[] = {"is it ok when it stopped beeping?",
                                        "it is still not working now",
                                        "works now but the light stays red",
                                        "ya no pita pero no sale aire",
                                        "me siento mejor con 3",
                                        "she feels better without it",
                                        "se siente mejor sin la canula",
                                        "is he ok now",
                                        "ya no respira bien",
                                        "i feel better sleeping with it off",
                                        "ya se me paso la dosis",
                                        "alarm is off and so is the machine",
                                        "ya volvio la fiebre",
                                        "ya volvio a pitar",
                                        "ya regreso la alarma",
                                        "mi papa ya quedo",
                                        "el ya quedo",
                                        "ya me paso dos veces hoy"};
    size_t i;
    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        begin_anew();
        fixture_text(stage, texts[i]);
        ck_assert_msg(fixture_answer(stage, "is-over") == NULL, "%s", texts[i]);
    }
}
END_TEST
/* Silence and "again" are told of dead and of burning units as well. */
START_TEST(trouble_in_the_same_breath_calls_somebody)
{
    static const char *const texts[] = {"ya no hace ruido la maquina", "ya no pita ni prende",
                                        "works again hissing loud", "power is back breaker sparks"};
    size_t i;
    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        begin_anew();
        fixture_text(stage, texts[i]);
        ck_assert_msg(fixture_answer(stage, "is-over") == NULL, "%s", texts[i]);
        ck_assert_msg(stage->verdict.alert.level >= ALERT_URGENT, "%s", texts[i]);
    }
}
END_TEST
START_TEST(a_unit_that_went_dead_is_heard_behind_one_that_beeps)
{
    begin_anew();
    fixture_text(stage, "machine beeps");
    fixture_wait_minutes(stage, 1);
    fixture_text(stage, "stopped beeping and went dead");
    ck_assert_int_ge(stage->verdict.alert.level, ALERT_URGENT);
}
END_TEST
/* What "came back" may as well be the alarm, unless we wait to hear that oxygen flows. */
START_TEST(until_oxygen_is_told_to_flow_that_is_asked_again)
{
    fixture_text(stage, "se fue la luz");
    fixture_wait_minutes(stage, 4);
    fixture_text(stage, "ya regreso");
    ck_assert_ptr_nonnull(fixture_answer(stage, "is-over"));
    ck_assert_int_eq(stage->context.conversation.question, QUESTION_FLOWING);
    fixture_says(stage, "Conteste SI o NO");
    fixture_says_not(stage, "Empaque");
    begin_anew();
    fixture_text(stage, "ya regreso");
    ck_assert_ptr_null(fixture_answer(stage, "is-over"));
}
END_TEST
START_TEST(an_open_alert_hears_of_it)
{
    begin_anew();
    fixture_text(stage, "machine stopped");
    fixture_wait_minutes(stage, 4);
    fixture_text(stage, "Yes");
    fixture_text(stage, "the alarm stopped");
    fixture_alerts(stage, ALERT_OFFICE, "is-over");
}
END_TEST
START_TEST(never_mind_is_one_only_while_an_alert_is_open)
{
    begin_anew();
    fixture_text(stage, "never mind");
    ck_assert_ptr_null(fixture_answer(stage, "is-over"));
    fixture_text(stage, "he cant breathe");
    fixture_wait_minutes(stage, 4);
    fixture_text(stage, "never mind, he is ok");
    ck_assert_ptr_nonnull(fixture_answer(stage, "is-over"));
}
END_TEST
START_TEST(after_an_all_clear_questions_are_answered_and_the_alert_stays)
{
    said_after("he cant breathe", "he coughed it up and is breathing fine now");
    fixture_says(stage, "a person still wants to reach you");
    ck_assert_int_eq(stage->verdict.route, ROUTE_STAFF);
    fixture_wait_minutes(stage, 5);
    fixture_text(stage, "when is it due");
    fixture_says(stage, "Feb 14");
    fixture_says_not(stage, "Called 911");
    fixture_text(stage, "he cant breathe again");
    fixture_alerts(stage, ALERT_EMERGENCY, "sign:trouble-breathing");
    fixture_wait_minutes(stage, 5);
    fixture_text(stage, "when is it due");
    fixture_says(stage, "Called 911?");
}
END_TEST
START_TEST(where_help_is_there_nothing_more_is_said)
{
    static const char *const texts[] = {"the paramedics are here", "we are at the hospital now",
                                        "ya llego la ambulancia"};
    size_t i;
    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        said_after(i == 2 ? "me ahogo" : "he has chest pain", texts[i]);
        fixture_alerts(stage, ALERT_OFFICE, "is-over");
        ck_assert_str_eq(stage->verdict.alert.brief, "says help is there");
        ck_assert_msg(stage->verdict.reply_count == 0, "%s: %s", texts[i],
                      stage->verdict.replies[0].text);
    }
}
END_TEST
START_TEST(a_doubtful_all_clear_still_asks_whether_911_was_called)
{
    static const char *const texts[] = {"breathing better but not right", "i hope he is ok now",
                                        "he is better when he sits, only then",
                                        "the ambulance is not here"};
    size_t i;
    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        said_after("he has chest pain", texts[i]);
        ck_assert_msg(strstr(stage->verdict.replies[0].text, "911") != NULL, "%s", texts[i]);
        ck_assert_msg(fixture_answer(stage, "is-over") == NULL, "%s", texts[i]);
    }
}
END_TEST
START_TEST(after_an_all_clear_a_relapse_in_any_words_asks_for_911_again)
{
    static const char *const texts[] = {"nope", "please come", "they cant find us"};
    size_t i;
    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        said_after("he has chest pain", "false alarm");
        fixture_wait_minutes(stage, 5);
        fixture_text(stage, texts[i]);
        ck_assert_msg(stage->verdict.reply_count > 0 &&
                          strstr(stage->verdict.replies[0].text, "call 911 now") != NULL,
                      "%s: %s", texts[i],
                      stage->verdict.reply_count > 0 ? stage->verdict.replies[0].text : "");
    }
}
END_TEST
START_TEST(yes_to_when_to_call_911_calls_somebody)
{
    static const char *const texts[] = {"yes", "yes both", "si"};
    size_t i;
    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        begin_anew();
        fixture_text(stage, "i feel dizzy");
        fixture_wait_minutes(stage, 3);
        fixture_text(stage, texts[i]);
        fixture_says(stage, "911");
        fixture_alerts(stage, ALERT_URGENT, "danger:yes");
    }
    begin_anew();
    fixture_text(stage, "yes");
    ck_assert_int_eq(stage->verdict.alert.level, ALERT_NONE);
    fixture_text(stage, "i feel dizzy");
    fixture_wait_minutes(stage, 3);
    fixture_text(stage, "thanks");
    ck_assert_int_lt(stage->verdict.alert.level, ALERT_URGENT);
}
END_TEST
/* What was wrong is told as past, with its cause, or put right. */
START_TEST(an_all_clear_may_name_what_it_came_from)
{
    static const char *const told[][2] = {
        {"he cant breathe", "era la manguera doblada ya respira bien"},
        {"he cant breathe", "it was the tube kinked, he is ok now"},
        {"he has chest pain", "shes up again"},
        {"spo2 84", "perdon 94 no 84"},
        {"spo2 84", "sorry i meant 94"},
        {"cannula caught fire", "era el pan tostado"},
        {"cannula caught fire", "era la comida quemada"},
        {"cannula caught fire", "it was burnt toast, sorry"}};
    size_t i;
    for (i = 0; i < sizeof told / sizeof told[0]; i++) {
        begin_anew();
        fixture_text(stage, told[i][0]);
        ck_assert_int_eq(stage->verdict.alert.level, ALERT_EMERGENCY);
        fixture_wait_minutes(stage, 5);
        fixture_text(stage, told[i][1]);
        ck_assert_msg(fixture_answer(stage, "is-over") != NULL, "%s", told[i][1]);
        fixture_alerts(stage, ALERT_OFFICE, "is-over");
    }
}
END_TEST
START_TEST(a_cause_alone_a_value_put_wrong_and_smoke_of_the_unit_clear_nothing)
{
    static const char *const told[][2] = {{"he cant breathe", "era la manguera doblada"},
                                          {"he cant breathe", "it was burnt toast"},
                                          {"spo2 84", "not 94, 84"},
                                          {"spo2 84", "sorry 80 not 84"},
                                          {"he has chest pain", "94 not 84"},
                                          {"cannula caught fire", "it was the battery"},
                                          {"cannula caught fire", "it was dinner burning sorry"},
                                          {"cannula caught fire", "he was smoking, burned dinner"},
                                          {"cannula caught fire", "era la comida quemandose"},
                                          {"he cant breathe", "throwing up again"}};
    size_t i;
    for (i = 0; i < sizeof told / sizeof told[0]; i++) {
        said_after(told[i][0], told[i][1]);
        ck_assert_msg(fixture_answer(stage, "is-over") == NULL, "%s", told[i][1]);
    }
}
END_TEST
/* Each second text reaches who has the alert. */
START_TEST(what_is_no_better_or_not_answered_reaches_the_alert)
{
    static const char *const texts[] = {
        "no better",      "worse thanks", "a bit worse, thank you", "not getting better",
        "still the same", "no change",    "called no answer",       "nobody picks up",
        "sigue igual",    "no mejora",    "peor gracias",           "nadie contesta"};
    static const char *const others[] = {"thanks again", "he is better now",
                                         "send it to the same address"};
    size_t i;
    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        said_after("he has chest pain", texts[i]);
        ck_assert_msg(stage->verdict.alert.level == ALERT_EMERGENCY, "%s", texts[i]);
    }
    for (i = 0; i < sizeof others / sizeof others[0]; i++) {
        said_after("he has chest pain", others[i]);
        ck_assert_msg(stage->verdict.alert.level < ALERT_EMERGENCY, "%s", others[i]);
    }
}
END_TEST
START_TEST(a_value_put_right_to_another_low_one_is_low)
{
    static const char *const texts[] = {"94, no, 84",      "94 no wait 84",  "94 no actually 84",
                                        "94 no really 84", "94 no he is 84", "94 no 84"};
    size_t i;
    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        said_after("spo2 74", texts[i]);
        ck_assert_msg(fixture_answer(stage, "is-over") == NULL, "%s", texts[i]);
        fixture_alerts(stage, ALERT_EMERGENCY, "sign:low-reading");
    }
}
END_TEST
START_TEST(what_is_no_better_is_told_to_staff_as_that)
{
    said_after("he has chest pain", "no change");
    ck_assert_str_eq(stage->verdict.alert.brief, "no better");
    said_after("he has chest pain", "much worse");
    ck_assert_str_eq(stage->verdict.alert.brief, "worse again");
}
END_TEST
/* Each after an emergency that it takes back, or says is over. */
START_TEST(good_news_is_no_new_sign)
{
    static const char *const told[][2] = {
        {"he has chest pain", "hes awake and knows his name"},
        {"he has chest pain", "got him up hes ok"},
        {"he has chest pain", "ya desperto y sabe su nombre"},
        {"he has chest pain", "neighbor is a nurse she says hes ok. bleeding stopped"},
        {"he has chest pain", "im sorry forget it i was kidding"},
        {"he has chest pain", "lol jk"},
        {"he has chest pain", "took her to er"},
        {"he has chest pain", "we brought him to the hospital"},
        {"he has chest pain", "shes up, says she just stood up too fast"},
        {"he has chest pain", "ok it was asleep from how i laid on it. its back"},
        {"i cant breathe", "power back on machine running im ok now"},
        {"he cant breathe", "pink again"},
        {"he cant breathe", "better now was just stairs"},
        {"he cant breathe", "ya le paso"},
        {"i cant breathe", "im better"},
        {"he cant breathe", "fixed! all good"},
        {"he has chest pain", "oops sat on my phone"},
        {"he has chest pain", "the paramedics just left, she is fine"},
        {"he has chest pain", "firemen came and put him back in bed. all fine"},
        {"he has chest pain", "ya se fueron los paramedicos, esta mejor"},
        {"he has chest pain", "vinieron los bomberos y lo levantaron, esta bien"},
        {"i cant breathe", "era que no habia comido, ya estoy bien"},
        {"spo2 71", "it was on wrong finger its 96 now"},
        {"spo2 71", "dedo frio, ya subio a 95"}};
    size_t i;
    for (i = 0; i < sizeof told / sizeof told[0]; i++) {
        said_after(told[i][0], told[i][1]);
        ck_assert_msg(fixture_answer(stage, "is-over") != NULL, "%s", told[i][1]);
        fixture_alerts(stage, ALERT_OFFICE, "is-over");
    }
}
END_TEST
START_TEST(a_danger_or_a_doubt_beside_good_news_wins)
{
    static const char *const told[][2] = {{"he has chest pain", "hes awake but he cant breathe"},
                                          {"he has chest pain", "the paramedics left without him"},
                                          {"he has chest pain", "firemen came but cant get in"},
                                          {"he has chest pain", "picked him up"},
                                          {"he has chest pain", "not fixed"},
                                          {"he has chest pain", "found him not moving"},
                                          {"he has chest pain", "its back"},
                                          {"he has chest pain", "ya le paso otra vez"},
                                          {"he has chest pain", "not kidding"},
                                          {"he has chest pain", "no es broma"},
                                          {"he has chest pain", "taking him to the er"},
                                          {"he has chest pain", "machine is running again"},
                                          {"he has chest pain", "hes ok but cold"},
                                          {"he has chest pain", "he is up a bit"},
                                          {"he has chest pain", "esta bien pero frio"},
                                          {"he has chest pain", "found him"},
                                          {"he has chest pain", "la encontramos"},
                                          {"spo2 71", "its 84 now"},
                                          {"spo2 71", "ya subio a 94"},
                                          {"spo2 71", "finger was cold its 92"},
                                          {"spo2 71", "was wrong finger, says 62 now"},
                                          {"he cant breathe", "its 93 now"},
                                          {"spo2 71", "its 93 now but he cant breathe"}};
    size_t i;
    for (i = 0; i < sizeof told / sizeof told[0]; i++) {
        said_after(told[i][0], told[i][1]);
        ck_assert_msg(fixture_answer(stage, "is-over") == NULL, "%s", told[i][1]);
        ck_assert_msg(strstr(fixture_replies(stage), "911") != NULL, "%s: %s", told[i][1],
                      fixture_replies(stage));
    }
}
END_TEST
/* Whether 911 was called is asked once; what finds no answer is asked it each time. */
START_TEST(after_an_all_clear_a_question_in_doubt_is_answered_and_asked_at_most_once)
{
    static const char unsure[] = "i want a refund of the deposit";
    int i;
    said_after("he cant breathe", "ambulance is here");
    fixture_text(stage, "thanks phew");
    ck_assert(stage->verdict.reply_count == 0);
    said_after("he cant breathe", "false alarm");
    for (i = 0; i < 2; i++) {
        fixture_wait_minutes(stage, 5);
        fixture_text(stage, unsure);
        ck_assert_msg((strstr(fixture_replies(stage), "Called 911?") != NULL) == (i == 0), "%s",
                      fixture_replies(stage));
        ck_assert_ptr_nonnull(fixture_answer(stage, "billing"));
        fixture_wait_minutes(stage, 5);
    }
    fixture_text(stage, "please come");
    fixture_says(stage, "Called 911?");
    fixture_text(stage, "please come");
    fixture_says(stage, "Called 911?");
}
END_TEST
START_TEST(a_false_alarm_of_a_thing_clears_nobody)
{
    said_after("he has chest pain", "false alarm from the unit hes limp");
    ck_assert_ptr_null(fixture_answer(stage, "is-over"));
    said_after("he has chest pain", "false alarm, no need to call");
    ck_assert_ptr_nonnull(fixture_answer(stage, "is-over"));
}
END_TEST
START_TEST(help_that_does_not_come_calls_a_person_again)
{
    static const char *const texts[] = {"no llegan", "siguen sin llegar", "ya llame y no llegan",
                                        "the ambulance is still not here", "nobody came"};
    size_t i;
    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        said_after("he has chest pain", texts[i]);
        fixture_alerts(stage, ALERT_EMERGENCY, "help:late");
        fixture_says(stage, "911");
    }
    fixture_text(stage, "no llega el paquete");
    ck_assert_str_ne(stage->verdict.alert.reason, "help:late");
}
END_TEST
START_TEST(who_has_called_is_not_asked_whether_they_have)
{
    static const char *const texts[] = {"llame", "ya llame", "si, llamamos", "called"};
    size_t i;
    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        said_after("he has chest pain", texts[i]);
        fixture_says_not(stage, "If not, call");
        fixture_says_not(stage, "Si no, llame");
        ck_assert_int_eq(stage->verdict.alert.level, ALERT_OFFICE);
    }
}
END_TEST
/* After an emergency that was told to be over, and after a symptom that was answered with "Worse?
 * Call 911". */
START_TEST(worse_again_is_an_emergency_anew)
{
    static const char *const texts[] = {"worse again",
                                        "worse",
                                        "much worse",
                                        "he is worse",
                                        "when he lies down it is worse again",
                                        "worse again with the machine on",
                                        "his oxygen is getting worse",
                                        "peor",
                                        "otra vez peor",
                                        "cuando camina se siente peor",
                                        "si esta peor"};
    size_t i;
    for (i = 0; i < 2 * (sizeof texts / sizeof texts[0]); i++) {
        begin_anew();
        fixture_text(stage, i % 2 == 0 ? "he has chest pain" : "i feel dizzy");
        fixture_wait_minutes(stage, 5);
        if (i % 2 == 0) {
            fixture_text(stage, "false alarm");
            fixture_wait_minutes(stage, 5);
        }
        fixture_text(stage, texts[i / 2]);
        ck_assert_msg(stage->verdict.alert.level == ALERT_EMERGENCY, "%s", texts[i / 2]);
        fixture_says(stage, "911");
    }
}
END_TEST
START_TEST(worse_with_nothing_told_before_calls_somebody)
{
    static const char *const texts[] = {"worse",           "worse again", "mi papa ya quedo",
                                        "it is worse",     "peor",        "me siento peor",
                                        "i am worse again"};
    size_t i;
    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        begin_anew();
        fixture_text(stage, texts[i]);
        ck_assert_msg(stage->verdict.alert.level == ALERT_URGENT, "%s", texts[i]);
        fixture_says(stage, "911");
    }
    fixture_text(stage, "is the battery worse in the cold");
    ck_assert_ptr_null(fixture_answer(stage, "unwell"));
}
END_TEST
START_TEST(what_is_not_worse_or_only_may_become_so_is_no_relapse)
{
    static const char *const texts[] = {"not worse",
                                        "the noise got worse",
                                        "the weather is worse",
                                        "what do i do if he gets worse",
                                        "esta peor la nieve",
                                        "que hago si se siente peor",
                                        "no esta peor",
                                        "could be worse"};
    size_t i;
    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        said_after("i feel dizzy", texts[i]);
        ck_assert_msg(fixture_answer(stage, "worse-again") == NULL, "%s", texts[i]);
    }
}
END_TEST
START_TEST(two_hours_after_an_emergency_questions_are_answered_though_nobody_has_closed_it)
{
    begin_anew();
    fixture_text(stage, "he has chest pain");
    fixture_wait_minutes(stage, 119);
    fixture_text(stage, "when is it due");
    fixture_says(stage, "Called 911?");
    fixture_wait_minutes(stage, 2);
    fixture_text(stage, "when is it due");
    fixture_says(stage, "Feb 14");
    fixture_alerts(stage, ALERT_OFFICE, "wrote-again");
    fixture_text(stage, "nobody came");
    fixture_says(stage, "Called 911?");
}
END_TEST
int
main(void)
{
    TCase *tests = tcase_create("is_over");
    tcase_add_checked_fixture(tests, stage_set_up, stage_tear_down);
    tcase_add_test(tests, what_is_over_is_thanked_for_and_staff_hear_of_it);
    tcase_add_test(tests, what_is_not_or_only_may_be_over_is_not);
    tcase_add_test(tests, trouble_in_the_same_breath_calls_somebody);
    tcase_add_test(tests, a_unit_that_went_dead_is_heard_behind_one_that_beeps);
    tcase_add_test(tests, until_oxygen_is_told_to_flow_that_is_asked_again);
    tcase_add_test(tests, an_open_alert_hears_of_it);
    tcase_add_test(tests, never_mind_is_one_only_while_an_alert_is_open);
    tcase_add_test(tests, after_an_all_clear_questions_are_answered_and_the_alert_stays);
    tcase_add_test(tests, where_help_is_there_nothing_more_is_said);
    tcase_add_test(tests, a_doubtful_all_clear_still_asks_whether_911_was_called);
    tcase_add_test(tests, after_an_all_clear_a_relapse_in_any_words_asks_for_911_again);
    tcase_add_test(tests, yes_to_when_to_call_911_calls_somebody);
    tcase_add_test(tests, an_all_clear_may_name_what_it_came_from);
    tcase_add_test(tests, a_cause_alone_a_value_put_wrong_and_smoke_of_the_unit_clear_nothing);
    tcase_add_test(tests, what_is_no_better_or_not_answered_reaches_the_alert);
    tcase_add_test(tests, a_value_put_right_to_another_low_one_is_low);
    tcase_add_test(tests, what_is_no_better_is_told_to_staff_as_that);
    tcase_add_test(tests, good_news_is_no_new_sign);
    tcase_add_test(tests, a_danger_or_a_doubt_beside_good_news_wins);
    tcase_add_test(tests,
                   after_an_all_clear_a_question_in_doubt_is_answered_and_asked_at_most_once);
    tcase_add_test(tests, a_false_alarm_of_a_thing_clears_nobody);
    tcase_add_test(tests, help_that_does_not_come_calls_a_person_again);
    tcase_add_test(tests, who_has_called_is_not_asked_whether_they_have);
    tcase_add_test(tests, worse_again_is_an_emergency_anew);
    tcase_add_test(tests, worse_with_nothing_told_before_calls_somebody);
    tcase_add_test(tests, what_is_not_worse_or_only_may_become_so_is_no_relapse);
    tcase_add_test(tests,
                   two_hours_after_an_emergency_questions_are_answered_though_nobody_has_closed_it);
    return fixture_run(tests);
}
