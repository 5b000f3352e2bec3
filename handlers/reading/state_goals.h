/*
 * Charges that are wished for and tell nothing of now: "be full by 7", "from 20 to 80", "how long
 * till it says a hundred". Part of states.c. Pure.
 */
#ifndef STATE_GOALS_H
#define STATE_GOALS_H

#include "items.h"

/* Of the charge at items [at, after); `full` if it is "full" or 100 %. */
bool state_is_goal(const struct items *items, size_t at, size_t after, bool full);

#endif
