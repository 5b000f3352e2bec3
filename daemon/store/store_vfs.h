/*
 * A store on a file system of the caller's: crash tests register a SQLite VFS that fails, or ends
 * the process, at the Nth write or sync, and open the store on it. Private to store/ and tests.
 */
#ifndef STORE_VFS_H
#define STORE_VFS_H

#include "store.h"

/* store_open() on the SQLite VFS of this name; NULL is the default one. */
int store_open_on(const char *vfs, const char *path, enum store_mode mode, struct store **store,
                  struct fault *fault);

#endif
