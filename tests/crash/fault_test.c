/*
 * The disk fails, or the machine dies, at the 1st, 2nd, 3rd … write or sync, until a run passes
 * untouched (the method: sqlite.org/testing.html). A run opens the store and takes four texts in
 * two turns; after each, sends are settled. After each broken run the store is opened again:
 *
 *   - every text that got its 200 is there once, with one verdict and its replies,
 *   - every reply is sent or still due, and none that was told sent is due again,
 *   - an emergency that got its 200 is in an alert,
 *   - what got no 200 is taken when the gateway sends it again, and then counts once as well.
 *
 * A run that dies is a process of its own; what its gateway was told stands in memory that
 * outlives it.
 */
#include <fcntl.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/mman.h>
#include <sys/wait.h>
#include <unistd.h>

#include <check.h>
#include <glib.h>
#include <sodium.h>
#include <sqlite3.h>

#include "commands.h"
#include "loaded.h"
#include "log.h"
#include "fault_run.h"
#include "fault_vfs.h"

enum { RUNS_MAX = 5000 };

struct fault_case {
    enum fault_kind kind;
    bool from_prepared;
    int texts;
};

static struct ledger *ledger;
static struct loaded *loaded;
static char folder[64], database[96], prepared[96], config_file[96], run_log[96];

/* ---- A run ---------------------------------------------------------------------------------- */

/* A run with its fault; what it logs goes to a file. Never returns from a crash. */
static bool
run_here(enum fault_kind kind, long nth, int texts)
{
    int log = open(run_log, O_CREAT | O_WRONLY | O_TRUNC, 0600);
    int stderr_copy = dup(STDERR_FILENO);
    bool opened;

    dup2(log, STDERR_FILENO);
    fault_vfs_arm(kind, nth);
    opened = fault_run(database, loaded, texts, ledger);
    ledger->broke = fault_vfs_broke();
    fault_vfs_arm(FAULT_COUNT_ONLY, 1);
    dup2(stderr_copy, STDERR_FILENO);
    close(stderr_copy);
    close(log);
    return opened;
}

/* A run that dies at its fault is a process of its own. True if it opened the store and lived. */
static bool
run_in_child(enum fault_kind kind, long nth, int texts)
{
    pid_t child = fork();
    int status;

    ck_assert_int_ge(child, 0);
    if (child == 0) {
        _exit(run_here(kind, nth, texts) ? 0 : 1);
    }
    ck_assert_int_eq(waitpid(child, &status, 0), child);
    ck_assert_msg(WIFEXITED(status), "the run was ended by signal %d", WTERMSIG(status));
    ledger->broke = WEXITSTATUS(status) == FAULT_EXIT_STATUS;
    return WEXITSTATUS(status) == 0;
}

static bool
run(enum fault_kind kind, long nth, int texts)
{
    bool dies = kind == FAULT_CRASH || kind == FAULT_POWER_CUT;

    return dies ? run_in_child(kind, nth, texts) : run_here(kind, nth, texts);
}

/* ---- The count ------------------------------------------------------------------------------ */

static sqlite3_int64
number(sqlite3 *db, const char *sql, const char *parameter)
{
    sqlite3_stmt *statement;
    sqlite3_int64 result;

    ck_assert_msg(sqlite3_prepare_v2(db, sql, -1, &statement, NULL) == SQLITE_OK, "%s: %s", sql,
                  sqlite3_errmsg(db));
    if (parameter != NULL) {
        sqlite3_bind_text(statement, 1, parameter, -1, SQLITE_STATIC);
    }
    ck_assert_int_eq(sqlite3_step(statement), SQLITE_ROW);
    result = sqlite3_column_int64(statement, 0);
    sqlite3_finalize(statement);
    return result;
}

#define UNSENT                                                                                     \
    "SELECT count(*) FROM outbox WHERE id NOT IN (SELECT outbox_id FROM outbox_due) "              \
    "AND id NOT IN (SELECT outbox_id FROM outbox_event WHERE event = 'accepted')"

