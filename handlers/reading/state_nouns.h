/* Words for how full something is that are said of no battery: "the bus is full". Pure. */
#ifndef STATE_NOUNS_H
#define STATE_NOUNS_H

#include "items.h"

/* "full moon", "dead quiet", "my belly is full": nothing near is a battery. */
bool is_of_no_battery(const struct items *items, size_t at);

/* A noun that is none of ours follows: "dead spot", "half loaded". */
bool has_noun_behind(const struct items *items, size_t at);

#endif
