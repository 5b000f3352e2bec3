/* Words for whole numbers, English and Spanish: data and their look-up. Pure. */
#ifndef NUMBER_WORDS_H
#define NUMBER_WORDS_H

#include <stddef.h>

/* How a word joins the ones beside it: "two hundred", "ciento noventa", "treinta y cinco". */
enum number_word_kind {
    NUMBER_WORD_NONE,
    NUMBER_WORD_UNIT,    /* 0 to 9 */
    NUMBER_WORD_TEEN,    /* 10 to 29 in one word: nothing joins it but "hundred" */
    NUMBER_WORD_TENS,    /* 20, 30 .. 90: a unit may follow */
    NUMBER_WORD_HUNDRED, /* "hundred": multiplies what is before it */
    NUMBER_WORD_SUM,     /* "ciento", "doscientos": what follows is added */
    NUMBER_WORD_THOUSAND /* multiplies what is before it; what follows is added */
};

/* The folded word's kind, NUMBER_WORD_NONE if it is no number; then *value is left alone. "one",
 * "uno" are units; articles ("a", "un", "una") are not here. */
enum number_word_kind number_word(const char *word, int *value);

/* The words of that look-up one by one, NULL past the last. */
const char *number_word_at(size_t i);

#endif