static void
check_text(sqlite3 *db, int text, const char *where)
{
    char id[8];
    sqlite3_int64 rows, verdicts;

    snprintf(id, sizeof(id), "t-%d", text);
    rows = number(db, "SELECT count(*) FROM text WHERE gateway_id = ?1", id);
    verdicts = number(db,
                      "SELECT count(*) FROM verdict JOIN text ON text_id = text.id "
                      "WHERE gateway_id = ?1",
                      id);
    ck_assert_msg(rows == verdicts && rows <= 1, "%s: %s has %lld rows, %lld verdicts", where, id,
                  rows, verdicts);
    if (!ledger->answered[text]) {
        return;
    }
    ck_assert_msg(rows == 1, "%s: %s got its 200 and is not there", where, id);
    ck_assert_msg(number(db,
                         "SELECT count(*) FROM outbox JOIN text ON text_id = text.id "
                         "WHERE gateway_id = ?1 AND about = 'reply'",
                         id) >= 1,
                  "%s: %s got its 200 and has no reply", where, id);
    if (strstr(fault_words[text], "chest") != NULL) {
        ck_assert_msg(number(db,
                             "SELECT count(*) FROM alert_event JOIN text ON text_id = text.id "
                             "WHERE gateway_id = ?1",
                             id) >= 1,
                      "%s: %s is an emergency without an alert", where, id);
    }
}

static void
check_nothing_was_answered(const char *where)
{
    for (int i = 0; i < TEXTS; i++) {
        ck_assert_msg(!ledger->answered[i], "%s: text %d got its 200 without a store", where, i);
    }
}

/* Opens the file as any program would and counts. */
static void
check_store(const char *where)
{
    const int flags = SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE;
    sqlite3 *db;

    ck_assert_int_eq(sqlite3_open_v2(database, &db, flags, NULL), SQLITE_OK);
    ck_assert_msg(number(db, "SELECT integrity_check = 'ok' FROM pragma_integrity_check", NULL) ==
                      1,
                  "%s: the file is damaged", where);
    if (number(db, "SELECT count(*) FROM sqlite_schema WHERE name = 'outbox_due'", NULL) == 0) {
        check_nothing_was_answered(where); /* it broke before there was a store */
        sqlite3_close(db);
        return;
    }
    for (int i = 0; i < TEXTS; i++) {
        check_text(db, i, where);
    }
    ck_assert_msg(number(db, UNSENT, NULL) == 0, "%s: a reply is neither sent nor due", where);
    for (size_t i = 0; i < ledger->sent_count; i++) {
        char id[24];

        snprintf(id, sizeof(id), "%lld", (long long)ledger->sent[i]);
        ck_assert_msg(
            number(db, "SELECT count(*) FROM outbox_due WHERE outbox_id = CAST(?1 AS INTEGER)",
                   id) == 0,
            "%s: reply %s was sent and is due again", where, id);
    }
    sqlite3_close(db);
}

static void
remove_store(void)
{
    static const char *const ends[] = {"", "-wal", "-shm", "-journal"};
    char path[128];

    for (size_t i = 0; i < sizeof(ends) / sizeof(ends[0]); i++) {
        snprintf(path, sizeof(path), "%s%s", database, ends[i]);
        unlink(path);
    }
}

static void
copy_file(const char *from, const char *to)
{
    gchar *bytes;
    gsize length;

    ck_assert(g_file_get_contents(from, &bytes, &length, NULL));
    ck_assert(
        g_file_set_contents_full(to, bytes, (gssize)length, G_FILE_SET_CONTENTS_NONE, 0600, NULL));
    g_free(bytes);
}

/* One run that breaks at the nth operation, what is left of it, and the gateway's second try.
 * Returns false once a run passes untouched. */
static bool
survives(const struct fault_case *tried, long nth)
{
    int again = tried->from_prepared ? TEXTS : A_TURN; /* a new store has shown its worth by then */
    char where[64];
    bool lived, broke;

    snprintf(where, sizeof(where), "%s at operation %ld", fault_kind_name(tried->kind), nth);
    remove_store();
    if (tried->from_prepared) {
        copy_file(prepared, database);
    }
    memset(ledger, 0, sizeof(*ledger));
    lived = run(tried->kind, nth, tried->texts);
    broke = ledger->broke;
    ck_assert_msg(lived || broke, "%s: the run failed by itself", where);
    check_store(where);
    ck_assert_msg(run(FAULT_COUNT_ONLY, 1, again), "%s: it does not start again", where);
    for (int i = 0; i < again; i++) {
        ck_assert_msg(ledger->answered[i], "%s: text %d is not taken afterwards", where, i);
    }
    check_store(where);
    return broke;
}

