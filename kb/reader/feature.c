#include "feature.h"

#include <math.h>
#include <string.h>

#include "image.h"
#include "memory.h"

/* Letter runs of this many bytes, the word's edge marks included. */
enum { RUN_SHORTEST = 2, RUN_LONGEST = 4 };

/* What each block weighs against the others; chosen by cross-validation (see model.h). */
static const float shares[][BLOCK_COUNT] = {[MIX_FEW] = {1, 0.7f, 1.3f, 1.1f},
                                            [MIX_MANY] = {1, 1.5f, 1, 1.1f},
                                            [MIX_SIGNS] = {1, 2, 1.3f, 0}};

/* How much rarity counts: weight = (1 + ln((1 + texts) / (1 + texts with it))) ^ this. */
static const double rarity[] = {[MIX_FEW] = 0.5, [MIX_MANY] = 0.5, [MIX_SIGNS] = 1};

float
feature_share(enum feature_mix mix, enum feature_block block)
{
    return shares[mix][block];
}

/* ---- Reading ------------------------------------------------------------------------------- */

static const uint64_t basis = 14695981039346656037u, prime = 1099511628211u;

static uint64_t
mix(uint64_t hash, unsigned char byte)
{
    return (hash ^ byte) * prime;
}

/* FNV leaves the upper bits of short texts poor; one more turn spreads them. */
static uint64_t
finish(uint64_t hash)
{
    hash ^= hash >> 32;
    hash *= 0x9e3779b97f4a7c15u;
    return hash ^ (hash >> 29);
}

static uint64_t
hash_text(uint64_t hash, const char *text)
{
    for (; *text != '\0'; text++) {
        hash = mix(hash, (unsigned char)*text);
    }
    return hash;
}

static void
add(struct features *features, uint64_t hash, size_t word, enum feature_block block)
{
    features->list[features->count++] =
        (struct feature){finish(hash), (uint16_t)word, (uint8_t)block};
}

size_t
features_runs_room(const char *text, size_t longest)
{
    return (longest - RUN_SHORTEST + 1) * (strlen(text) + 1);
}

void
features_add_runs(struct features *features, const char *text, size_t word, size_t longest)
{
    size_t length = strlen(text) + 2, start, i;

    for (start = 0; start + RUN_SHORTEST <= length; start++) {
        uint64_t hash = mix(basis, BLOCK_LETTERS);

        for (i = start; i < length && i < start + longest; i++) {
            unsigned char byte = i == 0 ? '^' : i == length - 1 ? '$' : (unsigned char)text[i - 1];

            hash = mix(hash, byte);
            if (i + 1 >= start + RUN_SHORTEST) {
                add(features, hash, word, BLOCK_LETTERS);
            }
        }
    }
}

struct features
features_read(void *arena, const struct words *words)
{
    struct features features = {NULL, 0};
    uint64_t before = mix(mix(basis, BLOCK_PAIRS), '^');
    size_t room = 2, i;

    for (i = 0; i < words->count; i++) {
        room += features_runs_room(words->list[i].text, RUN_LONGEST) + 3;
    }
    features.list = memory_must(talloc_array(arena, struct feature, (unsigned)room));
    for (i = 0; i < words->count; i++) {
        const struct word *word = &words->list[i];

        add(&features, hash_text(mix(basis, BLOCK_STEMS), word->stem), i, BLOCK_STEMS);
        add(&features, hash_text(mix(before, ' '), word->stem), i == 0 ? 0 : i - 1, BLOCK_PAIRS);
        if (i >= 2) {
            const char *last_but_one = words->list[i - 2].stem;
            uint64_t hash = hash_text(mix(basis, BLOCK_PAIRS), last_but_one);

            add(&features, hash_text(mix(hash, '~'), word->stem), i - 2, BLOCK_PAIRS);
        }
        before = hash_text(mix(basis, BLOCK_PAIRS), word->stem);
        features_add_runs(&features, word->text, i, RUN_LONGEST);
    }
    if (words->count > 0) {
        add(&features, mix(mix(before, ' '), '$'), words->count - 1, BLOCK_PAIRS);
    }
    return features;
}

/* ---- The space ----------------------------------------------------------------------------- */

