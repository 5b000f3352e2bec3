/* The store: its schema, its migrations, who may open it, and what stays as it was written. */
#include <check.h>

#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include "conversation_rows.h"
#include "memory.h"
#include "outbox_rows.h"
#include "store.h"
#include "store_migrate.h"
#include "texts.h"
#include "verdict_rows.h"

static char folder[64];
static void *arena;
static struct fault fault;

static void
set_up(void)
{
    strcpy(folder, "/tmp/hutbell-store-XXXXXX");
    ck_assert_ptr_nonnull(mkdtemp(folder));
    arena = memory_must(talloc_new(NULL));
}

static void
tear_down(void)
{
    char *command = memory_format(arena, "rm -rf %s", folder);

    ck_assert_int_eq(chmod(folder, 0700), 0);
    ck_assert_int_eq(system(command), 0);
    talloc_free(arena);
}

static char *
in_folder(const char *name)
{
    return memory_format(arena, "%s/%s", folder, name);
}

static struct store *
opened(const char *path, enum store_mode mode)
{
    struct store *store;

    ck_assert_msg(store_open(path, mode, &store, &fault) == 0, "%s", fault.text);
    return store;
}

static void
run(const char *path, const char *sql)
{
    sqlite3 *database;

    ck_assert_int_eq(sqlite3_open(path, &database), SQLITE_OK);
    ck_assert_msg(sqlite3_exec(database, sql, NULL, NULL, NULL) == SQLITE_OK, "%s",
                  sqlite3_errmsg(database));
    sqlite3_close(database);
}

/* The first column of the first row, as text. */
static char *
asked(const char *path, const char *sql)
{
    sqlite3_stmt *query;
    sqlite3 *database;
    char *answer;

    ck_assert_int_eq(sqlite3_open_v2(path, &database, SQLITE_OPEN_READONLY, NULL), SQLITE_OK);
    ck_assert_msg(sqlite3_prepare_v2(database, sql, -1, &query, NULL) == SQLITE_OK, "%s",
                  sqlite3_errmsg(database));
    ck_assert_int_eq(sqlite3_step(query), SQLITE_ROW);
    answer = memory_copy(arena, (const char *)sqlite3_column_text(query, 0));
    sqlite3_finalize(query);
    sqlite3_close(database);
    return answer;
}

#define MUST(call)                                                                                 \
    do {                                                                                           \
        ck_assert_msg((call) == 0, "%s", fault.text);                                              \
    } while (0)

static const struct message three_am = {.gateway = "valley",
                                        .id = "m-1",
                                        .sender = "+12085550123",
                                        .text = "zebra battery one left",
                                        .sent_utc_s = 1770000000,
                                        .received_utc_s = 1770000001};

/* ---- Schema and migrations ----------------------------------------------------------------- */

/* Every object's SQL, comments and spaces gone: ALTER TABLE writes them otherwise than we do. */
static char *
schema_of(sqlite3 *database)
{
    char *all = memory_copy(arena, "");
    sqlite3_stmt *query;
    const char *c;

    ck_assert_int_eq(sqlite3_prepare_v2(database,
                                        "SELECT type, name, sql FROM sqlite_schema"
                                        " WHERE sql IS NOT NULL ORDER BY type, name",
                                        -1, &query, NULL),
                     SQLITE_OK);
    while (sqlite3_step(query) == SQLITE_ROW) {
        memory_append(&all, "%s %s ", sqlite3_column_text(query, 0), sqlite3_column_text(query, 1));
        for (c = (const char *)sqlite3_column_text(query, 2); *c != '\0'; c++) {
            if (strncmp(c, "--", 2) == 0) {
                c += strcspn(c, "\n") - 1;
            } else if (strchr(" \n", *c) == NULL) {
                memory_append(&all, "%c", *c);
            }
        }
        memory_append(&all, "\n");
    }
    sqlite3_finalize(query);
    return all;
}

