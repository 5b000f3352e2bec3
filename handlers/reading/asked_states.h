/*
 * A state that is asked about or feared, and not told: "which of my packs is full", "how do I know
 * if it is full", "is that 40 %?", "how many hours before it goes dead". Part of states.c. Pure.
 */
#ifndef ASKED_STATES_H
#define ASKED_STATES_H

#include "items.h"

/* Of the charge in the items [at, after). */
bool state_is_asked(const struct items *items, size_t at, size_t after);

#endif
