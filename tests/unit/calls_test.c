/* Calls to staff about open alerts: who is called when, and what must not put a call off. */
#include "outbox_stage.h"

#include <stdlib.h>
#include <string.h>

#include "alert_rows.h"
#include "memory.h"
#include "not_reached.h"

/* ---- Alerts --------------------------------------------------------------------------------- */

static int64_t
open_for(enum alert_level level, const char *reason, const char *brief)
{
    const struct alert_row alert = {.level = level,
                                    .phone = RENTER,
                                    .reason = reason,
                                    .brief = brief,
                                    .next_utc_s = clock_now_utc_s(played)};
    struct fault fault = {""};
    int64_t number;
    bool is_new;

    ck_assert_int_eq(store_begin(store, &fault), 0);
    ck_assert_msg(alert_rows_open(store, &alert, alert.next_utc_s, &number, &is_new, &fault) == 0,
                  "%s", fault.text);
    ck_assert_int_eq(store_commit(store, &fault), 0);
    return number;
}

static int64_t
open_alert(enum alert_level level)
{
    int64_t number = open_for(level, "sign:chest-pain", "chest pain");

    alerts_look(alerts);
    return number;
}

static void
is_told(int64_t number, const char *brief)
{
    void *arena = talloc_new(NULL);
    struct fault fault = {""};
    struct alert_row alert;
    bool found;

    ck_assert_int_eq(alert_rows_find(store, arena, number, &alert, &found, &fault), 0);
    ck_assert(found);
    ck_assert_str_eq(alert.brief, brief);
    talloc_free(arena);
}

START_TEST(reasons_that_no_longer_fit_are_left_out_whole_the_newest_being_kept)
{
    int64_t number = open_for(ALERT_URGENT, "sign:power-out", "power is out in the whole valley");

    open_for(ALERT_URGENT, "sign:last-battery", "on the last battery");
    is_told(number, "on the last battery + power is out in the whole valley");
    open_for(ALERT_URGENT, "sign:no-plug", "no plug where they are");
    is_told(number,
            "no plug where they are + on the last battery + power is out in the whole valley");
    open_for(ALERT_URGENT, "sign:unit-hot", "hot unit");
    is_told(number, "hot unit + no plug where they are + on the last battery");
    open_for(ALERT_OFFICE, "office:billing", "asks for a bill");
    is_told(number, "hot unit + no plug where they are + on the last battery + asks for a bill");
}
END_TEST

START_TEST(how_a_renter_can_be_reached_is_never_cut_off)
{
    int64_t number = open_for(ALERT_URGENT, "sign:hot", "hot unit; never ring, text");

    open_for(ALERT_URGENT, "sign:no-plug", "no plug where they are");
    is_told(number, "no plug where they are + hot unit; never ring, text");
    open_for(ALERT_URGENT, "sign:hot", "hot unit");
    is_told(number, "no plug where they are + hot unit; never ring, text");
    open_for(ALERT_URGENT, "sign:power-out", "power is out in the whole valley");
    is_told(number, "power is out in the whole valley + no plug where they are; never ring, text");
}
END_TEST

START_TEST(a_single_long_reason_is_cut_between_words)
{
    int64_t number = open_for(ALERT_OFFICE, "office:one", "x");

    open_for(ALERT_OFFICE, "office:two",
             "a very long reason that goes on and on until it is longer than any text may take up");
    is_told(number,
            "a very long reason that goes on and on until it is longer than any text may take");
}
END_TEST

START_TEST(a_reason_that_is_named_already_is_not_named_again_but_part_of_a_word_is_no_name)
{
    int64_t number = open_for(ALERT_URGENT, "sign:hot", "hot unit");

    open_for(ALERT_URGENT, "sign:unit", "unit");
    is_told(number, "unit + hot unit");
    open_for(ALERT_URGENT, "sign:hot", "hot unit");
    is_told(number, "unit + hot unit");
}
END_TEST