uint32_t
feature_number(const struct feature_space *space, uint64_t hash)
{
    uint32_t check = (uint32_t)(hash >> 32), at = (uint32_t)hash & space->mask;

    while (space->slots[at].number != 0 && space->slots[at].check != check) {
        at = (at + 1) & space->mask;
    }
    return space->slots[at].number - 1; /* UINT32_MAX if the slot is empty */
}

static void
insert(struct feature_slot *slots, uint32_t mask, uint32_t check, uint32_t at, uint32_t number)
{
    at &= mask;
    while (slots[at].number != 0) {
        at = (at + 1) & mask;
    }
    slots[at] = (struct feature_slot){check, number};
}

/* What building needs beside the space itself: an entry for each feature. */
struct counting {
    uint64_t *hashes;
    uint32_t *texts; /* how many texts have it */
    uint32_t *last;  /* the last text that had it, + 1 */
    uint8_t *block;
};

/* Files the features by their hashes in a table of `mask` + 1 slots. */
static void
file_features(void *arena, struct feature_space *space, const uint64_t *hashes, uint32_t mask)
{
    struct feature_slot *slots = memory_array(arena, struct feature_slot, mask + (size_t)1);
    uint32_t i;

    for (i = 0; i < space->count; i++) {
        insert(slots, mask, (uint32_t)(hashes[i] >> 32), (uint32_t)hashes[i], i + 1);
    }
    talloc_free(space->slots);
    space->slots = slots;
    space->mask = mask;
}

static void
count_feature(void *arena, struct feature_space *space, struct counting *counting,
              const struct feature *feature, uint32_t text, uint8_t part)
{
    uint32_t number = feature_number(space, feature->hash);

    if (number == UINT32_MAX) {
        number = space->count;
        counting->hashes = memory_grow(arena, uint64_t, counting->hashes, number);
        counting->texts = memory_grow(arena, uint32_t, counting->texts, number);
        counting->last = memory_grow(arena, uint32_t, counting->last, number);
        counting->block = memory_grow(arena, uint8_t, counting->block, number);
        space->parts = memory_grow(arena, uint16_t, space->parts, number);
        counting->hashes[number] = feature->hash;
        counting->texts[number] = counting->last[number] = 0;
        counting->block[number] = feature->block;
        space->parts[number] = 0;
        space->count++;
        insert(space->slots, space->mask, (uint32_t)(feature->hash >> 32), (uint32_t)feature->hash,
               number + 1);
        if (2 * space->count > space->mask) {
            file_features(arena, space, counting->hashes, 2 * space->mask + 1);
        }
    }
    /* NOLINTNEXTLINE(clang-analyzer-core.NullDereference): memory_grow() made it above */
    if (counting->last[number] != text + 1) {
        counting->last[number] = text + 1;
        counting->texts[number]++;
    }
    space->parts[number] = (uint16_t)(space->parts[number] | 1u << part);
}

/* Numbers the features anew, block by block; all but signs without the pairs of one text alone. */
static void
settle(void *arena, struct feature_space *space, struct counting *counting)
{
    const uint32_t least = space->mix == MIX_SIGNS ? 1 : 2;
    uint64_t *hashes = memory_array(arena, uint64_t, space->count + (size_t)1);
    uint32_t *texts = memory_array(arena, uint32_t, space->count + (size_t)1);
    uint16_t *parts = memory_array(arena, uint16_t, space->count + (size_t)1);
    uint32_t kept = 0, mask = 1023, i;
    int block;

    for (block = 0; block < BLOCK_MEANING; block++) {
        for (i = 0; i < space->count; i++) {
            /* NOLINTNEXTLINE(clang-analyzer-core.NullDereference): a count has its list */
            if (counting->block[i] == block &&
                (block != BLOCK_PAIRS || counting->texts[i] >= least)) {
                hashes[kept] = counting->hashes[i];
                texts[kept] = counting->texts[i];
                parts[kept++] = space->parts[i];
            }
        }
        space->ends[block] = kept;
    }
    space->count = kept;
    while (mask < 2 * kept) {
        mask = 2 * mask + 1;
    }
    file_features(arena, space, hashes, mask);
    talloc_free(counting->hashes);
    talloc_free(counting->texts);
    talloc_free(space->parts);
    counting->hashes = hashes;
    counting->texts = texts;
    space->parts = parts;
}

uint32_t
feature_space_size(const struct feature_space *space)
{
    return space->count + (space->vectors == NULL ? 0 : VECTORS_NUMBERS);
}

