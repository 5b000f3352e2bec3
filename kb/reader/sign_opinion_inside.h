/* What a second opinion is made of. Private to sign_opinion.c and sign_opinion_learn.c. */
#ifndef SIGN_OPINION_INSIDE_H
#define SIGN_OPINION_INSIDE_H

#include <stdint.h>

#include "linear.h"
#include "sign_opinion.h"
#include "sign_traits.h"

/* The blocks that traits are in. */
enum { BLOCKS = BLOCK_LETTERS + 1 };

/*
 * The signs of a level have so little in common that one linear decision cannot tell them all from
 * harmless texts. They are dealt out in turn to several decisions, and one more is for the harmless
 * texts themselves: what speaks for any sign speaks for each. Found in % of English emergencies
 * where 2, 5 and 10 % of the others exceed it (a linear machine of a general library on 784 texts
 * that nothing was learnt from): one decision 70 80 86; with the harmless one at half weight 75 82
 * 88, at full 75 82 88; six dealt out by meaning and it 77 85 90, dealt out in turn 79 85 90; one
 * for each sign 77 84 88. Clinical signs, one 64 72 82, three and it 64 73 82.
 */
enum { VOICES_CLINICAL = 3, VOICES_EQUIPMENT = 1, VOICES_EMERGENCY = 6 };
enum { VOICE_HARMLESS = VOICES_CLINICAL + VOICES_EQUIPMENT + VOICES_EMERGENCY, VOICES };

/* Those of one level: its first, and how many. */
struct voices {
    int first, count;
};
struct voices opinion_voices(enum sign_level level);

/* What the rows of the examples that speak for a sign have of words and pairs, one behind the
 * other: what makes an example nearest. Those of the others are empty. */
struct opinion_rows {
    uint32_t *begins; /* of each example; one more at the end */
    uint32_t *index;
    uint16_t *value; /* 1 is UINT16_MAX */
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
    float says[BLOCKS][VOICES]; /* by each voice */
    float unknown, all;
};

/* What opinion_alone() makes of a text by what `linear` learnt without the examples of part
 * `without`, for an opinion that has no bounds yet. */
void opinion_decide(const struct opinion *opinion, const struct linear *linear, int without,
                    void *arena, const struct heard *heard, float scores[OPINION_LEVELS]);

#endif
