#include "kept.h"

#include <string.h>

#include "memory.h"

static size_t
padded(size_t size)
{
    return (size + 7) / 8 * 8;
}

/* FNV over words of 8 bytes; the lengths are multiples of 8. */
static uint64_t
sum_of(uint64_t sum, const char *bytes, size_t length)
{
    size_t i;

    for (i = 0; i + 8 <= length; i += 8) {
        uint64_t word;

        memcpy(&word, bytes + i, 8);
        sum = (sum ^ word) * 1099511628211u;
        sum ^= sum >> 31;
    }
    return sum;
}

/* The sum over the head, its own field taken as 0, and over all bytes after it. */
static uint64_t
sum_all(const struct kept_head *head, const char *bytes)
{
    struct kept_head first = *head;
    uint64_t sum;

    first.sum = 0;
    sum = sum_of(14695981039346656037u, (const char *)&first, sizeof(first));
    return sum_of(sum, bytes + sizeof(first), head->length - sizeof(first));
}

char *
kept_save(void *arena, struct kept_head *head, const struct kept_part *parts, size_t count,
          size_t *length)
{
    size_t at = padded(head->size), i;
    char *bytes;

    head->length = at;
    for (i = 0; i < count; i++) {
        head->length += padded(parts[i].each * parts[i].count);
    }
    bytes = memory_array(arena, char, head->length);
    memcpy(bytes, head, head->size);
    for (i = 0; i < count; i++) {
        if (parts[i].count > 0) { /* a language without topics has no lists at all */
            memcpy(bytes + at, *parts[i].at, parts[i].each * parts[i].count);
        }
        at += padded(parts[i].each * parts[i].count);
    }
    head->sum = sum_all(head, bytes);
    memcpy(bytes, head, sizeof(*head));
    *length = head->length;
    return bytes;
}

int
kept_open(const char *bytes, size_t length, struct kept_head *head, struct fault *fault)
{
    struct kept_head read;

    if (length < padded(head->size)) {
        fault_set(fault, "what is stored is cut short");
        return -1;
    }
    memcpy(&read, bytes, sizeof(read));
    if (memcmp(read.magic, head->magic, sizeof(read.magic)) != 0 || read.version != head->version ||
        read.size != head->size || read.length != length) {
        fault_set(fault, "what is stored is of another version");
        return -1;
    }
    if (sum_all(&read, bytes) != read.sum) {
        fault_set(fault, "what is stored is damaged");
        return -1;
    }
    memcpy(head, bytes, head->size);
    return 0;
}

int
kept_take(const char *bytes, const struct kept_head *head, const struct kept_part *parts,
          size_t count, struct fault *fault)
{
    size_t at = padded(head->size), length = head->length, i;

    for (i = 0; i < count && at <= length; i++) {
        size_t size = parts[i].each * parts[i].count;

        if (size / parts[i].each != parts[i].count || size > length - at) {
            break;
        }
        *parts[i].at = (void *)(uintptr_t)(bytes + at); /* the const is the owner's to keep */
        at += padded(size);
    }
    if (i < count || at != length) {
        fault_set(fault, "what is stored does not fit its own head");
        return -1;
    }
    return 0;
}
