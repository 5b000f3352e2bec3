/*
 * The known words. Neighbours are found as in every spelling checker that must be quick: each
 * known word is filed under all that is left of it when a letter or two are lost; words that are
 * one or two slips apart share such a key. So an unknown word costs a few look-ups, however many
 * words are known.
 */
#include "spelling.h"

#include <string.h>

#include "image.h"
#include "memory.h"

uint32_t
spelling_key(const char *word, size_t length, size_t one, size_t other)
{
    uint32_t hash = 2166136261u;
    size_t i;

    for (i = 0; i < length; i++) {
        if (i != one && i != other) {
            hash = (hash ^ (unsigned char)word[i]) * 16777619u;
        }
    }
    return hash ^ (hash >> 15);
}

bool
spelling_find(const struct spelling *spelling, const char *word, size_t length, uint32_t *number)
{
    uint32_t at = spelling_key(word, length, length, length) & spelling->by_text_mask;

    for (; spelling->by_text[at] != 0; at = (at + 1) & spelling->by_text_mask) {
        const char *known = spelling->text + spelling->words[spelling->by_text[at] - 1].text;

        if (known[0] == word[0] && strncmp(known, word, length) == 0 && known[length] == '\0') {
            *number = spelling->by_text[at] - 1;
            return true;
        }
    }
    return false;
}

bool
spelling_is_letters(const char *word)
{
    for (; *word != '\0'; word++) {
        if ((*word >= '0' && *word <= '9') || *word == '%' || *word == '$' || *word == '&') {
            return false;
        }
    }
    return true;
}

/* Two pairs hardly ever have one key, and no pair has 0. */
static uint32_t
pair_key(uint32_t one, uint32_t other)
{
    uint64_t both = ((uint64_t)one << 32 | other) * 0x9e3779b97f4a7c15u;
    uint32_t key = (uint32_t)(both >> 32) ^ (uint32_t)both;

    return key == 0 ? 1 : key;
}

/* The slot of a key among `pairs`, or the empty one where it belongs. */
static uint32_t
pair_slot(const uint32_t *pairs, uint32_t mask, uint32_t key)
{
    uint32_t at = key & mask;

    while (pairs[at] != 0 && pairs[at] != key) {
        at = (at + 1) & mask;
    }
    return at;
}

bool
spelling_has_pair(const struct spelling *spelling, uint32_t one, uint32_t other)
{
    uint32_t slot = pair_slot(spelling->pairs, spelling->pair_mask, pair_key(one, other));

    return spelling->pairs[slot] != 0;
}

/* ---- Building ------------------------------------------------------------------------------ */

static uint32_t
add_text(struct spelling *spelling, const char *text)
{
    uint32_t at = spelling->text_size;
    size_t size = strlen(text) + 1;

    memcpy(spelling->text + at, text, size);
    spelling->text_size += (uint32_t)size;
    return at;
}

static void
file_by_text(struct spelling *spelling, uint32_t number)
{
    const char *word = spelling->text + spelling->words[number].text;
    size_t length = strlen(word);
    uint32_t at = spelling_key(word, length, length, length) & spelling->by_text_mask;

    while (spelling->by_text[at] != 0) {
        at = (at + 1) & spelling->by_text_mask;
    }
    spelling->by_text[at] = number + 1;
}

/* Counts a word; returns its number. */
static uint32_t
count_word(struct spelling *spelling, const struct word *word)
{
    size_t length = strlen(word->text);
    uint32_t number;

    if (spelling_find(spelling, word->text, length, &number)) {
        spelling->words[number].often++;
        return number;
    }
    number = spelling->word_count++;
    spelling->words[number].text = add_text(spelling, word->text);
    spelling->words[number].stem = add_text(spelling, word->stem);
    spelling->words[number].often = 1;
    file_by_text(spelling, number);
    return number;
}

/* The table of pairs while it is filled: it must be large enough for all that texts could have. */
struct pairs {
    uint32_t *keys;
    uint32_t mask, count;
};

static void
file_pair(struct pairs *pairs, uint32_t key)
{
    uint32_t slot = pair_slot(pairs->keys, pairs->mask, key);

    pairs->count += pairs->keys[slot] == 0;
    pairs->keys[slot] = key;
}

static void
count_text(struct spelling *spelling, struct pairs *pairs, const struct words *words)
{
    uint32_t before = 0;
    size_t i;

    for (i = 0; i < words->count; i++) {
        uint32_t number = count_word(spelling, &words->list[i]) + 1;

        file_pair(pairs, pair_key(before, number));
        before = number;
    }
    file_pair(pairs, pair_key(before, 0));
}

static uint32_t
mask_for(size_t entries)
{
    uint32_t mask = 63;

    while (mask < 2 * entries) {
        mask = 2 * mask + 1;
    }
    return mask;
}

