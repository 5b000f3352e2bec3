/*
 * Shadows the file methods that change bytes on disk and hands everything else through. The shared
 * memory of a WAL is left alone: after a crash SQLite builds it anew from the log.
 *
 * A power cut is played backwards: before each write the old bytes are kept, a sync of the file
 * forgets them, and at the cut what is still kept is put back, newest first.
 */
#include "fault_vfs.h"

#include <assert.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include <sqlite3.h>

struct fault_file {
    sqlite3_file base; /* must be first: SQLite sees only this */
    sqlite3_file *real;
};

/* Bytes as they were before a change that no sync has made safe yet. */
struct undo {
    struct undo *older;
    struct fault_file *file;
    sqlite3_int64 offset, old_size;
    int length;
    unsigned char bytes[];
};

static struct {
    sqlite3_vfs *real;
    enum fault_kind kind;
    long nth, count;
    bool broke;
    struct undo *newest;
} state;

static const char *const names[] = {"count only", "I/O error", "full disk", "crash", "power cut"};

const char *
fault_kind_name(enum fault_kind kind)
{
    return names[kind];
}

static sqlite3_file *
real_of(sqlite3_file *file)
{
    return ((struct fault_file *)file)->real;
}

static sqlite3_int64
size_of(sqlite3_file *real)
{
    sqlite3_int64 size = 0;

    (void)real->pMethods->xFileSize(real, &size);
    return size;
}

/* Keeps what a change of [offset, offset + length) is about to overwrite or cut off. */
static void
keep_old(struct fault_file *file, sqlite3_int64 offset, sqlite3_int64 length)
{
    sqlite3_int64 size = size_of(file->real);
    sqlite3_int64 there = size > offset ? size - offset : 0;
    struct undo *undo;

    if (there > length) {
        there = length;
    }
    undo = malloc(sizeof(*undo) + (size_t)there);
    assert(undo != NULL);
    undo->file = file;
    undo->offset = offset;
    undo->old_size = size;
    undo->length = (int)there;
    if (there > 0) {
        (void)file->real->pMethods->xRead(file->real, undo->bytes, undo->length, offset);
    }
    undo->older = state.newest;
    state.newest = undo;
}

/* A sync made them safe, or the file is closed (its bytes are then the system's to keep). */
static void
forget_old(const struct fault_file *file)
{
    struct undo **link = &state.newest;

    while (*link != NULL) {
        struct undo *undo = *link;

        if (undo->file == file) {
            *link = undo->older;
            free(undo);
        } else {
            link = &undo->older;
        }
    }
}

static void
cut_power(void)
{
    struct undo *undo;

    for (undo = state.newest; undo != NULL; undo = undo->older) {
        sqlite3_file *real = undo->file->real;

        if (undo->length > 0) {
            (void)real->pMethods->xWrite(real, undo->bytes, undo->length, undo->offset);
        }
        (void)real->pMethods->xTruncate(real, undo->old_size);
    }
}

/* Counts one operation; returns what it is to fail with, or SQLITE_OK. May not return at all. */
static int
strike(int io_error)
{
    state.count++;
    if (state.kind == FAULT_COUNT_ONLY || state.count < state.nth) {
        return SQLITE_OK;
    }
    if (state.kind == FAULT_FULL_DISK) {
        state.broke = true;
        return io_error == SQLITE_IOERR_WRITE ? SQLITE_FULL : SQLITE_OK;
    }
    if (state.count > state.nth) {
        return SQLITE_OK;
    }
    state.broke = true;
    if (state.kind == FAULT_IO_ERROR) {
        return io_error;
    }
    if (state.kind == FAULT_POWER_CUT) {
        cut_power();
    }
    _exit(FAULT_EXIT_STATUS);
}

void
fault_vfs_strike_now(void)
{
    state.nth = state.count + 1;
    (void)strike(SQLITE_IOERR_WRITE);
}

static int
on_write(sqlite3_file *file, const void *bytes, int length, sqlite3_int64 offset)
{
    int rc = strike(SQLITE_IOERR_WRITE);

    if (rc != SQLITE_OK) {
        return rc;
    }
    if (state.kind == FAULT_POWER_CUT) {
        keep_old((struct fault_file *)file, offset, length);
    }
    return real_of(file)->pMethods->xWrite(real_of(file), bytes, length, offset);
}

static int
on_truncate(sqlite3_file *file, sqlite3_int64 size)
{
    int rc = strike(SQLITE_IOERR_TRUNCATE);

    if (rc != SQLITE_OK) {
        return rc;
    }
    if (state.kind == FAULT_POWER_CUT) {
        keep_old((struct fault_file *)file, size, size_of(real_of(file)));
    }
    return real_of(file)->pMethods->xTruncate(real_of(file), size);
}

