/*
 * Where one piece of a text asks two things that no word parts: "one more battery pls, how much",
 * "is it due friday or can we keep it". Private to questions.c.
 *
 * Each place where a question may begin (a sentence's end, a comma, a joining word, a word that
 * opens questions) is tried: what are its two sides about, and what the whole? A logistic of what
 * the three searches say, and of how the place looks, tells how likely both sides ask for what they
 * seem to; the likeliest place is taken if it is likelier than not.
 *
 * Its factors were fitted on the odd lines of the texts/topics pools (160 texts with two questions,
 * 1,800 with one), with content that had none of those texts. On the even lines, as many, both of
 * two rose from 35.0 to 43.1 %; of single questions 1.1 instead of 0.7 % got a second answer, and
 * 0.4 % more a wrong one. From .3 on it would be 46.2, 2.3 and 1.2.
 *
 * Tried and dropped: to take both sides for sure once divided (+1.2 of two, +0.1 wrong); what is
 * elsewhere, question marks, turns ("also"), the second of the whole (nothing).
 */
#ifndef DIVIDE_H
#define DIVIDE_H

#include <stdbool.h>
#include <stddef.h>

#include "kb.h"

/* Bytes of the text: the first side ends before `end`, the second begins at `start`, behind what
 * joins them. */
struct division {
    size_t end, start;
};

/* False if the text is best left as it is. */
bool divide(const struct kb *kb, void *arena, struct workspace *workspace, const char *text,
            enum language language, struct division *division);

#endif
