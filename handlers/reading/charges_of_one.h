/*
 * Tellings that are of no other battery than the ones before: what it should become, and what it
 * was; and those of any one battery. Part of charges.c. Pure.
 */
#ifndef CHARGES_OF_ONE_H
#define CHARGES_OF_ONE_H

#include "charges_again.h"
#include "items.h"

/* "one at 25, on the wall. full by morning?": "full" without a battery of its own, asked behind a
 * battery that is not full, is what charging is for. Only where charging may be asked about. */
void charges_drop_goal(const struct items *items, struct groups *groups);
/* "20 on the meter. An hour ago 60.": charges in sentences of their own, and no word of a second
 * battery: told of one, which has the lowest. */
void charges_join(const struct items *items, struct groups *groups);
/* "how long does each battery last at 20": of any one of them, in general. */
bool charges_of_any(const struct items *items, const struct state *state);

/* "How long does a battery last", "a 12-cell battery" */
bool speaks_of_one(const struct items *items);

#endif
