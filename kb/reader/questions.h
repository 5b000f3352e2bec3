/*
 * The questions of a text: cut by its words (cut.h), then put together again where the kb shows
 * that a piece means nothing alone ("where is the spare tank | and how do i open it"), and divided
 * where it shows two questions in one piece (divide.h).
 */
#ifndef QUESTIONS_H
#define QUESTIONS_H

#include "cut.h"
#include "kb.h"

/* As cut_questions(), but with what belongs together in one piece. */
struct pieces kb_questions(const struct kb *kb, void *arena, struct workspace *workspace,
                           const char *text, enum language language);

/*
 * A question that may lean on the one before it ("does it charge in the car? how long does that
 * take"). If its search is not sure, but what it is for shows among the first of the two together
 * (`both`), and is not what the one before was for, it becomes sure of that.
 *
 * Tried and dropped: to take what comes second in its own search too (4 of 7 such were wrong).
 */
void kb_lean(const struct kb *kb, struct workspace *workspace, const char *both,
             enum language language, const struct topic_search *before,
             struct topic_search *search);

#endif