START_TEST(an_emergency_calls_the_first_and_two_minutes_later_the_next)
{
    open_alert(ALERT_EMERGENCY);
    run_until(was_sent(ROBIN, "chest pain"));
    ck_assert(!was_sent(KIM, "chest pain"));
    run_until(was_sent(KIM, "chest pain"));
    ck_assert_int_ge(clock_now_utc_s(played), START_UTC_S + 120);
}
END_TEST

START_TEST(an_office_alert_is_called_once)
{
    size_t calls;

    open_alert(ALERT_OFFICE);
    run_until(was_sent(ROBIN, "OFFICE"));
    run_until(is_settled());
    calls = sent_count;
    run_until(clock_now_utc_s(played) > START_UTC_S + 2000);
    ck_assert_uint_eq(sent_count, calls);
    ck_assert_uint_eq(calls, 1);
}
END_TEST

static int64_t
next_call(void)
{
    struct fault fault = {""};
    int64_t next_utc_s;

    ck_assert_int_eq(alert_rows_next(store, &next_utc_s, &fault), 0);
    return next_utc_s;
}

/* The reply to the renter fails for good, in a transaction of its own, at this moment. */
static void
lose_a_reply(int64_t now_utc_s)
{
    const struct outbox_row row = {.about = OUTBOX_REPLY,
                                   .gateway = "valley",
                                   .to = RENTER,
                                   .body = "hello",
                                   .urgency = URGENCY_EMERGENCY};
    struct fault fault = {""};
    void *arena = talloc_new(NULL);
    const struct caller caller = {
        .config = &config, .store = store, .arena = arena, .now_utc_s = now_utc_s};

    ck_assert_int_eq(store_begin(store, &fault), 0);
    ck_assert_msg(not_reached(&caller, &row, OUTBOX_GIVEN_UP, &fault) == 0, "%s", fault.text);
    ck_assert_int_eq(store_commit(store, &fault), 0);
    talloc_free(arena);
}

START_TEST(replies_that_are_lost_again_and_again_do_not_put_off_the_next_call)
{
    int64_t now_utc_s, due_utc_s;

    open_alert(ALERT_EMERGENCY);
    run_until(was_sent(ROBIN, "chest pain"));
    due_utc_s = next_call();
    for (now_utc_s = due_utc_s - 100; now_utc_s < due_utc_s; now_utc_s += 30) {
        lose_a_reply(now_utc_s);
        ck_assert_int_eq(next_call(), due_utc_s);
    }
    outbox_look(outbox);
    run_until(was_sent(KIM, "not reached") && was_sent(KIM, "chest pain"));
}
END_TEST

static size_t
count_sent(const char *to, const char *piece)
{
    size_t count = 0, i;

    for (i = 0; i < sent_count; i++) {
        count += strstr(sent[i].body, to) != NULL && strstr(sent[i].body, piece) != NULL;
    }
    return count;
}

START_TEST(a_renter_hears_once_that_nobody_has_answered_when_everyone_is_called)
{
    open_alert(ALERT_EMERGENCY);
    run_until(was_sent(KIM, "chest pain"));
    ck_assert(!was_sent(RENTER, "Nobody of our staff has answered yet"));
    run_until(was_sent(RENTER, "Nobody of our staff has answered yet; all of them are being "
                               "called. Don't wait for us: call "));
    ck_assert_int_ge(clock_now_utc_s(played), START_UTC_S + 300);
    run_until(clock_now_utc_s(played) > START_UTC_S + 900);
    ck_assert_uint_eq(count_sent(RENTER, "Nobody of our staff"), 1);
}
END_TEST

static int
take(int64_t number, const char *who, int64_t now_utc_s, bool *taken)
{
    const struct alert_hand hand = {.who = who, .road = "text", .now_utc_s = now_utc_s};
    struct fault fault = {""};

    return alert_rows_take(store, number, &hand, now_utc_s + 300, taken, &fault);
}

START_TEST(replies_that_are_lost_do_not_put_off_the_recheck_of_a_taken_alert)
{
    int64_t now_utc_s = clock_now_utc_s(played);
    int64_t number = open_alert(ALERT_EMERGENCY);
    bool taken;

    ck_assert_int_eq(take(number, ROBIN, now_utc_s, &taken), 0);
    lose_a_reply(now_utc_s + 200);
    ck_assert_int_eq(next_call(), now_utc_s + 300);
}
END_TEST

