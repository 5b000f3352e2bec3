/* What stands beside a bare number: batteries that are named, lists, what it counts. Part of
 * bare_numbers.c. Pure. */
#ifndef BESIDE_NUMBERS_H
#define BESIDE_NUMBERS_H

#include "items.h"

/* "the other", "the first", "battery 2", "B": one battery or all of them. */
bool names_battery(const struct items *items, size_t at);
/* What behind a bare number says that it counts or sets something else. */
bool is_of_something(const struct items *items, size_t at, bool big);
/* Nothing follows that the number before could count. */
bool ends_here(const struct items *items, size_t at);
/* A battery is spoken of earlier in the clause, and no other number or charge since. */
bool follows_battery(const struct items *items, size_t at);
/* "10, 20 and 30" */
bool begins_list(const struct items *items, size_t at);
/* "1 full 1 at 10" */
bool is_few_batteries(const struct items *items, size_t at);

/* Another charge was told in the sentence before. */
bool tells_other_before(const struct items *items, size_t at);
/* A battery, or what is in the unit, is spoken of in the clause before. */
bool is_of_battery_told(const struct items *items, size_t at);
/* "the one in my bag 8": of a battery that is told by its place. */
bool is_of_placed_one(const struct items *items, size_t at, size_t after);
/* "one in the unit", "2 in the bag", "una puesta": where it is. */
bool is_placed(const struct items *items, size_t at);
/* "and 41 when I looked just now" */
bool is_seen_now(const struct items *items, size_t at, size_t after);
/* "+ 8 in the machine" */
bool is_in_machine(const struct items *items, size_t after);
/* "was full this morning and is 35 now" */
bool is_so_now(const struct items *items, size_t at, size_t after);
/* "went out with 80", "salio con 85 hace una hora" */
bool is_taken_along(const struct items *items, size_t at, size_t after);
/* "just watching tv, 65, on 2" */
bool is_clause_before_setting(const struct items *items, size_t at);
/* "is 40 enough", "will 40 do" */
bool is_asked_of(const struct items *items, size_t at, size_t after);
/* A length of time is told in the sentence before. */
bool tells_length_before(const struct items *items, size_t at);
/* "charging from 10", "from 40 to 80": behind the item `before`, which leads from it */
bool is_start_of_charging(const struct items *items, size_t at, size_t before);

#endif
