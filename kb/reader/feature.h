/*
 * Features: what a text looks like to the model. Three blocks, each brought to length 1 by itself
 * so that none drowns the others: stems, pairs of stems that are neighbours (with the
 * text's edges) or have one between, and runs of 2 to 4 letters (of signs 5) inside each word (with
 * the word's edges). Beside them, where word vectors are there, the mean vector of the text.
 */
#ifndef FEATURE_H
#define FEATURE_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "vectors.h"
#include "words.h"

enum feature_block { BLOCK_STEMS, BLOCK_PAIRS, BLOCK_LETTERS, BLOCK_MEANING, BLOCK_COUNT };

/*
 * What blocks and rarity weigh. With many texts of each label, pairs of words come again in others,
 * and there is less need of letters. Signs are told by how words go together ("can't get", "me
 * falta") even more.
 */
enum feature_mix { MIX_FEW, MIX_MANY, MIX_SIGNS };

/* One occurrence of a feature in a text. */
struct feature {
    uint64_t hash; /* of block and content: two features never meet in practice */
    uint16_t word; /* number of the word that it stands in (a pair: its first) */
    uint8_t block;
};

struct features {
    struct feature *list;
    size_t count;
};

/* All occurrences in the words of a text, in `arena`. */
struct features features_read(void *arena, const struct words *words);

/* Adds the runs of 2 to `longest` letters in the word of this number, with its edges, to a list
 * that has room for so many more. */
void features_add_runs(struct features *features, const char *text, size_t word, size_t longest);
size_t features_runs_room(const char *text, size_t longest);

/*
 * The features that the content has, numbered from 0 block by block, and how much each weighs.
 * Pairs that one text alone has, two in three, are none of them, for topics are found as well
 * without; of signs they are: without, more harmless Spanish texts were taken for one. Plain
 * arrays, so that a model can keep them as bytes. The numbers of the mean vector are features too;
 * theirs begin at `count`.
 */
struct feature_space {
    struct feature_slot *slots; /* open addressing by hash */
    uint32_t mask;
    uint32_t count;
    uint32_t ends[BLOCK_MEANING]; /* of each block: the first number behind it */
    float *weight;                /* rarer features weigh more; the block's share is in it */
    enum feature_mix mix;
    uint16_t *parts; /* bit n: a text of part n has it; for trying each part without its own, so
                        NULL in an image */
    float *mean;     /* VECTORS_NUMBERS: the mean vector of the texts; all 0 without vectors */
    const struct vectors *vectors; /* or NULL */
};

struct feature_slot {
    uint32_t check;  /* the hash's upper half */
    uint32_t number; /* number of the feature + 1; 0 is empty */
};

enum { PARTS_MAX = 16 };

/* Numbers that every row's features are below. */
uint32_t feature_space_size(const struct feature_space *space);

/*
 * Numbers the features of these texts; text i has those that read(data, arena, i) gives, which is
 * called once for each in turn with an arena that ends before the next: of many texts all at once
 * they are hundreds of megabytes. It belongs to part parts[i] (0 to PARTS_MAX - 1). `vectors` may
 * be NULL.
 */
typedef struct features feature_reader(void *data, void *arena, size_t text);
struct feature_texts {
    const struct words *words; /* only for vectors */
    feature_reader *read;
    void *data;
    const uint8_t *parts;
    size_t count;
};
void feature_space_build(void *arena, const struct feature_texts *texts, enum feature_mix mix,
                         const struct vectors *vectors, struct feature_space *space);

/* Copies what it points at (image.h); `vectors` are there already, or NULL. */
struct image;
void feature_space_image(struct image *image, struct feature_space *space,
                         const struct vectors *vectors);

/* A text as the model sees it: a sparse vector of length 1 (or empty). */
struct row {
    uint32_t *index;
    float *value;
    float *stress; /* of each, as stress.h has it */
    size_t count;
    float strange; /* its stems that the content does not have */
    int unknown;   /* thousandths of its letter runs and stems that the content does not have */
};

/* What a block weighs against the others. */
float feature_share(enum feature_mix mix, enum feature_block block);

/* The block of a feature in a row. */
enum feature_block feature_block(const struct feature_space *space, uint32_t number);

/* The number of a feature by its hash; UINT32_MAX if the content does not have it. */
uint32_t feature_number(const struct feature_space *space, uint64_t hash);

/* The same for each occurrence in a text, features that only part `without` has taken as unknown
 * (PARTS_MAX: none); `numbers` has room for features->count. */
void feature_numbers(const struct feature_space *space, const struct features *features,
                     int without, uint32_t *numbers);

/* The row of a text, in `arena`, without the features that only part `without` has; `stress` is how
 * much each word counts (stress.h). */
struct row feature_row_stressed(void *arena, const struct feature_space *space,
                                const struct words *words, const struct features *features,
                                const float *stress, int without);

/* The same with all words counting alike. */
struct row feature_row(void *arena, const struct feature_space *space, const struct words *words,
                       const struct features *features, int without);

#endif
