/* Trips told by text: whether the batteries last, where they run short, who is called. */
#include "stage.h"

#include <string.h>

#include "cold.h"
#include "trip_plan.h"

static const struct estimate *
estimate(void)
{
    return stage_estimate("drive-trip", ESTIMATE_TRIP);
}

/* Ana at rest: continuous 2, 60 min new, healths 90 and 100: 54 + 60. */
START_TEST(a_trip_that_lasts_is_said_with_what_is_left)
{
    fixture_text(stage,
                 "taxi 30 min, wait 20 min at the clinic, taxi 30 min, no outlets. 2 full. ok?");
    ck_assert(estimate()->trip->lasts);
    ck_assert_int_eq(estimate()->trip->total_minutes, 80);
    ck_assert_int_eq(estimate()->trip->margin_minutes, 34);
    fixture_says(stage, "By the low count the batteries last those 1 h 20 min, with about 34 min");
    fixture_says(stage, "I read: 100%, 100%, drive 30 min, stay 20 min, drive 30 min.");
    fixture_alerts(stage, ALERT_NONE, NULL);
}
END_TEST

START_TEST(where_it_runs_short_and_what_would_mend_it_is_said_and_staff_are_called)
{
    fixture_text(stage,
                 "taxi 40 min, 1 hr in the waiting room, taxi 40 min, no outlets. 2 full. ok?");
    ck_assert(!estimate()->trip->lasts);
    ck_assert_int_eq(estimate()->minutes.low, 114);
    ck_assert_int_eq(estimate()->trip->short_minutes, 140 - 114);
    ck_assert_str_eq(estimate()->trip->mend, "car-cord");
    fixture_says(stage, "counted low, empty after 1 h 54 min (drive), 26 min short.");
    fixture_says(stage, "The car's outlet while you drive would be enough.");
    fixture_says(stage, "staff will call you.");
    fixture_alerts(stage, ALERT_URGENT, "power:trip-short");
}
END_TEST

START_TEST(what_starts_tomorrow_night_waits_for_the_office)
{
    fixture_text(stage, "hello"); /* the first reply of a conversation has less room */
    fixture_text(stage,
                 "we leave tomorrow at 9:15pm, 4 h drive on a bus without power. 2 full. enough");
    fixture_says(stage, "That is about 11:09 pm.");
    fixture_alerts(stage, ALERT_OFFICE, "power:trip-short");
}
END_TEST

START_TEST(a_hike_counts_with_the_order_for_walking)
{
    fixture_text(stage, "can I do a 2 hour walk with one full battery");
    ck_assert(estimate()->trip->lasts); /* pulse 3: 150 x .90 = 135 */
    ck_assert_int_eq(estimate()->activity, ACTIVITY_WALKING);
    ck_assert_int_eq(estimate()->setting_tenths, 30);
}
END_TEST

/* Ana with a Wagtail, which charges while it runs: continuous 1, 90 min new, 81 and 90 here. */
static void
with_a_unit_that_charges_on_the_way(void)
{
    fixture_text(stage, "hello"); /* the first reply of a conversation has less room */
    stage->rentals[0].unit = "wagtail";
    stage->rentals[0].orders[ACTIVITY_REST].setting_tenths = 10;
}

/* 171 - 110 = 61, of which 28 are to be kept; after a night at the wall all is full again. */
START_TEST(what_is_charged_after_the_tightest_stretch_is_not_told_as_left)
{
    with_a_unit_that_charges_on_the_way();
    fixture_text(stage, "bus 110 min, then 14 hours at the hotel plugged in the wall, 2 full. ok?");
    ck_assert(estimate()->trip->lasts);
    ck_assert_int_eq(estimate()->trip->margin_minutes, 171);
    fixture_says(
        stage, "the batteries last those 15 h 50 min, with about 1 h 1 min left at the tightest.");
    fixture_says_not(stage, "2 h 51");
}
END_TEST

START_TEST(a_stretch_that_is_too_tight_is_not_said_to_be_the_end)
{
    with_a_unit_that_charges_on_the_way();
    fixture_text(stage, "bus 160 min, then 14 hours at the hotel plugged in the wall, 2 full. ok?");
    ck_assert(estimate()->trip->lasts);
    fixture_says(stage, "Too tight: counted low, the batteries last those 16 h 40 min, but at the "
                        "tightest with only about 11 min left.");
}
END_TEST

