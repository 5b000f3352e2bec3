/*
 * A SQLite file system that breaks on purpose: it fails, or ends the process, at the Nth write,
 * truncation or sync. It stands in front of the system's own and becomes the default, so that the
 * program under test opens its store as ever. (The method is SQLite's own, sqlite.org/testing.html,
 * "I/O Error Testing" and "Crash Testing".)
 */
#ifndef FAULT_VFS_H
#define FAULT_VFS_H

#include <stdbool.h>

enum fault_kind {
    FAULT_COUNT_ONLY, /* nothing breaks, operations are counted */
    FAULT_IO_ERROR,   /* the Nth fails with an I/O error; what follows works again */
    FAULT_FULL_DISK,  /* from the Nth on, each write fails for want of space */
    FAULT_CRASH,      /* the process ends at the Nth; what was written stays */
    FAULT_POWER_CUT   /* the same, and all that no sync had made safe is undone */
};

enum { FAULT_EXIT_STATUS = 77 }; /* with which FAULT_CRASH and FAULT_POWER_CUT end the process */

const char *fault_kind_name(enum fault_kind kind);

/* Makes it the default file system of SQLite in this process. Once. */
void fault_vfs_install(void);

/* Counts from one again; the nth operation breaks (nth >= 1). */
void fault_vfs_arm(enum fault_kind kind, long nth);

/* The armed fault happens now, whatever the count. */
void fault_vfs_strike_now(void);

/* Operations since it was armed, and whether one of them broke. */
long fault_vfs_count(void);
bool fault_vfs_broke(void);

#endif
