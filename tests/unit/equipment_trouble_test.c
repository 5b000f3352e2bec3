/* Trouble that no sign catches: whose it is. Also who asks for the emergency number. */
#include "stage.h"

START_TEST(a_thing_of_the_house_that_stops_is_no_unit_that_stopped)
{
    static const char *const texts[] = {"the heating wont turn on", "the tv stopped working",
                                        "no prende la calefaccion", "la estufa no enciende"};
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        fixture_text(stage, texts[i]);
        ck_assert_msg(fixture_answer(stage, "trouble-stopped") == NULL, "%s", texts[i]);
        ck_assert_int_ne(stage->context.conversation.question, QUESTION_FLOWING);
    }
}
END_TEST

START_TEST(a_unit_beside_a_thing_of_the_house_still_is)
{
    static const char *const texts[] = {
        "machine stopped, the heater is on",         "it shut off when the microwave started",
        "se apago cuando prendi el calentador",      "no prende el aparato, la tele si",
        "my portable shut off on the lift",          "o2 maker next to the tv wont turn on",
        "the breather stopped working in the shower"};
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        fixture_free(stage);
        stage = fixture_new();
        fixture_text(stage, texts[i]);
        ck_assert_msg(stage->verdict.alert.level == ALERT_URGENT, "%s", texts[i]);
    }
}
END_TEST

START_TEST(several_things_of_the_house_that_stop_at_once_are_a_power_cut)
{
    fixture_text(stage, "tv, heater, lamp shut off");
    ck_assert_int_eq(stage->verdict.alert.level, ALERT_URGENT);
}
END_TEST

START_TEST(the_emergency_number_is_told_first)
{
    fixture_text(stage, "what is the emergency number here?");
    fixture_says(stage, "Emergency: call 911.");
    fixture_alerts(stage, ALERT_URGENT, "asks-hospital");
    fixture_text(stage, "¿cual es el hospital mas cercano?");
    fixture_says(stage, "Emergencia: llame al 911.");
}
END_TEST

START_TEST(beside_the_emergency_number_trouble_and_minutes_are_answered)
{
    fixture_text(stage, "the portable shut off by itself where is the closest hospital");
    fixture_says(stage, "Emergency: call 911.");
    ck_assert_ptr_nonnull(fixture_answer(stage, "trouble-stopped"));
    fixture_free(stage);
    stage = fixture_new();
    fixture_text(stage, "one full battery how long do i have left, where is the nearest hospital");
    fixture_says(stage, "Emergency: call 911.");
    ck_assert_ptr_nonnull(fixture_answer(stage, "hours-left"));
}
END_TEST

START_TEST(nobody_answers_me_goes_to_a_person)
{
    fixture_text(stage, "nobody answers me, this is the third text");
    fixture_alerts(stage, ALERT_OFFICE, "office:contact");
}
END_TEST

int
main(void)
{
    TCase *tests = tcase_create("equipment_trouble");

    tcase_add_checked_fixture(tests, stage_set_up, stage_tear_down);
    tcase_add_test(tests, a_thing_of_the_house_that_stops_is_no_unit_that_stopped);
    tcase_add_test(tests, a_unit_beside_a_thing_of_the_house_still_is);
    tcase_add_test(tests, several_things_of_the_house_that_stop_at_once_are_a_power_cut);
    tcase_add_test(tests, the_emergency_number_is_told_first);
    tcase_add_test(tests, beside_the_emergency_number_trouble_and_minutes_are_answered);
    tcase_add_test(tests, nobody_answers_me_goes_to_a_person);
    return fixture_run(tests);
}
