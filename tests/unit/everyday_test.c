/* What is asked of everyday things, or taken back, while an emergency is open, with the content as
 * it ships. */
#include "shipped_stage.h"

#include <string.h>

enum { AT_FIRST_MINUTES = 5, NO_MORE_NEW_MINUTES = 20 };

/* So many minutes after another, in a conversation of its own. */
static void
said_after(const char *first, int minutes, const char *text)
{
    shipped_talk_anew();
    fixture_text(stage, first);
    fixture_wait_minutes(stage, minutes);
    fixture_text(stage, text);
}

START_TEST(what_surely_is_of_the_rental_rings_nobody_again)
{
    static const char *const texts[] = {"how do i clean the filter", "can i keep it until sunday",
                                        "how do we pack the case to return it",
                                        "how many batteries can i take on the plane"};
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        said_after("he has chest pain", AT_FIRST_MINUTES, texts[i]);
        ck_assert_msg(stage->verdict.alert.level == ALERT_OFFICE, "\"%s\": %s", texts[i],
                      stage->verdict.alert.reason);
        fixture_says(stage, "Called 911?");
        ck_assert_uint_eq(stage->verdict.answer_count, 1);
    }
    said_after("no puede respirar", AT_FIRST_MINUTES, "como limpio el filtro");
    fixture_alerts(stage, ALERT_OFFICE, "wrote-again");
}
END_TEST

START_TEST(an_ordinary_question_is_answered_behind_the_call_once_the_emergency_is_not_new)
{
    static const char *const texts[][3] = {
        {"he has chest pain", "are you open on sundays", "contact"},
        {"he has chest pain", "when do i return it", "due-date"},
        {"he fainted", "how do i clean the filter", "filter-care"},
        {"no puede respirar", "a que hora cierran", "contact"},
        {"mi esposa se desmayo", "como limpio el filtro", "filter-care"},
    };
    size_t i, answer;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        said_after(texts[i][0], NO_MORE_NEW_MINUTES, texts[i][1]);
        fixture_alerts(stage, ALERT_OFFICE, "wrote-again");
        ck_assert_str_eq(stage->verdict.answers[0].id, "called-911");
        for (answer = 1; answer < stage->verdict.answer_count &&
                         strcmp(stage->verdict.answers[answer].id, texts[i][2]) != 0;
             answer++) {
        }
        ck_assert_msg(answer < stage->verdict.answer_count, "\"%s\"", texts[i][1]);
    }
}
END_TEST

START_TEST(what_may_tell_of_danger_is_answered_as_at_first_however_late)
{
    static const char *const texts[] = {"what do i do now",
                                        "can he lie down",
                                        "he is so quiet",
                                        "it got really quiet",
                                        "can i turn it off",
                                        "can he eat something",
                                        "she is floppy",
                                        "lost him",
                                        "gurgling",
                                        "cold",
                                        "gone",
                                        "losing her",
                                        "tube came off",
                                        "bubbles stopped",
                                        "lo perdimos",
                                        "gorgotea",
                                        "come get it he is gone"};
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        said_after("he has chest pain", NO_MORE_NEW_MINUTES, texts[i]);
        ck_assert_msg(stage->verdict.alert.level == ALERT_EMERGENCY, "\"%s\": %s", texts[i],
                      stage->verdict.alert.reason);
    }
}
END_TEST

START_TEST(what_is_explained_or_taken_back_calls_nobody_again)
{
    static const char *const texts[][2] = {
        {"HELP", "no im fine"},
        {"help", "oh sorry no im ok"},
        {"out of breath after the stairs", "it goes away in a minute"},
        {"sin aire al subir", "se me pasa en un minuto"},
        {"i cant stand it anymore", "the noise of the fan i mean"},
        {"no puedo mas", "con el ruido digo"},
        {"HELP", "sorry meant how do I put on the nose piece"},
        {"im gonna kill my husband", "haha just kidding"},
        {"i want to kill my husband", "jk he hid the charger"},
        {"Gonna kill my brother in law", "kidding. he parked on the hose"}};
    static const char *const danger[][2] = {{"HELP", "no, im dizzy"},
                                            {"help me", "i mean she is on the floor"},
                                            {"HELP", "i mean how do i wake him up"},
                                            {"i cant stand it anymore", "the pain i mean"},
                                            {"i cant stand it anymore", "this life i mean"},
                                            {"im going to kill myself", "kidding"},
                                            {"quiero morirme", "es broma"},
                                            {"HELP", "kidding no im not i want to die"}};
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        said_after(texts[i][0], 2, texts[i][1]);
        ck_assert_msg(stage->verdict.alert.level <= ALERT_OFFICE, "\"%s\": %s", texts[i][1],
                      stage->verdict.alert.reason);
    }
    for (i = 0; i < sizeof danger / sizeof danger[0]; i++) {
        said_after(danger[i][0], 2, danger[i][1]);
        ck_assert_msg(stage->verdict.alert.level == ALERT_EMERGENCY, "\"%s\"", danger[i][1]);
    }
    said_after("my husband fell and cant get up", 2, "no im fine");
    ck_assert_ptr_null(fixture_answer(stage, "is-over"));
}
END_TEST

/* Neither of the unit's hum nor of what was lost is a word said then. */
START_TEST(few_words_and_what_may_be_of_a_body_get_no_topic)
{
    static const char *const texts[] = {"lost him",
                                        "gurgling",
                                        "dry",
                                        "water in the tube",
                                        "weird noise",
                                        "what is the prescription",
                                        "cold",
                                        "hace un ruido",
                                        "bring it back to her",
                                        "frio"};
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        said_after("he has chest pain", NO_MORE_NEW_MINUTES, texts[i]);
        ck_assert_msg(stage->verdict.alert.level >= ALERT_OFFICE, "\"%s\"", texts[i]);
        ck_assert_msg(stage->verdict.answer_count == 1, "\"%s\"", texts[i]);
        ck_assert_str_eq(stage->verdict.answers[0].id, "called-911");
    }
}
END_TEST

START_TEST(what_tells_of_a_thing_gets_no_answer_that_a_topic_is_like)
{
    said_after("he has chest pain", NO_MORE_NEW_MINUTES, "its really quiet");
    ck_assert_int_eq(stage->verdict.alert.level, ALERT_EMERGENCY);
    fixture_says(stage, "Tell 911 this too");
    ck_assert_uint_eq(stage->verdict.answer_count, 1);
}
END_TEST

int
main(void)
{
    TCase *tests = tcase_create("everyday");

    tcase_add_unchecked_fixture(tests, shipped_begin, shipped_end);
    tcase_add_checked_fixture(tests, shipped_talk_set_up, stage_tear_down);
    tcase_add_test(tests, what_surely_is_of_the_rental_rings_nobody_again);
    tcase_add_test(tests,
                   an_ordinary_question_is_answered_behind_the_call_once_the_emergency_is_not_new);
    tcase_add_test(tests, what_may_tell_of_danger_is_answered_as_at_first_however_late);
    tcase_add_test(tests, what_is_explained_or_taken_back_calls_nobody_again);
    tcase_add_test(tests, few_words_and_what_may_be_of_a_body_get_no_topic);
    tcase_add_test(tests, what_tells_of_a_thing_gets_no_answer_that_a_topic_is_like);
    tcase_set_timeout(tests, 120);
    return fixture_run(tests);
}
