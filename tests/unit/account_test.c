/*
 * The running account of a rental's batteries: charges that are told in whatever question are
 * counted from, charges that are only supposed are not.
 */
#include "stage.h"

static int
low_now(void)
{
    fixture_text(stage, "how long now?");
    return stage_estimate("hours-left", ESTIMATE_HOURS_LEFT)->minutes.low;
}

static void
nothing_is_known_now(void)
{
    fixture_text(stage, "how long now?");
    ck_assert_ptr_nonnull(fixture_answer(stage, "which-charge"));
}

/* Ana's batteries at rest: 54 and 60 minutes when full. */

START_TEST(a_charge_of_each_is_worked_out_once_their_number_is_told)
{
    static const char *const numbers[] = {"2", "two batteries", "i have 2"};
    size_t i;

    for (i = 0; i < sizeof numbers / sizeof numbers[0]; i++) {
        fixture_free(stage);
        stage = fixture_new();
        fixture_text(stage, "each battery is at 50, how long have i got left");
        ck_assert_ptr_nonnull(fixture_answer(stage, "which-charge"));
        fixture_text(stage, numbers[i]);
        ck_assert_int_eq(stage_estimate("hours-left", ESTIMATE_HOURS_LEFT)->minutes.low, 27 + 30);
    }
}
END_TEST

START_TEST(changed_batteries_of_an_untold_number_end_what_was_told_before)
{
    static const char *const texts[] = {"changed batteries, all full", "they are already full",
                                        "ya las cambie, todas llenas"};
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        fixture_free(stage);
        stage = fixture_new();
        fixture_text(stage, "2 full, how long have i got left");
        fixture_text(stage, texts[i]);
        ck_assert_msg(fixture_answer(stage, "which-charge") != NULL, "%s", texts[i]);
        nothing_is_known_now();
    }
}
END_TEST

START_TEST(a_charge_told_with_a_trip_is_counted_down)
{
    fixture_text(stage, "we drive 1 hour then walk 20 min, one full one half. will it last?");
    ck_assert_ptr_nonnull(fixture_answer(stage, "drive-trip"));
    fixture_wait_minutes(stage, 10);
    ck_assert_int_eq(low_now(), 54 + 30 - 10);
}
END_TEST

START_TEST(a_charge_told_with_a_flight_is_counted_down)
{
    fixture_text(stage, "flying 4 h gate to gate, i have 2 batteries at 100%, is that enough?");
    ck_assert_ptr_nonnull(fixture_answer(stage, "fly"));
    fixture_wait_minutes(stage, 10);
    ck_assert_int_eq(low_now(), 54 + 60 - 10);
}
END_TEST

START_TEST(a_charge_told_with_charging_is_the_least_and_full_the_most)
{
    const struct estimate *estimate;

    fixture_text(stage, "when will both be full? one at 90 percent and one at 70 percent");
    ck_assert_ptr_nonnull(fixture_answer(stage, "charge-time"));
    fixture_wait_minutes(stage, 10);
    ck_assert_int_eq(low_now(), 48 + 42 - 10); /* the fuller one in the weaker battery */
    estimate = stage_estimate("hours-left", ESTIMATE_HOURS_LEFT);
    ck_assert_int_eq(estimate->minutes.high, 72 + 65);
}
END_TEST

START_TEST(an_answer_to_what_a_sum_lacked_is_told_too)
{
    fixture_text(stage, "when will both batteries be full?");
    fixture_text(stage, "60% and 80%");
    ck_assert_ptr_nonnull(fixture_answer(stage, "charge-time"));
    fixture_wait_minutes(stage, 10);
    (void)low_now();
}
END_TEST

START_TEST(what_is_only_supposed_is_not_told)
{
    fixture_text(stage, "if both are full will they last a 1 h drive?");
    nothing_is_known_now();
    fixture_text(stage, "si las dos estan llenas me alcanza para 1 hora de carro?");
    nothing_is_known_now();
    fixture_text(stage, "tomorrow we drive 1 h with 2 full, will it last?");
    nothing_is_known_now();
    fixture_text(stage, "how many hours do i have left if both are full?");
    ck_assert_ptr_nonnull(fixture_answer(stage, "hours-left"));
    nothing_is_known_now();
}
END_TEST

START_TEST(a_supposed_charge_leaves_the_told_one)
{
    fixture_text(stage, "one half, how long have i got left");
    fixture_text(stage, "if both are full will they last a 1 h drive?");
    fixture_wait_minutes(stage, 2);
    ck_assert_int_eq(low_now(), 27 - 2);
}
END_TEST

START_TEST(more_batteries_than_the_record_has_are_asked_about_once)
{
    fixture_text(stage, "9 full batteries, how long have i got left");
    fixture_says(stage, "I read 9 batteries, but our record has 2.");
    fixture_says_not(stage, "Plan on");
    fixture_text(stage, "3 full"); /* they know best what lies before them */
    ck_assert_int_eq(stage_estimate("hours-left", ESTIMATE_HOURS_LEFT)->batteries, 3);
}
END_TEST

START_TEST(a_newer_charge_told_with_a_trip_ends_the_watch_and_that_is_said)
{
    fixture_text(stage, "2 full, text me when 30 min are left");
    fixture_says(stage, "I'll text you");
    fixture_text(stage, "we drive 20 min, one full one half. will it last?");
    ck_assert_ptr_nonnull(fixture_answer(stage, "drive-trip"));
    fixture_says(stage, "is off, as it went by the older charge");
    ck_assert_uint_eq(stage->context.reminder_count, 0);
}
END_TEST

int
main(void)
{
    TCase *tests = tcase_create("account");

    tcase_add_checked_fixture(tests, stage_set_up, stage_tear_down);
    tcase_add_test(tests, a_charge_of_each_is_worked_out_once_their_number_is_told);
    tcase_add_test(tests, changed_batteries_of_an_untold_number_end_what_was_told_before);
    tcase_add_test(tests, a_charge_told_with_a_trip_is_counted_down);
    tcase_add_test(tests, a_charge_told_with_a_flight_is_counted_down);
    tcase_add_test(tests, a_charge_told_with_charging_is_the_least_and_full_the_most);
    tcase_add_test(tests, an_answer_to_what_a_sum_lacked_is_told_too);
    tcase_add_test(tests, what_is_only_supposed_is_not_told);
    tcase_add_test(tests, a_supposed_charge_leaves_the_told_one);
    tcase_add_test(tests, more_batteries_than_the_record_has_are_asked_about_once);
    tcase_add_test(tests, a_newer_charge_told_with_a_trip_ends_the_watch_and_that_is_said);
    return fixture_run(tests);
}