START_TEST(a_fresh_schema_equals_a_migrated_one)
{
    sqlite3 *fresh, *migrated;

    ck_assert_int_eq(sqlite3_open(":memory:", &fresh), SQLITE_OK);
    ck_assert_int_eq(sqlite3_open(":memory:", &migrated), SQLITE_OK);
    MUST(store_create(fresh, schema_sql, 1, &fault));
    MUST(store_migrate(migrated, NULL, schema_migrations, schema_migration_count, &fault));
    ck_assert_uint_gt(strlen(schema_of(fresh)), 1000);
    ck_assert_str_eq(schema_of(fresh), schema_of(migrated));
    sqlite3_close(fresh);
    sqlite3_close(migrated);
}
END_TEST

START_TEST(every_table_is_strict)
{
    store_close(opened(in_folder("a.db"), STORE_WRITE));
    ck_assert_str_eq(
        asked(in_folder("a.db"), "SELECT count(*) || ' of ' || count(*) FILTER (WHERE strict)"
                                 " FROM pragma_table_list"
                                 " WHERE schema = 'main' AND name NOT LIKE 'sqlite_%'"),
        asked(in_folder("a.db"), "SELECT count(*) || ' of ' || count(*) FROM sqlite_schema"
                                 " WHERE type = 'table' AND name NOT LIKE 'sqlite_%'"));
}
END_TEST

static const struct migration invented[] = {
    {1, "CREATE TABLE migration (version INTEGER, program TEXT); CREATE TABLE a (x INTEGER)"},
    {2, "ALTER TABLE a ADD COLUMN y INTEGER; INSERT INTO a VALUES (1, 2)"},
    {3, "CREATE TABLE b (z INTEGER); INSERT INTO nowhere VALUES (1)"},
};

START_TEST(a_copy_is_made_before_migrating)
{
    char *path = in_folder("old.db");
    sqlite3 *database;

    ck_assert_int_eq(sqlite3_open(path, &database), SQLITE_OK);
    MUST(store_create(database, invented[0].sql, 1, &fault));
    MUST(store_migrate(database, path, invented, 2, &fault));
    sqlite3_close(database);

    ck_assert_str_eq(asked(path, "SELECT x || y FROM a"), "12");
    ck_assert_str_eq(asked(in_folder("old.db.version-1"), "SELECT count(*) FROM a"), "0");
    ck_assert_str_eq(asked(in_folder("old.db.version-1"), "PRAGMA user_version"), "1");
}
END_TEST

START_TEST(a_migration_that_fails_leaves_the_file_as_it_was)
{
    char *path = in_folder("old.db");
    sqlite3 *database;

    ck_assert_int_eq(sqlite3_open(path, &database), SQLITE_OK);
    MUST(store_create(database, invented[0].sql, 1, &fault));
    ck_assert_int_eq(store_migrate(database, path, invented, 3, &fault), -1);
    ck_assert_ptr_nonnull(strstr(fault.text, "nowhere"));
    sqlite3_close(database);

    ck_assert_str_eq(asked(path, "PRAGMA user_version"), "1");
    ck_assert_str_eq(asked(path, "SELECT count(*) FROM pragma_table_info('a')"), "1");
}
END_TEST

/* ---- Who may open it ----------------------------------------------------------------------- */

static char *
refused(const char *path, enum store_mode mode)
{
    struct store *store = NULL;

    ck_assert_int_eq(store_open(path, mode, &store, &fault), -1);
    ck_assert_ptr_null(store);
    ck_assert_ptr_nonnull(strstr(fault.text, path));
    return memory_copy(arena, fault.text);
}

START_TEST(a_file_of_a_newer_program_is_refused)
{
    char *path = in_folder("newer.db");

    store_close(opened(path, STORE_WRITE));
    run(path, "PRAGMA user_version = 1000");
    ck_assert_ptr_nonnull(strstr(refused(path, STORE_WRITE), "newer program"));
    ck_assert_ptr_nonnull(strstr(refused(path, STORE_READ), "newer program"));
}
END_TEST

START_TEST(a_database_of_another_program_is_refused)
{
    char *path = in_folder("other.db");

    run(path, "CREATE TABLE groceries (name TEXT)");
    ck_assert_ptr_nonnull(strstr(refused(path, STORE_WRITE), "another program"));
    ck_assert_str_eq(asked(path, "SELECT count(*) FROM sqlite_schema"), "1");
}
END_TEST

