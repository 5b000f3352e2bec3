/* Figures of the invented units: fixture.h. It is 11:15 am unless the clock is put on. */
#include "stage.h"

#include "parts.h"

/* Ana with a Wagtail, three batteries and a charger. */
static void
with_wagtail(void)
{
    stage->rentals[0].unit = "wagtail";
    stage->rentals[0].orders[ACTIVITY_REST] = (struct order){true, MODE_CONTINUOUS, 10, 0, "Dr. Q"};
    stage->rentals[0].orders[ACTIVITY_WALKING].known = false;
    stage->rentals[0].battery_count = 3;
    stage->rentals[0].batteries[2] = stage->rentals[0].batteries[0];
}

static const struct estimate *
estimate(void)
{
    return stage_estimate("charge-time", ESTIMATE_CHARGING);
}

START_TEST(who_needs_them_full_is_told_the_longest)
{
    fixture_text(stage, "1 battery at 20 percent, when will it be full?");
    /* 205 - 125 x 20/80 = 173.75; 170 - 105 x 20/80 = 143.75 */
    ck_assert_int_eq(estimate()->minutes.high, 174);
    ck_assert_int_eq(estimate()->minutes.low, 143);
    fixture_says(stage, "Full in up to 2 h 54 min, by about 2:09 pm if it starts now.");
    fixture_says(stage, "At 80% in up to 1 h 34 min.");
    fixture_says(stage, "from the wall, in the unit while it is off");
    fixture_says(stage, "I read: 20%.");
    ck_assert(stage->verdict.replies[0].holds_time);
    ck_assert_int_eq(stage->verdict.alert.level, ALERT_NONE);
}
END_TEST

START_TEST(in_the_unit_they_charge_one_after_the_other)
{
    with_wagtail();
    stage->rentals[0].chargers = 0;
    fixture_text(stage, "how long to charge 2 empty batteries?");
    ck_assert_int_eq(estimate()->minutes.high, 2 * 390); /* it may be running all the while */
    fixture_says(stage, "change at 5:45 pm");
    fixture_says(stage, "while it runs");
    fixture_says(stage, "With the unit off: up to 6 h 40 min."); /* 2 x 200 */
}
END_TEST

START_TEST(a_charger_counts_only_beside_the_longer_time)
{
    with_wagtail();
    fixture_text(stage, "how long to charge 2 empty batteries?");
    ck_assert_int_eq(estimate()->minutes.high, 2 * 390);
    fixture_says(stage, "With the charger too: up to 6 h 30 min.");
    fixture_text(stage, "how long to charge 2 empty batteries in the charger?");
    ck_assert_int_eq(estimate()->minutes.high, 2 * 215);
    fixture_says(stage, "from the wall, in the charger");
}
END_TEST

START_TEST(with_the_unit_off_or_running_as_they_say)
{
    with_wagtail();
    stage->rentals[0].chargers = 0;
    fixture_text(stage, "how long to charge 1 empty battery with the unit off?");
    ck_assert_int_eq(estimate()->minutes.high, 200);
    fixture_text(stage, "how long to charge 1 empty battery while it runs?");
    ck_assert_int_eq(estimate()->minutes.high, 390);
    fixture_says_not(stage, "With the unit off");
}
END_TEST

START_TEST(a_unit_that_cannot_charge_while_it_runs_gets_no_figure_for_it)
{
    stage->rentals[0].chargers = 0;
    fixture_text(stage, "how long to charge 1 empty battery while it runs?");
    ck_assert_ptr_null(fixture_answer(stage, "charge-time")->estimate);
    fixture_alerts(stage, ALERT_OFFICE, "power:no-charge-figure");
    fixture_says(stage, "no figure");
}
END_TEST

START_TEST(what_they_will_have_is_the_least)
{
    with_wagtail();
    stage->rentals[0].chargers = 0;
    fixture_text(stage, "1 battery at 20%, charging in the wall, what will i have by 1:15 pm?");
    fixture_says(stage, "At 1:15 pm plan on at least 60%."); /* 120 of 240 minutes to 80 % */
    fixture_says(stage, "They can't all be full by then.");
    fixture_says_not(stage, "get up");
}
END_TEST

START_TEST(a_plan_for_the_night_wakes_nobody)
{
    with_wagtail();
    fixture_wait_minutes(stage, 8 * 60); /* 7:15 pm */
    fixture_text(stage, "best plan for tonight? one at 90%, 2 empty");
    /* Both places are taken before the night, and the third goes on when the first is full. */
    fixture_says(stage, "Plan: now 0% in the unit, ");
    fixture_says(stage, "All full at 6:00 am. Nobody has to get up.");
    fixture_says(stage, "in the unit while it runs and in the charger");
    ck_assert_uint_le(parts_count(stage->verdict.replies[0].text).parts, 2);
}
END_TEST

START_TEST(a_plan_that_cannot_let_them_sleep_says_so)
{
    with_wagtail();
    stage->rentals[0].chargers = 0;
    fixture_wait_minutes(stage, 8 * 60); /* 7:15 pm */
    fixture_text(stage, "can 2 empty batteries be full by 8:30 am tomorrow?");
    fixture_says(stage, "Plan: now 0%; ");
    fixture_says(stage, "somebody gets up to change at 1:45 am"); /* 390 minutes on */
    fixture_says_not(stage, "Nobody has to get up");
    fixture_says(stage, "At 8:30 am plan on at least ");
    fixture_says_not(stage, "All full at");
}
END_TEST

