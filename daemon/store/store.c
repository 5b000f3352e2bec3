#include "store.h"

#include <assert.h>
#include <errno.h>
#include <string.h>
#include <sys/stat.h>

#include <glib.h>

#include "memory.h"
#include "store_migrate.h"
#include "store_sql.h"
#include "store_vfs.h"

/*
 * How long a statement waits for another process (an import) that writes. Short, for the loop
 * stands still meanwhile; the turn tries again later.
 */
enum { BUSY_TIMEOUT_MS = 15 };
enum { SQLITE_AUTOCHECKPOINT_PAGES = 1000 }; /* SQLite's own */
enum { PATIENT_TRIES = 500, PATIENT_WAIT_MS = 10 };

struct store {
    sqlite3 *database;
    GHashTable *statements; /* by the address of their SQL */
};

void
store_fault(sqlite3 *database, const char *doing, struct fault *fault)
{
    fault_set(fault, "database: cannot %s: %s (SQLite code %d)", doing, sqlite3_errmsg(database),
              sqlite3_extended_errcode(database));
}

/* Without what the extended code adds. */
static int
primary_code(sqlite3 *database)
{
    return sqlite3_errcode(database) & 0xff;
}

/* ---- Opening ------------------------------------------------------------------------------- */

static int
pragma(sqlite3 *database, const char *sql, struct fault *fault)
{
    if (sqlite3_exec(database, sql, NULL, NULL, NULL) != SQLITE_OK) {
        store_fault(database, sql, fault);
        return -1;
    }
    return 0;
}

static int
set_up(sqlite3 *database, enum store_mode mode, struct fault *fault)
{
    sqlite3_extended_result_codes(database, 1);
    sqlite3_busy_timeout(database, BUSY_TIMEOUT_MS);
    sqlite3_db_config(database, SQLITE_DBCONFIG_DEFENSIVE, 1, NULL);
    if (pragma(database, "PRAGMA foreign_keys = ON", fault) != 0 ||
        pragma(database, "PRAGMA trusted_schema = OFF", fault) != 0) {
        return -1;
    }
    if (mode != STORE_WRITE) {
        return 0;
    }
    return pragma(database, "PRAGMA journal_mode = WAL", fault) != 0 ||
                   pragma(database, "PRAGMA synchronous = FULL", fault) != 0
               ? -1
               : 0;
}

/* The schema this program works with, made or migrated if we may write. */
static int
bring_to_version(sqlite3 *database, const char *path, enum store_mode mode, struct fault *fault)
{
    int ours = schema_migrations[schema_migration_count - 1].version;
    int version;

    if (store_version(database, &version, fault) != 0) {
        return -1;
    }
    if (version > ours) {
        fault_set(fault,
                  "the database has version %d and this program knows versions up to %d; "
                  "run the newer program that wrote it",
                  version, ours);
        return -1;
    }
    if (version == ours) {
        return 0;
    }
    if (mode == STORE_READ) {
        fault_set(fault,
                  "the database has version %d and this program needs %d; "
                  "start `hutbell serve` once, which brings it up to date",
                  version, ours);
        return -1;
    }
    if (version == 0) {
        return store_create(database, schema_sql, ours, fault);
    }
    return store_migrate(database, path, schema_migrations, schema_migration_count, fault);
}

static struct store *
store_new(sqlite3 *database)
{
    struct store *store = memory_new(NULL, struct store);

    store->database = database;
    store->statements = g_hash_table_new(g_direct_hash, g_direct_equal);
    return store;
}

/* *is_unreadable: SQLite could not get at the file, as against one whose content does not suit. */
static int
open_at(const char *vfs, const char *name, const char *path, enum store_mode mode,
        struct store **store, bool *is_unreadable, struct fault *fault)
{
    int flags =
        SQLITE_OPEN_URI | SQLITE_OPEN_NOMUTEX |
        (mode == STORE_READ ? SQLITE_OPEN_READONLY : SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE);
    sqlite3 *database = NULL;
    struct fault why;
    int code;

    if (sqlite3_open_v2(name, &database, flags, vfs) != SQLITE_OK) {
        store_fault(database, "open it", &why);
        goto failed;
    }
    if (set_up(database, mode, &why) != 0 || bring_to_version(database, path, mode, &why) != 0) {
        goto failed;
    }
    *store = store_new(database);
    return 0;
failed:
    code = primary_code(database);
    *is_unreadable = code == SQLITE_CANTOPEN || code == SQLITE_READONLY;
    fault_set(fault, "%s: %s", path, why.text);
    sqlite3_close(database);
    return -1;
}

/* "file:" and the path with what a URI gives a meaning (RFC 3986) escaped. */
static char *
as_uri(void *arena, const char *path, const char *query)
{
    char *escaped = g_uri_escape_string(path, "/", TRUE);
    char *uri = memory_format(arena, "file:%s?%s", escaped, query);

    g_free(escaped);
    return uri;
}

