/*
 * Numbers that are nothing of ours: names of rooms, gates and roads, prices, dates, ages, telephone
 * numbers, what others claim, the airline's 150 % rule, and what the text itself says is not so
 * ("not 3"). They are marked as spent. After amounts_make() and before clocks_make(). Pure.
 */
#ifndef ASIDE_H
#define ASIDE_H

#include "items.h"

void aside_put(struct items *items);

#endif
