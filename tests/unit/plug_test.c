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

/* One battery at 50 %: at least 27 minutes, of which 15 are kept for reaching a plug. */
static void
have_under_an_hour(void)
{
    fixture_free(stage);
    stage = fixture_new();
    fixture_text(stage, "how long have i got left with one at 50%");
    ck_assert_int_eq(fixture_answer(stage, "hours-left")->estimate->minutes.low, 27);
}

START_TEST(under_an_hour_asks_whether_a_plug_is_near_and_ends_with_911)
{
    const char *text;

    have_under_an_hour();
    text = stage->verdict.replies[0].text;
    fixture_says(stage, "Is there a plug where you are? Text YES or NO.");
    ck_assert_ptr_nonnull(strstr(strstr(text, "Is there a plug"), "Trouble breathing? Call 911."));
    ck_assert_int_eq(stage->context.conversation.question, QUESTION_PLUG);
    ck_assert_int_eq(stage->verdict.alert.level, ALERT_NONE);
    ck_assert_int_eq(handlers_unanswered(&(struct conversation){.question = QUESTION_PLUG}).level,
                     ALERT_URGENT);
    ck_assert_int_eq(
        handlers_unanswered(&(struct conversation){.question = QUESTION_FLOWING}).level,
        ALERT_EMERGENCY);
    ck_assert_int_eq(
        handlers_unanswered(&(struct conversation){.question = QUESTION_WHICH_CHARGE}).level,
        ALERT_NONE);
}
END_TEST

START_TEST(who_counts_hours_with_a_broken_plug_is_sent_to_none_and_called)
{
    static const char *const texts[] = {
        "plug broke, how long have i got left with 2 full batteries",
        "how long have i got left with 2 full, the cord is dead",
        "the dog chewed up my charger cord. 2 full, how long have i got left",
        "wall outlet quit working, how long have i got left with 2 full",
        "se rompio el enchufe, tengo dos llenas, cuanto me queda",
        "el cargador no sirve, cuanto me queda con dos llenas",
    };
    static const char *const plugs_that_are_there[] = {
        "the plug is behind the bed, how long have i got left with 2 full",
        "the cord is not broken, how long have i got left with 2 full",
        "one outlet is dead but the other outlet works, how long have i got left with 2 full",
    };
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        fixture_free(stage);
        stage = fixture_new();
        fixture_text(stage, texts[i]);
        ck_assert_msg(fixture_answer(stage, "hours-left") != NULL, "%s", texts[i]);
        ck_assert_msg(stage->verdict.alert.level == ALERT_URGENT, "%s", texts[i]);
        fixture_says_not(stage, "Be at a plug");
        fixture_says_not(stage, "junto a un enchufe");
    }
    for (i = 0; i < sizeof plugs_that_are_there / sizeof plugs_that_are_there[0]; i++) {
        fixture_free(stage);
        stage = fixture_new();
        fixture_text(stage, plugs_that_are_there[i]);
        ck_assert_msg(stage->verdict.alert.level < ALERT_URGENT, "%s", plugs_that_are_there[i]);
        fixture_says(stage, "Be at a plug");
    }
}
END_TEST

START_TEST(a_plug_that_broke_right_before_or_after_the_hours_calls_someone_too)
{
    fixture_text(stage, "my cord is dead");
    fixture_text(stage, "how long have i got left with 2 full");
    fixture_alerts(stage, ALERT_URGENT, "power:no-plug");
    fixture_says_not(stage, "Be at a plug");
    fixture_free(stage);
    stage = fixture_new();
    fixture_text(stage, "how long have i got left with 2 full");
    fixture_text(stage, "my charger just broke");
    fixture_alerts(stage, ALERT_URGENT, "power:no-plug");
}
END_TEST

START_TEST(no_plug_near_calls_someone_and_names_the_backup)
{
    static const char *const texts[] = {
        "NO", "nope", "no there isnt one", "no, none here", "Not here", "nowhere near"};
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        have_under_an_hour();
        fixture_text(stage, texts[i]);
        ck_assert_msg(stage->verdict.alert.level == ALERT_URGENT, "%s", texts[i]);
        fixture_alerts(stage, ALERT_URGENT, "power:no-plug");
        fixture_says(stage, "your E cylinder");
        fixture_says(stage, "911");
        ck_assert_int_eq(stage->context.conversation.question, QUESTION_NONE);
    }
}
END_TEST

