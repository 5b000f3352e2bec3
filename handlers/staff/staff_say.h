/* What staff are answered: in English, their names and numbers in it. Private to staff*.c. */
#ifndef STAFF_SAY_H
#define STAFF_SAY_H

#include "asked.h"
#include "say.h"
#include "verdict.h"

/* Words that are written already, in the verdict's arena. */
struct answer *staff_say_words(struct verdict *verdict, const char *words);

/* A phrase with what fills it; NULL for what it has no place for. */
struct answer *staff_say(const struct asked *whole, struct verdict *verdict, enum phrase phrase,
                         const char *first, const char *second);

/* "12" */
char *staff_say_number(const struct asked *whole, int64_t number);

#endif
