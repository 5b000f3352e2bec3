/*
 * A heard text as features (feature.h) for the second opinion: of each word its stem, its class
 * (marked where a negation governs it) and its runs of 2 to 5 letters; pairs of stems and of
 * classes; classes with one word between. Misspelt words count as what they stand for. Private to
 * the library.
 */
#ifndef SIGN_TRAITS_H
#define SIGN_TRAITS_H

#include "feature.h"
#include "sign_vocabulary.h"

/* How many words before its own a trait takes in: a stretch that begins later does not have it. */
enum { TRAIT_REACHES = 3 };

struct traits {
    struct features features; /* `word` is the last word of each */
    uint8_t *reach;           /* of each: 0 to TRAIT_REACHES - 1 words before that */
};

struct traits traits_read(void *arena, const struct vocabulary *vocabulary,
                          const struct heard *heard);

/* Those of the words first..last alone; the list is in `arena`. */
struct features traits_within(void *arena, const struct traits *traits, int first, int last);

#endif
