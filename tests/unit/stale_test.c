/* Replies gone stale: what holds minutes or a clock time is worked out again, never sent as it was.
 */
#include "intake_stage.h"

#include "memory.h"
#include "outbox_rows.h"
#include "settle.h"

static struct outbox_row
first_stale(void)
{
    const char *verdict = asked("SELECT max(verdict_id) FROM outbox JOIN outbox_due"
                                " ON outbox_id = id WHERE expires_utc_s > 0");
    struct outbox_row *rows;
    struct fault fault;
    size_t count;

    ck_assert_int_eq(
        outbox_rows_stale(store, arena, strtoll(verdict, NULL, 10), &rows, &count, &fault), 0);
    ck_assert_msg(count > 0, "no reply expires");
    return rows[0];
}

static void
work_out_again(const struct outbox_row *row, int64_t now_utc_s)
{
    struct workspace *workspace = workspace_new();
    const struct surroundings later = {
        .loaded = &loaded, .workspace = workspace, .now_utc_s = now_utc_s};
    struct fault fault = {""};

    ck_assert_int_eq(store_begin(store, &fault), 0);
    ck_assert_msg(settle_again(store, arena, &later, row, &fault) == 0, "%s", fault.text);
    ck_assert_int_eq(store_commit(store, &fault), 0);
    workspace_free(workspace);
}

START_TEST(a_reply_that_holds_minutes_is_worked_out_again_when_it_is_stale)
{
    struct message question = text_of(ada, "1", "how long have i got left");
    struct message answer = text_of(ada, "2", "one is full and one is half");
    struct outbox_row old, new;

    take(&question);
    take(&answer);
    run();
    old = first_stale();
    ck_assert_int_eq(old.text_id, 2);
    ck_assert_int_ge(old.expires_utc_s, EVENING + loaded.config->limits.stale_s);
    work_out_again(&old, EVENING + 1200);

    /* Decided from where the talk stood then: we had asked for the charge. */
    new = first_stale();
    ck_assert_int_ne(new.id, old.id);
    ck_assert_str_ne(new.body, old.body);
    ck_assert_int_eq(new.give_up_utc_s, old.give_up_utc_s); /* its age goes on counting */
    ck_assert_int_eq(new.expires_utc_s, EVENING + 1200 + loaded.config->limits.stale_s);
    ck_assert_str_eq(asked("SELECT text_id, supersedes,"
                           " json_extract(json, '$.answers[0].estimate.kind') FROM verdict"),
                     "1||\n2||hours-left\n2|2|hours-left\n");
    ck_assert_str_eq(asked("SELECT count(DISTINCT conversation_id) FROM verdict WHERE text_id = 2"),
                     "1\n");
    ck_assert_str_eq(asked("SELECT outbox_id, event FROM outbox_event"),
                     memory_format(arena, "%lld|replaced\n", (long long)old.id));
    /* The account is the renter's word and stays as it was told. */
    ck_assert_str_eq(asked("SELECT count(*) FROM battery_account"), "1\n");

    work_out_again(&old, EVENING + 1300); /* settled already */
    ck_assert_str_eq(asked("SELECT count(*) FROM verdict"), "3\n");
}
END_TEST

static void
mark_sent(int64_t text_id)
{
    struct fault fault = {""};
    struct outbox_row *rows;
    size_t count, i;

    ck_assert_int_eq(outbox_rows_due(store, arena, EVENING + 3600, 10, &rows, &count, &fault), 0);
    ck_assert_int_eq(store_begin(store, &fault), 0);
    for (i = 0; i < count; i++) {
        const struct outbox_result result = {.id = rows[i].id, .event = OUTBOX_ACCEPTED};

        ck_assert(rows[i].text_id != text_id || outbox_rows_result(store, &result, &fault) == 0);
    }
    ck_assert_int_eq(store_commit(store, &fault), 0);
}

enum { SPENT = EVENING + 11 * 3600 }; /* what was told of two batteries is used up by then */

/* Two texts: how much, sent and answered; and how long now, whose reply waits. */
static void
take_how_long_now(const char *now)
{
    struct message told_it = text_of(ada, "1", "i have 2 full, how many hours do i have left");
    struct message asks = text_of(ada, "2", now);

    take(&told_it);
    take(&asks);
    run();
    mark_sent(1);
}

#define NEWEST_QUESTION "SELECT question FROM conversation ORDER BY id DESC LIMIT 1"

START_TEST(a_question_that_is_asked_when_working_out_again_is_open)
{
    struct outbox_row stale;
    struct message answer = text_of(ada, "3", "1 full");

    take_how_long_now("how long now?");
    ck_assert_str_eq(asked(NEWEST_QUESTION), "none\n");
    stale = first_stale();
    ck_assert_int_eq(stale.text_id, 2);
    work_out_again(&stale, SPENT);
    ck_assert_str_eq(asked(NEWEST_QUESTION), "which-charge\n");
    take(&answer);
    run();
    ck_assert_str_eq(asked("SELECT conversation_id = (SELECT max(id) FROM conversation"
                           " WHERE question = 'which-charge') FROM verdict WHERE text_id = 3"),
                     "1\n");
}
END_TEST

START_TEST(a_question_that_is_asked_when_working_out_again_is_open_after_a_later_text_too)
{
    struct message later = text_of(ada, "3", "thanks");
    struct outbox_row stale;

    take_how_long_now("how long now?");
    take(&later);
    run();
    stale = first_stale();
    work_out_again(&stale, SPENT);
    ck_assert_str_eq(asked("SELECT question, text_id, last_utc_s >= (SELECT max(last_utc_s)"
                           " FROM conversation) FROM conversation ORDER BY id DESC LIMIT 1"),
                     "which-charge|2|1\n");
}
END_TEST

START_TEST(what_waits_to_be_sent_is_not_sent_twice_when_no_time_is_left_to_tell)
{
    struct outbox_row stale;

    take_how_long_now("when is it due? how do i charge it at home? and how long now?");
    ck_assert_str_eq(asked("SELECT expires_utc_s > 0 FROM outbox WHERE text_id = 2"), "0\n1\n");
    stale = first_stale();
    work_out_again(&stale, SPENT);
    ck_assert_str_eq(asked("SELECT count(*) FROM outbox_due JOIN outbox ON outbox_id = id"
                           " WHERE body LIKE '%Your rental is due%'"),
                     "1\n");
    ck_assert_str_eq(asked("SELECT count(*) FROM outbox_due JOIN outbox ON outbox_id = id"
                           " WHERE body LIKE '%Text me the lights%'"),
                     "1\n");
}
END_TEST

int
main(void)
{
    Suite *suite = suite_create("stale");
    TCase *tests = tcase_create("stale");
    SRunner *runner;
    int failed;

    tcase_add_unchecked_fixture(tests, stage_load, stage_free);
    tcase_add_checked_fixture(tests, stage_set_up, stage_tear_down);
    tcase_set_timeout(tests, 100);
    tcase_add_test(tests, a_reply_that_holds_minutes_is_worked_out_again_when_it_is_stale);
    tcase_add_test(tests, a_question_that_is_asked_when_working_out_again_is_open);
    tcase_add_test(tests,
                   a_question_that_is_asked_when_working_out_again_is_open_after_a_later_text_too);
    tcase_add_test(tests, what_waits_to_be_sent_is_not_sent_twice_when_no_time_is_left_to_tell);
    suite_add_tcase(suite, tests);
    runner = srunner_create(suite);
    srunner_run_all(runner, CK_ENV);
    failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed == 0 ? 0 : 1;
}
