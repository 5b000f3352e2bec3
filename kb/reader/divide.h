/*
 * Where a stretch of a text asks two things: "one more battery pls, how much", "is it due friday or
 * can we keep it". Private to questions.c.
 *
 * Each place where a question may begin (a sentence's end, a comma, + or /, a joining word or turn,
 * a word that opens a question or a request, or where cut.h cut) is tried: what are its two sides
 * about, and what the whole? A logistic of what the three searches say, and of how the place looks,
 * tells how likely both sides ask for what they seem to. The likeliest place is taken if it is
 * likely enough, and then both sides are trusted, whatever their own searches' bands: that two
 * things stand beside each other, each about something of its own, is evidence that neither has by
 * itself.
 *
 * The factors were fitted on 450 texts with two questions and 3,700 with one, by five people who
 * had not seen the program, each searched in content without that writer's texts; places whose left
 * side would be answered wrongly where the whole is not weigh three times, and the first factor is
 * 0.5 above what was fitted. By writers held out, in brackets on 225 texts by one more whose texts
 * nobody read (130 of them with two questions), in %:
 *
 *                                              both of two   wrong first   second answer to one
 *     cut by words, joined where unsure        40 (57)       8.5 (2.7)
 *     and divided by an earlier such logistic  50 (68)       8.8 (3.1)     1.8, wrong 1.1
 *     this one, each side by its own bands     50 (70)       8.8 (2.7)     2.3, wrong 1.2
 *     this one, both sides trusted             60 (82)       8.8 (2.7)     3.5, wrong 2.3
 *
 * Tried and dropped: places with all errors alike (first answers 0.4 % more wrong for as many of
 * two), likelier places only (from 0.5 of the logarithm up: 56 (79), 8.4), both sides sure, both
 * sides asking, a question mark at the end, the whole's second (nothing).
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
    size_t tries; /* in: so many places may be tried; out: what is left of them */
};

/*
 * Looks for it in the bytes [from, to) of the text, `cuts` being the pieces that the whole text
 * was cut into. False if the stretch is best left as it is, or has more places than may be tried:
 * each costs two searches.
 */
bool divide(const struct kb *kb, void *arena, struct workspace *workspace, const char *text,
            size_t from, size_t to, const struct pieces *cuts, enum language language,
            struct division *division);

#endif
