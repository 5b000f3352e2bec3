/* Questions that wait for an answer: their rows, and what an older store becomes. */
#include <check.h>
#include <stdlib.h>
#include <unistd.h>

#include <sqlite3.h>

#include "alert_rows.h"
#include "answer_rows.h"
#include "conversation_rows.h"
#include "memory.h"
#include "store_migrate.h"
#include "texts.h"
#include "unanswered.h"

#define RENTER "+12085550123"
#define DAUGHTER "+12085550124"

static struct store *store;
static void *arena;
static struct fault fault;
static int64_t text_id;

#define MUST(call) ck_assert_msg((call) == 0, "%s", fault.text)

static void
add_text(void)
{
    const struct message message = {.gateway = "valley",
                                    .sender = RENTER,
                                    .text = "it stopped",
                                    .sent_utc_s = 1770000000,
                                    .received_utc_s = 1770000000};

    MUST(texts_add(store, &message, &text_id, &fault));
}

static void
set_up(void)
{
    arena = memory_must(talloc_new(NULL));
    MUST(store_open(NULL, STORE_IN_MEMORY, &store, &fault));
    add_text();
}

static void
tear_down(void)
{
    store_close(store);
    talloc_free(arena);
}

static void
wait_for(const char *phone, enum open_question question, int64_t due_utc_s)
{
    const struct answer_row row = {.phone = phone,
                                   .question = question,
                                   .rental_id = "R-1",
                                   .text_id = text_id,
                                   .due_utc_s = due_utc_s};

    MUST(answer_rows_wait(store, &row, &fault));
}

static int64_t
next(void)
{
    int64_t next_utc_s;

    MUST(answer_rows_next(store, &next_utc_s, &fault));
    return next_utc_s;
}

START_TEST(the_same_question_once_more_keeps_its_time_and_a_graver_one_has_its_own)
{
    ck_assert_int_eq(next(), INT64_MAX);
    wait_for(RENTER, QUESTION_PLUG, 1000);
    wait_for(RENTER, QUESTION_PLUG, 1300);
    ck_assert_int_eq(next(), 1000);
    wait_for(RENTER, QUESTION_FLOWING, 1500);
    ck_assert_int_eq(next(), 1500);
}
END_TEST

START_TEST(only_what_is_due_is_told_and_an_answer_ends_it)
{
    struct answer_row *rows;
    size_t count;

    wait_for(RENTER, QUESTION_FLOWING, 1000);
    wait_for(DAUGHTER, QUESTION_PLUG, 2000);
    MUST(answer_rows_due(store, arena, 1000, &rows, &count, &fault));
    ck_assert_uint_eq(count, 1);
    ck_assert_str_eq(rows[0].phone, RENTER);
    ck_assert_int_eq(rows[0].question, QUESTION_FLOWING);
    MUST(answer_rows_drop(store, RENTER, &fault));
    ck_assert_int_eq(next(), 2000);
}
END_TEST

START_TEST(of_a_rental_at_rest_nobody_is_waited_for)
{
    wait_for(RENTER, QUESTION_FLOWING, 1000);
    wait_for(DAUGHTER, QUESTION_PLUG, 2000);
    MUST(answer_rows_drop_rental(store, "R-1", &fault));
    ck_assert_int_eq(next(), INT64_MAX);
}
END_TEST

START_TEST(no_answer_raises_the_alert_that_is_open_and_is_told_once)
{
    const struct alert_row urgent = {.level = ALERT_URGENT,
                                     .rental_id = "R-1",
                                     .phone = RENTER,
                                     .reason = "sign:unit-stopped",
                                     .brief = "no oxygen",
                                     .text_id = text_id,
                                     .next_utc_s = 700};
    struct open_alert *alerts;
    int64_t number;
    size_t count;
    bool is_new;

    MUST(alert_rows_open(store, &urgent, 700, &number, &is_new, &fault));
    wait_for(RENTER, QUESTION_FLOWING, 1000);
    MUST(unanswered_call(store, arena, 999, &fault));
    MUST(alert_rows_open_of(store, arena, RENTER, &alerts, &count, &fault));
    ck_assert_int_eq(alerts[0].level, ALERT_URGENT);
    MUST(unanswered_call(store, arena, 1000, &fault));
    MUST(alert_rows_open_of(store, arena, RENTER, &alerts, &count, &fault));
    ck_assert_uint_eq(count, 1);
    ck_assert_int_eq(alerts[0].level, ALERT_EMERGENCY);
    ck_assert_str_eq(alerts[0].reason, "flowing:no-answer");
    ck_assert_str_eq(alerts[0].reasons, "sign:unit-stopped,flowing:no-answer");
    ck_assert_int_eq(next(), INT64_MAX);
}
END_TEST

START_TEST(a_store_of_the_first_version_takes_the_newer_question)
{
    char folder[] = "/tmp/hutbell-answers-XXXXXX";
    const struct conversation none = {0},
                              asking = {.question = QUESTION_PLUG, .asked_utc_s = 1770000000};
    struct conversation_step step = {RENTER, 0, "it stopped", &none};
    struct conversation after;
    sqlite3 *database;
    char *path;
    bool lost;

    ck_assert_ptr_nonnull(mkdtemp(folder));
    path = memory_format(arena, "%s/old.db", folder);
    ck_assert_int_eq(sqlite3_open(path, &database), SQLITE_OK);
    MUST(store_migrate(database, NULL, schema_migrations, 1, &fault));
    sqlite3_close(database);

    store_close(store);
    MUST(store_open(path, STORE_WRITE, &store, &fault));
    add_text();
    step.text_id = text_id;
    MUST(conversation_rows_add(store, &step, &asking, &lost, &fault));
    MUST(conversation_rows_newest(store, arena, RENTER, &after, &fault));
    ck_assert_int_eq(after.question, QUESTION_PLUG);
    ck_assert_int_eq(system(memory_format(arena, "rm -rf %s", folder)), 0);
}
END_TEST

int
main(void)
{
    TCase *tests = tcase_create("answer rows");
    Suite *suite = suite_create("store");
    SRunner *runner = srunner_create(suite);
    int failed;

    tcase_add_checked_fixture(tests, set_up, tear_down);
    tcase_add_test(tests, the_same_question_once_more_keeps_its_time_and_a_graver_one_has_its_own);
    tcase_add_test(tests, only_what_is_due_is_told_and_an_answer_ends_it);
    tcase_add_test(tests, of_a_rental_at_rest_nobody_is_waited_for);
    tcase_add_test(tests, no_answer_raises_the_alert_that_is_open_and_is_told_once);
    tcase_add_test(tests, a_store_of_the_first_version_takes_the_newer_question);
    suite_add_tcase(suite, tests);
    srunner_run_all(runner, CK_NORMAL);
    failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
