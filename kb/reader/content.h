/*
 * Content files as bytes in memory: what load.c takes from the disk and the readers take apart.
 * Private to the library. Parsers never see a path that they could open.
 */
#ifndef CONTENT_H
#define CONTENT_H

#include <stddef.h>

#include "kb.h"

/* Limits against a folder that is not ours or is damaged. */
enum {
    CONTENT_FILE_BYTES_MAX = 1024 * 1024,
    CONTENT_VECTORS_BYTES_MAX = 16 * 1024 * 1024, /* of a file whose name ends with .vectors */
    CONTENT_FILES_MAX = 2000,
    CONTENT_LINE_MAX = 2000,
    CONTENT_DIGEST_LENGTH = 64
};

struct content_file {
    const char *name;  /* below the kb folder: "topics/en/charge-car.md" */
    const char *bytes; /* any bytes, not ended by NUL */
    size_t length;
};

/* What an earlier start built from the very same files (cache.h); 0 bytes: there is none. The bytes
 * are talloc'd, and the kb takes them over. */
struct content_kept {
    char *bytes;
    size_t length;
    enum kept_as as; /* where it was */
};

struct content {
    const struct content_file *files; /* in name order, by bytes */
    size_t count;
    char digest[CONTENT_DIGEST_LENGTH + 1]; /* "": not reckoned yet */
    struct content_kept kept;
};

/*
 * Reads the folders topics, signs, equipment and words below `folder` into `arena`. Names that
 * begin with a dot or end with ~ are left out: editors make them. Returns 0, or -1 with faults.
 */
int content_load(void *arena, const char *folder, struct content *content, struct faults *faults);

/* BLAKE2b over the names and bytes, as 64 hex digits and a NUL. */
void content_digest(const struct content *content, char digest[CONTENT_DIGEST_LENGTH + 1]);

/* Builds a kb from files that are in memory: kb_load() without the disk, same contract. */
int kb_read(const struct content *content, struct kb **kb, struct faults *faults);

/* The same of files of equipment alone: kb_load_equipment() without the disk. */
int kb_read_equipment(const struct content *content, struct kb **kb, struct faults *faults);

#endif
