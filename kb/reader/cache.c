#include "cache.h"

#include <errno.h>
#include <fcntl.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "kb_parts.h"
#include "memory.h"
#include "model.h"
#include "sign_match.h"

/* Of a model that is read back; a larger file is none of ours. */
enum { KEPT_BYTES_MAX = 256 * 1024 * 1024 };

static char *
path_of(void *arena, const char *folder, int language, enum content_made made)
{
    static const char *const names[MADE_COUNT] = {[MADE_MODEL] = "model", [MADE_SIGNS] = "signs"};

    return memory_format(arena, "%s/%s.%s", folder, language_code((enum language)language),
                         names[made]);
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

static void
read_one(void *arena, const char *path, const char *digest, struct content_kept *kept)
{
    int file = open(path, O_RDONLY | O_CLOEXEC);
    struct stat is;
    char of[CONTENT_DIGEST_LENGTH];

    if (file < 0) {
        return;
    }
    if (fstat(file, &is) == 0 && S_ISREG(is.st_mode) && is.st_size > CONTENT_DIGEST_LENGTH &&
        is.st_size < KEPT_BYTES_MAX && read_all(file, of, sizeof(of)) &&
        memcmp(of, digest, sizeof(of)) == 0) {
        size_t length = (size_t)is.st_size - sizeof(of);
        char *bytes = memory_must(talloc_array(arena, char, (unsigned)length));

        if (read_all(file, bytes, length)) {
            *kept = (struct content_kept){.bytes = bytes, .length = length};
        }
    }
    close(file);
}

void
cache_read(void *arena, const char *folder, struct content *content)
{
    int language, made;

    content_digest(content, content->digest);
    for (language = 0; language < LANGUAGE_COUNT; language++) {
        for (made = 0; made < MADE_COUNT; made++) {
            read_one(arena, path_of(arena, folder, language, (enum content_made)made),
                     content->digest, &content->kept[language][made]);
        }
    }
}

/* Written aside, under a name of its own, and renamed, so that a reader sees all of it or none and
 * two who write do not meet. */
static int
write_one(void *arena, const char *digest, const char *path, const char *bytes, size_t length,
          struct fault *fault)
{
    char *aside = memory_format(arena, "%s.XXXXXX", path);
    int descriptor = mkostemp(aside, O_CLOEXEC);
    FILE *file = descriptor < 0 ? NULL : fdopen(descriptor, "wb");
    bool is_written;

    if (file == NULL) {
        fault_set(fault, "%s: cannot be written: %s", aside, strerror(errno));
        return -1;
    }
    is_written =
        fwrite(digest, CONTENT_DIGEST_LENGTH, 1, file) == 1 && fwrite(bytes, length, 1, file) == 1;
    if ((fclose(file) != 0) | !is_written || rename(aside, path) != 0) {
        fault_set(fault, "%s: cannot be written: %s", path, strerror(errno));
        unlink(aside);
        return -1;
    }
    return 0;
}

/* What was built, as bytes; NULL if it came from the cache, or there is none. */
static char *
made_of(void *arena, const struct kb_language *of, enum content_made made, size_t *length)
{
    if (made == MADE_SIGNS) {
        return sign_index_keep(of->signs, arena, length);
    }
    return of->was_kept ? NULL : model_save(arena, of->topics, length);
}

static int
keep_language(void *arena, const struct kb *kb, const char *folder, int language,
              struct fault *fault)
{
    int made, rc = 0;

    for (made = 0; made < MADE_COUNT && rc == 0; made++) {
        size_t length;
        char *bytes = made_of(arena, &kb->languages[language], (enum content_made)made, &length);

        if (bytes != NULL) {
            rc = write_one(arena, kb->digest,
                           path_of(arena, folder, language, (enum content_made)made), bytes, length,
                           fault);
        }
    }
    return rc;
}

int
kb_keep(const struct kb *kb, const char *folder, struct fault *fault)
{
    void *arena = memory_must(talloc_new(NULL));
    int language, rc = 0;

    if (mkdir(folder, 0700) != 0 && errno != EEXIST) {
        fault_set(fault, "%s: cannot be made: %s", folder, strerror(errno));
        rc = -1;
    }
    for (language = 0; language < LANGUAGE_COUNT && rc == 0; language++) {
        rc = keep_language(arena, kb, folder, language, fault);
    }
    talloc_free(arena);
    return rc;
}
