/*
 * The grammar of a telling: a battery, a few words that carry nothing, and how full it is. "the one
 * in my purse still has 95", "the spare is pretty much done". Whatever stands between that is not
 * of another thing links the two. Part of states.c. Pure.
 */
#ifndef TELLINGS_H
#define TELLINGS_H

#include "items.h"
#include "states.h"

/* The item of the battery that the words before `at` tell of, in its clause; items->count if they
 * lead to none. */
size_t telling_of(const struct items *items, size_t at);
/* A number at `at` that a battery and a link lead to, with nothing behind that it could count. */
bool telling_number(const struct items *items, size_t at, size_t after);
/* Words that tell a charge of nothing but a battery: "the spare is out", "battery C charged". */
bool telling_word_at(const struct items *items, size_t at, struct state *state);

#endif
