/*
 * A second opinion on a text, learnt from the sign files: a linear decision a level (emergency,
 * equipment, clinical) over the text's traits (sign_traits.h). The phrases say what must
 * never be missed; this catches what is like the whole texts in words that no phrase has. Either
 * may fire. Private to the library; sign_match.h is the way in.
 *
 * Learnt from: "Said as" lines (as texted) and "Whole texts" for their sign's level; "Harmless
 * texts", the topics' ways of asking, words/LANG-elsewhere.txt and LANG-harmless.txt against all.
 * How high a decision must be before it fires is read off texts held out by fifths: about one in so
 * many harmless ones may trip it (sign_opinion.c). Without whole texts there is no opinion.
 *
 * A text is looked at in runs of one to three sentences, and a long sentence in stretches, so that
 * a friendly page around one grave sentence does not drown it.
 */
#ifndef SIGN_OPINION_H
#define SIGN_OPINION_H

#include <stdbool.h>
#include <stddef.h>

#include "fault.h"
#include "kb.h"
#include "sign_classes.h"
#include "sign_vocabulary.h"

/* A text to learn from. */
enum opinion_weight { OPINION_PHRASE, OPINION_WHOLE, OPINION_ASKED, OPINION_HARMLESS };
struct opinion_example {
    const char *line;        /* as the file has it */
    const struct sign *sign; /* NULL for a harmless one */
    enum opinion_weight weight;
    int choice; /* of a phrase: which wording of the line (phrase_example()) */
};

/* The opinion on each level, from examples that live as long as it does; NULL without whole texts.
 * `vocabulary` is closed and outlives it; `classes` may be NULL. */
struct opinion;
struct opinion *opinion_build(void *arena, struct workspace *workspace,
                              const struct vocabulary *vocabulary,
                              const struct sign_classes *classes,
                              const struct opinion_example *examples, size_t count);

/* What it made of a heard text for one level: how high the decision is against what it must be, on
 * which words, and the nearest example. */
struct opinion_finding {
    float decision;                        /* as it was learnt */
    float score;                           /* above 0 fires */
    float strict_score;                    /* the same if no word is taken for a bodily one */
    int first, last;                       /* words of the text */
    const struct opinion_example *nearest; /* NULL unless it fires */
};

enum { OPINION_LEVELS = 3 }; /* by enum sign_level */

/* Fills findings; `opinion` may be NULL: nothing fires. */
void opinion_find(const struct opinion *opinion, void *arena, const struct heard *heard,
                  struct opinion_finding findings[OPINION_LEVELS]);

/* Signs whose words stand in a text, but which something held back, and the words that figures of
 * speech cover (one bool a heard word). */
struct held_back {
    struct sign_match *list;
    size_t count;
    const bool *is_figure;
};

/*
 * True if a finding is about words that were held back: what a negation or a figure of speech
 * explains, likeness does not bring back ("my chest doesnt hurt"). It is if they are most of its
 * words and of its sign, or if without them it would not fire.
 */
bool opinion_was_held(const struct opinion_finding *finding, const struct heard *heard,
                      const struct held_back *held);

#endif
