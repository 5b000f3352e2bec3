/* What a second opinion is made of. Private to sign_opinion.c and sign_opinion_learn.c. */
#ifndef SIGN_OPINION_INSIDE_H
#define SIGN_OPINION_INSIDE_H

#include <stdint.h>

#include "net.h"
#include "sign_match.h"
#include "sign_opinion.h"
#include "sign_traits.h"

/* The blocks that traits are in. */
enum { BLOCKS = BLOCK_LETTERS + 1 };

/* What the rows of the examples that speak for a sign have of words and pairs, one behind the
 * other: what makes an example nearest. Those of the others are empty. */
struct opinion_rows {
    uint32_t *begins; /* of each example; one more at the end */
    uint32_t *index;
    uint16_t *value; /* 1 is UINT16_MAX */
};

/* Each sign has a label, and harmless texts have one. */
enum { OPINION_LABELS_MAX = SIGNS_A_LANGUAGE_MAX + 1 };

struct opinion {
    const struct vocabulary *vocabulary;
    const struct opinion_example *examples;
    size_t count;
    struct opinion_rows rows;
    struct feature_space space;
    struct net net;   /* a label for each sign, in the order of the examples, and one for none */
    uint32_t *firsts; /* of each sign's label: its first example */
    float unknown_weight;         /* of a trait that no example has: as of the rarest */
    float bounds[OPINION_LEVELS]; /* what a decision must exceed */
};

/*
 * Traits add up by strands, so that those of any stretch of words are a difference of two sums.
 * Stems and letters are of one word (reach 0), pairs of one of two reaches (sign_traits.h).
 */
enum strand { STRAND_STEMS, STRAND_LETTERS, STRAND_NEXT, STRAND_APART, STRANDS };

/* What the traits of some words come to. */
struct sums {
    float square[STRANDS];
    float hidden[STRANDS][NET_HIDDEN]; /* what they put into the net's numbers */
    float unknown, all;                /* stems */
};

/* What opinion_alone() makes of a text by the net that learnt without the examples of part
 * `without`, for an opinion that has no bounds yet. */
void opinion_decide(const struct opinion *opinion, const struct net *net, int without, void *arena,
                    const struct heard *heard, float scores[OPINION_LEVELS]);

#endif