static int
on_sync(sqlite3_file *file, int flags)
{
    int rc = strike(SQLITE_IOERR_FSYNC);

    if (rc != SQLITE_OK) {
        return rc;
    }
    forget_old((struct fault_file *)file);
    return real_of(file)->pMethods->xSync(real_of(file), flags);
}

static int
on_close(sqlite3_file *file)
{
    int rc = real_of(file)->pMethods->xClose(real_of(file));

    forget_old((struct fault_file *)file);
    free(((struct fault_file *)file)->real);
    return rc;
}

/* ---- handed through */

static int
on_read(sqlite3_file *file, void *bytes, int length, sqlite3_int64 offset)
{
    return real_of(file)->pMethods->xRead(real_of(file), bytes, length, offset);
}

static int
on_file_size(sqlite3_file *file, sqlite3_int64 *size)
{
    return real_of(file)->pMethods->xFileSize(real_of(file), size);
}

static int
on_lock(sqlite3_file *file, int level)
{
    return real_of(file)->pMethods->xLock(real_of(file), level);
}

static int
on_unlock(sqlite3_file *file, int level)
{
    return real_of(file)->pMethods->xUnlock(real_of(file), level);
}

static int
on_check_lock(sqlite3_file *file, int *held)
{
    return real_of(file)->pMethods->xCheckReservedLock(real_of(file), held);
}

static int
on_control(sqlite3_file *file, int operation, void *argument)
{
    return real_of(file)->pMethods->xFileControl(real_of(file), operation, argument);
}

static int
on_sector_size(sqlite3_file *file)
{
    return real_of(file)->pMethods->xSectorSize(real_of(file));
}

static int
on_traits(sqlite3_file *file)
{
    return real_of(file)->pMethods->xDeviceCharacteristics(real_of(file));
}

static int
on_shm_map(sqlite3_file *file, int page, int size, int extend, void volatile **map)
{
    return real_of(file)->pMethods->xShmMap(real_of(file), page, size, extend, map);
}

static int
on_shm_lock(sqlite3_file *file, int offset, int count, int flags)
{
    return real_of(file)->pMethods->xShmLock(real_of(file), offset, count, flags);
}

static void
on_shm_barrier(sqlite3_file *file)
{
    real_of(file)->pMethods->xShmBarrier(real_of(file));
}

static int
on_shm_unmap(sqlite3_file *file, int erase)
{
    return real_of(file)->pMethods->xShmUnmap(real_of(file), erase);
}

/* Version 2: no memory mapping, which would write past us. */
static const sqlite3_io_methods methods = {
    .iVersion = 2,
    .xClose = on_close,
    .xRead = on_read,
    .xWrite = on_write,
    .xTruncate = on_truncate,
    .xSync = on_sync,
    .xFileSize = on_file_size,
    .xLock = on_lock,
    .xUnlock = on_unlock,
    .xCheckReservedLock = on_check_lock,
    .xFileControl = on_control,
    .xSectorSize = on_sector_size,
    .xDeviceCharacteristics = on_traits,
    .xShmMap = on_shm_map,
    .xShmLock = on_shm_lock,
    .xShmBarrier = on_shm_barrier,
    .xShmUnmap = on_shm_unmap,
};

static int
on_open(sqlite3_vfs *vfs, const char *name, sqlite3_file *file, int flags, int *out_flags)
{
    struct fault_file *ours = (struct fault_file *)file;
    int rc;

    (void)vfs;
    ours->base.pMethods = NULL; /* then SQLite does not close what failed to open */
    ours->real = calloc(1, (size_t)state.real->szOsFile);
    assert(ours->real != NULL);
    rc = state.real->xOpen(state.real, name, ours->real, flags, out_flags);
    if (rc != SQLITE_OK) {
        if (ours->real->pMethods != NULL) {
            (void)ours->real->pMethods->xClose(ours->real);
        }
        free(ours->real);
        return rc;
    }
    ours->base.pMethods = &methods;
    return SQLITE_OK;
}

void
fault_vfs_install(void)
{
    static sqlite3_vfs ours;

    state.real = sqlite3_vfs_find(NULL);
    assert(state.real != NULL && state.real != &ours);
    ours = *state.real; /* paths, deletion, time, randomness stay the system's */
    ours.zName = "fault";
    ours.szOsFile = (int)sizeof(struct fault_file);
    ours.xOpen = on_open;
    ours.pNext = NULL;
    sqlite3_vfs_register(&ours, 1);
}

void
fault_vfs_arm(enum fault_kind kind, long nth)
{
    assert(nth >= 1);
    state.kind = kind;
    state.nth = nth;
    state.count = 0;
    state.broke = false;
}

long
fault_vfs_count(void)
{
    return state.count;
}

bool
fault_vfs_broke(void)
{
    return state.broke;
}
