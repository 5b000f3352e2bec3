#include "vectors.h"

#include <math.h>
#include <string.h>

#include "image.h"
#include "memory.h"

/* More words than any set that we would cut; keeps sizes far from overflow. */
enum { WORDS_MAX = 1000000 };

struct entry {
    uint32_t text; /* where its word begins */
    float factor;  /* brings its numbers to length 1 and then to what the word tells */
};

struct vectors {
    const char *text;
    const signed char *numbers;
    struct entry *entries;
    uint32_t text_size, count;
    uint32_t *slots; /* open addressing: number of the word + 1; 0 is empty */
    uint32_t mask;
};

static uint32_t
hash_of(const char *word)
{
    uint32_t hash = 2166136261u;

    for (; *word != '\0'; word++) {
        hash = (hash ^ (unsigned char)*word) * 16777619u;
    }
    return hash ^ (hash >> 15);
}

/*
 * Common words tell less of what a text is about: a / (a + how often it is said), where the n-th
 * commonest word is taken to be one in 12 n (Arora, Liang and Ma, "A Simple but Tough-to-Beat
 * Baseline for Sentence Embeddings", ICLR 2017; Zipf's law).
 */
static float
tells(uint32_t rank)
{
    const float a = 1e-3f;

    return a / (a + 1 / (12 * ((float)rank + 3)));
}

/* The slot of a word, or the empty one where it belongs. */
static uint32_t
slot_of(const struct vectors *vectors, const char *word)
{
    uint32_t at = hash_of(word) & vectors->mask;

    while (vectors->slots[at] != 0 &&
           strcmp(vectors->text + vectors->entries[vectors->slots[at] - 1].text, word) != 0) {
        at = (at + 1) & vectors->mask;
    }
    return at;
}

static void
add_entry(struct vectors *vectors, uint32_t number, uint32_t text)
{
    const signed char *numbers = vectors->numbers + (size_t)number * VECTORS_NUMBERS;
    uint32_t slot = slot_of(vectors, vectors->text + text);
    int square = 0, i;

    for (i = 0; i < VECTORS_NUMBERS; i++) {
        square += numbers[i] * numbers[i];
    }
    vectors->entries[number].text = text;
    vectors->entries[number].factor = square > 0 ? tells(number) / sqrtf((float)square) : 0;
    if (vectors->slots[slot] == 0) { /* else the word stands here twice; the first counts */
        vectors->slots[slot] = number + 1;
    }
}

static uint32_t
read_number(const char *bytes)
{
    const unsigned char *b = (const unsigned char *)bytes;

    return b[0] | (uint32_t)b[1] << 8 | (uint32_t)b[2] << 16 | (uint32_t)b[3] << 24;
}

int
vectors_read(void *arena, const char *bytes, size_t length, struct vectors **vectors,
             struct fault *fault)
{
    enum { HEAD = 16 };
    struct vectors *read;
    uint32_t count, size, at = 0, i;

    if (length < HEAD || memcmp(bytes, "hbwords1", 8) != 0) {
        fault_set(fault, "not a file of word vectors; make it with kb/reader/cut-vectors");
        return -1;
    }
    count = read_number(bytes + 8);
    size = read_number(bytes + 12);
    if (count > WORDS_MAX || HEAD + (uint64_t)size + (uint64_t)count * VECTORS_NUMBERS != length ||
        size < count || (size > 0 && bytes[HEAD + size - 1] != '\0')) {
        fault_set(fault, "a file of word vectors is cut short or damaged; make it again");
        return -1;
    }
    read = memory_new(arena, struct vectors);
    read->text = bytes + HEAD;
    read->numbers = (const signed char *)bytes + HEAD + size;
    read->text_size = size;
    read->count = count;
    read->entries = memory_array(read, struct entry, count + 1);
    read->mask = 1023;
    while (read->mask < 2 * count) {
        read->mask = 2 * read->mask + 1;
    }
    read->slots = memory_array(read, uint32_t, read->mask + 1);
    for (i = 0; i < count && at < size; i++) {
        add_entry(read, i, at);
        at += (uint32_t)strlen(read->text + at) + 1;
    }
    *vectors = read;
    return 0;
}

void
vectors_add(const struct vectors *vectors, const char *word, float sum[VECTORS_NUMBERS])
{
    uint32_t number = vectors->slots[slot_of(vectors, word)];
    const signed char *numbers;
    float factor;
    int i;

    if (number == 0) {
        return;
    }
    numbers = vectors->numbers + (size_t)(number - 1) * VECTORS_NUMBERS;
    factor = vectors->entries[number - 1].factor;
    for (i = 0; i < VECTORS_NUMBERS; i++) {
        sum[i] += factor * (float)numbers[i];
    }
}

void
vectors_image(struct image *image, struct vectors **of)
{
    struct vectors *vectors = image_array(image, of, 1);

    if (vectors != NULL) {
        image_array(image, &vectors->text, vectors->text_size);
        image_array(image, &vectors->numbers, (size_t)vectors->count * VECTORS_NUMBERS);
        image_array(image, &vectors->entries, vectors->count);
        image_array(image, &vectors->slots, (size_t)vectors->mask + 1);
    }
}
