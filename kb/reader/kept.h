/*
 * What took time to build as bytes, and back: a head, then arrays as they lie in memory. The bytes
 * are a cache beside the content, never moved between machines, so nothing is converted. They may
 * be damaged, cut or from another version all the same: a sum over everything shows the first two
 * and the head the last. The sum is no seal: whoever may write the cache may write the content too.
 * Private to the library.
 */
#ifndef KEPT_H
#define KEPT_H

#include <stddef.h>
#include <stdint.h>

#include "fault.h"

/* What every head begins with; what follows is its owner's. Gaps must be 0, for they are summed. */
struct kept_head {
    char magic[8];
    uint32_t version, size; /* of the whole head */
    uint64_t length,
        sum; /* of all bytes; over all bytes with this field 0: filled by kept_save() */
};

/* Where one array is, how large its items are and how many there are. */
struct kept_part {
    void **at;
    size_t each, count;
};

/* Head and arrays as bytes, in `arena`. */
char *kept_save(void *arena, struct kept_head *head, const struct kept_part *parts, size_t count,
                size_t *length);

/*
 * Copies the head of these bytes over `head`, which comes with the magic, version and size that it
 * must have. Returns 0, or -1 with a fault for bytes that kept_save() did not make of such a head;
 * `head` is then untouched. The bytes begin where a uint64_t may stand.
 */
int kept_open(const char *bytes, size_t length, struct kept_head *head, struct fault *fault);

/* Lets the arrays be those in the bytes, which must outlive them and are never changed. Returns 0,
 * or -1 with a fault if they do not fill the bytes exactly. */
int kept_take(const char *bytes, const struct kept_head *head, const struct kept_part *parts,
              size_t count, struct fault *fault);

#endif
