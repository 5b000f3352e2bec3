#include "ordinary.h"

#include <stdint.h>
#include <string.h>

#include "image.h"
#include "memory.h"

/* Only hashes are kept: 64 bits each, so that two of some ten thousand words never meet. */
struct ordinary {
    uint64_t *slots; /* open addressing; 0 is empty */
    uint32_t mask;
};

static uint64_t
hash_of(const char *word, size_t length)
{
    uint64_t hash = 14695981039346656037u;
    size_t i;

    for (i = 0; i < length; i++) {
        hash = (hash ^ (unsigned char)word[i]) * 1099511628211u;
    }
    hash ^= hash >> 32;
    return hash == 0 ? 1 : hash;
}

/* The slot of a hash, or the empty one where it belongs. */
static uint32_t
slot_of(const struct ordinary *ordinary, uint64_t hash)
{
    uint32_t at = (uint32_t)hash & ordinary->mask;

    while (ordinary->slots[at] != 0 && ordinary->slots[at] != hash) {
        at = (at + 1) & ordinary->mask;
    }
    return at;
}

struct ordinary *
ordinary_read(void *arena, const char *lines, size_t length)
{
    struct ordinary *ordinary = memory_new(arena, struct ordinary);
    const char *end = lines + length, *line, *next;
    size_t count = 0;

    for (line = lines; line < end; line++) {
        count += *line == '\n';
    }
    ordinary->mask = 1023;
    while (ordinary->mask < 2 * count) {
        ordinary->mask = 2 * ordinary->mask + 1;
    }
    ordinary->slots = memory_array(ordinary, uint64_t, ordinary->mask + 1);
    for (line = lines; line < end; line = next + 1) {
        size_t size;

        next = memchr(line, '\n', (size_t)(end - line));
        next = next == NULL ? end : next;
        size = (size_t)(next - line);
        size -= size > 0 && line[size - 1] == '\r';
        if (size > 0 && *line != '#') {
            uint64_t hash = hash_of(line, size);

            ordinary->slots[slot_of(ordinary, hash)] = hash;
        }
    }
    return ordinary;
}

bool
ordinary_has(const struct ordinary *ordinary, const char *word)
{
    return ordinary != NULL && ordinary->slots[slot_of(ordinary, hash_of(word, strlen(word)))] != 0;
}

void
ordinary_image(struct image *image, struct ordinary **of)
{
    struct ordinary *ordinary = image_array(image, of, 1);

    if (ordinary != NULL) {
        image_array(image, &ordinary->slots, (size_t)ordinary->mask + 1);
    }
}