/* 15 of the 135 minutes at pulse 3 are left: at rest, continuous 2, 54 x 15 / 135 = 6. */
START_TEST(what_is_left_counts_with_the_order_for_rest_if_that_drains_more)
{
    fixture_text(stage, "hello"); /* the first reply of a conversation has less room */
    fixture_text(stage, "can I do a 2 hour walk with one full battery");
    ck_assert_int_eq(estimate()->trip->margin_minutes, 6);
    fixture_says(
        stage, "Too tight: counted low, the batteries last those 2 h with only about 6 min left.");
    fixture_says_not(stage, "By the low count");
    /* 30 min of 2 h 30 are 20 % */
    fixture_says(stage, "keep 30 min in hand. 1 more full battery would be enough.");
    ck_assert_str_eq(estimate()->trip->mend, "one-battery");
    fixture_says(stage, "What is left is counted with continuous 2, ordered at rest.");
    fixture_says(stage, "Counted with pulse 3, ordered for walking.");
}
END_TEST

START_TEST(a_trip_that_ends_with_less_than_the_reserve_is_too_tight_and_what_mends_it_is_said)
{
    fixture_text(stage, "hello");
    fixture_text(stage, "taxi 50 min, wait 10 min, taxi 50 min, no outlets. 2 full. ok?");
    ck_assert_int_eq(estimate()->trip->margin_minutes, 4);
    fixture_says(stage, "Too tight: counted low, the batteries last those 1 h 50 min with only "
                        "about 4 min left. Delays happen: keep 28 min in hand. The car's outlet "
                        "while you drive would be enough.");
    ck_assert_int_eq(stage->verdict.alert.level, ALERT_NONE);
}
END_TEST

START_TEST(each_order_that_a_leg_was_counted_with_is_named)
{
    fixture_text(stage, "hello");
    fixture_text(stage, "drive 30 min, then walk 30 min, 2 full, ok?");
    fixture_says(stage, "Counted with continuous 2, ordered at rest, and pulse 3 for walking.");
}
END_TEST

START_TEST(what_is_left_counts_with_the_last_leg_if_that_drains_more)
{
    stage->rentals[0].orders[ACTIVITY_REST] = stage->rentals[0].orders[ACTIVITY_WALKING];
    stage->rentals[0].orders[ACTIVITY_WALKING] = (struct order){true, MODE_CONTINUOUS, 20, 0, "Q"};
    fixture_text(stage, "drive 30 min, then walk 30 min, 2 full, ok?");
    ck_assert(estimate()->trip->lasts); /* 12 min of 54 go to pulse 3's 30 of 135; 42 + 60 - 30 */
    ck_assert_int_eq(estimate()->trip->margin_minutes, 72);
    fixture_says(stage, "Counted with continuous 2, ordered for walking, and pulse 3 at rest.");
    fixture_says_not(stage, "What is left is counted with");
}
END_TEST

START_TEST(of_what_no_battery_runs_at_rest_nothing_is_said_to_be_left)
{
    stage->rentals[0].orders[ACTIVITY_REST] = (struct order){true, MODE_CONTINUOUS, 95, 0, "Q"};
    fixture_text(stage, "can I do a 2 hour walk with one full battery");
    ck_assert(estimate()->trip->lasts);
    ck_assert_int_eq(estimate()->trip->margin_minutes, 0);
    fixture_says(stage, "and no more.");
}
END_TEST

START_TEST(without_an_order_for_walking_a_person_answers)
{
    stage->rentals[0].orders[ACTIVITY_WALKING].known = false;
    fixture_text(stage, "can I do a 2 hour walk with one full battery");
    ck_assert_ptr_null(fixture_answer(stage, "drive-trip")->estimate);
    fixture_alerts(stage, ALERT_URGENT, "power:no-figure");
    fixture_says_not(stage, "last");
}
END_TEST

START_TEST(a_setting_that_differs_is_counted_and_called)
{
    fixture_text(stage, "can I do a 2 hour walk with one full battery on pulse 2");
    ck_assert_int_eq(estimate()->setting_tenths, 20);
    fixture_says(stage, "Our record says pulse 3 for walking; please don't change it");
    fixture_alerts(stage, ALERT_URGENT, "power:differs");
}
END_TEST

