#include "fixture.h"

#include <string.h>

static struct fixture *stage;

static void
set_up(void)
{
    stage = fixture_new();
}

static void
tear_down(void)
{
    fixture_free(stage);
}

static const struct estimate *
estimate_of(const char *id)
{
    const struct answer *answer = fixture_answer(stage, id);

    ck_assert_ptr_nonnull(answer);
    ck_assert_ptr_nonnull(answer->estimate);
    return answer->estimate;
}

/* Ana at rest: continuous 2, 60 to 72 minutes new; health 90 and 100. Low: the full ones are the
 * weak one and a battery at the limit; here two batteries are told, so 90 and 100. */
START_TEST(two_full_batteries_lead_with_one_planning_figure)
{
    const struct estimate *estimate;

    fixture_text(stage, "2 full batteries how long do i have left");
    estimate = estimate_of("hours-left");
    ck_assert_int_eq(estimate->minutes.low, 54 + 60);
    ck_assert_int_eq(estimate->minutes.high, 72 + 65); /* 64.8 rounded up */
    /* 11:15 + 1 h 54 = 1:09 pm; a fifth of it, 23 min, is kept in hand */
    fixture_says(stage, "Plan on 1 h 54 min, to about 1:09 pm. Be at a plug by 12:46 pm.");
    fixture_says(stage, "It may last up to 2 h 17 min.");
    fixture_says(stage, "continuous 2, ordered at rest");
    ck_assert(stage->verdict.replies[0].holds_time);
    ck_assert_int_eq(stage->verdict.alert.level, ALERT_NONE);
    ck_assert_str_eq(stage->verdict.rental_id, "R-1");
}
END_TEST

START_TEST(one_light_is_said_as_one)
{
    fixture_text(stage, "1 light left");
    fixture_says(stage, "I read: 1 light.");
}
END_TEST

START_TEST(lights_are_the_band_of_the_equipment_file)
{
    fixture_text(stage, "how long have i got left with 2 lights");
    ck_assert_int_eq(estimate_of("hours-left")->minutes.low, 13);  /* 60 x .90 x .25 = 13.5 */
    ck_assert_int_eq(estimate_of("hours-left")->minutes.high, 36); /* 72 x 1.00 x .50 */
}
END_TEST

START_TEST(an_empty_battery_is_no_time_at_all)
{
    fixture_text(stage, "how long have i got left, its at 0%");
    fixture_says(stage, "Be at a plug now");
    fixture_says_not(stage, "Plan on 0");
    fixture_alerts(stage, ALERT_URGENT, "power:short");
}
END_TEST

START_TEST(walking_takes_the_order_for_walking)
{
    fixture_text(stage, "im walking, one full battery, how long have i got left");
    ck_assert_int_eq(estimate_of("hours-left")->minutes.low, 135); /* 150 x .90 */
    fixture_says(stage, "pulse 3, ordered for walking");
}
END_TEST

START_TEST(asleep_only_the_battery_in_the_unit_counts)
{
    fixture_text(stage, "2 full ones, going to sleep, how long have i got left");
    ck_assert_int_eq(estimate_of("hours-left")->minutes.low, 180); /* 200 x .90, one only */
    fixture_says(stage, "For sleep only what is in the unit counts");
}
END_TEST

START_TEST(on_a_phone_of_two_rentals_whose_hours_they_are_is_always_said)
{
    fixture_second_rental(stage);
    stage->house.company = "A Company With A Name That Leaves No Room For What Is Said Beside";
    fixture_text(stage, "2 full, going to sleep, how long have i got left");
    fixture_text(stage, "1");
    fixture_says(stage, "Ana: Counted with pulse 2, ordered for sleep.");
}
END_TEST

START_TEST(without_an_order_for_sleep_staff_call_before_bedtime)
{
    stage->rentals[0].orders[ACTIVITY_SLEEP].known = false;
    fixture_text(stage, "2 full ones, going to sleep, how long have i got left");
    ck_assert_int_eq(stage->verdict.route, ROUTE_STAFF);
    fixture_alerts(stage, ALERT_URGENT, "power:no-sleep-order");
    fixture_says(stage, "before bedtime");
    fixture_says_not(stage, "Plan on");
}
END_TEST

