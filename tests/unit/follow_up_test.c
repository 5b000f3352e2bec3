/* Texts that go on with a sum that was answered: what is told anew replaces what was told of the
 * same kind, everything else stays; what is not clear is asked; a text of its own is no such one.
 */
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

static void
begin_with(const char *text)
{
    fixture_free(stage);
    stage = fixture_new();
    fixture_text(stage, text);
}

static void
lasts(const char *id, int minutes)
{
    const struct answer *answer = fixture_answer(stage, id);

    ck_assert_msg(answer != NULL && answer->estimate != NULL, "no %s in \"%s\"", id,
                  fixture_replies(stage));
    ck_assert_msg(answer->estimate->minutes.low == minutes, "%d and not %d: \"%s\"",
                  answer->estimate->minutes.low, minutes, fixture_replies(stage));
}

/* Batteries of 100 and 90 % health: at rest 60 and 54 minutes, walking 150 and 135. */
START_TEST(another_activity_keeps_the_charges)
{
    static const char *const texts[] = {"and if she walks?", "what about walking", "and walking?"};
    static const char *const spanish[] = {"y si camina?", "y caminando?"};
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        begin_with("2 full how long do i have left");
        lasts("hours-left", 114);
        fixture_text(stage, texts[i]);
        lasts("hours-left", 285);
    }
    for (i = 0; i < sizeof spanish / sizeof spanish[0]; i++) {
        begin_with("tengo dos llenas, cuanto me queda");
        fixture_text(stage, spanish[i]);
        lasts("hours-left", 285);
    }
}
END_TEST

START_TEST(another_number_of_batteries_replaces_the_one_told)
{
    static const char *const texts[] = {"I mean one full", "sorry, 1 full", "make that 1",
                                        "no wait 1"};
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        begin_with("2 full how long do i have left");
        fixture_text(stage, texts[i]);
        lasts("hours-left", 54);
    }
    begin_with("tengo dos llenas, cuanto me queda");
    fixture_text(stage, "digo una llena");
    lasts("hours-left", 54);
}
END_TEST

START_TEST(one_of_several_that_were_alike_is_corrected_by_itself)
{
    static const char *const texts[] = {"no wait one is at 50", "sorry, the other is half full",
                                        "oops the spare is at 50"};
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        begin_with("2 full how long do i have left");
        fixture_text(stage, texts[i]);
        lasts("hours-left", 84);
    }
    begin_with("tengo dos llenas, cuanto me queda");
    fixture_text(stage, "perdon, una esta al 50");
    lasts("hours-left", 84);
    begin_with("2 full how long do i have left");
    fixture_text(stage, "no wait, 50 each");
    lasts("hours-left", 57);
}
END_TEST

START_TEST(what_was_taken_back_is_counted_from_no_more)
{
    static const char *const texts[] = {"no wait 2 lights", "I mean one at 50",
                                        "no wait, they have more than 1 light, one is at 20"};
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        begin_with("2 full how long do i have left");
        fixture_text(stage, texts[i]);
        if (fixture_answer(stage, "hours-left") == NULL ||
            fixture_answer(stage, "hours-left")->estimate == NULL) {
            fixture_text(stage, "how long do i have left now?");
            ck_assert_msg(fixture_answer(stage, "which-charge") != NULL, "%s: %s", texts[i],
                          fixture_replies(stage));
        }
    }
    begin_with("one full one at 50 how long do i have left");
    fixture_text(stage, "no wait one is at 20");
    fixture_text(stage, "how long do i have left now?");
    ck_assert_ptr_nonnull(fixture_answer(stage, "which-charge"));
}
END_TEST

START_TEST(a_charge_of_each_and_no_number_ends_what_was_told_before)
{
    begin_with("2 full how long do i have left");
    fixture_text(stage, "one light on each");
    ck_assert_ptr_nonnull(fixture_answer(stage, "which-charge"));
    fixture_text(stage, "how long do i have left now?");
    ck_assert_ptr_nonnull(fixture_answer(stage, "which-charge"));
    begin_with("2 full how long do i have left");
    fixture_text(stage, "what if they are all at half");
    lasts("hours-left", 57);
    fixture_text(stage, "how long do i have left now?");
    lasts("hours-left", 114); /* it was only supposed */
}
END_TEST

START_TEST(a_bare_number_takes_the_place_of_the_percentage_that_was_told)
{
    begin_with("one battery at 90%, how long do i have left");
    lasts("hours-left", 48);
    fixture_text(stage, "make that 80");
    lasts("hours-left", 43);
    begin_with("una bateria al 90%, cuanto me queda");
    fixture_text(stage, "perdon son 80");
    lasts("hours-left", 43);
}
END_TEST

