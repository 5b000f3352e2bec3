/*
 * 14 CFR 382.133(h)(2): batteries for 150 % of the expected maximum flight duration, which is gate
 * to gate (382.3), by the maker's estimate. 49 CFR 175.10(a)(18): over 100 Wh two spares at most.
 */
#include "stage.h"

static void
set_up(void)
{
    stage_set_up();
    /* Ana flies on pulse 3: 150 to 180 minutes, health 90 and 100, 95 Wh. */
    stage->rentals[0].orders[ACTIVITY_FLIGHT] = (struct order){true, MODE_PULSE, 30, 0, "Dr. Q"};
}

static const struct estimate *
estimate(void)
{
    return stage_estimate("fly", ESTIMATE_FLIGHT);
}

START_TEST(half_again_of_gate_to_gate_and_whole_batteries)
{
    fixture_text(stage, "flight is 4 h 30 gate to gate, how many batteries?");
    ck_assert_int_eq(estimate()->minutes.low,
                     405); /* 6 h 45, table of 14 CFR's 150 % in facts A3 */
    /* 150 + 135 of hers are 285; one more, at the retirement limit of 80 %, is 120: 405 */
    ck_assert_int_eq(estimate()->batteries, 3);
    fixture_says(stage, "4 h 30 min gate to gate: airlines may want 6 h 45 min of battery "
                        "(150%): 3 full at pulse 3, ordered for flying.");
    fixture_says(stage, "You have 2: 1 more needed.");
    fixture_says(stage, "in the cabin, terminals covered");
    fixture_says(stage, "48 h ahead");
    fixture_alerts(stage, ALERT_OFFICE, "office:extra-battery");
    ck_assert_str_eq(stage->verdict.alert.brief, "flight: 1 more battery");
}
END_TEST

START_TEST(a_short_flight_needs_no_more_than_they_have)
{
    fixture_text(stage, "flight is 2 h gate to gate, how many batteries?");
    ck_assert_int_eq(estimate()->minutes.high, 180);
    ck_assert_int_eq(estimate()->batteries, 2);
    fixture_says(stage, "You have 2.");
    ck_assert_int_eq(stage->verdict.alert.level, ALERT_NONE);
    ck_assert_int_eq(stage->verdict.route, ROUTE_ANSWER);
}
END_TEST

START_TEST(the_half_again_is_of_each_flight_and_the_ground_counts_once)
{
    fixture_text(stage, "two flights gate to gate, first 1 hr 5 then 2h50, 90 min layover. how "
                        "many batteries");
    ck_assert_int_eq(estimate()->minutes.low, 98 + 255 + 90); /* 97.5 rounded up */
    fixture_says(stage, "That has 1 h 30 min on the ground.");
}
END_TEST

START_TEST(time_in_the_air_is_only_the_least)
{
    fixture_text(stage, "flight is 3h40 in the air. how many batteries");
    ck_assert_ptr_null(fixture_answer(stage, "fly")->estimate);
    fixture_says(stage, "Time in the air is only the least");
    fixture_says(stage, "Ask the airline for the longest gate-to-gate time");
    fixture_text(stage, "4 h 20");
    ck_assert_int_eq(estimate()->minutes.low, 390);
}
END_TEST

START_TEST(a_time_that_may_be_the_airlines_is_asked_about)
{
    fixture_text(stage, "we have a 2h flight, how many batteries");
    fixture_says(stage, "Is that the airline's own gate-to-gate time?");
    fixture_text(stage, "yes");
    ck_assert_int_eq(estimate()->minutes.low, 180);
}
END_TEST

START_TEST(how_long_it_is_is_asked)
{
    fixture_text(stage, "how many batteries do i need to fly");
    ck_assert_str_eq(fixture_answer(stage, "fly")->topic, "fly");
    fixture_text(stage, "gate to gate 2 hours");
    ck_assert_int_eq(estimate()->minutes.low, 180);
}
END_TEST

START_TEST(over_100_watt_hours_two_spares_are_the_most)
{
    stage->rentals[0].unit = "wagtail"; /* 120 Wh; pulse 2, 150 to 180 by the maker */
    stage->rentals[0].orders[ACTIVITY_FLIGHT].setting_tenths = 20;
    fixture_text(stage, "flight is 7 h 40 gate to gate, how many batteries?");
    /* 690 min; 150 + 135, then ones of 112: 6. By the maker's 150 each it were 5 (facts A3). */
    ck_assert_int_eq(estimate()->batteries, 6);
    fixture_says(stage, "if the airline approves, 2 spares, 3 in all");
    fixture_says(stage, "These batteries can't do it");
    fixture_alerts(stage, ALERT_OFFICE, "power:flight-cant-be-done");
    fixture_text(stage, "flight today is 7 h 40 gate to gate, how many batteries?");
    fixture_alerts(stage, ALERT_URGENT, "power:flight-cant-be-done");
}
END_TEST

