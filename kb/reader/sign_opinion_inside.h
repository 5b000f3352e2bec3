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
    float unknown_weight;         /* of a trait that no example has: as of the rarest */
    float bounds[OPINION_LEVELS]; /* what a decision must exceed */
};

/* What the traits of some words come to. */
struct sums {
    float square[BLOCKS];
    float says[BLOCKS][OPINION_LEVELS];
    float unknown, all;
};

/* What opinion_alone() makes of a text by what `linear` learnt without the examples of part
 * `without`, for an opinion that has no bounds yet. */
void opinion_decide(const struct opinion *opinion, const struct linear *linear, int without,
                    void *arena, const struct heard *heard, float scores[OPINION_LEVELS]);

#endif
