/*
 * The questions of a text: what stands between two pleasantries (cut.h) is one question, unless the
 * kb shows that it asks two things (divide.h), or that a piece of it is about something that no
 * topic fits: that one is for a person, if it names enough, its likeliest topic is unlikely, and it
 * asks or no topic is likely at all (of 655 held-out texts elsewhere beside a way of asking that
 * were taken for such, 529 still are; of 166 pieces of ways of asking and of renters' texts, where
 * it is wrong, 47; if all must ask 451 and 27, if none 553 and 59). With few ways of asking nothing
 * is divided; then two neighbours are two questions if each is surely one.
 *
 * Tried and dropped: to cut by words first and to put together again what means nothing alone; it
 * found fewer of the true pairs, and took more stories for a question (divide.h).
 */
#ifndef QUESTIONS_H
#define QUESTIONS_H

#include "cut.h"
#include "kb.h"

/* As cut_questions(), but with what belongs together in one piece, and two questions in two. */
struct pieces kb_questions(const struct kb *kb, void *arena, struct workspace *workspace,
                           const char *text, enum language language);

/* Makes what was searched for a trusted piece sure of what that is about, and puts it first. Not if
 * it sounds more like what no topic fits: that is for a person. */
void kb_trust(const struct piece *piece, struct topic_search *search);

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