START_TEST(a_setting_that_differs_gets_the_time_for_what_runs_and_a_call)
{
    fixture_text(stage, "sitting here on pulse 3, one full, how long have i got left");
    ck_assert_int_eq(estimate_of("hours-left")->minutes.low, 135);
    fixture_says(stage, "Our record says continuous 2 at rest; please don't change it unless your "
                        "prescriber says so.");
    fixture_alerts(stage, ALERT_URGENT, "power:differs");
    fixture_says_not(stage, "pulse 3, ordered");
}
END_TEST

START_TEST(what_the_file_does_not_give_goes_to_staff)
{
    stage->rentals[0].orders[ACTIVITY_REST].setting_tenths = 15;
    fixture_text(stage, "one full, how long have i got left");
    fixture_alerts(stage, ALERT_URGENT, "power:no-figure");
    ck_assert_ptr_null(fixture_answer(stage, "hours-left")->estimate);
    fixture_says_not(stage, "Plan on");
}
END_TEST

START_TEST(what_only_the_wall_feeds_is_said_so_and_staff_are_told)
{
    stage->rentals[0].orders[ACTIVITY_REST].setting_tenths = 30; /* the unit's file: needs wall */
    fixture_text(stage, "one full, how long have i got left");
    fixture_says(stage, "At continuous 3 the unit runs only from the wall");
    fixture_says(stage, "plug it in");
    fixture_says_not(stage, "I have no figure");
    fixture_alerts(stage, ALERT_URGENT, "power:wall-only");
    fixture_text(stage, "how long have i got left"); /* no charge is asked for: none would help */
    fixture_says(stage, "runs only from the wall");
    ck_assert_int_eq(stage->context.conversation.question, QUESTION_NONE);
    fixture_text(stage, "how long does a battery last");
    fixture_says(stage, "runs only from the wall");
    ck_assert_int_eq(stage->verdict.alert.level, ALERT_NONE);
}
END_TEST

START_TEST(told_to_run_on_what_only_the_wall_feeds_the_record_is_said_too)
{
    fixture_text(stage, "on continuous 3, one full, how long have i got left");
    fixture_says(stage, "At continuous 3 the unit runs only from the wall");
    fixture_says(stage, "Our record says continuous 2 at rest; please don't change it");
    fixture_alerts(stage, ALERT_URGENT, "power:wall-only");
}
END_TEST

static const char *const reports[] = {"both full",        "both at 70",     "2 full",
                                      "40% and one full", "las dos llenas", "1 light left"};

START_TEST(a_charge_that_is_told_and_nothing_else_gets_the_hours_left)
{
    fixture_text(stage, reports[_i]);
    ck_assert_ptr_nonnull(fixture_answer(stage, "hours-left"));
    ck_assert_ptr_nonnull(fixture_answer(stage, "hours-left")->estimate);
}
END_TEST

START_TEST(of_a_percentage_alone_it_is_asked_whether_it_is_a_battery_or_a_reading)
{
    fixture_text(stage, "at 70 now");
    ck_assert_ptr_nonnull(fixture_answer(stage, "which-percent"));
    fixture_text(stage, "60 %");
    fixture_says(stage, "Is 60 % a battery's charge or an oxygen reading?");
    fixture_alerts(stage, ALERT_OFFICE, "bare-percent");
    fixture_text(stage, "battery");
    ck_assert_int_eq(estimate_of("hours-left")->minutes.low, 32); /* 60 x .90 x .60 */
}
END_TEST

START_TEST(a_percentage_answered_as_a_reading_goes_to_a_person_at_once)
{
    fixture_text(stage, "88%");
    fixture_text(stage, "oxygen 88%");
    fixture_alerts(stage, ALERT_URGENT, "sign:reading");
    fixture_text(stage, "92%");
    fixture_text(stage, "the oxygen one");
    fixture_alerts(stage, ALERT_URGENT, "sign:reading");
}
END_TEST

static const char *const of_the_oximeter[] = {"its my saturation not the battery",
                                              "its from the clip", "pulse ox", "es del aparatito",
                                              "no es la bateria, es saturacion"};

START_TEST(however_it_is_said_that_a_percentage_is_a_reading_it_is_taken_for_one)
{
    fixture_text(stage, "84 %");
    fixture_text(stage, of_the_oximeter[_i]);
    ck_assert_int_eq(stage->verdict.route, ROUTE_EMERGENCY);
}
END_TEST