enum feature_block
feature_block(const struct feature_space *space, uint32_t number)
{
    return number < space->ends[BLOCK_STEMS]   ? BLOCK_STEMS
           : number < space->ends[BLOCK_PAIRS] ? BLOCK_PAIRS
           : number < space->count             ? BLOCK_LETTERS
                                               : BLOCK_MEANING;
}

/* The direction of a text's meaning: the sum of its words' vectors, of length 1; false if none of
 * them has a vector. */
static bool
find_meaning(const struct vectors *vectors, const struct words *words, const float *mean,
             float *meaning)
{
    float square = 0;
    size_t i;
    int k;

    memset(meaning, 0, VECTORS_NUMBERS * sizeof(*meaning));
    for (i = 0; i < words->count; i++) {
        vectors_add(vectors, words->list[i].text, meaning);
    }
    for (k = 0; k < VECTORS_NUMBERS; k++) {
        square += meaning[k] * meaning[k];
        meaning[k] -= mean[k];
    }
    if (square == 0) {
        return false;
    }
    for (k = 0, square = 0; k < VECTORS_NUMBERS; k++) {
        square += meaning[k] * meaning[k];
    }
    for (k = 0; k < VECTORS_NUMBERS && square > 0; k++) {
        meaning[k] /= sqrtf(square);
    }
    return true;
}

/* The mean of the texts' sums: what every text is about tells nothing of one. */
static void
find_mean(const struct feature_texts *texts, struct feature_space *space)
{
    size_t i, w;
    int k;

    for (i = 0; i < texts->count; i++) {
        for (w = 0; w < texts->words[i].count; w++) {
            vectors_add(space->vectors, texts->words[i].list[w].text, space->mean);
        }
    }
    for (k = 0; k < VECTORS_NUMBERS && texts->count > 0; k++) {
        space->mean[k] /= (float)texts->count;
    }
}

void
feature_space_build(void *arena, const struct feature_texts *texts, enum feature_mix mix,
                    const struct vectors *vectors, struct feature_space *space)
{
    struct counting counting = {NULL, NULL, NULL, NULL};
    size_t i, k;

    memset(space, 0, sizeof(*space));
    space->mask = 1023;
    space->mix = mix;
    space->vectors = vectors;
    space->mean = memory_array(arena, float, VECTORS_NUMBERS);
    if (vectors != NULL) {
        find_mean(texts, space);
    }
    space->slots = memory_array(arena, struct feature_slot, space->mask + 1);
    for (i = 0; i < texts->count; i++) {
        void *reading = memory_must(talloc_new(arena));
        const struct features features = texts->read(texts->data, reading, i);

        for (k = 0; k < features.count; k++) {
            count_feature(arena, space, &counting, &features.list[k], (uint32_t)i, texts->parts[i]);
        }
        talloc_free(reading);
    }
    settle(arena, space, &counting);
    space->weight = memory_array(arena, float, space->count + 1);
    for (i = 0; i < space->count; i++) {
        double rare = 1 + log((1 + (double)texts->count) / (1 + (double)counting.texts[i]));

        space->weight[i] = (float)pow(rare, rarity[mix]);
    }
    talloc_free(counting.hashes);
    talloc_free(counting.texts);
    talloc_free(counting.last);
    talloc_free(counting.block);
}

/* ---- Rows ---------------------------------------------------------------------------------- */

/* Collects equal occurrences: a table of places in the row, with room for twice the features. */
struct collected {
    struct row row;
    uint16_t *places; /* place in the row + 1; 0 is empty */
    uint32_t mask;
};

static void
collect(struct collected *collected, uint32_t number, float stress)
{
    uint32_t at = (number * 2654435761u >> 7) & collected->mask;
    struct row *row = &collected->row;

    while (collected->places[at] != 0 && row->index[collected->places[at] - 1] != number) {
        at = (at + 1) & collected->mask;
    }
    if (collected->places[at] == 0) {
        row->index[row->count] = number;
        row->value[row->count] = 0;
        row->stress[row->count] = 0;
        collected->places[at] = (uint16_t)++row->count;
    }
    row->value[collected->places[at] - 1] += stress;
    if (row->stress[collected->places[at] - 1] < stress) {
        row->stress[collected->places[at] - 1] = stress;
    }
}

