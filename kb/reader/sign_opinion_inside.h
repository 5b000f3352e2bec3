/* What a second opinion is made of. Private to sign_opinion.c and sign_opinion_learn.c. */
#ifndef SIGN_OPINION_INSIDE_H
#define SIGN_OPINION_INSIDE_H

#include <stdint.h>

#include "linear.h"
#include "sign_opinion.h"
#include "sign_traits.h"

/* The blocks that traits are in. */
enum { BLOCKS = BLOCK_LETTERS + 1 };

/* The rows of the examples that speak for a sign, one behind the other: what makes an example
 * nearest. Those of the others are empty. */
struct opinion_rows {
    uint32_t *begins; /* of each example; one more at the end */
    uint32_t *index;
    float *value;
};

struct opinion {
    const struct vocabulary *vocabulary;
    const struct opinion_example *examples;
    size_t count;
    struct opinion_rows rows;
    struct feature_space space;
    struct linear linear;
    float unknown_weight; /* of a trait that no example has: as of the rarest */
    float thresholds[OPINION_LEVELS];
};

/* What the traits of some words come to. */
struct sums {
    float square[BLOCKS];
    float says[BLOCKS][OPINION_LEVELS];
    float unknown, all;
};

/* Adds one trait by its number, UINT32_MAX for an unknown one, as `linear` learnt it. */
void opinion_add(const struct opinion *opinion, const struct linear *linear, uint32_t number,
                 enum feature_block block, struct sums *sums);

/*
 * The decisions: each block is brought to its share of length 1, as in feature_row(), but unknown
 * traits count too, so that one known word among strange ones does not speak for all; and what is
 * not known speaks for nothing.
 */
void opinion_decide(const struct sums *sums, const float *bias, float scores[OPINION_LEVELS]);

const float *opinion_bias(const struct linear *linear);

#endif
