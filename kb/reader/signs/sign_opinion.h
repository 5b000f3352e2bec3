/*
 * A second opinion on a text, learnt from the sign files: a small net (net.h) over the text's
 * traits (sign_traits.h) with a label for each sign and one for harmless texts; a level (emergency,
 * equipment, clinical) is as likely as its signs together. The phrases say what must never be
 * missed; this catches what is like the whole texts in words that no phrase has. How the two go
 * together is in sign_match.h, the way in. Private to the library.
 *
 * Learnt from: "Said as" lines (as texted) and "Whole texts" for their sign's level; "Harmless
 * texts", the topics' ways of asking, words/LANG-elsewhere.txt and LANG-harmless.txt against all.
 * How high a decision must be is read off texts held out: about one in so many harmless ones may
 * exceed it (sign_opinion_learn.c). Without whole texts there is no opinion.
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
enum opinion_weight {
    OPINION_PHRASE,
    OPINION_WHOLE,
    OPINION_ASKED,   /* as a topic is asked for, or something else altogether */
    OPINION_LISTED,  /* of words/LANG-harmless.txt: some of these sound like a sign */
    OPINION_HARMLESS /* of a sign's file: it sounds like that sign */
};
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

enum { OPINION_LEVELS = 3 }; /* by enum sign_level */

/*
 * What it makes of one heard text; it lives in `arena` and points into `heard`. NULL for no opinion
 * (the content has too few examples to learn from), and for a text without a word.
 */
struct opinion_view;
struct opinion_view *opinion_of(const struct opinion *opinion, void *arena,
                                const struct heard *heard);

/* The text surely asks for a topic: before opinion_alone(), which then asks this much more. */
void opinion_ask(struct opinion_view *view);
float opinion_asked_doubt(enum sign_level level);

/* How far the decision on some words of the text is above what harmless texts have: above 0 it is
 * like the whole texts of the signs of that level. */
float opinion_on_words(const struct opinion_view *view, enum sign_level level, int first, int last);
float opinion_on_text(const struct opinion_view *view, enum sign_level level);

/* Speaks against a sign of the level in these words: it was looked for there and held back. Before
 * opinion_alone(), which asks more of whatever holds a word of them. */
void opinion_hold(struct opinion_view *view, enum sign_level level, int first, int last);

/*
 * What it says where no phrase was found, as far above as that asks: of the whole text or of its
 * likeliest stretch, first..last. More is asked of a stretch the shorter it is, of a few words for
 * trouble, and for an emergency of one or two words and of words of which none is [bodily].
 */
float opinion_alone(struct opinion_view *view, enum sign_level level, int *first, int *last);

/* Of the likeliest sign of the level the example that is most like these words; NULL if the level
 * has none. */
const struct opinion_example *opinion_nearest(const struct opinion_view *view,
                                              enum sign_level level, int first, int last);

#endif
