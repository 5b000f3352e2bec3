/*
 * Where a stretch of a text asks two things: "one more battery pls, how much", "is it due friday or
 * can we keep it". Private to questions.c.
 *
 * Each place where a question may begin (a sentence's end, a comma, a joining word, a word that
 * opens questions, or where cut.h cut) is tried: what are its two sides about, and what the whole?
 * A logistic of what the three searches say, and of how the place looks, tells how likely both
 * sides ask for what they seem to. The likeliest place is taken if it is likelier than not, and
 * then both sides are trusted, whatever their own searches' bands: that they stand beside each
 * other and are each about something of its own is evidence that neither has by itself.
 *
 * The factors were fitted on 450 texts with two questions and 3,700 with one, by five people who
 * had not seen the program, each searched in content without that person's texts. By persons held
 * out (and, in brackets, on 130 such texts of a further person, never read): both of two answered
 * TRIED_FOLDS, where cutting by words and joining what means nothing alone gave TRIED_BEFORE.
 */
#ifndef DIVIDE_H
#define DIVIDE_H

#include <stdbool.h>
#include <stddef.h>

#include "cut.h"
#include "kb.h"

/* Bytes of the text: the first side ends before `end`, the second begins at `start`, behind what
 * joins them. */
struct division {
    size_t end, start;
};

/*
 * Looks for it in the bytes [from, to) of the text, `cuts` being the pieces that the whole text
 * was cut into. False if the stretch is best left as it is.
 */
bool divide(const struct kb *kb, void *arena, struct workspace *workspace, const char *text,
            size_t from, size_t to, const struct pieces *cuts, enum language language,
            struct division *division);

#endif
