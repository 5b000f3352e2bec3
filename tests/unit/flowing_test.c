#include "flowing_stage.h"

#include <string.h>

START_TEST(oxygen_that_still_does_not_flow_is_an_emergency)
{
    fixture_text(stage, "machine stopped");
    fixture_wait_minutes(stage, 4);
    fixture_text(stage, "No");
    ck_assert_int_eq(stage->verdict.route, ROUTE_EMERGENCY);
    fixture_alerts(stage, ALERT_EMERGENCY, "flowing:no");
    fixture_says(stage, "Call 911 now");
}
END_TEST

START_TEST(ok_closes_nothing)
{
    fixture_text(stage, "machine stopped");
    fixture_wait_minutes(stage, 4);
    fixture_text(stage, "ok thanks");
    ck_assert_int_eq(stage->context.conversation.question, QUESTION_FLOWING);
    fixture_says(stage, "Is oxygen flowing again?");
}
END_TEST

START_TEST(no_may_be_said_in_many_ways)
{
    static const char *const ways[] = {"it is still not working",
                                       "it isnt",
                                       "Nooo",
                                       "Sorry, no",
                                       "I said no",
                                       "hi no its not",
                                       "nothing",
                                       "No, the power is still out",
                                       "still no oxygen coming"};
    size_t i;

    for (i = 0; i < sizeof ways / sizeof ways[0]; i++) {
        fixture_free(stage);
        stage = fixture_new();
        fixture_text(stage, "machine stopped");
        fixture_wait_minutes(stage, 4);
        fixture_text(stage, ways[i]);
        ck_assert_msg(stage->verdict.route == ROUTE_EMERGENCY, "%s", ways[i]);
        fixture_alerts(stage, ALERT_EMERGENCY, "flowing:no");
    }
}
END_TEST

START_TEST(another_question_of_ours_does_not_take_the_place_of_whether_oxygen_flows)
{
    fixture_text(stage, "machine stopped");
    fixture_wait_minutes(stage, 4);
    fixture_text(stage, "how many hours do I have left");
    ck_assert_int_eq(stage->context.conversation.question, QUESTION_FLOWING);
    fixture_says(stage, "Is oxygen flowing again?");
    fixture_text(stage, "NO");
    fixture_alerts(stage, ALERT_EMERGENCY, "flowing:no");
}
END_TEST

START_TEST(yes_it_flows_is_no_emergency)
{
    fixture_text(stage, "machine stopped");
    fixture_wait_minutes(stage, 4);
    fixture_text(stage, "yes still flowing");
    ck_assert_int_eq(stage->verdict.route, ROUTE_EQUIPMENT);
    ck_assert_int_eq(stage->context.conversation.question, QUESTION_NONE);
}
END_TEST

START_TEST(a_question_of_ours_does_not_outlive_the_conversation)
{
    fixture_text(stage, "machine stopped");
    fixture_wait_minutes(stage, 7 * 60);
    fixture_text(stage, "no");
    ck_assert_int_eq(stage->verdict.alert.level, ALERT_NONE);
}
END_TEST

START_TEST(no_in_any_words_of_either_language_is_an_emergency)
{
    static const char *const texts[] = {
        "NO",
        "nope",
        "not yet",
        "nothing",
        "its still off",
        "same thing",
        "stopped again",
        "I dont think so",
        "dont know",
        "todavía no",
        "nada",
        "sigue igual",
        "no sale nada",
        "aun no hay luz",
        "no, and when is it due?",
        "no, should i turn it up",
        "ok no",
        "no but I moved it to another plug",
        "I tried all that you said with the tube and the plug and there is still no air",
    };

    EACH_IS(texts, ALERT_EMERGENCY, QUESTION_NONE);
}
END_TEST

START_TEST(a_symptom_before_it_is_known_to_flow_is_an_emergency)
{
    ask_whether_it_flows();
    fixture_text(stage, "i feel dizzy");
    fixture_alerts(stage, ALERT_EMERGENCY, "sign:unit-and-symptom");
    fixture_says(stage, "your E cylinder");
}
END_TEST

