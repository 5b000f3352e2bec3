/* The outbox and delivery reports: what is sent, what is tried again, what staff are told. */
#include "outbox_stage.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "alert_rows.h"
#include "memory.h"
#include "send_outcome.h"
#include "store_sql.h"
#include "texts.h"
#include "verdict_rows.h"

/* A verdict that replies can belong to. */
static int64_t
a_verdict(void)
{
    const struct message message = {.gateway = "valley", .sender = RENTER, .text = "hello"};
    struct verdict_row row = {.kb_digest = "d", .started_from = "{}", .json = "{}"};
    struct fault fault = {""};
    int64_t id;

    ck_assert_int_eq(store_begin(store, &fault), 0);
    ck_assert_int_eq(texts_add(store, &message, &row.text_id, &fault), 0);
    ck_assert_msg(verdict_rows_add(store, &row, &id, &fault) == 0, "%s", fault.text);
    ck_assert_int_eq(store_commit(store, &fault), 0);
    return id;
}

/* ---- Sending -------------------------------------------------------------------------------- */

START_TEST(what_is_due_is_sent_and_settled)
{
    add_reply("hello", URGENCY_REPLY);
    run_until(is_settled());
    ck_assert_uint_eq(sent_count, 1);
    ck_assert(was_sent(RENTER, "hello"));
}
END_TEST

START_TEST(a_busy_gateway_is_tried_again_with_the_same_key)
{
    answer_status = 503;
    refuse_first = 3;
    add_reply("hello", URGENCY_REPLY);
    run_until(is_settled());
    ck_assert_uint_eq(sent_count, 4);
    ck_assert_str_ne(sent[0].key, "");
    ck_assert_str_eq(sent[0].key, sent[3].key);
}
END_TEST

START_TEST(the_most_urgent_is_sent_first)
{
    config.limits.outbox_running = 1;
    add_reply("office", URGENCY_OFFICE);
    add_reply("reply", URGENCY_REPLY);
    add_reply("emergency", URGENCY_EMERGENCY);
    run_until(is_settled());
    ck_assert_ptr_nonnull(strstr(sent[0].body, "emergency"));
    ck_assert_ptr_nonnull(strstr(sent[1].body, "reply"));
    ck_assert_ptr_nonnull(strstr(sent[2].body, "office"));
}
END_TEST

START_TEST(the_second_text_of_a_reply_waits_for_the_first)
{
    struct outbox_new row = {.about = OUTBOX_REPLY,
                             .to = RENTER,
                             .body = "call 911",
                             .verdict_id = a_verdict(),
                             .urgency = URGENCY_EMERGENCY};

    answer_status = 503;
    refuse_first = 2;
    add(row);
    row.body = "then the address";
    add(row);
    run_until(is_settled());
    ck_assert_uint_eq(sent_count, 4);
    ck_assert_ptr_nonnull(strstr(sent[2].body, "call 911"));
    ck_assert_ptr_nonnull(strstr(sent[3].body, "then the address"));
}
END_TEST

START_TEST(a_refused_reply_ends_in_front_of_a_person)
{
    answer_status = 400;
    refuse_first = 1;
    add_reply("hello", URGENCY_URGENT);
    run_until(was_sent(ROBIN, "not reached"));
    ck_assert(was_sent(ROBIN, RENTER));
}
END_TEST

START_TEST(a_reply_too_old_is_not_sent_but_ends_in_front_of_a_person)
{
    add((struct outbox_new){.about = OUTBOX_REPLY,
                            .to = RENTER,
                            .body = "hello",
                            .urgency = URGENCY_REPLY,
                            .give_up_utc_s = START_UTC_S - 1});
    run_until(was_sent(ROBIN, "not reached"));
    ck_assert(!was_sent(RENTER, "hello"));
}
END_TEST

START_TEST(a_stale_reply_is_worked_out_again_and_not_sent)
{
    add((struct outbox_new){.about = OUTBOX_REPLY,
                            .to = RENTER,
                            .body = "40 minutes",
                            .urgency = URGENCY_REPLY,
                            .expires_utc_s = START_UTC_S - 1});
    run_until(is_settled());
    ck_assert_uint_eq(sent_count, 0);
}
END_TEST

START_TEST(an_emergency_that_nobody_confirms_is_told_to_staff_and_only_once)
{
    struct fault fault = {""};
    struct outbox_row *rows;
    void *arena = talloc_new(NULL);
    size_t count;

    add_reply("call 911", URGENCY_EMERGENCY);
    run_until(was_sent(ROBIN, "not reached"));
    ck_assert_int_ge(clock_now_utc_s(played), START_UTC_S + 120);
    ck_assert_int_eq(
        outbox_rows_unconfirmed(store, arena, START_UTC_S + 100, &rows, &count, &fault), 0);
    ck_assert_uint_eq(count, 0);
    talloc_free(arena);
}
END_TEST