START_TEST(who_does_not_know_or_takes_something_back_has_not_said_no)
{
    static const char *const texts[] = {"no idea, the lamp works",
                                        "no idea if there is one",
                                        "not sure",
                                        "dont know, its dark",
                                        "no, I mean the other battery",
                                        "no se",
                                        "no se si hay",
                                        "no tengo idea",
                                        "no, digo la de mi mama",
                                        "no quise decir eso"};
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        have_under_an_hour();
        fixture_text(stage, texts[i]);
        ck_assert_msg(stage->verdict.alert.level < ALERT_URGENT, "%s", texts[i]);
        ck_assert_msg(stage->context.conversation.question == QUESTION_PLUG, "%s", texts[i]);
    }
}
END_TEST

START_TEST(no_is_no_with_a_doubt_or_a_sorry_beside_it)
{
    static const char *const texts[] = {"no, sorry",
                                        "no idea why but there is no plug here",
                                        "no I mean there is no outlet",
                                        "no se puede enchufar aqui",
                                        "no se, aqui no hay enchufe",
                                        "not sure what you mean, no plug"};
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        have_under_an_hour();
        fixture_text(stage, texts[i]);
        ck_assert_msg(stage->verdict.alert.level == ALERT_URGENT, "%s", texts[i]);
        fixture_alerts(stage, ALERT_URGENT, "power:no-plug");
    }
}
END_TEST

START_TEST(a_plug_near_is_to_be_used)
{
    static const char *const texts[] = {"YES", "yes there is", "si", "yep its plugged in now"};
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        have_under_an_hour();
        fixture_text(stage, texts[i]);
        ck_assert_msg(stage->verdict.alert.level == ALERT_NONE, "%s", texts[i]);
        ck_assert_msg(stage->context.conversation.question == QUESTION_NONE, "%s", texts[i]);
    }
    have_under_an_hour();
    fixture_text(stage, "YES");
    fixture_says(stage, "Plug the unit into the wall.");
}
END_TEST

START_TEST(yes_with_a_question_answers_that_too)
{
    have_under_an_hour();
    fixture_text(stage, "yes. when is it due?");
    ck_assert_int_eq(stage->context.conversation.question, QUESTION_NONE);
    fixture_says(stage, "Feb 14");
    have_under_an_hour();
    fixture_text(stage, "no and when is it due");
    fixture_alerts(stage, ALERT_URGENT, "power:no-plug");
    fixture_says(stage, "Feb 14");
}
END_TEST

START_TEST(another_question_leaves_it_open)
{
    have_under_an_hour();
    fixture_text(stage, "when is it due?");
    ck_assert_int_eq(stage->context.conversation.question, QUESTION_PLUG);
    fixture_text(stage, "how do i reach the office");
    ck_assert_int_eq(stage->context.conversation.question, QUESTION_PLUG);
}
END_TEST

START_TEST(a_better_telling_of_the_charge_settles_it)
{
    have_under_an_hour();
    fixture_text(stage, "sorry, 2 full batteries how long do i have left");
    fixture_says(stage, "Plan on 1 h 54 min");
    ck_assert_int_eq(stage->context.conversation.question, QUESTION_NONE);
}
END_TEST

START_TEST(where_it_cannot_be_asked_or_waited_for_staff_are_called_at_once)
{
    stage->context.conversation.opted_out = true;
    fixture_text(stage, "how long have i got left with one at 50%");
    fixture_alerts(stage, ALERT_URGENT, "power:short");
    fixture_free(stage);
    stage = fixture_new();
    fixture_text(stage, "how long have i got left with one at 25%"); /* 13 min */
    fixture_alerts(stage, ALERT_URGENT, "power:short");
    fixture_says(stage, "Staff were alerted.");
    fixture_says(stage, "Be at a plug now");
    fixture_free(stage);
    stage = fixture_new();
    fixture_text(stage, "machine stopped");
    fixture_wait_minutes(stage, 1);
    fixture_text(stage, "how long have i got left with one at 50%");
    fixture_alerts(stage, ALERT_URGENT, "power:short");
    ck_assert_int_eq(stage->context.conversation.question, QUESTION_FLOWING);
}
END_TEST

START_TEST(no_plug_told_unasked_calls_someone)
{
    static const char *const texts[] = {
        "last battery, no plug",
        "no plug here",
        "on my last battery and theres no outlet in this hut",
        "no hay enchufe aqui",
        "we are at the trailhead, nowhere to plug in",
        "last battery and no plug here, what now?",
    };
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        fixture_free(stage);
        stage = fixture_new();
        fixture_text(stage, texts[i]);
        ck_assert_msg(stage->verdict.alert.level == ALERT_URGENT, "%s", texts[i]);
        fixture_alerts(stage, ALERT_URGENT, "power:no-plug");
    }
}
END_TEST

