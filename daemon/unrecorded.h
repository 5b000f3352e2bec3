/*
 * Texts that could not be stored, because the store is broken, and are sent all the same: a first
 * line for someone in an emergency and the call to staff. They live in memory only.
 */
#ifndef UNRECORDED_H
#define UNRECORDED_H

#include <stdbool.h>
#include <stddef.h>

#include "outbox_rows.h"

struct config;
struct event_base;
struct sending_parts;
struct unrecorded;

/* `parts` are copied, but for the turn: nothing is written. */
struct unrecorded *unrecorded_new(struct event_base *base, const struct sending_parts *parts);
/* Abandons what is in hand, as outbox_free() does. NULL is fine. */
void unrecorded_free(struct unrecorded *unrecorded);

/* Another configuration from now on. */
void unrecorded_use(struct unrecorded *unrecorded, const struct config *config);

/* Sends at once, and up to 4 times more if no answer or one that may change comes; then gives up.
 * False if it cannot be tried. See outbox_send_unrecorded(). */
bool unrecorded_send(struct unrecorded *unrecorded, const struct outbox_row *row);

/* How many are in hand. */
size_t unrecorded_count(const struct unrecorded *unrecorded);

#endif