START_TEST(a_car_counts_only_with_a_cord_on_record)
{
    fixture_text(stage, "3 hour drive plugged into the car the whole way. battery at 80. ok?");
    ck_assert(estimate()->trip->lasts);
    fixture_says(stage, "I read: 80%, drive 3 h on the car cord.");
    stage->rentals[0].car_charger = false;
    fixture_text(stage, "3 hour drive plugged into the car the whole way. battery at 80. ok?");
    ck_assert(!estimate()->trip->lasts);
    fixture_says(stage, "our record has no car cord for you");
}
END_TEST

START_TEST(seat_power_on_a_train_is_none)
{
    fixture_text(stage, "Train is 3h20 with an outlet at the seat. 2 batteries at 60. safe?");
    ck_assert(!estimate()->trip->lasts);
}
END_TEST

START_TEST(a_charge_that_is_not_told_is_asked_for_and_then_worked_out)
{
    fixture_text(stage, "I have 1 battery and a 4 hr drive with no car charger. will it do");
    ck_assert_ptr_nonnull(fixture_answer(stage, "which-charge"));
    ck_assert_int_eq(stage->verdict.conversation.question, QUESTION_WHICH_CHARGE);
    fixture_text(stage, "its full");
    ck_assert_int_eq(estimate()->trip->total_minutes, 240);
}
END_TEST

START_TEST(a_length_that_is_not_told_is_asked_for)
{
    fixture_text(stage, "whole day out on the road w 1 full 1 half, does that do it");
    ck_assert_ptr_nonnull(fixture_answer(stage, "which-legs"));
    fixture_says(stage, "How long is each part of the trip");
}
END_TEST

START_TEST(how_many_are_needed_starts_from_those_on_record_all_full)
{
    fixture_text(stage, "how many batteries do i need for a 2 and a half hour bus ride");
    fixture_says(stage, "Counted with 2 full batteries");
    ck_assert_str_eq(estimate()->trip->mend, "car-cord");
    fixture_alerts(stage, ALERT_OFFICE, "power:trip-short");
}
END_TEST

START_TEST(a_length_that_no_trip_has_is_asked_for_again)
{
    fixture_text(stage, "drive of 900000 hours, 2 full, will it last");
    ck_assert_ptr_null(fixture_answer(stage, "drive-trip"));
}
END_TEST

/* ---- the plan -------------------------------------------------------------------------------- */

static struct equipment
cold_unit(void)
{
    static const struct cold_step steps[] = {{20, 100}, {0, 85}, {-10, 70}, {-20, 50}};

    return (struct equipment){.cold = steps, .cold_count = 4};
}

/* The planning factors of facts A4 (common practice): +20 C 1.00, 0 C 0.85, -10 C 0.70, -20 C 0.50;
 * between two of them the colder one's. */
START_TEST(cold_takes_its_share_and_beyond_the_table_no_number_is_made_up)
{
    const struct equipment unit = cold_unit();
    int percent = 0;

    ck_assert(cold_share(&unit, 25, &percent));
    ck_assert_int_eq(percent, 100);
    ck_assert(cold_share(&unit, 19, &percent));
    ck_assert_int_eq(percent, 85);
    ck_assert(cold_share(&unit, 0, &percent));
    ck_assert_int_eq(percent, 85);
    ck_assert(cold_share(&unit, -1, &percent));
    ck_assert_int_eq(percent, 70);
    ck_assert(!cold_share(&unit, -21, &percent));
}
END_TEST

static struct told
one_leg(int minutes, enum leg_kind kind, enum power_source power)
{
    struct told told = {.kind = TOLD_TRIP, .leg_count = 1};

    told.legs[0] = (struct told_leg){minutes, kind, power};
    return told;
}

static struct trip_outcome
outcome_of(const struct told *told, const struct percent *charges, size_t count)
{
    const struct rental *ana = &stage->rentals[0];
    struct trip_outcome outcome;
    struct trip_plan plan;

    ck_assert_int_eq(trip_plan_make(ana, kb_equipment(stage->kb, ana->unit), told, charges, count,
                                    fixture_start_utc_s, TRIP_PLAN_LOW, &plan),
                     TRIP_PLAN_READY);
    trip_play(&plan.trip, &outcome);
    return outcome;
}

