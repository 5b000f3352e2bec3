/* Between clocks.c, which finds the clock times, clock_days.c and clock_lengths.c. */
#ifndef CLOCK_PARTS_H
#define CLOCK_PARTS_H

#include "items.h"

/* Sets the half of the day and the day of a clock time: words behind the time belong to it; then
 * those of its clause that no other time is nearer to. */
void clock_complete(struct items *items, size_t at);

/* "a 2:45 flight", "gate to gate they said 3:40": a length. */
bool clock_is_length(const struct items *items, size_t at);
/* Makes one of the clock time. */
void clock_make_length(struct items *items, size_t at);

/* Turns `count` items from `at` into a clock time. */
void clock_make(struct items *items, size_t at, size_t count, int minutes);

/* "0630", "by 1900"; "off at 7.30"; "a las 20 horas": false if it is none. */
bool clock_of_four_digits(struct items *items, size_t at);
bool clock_of_two_numbers(struct items *items, size_t at);
bool clock_with_dot(struct items *items, size_t at);
bool clock_of_hours(struct items *items, size_t at);

/* "its two, no, three batteries": no hour, though "its" leads to one. */
bool clock_is_count_taken_back(const struct items *items, size_t at);

#endif