static const char *const of_no_oximeter[] = {"its the reading on the machine", "mine",
                                             "la lectura de la pantalla"};

START_TEST(a_number_off_the_unit_is_no_reading)
{
    fixture_text(stage, "30");
    fixture_text(stage, of_no_oximeter[_i]);
    ck_assert_int_ne(stage->verdict.route, ROUTE_EMERGENCY);
}
END_TEST

START_TEST(where_it_still_may_be_either_it_is_asked_once_more)
{
    fixture_text(stage, "84");
    fixture_text(stage, "mine");
    fixture_says(stage, "Is 84 a battery's charge or an oxygen reading?");
    fixture_alerts(stage, ALERT_URGENT, "bare-percent");
    fixture_text(stage, "oxygen");
    ck_assert_int_eq(stage->verdict.route, ROUTE_EMERGENCY);
}
END_TEST

START_TEST(one_of_two_numbers_that_would_be_grave_calls_at_once)
{
    fixture_text(stage, "84 60");
    fixture_alerts(stage, ALERT_URGENT, "bare-percent");
    fixture_free(stage);
    stage = fixture_new();
    stage->rentals[0].call_below_reading = 90;
    fixture_text(stage, "88 now");
    fixture_alerts(stage, ALERT_URGENT, "bare-percent");
}
END_TEST

START_TEST(of_a_stranger_a_number_that_may_be_grave_calls_too)
{
    fixture_stranger(stage);
    fixture_text(stage, "91");
    fixture_alerts(stage, ALERT_NONE, NULL);
    fixture_text(stage, "83");
    fixture_alerts(stage, ALERT_URGENT, "bare-percent");
    fixture_says(stage, "Trouble breathing? Call 911.");
}
END_TEST

START_TEST(who_asks_how_long_of_a_low_reading_is_an_emergency_whatever_reads_it)
{
    static const char *const texts[] = {
        "the readout is 48, how long",
        "reading 72, how long until someone comes",
        "level 70 how long do i wait",
        "cant sleep, level 71, how long is that ok",
        "number is down to 66 how much time is there",
        "numbers at 73 and dropping, how much time do i have",
        "readout 61 how much longer",
        "la lectura marca 68, cuanto tiempo puede estar asi",
        "nivel 70 cuanto me queda",
    };
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        fixture_text(stage, texts[i]);
        ck_assert_msg(stage->verdict.route == ROUTE_EMERGENCY, "%s", texts[i]);
        fixture_says_not(stage, "Plan on"); /* it would read as how long they have */
        fixture_says_not(stage, "Cuente con");
        fixture_free(stage);
        stage = fixture_new();
    }
}
END_TEST

START_TEST(a_stranger_too_is_asked_what_a_percentage_is)
{
    fixture_stranger(stage);
    fixture_text(stage, "84 %");
    ck_assert_ptr_nonnull(fixture_answer(stage, "which-percent"));
    fixture_text(stage, "oxygen");
    ck_assert_int_eq(stage->verdict.route, ROUTE_EMERGENCY);
}
END_TEST

/* 85 or lower is an emergency as a reading. */
START_TEST(a_percentage_alone_that_would_be_grave_as_a_reading_calls_at_once)
{
    fixture_text(stage, "tengo 84");
    fixture_alerts(stage, ALERT_URGENT, "bare-percent");
    ck_assert_ptr_null(fixture_answer(stage, "hours-left"));
    fixture_text(stage, "es de oxigeno");
    ck_assert_int_eq(stage->verdict.route, ROUTE_EMERGENCY);
    fixture_text(stage, "battery at 84");
    ck_assert_ptr_nonnull(fixture_answer(stage, "hours-left"));
}
END_TEST

START_TEST(it_calls_too_while_another_question_is_open)
{
    fixture_text(stage, "how long have i got left with one at 50%");
    ck_assert_int_eq(stage->context.conversation.question, QUESTION_PLUG);
    fixture_wait_minutes(stage, 5);
    fixture_text(stage, "i have 84");
    fixture_alerts(stage, ALERT_URGENT, "bare-percent");
}
END_TEST

static const char *const may_be_readings[] = {
    "tiene 82", "i have 88 and 85", "still low 83%", "just 84% now",
    "84% here", "el 83 por ciento", "84 now"};

