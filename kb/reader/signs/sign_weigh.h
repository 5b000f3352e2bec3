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
    bool is_sure[OPINION_LEVELS]; /* by the words around a phrase alone */
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
 * True if the words around a phrase that was found are surely like a sign, whatever the rest of the
 * text is about: its clause, or its part of one that goes on with "and", "but", "my" or "how do i":
 * few texts have commas.
 */
bool judging_is_sure(const struct judging *judging, enum sign_level level, struct stretch phrase);

/*
 * True if nothing speaks against a phrase that was found: it is nearly all of its sentence, or the
 * whole text is like a sign, or its sentence.
 */
bool judging_agrees(const struct judging *judging, enum sign_level level, struct stretch phrase);

/* What the second opinion finds on a level without a phrase; false if nothing. */
bool judging_is_like(const struct judging *judging, enum sign_level level,
                     struct sign_match *match);

/* Tells of each level whether phrases have found a sign of it and nothing else speaks for it; those
 * fire no more. */
void judging_take_back(struct judging *judging, bool is_unlike_sign[OPINION_LEVELS]);

#endif
