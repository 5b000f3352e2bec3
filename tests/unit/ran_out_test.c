/* What they run on is told to be empty: somebody is called, and it is asked whether oxygen flows.
 */
#include "stage.h"

#include <string.h>

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
                                        "se acabo la bateria del carro",
                                        "the battery died in my flashlight",
                                        "how do i know the battery is dead",
                                        "can the battery run out while it charges",
                                        "the tank is empty, how do i return it",
                                        "my battery died, i have another one full",
                                        "se murio la pila, ya la puse a cargar",
                                        "battery at 0%, when is it full in the car?",
                                        "2 batteries totally dead. will they be done by 7 am",
                                        "las dos pilas estan en cero, alcanzan a llenarse?",
                                        "how do i get the empty battery out",
                                        "i pulled the battery out, which way round is it"};
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        begin_anew();
        fixture_text(stage, texts[i]);
        ck_assert_msg(fixture_answer(stage, "ran-out") == NULL, "%s", texts[i]);
    }
}
END_TEST

/* What is denied, of something else or behind it speaks against nothing. */
START_TEST(words_of_other_things_do_not_silence_it)
{
    static const char *const texts[] = {
        "the battery just died, works no more", "battery is dead since 5",
        "battery died 20 minutes ago",          "tank empty need pickup",
        "battery died, plugged in but nothing", "phone is out too. my battery died",
        "battery died, can you bring another",  "when i woke up the battery was dead",
        "que hago se acabo la bateria",         "otra vez se murio la bateria",
        "se acabo la pila, no la puedo cargar"};
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        begin_anew();
        fixture_text(stage, texts[i]);
        ck_assert_msg(stage->verdict.alert.level >= ALERT_URGENT, "%s", texts[i]);
        ck_assert_msg(strstr(fixture_replies(stage), "911") != NULL, "%s", texts[i]);
    }
}
END_TEST

START_TEST(without_another_or_on_the_road_it_is_an_emergency)
{
    static const char *const texts[] = {
        "battery died no extra",
        "battery died and the spare is not charging",
        "battery died, spare died too",
        "battery died, my other one wont charge",
        "battery died we are in the car on the pass",
        "my battery died on the trail, the spare is at the cabin",
        "se acabo la pila y la otra tampoco prende",
        "se me murio la bateria y no traigo otra",
        "estoy sin bateria en el cerro",
        "se acabo la bateria, si no llega alguien pronto me voy a morir"};
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        begin_anew();
        fixture_text(stage, texts[i]);
        ck_assert_msg(stage->verdict.route == ROUTE_EMERGENCY, "%s", texts[i]);
        fixture_says(stage, "911");
    }
}
END_TEST

/* What stands in another clause, was so before, or is wished for speaks against nothing. */
START_TEST(only_what_stands_beside_it_as_it_is_now_speaks_against_it)
{
    static const char *const texts[] = {"tank was full this morning now its empty",
                                        "we need a full tank, ours is empty",
                                        "he needs a full tank this ones empty",
                                        "what now tank empty",
                                        "battery died but im fine",
                                        "battery died. phone at 10%",
                                        "the car is fine but the oxygen battery died",
                                        "yesterday was fine but today the battery died",
                                        "the spare tank is empty",
                                        "when the battery ran out he got tired",
                                        "se acabo el tanque cuanto tardan en traer otro",
                                        "el tanque estaba lleno y ya esta vacio",
                                        "que hago ahora se me acabo la pila"};
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        begin_anew();
        fixture_text(stage, texts[i]);
        ck_assert_msg(stage->verdict.alert.level >= ALERT_URGENT, "%s", texts[i]);
        ck_assert_msg(stage->verdict.route == ROUTE_EMERGENCY ||
                          stage->context.conversation.question == QUESTION_FLOWING,
                      "%s", texts[i]);
    }
}
END_TEST

START_TEST(what_ran_out_is_heard_in_misspelt_words)
{
    static const char *const texts[] = {"my batery dyed", "my battrey ran out",
                                        "se me acabo la vateria"};
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        begin_anew();
        fixture_text(stage, texts[i]);
        ck_assert_msg(stage->verdict.alert.level >= ALERT_URGENT, "%s", texts[i]);
    }
}
END_TEST