START_TEST(unit_trouble_without_a_sign_and_a_symptom_is_an_emergency_too)
{
    fixture_text(stage, "it wont turn on and i feel dizzy");
    fixture_alerts(stage, ALERT_EMERGENCY, "sign:unit-and-symptom");
}
END_TEST

START_TEST(trouble_told_before_and_a_symptom_now_are_an_emergency_but_nothing_new_is_not)
{
    stage->keeps_alerts = true;
    fixture_text(stage, "there is a burning smell");
    fixture_wait_minutes(stage, 1);
    fixture_text(stage, "i feel dizzy");
    ck_assert_int_eq(stage->verdict.route, ROUTE_CLINICAL); /* dangerous words are no sign */
    fixture_wait_minutes(stage, 10);
    fixture_text(stage, "and now it wont turn on");
    fixture_alerts(stage, ALERT_EMERGENCY, "sign:unit-and-symptom");
    fixture_wait_minutes(stage, 10);
    fixture_text(stage, "should i turn it up");
    ck_assert_int_eq(stage->verdict.route, ROUTE_CLINICAL);
}
END_TEST

START_TEST(a_stopped_unit_with_every_battery_empty_is_no_source_left)
{
    fixture_text(stage, "machine stopped, both batteries are at 0%");
    fixture_alerts(stage, ALERT_EMERGENCY, "sign:no-oxygen-source");
    fixture_says(stage, "your E cylinder");
    fixture_free(stage);
    stage = fixture_new();
    fixture_text(stage, "machine stopped, one battery at 0% and one at 40%");
    ck_assert_int_eq(stage->verdict.route, ROUTE_EQUIPMENT);
    fixture_free(stage);
    stage = fixture_new();
    fixture_text(stage, "machine stopped, both batteries are at 0%, he is on the tank now");
    ck_assert_int_eq(stage->verdict.route, ROUTE_EQUIPMENT);
    fixture_free(stage);
    stage = fixture_new();
    fixture_text(stage, "machine stopped, both batteries are at 0%, no tank");
    fixture_alerts(stage, ALERT_EMERGENCY, "sign:no-oxygen-source");
}
END_TEST

START_TEST(empty_batteries_told_while_it_does_not_flow_are_no_source_left)
{
    ask_whether_it_flows();
    fixture_text(stage, "both batteries are at 0%");
    fixture_alerts(stage, ALERT_EMERGENCY, "sign:no-oxygen-source");
}
END_TEST

START_TEST(a_stopped_unit_is_answered_with_the_backup_of_the_record)
{
    fixture_text(stage, "machine stopped");
    fixture_says(stage, "If it stopped, use your E cylinder at the flow on its tag.");
    fixture_free(stage);
    stage = fixture_new();
    stage->rentals[0].backup.known = false;
    fixture_text(stage, "machine stopped");
    fixture_says_not(stage, "cylinder");
}
END_TEST

START_TEST(who_opted_out_is_not_left_with_a_question_that_nobody_sent)
{
    stage->context.conversation.opted_out = true;
    fixture_text(stage, "machine stopped");
    ck_assert_int_eq(stage->context.conversation.question, QUESTION_NONE);
    fixture_alerts(stage, ALERT_URGENT, "sign:unit-stopped");
}
END_TEST

START_TEST(past_a_broken_store_nothing_is_asked)
{
    fixture_stranger(stage);
    stage->message = (struct message){
        .text = "machine stopped", .sender = "+12085550101", .sent_utc_s = fixture_start_utc_s};
    ck_assert(handlers_decide_unrecorded(stage->arena, &stage->message, &stage->context,
                                         &stage->verdict));
    fixture_says(stage, "backup oxygen");
    fixture_says_not(stage, "flowing again");
}
END_TEST

