/*
 * Ana's Finch takes 90 W at continuous 2 and does not charge while it runs; the Wagtail takes 60 W
 * at continuous 1 and 32 W more to charge (96 Wh in 3 h at the least). A source is rated 1.25 x
 * that (facts A5).
 */
#include <string.h>

#include "memory.h"
#include "stage.h"
#include "watts.h"

static struct watts_told
read_watts(const char *text)
{
    struct watts_told told;
    struct tokens tokens = tokens_read(stage->arena, text);

    watts_read(&tokens, &told);
    return told;
}

START_TEST(watts_and_watt_hours_are_read_however_they_are_written)
{
    ck_assert_int_eq(read_watts("a 300W inverter").watts, 300);
    ck_assert_int_eq(read_watts("inversor de 1.000 vatios").watts, 1000);
    ck_assert_int_eq(read_watts("two thousand watt generator").watts, 2000);
    ck_assert_int_eq(read_watts("it does 1.5 kW").watts, 1500);
    ck_assert_int_eq(read_watts("500 watt hours").tenths_wh, 5000);
    ck_assert_int_eq(read_watts("500 watt-hours").watts, 0);
    ck_assert_int_eq(read_watts("1 kwh").tenths_wh, 10000);
    ck_assert_int_eq(read_watts("bateria de 300 vatios hora").tenths_wh, 3000);
    ck_assert_int_eq(read_watts("100 ah at 12 v").tenths_wh, 12000);
    ck_assert_int_eq(read_watts("room 300, 2 lights").watts, 0);
}
END_TEST

/* Facts A3: Wh = V x Ah, mAh / 1000 first; the Wh of the label count before what is computed. */
START_TEST(amp_hours_need_their_volts)
{
    ck_assert_int_eq(read_watts("20,000 mAh 3.7V").tenths_wh, 740);
    ck_assert_int_eq(read_watts("14.4 V 3250 mAh").tenths_wh, 468);
    ck_assert_int_eq(read_watts("20000 mAh, 72 Wh on the label, 3.7 V").tenths_wh, 720);
    ck_assert_int_eq(read_watts("20000 mAh").tenths_wh, 0);
    ck_assert(read_watts("20000 mAh").lacks_volts);
}
END_TEST

START_TEST(a_number_without_thousands_has_none_and_no_number_is_too_large)
{
    ck_assert_int_eq(read_watts("0.500 kWh").tenths_wh, 5000);
    ck_assert_int_eq(read_watts("100 ah at 12.800 V").tenths_wh, 12800);
    ck_assert_int_eq(read_watts("999999.000 V 999999.000 ah").tenths_wh, 1000000);
    ck_assert_int_eq(read_watts("999999999 V 999999999.000 mah").tenths_wh, 1000000);
}
END_TEST

START_TEST(of_several_watts_the_least_counts_and_a_peak_only_alone)
{
    ck_assert_int_eq(read_watts("600 W peak, 300 W continuous").watts, 300);
    ck_assert_int_eq(read_watts("300 to 400 W or 500 W").watts, 400);
    ck_assert_int_eq(read_watts("600 W peak").watts, 600);
}
END_TEST

START_TEST(watts_needed_are_held_against_watts_there)
{
    fixture_text(stage, "will a 110 W inverter run the machine?");
    fixture_says(stage, "At continuous 2 the unit takes up to 90 W");
    fixture_says(stage, "a source of 113 W or more"); /* 112.5 */
    fixture_says(stage, "110 W is too little");
    fixture_says(stage, "Pure sine wave only; at 12 volts with a fuse of 12 A or more.");
    fixture_says(stage, "Ask us at 208-555-0100");
    ck_assert_str_eq(fixture_answer(stage, "power-source")->topic, "power-source");
    fixture_text(stage, "will a 113 W inverter run the machine?");
    fixture_says(stage, "113 W covers that.");
}
END_TEST

START_TEST(a_peak_alone_is_never_enough_but_may_be_too_small)
{
    fixture_text(stage, "will a 600 W peak inverter run the machine?");
    fixture_says(stage, "a source of 113 W or more");
    fixture_says_not(stage, "covers");
    fixture_text(stage, "will a 90 W peak inverter run the machine?");
    fixture_says(stage, "90 W is too little");
    fixture_says_not(stage, "covers");
}
END_TEST

START_TEST(charging_while_it_runs_counts_with_it)
{
    stage->rentals[0].unit = "wagtail";
    stage->rentals[0].orders[ACTIVITY_REST] = (struct order){true, MODE_CONTINUOUS, 10, 0, "Dr. Q"};
    stage->rentals[0].orders[ACTIVITY_WALKING].known = false;
    fixture_text(stage, "is a 100 watt generator enough");
    fixture_says(stage, "takes up to 92 W, charging too: it needs a source of 115 W or more.");
    fixture_says(stage, "Outdoors only, far from windows");
}
END_TEST

