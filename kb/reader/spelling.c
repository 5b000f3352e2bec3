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

        if (strncmp(known, word, length) == 0 && known[length] == '\0') {
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

/* The slot of a pair, or the empty one where it belongs. */
static uint32_t
pair_slot(const struct spelling *spelling, uint32_t one, uint32_t other)
{
    uint32_t at = (one * 2654435761u ^ other * 2246822519u) >> 4 & spelling->pair_mask;
    const struct word_pair *pair = &spelling->pairs[at];

    while (pair->often != 0 && (pair->one != one || pair->other != other)) {
        at = (at + 1) & spelling->pair_mask;
        pair = &spelling->pairs[at];
    }
    return at;
}

uint32_t
spelling_pair(const struct spelling *spelling, uint32_t one, uint32_t other)
{
    return spelling->pairs[pair_slot(spelling, one, other)].often;
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

/* Counts a word; returns its number. */
static uint32_t
count_word(struct spelling *spelling, const struct word *word)
{
    size_t length = strlen(word->text);
    uint32_t number, at;

    if (spelling_find(spelling, word->text, length, &number)) {
        spelling->words[number].often++;
        return number;
    }
    number = spelling->word_count++;
    spelling->words[number].text = add_text(spelling, word->text);
    spelling->words[number].stem = add_text(spelling, word->stem);
    spelling->words[number].often = 1;
    at = spelling_key(word->text, length, length, length) & spelling->by_text_mask;
    while (spelling->by_text[at] != 0) {
        at = (at + 1) & spelling->by_text_mask;
    }
    spelling->by_text[at] = number + 1;
    return number;
}

static void
count_pair(struct spelling *spelling, uint32_t one, uint32_t other)
{
    struct word_pair *pair = &spelling->pairs[pair_slot(spelling, one, other)];

    pair->one = one;
    pair->other = other;
    pair->often++;
}

static void
count_text(struct spelling *spelling, const struct words *words)
{
    uint32_t before = 0;
    size_t i;

    for (i = 0; i < words->count; i++) {
        uint32_t number = count_word(spelling, &words->list[i]) + 1;

        count_pair(spelling, before, number);
        before = number;
    }
    count_pair(spelling, before, 0);
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

void
spelling_build(void *arena, const struct words *texts, size_t count,
               const struct ordinary *ordinary, struct spelling *spelling)
{
    size_t words = 0, bytes = 0, i, k;

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
    spelling->pair_mask = mask_for(words + count);
    spelling->pairs = memory_array(arena, struct word_pair, spelling->pair_mask + 1);
    for (i = 0; i < count; i++) {
        count_text(spelling, &texts[i]);
    }
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
