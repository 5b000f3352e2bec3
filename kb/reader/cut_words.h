/*
 * Words that show what a piece of a text is: a question, a request, a pleasantry. Private to cut.c
 * and stress.c.
 */
#ifndef CUT_WORDS_H
#define CUT_WORDS_H

#include <stddef.h>

#include "words.h"

/* Phrases by their first letter, parted by |, their words by single blanks. */
enum { CUT_LETTERS = 26 };

extern const char *const cut_openers[CUT_LETTERS];
extern const char *const cut_turns[CUT_LETTERS];
extern const char *const cut_joiners[CUT_LETTERS];
extern const char *const cut_requests[CUT_LETTERS];
extern const char *const cut_conditions[CUT_LETTERS];
extern const char *const cut_courtesies[CUT_LETTERS];
extern const char *const cut_followers[CUT_LETTERS];
extern const char *const cut_closers[CUT_LETTERS];
extern const char *const cut_small_words[CUT_LETTERS];
extern const char *const cut_names_after[CUT_LETTERS];
extern const char *const cut_no_names[CUT_LETTERS];
extern const char *const cut_agreed[CUT_LETTERS];
extern const char *const cut_leave[CUT_LETTERS];

/* The longest of the phrases that stands at word `at`: how many words; 0 if none does. */
size_t cut_words_at(const struct words *words, size_t at, const char *const phrases[CUT_LETTERS]);

/* How many of the words [from, to) name something: are none of cut_small_words. */
size_t cut_words_naming(const struct words *words, size_t from, size_t to);

#endif
