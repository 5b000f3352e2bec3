/* "20 short of full", "le faltan 20 para llena": what is wanting. Part of states.c. Pure. */
#ifndef SHORT_OF_FULL_H
#define SHORT_OF_FULL_H

#include "items.h"
#include "states.h"

/* Fills *state if the number at `at` is what a battery lacks of being full. */
bool short_of_full_at(const struct items *items, size_t at, struct state *state);

/* "three quarters gone", "used a third of it": the part at items [at, after) is not left, and what
 * is left is the rest. */
bool is_used_up(const struct items *items, size_t at, size_t after);

#endif
