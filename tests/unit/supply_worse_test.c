/* What they breathe from gets worse after trouble with it was told, or has no way to a plug. */
#include "shipped_stage.h"

/* What staff are called about for the second of two texts, of somebody without a record. */
static const struct alert_call *
after(const char *first, const char *text)
{
    shipped_talk_anew();
    fixture_stranger(stage);
    fixture_text(stage, first);
    ck_assert_msg(stage->verdict.alert.level >= ALERT_URGENT, "%s", first);
    fixture_wait_minutes(stage, 70);
    return &fixture_text(stage, text)->alert;
}

#define EACH_IS(level, first, texts)                                                               \
    each_is(level, first, texts, sizeof(texts) / sizeof((texts)[0]))

static void
each_is(enum alert_level level, const char *first, const char *const *texts, size_t count)
{
    size_t i;

    for (i = 0; i < count; i++) {
        const struct alert_call *call = after(first, texts[i]);

        ck_assert_msg(call->level == level, "%s || %s: %d %s", first, texts[i], (int)call->level,
                      call->reason == NULL ? "" : call->reason);
    }
}

START_TEST(a_low_charge_while_the_power_is_out_is_the_last_battery)
{
    static const char *const texts[] = {"at 20 now",
                                        "its at 15%",
                                        "down to 9",
                                        "one bar left",
                                        "only 1 light",
                                        "the other one is flashing",
                                        "its beeping now",
                                        "used one up already",
                                        "we are on the second one",
                                        "only one left",
                                        "they say until tomorrow morning",
                                        "the utility says 6 hours",
                                        "ya va en 18",
                                        "al 12",
                                        "le queda una luz",
                                        "se acabó la primera",
                                        "ya voy en la segunda",
                                        "está pitando",
                                        "dicen que hasta el mediodía",
                                        "ya casi se acaba"};

    EACH_IS(ALERT_URGENT, "the power went out at our cabin", texts);
    EACH_IS(ALERT_URGENT, "se fue la luz en la cabaña", texts);
}
END_TEST

START_TEST(a_few_percent_without_a_plug_and_a_tank_are_an_emergency)
{
    static const char *const texts[] = {"down to 4%", "2% left",     "its at 5%",
                                        "al 3",       "ya queda 4%", "bateria al 2"};

    EACH_IS(ALERT_EMERGENCY, "the power went out at our cabin", texts);
    ck_assert_int_eq(after("se fue la luz", "la pila al 3% pero tengo el tanque lleno")->level,
                     ALERT_URGENT);
}
END_TEST

START_TEST(a_tank_on_record_leaves_it_urgent)
{
    stage->rentals[0].backup = (struct backup){.known = true, .kind = "cylinder", .size = "E"};
    fixture_text(stage, "the power went out at our cabin");
    fixture_wait_minutes(stage, 40);
    fixture_text(stage, "down to 4%");
    fixture_alerts(stage, ALERT_URGENT, "sign:last-battery");
}
END_TEST

START_TEST(a_unit_that_stops_once_more_is_told_anew)
{
    static const char *const texts[] = {
        "it stopped again",  "quit again just now", "off again",          "shut down again",
        "se apagó otra vez", "otra vez se paró",    "se volvió a apagar", "de nuevo no sale aire",
        "gone again",        "se fue otra vez",     "power gone again",   "la luz se fue de nuevo"};
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        shipped_talk_anew();
        fixture_stranger(stage);
        fixture_text(stage, "my machine stopped");
        fixture_wait_minutes(stage, 2);
        fixture_text(stage, "yes it is flowing");
        ck_assert_int_eq(stage->context.conversation.question, QUESTION_NONE);
        fixture_wait_minutes(stage, 40);
        fixture_text(stage, texts[i]);
        ck_assert_msg(stage->verdict.alert.level == ALERT_URGENT, "%s", texts[i]);
        ck_assert_int_eq(stage->context.conversation.question, QUESTION_FLOWING);
    }
}
END_TEST

START_TEST(a_phone_or_a_person_that_is_gone_again_is_not_the_supply)
{
    static const char *const texts[] = {"my phone died again", "he is gone again to the store",
                                        "se fue otra vez mi hijo", "se me apago otra vez el cel"};
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        shipped_talk_anew();
        fixture_stranger(stage);
        fixture_text(stage, "my machine stopped");
        fixture_wait_minutes(stage, 2);
        fixture_text(stage, "yes it is flowing");
        fixture_wait_minutes(stage, 40);
        fixture_text(stage, texts[i]);
        ck_assert_msg(stage->verdict.alert.level < ALERT_URGENT, "%s", texts[i]);
    }
}
END_TEST

START_TEST(a_needle_that_goes_to_the_end_is_told_anew)
{
    static const char *const texts[] = {"needle is on zero", "its at 300 psi", "tank almost gone",
                                        "la aguja en cero", "marca 300 psi el tanque"};

    EACH_IS(ALERT_URGENT, "the tank needle is in the red", texts);
    /* and then there is nothing else to breathe from */
    EACH_IS(ALERT_EMERGENCY, "my machine stopped, using the backup", texts);
    ck_assert_int_eq(after("my machine stopped, using the backup", "gauge at a quarter")->level,
                     ALERT_URGENT);
}
END_TEST