START_TEST(far_from_any_or_without_a_way_to_charge_it_is_an_emergency)
{
    static const char *const texts[] = {"battery ran out 2 miles from the car",
                                        "battery died, 1 hour drive to hotel",
                                        "battery died and the charger isnt working",
                                        "battery went flat and i cant charge it",
                                        "on the tank and its empty now",
                                        "tank empty how long do i have",
                                        "battery died phone 5% hurry",
                                        "battery died ... i have none",
                                        "battery died its the only one",
                                        "my batery dyed and teh spare wont charge",
                                        "se murio la bateria estamos a 2 horas del hotel",
                                        "se acabo la pila y es la unica"};
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        begin_anew();
        fixture_text(stage, texts[i]);
        ck_assert_msg(stage->verdict.route == ROUTE_EMERGENCY, "%s", texts[i]);
    }
}
END_TEST

START_TEST(what_is_full_past_or_of_another_thing_calls_nobody)
{
    static const char *const texts[] = {
        "the battery ran out yesterday and the office brought another",
        "we thought the tank is empty but it is full",
        "the battery of my phone just died",
        "theirs is empty, ours is full",
        "battery ran out last night, we swapped it",
        "the battery died overnight but i was on the wall plug",
        "my battery is empty but im on the wall",
        "se acabo la pila anoche pero estaba conectado a la pared",
        "how long does it take to charge an empty battery",
        "ayer se acabo la pila y la oficina trajo otra"};
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        begin_anew();
        fixture_text(stage, texts[i]);
        ck_assert_msg(fixture_answer(stage, "ran-out") == NULL, "%s", texts[i]);
        ck_assert_msg(stage->verdict.route != ROUTE_EMERGENCY, "%s", texts[i]);
    }
}
END_TEST

START_TEST(a_wall_that_is_no_supply_now_is_none)
{
    static const char *const texts[] = {"battery died and im not on the wall",
                                        "battery died but i was on the wall until now",
                                        "battery died we need to get it on the wall",
                                        "battery died and there is nothing on the wall",
                                        "se acabo la pila y no hay corriente en la pared"};
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        begin_anew();
        fixture_text(stage, texts[i]);
        ck_assert_msg(stage->verdict.alert.level >= ALERT_URGENT, "%s", texts[i]);
    }
}
END_TEST

/* Who asks for another, or has it elsewhere, has none; black ice and a car that broke are no
 * owners.
 */
START_TEST(another_that_is_asked_for_or_elsewhere_is_not_at_hand)
{
    static const char *const texts[] = {
        "tank is empty, ordered another from you guys",
        "battery died, where can i buy another",
        "my tank is empty, could i borrow another one from you",
        "battery died, do you guys have another",
        "tank empty. waiting on another",
        "tank empty, i have to find another",
        "we have another tank but need the wrench, this one is empty",
        "the battery died, my neighbor has another one",
        "mi tanque esta vacio me prestan otro",
        "tanque vacio cuando me dan otro",
        "mi bateria murio consigueme otra",
        "el tanque esta vacio ya pedi otro",
        "stuck on black ice battery died",
        "we ran out of gas battery died too",
        "my phone died battery died too"};
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        begin_anew();
        fixture_text(stage, texts[i]);
        ck_assert_msg(stage->verdict.alert.level >= ALERT_URGENT, "%s", texts[i]);
        ck_assert_msg(fixture_answer(stage, "ran-out") != NULL ||
                          stage->verdict.route == ROUTE_EMERGENCY,
                      "%s", texts[i]);
    }
}
END_TEST

START_TEST(another_that_its_own_clause_tells_to_be_at_hand_is)
{
    static const char *const texts[] = {"battery died but i have my spare",
                                        "my battery died i have another",
                                        "battery died, switched to the other one",
                                        "battery died, can i use the other one",
                                        "tank is empty, opened the other one",
                                        "tank empty, the other one is full",
                                        "la bateria se murio pero tengo otra cargada",
                                        "el tanque se vacio, abri el otro",
                                        "the ice pack battery died",
                                        "my vest battery died",
                                        "propane tank is empty"};
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        begin_anew();
        fixture_text(stage, texts[i]);
        ck_assert_msg(stage->verdict.alert.level < ALERT_URGENT, "%s", texts[i]);
    }
}
END_TEST

