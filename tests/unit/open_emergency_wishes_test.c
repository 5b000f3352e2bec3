/* What is wished for while an emergency is open, or asked once it is over: a life that is not to be
 * held up, an ambulance that is not to come, another day; with the content as it ships. */
#include "shipped_stage.h"

#include <string.h>

static void
said_after(const char *first, const char *text)
{
    shipped_talk_anew();
    fixture_text(stage, first);
    fixture_wait_minutes(stage, 5);
    fixture_text(stage, text);
}

static void
is_of_hospice(const char *text)
{
    ck_assert_msg(stage->verdict.alert.level == ALERT_EMERGENCY, "\"%s\"", text);
    ck_assert_msg(strcmp(stage->verdict.alert.reason, "help:hospice") == 0, "\"%s\": %s", text,
                  stage->verdict.alert.reason);
    ck_assert_msg(strstr(fixture_replies(stage), "Ask 911") == NULL &&
                      strstr(fixture_replies(stage), "Pregunte al 911") == NULL,
                  "\"%s\": %s", text, fixture_replies(stage));
}

START_TEST(who_tells_of_hospice_or_a_dnr_is_sent_to_the_nurse_and_staff_hear_it)
{
    static const char *const english[] = {"she is on hospice",
                                          "he has a DNR",
                                          "do not resuscitate, its on the fridge",
                                          "he has a polst form, no cpr",
                                          "mom is comfort care only",
                                          "the hospice nurse comes at 3. do NOT send one"};
    static const char *const spanish[] = {"esta en cuidados paliativos",
                                          "tiene orden de no resucitar",
                                          "esta en hospicio, no manden ambulancia"};
    size_t i;

    for (i = 0; i < sizeof english / sizeof english[0]; i++) {
        said_after("mum cant breathe", english[i]);
        is_of_hospice(english[i]);
    }
    for (i = 0; i < sizeof spanish / sizeof spanish[0]; i++) {
        said_after("a mi mama le falta el aire", spanish[i]);
        is_of_hospice(spanish[i]);
    }
}
END_TEST

START_TEST(once_it_was_told_a_refusal_or_a_question_is_of_it)
{
    static const char *const texts[] = {"please dont send an ambulance", "she doesnt want 911",
                                        "what do i do", "what should we do now"};
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        said_after("mum cant breathe", "she is on hospice");
        fixture_text(stage, texts[i]);
        is_of_hospice(texts[i]);
    }
    said_after("mum cant breathe", "she is on hospice");
    fixture_text(stage, "shes choking now");
    ck_assert_str_eq(stage->verdict.alert.reason, "sign:choking");
}
END_TEST

START_TEST(without_it_an_ambulance_that_is_not_wanted_is_to_be_called_anyway)
{
    said_after("dad collapsed", "dont send an ambulance");
    ck_assert_str_eq(stage->verdict.alert.reason, "help:refuses");
    said_after("papa se desmayo", "no manden la ambulancia");
    ck_assert_str_eq(stage->verdict.alert.reason, "help:refuses");
}
END_TEST

/* Hours after an all-clear "can i" is no question of what to do with somebody who is ill. */
START_TEST(once_it_is_over_what_may_be_done_with_the_unit_is_answered)
{
    static const char *const texts[] = {"can i keep it another day", "can we take it on the plane",
                                        "how do i clean the filter"};
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        said_after("i cant breathe", "im ok now false alarm, it was the hose");
        fixture_wait_minutes(stage, 300);
        fixture_text(stage, texts[i]);
        ck_assert_msg(strstr(fixture_replies(stage), "Called 911") == NULL, "\"%s\"", texts[i]);
        ck_assert_msg(strstr(fixture_replies(stage), "Ask 911") == NULL, "\"%s\"", texts[i]);
    }
    said_after("i cant breathe", "can i keep it another day"); /* while it presses */
    ck_assert(strstr(fixture_replies(stage), "Called 911?") != NULL);
}
END_TEST

/* What was swallowed or breathed in may harm later. */
START_TEST(after_pills_or_gas_to_seem_well_calls_a_person_again)
{
    static const char *const after_pills[] = {"hes ok now", "shes fine now", "ya esta bien"};
    size_t i;

    for (i = 0; i < sizeof after_pills / sizeof after_pills[0]; i++) {
        said_after("he took 20 pills", after_pills[i]);
        ck_assert_msg(stage->verdict.alert.level == ALERT_EMERGENCY, "\"%s\"", after_pills[i]);
    }
    said_after("co alarm went off, we are outside", "we are all ok now");
    fixture_says(stage, "Let the medics come and look, even if it seems better.");
    fixture_alerts(stage, ALERT_EMERGENCY, "help:still-needed");
    said_after("he took 20 pills", "the paramedics are here");
    fixture_alerts(stage, ALERT_OFFICE, "is-over");
}
END_TEST

START_TEST(a_good_value_takes_back_no_symptom_that_was_told_with_the_low_one)
{
    static const char *const with_more[] = {"sat 80, me siento mareada",
                                            "sat 79, nauseous and a headache",
                                            "her oxygen is 78 and she is dizzy"};
    size_t i;

    for (i = 0; i < sizeof with_more / sizeof with_more[0]; i++) {
        said_after(with_more[i], "it was the wrong finger, its 96");
        ck_assert_msg(strcmp(stage->verdict.alert.reason, "is-over") != 0, "\"%s\"", with_more[i]);
    }
    said_after("sat 79", "it was the wrong finger, its 96");
    fixture_alerts(stage, ALERT_OFFICE, "is-over");
}
END_TEST

int
main(void)
{
    TCase *tests = tcase_create("open_emergency_wishes");

    tcase_add_unchecked_fixture(tests, shipped_begin, shipped_end);
    tcase_add_checked_fixture(tests, shipped_talk_set_up, stage_tear_down);
    tcase_add_test(tests, who_tells_of_hospice_or_a_dnr_is_sent_to_the_nurse_and_staff_hear_it);
    tcase_add_test(tests, once_it_was_told_a_refusal_or_a_question_is_of_it);
    tcase_add_test(tests, without_it_an_ambulance_that_is_not_wanted_is_to_be_called_anyway);
    tcase_add_test(tests, once_it_is_over_what_may_be_done_with_the_unit_is_answered);
    tcase_add_test(tests, after_pills_or_gas_to_seem_well_calls_a_person_again);
    tcase_add_test(tests, a_good_value_takes_back_no_symptom_that_was_told_with_the_low_one);
    tcase_set_timeout(tests, 120);
    return fixture_run(tests);
}
