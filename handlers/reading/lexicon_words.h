/* The words of the tables one by one. Private to lexicon.c. */
#ifndef LEXICON_WORDS_H
#define LEXICON_WORDS_H

#include "lexicon.h"

/* Words of one length. */
struct word_list {
    struct lexicon_word *list;
    size_t count;
};

/* LEXICON_WORD_MAX + 1 lists, by length, in `arena`. */
const struct word_list *word_lists_new(void *arena, const struct kb *kb);

#endif