START_TEST(one_that_is_gone_and_all_that_there_were_leave_nothing)
{
    static const char *const texts[] = {"battery died, my spare got stolen",
                                        "battery died, i gave the other away",
                                        "battery died, spare is broken",
                                        "battery died and i left the other one in the hotel",
                                        "tanque vacio, el otro lo devolvi",
                                        "tank is empty and my spare is in a drawer at the hotel",
                                        "all the batteries are dead now",
                                        "las pilas se acabaron todas",
                                        "no battery no nothing",
                                        "ni pila ni tanque"};
    static const char *const is_left[] = {"my batteries are all dead but the unit is plugged in",
                                          "my batteries are all empty how long to charge them"};
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        begin_anew();
        fixture_text(stage, texts[i]);
        ck_assert_msg(stage->verdict.route == ROUTE_EMERGENCY, "%s", texts[i]);
    }
    for (i = 0; i < sizeof is_left / sizeof is_left[0]; i++) {
        begin_anew();
        fixture_text(stage, is_left[i]);
        ck_assert_msg(stage->verdict.alert.level < ALERT_URGENT, "%s", is_left[i]);
    }
}
END_TEST

START_TEST(the_writers_own_empty_supply_is_heard_after_a_death)
{
    begin_anew();
    stage->keeps_alerts = true;
    fixture_text(stage, "my wife passed away last night");
    fixture_wait_minutes(stage, 5);
    fixture_text(stage, "her tank is empty, take it");
    fixture_alerts(stage, ALERT_OFFICE, "wrote-again");
    fixture_wait_minutes(stage, 5);
    fixture_text(stage, "my tank is empty");
    fixture_alerts(stage, ALERT_URGENT, "trouble:ran-out");
}
END_TEST

START_TEST(what_else_they_breathe_from_on_the_road_is_none)
{
    begin_anew();
    fixture_text(stage, "my battery died on the trail, on the tank now");
    ck_assert_int_ne(stage->verdict.route, ROUTE_EMERGENCY);
    ck_assert_int_eq(stage->context.conversation.question, QUESTION_FLOWING);
}
END_TEST

START_TEST(a_backup_that_is_there_is_not_read_as_empty)
{
    begin_anew();
    fixture_text(stage, "battery empty");
    fixture_wait_minutes(stage, 1);
    fixture_text(stage, "yes have the tank");
    ck_assert_int_ne(stage->verdict.route, ROUTE_EMERGENCY);
    fixture_says(stage, "Is oxygen flowing");
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
    tcase_add_test(tests, words_of_other_things_do_not_silence_it);
    tcase_add_test(tests, without_another_or_on_the_road_it_is_an_emergency);
    tcase_add_test(tests, only_what_stands_beside_it_as_it_is_now_speaks_against_it);
    tcase_add_test(tests, what_ran_out_is_heard_in_misspelt_words);
    tcase_add_test(tests, far_from_any_or_without_a_way_to_charge_it_is_an_emergency);
    tcase_add_test(tests, what_is_full_past_or_of_another_thing_calls_nobody);
    tcase_add_test(tests, a_wall_that_is_no_supply_now_is_none);
    tcase_add_test(tests, another_that_is_asked_for_or_elsewhere_is_not_at_hand);
    tcase_add_test(tests, another_that_its_own_clause_tells_to_be_at_hand_is);
    tcase_add_test(tests, one_that_is_gone_and_all_that_there_were_leave_nothing);
    tcase_add_test(tests, the_writers_own_empty_supply_is_heard_after_a_death);
    tcase_add_test(tests, what_else_they_breathe_from_on_the_road_is_none);
    tcase_add_test(tests, a_backup_that_is_there_is_not_read_as_empty);
    return fixture_run(tests);
}
