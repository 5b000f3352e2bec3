/*
 * A text as items: words and phrases with what they mean (lexicon.h), numbers with their value, and
 * what ends a clause. The readers of charges, clock times, legs .. work on these and mark as spent
 * what they have taken, so that nothing is read twice. Pure.
 */
#ifndef ITEMS_H
#define ITEMS_H

#include "lexicon.h"
#include "tokens.h"
#include "words.h"

enum { MINUTES_OF_DAY = 24 * 60, NO_DAY = -1 };

struct item {
    enum item_is is; /* ITEM_WORD for what the lexicon means, or for a word that means nothing */
    const struct lexicon_entry *meanings[LEXICON_MEANINGS];
    size_t meaning_count;
    int value, high; /* of a number or amount: ends of its range, equal if none was told */
    enum unit unit;  /* of an amount */
    bool negative;
    bool one;         /* the word "one", "una": a number or a pronoun */
    bool digits;      /* written in digits */
    bool fraction;    /* "1/2", "3/4" on its own */
    bool whole_hours; /* a duration told in whole hours: minutes may follow */
    bool days;        /* a duration told in days */
    bool times;       /* "x4" */
    bool ordinal;     /* "2nd" */
    bool colon;       /* a clock time written 9:15 */
    bool ampm;        /* a clock time whose half of the day is told */
    bool cannot;      /* no such clock time or fraction: 26:00, 5/4 */
    bool hedged;      /* "6ish", "about 50" */
    int role;         /* of a clock time that corrects another: enum clock_role; else 0 */
    int day;          /* of a clock time: enum told_day, or NO_DAY */
    bool spent;
    bool wished;     /* begins a charge that was put aside as a goal: states.h */
    size_t from, to; /* tokens */
};

struct items {
    void *arena;
    const struct tokens *tokens;
    struct item *list;
    size_t count;
    bool spanish;
};

/* Numbers, phrases and signs; amounts and clock times are made of them by amounts.h, clocks.h. */
struct items items_read(void *arena, const struct lexicon *lexicon, const struct tokens *tokens,
                        enum language language);

/* True if there is an item at `at` and this is one of its meanings; past either end it is false, so
 * `at - 1` of the first item may be asked. */
bool item_is(const struct items *items, size_t at, enum item_is is);
/* The value that goes with the meaning; -1 if it has not that meaning. */
int item_value(const struct items *items, size_t at, enum item_is is);
/* An amount in this unit. */
bool item_in(const struct items *items, size_t at, enum unit unit);
/* Its first token is this word. */
bool item_text(const struct items *items, size_t at, const char *text);
/* A number that no reader has taken. */
bool item_free_number(const struct items *items, size_t at);

/* Replaces `count` items from `at` by `item`, which takes their tokens. */
void items_replace(struct items *items, size_t at, size_t count, struct item item);

void items_spend(struct items *items, size_t at, size_t count);

/* The clause around `at`: from after the last stop or pause to before the next. */
size_t clause_start(const struct items *items, size_t at);
size_t clause_end(const struct items *items, size_t at);
/* The same for sentences, which only stops part. */
size_t sentence_start(const struct items *items, size_t at);
size_t sentence_end(const struct items *items, size_t at);

/* A stop, a pause or the end of the text stands there. */
bool clause_stops(const struct items *items, size_t at);

/* The first item in [from, to) of this meaning; `to` if there is none. */
size_t items_find(const struct items *items, size_t from, size_t to, enum item_is is);
bool items_any(const struct items *items, enum item_is is);
/* True if one of the words (" if si ", as for token_among()) stands in the items [from, to). */
bool items_have_word(const struct items *items, size_t from, size_t to, const char *words);

#endif
