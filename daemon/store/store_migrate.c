#include "store_migrate.h"

#include <errno.h>
#include <fcntl.h>
#include <stdio.h>
#include <string.h>
#include <unistd.h>

#include "memory.h"
#include "store_sql.h"

static int
run(sqlite3 *database, const char *sql, const char *doing, struct fault *fault)
{
    if (sqlite3_exec(database, sql, NULL, NULL, NULL) != SQLITE_OK) {
        store_fault(database, doing, fault);
        return -1;
    }
    return 0;
}

static int
read_number(sqlite3 *database, const char *sql, int *number, struct fault *fault)
{
    sqlite3_stmt *query = NULL;
    int rc = -1;

    if (sqlite3_prepare_v2(database, sql, -1, &query, NULL) == SQLITE_OK &&
        sqlite3_step(query) == SQLITE_ROW) {
        *number = sqlite3_column_int(query, 0);
        rc = 0;
    } else {
        store_fault(database, "read the file's version", fault);
    }
    sqlite3_finalize(query);
    return rc;
}

int
store_version(sqlite3 *database, int *version, struct fault *fault)
{
    int tables, application;

    if (read_number(database, "PRAGMA user_version", version, fault) != 0 ||
        read_number(database, "PRAGMA application_id", &application, fault) != 0 ||
        read_number(database, "SELECT count(*) FROM sqlite_schema", &tables, fault) != 0) {
        return -1;
    }
    if (tables > 0 && application != STORE_APPLICATION_ID) {
        fault_set(fault, "this is the database of another program; "
                         "give the path of a hutbell database, or of a new file");
        return -1;
    }
    return 0;
}

static int
set_version(sqlite3 *database, int version, struct fault *fault)
{
    char sql[200];

    snprintf(sql, sizeof(sql),
             "PRAGMA application_id = %d; PRAGMA user_version = %d;"
             "INSERT INTO migration (version, program) VALUES (%d, '" HUTBELL_VERSION "')",
             STORE_APPLICATION_ID, version, version);
    return run(database, sql, "write the schema's version", fault);
}

int
store_create(sqlite3 *database, const char *schema, int version, struct fault *fault)
{
    if (run(database, "BEGIN IMMEDIATE", "begin", fault) != 0) {
        return -1;
    }
    if (run(database, schema, "create the tables", fault) != 0 ||
        set_version(database, version, fault) != 0 ||
        run(database, "COMMIT", "commit the new tables", fault) != 0) {
        sqlite3_exec(database, "ROLLBACK", NULL, NULL, NULL);
        return -1;
    }
    return 0;
}

static int
sync_path(const char *path, int flags)
{
    int file = open(path, flags | O_CLOEXEC);
    int rc;

    if (file < 0) {
        return -1;
    }
    rc = fsync(file);
    close(file);
    return rc;
}

/* VACUUM INTO does not sync what it writes, so that is done here, and the name comes last. */
static int
make_copy(sqlite3 *database, const char *path, int version, struct fault *fault)
{
    void *arena = memory_must(talloc_new(NULL));
    char *copy = memory_format(arena, "%s.version-%d", path, version);
    char *unfinished = memory_format(arena, "%s.new", copy);
    const char *slash = strrchr(path, '/');
    char *folder = slash == NULL ? memory_copy(arena, ".")
                                 : memory_copy_n(arena, path, (size_t)(slash - path) + 1);
    char *sql = sqlite3_mprintf("VACUUM INTO %Q", unfinished);
    int rc = -1;

    unlink(unfinished); /* of a copy that was cut short */
    if (run(database, memory_must(sql), "copy the file before changing it", fault) != 0) {
        goto out;
    }
    if (sync_path(unfinished, O_RDWR) != 0 || rename(unfinished, copy) != 0 ||
        sync_path(folder, O_RDONLY | O_DIRECTORY) != 0) {
        fault_set(fault,
                  "%s: cannot be written (%s); a copy is made before the database is brought to "
                  "this program's version",
                  copy, strerror(errno));
        goto out;
    }
    rc = 0;
out:
    sqlite3_free(sql);
    talloc_free(arena);
    return rc;
}

/* All of it or nothing. */
static int
apply(sqlite3 *database, const struct migration *list, size_t count, int version,
      struct fault *fault)
{
    size_t i;

    if (run(database, "BEGIN IMMEDIATE", "begin", fault) != 0) {
        return -1;
    }
    for (i = 0; i < count; i++) {
        if (list[i].version > version && (run(database, list[i].sql, "migrate", fault) != 0 ||
                                          set_version(database, list[i].version, fault) != 0)) {
            goto back;
        }
    }
    if (run(database, "COMMIT", "commit the migration", fault) == 0) {
        return 0;
    }
back:
    sqlite3_exec(database, "ROLLBACK", NULL, NULL, NULL);
    return -1;
}

int
store_migrate(sqlite3 *database, const char *path, const struct migration *list, size_t count,
              struct fault *fault)
{
    int version, was_defensive = 0, rc;

    if (store_version(database, &version, fault) != 0) {
        return -1;
    }
    if (count == 0 || version >= list[count - 1].version) {
        return 0;
    }
    if (path != NULL && make_copy(database, path, version, fault) != 0) {
        return -1;
    }
    /* A step may have to change the text of the schema (a CHECK), which this forbids. */
    sqlite3_db_config(database, SQLITE_DBCONFIG_DEFENSIVE, -1, &was_defensive);
    sqlite3_db_config(database, SQLITE_DBCONFIG_DEFENSIVE, 0, NULL);
    rc = apply(database, list, count, version, fault);
    sqlite3_db_config(database, SQLITE_DBCONFIG_DEFENSIVE, was_defensive, NULL);
    return rc;
}