START_TEST(an_emergency_that_no_gateway_takes_is_told_to_staff_when_it_is_late)
{
    answer_status = 503;
    refuse_first = 1000000;
    add_reply("call 911", URGENCY_EMERGENCY);
    run_until(waiting() == 2); /* the reply, and what staff are told */
    ck_assert_int_ge(clock_now_utc_s(played), START_UTC_S + 120);
    ck_assert_int_lt(clock_now_utc_s(played), START_UTC_S + 600);
    refuse_first = 0;
    run_until(was_sent(ROBIN, "not reached") && was_sent(RENTER, "call 911"));
}
END_TEST

START_TEST(an_unrecorded_text_is_sent_without_a_row_and_tried_again)
{
    answer_status = 503;
    refuse_first = 2;
    const struct outbox_row row = {.about = OUTBOX_REPLY,
                                   .gateway = "valley",
                                   .to = RENTER,
                                   .body = "call 911",
                                   .urgency = URGENCY_EMERGENCY};

    ck_assert(outbox_send_unrecorded(outbox, &row));
    ck_assert_uint_eq(outbox_in_hand(outbox), 1);
    run_until(outbox_in_hand(outbox) == 0);
    ck_assert_uint_eq(sent_count, 3);
    ck_assert_str_eq(sent[0].key, sent[2].key);
    ck_assert_int_eq(waiting(), 0);
}
END_TEST

START_TEST(a_closed_outbox_begins_nothing)
{
    outbox_close(outbox);
    add_reply("hello", URGENCY_EMERGENCY);
    event_base_loop(base, EVLOOP_ONCE);
    ck_assert_uint_eq(outbox_in_hand(outbox), 0);
    ck_assert_int_eq(waiting(), 1);
}
END_TEST

/* ---- Delivery reports ----------------------------------------------------------------------- */

static int reports_told;

static void
on_reported(void *data, bool is_written)
{
    (void)data;
    ck_assert(is_written);
    reports_told++;
}

static void
report(const char *id, enum delivery_status status)
{
    const struct delivery delivery = {.message_id = id, .status = status, .word = "told"};

    deliveries_take(deliveries, &gateway, &delivery, on_reported, NULL);
}

START_TEST(a_confirmed_emergency_is_not_told_to_staff)
{
    add_reply("call 911", URGENCY_EMERGENCY);
    run_until(is_settled());
    report("g-1", DELIVERY_DELIVERED);
    run_until(clock_now_utc_s(played) > START_UTC_S + 400);
    ck_assert_int_eq(reports_told, 1);
    ck_assert(!was_sent(ROBIN, "not reached"));
}
END_TEST

START_TEST(a_reply_reported_as_lost_ends_in_front_of_a_person)
{
    add_reply("hello", URGENCY_REPLY);
    run_until(is_settled());
    report("g-1", DELIVERY_FAILED);
    run_until(was_sent(ROBIN, "not reached"));
}
END_TEST

static int64_t
events(const char *sql)
{
    struct fault fault = {""};
    sqlite3_stmt *query = store_query(store, sql, NULL, 0, &fault);
    int64_t count;
    bool more;

    ck_assert_msg(query != NULL && store_next(store, query, &more, &fault) == 0, "%s", fault.text);
    count = sqlite3_column_int64(query, 0);
    store_end(query);
    return count;
}

#define STAFF_TOLD "SELECT count(*) FROM outbox WHERE about = 'alert'"

START_TEST(the_same_failure_reported_again_is_told_once)
{
    int i;

    add_reply("hello", URGENCY_REPLY);
    run_until(is_settled());
    for (i = 1; i <= 5; i++) {
        report("g-1", DELIVERY_FAILED);
        run_until(reports_told == i);
    }
    run_until(was_sent(ROBIN, "not reached") && is_settled());
    ck_assert_int_eq(events(STAFF_TOLD), 1);
    ck_assert_int_eq(events("SELECT count(*) FROM outbox_event WHERE event = 'undelivered'"), 1);
}
END_TEST

START_TEST(a_failure_reported_after_the_text_was_delivered_changes_nothing)
{
    add_reply("hello", URGENCY_REPLY);
    run_until(is_settled());
    report("g-1", DELIVERY_DELIVERED);
    report("g-1", DELIVERY_FAILED);
    run_until(reports_told == 2);
    ck_assert_int_eq(events(STAFF_TOLD), 0);
}
END_TEST