START_TEST(a_call_that_grew_too_old_is_made_again_if_no_other_is_to_come)
{
    answer_status = 503;
    refuse_first = 3;
    config.limits.give_up_s = 15;
    open_alert(ALERT_OFFICE);
    run_until(sent_count > 3);
    ck_assert(was_sent(ROBIN, "OFFICE"));
    ck_assert_str_ne(sent[sent_count - 1].key, sent[0].key); /* another text */
    run_until(is_settled());
    ck_assert_int_eq(next_call(), INT64_MAX);
}
END_TEST

START_TEST(a_call_that_everyone_in_line_is_refused_is_made_again)
{
    answer_status = 400;
    refuse_first = 2; /* Robin's and Kim's */
    open_alert(ALERT_OFFICE);
    run_until(sent_count > 2);
    ck_assert_ptr_nonnull(strstr(sent[2].body, ROBIN));
}
END_TEST

START_TEST(a_call_that_is_refused_goes_to_the_next_in_line_at_once)
{
    answer_status = 400;
    refuse_first = 1;
    open_alert(ALERT_URGENT);
    run_until(was_sent(KIM, "chest pain"));
    ck_assert_int_lt(clock_now_utc_s(played), START_UTC_S + 600);
}
END_TEST

START_TEST(a_taken_alert_is_quiet_until_its_recheck_and_then_may_change_hands)
{
    int64_t number = open_alert(ALERT_EMERGENCY);
    int64_t now_utc_s;
    bool taken;

    run_until(was_sent(ROBIN, "chest pain"));
    now_utc_s = clock_now_utc_s(played);
    ck_assert_int_eq(take(number, ROBIN, now_utc_s, &taken), 0);
    ck_assert(taken);
    ck_assert_int_eq(take(number, KIM, now_utc_s, &taken), 0);
    ck_assert(!taken);
    run_until(was_sent(KIM, "Taken by Robin"));
    ck_assert_int_ge(clock_now_utc_s(played), now_utc_s + 300);
    now_utc_s = clock_now_utc_s(played);
    ck_assert_int_eq(take(number, KIM, now_utc_s, &taken), 0);
    ck_assert(taken);
}
END_TEST

int
main(void)
{
    TCase *tests = tcase_create("calls");
    Suite *suite = suite_create("calls");
    SRunner *runner = srunner_create(suite);
    int failed;

    tcase_set_timeout(tests, 60);
    tcase_add_checked_fixture(tests, stage_begin, stage_end);
    tcase_add_test(tests, reasons_that_no_longer_fit_are_left_out_whole_the_newest_being_kept);
    tcase_add_test(tests, how_a_renter_can_be_reached_is_never_cut_off);
    tcase_add_test(tests, a_single_long_reason_is_cut_between_words);
    tcase_add_test(tests,
                   a_reason_that_is_named_already_is_not_named_again_but_part_of_a_word_is_no_name);
    tcase_add_test(tests, an_emergency_calls_the_first_and_two_minutes_later_the_next);
    tcase_add_test(tests, a_renter_hears_once_that_nobody_has_answered_when_everyone_is_called);
    tcase_add_test(tests, an_office_alert_is_called_once);
    tcase_add_test(tests, replies_that_are_lost_again_and_again_do_not_put_off_the_next_call);
    tcase_add_test(tests, replies_that_are_lost_do_not_put_off_the_recheck_of_a_taken_alert);
    tcase_add_test(tests, a_call_that_grew_too_old_is_made_again_if_no_other_is_to_come);
    tcase_add_test(tests, a_call_that_everyone_in_line_is_refused_is_made_again);
    tcase_add_test(tests, a_call_that_is_refused_goes_to_the_next_in_line_at_once);
    tcase_add_test(tests, a_taken_alert_is_quiet_until_its_recheck_and_then_may_change_hands);
    suite_add_tcase(suite, tests);
    srunner_run_all(runner, CK_NORMAL);
    failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
