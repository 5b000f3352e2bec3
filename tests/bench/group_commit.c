/*
 * What the disk and plain SQLite cost, without hutbell: the rows that one text leaves (see below)
 * written in transactions of GROUP texts to a file of the same settings, WAL and synchronous=FULL;
 * and a probe of how long 4 KiB and an fdatasync take.
 *
 * usage: group_commit FOLDER TEXTS GROUP
 * Prints: CPU microseconds a text, wall microseconds a COMMIT, wall microseconds an fdatasync.
 */
#include <fcntl.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>
#include <unistd.h>

#include <sqlite3.h>

enum {
    ROWS_A_TEXT = 6, /* text, repeat key, conversation, verdict, outbox, due */
    ROW_BYTES = 300,
    PROBES = 200
};

static double
seconds(clockid_t clock)
{
    struct timespec now;

    clock_gettime(clock, &now);
    return (double)now.tv_sec + (double)now.tv_nsec / 1e9;
}

static void
must(int rc, sqlite3 *db)
{
    if (rc != SQLITE_OK && rc != SQLITE_DONE && rc != SQLITE_ROW) {
        fprintf(stderr, "group_commit: %s\n", sqlite3_errmsg(db));
        exit(1);
    }
}

static sqlite3 *
open_store(const char *folder)
{
    char path[4096];
    sqlite3 *db;

    snprintf(path, sizeof(path), "%s/group.db", folder);
    must(sqlite3_open(path, &db), db);
    must(sqlite3_exec(db,
                      "PRAGMA journal_mode=WAL; PRAGMA synchronous=FULL;"
                      "CREATE TABLE line (id INTEGER PRIMARY KEY, key INTEGER NOT NULL,"
                      " body TEXT NOT NULL) STRICT;"
                      "CREATE INDEX line_by_key ON line (key);",
                      NULL, NULL, NULL),
         db);
    return db;
}

/* Wall seconds that all COMMITs took. */
static double
write_texts(sqlite3 *db, long texts, long group)
{
    sqlite3_stmt *insert, *begin, *commit;
    char body[ROW_BYTES];
    double committing = 0;
    long text, row;

    memset(body, 'x', sizeof(body));
    must(sqlite3_prepare_v2(db, "INSERT INTO line (key, body) VALUES (?1, ?2)", -1, &insert, NULL),
         db);
    must(sqlite3_prepare_v2(db, "BEGIN IMMEDIATE", -1, &begin, NULL), db);
    must(sqlite3_prepare_v2(db, "COMMIT", -1, &commit, NULL), db);
    for (text = 0; text < texts; text++) {
        if (text % group == 0) {
            must(sqlite3_step(begin), db);
            sqlite3_reset(begin);
        }
        for (row = 0; row < ROWS_A_TEXT; row++) {
            sqlite3_bind_int64(insert, 1, (text * 7919 + row) % 100003);
            sqlite3_bind_text(insert, 2, body, sizeof(body), SQLITE_STATIC);
            must(sqlite3_step(insert), db);
            sqlite3_reset(insert);
        }
        if (text % group == group - 1 || text == texts - 1) {
            double began = seconds(CLOCK_MONOTONIC);

            must(sqlite3_step(commit), db);
            committing += seconds(CLOCK_MONOTONIC) - began;
            sqlite3_reset(commit);
        }
    }
    sqlite3_finalize(insert);
    sqlite3_finalize(begin);
    sqlite3_finalize(commit);
    return committing;
}

static double
probe_fdatasync(const char *folder)
{
    char path[4096], page[4096];
    double began;
    int fd, i;

    snprintf(path, sizeof(path), "%s/probe", folder);
    memset(page, 0, sizeof(page));
    fd = open(path, O_CREAT | O_WRONLY | O_TRUNC, 0600);
    if (fd < 0) {
        perror(path);
        exit(1);
    }
    began = seconds(CLOCK_MONOTONIC);
    for (i = 0; i < PROBES; i++) {
        if (write(fd, page, sizeof(page)) != (ssize_t)sizeof(page) || fdatasync(fd) != 0) {
            perror(path);
            exit(1);
        }
    }
    began = (seconds(CLOCK_MONOTONIC) - began) / PROBES;
    close(fd);
    return began;
}

int
main(int argc, char **argv)
{
    long texts = argc == 4 ? strtol(argv[2], NULL, 10) : 0;
    long group = argc == 4 ? strtol(argv[3], NULL, 10) : 0;
    double cpu, committing;
    sqlite3 *db;

    if (texts < 1 || group < 1) {
        fprintf(stderr, "usage: group_commit FOLDER TEXTS GROUP\n");
        return 2;
    }
    db = open_store(argv[1]);
    cpu = seconds(CLOCK_PROCESS_CPUTIME_ID);
    committing = write_texts(db, texts, group);
    cpu = seconds(CLOCK_PROCESS_CPUTIME_ID) - cpu;
    sqlite3_close(db);
    printf("%.1f %.1f %.1f\n", cpu / (double)texts * 1e6,
           committing / (double)((texts + group - 1) / group) * 1e6,
           probe_fdatasync(argv[1]) * 1e6);
    return 0;
}