START_TEST(corrections_add_up)
{
    fixture_text(stage, "2 full how long do i have left");
    fixture_text(stage, "and if she walks?");
    fixture_text(stage, "make that 1");
    lasts("hours-left", 135);
    fixture_text(stage, "sorry, two full");
    lasts("hours-left", 285);
}
END_TEST

START_TEST(a_corrected_charge_is_what_later_texts_count_from)
{
    fixture_text(stage, "2 full how long do i have left");
    fixture_wait_minutes(stage, 1);
    fixture_text(stage, "I mean one full");
    fixture_wait_minutes(stage, 9);
    fixture_text(stage, "how long do i have left now?");
    lasts("hours-left", 44); /* since the first text */
}
END_TEST

/* 20 minutes at rest are a third of 60, so a third of 150 is gone of the first battery. */
START_TEST(what_was_used_till_then_counts_as_it_was_used)
{
    fixture_text(stage, "2 full how long do i have left");
    fixture_wait_minutes(stage, 20);
    fixture_text(stage, "and if she walks?");
    lasts("hours-left", 235);
}
END_TEST

START_TEST(a_setting_behind_at_is_counted_with_the_order_that_it_fits)
{
    fixture_text(stage, "2 full how long do i have left");
    fixture_text(stage, "and if she walks?");
    fixture_text(stage, "and at 2?");
    lasts("hours-left", 114);
    begin_with("tengo dos llenas, cuanto me queda");
    fixture_text(stage, "y en 3?");
    lasts("hours-left", 285);
}
END_TEST

START_TEST(a_setting_that_is_not_ordered_is_no_way_to_last_longer)
{
    fixture_text(stage, "2 full how long do i have left");
    fixture_text(stage, "and at 1?");
    lasts("hours-left", 114);
    fixture_says(stage, "Our record says continuous 2");
}
END_TEST

START_TEST(the_leg_that_is_told_anew_is_replaced)
{
    fixture_text(stage, "we drive 1 hour and walk 30 min, 2 full. will it last?");
    ck_assert_int_eq(fixture_answer(stage, "drive-trip")->estimate->trip->total_minutes, 90);
    fixture_text(stage, "sorry, 40 min walk");
    ck_assert_int_eq(fixture_answer(stage, "drive-trip")->estimate->trip->total_minutes, 100);
    fixture_text(stage, "I mean one full");
    ck_assert_int_eq(fixture_answer(stage, "drive-trip")->estimate->trip->total_minutes, 100);
    ck_assert_int_eq(fixture_answer(stage, "drive-trip")->estimate->batteries, 1);
}
END_TEST

START_TEST(a_bare_number_has_the_unit_of_the_length_that_was_told)
{
    fixture_text(stage, "flight is 3 h 30 gate to gate, how many batteries do i need");
    fixture_says(stage, "3 h 30 min gate to gate");
    fixture_text(stage, "make that 4");
    fixture_says(stage, "4 h gate to gate");
}
END_TEST

START_TEST(a_charging_time_goes_on_with_other_charges_and_a_time)
{
    fixture_text(stage, "how long does it take to charge 2 empty batteries");
    ck_assert_ptr_nonnull(fixture_answer(stage, "charge-time"));
    fixture_text(stage, "sorry they are at 50");
    fixture_says(stage, "50%, 50%");
    fixture_text(stage, "and by 7 am?");
    fixture_says(stage, "7:00 am");
    fixture_says(stage, "50%, 50%");
    fixture_text(stage, "make that 6");
    fixture_says(stage, "6:00 am");
}
END_TEST

START_TEST(a_cylinder_goes_on_with_gauge_and_flow)
{
    static const char *const gauges[] = {"needle is at 1000", "make that 1000",
                                         "la aguja esta en 1000"};
    size_t i;

    for (i = 0; i < sizeof gauges / sizeof gauges[0]; i++) {
        begin_with("E cylinder at 1500 psi, flow 2, how long");
        ck_assert_ptr_nonnull(fixture_answer(stage, "cylinder-left")->estimate);
        fixture_text(stage, gauges[i]);
        fixture_says(stage, "1000 psi, E, 2 L/min");
    }
    fixture_text(stage, "and at flow 3?");
    fixture_says(stage, "1000 psi, E, 3 L/min");
    fixture_text(stage, "y en 2?");
    fixture_says(stage, "1000 psi, E, 2 L/min");
}
END_TEST

