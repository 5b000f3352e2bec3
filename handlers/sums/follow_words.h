/*
 * The words of a text that goes on with what was answered: "and if she walks?", "make that 10".
 * Such a text has no word but those that take back or go on, little ones, numbers, and what the
 * readers of numbers know (lexicon.h): with any other word it is a text of its own. Pure.
 */
#ifndef FOLLOW_WORDS_H
#define FOLLOW_WORDS_H

#include "context.h"
#include "tokens.h"

struct follow_words {
    bool corrects;   /* "I mean", "make that", "perdon" */
    bool goes_on;    /* "and", "what if", "y si" */
    bool denies;     /* begins with a no */
    bool is_now;     /* told of now: no correction of what was told */
    bool adds;       /* "one more hour" */
    bool another;    /* "another hour", "la otra" */
    bool person;     /* "she is at 88": a number may be a reading */
    bool of_battery; /* "full", "batteries" */
    bool of_all;     /* "both", "they", "todas" */
    bool of_one;     /* "one is", "the other", "la segunda": one of several */
    bool has_thing;  /* a word of batteries, times, settings ... stands in it */
    int numbers;     /* how many */
    int thousandths; /* the last of them */
    bool is_at;      /* that stands behind "at", "en" */
};

/* False if a word stands in it that a text of its own has; that at `but_at`, a name, aside. */
bool follow_words_read(const struct lexicon *lexicon, enum language language,
                       const struct tokens *tokens, size_t but_at, struct follow_words *words);

/* What a text that tells this told last as a number. */
enum told_thing follow_words_newest(const struct tokens *tokens, const struct told *told);

#endif