/* ---- The tests ------------------------------------------------------------------------------ */

static void
write_config(void)
{
    FILE *file = fopen(config_file, "w");

    ck_assert_ptr_nonnull(file);
    fprintf(file,
            "{\"database\": \"hutbell.db\", \"kb_folder\": \"%s/kb\", "
            "\"cache_folder\": \"%s/kb-cache\", \"zone\": \"America/Denver\", \"country\": "
            "{\"code\": \"1\", \"national_prefix\": \"1\", "
            "\"national_digits\": 10}, \"house\": {\"company\": \"Larkspur Air\", \"phone\": "
            "\"208-555-0100\", \"address\": \"3 Millrace Lane\", \"hours\": \"8 to 6\", "
            "\"return_how\": \"Bring it to the counter.\", \"emergency_number\": \"911\"}, "
            "\"gateways\": {\"valley\": {\"authentication\": {\"kind\": \"none\"}, \"message\": "
            "{\"sender\": \"/from\", \"text\": \"/words\"}, \"send\": {\"url\": "
            "\"http://127.0.0.1:9/\", \"from\": \"+12085550100\", \"json\": {\"to\": \"{to}\", "
            "\"words\": \"{text}\"}}}}, \"staff\": [{\"name\": \"Robin\", \"phone\": "
            "\"+12085550190\"}], \"played_clock\": {\"start\": \"2026-02-11T17:10:00-07:00\"}}",
            getenv("SOURCE_ROOT"), getenv("BUILD_ROOT"));
    fclose(file);
}

/* A store with the demo's rentals in it, made by the program's own command. */
static void
prepare_store(void)
{
    char command[] = "import", what[] = "rentals", option[] = "--config", rentals[4096];
    char *arguments[] = {command, what, rentals, option, config_file, NULL};

    snprintf(rentals, sizeof(rentals), "%s/demo/rentals.csv", getenv("SOURCE_ROOT"));
    optind = 1;
    ck_assert_int_eq(command_import(5, arguments), 0);
    copy_file(database, prepared);
}

static void
set_up(void)
{
    struct faults faults = {0};

    /* In memory, if there is such a place: what a sync makes safe is the shim's business here. */
    snprintf(folder, sizeof(folder), "%s/hutbell-fault-XXXXXX",
             access("/dev/shm", W_OK) == 0 ? "/dev/shm" : "/tmp");
    ck_assert_ptr_nonnull(mkdtemp(folder));
    snprintf(database, sizeof(database), "%s/hutbell.db", folder);
    snprintf(prepared, sizeof(prepared), "%s/prepared.db", folder);
    snprintf(config_file, sizeof(config_file), "%s/hutbell.json", folder);
    snprintf(run_log, sizeof(run_log), "%s/log", folder);
    ledger = mmap(NULL, sizeof(*ledger), PROT_READ | PROT_WRITE, MAP_SHARED | MAP_ANONYMOUS, -1, 0);
    ck_assert_ptr_ne(ledger, MAP_FAILED);
    write_config();
    ck_assert_int_ge(sodium_init(), 0);
    log_setup(LOG_ERROR_LEVEL, LOG_LOGFMT);
    ck_assert_msg(loaded_read(config_file, &loaded, &faults) == 0, "%s",
                  faults.count > 0 ? faults.list[0].text : "");
    fault_vfs_install();
    fault_vfs_arm(FAULT_COUNT_ONLY, 1);
    prepare_store();
}

static void
tear_down(void)
{
    char command[128];

    snprintf(command, sizeof(command), "rm -rf '%s'", folder);
    ck_assert_int_eq(system(command), 0);
    loaded_free(loaded);
}