START_TEST(without_an_order_for_flying_staff_call)
{
    stage->rentals[0].orders[ACTIVITY_FLIGHT].known = false;
    fixture_text(stage, "flight is 4 h 30 gate to gate, how many batteries?");
    fixture_alerts(stage, ALERT_OFFICE, "power:no-flight-order");
    fixture_says(stage, "6 h 45 min of battery (150%)");
    fixture_says_not(stage, "full batteries at");
}
END_TEST

START_TEST(it_is_counted_as_ordered_whatever_else_they_name)
{
    fixture_text(stage, "flight is 2 h gate to gate, how many batteries on pulse 2?");
    fixture_says(stage, "at pulse 3, ordered for flying");
    fixture_says(stage, "please don't change it unless your prescriber says so");
    fixture_alerts(stage, ALERT_OFFICE, "power:differs");
}
END_TEST

START_TEST(in_spanish_too)
{
    stage->rentals[0].language = LANGUAGE_ES;
    fixture_text(stage, "vuelo de 4 horas y media de puerta a puerta, cuantas baterias necesito?");
    fixture_says(stage, "4 h 30 min de vuelo en total: la aerolinea puede pedir 6 h 45 min (150%): "
                        "3 llenas con pulso 3");
}
END_TEST

/* "De puerta a puerta" would be from home to home. */
START_TEST(in_spanish_the_whole_time_is_asked_for_in_plain_words_and_so_answered)
{
    stage->rentals[0].language = LANGUAGE_ES;
    fixture_text(stage, "cuantas baterias necesito para el vuelo?");
    fixture_says(stage, "\"en total 4 h 30\"");
    fixture_says_not(stage, "puerta a puerta");
    fixture_text(stage, "en total 4 h 30");
    ck_assert_int_eq(estimate()->minutes.low, 405);
    fixture_text(stage, "vuelo de 2 horas, cuantas baterias necesito?");
    fixture_says(stage, "\"en total 4 h 30\"");
    fixture_says_not(stage, "puerta a puerta");
    fixture_text(stage, "en total 2 h 20");
    ck_assert_int_eq(estimate()->minutes.low, 210);
}
END_TEST

START_TEST(the_watt_hours_that_an_airline_asks_for_are_those_of_the_units_file)
{
    fixture_text(stage, "how many watt hours");
    fixture_says(stage, "One battery, as printed on it: Finch 95 Wh. 100 Wh or less may fly");
    fixture_stranger(stage);
    fixture_text(stage, "airline wants to know the watt hours of the battery");
    fixture_says(stage, "Finch 95 Wh, Wagtail 120 Wh. Call the airline");
    fixture_says_not(stage, "without the airline's approval");
}
END_TEST

START_TEST(a_flight_time_that_is_told_is_not_asked_for_again)
{
    fixture_text(stage, "can i fly with this thing? its a 4 hr flight to my sister");
    fixture_says(stage, "I read: flight 4 h. Is that the airline's own gate-to-gate time?");
    fixture_stranger(stage);
    fixture_text(stage, "4 hr flight how many batteries");
    fixture_says(stage, "If the airline's gate-to-gate time is 4 h, it may want 6 h of battery");
}
END_TEST

int
main(void)
{
    TCase *tests = tcase_create("fly");

    tcase_add_checked_fixture(tests, set_up, stage_tear_down);
    tcase_add_test(tests, half_again_of_gate_to_gate_and_whole_batteries);
    tcase_add_test(tests, a_short_flight_needs_no_more_than_they_have);
    tcase_add_test(tests, the_half_again_is_of_each_flight_and_the_ground_counts_once);
    tcase_add_test(tests, time_in_the_air_is_only_the_least);
    tcase_add_test(tests, a_time_that_may_be_the_airlines_is_asked_about);
    tcase_add_test(tests, how_long_it_is_is_asked);
    tcase_add_test(tests, over_100_watt_hours_two_spares_are_the_most);
    tcase_add_test(tests, without_an_order_for_flying_staff_call);
    tcase_add_test(tests, it_is_counted_as_ordered_whatever_else_they_name);
    tcase_add_test(tests, in_spanish_too);
    tcase_add_test(tests, in_spanish_the_whole_time_is_asked_for_in_plain_words_and_so_answered);
    tcase_add_test(tests, the_watt_hours_that_an_airline_asks_for_are_those_of_the_units_file);
    tcase_add_test(tests, a_flight_time_that_is_told_is_not_asked_for_again);
    return fixture_run(tests);
}
