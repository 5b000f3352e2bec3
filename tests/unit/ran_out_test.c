/* What they run on is told to be empty: somebody is called, and it is asked whether oxygen flows.
 */
#include "stage.h"

static void
begin_anew(void)
{
    fixture_free(stage);
    stage = fixture_new();
}

START_TEST(an_empty_battery_calls_somebody_and_asks_whether_oxygen_flows)
{
    static const char *const texts[] = {
        "my battery died",        "the battery just died on me",  "battery ran out",
        "i ran out of battery",   "both batteries are dead",      "se me murio la bateria",
        "la pila se acabo",       "ya se me acabaron las pilas",  "me quede sin bateria",
        "la bateria se descargo", "the battery died what do i do"};
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        begin_anew();
        fixture_text(stage, texts[i]);
        ck_assert_msg(stage->verdict.alert.level >= ALERT_URGENT, "%s", texts[i]);
        ck_assert_msg(stage->context.conversation.question == QUESTION_FLOWING, "%s", texts[i]);
        fixture_says(stage, "911");
    }
}
END_TEST

START_TEST(of_an_empty_cylinder_the_backup_is_not_named)
{
    static const char *const texts[] = {"the tank is empty", "se me acabo el tanque",
                                        "el tanque ya esta vacio", "the gauge reads zero",
                                        "el manometro marca cero"};
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        begin_anew();
        fixture_text(stage, texts[i]);
        ck_assert_msg(stage->verdict.alert.level >= ALERT_URGENT, "%s", texts[i]);
        ck_assert_msg(stage->context.conversation.question == QUESTION_FLOWING, "%s", texts[i]);
        fixture_says_not(stage, "backup");
        fixture_says_not(stage, "reserva");
    }
}
END_TEST

START_TEST(no_to_whether_oxygen_flows_is_an_emergency_then)
{
    fixture_text(stage, "se me acabo el tanque");
    fixture_wait_minutes(stage, 1);
    fixture_text(stage, "no");
    fixture_alerts(stage, ALERT_EMERGENCY, "flowing:no");
}
END_TEST

START_TEST(other_things_other_times_and_one_of_several_are_not_taken_for_it)
{
    static const char *const texts[] = {"my car battery died",
                                        "my phone battery died",
                                        "what do i do when the battery died",
                                        "the battery has not died yet",
                                        "the battery died yesterday, all good now",
                                        "the other battery died, this one has 3 lights",
                                        "one battery is empty",
                                        "can you pick up the empty tank",
                                        "the tank is empty where do i take it",
                                        "que hago con el tanque vacio",
                                        "mi celular se quedo sin bateria",
                                        "se murio la bateria anoche, ya la puse a cargar",
                                        "no se ha acabado la bateria",
                                        "is the tank empty?",
                                        "se acabo la bateria del carro"};
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        begin_anew();
        fixture_text(stage, texts[i]);
        ck_assert_msg(fixture_answer(stage, "ran-out") == NULL, "%s", texts[i]);
    }
}
END_TEST

int
main(void)
{
    TCase *tests = tcase_create("ran out");

    tcase_add_checked_fixture(tests, stage_set_up, stage_tear_down);
    tcase_add_test(tests, an_empty_battery_calls_somebody_and_asks_whether_oxygen_flows);
    tcase_add_test(tests, of_an_empty_cylinder_the_backup_is_not_named);
    tcase_add_test(tests, no_to_whether_oxygen_flows_is_an_emergency_then);
    tcase_add_test(tests, other_things_other_times_and_one_of_several_are_not_taken_for_it);
    return fixture_run(tests);
}