START_TEST(other_things_are_not_the_supply)
{
    static const char *const texts[] = {"my phone is at 5%",
                                        "our dog is 10",
                                        "we are in cabin 12",
                                        "there are 4 of us",
                                        "both batteries at 80",
                                        "one full and one at 10",
                                        "its at 3",
                                        "what if it goes down to 10",
                                        "thanks a lot",
                                        "el celular al 8",
                                        "somos 6"};
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        const struct alert_call *call = after("the power went out at our cabin", texts[i]);

        ck_assert_msg(call->level < ALERT_URGENT, "%s: %s", texts[i], call->reason);
    }
}
END_TEST

START_TEST(after_all_is_well_small_talk_of_tomorrow_is_none)
{
    static const char *const texts[] = {"hasta mañana", "we go home tomorrow morning",
                                        "can we keep it until sunday"};
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        shipped_talk_anew();
        fixture_text(stage, "se fue la luz");
        fixture_wait_minutes(stage, 5);
        fixture_text(stage, "ya volvio la luz, ya funciona");
        fixture_wait_minutes(stage, 10);
        fixture_text(stage, texts[i]);
        ck_assert_msg(stage->verdict.alert.level < ALERT_URGENT, "%s", texts[i]);
    }
}
END_TEST

START_TEST(without_trouble_told_before_few_words_are_none)
{
    static const char *const texts[] = {"al 10", "it beeps", "se me acabó una", "off again"};
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        shipped_talk_anew();
        fixture_text(stage, texts[i]);
        ck_assert_msg(stage->verdict.alert.level < ALERT_URGENT, "%s", texts[i]);
    }
}
END_TEST

START_TEST(as_good_as_empty_with_no_way_to_a_plug_is_an_emergency)
{
    static const char *const texts[] = {
        "6% left and nowhere to plug in",
        "trapped in the gondola with 7% battery",
        "the battery dies in 8 minutes and we are stuck on the pass",
        "battery 4 percent, no outlet, roads closed",
        "me queda 5% de pila y no hay donde enchufar",
        "estamos atorados en la nieve con 6% de bateria",
        "la bateria se acaba en 10 minutos y estamos varados"};
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        shipped_talk_anew();
        fixture_stranger(stage);
        fixture_text(stage, texts[i]);
        ck_assert_msg(stage->verdict.alert.level == ALERT_EMERGENCY, "%s", texts[i]);
        fixture_says(stage, "911");
        fixture_says_not(stage, "wall plug");
    }
}
END_TEST

START_TEST(with_charge_or_a_plug_at_hand_it_is_none)
{
    static const char *const texts[] = {
        "5% left but the plug is right here",
        "left at 10 min to 8, stuck in traffic",
        "what if we get stuck with 5% battery",
        "gondola takes 10 minutes, battery is full",
        "we fly out, 2 hr 5 min, then 50 min no plug. batteries full",
        "no outlet in the room, battery at 90",
        "quedan 10 minutos de pelicula, sin luz en la sala"};
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        shipped_talk_anew();
        fixture_stranger(stage);
        fixture_text(stage, texts[i]);
        ck_assert_msg(stage->verdict.alert.level < ALERT_EMERGENCY, "%s", texts[i]);
    }
}
END_TEST

int
main(void)
{
    Suite *suite = suite_create("supply gets worse");
    TCase *tests = tcase_create("supply gets worse");
    SRunner *runner = srunner_create(suite);
    int failed;

    tcase_add_unchecked_fixture(tests, shipped_begin, shipped_end);
    tcase_add_checked_fixture(tests, shipped_talk_set_up, stage_tear_down);
    tcase_set_timeout(tests, 120);
    tcase_add_test(tests, a_low_charge_while_the_power_is_out_is_the_last_battery);
    tcase_add_test(tests, a_few_percent_without_a_plug_and_a_tank_are_an_emergency);
    tcase_add_test(tests, a_tank_on_record_leaves_it_urgent);
    tcase_add_test(tests, a_unit_that_stops_once_more_is_told_anew);
    tcase_add_test(tests, a_phone_or_a_person_that_is_gone_again_is_not_the_supply);
    tcase_add_test(tests, a_needle_that_goes_to_the_end_is_told_anew);
    tcase_add_test(tests, other_things_are_not_the_supply);
    tcase_add_test(tests, after_all_is_well_small_talk_of_tomorrow_is_none);
    tcase_add_test(tests, without_trouble_told_before_few_words_are_none);
    tcase_add_test(tests, as_good_as_empty_with_no_way_to_a_plug_is_an_emergency);
    tcase_add_test(tests, with_charge_or_a_plug_at_hand_it_is_none);
    suite_add_tcase(suite, tests);
    srunner_run_all(runner, CK_ENV);
    failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed == 0 ? 0 : 1;
}
