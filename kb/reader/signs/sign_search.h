/*
 * Where a phrase of the signs stands in a text: its words in order, with what may come between.
 * Private to the library; sign_match.h puts the phrases together to signs.
 */
#ifndef SIGN_SEARCH_H
#define SIGN_SEARCH_H

#include <stdbool.h>

#include "sign_phrases.h"

/* Where something is spoken of, so that what is said of it is no sign. */
struct spoken_of {
    const struct phrase *figure;
    int at; /* the word beside which the sign's own words would stand */
};

/* One text on its way through the phrases. */
struct search {
    void *arena; /* talloc_free() ends the search */
    struct heard heard;
    bool *is_present; /* by id of the vocabulary */
    int *present;     /* the ids that are */
    size_t present_count;
    int *sentence_words; /* by sentence: how many words it has */
    bool *is_masked;     /* by word: a figure of speech covers it, for the sign at hand */
    bool *is_covered;    /* the same, while the figures are still looked for */
    bool *is_figure;     /* a figure of speech of any sign so far covers it */
    int *before;         /* [slot][word]: the word that fills the slot before */
    struct spoken_of *spoken;
    size_t spoken_count;
};

void search_begin(struct search *search, const struct vocabulary *vocabulary,
                  struct workspace *workspace, struct words read);

/* False for most phrases of most texts, at little cost: a word is missing. */
bool search_has_words(const struct search *search, const struct phrase *phrase);

/*
 * Does something with one match: the places of its words, in the order of the text, one a slot of
 * the phrase; true ends the search.
 */
typedef bool on_match(struct search *search, const struct phrase *phrase, const int *indexes,
                      void *user);

/* Calls `on_found` for each match of a phrase until it returns true; false if it never did. */
bool search_each(struct search *search, const struct phrase *phrase, on_match *on_found,
                 void *user);

/* True if the words at indexes stand where the phrase wants its sentence to begin or end. */
bool search_is_in_place(const struct search *search, const struct phrase *phrase,
                        const int *indexes);

/*
 * Looks for the figures of speech of the sign at hand: covers the words of those that stand in the
 * text, so that no phrase finds them, and notes where something is spoken of ("[devices] ...").
 */
void search_explain(struct search *search, const struct phrase *figures, size_t count);

/* Forgets them again. */
void search_unexplain(struct search *search);

/* The figure of speech that the words at indexes[0..count-1] are said of, or NULL. */
const struct phrase *search_said_of(const struct search *search, const int *indexes, int count);

#endif