START_TEST(both_texts_of_one_reply_lost_are_told_once)
{
    const struct outbox_new row = {
        .about = OUTBOX_REPLY, .to = RENTER, .body = "hello", .verdict_id = a_verdict()};

    add(row);
    add(row);
    run_until(is_settled());
    report("g-1", DELIVERY_FAILED);
    report("g-2", DELIVERY_FAILED);
    run_until(reports_told == 2 && was_sent(ROBIN, "not reached") && is_settled());
    ck_assert_int_eq(events(STAFF_TOLD), 1);
}
END_TEST

START_TEST(a_report_that_comes_before_our_own_outcome_is_kept_for_it)
{
    add_reply("call 911", URGENCY_EMERGENCY);
    run_until(sent_count == 1); /* the gateway has it; its answer is still on the way to us */
    report("g-1", DELIVERY_DELIVERED);
    run_until(clock_now_utc_s(played) > START_UTC_S + 400);
    ck_assert_int_eq(reports_told, 1);
    ck_assert(!was_sent(ROBIN, "not reached"));
}
END_TEST

START_TEST(a_report_about_nothing_of_ours_is_answered)
{
    report("g-99", DELIVERY_DELIVERED);
    run_until(reports_told == 1);
    ck_assert_uint_eq(sent_count, 0);
}
END_TEST

/* RFC 9110, 15: 2xx took it, 4xx is our fault, 5xx theirs; RFC 6585, 4: 429 is "later"; RFC 8470,
 * 5.2: so is 425. */
START_TEST(a_status_means_what_the_standards_say)
{
    static const struct {
        int status;
        enum outbox_event event;
    } rows[] = {{200, OUTBOX_ACCEPTED},          {202, OUTBOX_ACCEPTED},
                {299, OUTBOX_ACCEPTED},          {400, OUTBOX_REFUSED},
                {404, OUTBOX_REFUSED},           {408, OUTBOX_TRIED_AGAIN_LATER},
                {425, OUTBOX_TRIED_AGAIN_LATER}, {429, OUTBOX_TRIED_AGAIN_LATER},
                {500, OUTBOX_TRIED_AGAIN_LATER}, {503, OUTBOX_TRIED_AGAIN_LATER},
                {302, OUTBOX_TRIED_AGAIN_LATER}, {0, OUTBOX_TRIED_AGAIN_LATER}};
    size_t i;

    for (i = 0; i < sizeof(rows) / sizeof(rows[0]); i++) {
        ck_assert_int_eq(send_outcome_of(rows[i].status), rows[i].event);
    }
}
END_TEST

int
main(void)
{
    TCase *tests = tcase_create("outbox");
    Suite *suite = suite_create("outbox");
    SRunner *runner = srunner_create(suite);
    int failed;

    tcase_set_timeout(tests, 60);
    tcase_add_checked_fixture(tests, stage_begin, stage_end);
    tcase_add_test(tests, what_is_due_is_sent_and_settled);
    tcase_add_test(tests, a_busy_gateway_is_tried_again_with_the_same_key);
    tcase_add_test(tests, the_most_urgent_is_sent_first);
    tcase_add_test(tests, the_second_text_of_a_reply_waits_for_the_first);
    tcase_add_test(tests, a_refused_reply_ends_in_front_of_a_person);
    tcase_add_test(tests, a_reply_too_old_is_not_sent_but_ends_in_front_of_a_person);
    tcase_add_test(tests, a_stale_reply_is_worked_out_again_and_not_sent);
    tcase_add_test(tests, an_emergency_that_nobody_confirms_is_told_to_staff_and_only_once);
    tcase_add_test(tests, an_emergency_that_no_gateway_takes_is_told_to_staff_when_it_is_late);
    tcase_add_test(tests, an_unrecorded_text_is_sent_without_a_row_and_tried_again);
    tcase_add_test(tests, a_closed_outbox_begins_nothing);
    tcase_add_test(tests, a_confirmed_emergency_is_not_told_to_staff);
    tcase_add_test(tests, a_reply_reported_as_lost_ends_in_front_of_a_person);
    tcase_add_test(tests, the_same_failure_reported_again_is_told_once);
    tcase_add_test(tests, a_failure_reported_after_the_text_was_delivered_changes_nothing);
    tcase_add_test(tests, both_texts_of_one_reply_lost_are_told_once);
    tcase_add_test(tests, a_report_that_comes_before_our_own_outcome_is_kept_for_it);
    tcase_add_test(tests, a_report_about_nothing_of_ours_is_answered);
    tcase_add_test(tests, a_status_means_what_the_standards_say);
    suite_add_tcase(suite, tests);
    srunner_run_all(runner, CK_NORMAL);
    failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
