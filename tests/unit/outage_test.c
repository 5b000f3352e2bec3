/* A mains failure as one renter tells it: where it is, and who runs out when. */
#include "fixture.h"

#include <string.h>

static struct fixture *stage;

static void
set_up(void)
{
    stage = fixture_new();
    stage->rentals[0].place = "Cabin 4, Upper Lodge";
}

static void
tear_down(void)
{
    fixture_free(stage);
}

START_TEST(a_mains_failure_is_of_the_village_of_the_address)
{
    stage->rentals[0].emergency_address = "14 Tarn Road, Upper Dorrow, Cabin 4";
    fixture_text(stage, "the power is out");
    fixture_alerts(stage, ALERT_URGENT, "sign:power-out-now");
    ck_assert_str_eq(stage->verdict.alert.area, "Upper Dorrow");
}
END_TEST

START_TEST(without_a_village_it_is_of_the_house)
{
    stage->rentals[0].emergency_address = "14 Tarn Road, Cabin 4";
    fixture_text(stage, "the power is out");
    ck_assert_str_eq(stage->verdict.alert.area, "Upper Lodge");
}
END_TEST

START_TEST(a_room_s_number_is_no_area_for_other_houses_have_it_too)
{
    stage->rentals[0].emergency_address = NULL;
    stage->rentals[0].place = "Room 7";
    fixture_text(stage, "the power is out");
    fixture_alerts(stage, ALERT_URGENT, "sign:power-out-now");
    ck_assert_ptr_null(stage->verdict.alert.area);
}
END_TEST

START_TEST(without_place_and_address_it_is_nobody_else_s)
{
    stage->rentals[0].emergency_address = NULL;
    stage->rentals[0].place = NULL;
    fixture_text(stage, "the power is out");
    ck_assert_ptr_null(stage->verdict.alert.area);
}
END_TEST

START_TEST(an_emergency_and_any_other_matter_stay_apart)
{
    fixture_text(stage, "the power is out and i have chest pain");
    fixture_alerts(stage, ALERT_EMERGENCY, "sign:chest-pain");
    ck_assert_ptr_null(stage->verdict.alert.area);
    fixture_text(stage, "i feel dizzy");
    ck_assert_ptr_null(stage->verdict.alert.area);
}
END_TEST

/* Two full batteries at continuous 2: 60 min new, measured at 100 and 90 %; 60 + 54 = 114. */
START_TEST(it_tells_when_the_batteries_end_by_the_low_end)
{
    fixture_text(stage, "2 full batteries, how long do i have");
    ck_assert_int_eq(stage->verdict.runs_out_utc_s, fixture_start_utc_s + 114 * 60);
    fixture_wait_minutes(stage, 20);
    fixture_text(stage, "the power is out");
    ck_assert_ptr_nonnull(stage->verdict.alert.area);
    ck_assert_int_eq(stage->verdict.runs_out_utc_s, fixture_start_utc_s + 114 * 60);
}
END_TEST

START_TEST(a_charge_that_is_told_with_it_counts)
{
    fixture_text(stage, "the power is out, i have 2 full batteries");
    ck_assert_ptr_nonnull(stage->verdict.alert.area);
    ck_assert_int_eq(stage->verdict.runs_out_utc_s, fixture_start_utc_s + 114 * 60);
}
END_TEST

/* Facts A4: 0.85 at 0 C; 90 x .85 = 76, x .90 for the worse of two batteries. */
START_TEST(the_cold_that_is_told_shortens_it)
{
    stage->rentals[0].unit = "wagtail";
    stage->rentals[0].orders[ACTIVITY_REST] = (struct order){true, MODE_CONTINUOUS, 10, 0, "Dr. Q"};
    stage->rentals[0].orders[ACTIVITY_WALKING].known = false;
    fixture_text(stage, "the power is out, i have one full battery, its 2 celsius here");
    ck_assert_int_eq(stage->verdict.runs_out_utc_s, fixture_start_utc_s + 68 * 60);
}
END_TEST

START_TEST(in_cold_that_the_unit_s_file_has_no_share_for_it_is_not_known)
{
    fixture_text(stage, "the power is out, i have one full battery, its 2 celsius here");
    ck_assert_ptr_nonnull(stage->verdict.alert.area);
    ck_assert_int_eq(stage->verdict.runs_out_utc_s, 0);
}
END_TEST

/* "until 8:10 pm" of a day ago would be read as today's. */
START_TEST(a_charge_that_must_have_ended_since_is_not_known)
{
    fixture_text(stage, "2 full batteries, how long do i have");
    fixture_wait_minutes(stage, 115);
    fixture_text(stage, "the power is out");
    ck_assert_ptr_nonnull(stage->verdict.alert.area);
    ck_assert_int_eq(stage->verdict.runs_out_utc_s, 0);
}
END_TEST

/* What hours left would ask about is no figure for staff either. */
START_TEST(more_batteries_than_the_record_has_do_not_count)
{
    fixture_text(stage, "the power is out, i have 5 full batteries");
    ck_assert_ptr_nonnull(stage->verdict.alert.area);
    ck_assert_int_eq(stage->verdict.runs_out_utc_s, 0);
    ck_assert(!stage->verdict.account_changed);
}
END_TEST

