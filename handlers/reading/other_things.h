/*
 * What looks like a battery's charge and is of another thing: a phone, the air, a cat's age. Part
 * of states.c. Pure.
 */
#ifndef OTHER_THINGS_H
#define OTHER_THINGS_H

#include "items.h"

bool is_of_other_thing(const struct items *items, size_t at);
bool is_of_weather(const struct items *items, size_t at);

#endif