/* A mains failure alone is asked about too, and there nobody said that no oxygen comes. */
START_TEST(what_staff_hear_of_no_answer_claims_nothing_that_nobody_said)
{
    const struct alert_call called =
        handlers_unanswered(&(struct conversation){.question = QUESTION_FLOWING});

    fixture_text(stage, "the power is out");
    fixture_says(stage, "flowing again");
    ck_assert_int_eq(called.level, ALERT_EMERGENCY);
    ck_assert_str_eq(called.brief, "asked if oxygen flows, no answer");
}
END_TEST

/* ---- A unit that runs on its battery --------------------------------------------------------- */

static enum alert_level
level_of_silence(void)
{
    return handlers_unanswered(&stage->context.conversation).level;
}

START_TEST(of_a_unit_that_runs_on_its_battery_silence_is_urgent)
{
    static const char *const texts[] = {"the power is out, unit is running on battery",
                                        "power is out here but the unit still runs",
                                        "the power is out, im on battery power now"};
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        fixture_free(stage);
        stage = fixture_new();
        stage->keeps_alerts = true;
        fixture_text(stage, texts[i]);
        fixture_says(stage, "Is oxygen still flowing?");
        ck_assert_msg(level_of_silence() == ALERT_URGENT, "%s", texts[i]);
        fixture_wait_minutes(stage, 1);
        fixture_text(stage, "ok");
        fixture_says(stage, "Is oxygen still flowing?");
        ck_assert_msg(level_of_silence() == ALERT_URGENT, "%s", texts[i]);
        fixture_wait_minutes(stage, 4);
        fixture_text(stage, "the power is still out"); /* nobody said that it stopped */
        ck_assert_int_lt(stage->verdict.alert.level, ALERT_EMERGENCY);
        fixture_text(stage, "now the machine stopped");
        fixture_alerts(stage, ALERT_EMERGENCY, "flowing:no");
    }
}
END_TEST

START_TEST(a_unit_that_may_not_run_leaves_silence_an_emergency)
{
    static const char *const texts[] = {
        "the power is out",
        "the power is out, i put in the battery and it wont start",
        "the power is out, will it run on battery?",
        "the power is out and the unit is not running on battery",
        "the power is out, it is on battery but the battery is almost empty",
        "the power is out, it ran on battery but stopped",
        "machine stopped, it was on battery",
    };
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        fixture_free(stage);
        stage = fixture_new();
        fixture_text(stage, texts[i]);
        ck_assert_msg(stage->context.conversation.question == QUESTION_FLOWING, "%s", texts[i]);
        ck_assert_msg(level_of_silence() == ALERT_EMERGENCY, "%s", texts[i]);
    }
}
END_TEST

START_TEST(whether_it_still_flows_is_answered_like_whether_it_flows_again)
{
    static const char *const none[] = {"NO",
                                       "nope",
                                       "it stopped",
                                       "no oxygen",
                                       "No, the power is out",
                                       "still no power and it quit"};
    static const char *const flows[] = {"YES", "still flowing", "yes still running"};
    size_t i;

    for (i = 0; i < sizeof none / sizeof none[0]; i++) {
        fixture_free(stage);
        stage = fixture_new();
        fixture_text(stage, "the power is out, unit is running on battery");
        fixture_wait_minutes(stage, 4);
        fixture_text(stage, none[i]);
        ck_assert_msg(stage->verdict.alert.level == ALERT_EMERGENCY, "%s", none[i]);
    }
    for (i = 0; i < sizeof flows / sizeof flows[0]; i++) {
        fixture_free(stage);
        stage = fixture_new();
        fixture_text(stage, "the power is out, unit is running on battery");
        fixture_wait_minutes(stage, 4);
        fixture_text(stage, flows[i]);
        ck_assert_msg(stage->context.conversation.question == QUESTION_NONE, "%s", flows[i]);
    }
}
END_TEST

/* ---- A person leads the conversation -------------------------------------------------------- */

static void
person_leads(void)
{
    ask_whether_it_flows();
    stage->context.conversation.in_charge = "+12085550190";
}