START_TEST(a_charge_that_is_told_with_it_is_answered_with_the_hours_of_the_low_end)
{
    fixture_text(stage, "hello"); /* the first reply of a conversation has less room */
    fixture_text(stage, "the power is out, i have 2 full batteries");
    fixture_says(stage, "Plan on 1 h 54 min, to about");
    ck_assert(stage->verdict.replies[0].holds_time);
    fixture_alerts(stage, ALERT_URGENT, "sign:power-out-now");
    fixture_text(stage, "the power is out, i have 5 full batteries");
    fixture_says_not(stage, "Plan on");
}
END_TEST

START_TEST(the_hours_are_not_said_twice)
{
    fixture_text(stage, "the power is out, 2 full. how long do i have?");
    fixture_says(stage, "Plan on 1 h 54 min, to about");
    ck_assert_ptr_null(strstr(strstr(stage->verdict.replies[0].text, "Plan on") + 1, "Plan on"));
}
END_TEST

START_TEST(on_a_setting_that_is_not_ordered_no_hours_are_said)
{
    fixture_text(stage, "the power is out, on continuous 1, 2 full");
    fixture_says_not(stage, "Plan on");
}
END_TEST

/* The unit's file: continuous 3 needs the wall. */
START_TEST(whose_order_no_battery_runs_is_sent_to_the_backup_and_to_no_battery)
{
    stage->rentals[0].orders[ACTIVITY_REST].setting_tenths = 30;
    fixture_text(stage, "the power is out, 2 full. how long do i have?");
    fixture_says(stage, "Go to your backup now: your E cylinder at the flow on its tag.");
    fixture_says(stage, "At continuous 3 no battery runs the unit.");
    fixture_says_not(stage, "on battery");
    fixture_says_not(stage, "plug it in");
    fixture_alerts(stage, ALERT_URGENT, "sign:power-out-now");
    ck_assert_int_eq(stage->verdict.runs_out_utc_s, 0);
}
END_TEST

START_TEST(who_runs_another_number_than_the_one_no_battery_runs_is_sent_there_too)
{
    stage->rentals[0].orders[ACTIVITY_REST].setting_tenths = 30;
    fixture_text(stage, "the power is out, on continuous 2, 2 full");
    fixture_says(stage, "At continuous 3 no battery runs the unit.");
}
END_TEST

START_TEST(without_a_backup_on_record_the_emergency_number_is_told)
{
    stage->rentals[0].orders[ACTIVITY_REST].setting_tenths = 30;
    stage->rentals[0].backup.known = false;
    fixture_text(stage, "the power is out, 2 full");
    fixture_says(stage, "If you have no oxygen or trouble breathing, call 911 now.");
    fixture_says_not(stage, "on battery");
}
END_TEST

START_TEST(of_whom_no_charge_is_told_that_is_not_known)
{
    fixture_text(stage, "the power is out");
    ck_assert_ptr_nonnull(stage->verdict.alert.area);
    ck_assert_int_eq(stage->verdict.runs_out_utc_s, 0);
}
END_TEST

START_TEST(a_stranger_s_is_nobody_else_s)
{
    fixture_stranger(stage);
    fixture_text(stage, "the power is out");
    ck_assert_ptr_null(stage->verdict.alert.area);
}
END_TEST

int
main(void)
{
    TCase *tests = tcase_create("outage");

    tcase_add_checked_fixture(tests, set_up, tear_down);
    tcase_add_test(tests, a_mains_failure_is_of_the_village_of_the_address);
    tcase_add_test(tests, without_a_village_it_is_of_the_house);
    tcase_add_test(tests, a_room_s_number_is_no_area_for_other_houses_have_it_too);
    tcase_add_test(tests, without_place_and_address_it_is_nobody_else_s);
    tcase_add_test(tests, an_emergency_and_any_other_matter_stay_apart);
    tcase_add_test(tests, it_tells_when_the_batteries_end_by_the_low_end);
    tcase_add_test(tests, a_charge_that_is_told_with_it_counts);
    tcase_add_test(tests, the_cold_that_is_told_shortens_it);
    tcase_add_test(tests, in_cold_that_the_unit_s_file_has_no_share_for_it_is_not_known);
    tcase_add_test(tests, a_charge_that_must_have_ended_since_is_not_known);
    tcase_add_test(tests, more_batteries_than_the_record_has_do_not_count);
    tcase_add_test(tests, a_charge_that_is_told_with_it_is_answered_with_the_hours_of_the_low_end);
    tcase_add_test(tests, the_hours_are_not_said_twice);
    tcase_add_test(tests, on_a_setting_that_is_not_ordered_no_hours_are_said);
    tcase_add_test(tests, whose_order_no_battery_runs_is_sent_to_the_backup_and_to_no_battery);
    tcase_add_test(tests, who_runs_another_number_than_the_one_no_battery_runs_is_sent_there_too);
    tcase_add_test(tests, without_a_backup_on_record_the_emergency_number_is_told);
    tcase_add_test(tests, of_whom_no_charge_is_told_that_is_not_known);
    tcase_add_test(tests, a_stranger_s_is_nobody_else_s);
    return fixture_run(tests);
}