/* With the demo's rentals in it, texts are taken; a new store is only made, which the texts of the
 * second try need. */
static const struct fault_case errors[] = {{FAULT_IO_ERROR, true, TEXTS},
                                           {FAULT_FULL_DISK, true, TEXTS},
                                           {FAULT_IO_ERROR, false, 0},
                                           {FAULT_FULL_DISK, false, 0}};
static const struct fault_case deaths[] = {{FAULT_CRASH, true, TEXTS},
                                           {FAULT_POWER_CUT, true, TEXTS},
                                           {FAULT_CRASH, false, 0},
                                           {FAULT_POWER_CUT, false, 0}};

static void
breaks_everywhere(const struct fault_case *tried)
{
    long nth = 1;

    while (survives(tried, nth)) {
        nth++;
        ck_assert_int_lt(nth, RUNS_MAX);
    }
    printf("%s, %s store: %ld operations, each broken once\n", fault_kind_name(tried->kind),
           tried->from_prepared ? "existing" : "new", nth - 1);
    /* A run that never breaks would prove nothing. */
    ck_assert_int_gt(nth, 20);
}

START_TEST(the_disk_may_fail_at_each_write_and_sync_and_nothing_answered_is_lost_or_doubled)
{
    breaks_everywhere(&errors[_i]);
}
END_TEST

START_TEST(the_machine_may_die_at_each_write_and_sync_and_nothing_answered_is_lost_or_doubled)
{
    breaks_everywhere(&deaths[_i]);
}
END_TEST

/* The shim itself: an unsynced write is gone after a power cut, a synced one is not. */
START_TEST(a_power_cut_undoes_what_no_sync_made_safe)
{
    static const char *const safety[] = {"OFF", "FULL"};
    char sql[200];
    sqlite3 *db;

    for (int full = 0; full <= 1; full++) {
        pid_t child;
        int status;

        remove_store();
        snprintf(sql, sizeof(sql),
                 "PRAGMA journal_mode = WAL; PRAGMA synchronous = %s; CREATE TABLE t (x);"
                 "INSERT INTO t VALUES (1);",
                 safety[full]);
        child = fork();
        if (child == 0) {
            fault_vfs_arm(FAULT_POWER_CUT, 1000);
            sqlite3_open(database, &db);
            sqlite3_exec(db, sql, NULL, NULL, NULL);
            fault_vfs_strike_now();
            _exit(0);
        }
        waitpid(child, &status, 0);
        ck_assert_int_eq(WEXITSTATUS(status), FAULT_EXIT_STATUS);
        ck_assert_int_eq(sqlite3_open(database, &db), SQLITE_OK);
        ck_assert_int_eq(number(db, "SELECT count(*) FROM sqlite_schema WHERE name = 't'", NULL),
                         full);
        sqlite3_close(db);
    }
}
END_TEST

/* usage: fault_test errors | deaths */
int
main(int argc, char **argv)
{
    bool dies = argc == 2 && strcmp(argv[1], "deaths") == 0;
    Suite *suite = suite_create("faults of the disk");
    TCase *tests = tcase_create("each operation");
    SRunner *runner;
    int failed;

    tcase_add_unchecked_fixture(tests, set_up, tear_down);
    tcase_set_timeout(tests, 0);
    if (dies) {
        tcase_add_test(tests, a_power_cut_undoes_what_no_sync_made_safe);
        tcase_add_loop_test(
            tests,
            the_machine_may_die_at_each_write_and_sync_and_nothing_answered_is_lost_or_doubled, 0,
            (int)(sizeof(deaths) / sizeof(deaths[0])));
    } else {
        tcase_add_loop_test(
            tests, the_disk_may_fail_at_each_write_and_sync_and_nothing_answered_is_lost_or_doubled,
            0, (int)(sizeof(errors) / sizeof(errors[0])));
    }
    suite_add_tcase(suite, tests);
    runner = srunner_create(suite);
    srunner_set_fork_status(runner, CK_NOFORK); /* each run forks by itself */
    srunner_run_all(runner, CK_NORMAL);
    failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed == 0 ? 0 : 1;
}