START_TEST(numbers_that_no_word_makes_a_battery_s_are_asked_about)
{
    fixture_text(stage, may_be_readings[_i]);
    ck_assert_ptr_null(fixture_answer(stage, "hours-left"));
    ck_assert_int_ge(stage->verdict.alert.level, ALERT_OFFICE);
}
END_TEST

/* Facts A4: 0.85 at 0 C, between two temperatures the colder one's; the Finch has no cold table. */
START_TEST(cold_takes_its_share_and_without_a_table_a_person_answers)
{
    fixture_text(stage, "one full, its -5 celsius here, how long have i got left");
    fixture_alerts(stage, ALERT_URGENT, "power:no-figure");
    fixture_says_not(stage, "Plan on");
    stage->rentals[0].unit = "wagtail";
    stage->rentals[0].orders[ACTIVITY_REST] = (struct order){true, MODE_CONTINUOUS, 10, 0, "Dr. Q"};
    stage->rentals[0].orders[ACTIVITY_WALKING].known = false;
    fixture_text(stage, "one full, its 2 celsius here, how long have i got left");
    ck_assert_int_eq(estimate_of("hours-left")->minutes.low, 68); /* 90 x .85 = 76, x .90 */
    ck_assert_int_eq(estimate_of("hours-left")->minutes.high, 100);
    fixture_says(stage, "I read: 100%, 2 C. In that cold they count 85%.");
    fixture_text(stage, "its 30 fahrenheit now, how long now?");  /* -2 C */
    ck_assert_int_eq(estimate_of("hours-left")->minutes.low, 56); /* 90 x .70 = 63, x .90 */
    fixture_text(stage, "it is 2 celsius here. one full. how long have i got left");
    ck_assert_int_eq(estimate_of("hours-left")->minutes.low, 68);
}
END_TEST

START_TEST(cold_that_was_told_with_the_charge_still_counts_later)
{
    stage->rentals[0].unit = "wagtail";
    stage->rentals[0].orders[ACTIVITY_REST] = (struct order){true, MODE_CONTINUOUS, 10, 0, "Dr. Q"};
    stage->rentals[0].orders[ACTIVITY_WALKING].known = false;
    fixture_text(stage, "one full, its 2 celsius here, how long have i got left");
    fixture_wait_minutes(stage, 8);
    fixture_text(stage, "how long have i got left");
    ck_assert_int_eq(estimate_of("hours-left")->minutes.low, 68 - 8);
}
END_TEST

START_TEST(a_remembered_charge_is_counted_down)
{
    stage->rentals[0].battery_count = 3; /* the third never measured: the retirement limit */
    fixture_text(stage, "2 full and one half, how long have i got left");
    ck_assert_int_eq(estimate_of("hours-left")->minutes.low, 48 + 54 + 30);
    fixture_wait_minutes(stage, 60);
    fixture_text(stage, "how long now?");
    ck_assert_int_eq(estimate_of("hours-left")->minutes.low, 132 - 60);
    fixture_says(stage, "Plan on 1 h 12 min, to about 1:27 pm.");
    fixture_says(stage, "the charge you told at 11:15 am");
}
END_TEST

START_TEST(a_remembered_charge_that_is_used_up_or_old_is_asked_anew)
{
    fixture_text(stage, "1 full, how long have i got left");
    fixture_wait_minutes(stage, 58);
    fixture_text(stage, "how long now?");
    ck_assert_ptr_nonnull(fixture_answer(stage, "which-charge"));
    fixture_text(stage, "4 batteries, im walking, all at 100%, how long have i got left");
    stage->accounts[0].told.charge_count = 4;
    fixture_wait_minutes(stage, 13 * 60);
    fixture_text(stage, "how long now?");
    ck_assert_ptr_nonnull(fixture_answer(stage, "which-charge"));
}
END_TEST

START_TEST(time_since_the_charge_was_read_counts_against_it)
{
    fixture_text(stage, "2 full 45 minutes ago, how long have i got left");
    ck_assert_int_eq(estimate_of("hours-left")->minutes.low, 54 + 60 - 45);
    fixture_wait_minutes(stage, 10);
    fixture_text(stage, "how long now?");
    ck_assert_int_eq(estimate_of("hours-left")->minutes.low, 54 + 60 - 55);
}
END_TEST

START_TEST(a_charge_of_an_unknown_time_ago_is_asked_anew)
{
    fixture_text(stage, "left the plug at 9:15 with 2 full, how long have i got left");
    ck_assert_ptr_nonnull(fixture_answer(stage, "which-charge"));
    fixture_says_not(stage, "Plan on");
}
END_TEST

