#include "cache.h"

#include <errno.h>
#include <fcntl.h>
#include <inttypes.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/mman.h>
#include <sys/random.h>
#include <sys/stat.h>
#include <unistd.h>

#include "kb_image.h"
#include "kb_parts.h"
#include "memory.h"

enum {
    KEPT_BYTES_MAX = 300 * 1024 * 1024,    /* a larger file is none of ours */
    KEY_LENGTH = 2 * CONTENT_DIGEST_LENGTH /* of the content and of the program's sources */
};

static void
write_key(const char *digest, char key[KEY_LENGTH + 1])
{
    memcpy(key, digest, CONTENT_DIGEST_LENGTH);
    memcpy(key + CONTENT_DIGEST_LENGTH, cache_made_by, CONTENT_DIGEST_LENGTH + 1);
}

/* The file in the folder. */
static const char *
name_of(enum kept_as as)
{
    return as == KEPT_LIVE ? "kb" : "kb-checked";
}

/* ---- The folder ----------------------------------------------------------------------------- */

static bool
only_owner_writes(const struct stat *is)
{
    return (is->st_mode & (S_IWGRP | S_IWOTH)) == 0;
}

static bool
is_ours(const struct stat *is)
{
    return is->st_uid == geteuid() || is->st_uid == 0;
}

/* "folder/" would follow a link of that name; the caller's to free. */
static char *
without_slash(const char *folder)
{
    size_t length = strlen(folder);

    while (length > 1 && folder[length - 1] == '/') {
        length--;
    }
    return memory_copy_n(NULL, folder, length);
}

/*
 * A descriptor, the caller's to close, so that what is in the folder is opened in that very folder,
 * whatever comes to stand in its place. A link is not followed, for who may put one there chooses
 * what is written over. -1 with a fault.
 */
static int
open_folder(const char *folder, struct fault *fault)
{
    char *bare = without_slash(folder);
    int in = open(bare, O_RDONLY | O_DIRECTORY | O_CLOEXEC | O_NOFOLLOW);
    struct stat is;

    talloc_free(bare);
    if (in < 0 || fstat(in, &is) != 0) {
        fault_set(fault, "%s: is no folder, or a link to one: %s", folder, strerror(errno));
    } else if (!only_owner_writes(&is)) {
        fault_set(fault, "%s: others may write it; chmod go-w %s", folder, folder);
    } else if (!is_ours(&is) && geteuid() != 0) {
        fault_set(fault, "%s: is somebody else's", folder);
    } else {
        return in;
    }
    if (in >= 0) {
        close(in);
    }
    return -1;
}

/* ---- Reading -------------------------------------------------------------------------------- */

static bool
read_all(int file, char *bytes, size_t length)
{
    size_t at = 0;

    while (at < length) {
        ssize_t got = read(file, bytes + at, length - at);

        if (got <= 0) {
            return false;
        }
        at += (size_t)got;
    }
    return true;
}

/* Room for so many bytes in large pages, if the system has any: it takes half as long to fill. */
static char *
large_room(void *arena, size_t length)
{
    const uintptr_t page = (uintptr_t)sysconf(_SC_PAGESIZE);
    char *bytes = memory_must(talloc_array(arena, char, (unsigned)length));
    uintptr_t begin = ((uintptr_t)bytes + page - 1) / page * page;
    uintptr_t end = ((uintptr_t)bytes + length) / page * page;

    if (begin < end) {
        (void)madvise((void *)begin, end - begin, MADV_HUGEPAGE);
    }
    return bytes;
}

/* Ours or root's, and nobody else can have written it: its bytes are believed as they stand. */
static bool
is_trusted(const struct stat *is)
{
    return S_ISREG(is->st_mode) && is_ours(is) && only_owner_writes(is);
}

