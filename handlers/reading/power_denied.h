/*
 * Power that is told of and yet is none to count on: denied, doubted, broken, or held by others.
 */
#ifndef POWER_DENIED_H
#define POWER_DENIED_H

#include "items.h"

/* The word of power at `at` is denied: "nothing in the car to plug into", "without a wall plug". */
bool power_is_negated(const struct items *items, size_t at);
/* The same, or told of a part of the way only, or others have it: "only works half the time". */
bool power_is_denied(const struct items *items, size_t at);

#endif
