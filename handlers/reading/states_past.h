/* Charges that were so and are told otherwise by now. Part of states.c. Pure. */
#ifndef STATES_PAST_H
#define STATES_PAST_H

#include "items.h"

/* "It was 100 yesterday", "yesterday it was full, now half"; `after`: the item behind the state. */
bool state_is_past(const struct items *items, size_t at, size_t after);

/* "I was at 4 lights, now 2", "4 lights this morning, 1 now", "eran 4 rayas cuando se fue la luz,
 * ahora 2": what they are now is told behind; *now: its number, items->count if it has its own
 * word. */
bool lights_are_past(const struct items *items, size_t at, size_t after, size_t *now);

#endif