/* The bytes of this content, if the file holds them. */
static struct content_kept
read_kept(void *arena, int file, const char *key)
{
    struct content_kept kept = {0};
    struct stat is;
    char of[KEY_LENGTH];

    if (fstat(file, &is) == 0 && is_trusted(&is) && is.st_size > KEY_LENGTH &&
        is.st_size < KEPT_BYTES_MAX && read_all(file, of, sizeof(of)) &&
        memcmp(of, key, sizeof(of)) == 0) {
        size_t length = (size_t)is.st_size - sizeof(of);
        char *bytes = large_room(arena, length);

        if (read_all(file, bytes, length)) {
            kept = (struct content_kept){.bytes = bytes, .length = length};
        }
    }
    return kept;
}

void
cache_read(void *arena, const char *folder, struct content *content)
{
    static const enum kept_as all[] = {KEPT_LIVE, KEPT_CHECKED};
    struct fault none; /* not told: it only costs time */
    int in = open_folder(folder, &none);
    char key[KEY_LENGTH + 1];
    size_t i;

    content_digest(content, content->digest);
    if (in < 0) {
        return;
    }
    write_key(content->digest, key);
    for (i = 0; i < sizeof(all) / sizeof(all[0]) && content->kept.length == 0; i++) {
        int file = openat(in, name_of(all[i]), O_RDONLY | O_CLOEXEC | O_NOFOLLOW);

        if (file >= 0) {
            content->kept = read_kept(arena, file, key);
            content->kept.as = all[i];
            close(file);
        }
    }
    close(in);
}

/* ---- Keeping -------------------------------------------------------------------------------- */

/* Who owns the folder reads and replaces what is in it, also if root put it there. */
static int
hand_to_owner(int file, int in)
{
    struct stat is;

    return geteuid() != 0 ? 0 : fstat(in, &is) == 0 ? fchown(file, is.st_uid, is.st_gid) : -1;
}

/* A name that nobody else writes under at the same time. */
static const char *
name_aside(void *arena, const char *name)
{
    uint64_t number = 0;

    (void)!getrandom(&number, sizeof(number), 0); /* if it cannot, the file is there or is not */
    return memory_format(arena, "%s.%016" PRIx64, name, number);
}

static bool
write_file(int descriptor, int in, const char *key, const char *bytes, size_t length)
{
    FILE *file = fdopen(descriptor, "wb");
    bool is_written;

    if (file == NULL) {
        close(descriptor);
        return false;
    }
    is_written = hand_to_owner(descriptor, in) == 0 && fwrite(key, KEY_LENGTH, 1, file) == 1 &&
                 fwrite(bytes, length, 1, file) == 1;
    return (fclose(file) == 0) & is_written;
}

/* Written aside and renamed, so that a reader sees all of it or none and two who write do not
 * meet. */
static int
write_kept(void *arena, const struct kb *kb, int in, const char *name, struct fault *fault)
{
    struct image *image = image_new(arena, fault);
    const char *aside = name_aside(arena, name), *bytes;
    char key[KEY_LENGTH + 1];
    size_t length;
    int file;

    if (image == NULL || (bytes = kb_image(kb, image, &length, fault)) == NULL) {
        return -1;
    }
    write_key(kb->digest, key);
    file = openat(in, aside, O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC | O_NOFOLLOW, 0600);
    if (file < 0 || !write_file(file, in, key, bytes, length) ||
        renameat(in, aside, in, name) != 0) {
        fault_set(fault, "%s: cannot be written: %s", name, strerror(errno));
        if (file >= 0) {
            unlinkat(in, aside, 0);
        }
        return -1;
    }
    return 0;
}

int
kb_keep(const struct kb *kb, const char *folder, enum kept_as as, struct fault *fault)
{
    bool is_there = as == KEPT_LIVE ? kb->kept == KEPT_LIVE : kb->kept != KEPT_NOWHERE;
    void *arena = memory_must(talloc_new(NULL));
    struct fault why;
    int rc = -1, in;

    if (mkdir(folder, 0700) != 0 && errno != EEXIST) {
        fault_set(fault, "%s: cannot be made: %s", folder, strerror(errno));
    } else if ((in = open_folder(folder, fault)) >= 0) {
        rc = is_there ? 0 : write_kept(arena, kb, in, name_of(as), &why);
        if (rc != 0) {
            fault_set(fault, "%s/%s", folder, why.text);
        }
        close(in);
    }
    talloc_free(arena);
    return rc;
}
