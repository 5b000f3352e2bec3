#include "cache.h"

#include <errno.h>
#include <fcntl.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/mman.h>
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

static char *
path_of(void *arena, const char *folder)
{
    return memory_format(arena, "%s/kb", folder);
}

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
    return S_ISREG(is->st_mode) && (is->st_uid == geteuid() || is->st_uid == 0) &&
           (is->st_mode & (S_IWGRP | S_IWOTH)) == 0;
}

void
cache_read(void *arena, const char *folder, struct content *content)
{
    int file = open(path_of(arena, folder), O_RDONLY | O_CLOEXEC | O_NOFOLLOW);
    struct stat is;
    char of[KEY_LENGTH], key[KEY_LENGTH + 1];

    content_digest(content, content->digest);
    if (file < 0) {
        return;
    }
    write_key(content->digest, key);
    if (fstat(file, &is) == 0 && is_trusted(&is) && is.st_size > KEY_LENGTH &&
        is.st_size < KEPT_BYTES_MAX && read_all(file, of, sizeof(of)) &&
        memcmp(of, key, sizeof(of)) == 0) {
        size_t length = (size_t)is.st_size - sizeof(of);
        char *bytes = large_room(arena, length);

        if (read_all(file, bytes, length)) {
            content->kept = (struct content_kept){.bytes = bytes, .length = length};
        }
    }
    close(file);
}

/* Links are followed to the folder, for a service manager may put one in its place. Who owns the
 * folder reads and replaces what is in it, also if root put it there. */
static int
hand_to_owner(int file, const char *folder)
{
    struct stat is;

    return geteuid() != 0 ? 0 : stat(folder, &is) == 0 ? fchown(file, is.st_uid, is.st_gid) : -1;
}

/* Written aside, under a name of its own, and renamed, so that a reader sees all of it or none and
 * two who write do not meet. */
static int
write_kept(void *arena, const struct kb *kb, const char *folder, struct fault *fault)
{
    struct image *image = image_new(arena, fault);
    char *path = path_of(arena, folder), *aside = memory_format(arena, "%s.XXXXXX", path);
    char key[KEY_LENGTH + 1];
    const char *bytes;
    size_t length;
    int descriptor;
    FILE *file;
    bool is_written;

    if (image == NULL || (bytes = kb_image(kb, image, &length, fault)) == NULL) {
        return -1;
    }
    descriptor = mkostemp(aside, O_CLOEXEC);
    file = descriptor < 0 ? NULL : fdopen(descriptor, "wb");
    if (file == NULL) {
        fault_set(fault, "%s: cannot be written: %s", aside, strerror(errno));
        if (descriptor >= 0) {
            close(descriptor);
            unlink(aside);
        }
        return -1;
    }
    write_key(kb->digest, key);
    is_written = hand_to_owner(descriptor, folder) == 0 && fwrite(key, KEY_LENGTH, 1, file) == 1 &&
                 fwrite(bytes, length, 1, file) == 1;
    if ((fclose(file) != 0) | !is_written || rename(aside, path) != 0) {
        fault_set(fault, "%s: cannot be written: %s", path, strerror(errno));
        unlink(aside);
        return -1;
    }
    return 0;
}

int
kb_keep(const struct kb *kb, const char *folder, struct fault *fault)
{
    void *arena = memory_must(talloc_new(NULL));
    int rc = 0;

    if (mkdir(folder, 0700) != 0 && errno != EEXIST) {
        fault_set(fault, "%s: cannot be made: %s", folder, strerror(errno));
        rc = -1;
    } else if (!kb->was_kept) {
        rc = write_kept(arena, kb, folder, fault);
    }
    talloc_free(arena);
    return rc;
}
