/*
 * From an older schema to this program's. Private to store/ and its tests.
 *
 * schema.sql makes an empty file what it should be; migrations/NNNN.sql are the numbered steps that
 * bring an older one there, 0001 being the first schema there was. Both are turned into C by Meson.
 */
#ifndef STORE_MIGRATE_H
#define STORE_MIGRATE_H

#include <stddef.h>

#include <sqlite3.h>

#include "fault.h"

struct migration {
    int version; /* of the schema after it */
    const char *sql;
};

extern const char schema_sql[];
extern const struct migration schema_migrations[]; /* versions 1, 2, 3 … */
extern const size_t schema_migration_count;

/* "hutb": tells our files from other SQLite databases. */
enum { STORE_APPLICATION_ID = 0x68757462 };

/* Schema version of a file, 0 for an empty one. -1 with a fault if it is another program's file. */
int store_version(sqlite3 *database, int *version, struct fault *fault);

/* Makes an empty database ours at `version`. */
int store_create(sqlite3 *database, const char *schema, int version, struct fault *fault);

/*
 * Applies what `list` has beyond the file's version, all of it or nothing. Before that a copy of
 * the file, durable, is made as "PATH.version-N"; NULL makes none.
 */
int store_migrate(sqlite3 *database, const char *path, const struct migration *list, size_t count,
                  struct fault *fault);

#endif
