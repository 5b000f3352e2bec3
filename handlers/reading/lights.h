/* How full a battery is by its gauge lights: "3 of 4 lights", "two bars". Part of states.c. Pure.
 */
#ifndef LIGHTS_H
#define LIGHTS_H

#include "items.h"
#include "states.h"

/* Sets what they tell and how many items tell it; false if none are told at `at`. */
bool lights_at(const struct items *items, size_t at, struct state *state);
/* "3/4 lights": of four. */
bool fraction_of_lights_at(const struct items *items, size_t at, struct state *state);

#endif