START_TEST(where_it_is_not_clear_what_is_meant_it_is_asked)
{
    static const struct {
        const char *first, *then;
    } rows[] = {
        {"one at 80% and one at 60%, how long do i have left", "make that 50"},
        {"one at 80% and one at 60%, how long do i have left", "sorry, one is half"},
        {"one battery at 90%, how long do i have left", "make that 2"},
        {"2 full how long do i have left", "make that 10"},
        {"we drive 1 hour and walk 30 min, 2 full. will it last?", "make that 2 hours"},
        {"we drive 1 hour and walk 30 min, 2 full. will it last?", "and another 40 min walk?"},
    };
    size_t i;

    for (i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        begin_with(rows[i].first);
        fixture_text(stage, rows[i].then);
        ck_assert_msg(stage->verdict.answers[0].kind == ANSWER_ASK, "%s: \"%s\"", rows[i].then,
                      fixture_replies(stage));
        ck_assert_ptr_null(stage->verdict.answers[0].estimate);
    }
}
END_TEST

START_TEST(a_text_of_its_own_is_not_taken_for_one_that_goes_on)
{
    static const char *const texts[] = {"and when is it due?",
                                        "and if it rains?",
                                        "and if it stops?",
                                        "and what does it weigh?",
                                        "how do i charge it in the car",
                                        "she walks",
                                        "and she is at 93",
                                        "no idea, I have 2",
                                        "make it stop",
                                        "y cuando la devuelvo?",
                                        "no se si son 2"};
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        begin_with("one battery at 90%, how long do i have left");
        fixture_text(stage, texts[i]);
        ck_assert_msg(fixture_answer(stage, "hours-left") == NULL, "%s: \"%s\"", texts[i],
                      fixture_replies(stage));
    }
}
END_TEST

START_TEST(a_sign_beside_it_is_a_sign)
{
    fixture_text(stage, "2 full how long do i have left");
    fixture_text(stage, "and if she walks she has chest pain");
    ck_assert_int_eq(stage->verdict.route, ROUTE_EMERGENCY);
    fixture_text(stage, "and walking?");
    ck_assert_ptr_null(fixture_answer(stage, "hours-left"));
}
END_TEST

START_TEST(nothing_is_gone_on_with_after_something_else_or_after_a_while)
{
    fixture_text(stage, "2 full how long do i have left");
    fixture_text(stage, "when is it due?");
    fixture_text(stage, "and walking?");
    ck_assert_ptr_null(fixture_answer(stage, "hours-left"));
    begin_with("2 full how long do i have left");
    fixture_text(stage, "thanks");
    fixture_text(stage, "and walking?");
    ck_assert_ptr_nonnull(fixture_answer(stage, "hours-left"));
    begin_with("2 full how long do i have left");
    fixture_wait_minutes(stage, 31);
    fixture_text(stage, "and walking?");
    ck_assert_ptr_null(fixture_answer(stage, "hours-left"));
}
END_TEST

START_TEST(what_is_only_supposed_leaves_the_question_for_a_plug_open_and_due)
{
    int64_t asked_utc_s;

    fixture_text(stage, "one battery at 50%, how long do i have left");
    asked_utc_s = stage->context.conversation.asked_utc_s;
    ck_assert_int_eq(stage->context.conversation.question, QUESTION_PLUG);
    fixture_wait_minutes(stage, 2);
    fixture_text(stage, "and if she walks?");
    ck_assert_int_eq(stage->context.conversation.question, QUESTION_PLUG);
    ck_assert_int_eq(stage->context.conversation.asked_utc_s, asked_utc_s);
    fixture_says(stage, "Is there a plug where you are?");
    fixture_text(stage, "no");
    fixture_alerts(stage, ALERT_URGENT, "power:no-plug");
}
END_TEST

START_TEST(a_correction_to_enough_time_settles_the_plug)
{
    fixture_text(stage, "one full, how long do i have left");
    ck_assert_int_eq(stage->context.conversation.question, QUESTION_PLUG);
    fixture_text(stage, "I mean two full");
    lasts("hours-left", 114);
    ck_assert_int_eq(stage->context.conversation.question, QUESTION_NONE);
}
END_TEST

START_TEST(another_renter_of_the_phone_is_taken_by_name)
{
    fixture_second_rental(stage);
    fixture_text(stage, "Ana has 1 full battery, how long do i have left");
    ck_assert_str_eq(stage->verdict.rental_id, stage->rentals[0].rental_id);
    fixture_text(stage, "no I mean Tom");
    ck_assert_str_eq(stage->verdict.rental_id, stage->rentals[1].rental_id);
    ck_assert_ptr_nonnull(fixture_answer(stage, "hours-left"));
}
END_TEST