/* How many letters of a word may be lost for filing. */
static int
slips_of(const char *word, size_t length)
{
    if (length < SPELLING_SHORTEST || length > SPELLING_LONGEST || !spelling_is_letters(word)) {
        return -1;
    }
    return length < SPELLING_TWO_SLIPS ? 1 : 2;
}

static void
file_slip(struct spelling *spelling, uint32_t hash, uint32_t number)
{
    uint32_t at = hash & spelling->slip_mask;

    while (spelling->slips[at].word != 0) {
        if (spelling->slips[at].hash == hash && spelling->slips[at].word == number + 1) {
            return; /* "ll": losing either leaves the same */
        }
        at = (at + 1) & spelling->slip_mask;
    }
    spelling->slips[at] = (struct slip){hash, number + 1};
}

static void
file_word(struct spelling *spelling, uint32_t number)
{
    const char *word = spelling->text + spelling->words[number].text;
    size_t length = strlen(word), one, other;
    int slips = slips_of(word, length);

    if (slips < 0) {
        return;
    }
    for (one = 0; one <= length; one++) {
        file_slip(spelling, spelling_key(word, length, one, length), number);
        for (other = one + 1; slips == 2 && other < length; other++) {
            file_slip(spelling, spelling_key(word, length, one, other), number);
        }
    }
}

static void
file_slips(void *arena, struct spelling *spelling)
{
    size_t entries = 0;
    uint32_t number;

    for (number = 0; number < spelling->word_count; number++) {
        const char *word = spelling->text + spelling->words[number].text;
        size_t length = strlen(word);
        int slips = slips_of(word, length);

        entries += slips < 0 ? 0 : length + 1 + (slips == 2 ? length * (length - 1) / 2 : 0);
    }
    spelling->slip_mask = mask_for(entries);
    spelling->slips = memory_array(arena, struct slip, spelling->slip_mask + 1);
    for (number = 0; number < spelling->word_count; number++) {
        file_word(spelling, number);
    }
}

/* Keeps the pairs in no larger a table than they need. */
static void
keep_pairs(void *arena, struct spelling *spelling, const struct pairs *all)
{
    struct pairs kept = {.mask = mask_for(all->count)};
    uint32_t i;

    kept.keys = memory_array(arena, uint32_t, kept.mask + (size_t)1);
    for (i = 0; i <= all->mask; i++) {
        if (all->keys[i] != 0) {
            file_pair(&kept, all->keys[i]);
        }
    }
    spelling->pairs = kept.keys;
    spelling->pair_mask = kept.mask;
}

/* Files the words in a table for as many as they are, not as were said. It is sparse, for most that
 * is looked up there is no word. */
static void
keep_words(void *arena, struct spelling *spelling)
{
    uint32_t number;

    talloc_free(spelling->by_text);
    spelling->by_text_mask = mask_for(4 * (size_t)spelling->word_count);
    spelling->by_text = memory_array(arena, uint32_t, spelling->by_text_mask + (size_t)1);
    for (number = 0; number < spelling->word_count; number++) {
        file_by_text(spelling, number);
    }
}

void
spelling_build(void *arena, const struct words *texts, size_t count,
               const struct ordinary *ordinary, struct spelling *spelling)
{
    size_t words = 0, bytes = 0, i, k;
    struct pairs pairs = {NULL, 0, 0};

    for (i = 0; i < count; i++) {
        for (k = 0; k < texts[i].count; k++) {
            bytes += strlen(texts[i].list[k].text) + strlen(texts[i].list[k].stem) + 2;
        }
        words += texts[i].count;
    }
    memset(spelling, 0, sizeof(*spelling));
    spelling->ordinary = ordinary;
    spelling->text = memory_array(arena, char, bytes + 1);
    spelling->words = memory_array(arena, struct known_word, words + 1);
    spelling->by_text_mask = mask_for(words);
    spelling->by_text = memory_array(arena, uint32_t, spelling->by_text_mask + 1);
    pairs.mask = mask_for(words + count);
    pairs.keys = memory_array(arena, uint32_t, pairs.mask + (size_t)1);
    for (i = 0; i < count; i++) {
        count_text(spelling, &pairs, &texts[i]);
    }
    keep_words(arena, spelling);
    keep_pairs(arena, spelling, &pairs);
    talloc_free(pairs.keys);
    file_slips(arena, spelling);
}

void
spelling_image(struct image *image, struct spelling *spelling, const struct ordinary *ordinary)
{
    image_array(image, &spelling->text, spelling->text_size);
    image_array(image, &spelling->words, spelling->word_count);
    image_array(image, &spelling->by_text, (size_t)spelling->by_text_mask + 1);
    image_array(image, &spelling->slips, (size_t)spelling->slip_mask + 1);
    image_array(image, &spelling->pairs, (size_t)spelling->pair_mask + 1);
    image_same(image, &spelling->ordinary, ordinary);
}