START_TEST(a_file_that_is_no_database_is_refused)
{
    char *path = in_folder("text.db");
    FILE *file = fopen(path, "w");

    ck_assert_ptr_nonnull(file);
    fputs("Dear diary, this is certainly no database, however long I go on writing in it.", file);
    fclose(file);
    refused(path, STORE_WRITE);
    refused(path, STORE_READ);
}
END_TEST

START_TEST(reading_makes_no_file)
{
    char *path = in_folder("nowhere.db");

    refused(path, STORE_READ);
    ck_assert_int_eq(access(path, F_OK), -1);

    path = in_folder("a.db");
    store_close(opened(path, STORE_WRITE));
    store_close(opened(path, STORE_READ));
    ck_assert_int_eq(access(in_folder("a.db-wal"), F_OK), -1);
    ck_assert_int_eq(access(in_folder("a.db-shm"), F_OK), -1);
}
END_TEST

/* Does something in a process of nobody, whom a read-only folder stops; returns its result. */
static int
as_nobody(int (*act)(const char *path), const char *path)
{
    pid_t child = fork();
    int status;

    ck_assert_int_ge(child, 0);
    if (child == 0) {
        if (geteuid() == 0 && (setgid(65534) != 0 || setuid(65534) != 0)) {
            _exit(100);
        }
        _exit(access(folder, W_OK) == 0 ? 101 : act(path));
    }
    ck_assert_int_eq(waitpid(child, &status, 0), child);
    ck_assert(WIFEXITED(status));
    return WEXITSTATUS(status);
}

static int64_t
text_stored(struct store *store, const struct message *message)
{
    int64_t id = 0;

    MUST(store_begin(store, &fault));
    MUST(texts_add(store, message, &id, &fault));
    MUST(store_commit(store, &fault));
    return id;
}

/* 0: read it and found the text. */
static int
read_first_text(const char *path)
{
    struct store *store;
    struct message message;
    bool found;

    if (store_open(path, STORE_READ, &store, &fault) != 0) {
        return strstr(fault.text, "newest texts") != NULL ? 1 : 2;
    }
    if (texts_load(store, arena, 1, &message, &found, &fault) != 0 || !found) {
        return 3;
    }
    store_close(store);
    return strcmp(message.text, three_am.text) == 0 ? 0 : 4;
}

START_TEST(a_closed_store_is_read_in_a_folder_that_is_read_only)
{
    char *path = in_folder("a.db");
    struct store *store = opened(path, STORE_WRITE);

    ck_assert_int_eq(text_stored(store, &three_am), 1);
    store_close(store);
    ck_assert_int_eq(chmod(path, 0444), 0);
    ck_assert_int_eq(chmod(folder, 0555), 0);
    ck_assert_int_eq(as_nobody(read_first_text, path), 0);
}
END_TEST

START_TEST(a_running_store_is_read_in_a_folder_that_is_read_only)
{
    char *path = in_folder("a.db");
    struct store *store = opened(path, STORE_WRITE);

    ck_assert_int_eq(text_stored(store, &three_am), 1);
    ck_assert_int_eq(chmod(folder, 0555), 0);
    ck_assert_int_eq(as_nobody(read_first_text, path), 0);
    store_close(store);
}
END_TEST

START_TEST(a_store_that_was_cut_short_is_not_read_without_its_newest_texts)
{
    char *path = in_folder("a.db");
    char *copy = in_folder("left.db");
    struct store *store = opened(path, STORE_WRITE);

    text_stored(store, &three_am);
    /* As after a power cut: the file and its -wal, but no -shm. */
    ck_assert_int_eq(
        system(memory_format(arena, "cp %s %s && cp %s-wal %s-wal", path, copy, path, copy)), 0);
    store_close(store);
    ck_assert_int_eq(chmod(folder, 0555), 0);
    ck_assert_int_eq(as_nobody(read_first_text, copy), 1);
    ck_assert_int_eq(chmod(folder, 0700), 0);
    ck_assert_int_eq(read_first_text(copy), 0); /* who may write there reads it whole */
}
END_TEST