START_TEST(in_the_car_the_outlet_and_its_fuse_decide)
{
    with_wagtail();
    stage->rentals[0].batteries[0].health_percent = 100;
    /* 96 Wh in 3 h are 32 W, with the unit 92; 92 / .85 / 12 = 9.02 A of 12, a fuse of 11.3 */
    fixture_text(stage, "1 battery at 0%, when is it full, charging in the car?");
    ck_assert_int_eq(estimate()->minutes.high, 390);
    fixture_says(stage, "fuse of 12 A or more, in the unit while it runs");
    stage->rentals[0].unit = "finch"; /* not both at once */
    fixture_text(stage, "1 battery at 0%, when is it full, charging in the car?");
    ck_assert_int_eq(estimate()->minutes.high, 205);
    fixture_says(stage, "Not while it runs: oxygen goes first.");
}
END_TEST

START_TEST(below_freezing_no_battery_is_charged)
{
    fixture_text(stage, "its -3 celsius here, 1 battery at 20%, when is it full if i charge it?");
    fixture_says(stage, "Don't charge a battery below 5 C (41 F)"); /* the unit's own limit */
    ck_assert_ptr_null(fixture_answer(stage, "charge-time")->estimate);
    stage->rentals[0].unit = "wagtail"; /* whose file has none: facts A4, 0 C */
    fixture_text(stage, "its 20 fahrenheit, 1 battery at 20%, when is it full if i charge it?");
    fixture_says(stage, "below 0 C (32 F)");
}
END_TEST

START_TEST(what_is_missing_is_asked_and_then_worked_out)
{
    fixture_text(stage, "when will both batteries be full?");
    fixture_says(stage, "How full is each battery");
    ck_assert_str_eq(fixture_answer(stage, "charge-time")->topic, "charge-time");
    ck_assert_int_eq(stage->context.conversation.question, QUESTION_WHICH_CHARGE);
    fixture_text(stage, "20% and 40%");
    ck_assert_int_eq(estimate()->batteries, 2);
    fixture_says(stage, "I read: 20%, 40%.");
    ck_assert_int_eq(stage->context.conversation.question, QUESTION_NONE);
}
END_TEST

START_TEST(am_or_pm_is_asked)
{
    fixture_text(stage, "need both charged by 6, both at 10%");
    fixture_says(stage, "Is that am or pm?");
    fixture_text(stage, "6 pm");
    fixture_says(stage, "Plan: now 10%; 2:25 pm 10%. All full at 6:00 pm."); /* 190 min each */
}
END_TEST

START_TEST(more_batteries_than_the_record_has_are_asked_about)
{
    fixture_text(stage, "how long to charge 5 empty batteries?");
    fixture_says(stage, "I read 5 batteries, but our record has 2.");
    ck_assert_ptr_null(fixture_answer(stage, "charge-time")->estimate);
}
END_TEST

START_TEST(charges_told_in_another_sentence_belong_to_the_question)
{
    fixture_text(stage, "can both be full by 9 pm? one has 60 percent, the other 70 percent");
    ck_assert_int_eq(estimate()->batteries, 2);
    ck_assert_ptr_null(fixture_answer(stage, "hours-left"));
}
END_TEST

START_TEST(the_plan_is_said_in_spanish)
{
    with_wagtail();
    stage->rentals[0].language = LANGUAGE_ES;
    fixture_wait_minutes(stage, 8 * 60);
    fixture_text(stage, "plan para esta noche, tengo una al 20% y otra vacia");
    fixture_says(stage, "Plan: ahora 0% al aparato, 20% al cargador. Todas llenas a las 6:00 am. "
                        "Nadie tiene que levantarse.");
    fixture_says(stage, "Leo: 20%, 0%.");
}
END_TEST

START_TEST(a_stranger_gets_no_figures)
{
    fixture_stranger(stage);
    fixture_text(stage, "1 battery at 20%, when will it be full?");
    ck_assert(fixture_answer(stage, "charge-time") == NULL ||
              fixture_answer(stage, "charge-time")->estimate == NULL);
}
END_TEST

int
main(void)
{
    TCase *tests = tcase_create("charge_time");

    tcase_add_checked_fixture(tests, stage_set_up, stage_tear_down);
    tcase_add_test(tests, who_needs_them_full_is_told_the_longest);
    tcase_add_test(tests, in_the_unit_they_charge_one_after_the_other);
    tcase_add_test(tests, a_charger_counts_only_beside_the_longer_time);
    tcase_add_test(tests, with_the_unit_off_or_running_as_they_say);
    tcase_add_test(tests, a_unit_that_cannot_charge_while_it_runs_gets_no_figure_for_it);
    tcase_add_test(tests, what_they_will_have_is_the_least);
    tcase_add_test(tests, a_plan_for_the_night_wakes_nobody);
    tcase_add_test(tests, a_plan_that_cannot_let_them_sleep_says_so);
    tcase_add_test(tests, in_the_car_the_outlet_and_its_fuse_decide);
    tcase_add_test(tests, below_freezing_no_battery_is_charged);
    tcase_add_test(tests, what_is_missing_is_asked_and_then_worked_out);
    tcase_add_test(tests, am_or_pm_is_asked);
    tcase_add_test(tests, more_batteries_than_the_record_has_are_asked_about);
    tcase_add_test(tests, charges_told_in_another_sentence_belong_to_the_question);
    tcase_add_test(tests, the_plan_is_said_in_spanish);
    tcase_add_test(tests, a_stranger_gets_no_figures);
    return fixture_run(tests);
}