START_TEST(a_missing_charge_is_asked_and_the_answer_completes_the_question)
{
    fixture_text(stage, "im walking, how long have i got left");
    ck_assert_ptr_nonnull(fixture_answer(stage, "which-charge"));
    ck_assert_str_eq(fixture_answer(stage, "which-charge")->topic, "hours-left");
    ck_assert_int_eq(stage->context.conversation.question, QUESTION_WHICH_CHARGE);
    fixture_wait_minutes(stage, 2);
    fixture_text(stage, "2 full");
    ck_assert_int_eq(estimate_of("hours-left")->activity, ACTIVITY_WALKING);
    ck_assert_int_eq(estimate_of("hours-left")->minutes.low, 135 + 150);
    ck_assert_int_eq(stage->context.conversation.question, QUESTION_NONE);
}
END_TEST

START_TEST(what_cannot_be_so_is_asked_back_and_no_number_given)
{
    fixture_text(stage, "how long have i got left at 130%");
    ck_assert_ptr_nonnull(fixture_answer(stage, "which-charge"));
    fixture_says(stage, "130%");
    fixture_says_not(stage, "Plan on");
    fixture_text(stage, "how long have i got left with 7 lights"); /* its gauge has 4 */
    ck_assert_ptr_nonnull(fixture_answer(stage, "which-charge"));
}
END_TEST

START_TEST(a_stranger_gets_no_number_but_is_told_whom_to_call)
{
    fixture_stranger(stage);
    fixture_text(stage, "2 full batteries how long do i have left");
    fixture_says(stage, "I can't find your rental");
    fixture_says(stage, "208-555-0100");
    ck_assert_ptr_nonnull(fixture_answer(stage, "hours-left")->read);
    ck_assert_uint_eq(fixture_answer(stage, "hours-left")->read->charge_count, 2);
}
END_TEST

START_TEST(a_late_text_is_counted_from_when_it_was_sent)
{
    stage->message = (struct message){.text = "1 full, im walking, how long have i got left",
                                      .sender = "+12085550101",
                                      .sent_utc_s = fixture_start_utc_s,
                                      .received_utc_s = fixture_start_utc_s + 1800};
    stage->context.now_utc_s = fixture_start_utc_s + 1800;
    handlers_decide(stage->arena, &stage->message, &stage->context, &stage->verdict);
    fixture_says(stage, "You wrote at 11:15 am: Plan on 1 h 45 min, to about 1:30 pm.");
}
END_TEST

/* Full at 90 % of continuous 2's 60 minutes, the worse of the record's two. */
START_TEST(how_long_a_full_one_lasts_is_no_question_of_charging)
{
    static const char *const texts[] = {"how long does it last, its full",
                                        "its full, how long does it last",
                                        "how long will it last if its full"};
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        fixture_text(stage, texts[i]);
        fixture_says(stage, "Plan on 54 min");
        fixture_says_not(stage, "nothing to charge");
    }
    fixture_text(stage, "how long until its full, its at 20%");
    ck_assert_ptr_nonnull(fixture_answer(stage, "charge-time"));
}
END_TEST

START_TEST(battery_life_is_that_of_the_order)
{
    fixture_text(stage, "how long does a battery last");
    ck_assert_int_eq(estimate_of("battery-life")->minutes.low, 54);
    fixture_says(stage, "Plan on 54 min from one full battery.");
    ck_assert(!stage->verdict.replies[0].holds_time);
    fixture_text(stage, "how long do 2 batteries last in general when walking");
    ck_assert_int_eq(estimate_of("battery-life")->minutes.low, 135 + 150);
}
END_TEST

START_TEST(another_mode_is_never_offered_as_a_way_to_last_longer)
{
    fixture_text(stage, "how long does a battery last at rest on pulse 3");
    ck_assert_int_eq(estimate_of("battery-life")->minutes.low, 54); /* as ordered: continuous 2 */
    fixture_says(stage, "please don't change it");
    fixture_alerts(stage, ALERT_OFFICE, "power:differs");
}
END_TEST

START_TEST(battery_life_without_a_record_is_the_topics_text)
{
    fixture_stranger(stage);
    fixture_text(stage, "how long does a battery last");
    fixture_says(stage, "It depends on the unit.");
    ck_assert_int_eq(stage->verdict.answers[0].kind, ANSWER_TOPIC);
}
END_TEST