/*
 * Reading a WAL file takes its -shm, which SQLite makes anew if nobody has the file open; but who
 * asks must change nothing, and may stand in a folder that is not theirs to write. Without a -wal
 * no program has the file open and nothing waits to be moved into it: then it is whole and is read
 * as one that does not change.
 */
static int
open_to_read(const char *vfs, const char *path, struct store **store, struct fault *fault)
{
    void *arena = memory_must(talloc_new(NULL));
    char *log = memory_format(arena, "%s-wal", path);
    struct stat there;
    bool is_alone, is_unreadable = false;
    int rc = -1;

    if (stat(path, &there) != 0) {
        fault_set(fault, "%s: cannot be read (%s); give the path of the daemon's database", path,
                  strerror(errno));
        goto out;
    }
    is_alone = stat(log, &there) != 0;
    rc = open_at(vfs, as_uri(arena, path, is_alone ? "mode=ro&immutable=1" : "mode=ro"), path,
                 STORE_READ, store, &is_unreadable, fault);
    if (rc == 0 || is_alone || !is_unreadable) {
        goto out;
    }
    if (there.st_size > 0) {
        fault_set(fault,
                  "%s: the newest texts still stand in %s and cannot be read from a folder that "
                  "is read-only; start the daemon once, or run this as the daemon's user",
                  path, log);
        goto out;
    }
    rc = open_at(vfs, as_uri(arena, path, "mode=ro&immutable=1"), path, STORE_READ, store,
                 &is_unreadable, fault);
out:
    talloc_free(arena);
    return rc;
}

int
store_open_on(const char *vfs, const char *path, enum store_mode mode, struct store **store,
              struct fault *fault)
{
    bool is_unreadable;

    switch (mode) {
    case STORE_READ:
        return open_to_read(vfs, path, store, fault);
    case STORE_IN_MEMORY:
        return open_at(NULL, ":memory:", "in memory", mode, store, &is_unreadable, fault);
    case STORE_WRITE:
        break;
    }
    return open_at(vfs, path, path, mode, store, &is_unreadable, fault);
}

int
store_open(const char *path, enum store_mode mode, struct store **store, struct fault *fault)
{
    return store_open_on(NULL, path, mode, store, fault);
}

int
store_copy(struct store *from, struct store **copy, struct fault *fault)
{
    sqlite3 *database = NULL;
    sqlite3_backup *backup;
    int step;

    if (sqlite3_open(":memory:", &database) != SQLITE_OK) {
        goto failed;
    }
    backup = sqlite3_backup_init(database, "main", from->database, "main");
    if (backup == NULL) {
        goto failed;
    }
    do {
        step = sqlite3_backup_step(backup, -1);
        if (step == SQLITE_BUSY || step == SQLITE_LOCKED) {
            sqlite3_sleep(BUSY_TIMEOUT_MS); /* only `ask` copies, which has no loop to hold */
        }
    } while (step == SQLITE_BUSY || step == SQLITE_LOCKED);
    if (sqlite3_backup_finish(backup) != SQLITE_OK ||
        set_up(database, STORE_IN_MEMORY, fault) != 0) {
        goto failed;
    }
    *copy = store_new(database);
    return 0;
failed:
    store_fault(database, "copy it into memory", fault);
    sqlite3_close(database);
    return -1;
}

static void
finalize(gpointer sql, gpointer statement, gpointer unused)
{
    (void)sql;
    (void)unused;
    sqlite3_finalize(statement);
}

void
store_close(struct store *store)
{
    if (store == NULL) {
        return;
    }
    g_hash_table_foreach(store->statements, finalize, NULL);
    g_hash_table_destroy(store->statements);
    sqlite3_close(store->database);
    talloc_free(store);
}

/* ---- Statements ---------------------------------------------------------------------------- */

static sqlite3_stmt *
prepare(struct store *store, const char *sql, struct fault *fault)
{
    sqlite3_stmt *statement = g_hash_table_lookup(store->statements, sql);

    if (statement != NULL) {
        assert(!sqlite3_stmt_busy(statement)); /* one use at a time */
        return statement;
    }
    if (sqlite3_prepare_v3(store->database, sql, -1, SQLITE_PREPARE_PERSISTENT, &statement, NULL) !=
        SQLITE_OK) {
        store_fault(store->database, sql, fault);
        return NULL;
    }
    g_hash_table_insert(store->statements, (gpointer)(uintptr_t)sql, statement);
    return statement;
}

static int
bind(sqlite3_stmt *statement, int place, const struct value *value)
{
    switch (value->kind) {
    case VALUE_NUMBER:
        return sqlite3_bind_int64(statement, place, value->number);
    case VALUE_TEXT:
        return sqlite3_bind_text(statement, place, value->bytes, -1, SQLITE_STATIC);
    case VALUE_BYTES:
        return sqlite3_bind_blob64(statement, place, value->bytes, value->length, SQLITE_STATIC);
    case VALUE_NULL:
        break;
    }
    return sqlite3_bind_null(statement, place);
}

sqlite3_stmt *
store_query(struct store *store, const char *sql, const struct value *values, size_t count,
            struct fault *fault)
{
    sqlite3_stmt *statement = prepare(store, sql, fault);
    size_t i;

