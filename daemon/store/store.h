/*
 * The store: one SQLite file, WAL, synchronous=FULL, foreign keys, STRICT tables. All SQL of the
 * program is in this folder; schema.sql is the schema and migrations are numbered.
 *
 * One writer (the loop's thread). Functions of this folder return 0, or -1 with a fault; strings
 * they hand out live in the arena that was given. A fault of SQLite carries its extended code.
 */
#ifndef STORE_H
#define STORE_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "fault.h"

struct store;

enum store_mode {
    STORE_WRITE,    /* the daemon: creates or migrates (after making a copy beside it) */
    STORE_READ,     /* never writes, works with read access only; refuses an older schema */
    STORE_IN_MEMORY /* an empty one; path is not read */
};

/* On success *store is the caller's. A file of a newer program is refused. */
int store_open(const char *path, enum store_mode mode, struct store **store, struct fault *fault);
/* A copy of a store in memory, for asking without changing anything. */
int store_copy(struct store *from, struct store **copy, struct fault *fault);
void store_close(struct store *store);

int store_begin(struct store *store, struct fault *fault);
/* The same for a command beside the daemon, which writes for a few milliseconds at a time: waits
 * for it, some seconds at most. */
int store_begin_patiently(struct store *store, struct fault *fault);
int store_commit(struct store *store, struct fault *fault);
void store_rollback(struct store *store);

/*
 * For a command that writes much beside the daemon. While it does, a commit is whole for whoever
 * reads but need not outlive a power cut, so that it keeps no other writer waiting for the disk;
 * store_tidy() after each brings it there without holding anybody up. Once it is off, the next
 * commit makes all that was committed before it durable as well.
 */
int store_write_much(struct store *store, bool is_on, struct fault *fault);
void store_tidy(struct store *store);

/* The last failure was only that another process was writing: trying again soon may go well. */
bool store_is_busy(const struct store *store);
/* One savepoint at a time, inside a transaction. */
int store_save(struct store *store, struct fault *fault);
int store_release(struct store *store, struct fault *fault);
int store_back(struct store *store, struct fault *fault);

#endif