START_TEST(what_answers_a_person_does_not_answer_whether_it_flows)
{
    static const char *const texts[] = {
        "no plug. the inn has a generator i think",
        "no",
        "nope not that one",
        "yes",
        "no. we are in the lobby",
        "I dont think so",
        "nothing",
        "todavia no",
        "same cabin",
        "all set",
    };
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        person_leads();
        fixture_text(stage, texts[i]);
        ck_assert_msg(stage->verdict.alert.level < ALERT_EMERGENCY, "%s", texts[i]);
        ck_assert_msg(stage->context.conversation.question == QUESTION_FLOWING, "%s", texts[i]);
        ck_assert_str_eq(fixture_replies(stage), "");
        ck_assert_str_eq(stage->verdict.relay.to, "+12085550190");
    }
}
END_TEST

START_TEST(beside_a_person_plain_words_of_no_oxygen_and_signs_still_count)
{
    static const char *const none[] = {
        "no oxygen",        "there is still no air coming out",
        "it isnt flowing",  "nothing is coming out",
        "no sale oxigeno",  "the machine stopped again",
        "now i feel dizzy", "no plug and no oxygen",
    };
    size_t i;

    for (i = 0; i < sizeof none / sizeof none[0]; i++) {
        person_leads();
        fixture_text(stage, none[i]);
        ck_assert_msg(stage->verdict.alert.level == ALERT_EMERGENCY, "%s", none[i]);
    }
    person_leads();
    fixture_text(stage, "yes it is flowing again");
    ck_assert_int_eq(stage->verdict.alert.level, ALERT_NONE);
    ck_assert_int_eq(stage->context.conversation.question, QUESTION_NONE);
}
END_TEST

int
main(void)
{
    TCase *tests = tcase_create("flowing");

    tcase_add_checked_fixture(tests, stage_set_up, stage_tear_down);
    tcase_add_test(tests, oxygen_that_still_does_not_flow_is_an_emergency);
    tcase_add_test(tests, ok_closes_nothing);
    tcase_add_test(tests, no_may_be_said_in_many_ways);
    tcase_add_test(tests, another_question_of_ours_does_not_take_the_place_of_whether_oxygen_flows);
    tcase_add_test(tests, yes_it_flows_is_no_emergency);
    tcase_add_test(tests, a_question_of_ours_does_not_outlive_the_conversation);
    tcase_add_test(tests, no_in_any_words_of_either_language_is_an_emergency);
    tcase_add_test(tests, a_symptom_before_it_is_known_to_flow_is_an_emergency);
    tcase_add_test(tests, unit_trouble_without_a_sign_and_a_symptom_is_an_emergency_too);
    tcase_add_test(tests,
                   trouble_told_before_and_a_symptom_now_are_an_emergency_but_nothing_new_is_not);
    tcase_add_test(tests, a_stopped_unit_with_every_battery_empty_is_no_source_left);
    tcase_add_test(tests, empty_batteries_told_while_it_does_not_flow_are_no_source_left);
    tcase_add_test(tests, a_stopped_unit_is_answered_with_the_backup_of_the_record);
    tcase_add_test(tests, who_opted_out_is_not_left_with_a_question_that_nobody_sent);
    tcase_add_test(tests, past_a_broken_store_nothing_is_asked);
    tcase_add_test(tests, what_staff_hear_of_no_answer_claims_nothing_that_nobody_said);
    tcase_add_test(tests, of_a_unit_that_runs_on_its_battery_silence_is_urgent);
    tcase_add_test(tests, a_unit_that_may_not_run_leaves_silence_an_emergency);
    tcase_add_test(tests, whether_it_still_flows_is_answered_like_whether_it_flows_again);
    tcase_add_test(tests, what_answers_a_person_does_not_answer_whether_it_flows);
    tcase_add_test(tests, beside_a_person_plain_words_of_no_oxygen_and_signs_still_count);
    return fixture_run(tests);
}