START_TEST(a_store_is_read_while_the_daemon_writes)
{
    char *path = in_folder("a.db");
    struct store *writer = opened(path, STORE_WRITE);
    struct store *reader = opened(path, STORE_READ);
    struct store *copy;
    struct message message;
    int64_t id;
    bool found;

    id = text_stored(writer, &three_am);
    MUST(store_copy(reader, &copy, &fault));
    MUST(texts_load(copy, arena, id, &message, &found, &fault));
    ck_assert(found);
    /* The copy can be written, and that changes nothing but itself. */
    ck_assert_int_gt(text_stored(copy, &three_am), id);
    MUST(texts_load(writer, arena, id + 1, &message, &found, &fault));
    ck_assert(!found);
    store_close(copy);
    store_close(reader);
    store_close(writer);
}
END_TEST

START_TEST(a_reader_cannot_write)
{
    char *path = in_folder("a.db");
    struct store *store;
    int64_t id;

    store_close(opened(path, STORE_WRITE));
    store = opened(path, STORE_READ);
    ck_assert_int_eq(texts_add(store, &three_am, &id, &fault), -1);
    store_close(store);
}
END_TEST

START_TEST(a_second_writer_finds_it_busy_and_no_more)
{
    char *path = in_folder("a.db");
    struct store *first = opened(path, STORE_WRITE), *second = opened(path, STORE_WRITE);

    MUST(store_begin(first, &fault));
    ck_assert_int_eq(store_begin(second, &fault), -1);
    ck_assert(store_is_busy(second));
    MUST(store_commit(first, &fault));
    MUST(store_begin(second, &fault));
    store_rollback(second);
    store_close(first);
    store_close(second);
}
END_TEST

/* ---- What stays ---------------------------------------------------------------------------- */

START_TEST(what_is_written_for_a_text_can_neither_be_changed_nor_deleted)
{
    static const char *const attempts[] = {
        "DELETE FROM text",
        "UPDATE text SET body = 'other words'",
        "UPDATE text SET sender = '+12085550199'",
        "DELETE FROM consent",
        "UPDATE consent SET given = 1",
    };
    char *path = in_folder("a.db");
    struct store *store = opened(path, STORE_WRITE);
    int64_t id = text_stored(store, &three_am);
    sqlite3 *database;
    size_t i;

    MUST(consent_rows_add(store, three_am.sender, false, id, 1770000001, &fault));
    store_close(store);
    ck_assert_int_eq(sqlite3_open(path, &database), SQLITE_OK);
    for (i = 0; i < sizeof(attempts) / sizeof(attempts[0]); i++) {
        ck_assert_int_ne(sqlite3_exec(database, attempts[i], NULL, NULL, NULL), SQLITE_OK);
        ck_assert_ptr_nonnull(strstr(sqlite3_errmsg(database), "append-only"));
    }
    sqlite3_close(database);
}
END_TEST

/* Whether these bytes stand anywhere in the file. */
static bool
holds(const char *path, const char *needle)
{
    FILE *file = fopen(path, "rb");
    char *bytes;
    long length;
    bool found;

    ck_assert_ptr_nonnull(file);
    fseek(file, 0, SEEK_END);
    length = ftell(file);
    rewind(file);
    bytes = memory_must(malloc((size_t)length));
    ck_assert_uint_eq(fread(bytes, 1, (size_t)length, file), (size_t)length);
    found = memmem(bytes, (size_t)length, needle, strlen(needle)) != NULL;
    free(bytes);
    fclose(file);
    return found;
}

static int64_t
verdict_stored(struct store *store, int64_t text_id)
{
    int64_t id = 0;

    MUST(verdict_rows_add(store,
                          &(struct verdict_row){.text_id = text_id,
                                                .at_utc_s = 1770000001,
                                                .kb_digest = "d",
                                                .started_from = "{}",
                                                .route = ROUTE_ANSWER,
                                                .json = "{\"impossible\":\"zebra battery\"}"},
                          &id, &fault));
    return id;
}