START_TEST(a_power_station_lasts_by_its_watt_hours)
{
    fixture_text(stage, "how long does a 500 Wh power station with 300 W go");
    fixture_says(stage, "Plan on 4 h 15 min from its 500 Wh"); /* 500 x .9 x .85 / 90 h */
    fixture_text(stage, "how long does a 500 Wh power station with 100 W go");
    fixture_says(stage, "100 W is too little");
    fixture_says_not(stage, "Plan on");
}
END_TEST

START_TEST(what_a_power_bank_holds_is_asked_and_then_worked_out)
{
    fixture_text(stage, "can i use a power bank of 20000 mah");
    fixture_says(stage, "By USB it can't.");
    ck_assert_int_eq(stage->verdict.answers[0].kind, ANSWER_ASK);
    fixture_text(stage, "300 w, 200 wh");
    fixture_says(stage, "300 W covers that. Plan on 1 h 42 min from its 200 Wh");
    ck_assert_int_eq(stage->context.conversation.question, QUESTION_NONE);
}
END_TEST

START_TEST(without_an_outlet_it_cannot_feed_the_unit_and_nobody_is_called)
{
    fixture_text(stage, "can i use a power bank of 20000 mah");
    fixture_text(stage, "74 wh, no outlet");
    fixture_says(stage, "Then it can't feed the unit");
    fixture_alerts(stage, ALERT_NONE, NULL);
}
END_TEST

/* 49 CFR 175.10: a power bank counts as a spare battery; over 160 Wh it stays behind. */
START_TEST(on_a_plane_a_power_bank_is_a_spare_battery)
{
    fixture_text(stage, "may i bring a power bank of 74 wh with 100 w on the plane for it");
    fixture_says(stage, "On a plane it is a spare");
    fixture_text(stage, "may i bring a power station of 300 wh with 300 w on the plane for it");
    fixture_says(stage, "Over 160 Wh it may not go on a plane.");
}
END_TEST

START_TEST(seat_power_counts_as_nothing_whatever_it_gives)
{
    fixture_text(stage, "the seat power on the plane has 200 watts, is that enough?");
    fixture_says(stage, "Count seat power as nothing");
    fixture_says_not(stage, "covers");
}
END_TEST

START_TEST(what_the_file_does_not_tell_goes_to_a_person)
{
    stage->rentals[0].orders[ACTIVITY_REST].setting_tenths = 15;
    fixture_text(stage, "will a 300 W inverter run the machine?");
    fixture_alerts(stage, ALERT_OFFICE, "power:no-source-figure");
    fixture_says_not(stage, "covers");
    stage->rentals[0].orders[ACTIVITY_REST].setting_tenths = 30;
    fixture_text(stage, "will a 500 W inverter run the machine?");
    fixture_says(stage, "runs only from the wall");
}
END_TEST

START_TEST(a_stranger_gets_no_figures)
{
    fixture_stranger(stage);
    fixture_text(stage, "will a 300 W inverter run the machine?");
    ck_assert_ptr_null(fixture_answer(stage, "power-source"));
}
END_TEST

START_TEST(in_spanish_too)
{
    stage->rentals[0].language = LANGUAGE_ES;
    fixture_text(stage, "sirve un generador de 1.000 vatios para el equipo?");
    fixture_says(stage, "la fuente debe dar 113 W o mas. 1000 W alcanza. Solo afuera");
    fixture_text(stage, "puedo usar el enchufe del asiento en el avion?");
    fixture_says(stage, "Cuente la toma del asiento como nada");
}
END_TEST

int
main(void)
{
    TCase *tests = tcase_create("other_power");

    tcase_add_checked_fixture(tests, stage_set_up, stage_tear_down);
    tcase_add_test(tests, watts_and_watt_hours_are_read_however_they_are_written);
    tcase_add_test(tests, amp_hours_need_their_volts);
    tcase_add_test(tests, a_number_without_thousands_has_none_and_no_number_is_too_large);
    tcase_add_test(tests, of_several_watts_the_least_counts_and_a_peak_only_alone);
    tcase_add_test(tests, watts_needed_are_held_against_watts_there);
    tcase_add_test(tests, a_peak_alone_is_never_enough_but_may_be_too_small);
    tcase_add_test(tests, charging_while_it_runs_counts_with_it);
    tcase_add_test(tests, a_power_station_lasts_by_its_watt_hours);
    tcase_add_test(tests, what_a_power_bank_holds_is_asked_and_then_worked_out);
    tcase_add_test(tests, without_an_outlet_it_cannot_feed_the_unit_and_nobody_is_called);
    tcase_add_test(tests, on_a_plane_a_power_bank_is_a_spare_battery);
    tcase_add_test(tests, seat_power_counts_as_nothing_whatever_it_gives);
    tcase_add_test(tests, what_the_file_does_not_tell_goes_to_a_person);
    tcase_add_test(tests, a_stranger_gets_no_figures);
    tcase_add_test(tests, in_spanish_too);
    return fixture_run(tests);
}