    if (statement == NULL) {
        return NULL;
    }
    assert((size_t)sqlite3_bind_parameter_count(statement) == count);
    for (i = 0; i < count; i++) {
        if (bind(statement, (int)i + 1, &values[i]) != SQLITE_OK) {
            store_fault(store->database, sql, fault);
            store_end(statement);
            return NULL;
        }
    }
    return statement;
}

void
store_end(sqlite3_stmt *query)
{
    sqlite3_reset(query);
    sqlite3_clear_bindings(query); /* they point at memory of the caller */
}

int
store_each(struct store *store, sqlite3_stmt *query, void (*take)(sqlite3_stmt *query, void *list),
           void *list, struct fault *fault)
{
    bool more;

    if (query == NULL || store_next(store, query, &more, fault) != 0) {
        return -1;
    }
    while (more) {
        take(query, list);
        if (store_next(store, query, &more, fault) != 0) {
            return -1;
        }
    }
    return 0;
}

int
store_number(struct store *store, sqlite3_stmt *query, int64_t none, int64_t *value,
             struct fault *fault)
{
    bool more;

    *value = none;
    if (query == NULL || store_next(store, query, &more, fault) != 0) {
        return -1;
    }
    if (more) {
        *value = sqlite3_column_int64(query, 0);
        store_end(query);
    }
    return 0;
}

int
store_soonest(struct store *store, const char *sql, int64_t *utc_s, struct fault *fault)
{
    return store_number(store, store_query(store, sql, NULL, 0, fault), INT64_MAX, utc_s, fault);
}

int
store_next(struct store *store, sqlite3_stmt *query, bool *more, struct fault *fault)
{
    int step = sqlite3_step(query);

    *more = step == SQLITE_ROW;
    if (*more) {
        return 0;
    }
    if (step != SQLITE_DONE) {
        store_fault(store->database, sqlite3_sql(query), fault);
    }
    store_end(query);
    return step == SQLITE_DONE ? 0 : -1;
}

int
store_do(struct store *store, const char *sql, const struct value *values, size_t count,
         struct fault *fault)
{
    sqlite3_stmt *statement = store_query(store, sql, values, count, fault);
    bool more;

    if (statement == NULL || store_next(store, statement, &more, fault) != 0) {
        return -1;
    }
    assert(!more);
    return 0;
}

char *
column_text(void *arena, sqlite3_stmt *query, int column)
{
    const unsigned char *text = sqlite3_column_text(query, column);

    return text == NULL ? NULL : memory_copy(arena, (const char *)text);
}

int64_t
store_last_id(struct store *store)
{
    return sqlite3_last_insert_rowid(store->database);
}

int
store_changes(struct store *store)
{
    return sqlite3_changes(store->database);
}

bool
store_is_busy(const struct store *store)
{
    return primary_code(store->database) == SQLITE_BUSY;
}

/* ---- Transactions -------------------------------------------------------------------------- */

int
store_begin(struct store *store, struct fault *fault)
{
    return store_do(store, "BEGIN IMMEDIATE", NULL, 0, fault);
}

int
store_begin_patiently(struct store *store, struct fault *fault)
{
    int tries;

    for (tries = 0; tries < PATIENT_TRIES; tries++) {
        if (store_begin(store, fault) == 0) {
            return 0;
        }
        if (!store_is_busy(store)) {
            break;
        }
        sqlite3_sleep(PATIENT_WAIT_MS);
    }
    return -1;
}

int
store_commit(struct store *store, struct fault *fault)
{
    return store_do(store, "COMMIT", NULL, 0, fault);
}

void
store_rollback(struct store *store)
{
    struct fault ignored;

    /* A full disk may have rolled it back already; then there is nothing to do. */
    if (!sqlite3_get_autocommit(store->database)) {
        store_do(store, "ROLLBACK", NULL, 0, &ignored);
    }
}

int
store_write_much(struct store *store, bool is_on, struct fault *fault)
{
    sqlite3_wal_autocheckpoint(store->database, is_on ? 0 : SQLITE_AUTOCHECKPOINT_PAGES);
    return pragma(store->database,
                  is_on ? "PRAGMA synchronous = NORMAL" : "PRAGMA synchronous = FULL", fault);
}

void
store_tidy(struct store *store)
{
    /* What a reader still needs, or another moves, waits for the next time. */
    (void)sqlite3_wal_checkpoint_v2(store->database, NULL, SQLITE_CHECKPOINT_PASSIVE, NULL, NULL);
}

int
store_save(struct store *store, struct fault *fault)
{
    return store_do(store, "SAVEPOINT job", NULL, 0, fault);
}

int
store_release(struct store *store, struct fault *fault)
{
    return store_do(store, "RELEASE job", NULL, 0, fault);
}

int
store_back(struct store *store, struct fault *fault)
{
    if (store_do(store, "ROLLBACK TO job", NULL, 0, fault) != 0) {
        return -1;
    }
    return store_release(store, fault);
}