int
main(void)
{
    TCase *tests = tcase_create("power");

    tcase_add_checked_fixture(tests, set_up, tear_down);
    tcase_add_test(tests, two_full_batteries_lead_with_one_planning_figure);
    tcase_add_test(tests, one_light_is_said_as_one);
    tcase_add_test(tests, lights_are_the_band_of_the_equipment_file);
    tcase_add_loop_test(tests, a_charge_that_is_told_and_nothing_else_gets_the_hours_left, 0,
                        (int)(sizeof reports / sizeof reports[0]));
    tcase_add_test(tests, of_a_percentage_alone_it_is_asked_whether_it_is_a_battery_or_a_reading);
    tcase_add_test(tests, a_percentage_answered_as_a_reading_goes_to_a_person_at_once);
    tcase_add_loop_test(tests,
                        however_it_is_said_that_a_percentage_is_a_reading_it_is_taken_for_one, 0,
                        sizeof of_the_oximeter / sizeof of_the_oximeter[0]);
    tcase_add_loop_test(tests, a_number_off_the_unit_is_no_reading, 0,
                        sizeof of_no_oximeter / sizeof of_no_oximeter[0]);
    tcase_add_test(tests, where_it_still_may_be_either_it_is_asked_once_more);
    tcase_add_test(tests, one_of_two_numbers_that_would_be_grave_calls_at_once);
    tcase_add_test(tests, who_asks_how_long_of_a_low_reading_is_an_emergency_whatever_reads_it);
    tcase_add_test(tests, of_a_stranger_a_number_that_may_be_grave_calls_too);
    tcase_add_test(tests, a_stranger_too_is_asked_what_a_percentage_is);
    tcase_add_test(tests, a_percentage_alone_that_would_be_grave_as_a_reading_calls_at_once);
    tcase_add_test(tests, it_calls_too_while_another_question_is_open);
    tcase_add_loop_test(tests, numbers_that_no_word_makes_a_battery_s_are_asked_about, 0,
                        (int)(sizeof may_be_readings / sizeof may_be_readings[0]));
    tcase_add_test(tests, an_empty_battery_is_no_time_at_all);
    tcase_add_test(tests, walking_takes_the_order_for_walking);
    tcase_add_test(tests, asleep_only_the_battery_in_the_unit_counts);
    tcase_add_test(tests, on_a_phone_of_two_rentals_whose_hours_they_are_is_always_said);
    tcase_add_test(tests, without_an_order_for_sleep_staff_call_before_bedtime);
    tcase_add_test(tests, a_setting_that_differs_gets_the_time_for_what_runs_and_a_call);
    tcase_add_test(tests, what_the_file_does_not_give_goes_to_staff);
    tcase_add_test(tests, what_only_the_wall_feeds_is_said_so_and_staff_are_told);
    tcase_add_test(tests, told_to_run_on_what_only_the_wall_feeds_the_record_is_said_too);
    tcase_add_test(tests, cold_takes_its_share_and_without_a_table_a_person_answers);
    tcase_add_test(tests, cold_that_was_told_with_the_charge_still_counts_later);
    tcase_add_test(tests, a_remembered_charge_is_counted_down);
    tcase_add_test(tests, a_remembered_charge_that_is_used_up_or_old_is_asked_anew);
    tcase_add_test(tests, time_since_the_charge_was_read_counts_against_it);
    tcase_add_test(tests, a_charge_of_an_unknown_time_ago_is_asked_anew);
    tcase_add_test(tests, a_missing_charge_is_asked_and_the_answer_completes_the_question);
    tcase_add_test(tests, what_cannot_be_so_is_asked_back_and_no_number_given);
    tcase_add_test(tests, a_stranger_gets_no_number_but_is_told_whom_to_call);
    tcase_add_test(tests, a_late_text_is_counted_from_when_it_was_sent);
    tcase_add_test(tests, how_long_a_full_one_lasts_is_no_question_of_charging);
    tcase_add_test(tests, battery_life_is_that_of_the_order);
    tcase_add_test(tests, another_mode_is_never_offered_as_a_way_to_last_longer);
    tcase_add_test(tests, battery_life_without_a_record_is_the_topics_text);
    return fixture_run(tests);
}
