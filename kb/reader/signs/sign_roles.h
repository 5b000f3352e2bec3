/*
 * What the small words of a language do around a warning sign. Tables only; private to the library.
 * The words are cleaned as words_read() cleans them: lower case, no marks, no apostrophes.
 */
#ifndef SIGN_ROLES_H
#define SIGN_ROLES_H

#include <stdbool.h>

#include "words.h"

enum role {
    ROLE_LITTLE = 1,         /* may be missing from a phrase: articles, pronouns, forms of "be" */
    ROLE_LIGHT = 2,          /* may stand inside a phrase without weight: "really", "husband" */
    ROLE_VERB = 4,           /* as light, but not between "cant" and its verb: "get", "take" */
    ROLE_NEGATION = 8,       /* takes back what follows: "no", "dont", "never" */
    ROLE_UNABLE = 16,        /* is part of a complaint: "cant", "wont", "hardly" */
    ROLE_THROUGH = 32,       /* a negation reaches through it: "dont have any ..." */
    ROLE_PERSON = 64,        /* begins a new statement after a bare "no": "no my chest hurts" */
    ROLE_BUT = 128,          /* nothing reaches across it */
    ROLE_OR = 256,           /* makes a list that one negation covers: "no pain or cough" */
    ROLE_PARTICLE = 512,     /* belongs to the verb beside it: "passed out" */
    ROLE_HUMAN = 1024,       /* a person: what follows is said of them */
    ROLE_STATEMENT = 2048,   /* a new statement may begin: "and", "because" */
    ROLE_PAST_UNIT = 4096,   /* a stretch of time that is long past with a mark: "winters" */
    ROLE_PAST_MARK = 8192,   /* the mark: "ago", "last" */
    ROLE_YEAR_AFTER = 16384, /* a year may follow: "in 2015" */
    ROLE_NOW = 32768,        /* it is not over: "again", "since" */
    ROLE_PAST_NEXT = 65536,  /* a mark that the stretch follows at once: "last winter" */
    ROLE_ARTICLE = 131072,   /* no person before a thing: "se muere el telefono" */
    ROLE_LASTS = 262144,     /* a mark of what may last: "hace" in "me duele hace meses" */
    ROLE_HAPPENED = 524288,  /* and of what does not: "tuvo", "le dio" */
    ROLE_ASKS = 1048576,     /* begins a question, whatever stood before: "how", "which" */
    ROLE_WEIGHTLESS = ROLE_LITTLE | ROLE_LIGHT | ROLE_VERB | ROLE_PARTICLE
};

/* Sorts the tables for lookups; lives in `arena`. */
struct roles;
struct roles *roles_new(void *arena, enum language language);

/* Copies them (image.h). */
struct image;
void roles_image(struct image *image, struct roles **of);

/* The roles of a word, told by its sound (sound.h): a sum of enum role; 0 for most words. */
unsigned roles_of(const struct roles *roles, const char *text);

/* True for a word that roles_pair() may join with the next or replace. */
bool roles_may_pair(enum language language, const char *first);

/* Calls `take` for every word that has a role or may pair, in its usual spelling. */
void roles_each(enum language language, void (*take)(const char *word, void *user), void *user);

/* What a single word or a pair is also written as, or NULL: "cannot", "can not" -> "cant". */
const char *roles_pair(enum language language, const char *first, const char *second);

#endif
