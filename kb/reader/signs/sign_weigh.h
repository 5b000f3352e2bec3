/*
 * Weighing what speaks for a sign in a text: its words, and the second opinion on the parts that
 * they stand in. Private to sign_match.c and sign_weigh.c; the figures are in sign_match.h.
 */
#ifndef SIGN_WEIGH_H
#define SIGN_WEIGH_H

#include "sign_match_inside.h"
#include "sign_search.h"

/* The text as it is judged. */
struct judging {
    struct search search;
    struct opinion_view *view;    /* or NULL: the phrases alone decide */
    bool is_asked;                /* a topic is surely asked for */
    bool is_foreign;              /* its commonest words are another language's than the index's */
    bool is_held[OPINION_LEVELS]; /* a sign of the level was held back */
    bool fires[OPINION_LEVELS];
    bool stands[OPINION_LEVELS]; /* the words around a phrase speak for it too */
};

/* Hears the text and takes the second opinion on it; talloc_free(judging->search.arena). */
void judging_begin(struct judging *judging, const struct sign_index *index,
                   struct workspace *workspace, struct words words, bool is_asked);

/* Some words of the text. */
struct stretch {
    int first, last;
};

/* The words widened as far as they are joined and none has one of the roles. */
struct stretch stretch_around(const struct heard *heard, struct stretch words, bool over_commas,
                              unsigned bounds);

/*
 * True if the second opinion lets a phrase that was found count: its clause is surely like a sign,
 * or its part of one that goes on with "and", "but", "my" or "how do i", whatever the rest of the
 * text is about; or it is nearly all of its sentence; or the whole text is like a sign, or its
 * sentence. It stands, whatever the text as a whole says, if any of these words are like a sign of
 * the level by themselves, or if the opinion does not know the sign well enough to judge it.
 */
bool judging_believes(struct judging *judging, enum sign_level level, struct stretch phrase,
                      bool is_well_known);

/* What the second opinion finds on a level without a phrase; false if nothing. */
bool judging_is_like(const struct judging *judging, enum sign_level level,
                     struct sign_match *match);

/* Tells of each level whether phrases have found a sign of it of which none stands, and nothing
 * else in the text speaks for it; those fire no more. */
void judging_take_back(struct judging *judging, bool is_unlike_sign[OPINION_LEVELS]);

#endif
