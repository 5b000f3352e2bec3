/*
 * Clock times: "9:15", "6 tomorrow morning", "quarter past 7", "a las 5 y media", "0630", "noon",
 * with the half of the day as far as it is told, their day, and what happens then. Pure.
 */
#ifndef CLOCKS_H
#define CLOCKS_H

#include "items.h"

/* What a clock time is of, by the words around it. */
enum clock_role {
    CLOCK_OF_NOTHING,
    CLOCK_NOW,
    CLOCK_THEN, /* when a charge was so */
    CLOCK_DEPART,
    CLOCK_ARRIVE,
    CLOCK_BY,
    CLOCK_UNTIL,
    CLOCK_REMIND,
    CLOCK_EVENT /* of something else: no goal of ours */
};

/* Makes clock times of numbers, and durations of "a 2:45 flight". After amounts_make(). */
void clocks_make(struct items *items);

/* "am", "tonight", "de la tarde": what tells the half of the day. */
bool tells_half_of_day(const struct items *items, size_t at);

enum clock_role clock_role(const struct items *items, size_t at);

#endif