START_TEST(did_that_gets_a_short_word_and_is_that_ok_no_blind_yes)
{
    static const char *const did[] = {"did that", "ok did it", "done", "ya lo hice"};
    static const char *const asks[] = {"is that ok?", "is that right?", "asi esta bien?"};
    size_t i;

    for (i = 0; i < sizeof did / sizeof did[0]; i++) {
        begin_with("2 full how long do i have left");
        fixture_text(stage, did[i]);
        ck_assert_msg(fixture_answer(stage, "did-so") != NULL, "%s", did[i]);
        ck_assert_int_eq(stage->verdict.alert.level, ALERT_NONE);
    }
    for (i = 0; i < sizeof asks / sizeof asks[0]; i++) {
        begin_with("2 full how long do i have left");
        fixture_text(stage, asks[i]);
        ck_assert_msg(fixture_answer(stage, "ok-so") != NULL, "%s", asks[i]);
        fixture_says(stage, stage->house.phone);
    }
}
END_TEST

START_TEST(did_that_does_not_answer_what_we_asked)
{
    fixture_text(stage, "one battery at 50%, how long do i have left");
    fixture_text(stage, "did that");
    ck_assert_int_eq(stage->context.conversation.question, QUESTION_PLUG);
    fixture_says(stage, "Is there a plug where you are?");
    begin_with("machine stopped");
    fixture_text(stage, "did that");
    ck_assert_ptr_null(fixture_answer(stage, "did-so"));
    ck_assert_int_eq(stage->context.conversation.question, QUESTION_FLOWING);
}
END_TEST

START_TEST(is_that_ok_is_a_persons_where_we_answered_nothing_or_an_alert_is_open)
{
    fixture_text(stage, "is that ok?");
    ck_assert_ptr_null(fixture_answer(stage, "ok-so"));
    fixture_text(stage, "2 full how long do i have left");
    fixture_alert(stage, 7, "sign:dizzy");
    fixture_text(stage, "is that ok?");
    ck_assert_ptr_null(fixture_answer(stage, "ok-so"));
}
END_TEST

int
main(void)
{
    TCase *tests = tcase_create("follow_up");

    tcase_add_checked_fixture(tests, set_up, tear_down);
    tcase_add_test(tests, another_activity_keeps_the_charges);
    tcase_add_test(tests, another_number_of_batteries_replaces_the_one_told);
    tcase_add_test(tests, one_of_several_that_were_alike_is_corrected_by_itself);
    tcase_add_test(tests, what_was_taken_back_is_counted_from_no_more);
    tcase_add_test(tests, a_charge_of_each_and_no_number_ends_what_was_told_before);
    tcase_add_test(tests, a_bare_number_takes_the_place_of_the_percentage_that_was_told);
    tcase_add_test(tests, corrections_add_up);
    tcase_add_test(tests, a_corrected_charge_is_what_later_texts_count_from);
    tcase_add_test(tests, what_was_used_till_then_counts_as_it_was_used);
    tcase_add_test(tests, a_setting_behind_at_is_counted_with_the_order_that_it_fits);
    tcase_add_test(tests, a_setting_that_is_not_ordered_is_no_way_to_last_longer);
    tcase_add_test(tests, the_leg_that_is_told_anew_is_replaced);
    tcase_add_test(tests, a_bare_number_has_the_unit_of_the_length_that_was_told);
    tcase_add_test(tests, a_charging_time_goes_on_with_other_charges_and_a_time);
    tcase_add_test(tests, a_cylinder_goes_on_with_gauge_and_flow);
    tcase_add_test(tests, where_it_is_not_clear_what_is_meant_it_is_asked);
    tcase_add_test(tests, a_text_of_its_own_is_not_taken_for_one_that_goes_on);
    tcase_add_test(tests, a_sign_beside_it_is_a_sign);
    tcase_add_test(tests, nothing_is_gone_on_with_after_something_else_or_after_a_while);
    tcase_add_test(tests, what_is_only_supposed_leaves_the_question_for_a_plug_open_and_due);
    tcase_add_test(tests, a_correction_to_enough_time_settles_the_plug);
    tcase_add_test(tests, another_renter_of_the_phone_is_taken_by_name);
    tcase_add_test(tests, did_that_gets_a_short_word_and_is_that_ok_no_blind_yes);
    tcase_add_test(tests, did_that_does_not_answer_what_we_asked);
    tcase_add_test(tests, is_that_ok_is_a_persons_where_we_answered_nothing_or_an_alert_is_open);
    return fixture_run(tests);
}