START_TEST(no_plug_and_a_charge_get_the_time_and_no_question)
{
    fixture_text(stage, "one battery at 50% and no plug here, how long have i got left");
    fixture_alerts(stage, ALERT_URGENT, "power:no-plug");
    fixture_says(stage, "Plan on 27 min");
    fixture_says_not(stage, "Is there a plug");
}
END_TEST

START_TEST(a_plug_that_a_part_or_another_day_lacks_calls_nobody_at_once)
{
    static const char *const texts[] = {
        "is there no plug on the bus?", "tomorrow we hike where there is no plug",
        "2 full on a train with no outlets. enough?", "the charger has no plug for our wall"};
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        fixture_text(stage, texts[i]);
        ck_assert_msg(stage->verdict.alert.level < ALERT_URGENT, "%s", texts[i]);
    }
}
END_TEST

START_TEST(no_together_with_a_sign_is_heard_too)
{
    have_under_an_hour();
    fixture_text(stage, "no and i feel dizzy");
    ck_assert_int_eq(stage->verdict.route, ROUTE_CLINICAL);
    fixture_says(stage, "Be at a plug");
    ck_assert_int_eq(stage->context.conversation.question, QUESTION_NONE);
}
END_TEST

START_TEST(in_a_car_whose_outlet_runs_the_unit_that_is_said_with_the_caution_of_exhaust)
{
    stage->rentals[0].car_charger = true;
    fixture_text(stage, "stuck in the car, one battery with 1 light, how long have i got left");
    fixture_says(stage, "In the car: use its outlet and our cord, engine on, outdoors only. Keep "
                        "snow off the tailpipe and a window open a bit: exhaust kills.");
    stage->rentals[0].car_charger = false;
    fixture_text(stage, "stuck in the car, one battery with 1 light, how long have i got left");
    fixture_says_not(stage, "In the car");
}
END_TEST

START_TEST(nobody_is_told_to_run_an_engine_indoors_or_where_only_a_thing_is_in_the_car)
{
    static const char *const texts[] = {
        "im in my car in the garage, one battery at 20%, how long have i got left",
        "estoy en el carro en el garaje, una bateria al 20%, cuanto me queda",
        "one battery at 20%, how long have i got left, forgot the charger in the car"};
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        stage->rentals[0].car_charger = true;
        fixture_text(stage, texts[i]);
        ck_assert_ptr_nonnull(fixture_answer(stage, "hours-left"));
        fixture_says_not(stage, "engine on");
        fixture_says_not(stage, "motor prendido");
    }
}
END_TEST

int
main(void)
{
    TCase *tests = tcase_create("plug");

    tcase_add_checked_fixture(tests, set_up, tear_down);
    tcase_add_test(tests, under_an_hour_asks_whether_a_plug_is_near_and_ends_with_911);
    tcase_add_test(tests, who_counts_hours_with_a_broken_plug_is_sent_to_none_and_called);
    tcase_add_test(tests, a_plug_that_broke_right_before_or_after_the_hours_calls_someone_too);
    tcase_add_test(tests, no_plug_near_calls_someone_and_names_the_backup);
    tcase_add_test(tests, who_does_not_know_or_takes_something_back_has_not_said_no);
    tcase_add_test(tests, no_is_no_with_a_doubt_or_a_sorry_beside_it);
    tcase_add_test(tests, a_plug_near_is_to_be_used);
    tcase_add_test(tests, yes_with_a_question_answers_that_too);
    tcase_add_test(tests, another_question_leaves_it_open);
    tcase_add_test(tests, a_better_telling_of_the_charge_settles_it);
    tcase_add_test(tests, where_it_cannot_be_asked_or_waited_for_staff_are_called_at_once);
    tcase_add_test(tests, no_plug_told_unasked_calls_someone);
    tcase_add_test(tests, no_plug_and_a_charge_get_the_time_and_no_question);
    tcase_add_test(tests, a_plug_that_a_part_or_another_day_lacks_calls_nobody_at_once);
    tcase_add_test(tests, no_together_with_a_sign_is_heard_too);
    tcase_add_test(tests,
                   in_a_car_whose_outlet_runs_the_unit_that_is_said_with_the_caution_of_exhaust);
    tcase_add_test(tests,
                   nobody_is_told_to_run_an_engine_indoors_or_where_only_a_thing_is_in_the_car);
    return fixture_run(tests);
}
