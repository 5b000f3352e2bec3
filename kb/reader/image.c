#include "image.h"

#include <assert.h>
#include <stdbool.h>
#include <stdint.h>
#include <string.h>
#include <sys/mman.h>

#include "memory.h"

/* Address space that an image may fill; only what is filled takes memory. */
enum { IMAGE_BYTES_MAX = 256 * 1024 * 1024, ALIGNMENT = 16 };

/* What the bytes begin with; the places follow the last block. */
struct head {
    char magic[8];
    uint64_t length, places, sum; /* all bytes; how many pointers; over all but this field */
};

/* In units of a pointer. */
typedef uint32_t place;

struct image {
    char *bytes; /* IMAGE_BYTES_MAX of them, all 0 behind `used` */
    size_t used;
    place *places;
    size_t count;
    bool is_full;
};

_Static_assert(sizeof(struct head) % ALIGNMENT == 0, "the first block follows the head");

/* ---- Making one ---------------------------------------------------------------------------- */

static int
unmap(struct image *image)
{
    munmap(image->bytes, IMAGE_BYTES_MAX);
    return 0;
}

struct image *
image_new(void *arena, struct fault *fault)
{
    void *bytes = mmap(NULL, IMAGE_BYTES_MAX, PROT_READ | PROT_WRITE,
                       MAP_PRIVATE | MAP_ANONYMOUS | MAP_NORESERVE, -1, 0);
    struct image *image;

    if (bytes == MAP_FAILED) {
        fault_set(fault, "no room for %d bytes of what is to be kept", IMAGE_BYTES_MAX);
        return NULL;
    }
    image = memory_new(arena, struct image);
    image->bytes = bytes;
    image->used = sizeof(struct head);
    talloc_set_destructor(image, unmap);
    return image;
}

static bool
is_inside(const struct image *image, const void *at)
{
    return (uintptr_t)at >= (uintptr_t)image->bytes &&
           (uintptr_t)at < (uintptr_t)image->bytes + image->used;
}

/* Room for so many bytes; beside the image once that is full, so that the copying can go on. */
static char *
room_for(struct image *image, size_t size, size_t alignment)
{
    size_t at = (image->used + alignment - 1) / alignment * alignment;

    image->is_full = image->is_full || at > IMAGE_BYTES_MAX || size > IMAGE_BYTES_MAX - at;
    if (image->is_full) {
        return memory_must(talloc_size(image, size));
    }
    image->used = at + size;
    return image->bytes + at;
}

void
image_point(struct image *image, void **field, const void *target)
{
    *field = (void *)(uintptr_t)target; /* the const is the field's to keep */
    if (target != NULL && is_inside(image, field)) {
        image->places = memory_grow(image, place, image->places, image->count);
        image->places[image->count++] =
            (place)(((uintptr_t)field - (uintptr_t)image->bytes) / sizeof(void *));
    }
}

static void *
copy(struct image *image, void **field, size_t size, size_t alignment)
{
    char *room;

    if (*field == NULL) {
        return NULL;
    }
    room = room_for(image, size > 0 ? size : 1, alignment); /* so that it lies inside */
    memcpy(room, *field, size);
    image_point(image, field, room);
    return room;
}

void *
image_block(struct image *image, void **field, size_t size)
{
    return copy(image, field, size, ALIGNMENT);
}

void
image_text(struct image *image, const char **field)
{
    copy(image, (void **)(uintptr_t)field, *field == NULL ? 0 : strlen(*field) + 1, 1);
}

void
image_texts(struct image *image, const char *const **field, size_t count)
{
    const char **texts = image_array(image, field, count);
    size_t i;

    for (i = 0; texts != NULL && i < count; i++) {
        image_text(image, &texts[i]);
    }
}

/* ---- Bytes --------------------------------------------------------------------------------- */

/* FNV over words of 8 bytes, in lanes that do not wait for each other; the length is a multiple of
 * 8. */
static uint64_t
sum_of(const char *bytes, size_t length)
{
    enum { LANES = 4 };
    const uint64_t prime = 1099511628211u;
    uint64_t sums[LANES] = {14695981039346656037u, 1, 2, 3}, sum = length;
    size_t at, lane;

    for (at = 0; at + 8 * LANES <= length; at += 8 * LANES) {
        for (lane = 0; lane < LANES; lane++) {
            uint64_t word;

            memcpy(&word, bytes + at + 8 * lane, 8);
            sums[lane] = (sums[lane] ^ word) * prime;
            sums[lane] ^= sums[lane] >> 31;
        }
    }
    for (lane = 0; at < length; at += 8, lane = (lane + 1) % LANES) {
        uint64_t word;

        memcpy(&word, bytes + at, 8);
        sum = (sum ^ word) * prime;
    }
    for (lane = 0; lane < LANES; lane++) {
        sum = (sum ^ sums[lane]) * prime;
    }
    return sum ^ sum >> 31;
}

static uint64_t
sum_all(const char *bytes, const struct head *head)
{
    struct head first = *head;

    first.sum = 0;
    return sum_of((const char *)&first, sizeof(first)) ^
           sum_of(bytes + sizeof(first), head->length - sizeof(first));
}

const char *
image_bytes(struct image *image, size_t *length, struct fault *fault)
{
    struct head head = {.magic = "hbimage", .places = image->count};
    size_t size = (image->count + 1) / 2 * 2 * sizeof(place), i;
    char *places = room_for(image, size, ALIGNMENT);

    if (image->is_full) {
        fault_set(fault, "what is to be kept has more than %d bytes", IMAGE_BYTES_MAX);
        return NULL;
    }
    for (i = 0; i < image->count; i++) {
        void **field = (void **)(void *)image->bytes + image->places[i];

        assert(is_inside(image, *field));
        *field = (void *)((uintptr_t)*field - (uintptr_t)image->bytes);
    }
    if (image->count > 0) {
        memcpy(places, image->places, image->count * sizeof(place));
    }
    head.length = image->used;
    head.sum = sum_all(image->bytes, &head);
    memcpy(image->bytes, &head, sizeof(head));
    *length = image->used;
    return image->bytes;
}

/* Lets the pointers point into the bytes where these are now; false if one would not. */
static bool
move_in(char *bytes, const struct head *head, const char *places)
{
    size_t size = (size_t)(places - bytes), i;

    for (i = 0; i < head->places; i++) {
        place where;
        void **field;

        memcpy(&where, places + i * sizeof(where), sizeof(where));
        if (where >= size / sizeof(void *)) {
            return false;
        }
        field = (void **)(void *)bytes + where;
        if ((uintptr_t)*field >= size) {
            return false;
        }
        *field = bytes + (uintptr_t)*field;
    }
    return true;
}

void *
image_open(char *bytes, size_t length, struct fault *fault)
{
    struct head head;
    size_t size;

    if (length < sizeof(head) || length % 8 != 0) {
        fault_set(fault, "what is kept is cut short");
        return NULL;
    }
    memcpy(&head, bytes, sizeof(head));
    size = ((size_t)head.places + 1) / 2 * 2 * sizeof(place);
    if (memcmp(head.magic, "hbimage", sizeof(head.magic)) != 0 || head.length != length ||
        head.places > length / sizeof(place) || size > length - sizeof(head) ||
        sum_all(bytes, &head) != head.sum || !move_in(bytes, &head, bytes + (length - size))) {
        fault_set(fault, "what is kept is damaged");
        return NULL;
    }
    return bytes + sizeof(head);
}
