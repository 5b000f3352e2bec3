/* Trouble that no sign catches: whose it is. Also who asks for the emergency number. */
#include <string.h>

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

static void
alerts_anew(const char *text, enum alert_level level)
{
    fixture_free(stage);
    stage = fixture_new();
    fixture_text(stage, text);
    ck_assert_msg(stage->verdict.alert.level == level, "%s: %s", text, fixture_replies(stage));
}

START_TEST(the_unit_by_any_name_that_quit_is_a_stopped_unit)
{
    alerts_anew("the thing quit", ALERT_URGENT);
    ck_assert_ptr_nonnull(fixture_answer(stage, "flowing"));
    alerts_anew("thing aint working", ALERT_URGENT);
    alerts_anew("the darn thing just up and died", ALERT_URGENT);
    alerts_anew("my gadget quit", ALERT_URGENT);
    alerts_anew("se me murio el aparatito", ALERT_URGENT);
    alerts_anew("el chunche ya no jala", ALERT_URGENT);
    fixture_free(stage);
    stage = fixture_new();
    fixture_text(stage, "the tv thing quit");
    ck_assert_ptr_null(fixture_answer(stage, "trouble-stopped"));
    fixture_text(stage, "all is well, but if the machine gave out tonight");
    ck_assert_ptr_null(fixture_answer(stage, "trouble-stopped"));
    fixture_text(stage, "that thing on the wall quit");
    ck_assert_ptr_null(fixture_answer(stage, "trouble-stopped"));
}
END_TEST

START_TEST(a_unit_that_is_dead_does_not_tell_that_nothing_else_is_there)
{
    alerts_anew("unit is kaput", ALERT_URGENT);
    alerts_anew("my unit went dead", ALERT_URGENT);
    alerts_anew("my machine quit and both batteries are dead", ALERT_EMERGENCY);
    alerts_anew("power is out and the unit is dead", ALERT_EMERGENCY);
}
END_TEST

START_TEST(a_cylinder_just_opened_hisses_at_its_outlet)
{
    alerts_anew("we opened the tank and it hisses", ALERT_URGENT);
    fixture_says(stage, "push the tube on");
    alerts_anew("bottle hissing when i open it is that normal", ALERT_URGENT);
    fixture_says(stage, "Shut the valve, no flames, call 208-555-0100.");
    alerts_anew("abri el tanque y silba", ALERT_URGENT);
    fixture_says(stage, "Cierre la valvula");
    alerts_anew("machine stopped", ALERT_URGENT);
    fixture_text(stage, "how do i open the tank");
    fixture_text(stage, "ok its hissing now");
    ck_assert_int_eq(stage->verdict.alert.level, ALERT_URGENT);
    fixture_says(stage, "push the tube on");
    fixture_says(stage, "Is oxygen flowing again?");
    fixture_text(stage, "it is on my nose");
    ck_assert_int_ne(stage->verdict.route, ROUTE_EMERGENCY);
}
END_TEST

START_TEST(any_other_hiss_drives_them_out)
{
    alerts_anew("its hissing", ALERT_EMERGENCY);
    alerts_anew("machine stopped", ALERT_URGENT);
    fixture_text(stage, "its hissing");
    ck_assert_int_eq(stage->verdict.alert.level, ALERT_EMERGENCY);
    alerts_anew("machine stopped, i put the spare battery in", ALERT_URGENT);
    fixture_text(stage, "its hissing");
    ck_assert_int_eq(stage->verdict.alert.level, ALERT_EMERGENCY);
    alerts_anew("machine stopped", ALERT_URGENT);
    fixture_text(stage, "the battery is hissing");
    ck_assert_int_eq(stage->verdict.alert.level, ALERT_EMERGENCY);
    alerts_anew("machine stopped", ALERT_URGENT);
    fixture_text(stage, "now its hissing and smoke comes out");
    ck_assert_int_eq(stage->verdict.alert.level, ALERT_EMERGENCY);
}
END_TEST

START_TEST(beside_a_hot_battery_a_symptom_first_moves_them_away)
{
    alerts_anew("the battery is swollen and i feel dizzy", ALERT_EMERGENCY);
    ck_assert(strncmp(fixture_replies(stage), "Move away from the battery", 26) == 0);
    fixture_says_not(stage, "Sit up");
    alerts_anew("my battery is hot and i cant breathe", ALERT_EMERGENCY);
    ck_assert(strncmp(fixture_replies(stage), "Move away from the battery", 26) == 0);
    fixture_says(stage, "Tell 911 too: can't breathe");
    alerts_anew("the battery is hot and swelled up", ALERT_URGENT);
    fixture_says(stage, "move away");
}
END_TEST

START_TEST(prongs_without_air_call_a_person)
{
    alerts_anew("I can't feel any air from the prongs", ALERT_URGENT);
    alerts_anew("no siento aire por las puntas", ALERT_URGENT);
    fixture_free(stage);
    stage = fixture_new();
    fixture_text(stage, "should i feel air from the prongs");
    ck_assert_ptr_null(fixture_answer(stage, "trouble-stopped"));
}
END_TEST

START_TEST(another_battery_that_is_dead_is_no_unit_that_stopped)
{
    fixture_text(stage, "4 lights in the unit and the other is dead");
    ck_assert_ptr_null(fixture_answer(stage, "unit-stopped"));
    ck_assert_ptr_null(fixture_answer(stage, "flowing"));
    alerts_anew("4 lights in the unit, the other is dead and no oxygen is coming out",
                ALERT_URGENT);
}
END_TEST

START_TEST(a_failed_mains_with_a_unit_that_runs_asks_for_its_charge)
{
    alerts_anew("power is out but the machine runs on battery", ALERT_URGENT);
    fixture_says(stage, "Text us the lights on each battery");
    fixture_says(stage, "Is oxygen still flowing?");
    alerts_anew("power is out", ALERT_URGENT);
    ck_assert_ptr_nonnull(fixture_answer(stage, "flowing"));
    alerts_anew("power is out, it was running on battery and stopped", ALERT_URGENT);
    ck_assert_ptr_nonnull(fixture_answer(stage, "flowing"));
}
END_TEST

START_TEST(what_if_it_stops_names_the_backup)
{
    alerts_anew("what happens if it stops at night", ALERT_NONE);
    ck_assert_ptr_nonnull(fixture_answer(stage, "backup"));
    alerts_anew("what happens if it stops beeping", ALERT_NONE);
    ck_assert_ptr_null(fixture_answer(stage, "backup"));
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
    tcase_add_test(tests, the_unit_by_any_name_that_quit_is_a_stopped_unit);
    tcase_add_test(tests, a_unit_that_is_dead_does_not_tell_that_nothing_else_is_there);
    tcase_add_test(tests, a_cylinder_just_opened_hisses_at_its_outlet);
    tcase_add_test(tests, any_other_hiss_drives_them_out);
    tcase_add_test(tests, beside_a_hot_battery_a_symptom_first_moves_them_away);
    tcase_add_test(tests, prongs_without_air_call_a_person);
    tcase_add_test(tests, another_battery_that_is_dead_is_no_unit_that_stopped);
    tcase_add_test(tests, a_failed_mains_with_a_unit_that_runs_asks_for_its_charge);
    tcase_add_test(tests, what_if_it_stops_names_the_backup);
    return fixture_run(tests);
}