/* Counts to weights: damped count times rarity, each block to its share, the whole to length 1. */
static void
weigh(const struct feature_space *space, const struct words *words, struct row *row)
{
    float meaning[VECTORS_NUMBERS];
    float squares[BLOCK_COUNT] = {0}, factors[BLOCK_COUNT], whole = 0;
    size_t i;
    const float *share = shares[space->mix];
    int block;

    for (i = 0; i < row->count; i++) {
        float times = row->value[i];
        float value = (times <= 1.0f ? times : 1.0f + logf(times)) * space->weight[row->index[i]];

        row->value[i] = value;
        squares[feature_block(space, row->index[i])] += value * value;
    }
    if (space->vectors != NULL && find_meaning(space->vectors, words, space->mean, meaning)) {
        squares[BLOCK_MEANING] = 1;
    }
    for (block = 0; block < BLOCK_COUNT; block++) {
        whole += squares[block] > 0 ? share[block] * share[block] : 0;
    }
    for (block = 0; block < BLOCK_COUNT; block++) {
        factors[block] = squares[block] > 0 ? share[block] / sqrtf(squares[block] * whole) : 0;
    }
    for (i = 0; i < row->count; i++) {
        row->value[i] *= factors[feature_block(space, row->index[i])];
    }
    for (i = 0; i < VECTORS_NUMBERS && squares[BLOCK_MEANING] > 0; i++) {
        row->index[row->count] = space->count + (uint32_t)i;
        row->value[row->count++] = meaning[i] * factors[BLOCK_MEANING];
    }
}

/* The number of one occurrence without what only a part has, as a bit; no bit leaves nothing out.
 */
static uint32_t
number_without(const struct feature_space *space, const struct feature *feature, uint16_t only)
{
    uint32_t number = feature_number(space, feature->hash);

    return only != 0 && number != UINT32_MAX && space->parts[number] == only ? UINT32_MAX : number;
}

static uint16_t
bit_of(int without)
{
    return (uint16_t)(without < PARTS_MAX ? 1u << without : 0);
}

void
feature_numbers(const struct feature_space *space, const struct features *features, int without,
                uint32_t *numbers)
{
    size_t i;

    for (i = 0; i < features->count; i++) {
        numbers[i] = number_without(space, &features->list[i], bit_of(without));
    }
}

struct row
feature_row(void *arena, const struct feature_space *space, const struct words *words,
            const struct features *features, int without)
{
    return feature_row_stressed(arena, space, words, features, NULL, without);
}

struct row
feature_row_stressed(void *arena, const struct feature_space *space, const struct words *words,
                     const struct features *features, const float *stress, int without)
{
    struct collected collected = {.mask = 255};
    unsigned room = (unsigned)features->count + (space->vectors == NULL ? 0 : VECTORS_NUMBERS) + 1;
    float unknown = 0, all = 0;
    size_t i;

    while (collected.mask < 2 * features->count) {
        collected.mask = 2 * collected.mask + 1;
    }
    collected.row.index = memory_must(talloc_array(arena, uint32_t, room));
    collected.row.value = memory_must(talloc_array(arena, float, room));
    collected.row.stress = memory_must(talloc_array(arena, float, room));
    collected.places = memory_array(arena, uint16_t, collected.mask + 1);
    for (i = 0; i < features->count; i++) {
        uint32_t number = number_without(space, &features->list[i], bit_of(without));

        float counts = stress == NULL ? 1 : stress[features->list[i].word];

        all += counts;
        if (number == UINT32_MAX) {
            unknown += features->list[i].block != BLOCK_PAIRS ? counts : 0;
            collected.row.strange += features->list[i].block == BLOCK_STEMS ? counts : 0;
        } else {
            collect(&collected, number, counts);
        }
    }
    weigh(space, words, &collected.row);
    talloc_free(collected.places);
    /* NOLINTNEXTLINE(clang-analyzer-core.DivideZero): told apart on this very line */
    collected.row.unknown = all <= 0 ? 1000 : (int)(unknown * 1000 / all);
    return collected.row;
}

void
feature_space_image(struct image *image, struct feature_space *space, const struct vectors *vectors)
{
    image_array(image, &space->slots, (size_t)space->mask + 1);
    image_array(image, &space->weight, space->count);
    image_same(image, &space->parts, NULL);
    image_array(image, &space->mean, VECTORS_NUMBERS);
    image_same(image, &space->vectors, vectors);
}