START_TEST(more_charge_never_ends_sooner_also_with_the_records_batteries)
{
    int first, second, last;

    for (first = 0; first <= 100; first += 10) {
        for (second = 0, last = -1; second <= 100; second++) {
            const struct told told = one_leg(600, LEG_DRIVE, POWER_SOURCE_NONE);
            const struct percent charges[] = {{first, first}, {second, second}};
            struct trip_outcome outcome = outcome_of(&told, charges, 2);

            ck_assert_int_ge(outcome.runs_out_at, last);
            last = outcome.runs_out_at;
        }
    }
}
END_TEST

/* Full ones with the weak battery first: 90 % of the fullest, 100 % of the other. */
START_TEST(nobody_knows_which_battery_is_which_so_the_fullest_is_the_weakest)
{
    const struct told told = one_leg(600, LEG_DRIVE, POWER_SOURCE_NONE);
    const struct percent charges[] = {{50, 50}, {100, 100}};

    ck_assert_int_eq(outcome_of(&told, charges, 2).runs_out_at, 54 + 30);
}
END_TEST

START_TEST(from_a_phone_that_we_do_not_know_a_person_answers)
{
    fixture_stranger(stage);
    fixture_text(stage, "bus 3 hours, 2 full, does it last");
    fixture_says(stage, "I can't find your rental under this number");
    fixture_alerts(stage, ALERT_OFFICE, "power:no-record");
}
END_TEST

/* The airline's time was asked for; a bus has none. */
START_TEST(a_trip_by_land_is_no_answer_about_a_flight)
{
    fixture_text(stage, "flight of 4 hours, how many batteries?");
    fixture_text(stage, "bus 1 hour, 2 full, does it last");
    ck_assert_ptr_null(fixture_answer(stage, "fly"));
    fixture_says_not(stage, "airline");
    fixture_says(stage, "1 h");
}
END_TEST

int
main(void)
{
    TCase *tests = tcase_create("trip_answer");

    tcase_add_checked_fixture(tests, stage_set_up, stage_tear_down);
    tcase_add_test(tests, a_trip_that_lasts_is_said_with_what_is_left);
    tcase_add_test(tests, from_a_phone_that_we_do_not_know_a_person_answers);
    tcase_add_test(tests, a_trip_by_land_is_no_answer_about_a_flight);
    tcase_add_test(tests, where_it_runs_short_and_what_would_mend_it_is_said_and_staff_are_called);
    tcase_add_test(tests, what_starts_tomorrow_night_waits_for_the_office);
    tcase_add_test(tests, a_hike_counts_with_the_order_for_walking);
    tcase_add_test(tests, what_is_left_counts_with_the_order_for_rest_if_that_drains_more);
    tcase_add_test(
        tests, a_trip_that_ends_with_less_than_the_reserve_is_too_tight_and_what_mends_it_is_said);
    tcase_add_test(tests, what_is_charged_after_the_tightest_stretch_is_not_told_as_left);
    tcase_add_test(tests, a_stretch_that_is_too_tight_is_not_said_to_be_the_end);
    tcase_add_test(tests, each_order_that_a_leg_was_counted_with_is_named);
    tcase_add_test(tests, what_is_left_counts_with_the_last_leg_if_that_drains_more);
    tcase_add_test(tests, of_what_no_battery_runs_at_rest_nothing_is_said_to_be_left);
    tcase_add_test(tests, without_an_order_for_walking_a_person_answers);
    tcase_add_test(tests, a_setting_that_differs_is_counted_and_called);
    tcase_add_test(tests, a_car_counts_only_with_a_cord_on_record);
    tcase_add_test(tests, seat_power_on_a_train_is_none);
    tcase_add_test(tests, a_charge_that_is_not_told_is_asked_for_and_then_worked_out);
    tcase_add_test(tests, a_length_that_is_not_told_is_asked_for);
    tcase_add_test(tests, how_many_are_needed_starts_from_those_on_record_all_full);
    tcase_add_test(tests, a_length_that_no_trip_has_is_asked_for_again);
    tcase_add_test(tests, cold_takes_its_share_and_beyond_the_table_no_number_is_made_up);
    tcase_add_test(tests, more_charge_never_ends_sooner_also_with_the_records_batteries);
    tcase_add_test(tests, nobody_knows_which_battery_is_which_so_the_fullest_is_the_weakest);
    return fixture_run(tests);
}
