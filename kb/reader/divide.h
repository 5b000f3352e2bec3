/*
 * Where a stretch of a text asks two things: "one more battery pls, how much", "is it due friday or
 * can we keep it". Private to questions.c.
 *
 * Each place where a question may begin (a sentence's end, a comma, + or /, a joining word or turn,
 * a word that opens a question or a request, or where cut.h cut) is tried with each of the first
 * two topics of either side, if they differ. A logistic of what the searches of both sides and of
 * the whole say, and of how the place looks, tells how likely both sides ask for that. The
 * likeliest is taken if it is likely enough, and then both sides are trusted to be about it,
 * whatever their own searches' order and bands: that two things stand beside each other, each about
 * something of its own, is evidence that neither has by itself.
 *
 * Fitted as one choice among all places, pairs of topics and "none" (conditional logit; what would
 * answer wrongly where the whole is right weighs 12 times). From: ways of asking, each searched in
 * content without its fifth, 10,000 as they are (those of 16 and more words weigh 4 times) and
 * 4,000 in pairs, joined in 15 ways, three in five with a topic that is taken for the other's; and,
 * weighing 8 times, 180 texts of one writer (150 with two questions) and
 * tests/bench/texts/dev.jsonl. The first factor is 1.7 above what was fitted. By fifths held out:
 * pairs of which both are answered; the same of 142 of that writer's; single ways of asking that
 * are divided, and how many of all and of the long ones are answered wrongly; and by the whole
 * program both of two on 150 texts of that writer that nobody read, and wrong answers on the unread
 * tests/bench/texts/renters-2 to -6:
 *
 *                                          pairs  writer   divided  wrong  long    unread  -2 to -6
 *     both sides' first topics, by an       45 %   77 %     2.0 %   6.3 %   9.6 %   59 %     1.7 %
 *     earlier logistic of each place
 *     the same, less sure                   52     81       3.6     6.7    10.5
 *     two topics a side, without lengths    68     87       3.0     6.6    10.8     77       2.8
 *     this one                              68     88       3.6     6.5    10.0     74       1.7
 *
 * Tried and dropped: first topics alone, fitted in this way (writer 85), three topics a side
 * (nothing), the earlier logistic as one more piece of evidence (nothing), pairs of random topics
 * only (unread 69), real texts weighing 3 or 20 times (nothing), a side's topic among the other
 * side's, the weaker and the stronger side, bent odds, how the second side begins ("is that", "I
 * mean"), more marks together (nothing). A side is divided again only if that is far likelier: else
 * two in 180 texts got one more answer, both wrong.
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
    size_t rank[2]; /* each side is about this one of what its own search has, 0 the first */
    bool again;     /* in: the stretch is a side of a division */
    size_t tries;   /* in: so many places may be tried; out: what is left of them */
};

/*
 * Looks for it in the bytes [from, to) of the text, `cuts` being the pieces that the whole text
 * was cut into. False if the stretch is best left as it is, or has more places than may be tried:
 * each may cost two searches.
 */
bool divide(const struct kb *kb, void *arena, struct workspace *workspace, const char *text,
            size_t from, size_t to, const struct pieces *cuts, enum language language,
            struct division *division);

#endif
