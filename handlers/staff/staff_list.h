/* The open alerts as staff are told of them by text. Private to staff*.c. */
#ifndef STAFF_LIST_H
#define STAFF_LIST_H

#include "asked.h"

/* Who has it: their name, or the phone of somebody who has left since. */
const char *staff_list_holder(const struct open_alert *alert);

/* How many are called by this number, itself included. */
size_t staff_list_count(const struct context *context, int64_t head);

/* "Gwen, Cabin 4", as much of it as the record has, "" if nothing. In the arena. */
char *staff_list_who(const struct asked *whole, const struct open_alert *alert);
/* With what it is about and the phone: "dizzy, Gwen, Cabin 4, +1…". In the arena. */
char *staff_list_whose(const struct asked *whole, const struct open_alert *alert);

/*
 * Between `before` and `after` all that are open, gravest first, a line each: "12 URGENT dizzy,
 * Gwen, Cabin 4, +1…, 20 min ago, with Kim"; below an alert those who are called with it: "13
 * URGENT with 12, Tom, Cabin 5, +1…, 5 min ago". Where two parts of a text do not hold that, the
 * lines lose place and phone; then the last ones are counted only. In the arena.
 */
char *staff_list_open(const struct asked *whole, const char *before, const char *after);
/* Behind `before`, where the record of this one is told that no text may carry; "" if it has none.
 * In the arena. */
char *staff_list_record(const struct asked *whole, const struct open_alert *alert,
                        const char *before);

/* The whole line of this one, and where its record is told. */
char *staff_list_one(const struct asked *whole, const struct open_alert *alert);

/*
 * `words`, and behind them the renters who are called by this number, who runs out first in front
 * (first those who told no charge): as many as two parts of a text hold, *names_all if that is each
 * of them. In the arena.
 */
char *staff_list_taken(const struct asked *whole, int64_t head, const char *words, bool *names_all);

/* A mains failure is called by the number of this one. */
bool staff_list_is_outage(const struct open_alert *alert);

/*
 * `words`, and behind them whom SORTED closes with this one, "Closed: 12 Gwen; 13 Tom.", and what
 * stays open of mains failures: those of whom staff have not been told, and who has become an
 * emergency. In the arena.
 */
char *staff_list_closed(const struct asked *whole, const struct open_alert *head,
                        const char *words);

#endif
