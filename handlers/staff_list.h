/* The open alerts as staff are told of them by text. Private to staff*.c. */
#ifndef STAFF_LIST_H
#define STAFF_LIST_H

#include "asked.h"

/* Who has it: their name, or the phone of somebody who has left since. */
const char *staff_list_holder(const struct open_alert *alert);

/* How many are called by this number, itself included. */
size_t staff_list_count(const struct context *context, int64_t head);

/*
 * All that are open, gravest first, a line each: "12 URGENT dizzy, Gwen, Cabin 4, +1… (with Kim)";
 * below an alert those who are called with it: "13 URGENT with 12, Tom, Cabin 5, +1…". In the
 * arena.
 */
char *staff_list_open(const struct asked *whole);

/*
 * `words`, and behind them the renters who are called by this number, who runs out first in front
 * (first those who told no charge): as many as two parts of a text hold. In the arena.
 */
char *staff_list_taken(const struct asked *whole, int64_t head, const char *words);

#endif