START_TEST(every_question_of_ours_is_kept)
{
    struct store *store = opened(in_folder("a.db"), STORE_WRITE);
    struct conversation before = {.row = 0}, after;
    struct conversation_step step = {three_am.sender, text_stored(store, &three_am), three_am.text,
                                     &before};
    int question;
    bool lost;

    for (question = QUESTION_NONE; question <= QUESTION_READING_OR_AGE; question++) {
        struct conversation asking = {.question = (enum open_question)question};

        MUST(conversation_rows_add(store, &step, &asking, &lost, &fault));
        MUST(conversation_rows_newest(store, arena, three_am.sender, &after, &fault));
        ck_assert_int_eq(after.question, question);
    }
    store_close(store);
}
END_TEST

START_TEST(a_text_that_was_erased_leaves_no_words_behind)
{
    char *path = in_folder("a.db");
    struct store *store = opened(path, STORE_WRITE);
    int64_t text_id = text_stored(store, &three_am);
    struct conversation asking = {.question = QUESTION_WHICH_CHARGE,
                                  .asked_about = "zebra battery"};
    struct conversation before = {.row = 0}, after;
    struct conversation_step step = {three_am.sender, text_id, three_am.text, &before};
    struct outbox_new reply = {.text_id = text_id,
                               .gateway = "valley",
                               .to = three_am.sender,
                               .body = "What is in the zebra battery?",
                               .urgency = URGENCY_REPLY,
                               .now_utc_s = 1770000001};
    int64_t reply_id;
    bool lost, erased;

    reply.verdict_id = verdict_stored(store, text_id);
    MUST(conversation_rows_add(store, &step, &asking, &lost, &fault));
    ck_assert(!lost);
    MUST(outbox_rows_add(store, &reply, &reply_id, &fault));
    MUST(texts_erase(store, text_id, 1780000000, &erased, &fault));
    ck_assert_msg(!erased, "a reply that is still to be sent goes first");
    MUST(outbox_rows_result(
        store,
        &(struct outbox_result){.id = reply_id, .event = OUTBOX_ACCEPTED, .now_utc_s = 1770000002},
        &fault));
    MUST(texts_erase(store, text_id, 1780000000, &erased, &fault));
    ck_assert(erased);
    MUST(conversation_rows_newest(store, arena, three_am.sender, &after, &fault));
    ck_assert_int_eq(after.question, QUESTION_WHICH_CHARGE);
    ck_assert_ptr_null(after.asked_about);
    store_close(store);

    run(path, "VACUUM");
    ck_assert(holds(path, three_am.sender)); /* the search does find what is there */
    ck_assert(!holds(path, "zebra"));
}
END_TEST

int
main(void)
{
    Suite *suite = suite_create("store");
    TCase *tests = tcase_create("store");
    SRunner *runner;
    int failed;

    tcase_add_checked_fixture(tests, set_up, tear_down);
    tcase_add_test(tests, a_fresh_schema_equals_a_migrated_one);
    tcase_add_test(tests, every_table_is_strict);
    tcase_add_test(tests, a_copy_is_made_before_migrating);
    tcase_add_test(tests, a_migration_that_fails_leaves_the_file_as_it_was);
    tcase_add_test(tests, a_file_of_a_newer_program_is_refused);
    tcase_add_test(tests, a_database_of_another_program_is_refused);
    tcase_add_test(tests, a_file_that_is_no_database_is_refused);
    tcase_add_test(tests, reading_makes_no_file);
    tcase_add_test(tests, a_closed_store_is_read_in_a_folder_that_is_read_only);
    tcase_add_test(tests, a_running_store_is_read_in_a_folder_that_is_read_only);
    tcase_add_test(tests, a_store_that_was_cut_short_is_not_read_without_its_newest_texts);
    tcase_add_test(tests, a_store_is_read_while_the_daemon_writes);
    tcase_add_test(tests, a_reader_cannot_write);
    tcase_add_test(tests, a_second_writer_finds_it_busy_and_no_more);
    tcase_add_test(tests, what_is_written_for_a_text_can_neither_be_changed_nor_deleted);
    tcase_add_test(tests, every_question_of_ours_is_kept);
    tcase_add_test(tests, a_text_that_was_erased_leaves_no_words_behind);
    suite_add_tcase(suite, tests);
    runner = srunner_create(suite);
    srunner_run_all(runner, CK_ENV);
    failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed == 0 ? 0 : 1;
}
