/*
 * How much each word of a question counts. People tell a story before they ask ("we are up at the
 * lake with my dad, his hose is short. can I get a longer one?"): the sentences that ask count
 * whole, the others less, for what they mention is often another topic's.
 */
#ifndef STRESS_H
#define STRESS_H

#include <stdbool.h>

#include "words.h"

/* The stress of each word, 0 to 1, in `arena`; all 1 where no sentence asks, or all do. */
float *stress_of(void *arena, const struct words *words);

/* True if the words [from, to) are put as a question or a wish, wherever in them. */
bool stress_asks(const struct words *words, size_t from, size_t to);

#endif
