/* Ana's Finch shows PUMP LOW, with which oxygen stops, and PLUG IN (fixture.c). */
#include "stage.h"

static void
means_pump_low(const char *text, const char *meaning)
{
    fixture_text(stage, text);
    fixture_says(stage, "PUMP LOW");
    fixture_says(stage, meaning);
    fixture_alerts(stage, ALERT_URGENT, "trouble:display");
}

START_TEST(what_the_display_shows_is_answered_from_the_units_own_table)
{
    means_pump_low("it says PUMP LOW", "Look for a bend.");
    means_pump_low("what does pump low mean", "Look for a bend.");
    means_pump_low("Pump Low", "Look for a bend.");
    means_pump_low("hi PUMP LOW came up, no beep", "Look for a bend.");
    means_pump_low("la pantalla dice PUMP LOW", "Busque un doblez.");
    means_pump_low("PUMP LOW", "Busque un doblez."); /* the talk goes on in Spanish */
}
END_TEST

START_TEST(a_unit_that_stopped_is_graver_than_what_an_unknown_word_on_it_means)
{
    fixture_text(stage, "the display shows ERROR and it stopped working");
    fixture_alerts(stage, ALERT_URGENT, "trouble:stopped");
}
END_TEST

START_TEST(in_another_order_or_shortened_it_is_found_too)
{
    means_pump_low("screen says LOW PUMP", "Look for a bend.");
    means_pump_low("pump low on the screen", "Look for a bend.");
    means_pump_low("la pantalla dice PUMP BAJO", "Busque un doblez.");
}
END_TEST

START_TEST(of_an_unknown_unit_the_page_on_messages_is_told)
{
    fixture_stranger(stage);
    fixture_text(stage, "the display shows PUMP LOW");
    ck_assert_ptr_null(fixture_answer(stage, "display"));
    ck_assert_int_eq(stage->verdict.alert.level, ALERT_NONE);
}
END_TEST

START_TEST(what_stands_in_english_only_is_said_to_be_english)
{
    fixture_text(stage, "qué significa PLUG IN en la pantalla del equipo");
    fixture_says(stage, "PLUG IN: (en inglés) Use the wall.");
}
END_TEST

START_TEST(nobody_is_called_if_oxygen_goes_on_or_it_is_only_supposed)
{
    fixture_text(stage, "screen says plug in");
    fixture_says(stage, "PLUG IN: Use the wall.");
    ck_assert_int_eq(stage->verdict.alert.level, ALERT_NONE);
    fixture_text(stage, "what if it says PUMP LOW");
    fixture_says(stage, "Look for a bend.");
    ck_assert_int_eq(stage->verdict.alert.level, ALERT_NONE);
}
END_TEST

START_TEST(ordinary_words_are_not_read_off_a_display)
{
    fixture_text(stage, "where can i plug in");
    ck_assert_ptr_null(fixture_answer(stage, "display"));
}
END_TEST

/* NO BREATH would be trouble breathing; the display's word, a person is called, for nobody knows.
 */
START_TEST(a_text_that_is_the_displays_word_in_capitals_is_no_persons_cry)
{
    static const char *const texts[] = {"NO BREATH", "NO BREATH!", "display: NO BREATH",
                                        "screen says: no breath"};
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        fixture_free(stage);
        stage = fixture_new();
        fixture_text(stage, texts[i]);
        fixture_says(stage, "NO BREATH: Check the prongs.");
        fixture_says_not(stage, "Trouble breathing: call");
    }
    fixture_text(stage, "NO BREATH");
    fixture_alerts(stage, ALERT_URGENT, "trouble:display");
    fixture_says(stage, "Hard to breathe? Call 911 now.");
    fixture_text(stage, "ok it stopped beeping");
    ck_assert_int_lt(stage->verdict.alert.level, ALERT_URGENT);
}
END_TEST

START_TEST(a_strangers_word_is_looked_up_with_all_units_of_the_house)
{
    fixture_stranger(stage);
    fixture_text(stage, "NO BREATH");
    fixture_says(stage, "NO BREATH: Check the prongs.");
    fixture_alerts(stage, ALERT_URGENT, "trouble:display");
}
END_TEST

START_TEST(in_doubt_it_is_a_persons_cry)
{
    static const char *const texts[] = {"no breath", "HELP NO BREATH", "NO BREATH PLEASE",
                                        "I HAVE NO BREATH"};
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        fixture_free(stage);
        stage = fixture_new();
        fixture_text(stage, texts[i]);
        fixture_alerts(stage, ALERT_EMERGENCY, "sign:trouble-breathing");
    }
    fixture_free(stage);
    stage = fixture_new();
    fixture_text(stage, "MOM IS BAD");
    fixture_text(stage, "NO BREATH");
    fixture_alerts(stage, ALERT_EMERGENCY, "sign:trouble-breathing");
}
END_TEST

START_TEST(an_unknown_word_with_an_alarm_calls_a_person_at_once)
{
    fixture_text(stage, "check flow beeping");
    fixture_alerts(stage, ALERT_URGENT, "trouble:display");
    fixture_says_not(stage, "Text us the word");
    fixture_text(stage, "does the low flow alarm beep");
    ck_assert_int_lt(stage->verdict.alert.level, ALERT_URGENT);
}
END_TEST

START_TEST(a_code_of_no_table_is_for_a_person_and_at_once_if_it_comes_again)
{
    fixture_text(stage, "E05");
    fixture_alerts(stage, ALERT_OFFICE, "trouble:display");
    fixture_text(stage, "sale E05 otra vez");
    fixture_alerts(stage, ALERT_URGENT, "trouble:display");
    fixture_text(stage, "E5 keeps coming back");
    fixture_alerts(stage, ALERT_URGENT, "trouble:display");
}
END_TEST

int
main(void)
{
    TCase *tests = tcase_create("display");

    tcase_add_checked_fixture(tests, stage_set_up, stage_tear_down);
    tcase_add_test(tests, what_the_display_shows_is_answered_from_the_units_own_table);
    tcase_add_test(tests, in_another_order_or_shortened_it_is_found_too);
    tcase_add_test(tests, a_unit_that_stopped_is_graver_than_what_an_unknown_word_on_it_means);
    tcase_add_test(tests, of_an_unknown_unit_the_page_on_messages_is_told);
    tcase_add_test(tests, what_stands_in_english_only_is_said_to_be_english);
    tcase_add_test(tests, nobody_is_called_if_oxygen_goes_on_or_it_is_only_supposed);
    tcase_add_test(tests, ordinary_words_are_not_read_off_a_display);
    tcase_add_test(tests, a_text_that_is_the_displays_word_in_capitals_is_no_persons_cry);
    tcase_add_test(tests, a_strangers_word_is_looked_up_with_all_units_of_the_house);
    tcase_add_test(tests, in_doubt_it_is_a_persons_cry);
    tcase_add_test(tests, an_unknown_word_with_an_alarm_calls_a_person_at_once);
    tcase_add_test(tests, a_code_of_no_table_is_for_a_person_and_at_once_if_it_comes_again);
    return fixture_run(tests);
}
