/*
 * What hutbell watches about itself: room on the disk, of which the office is told before it runs
 * out; and its own life, of which an address is told at intervals as long as the store can be
 * written, so that someone else notices when that ends.
 */
#ifndef SELF_WATCH_H
#define SELF_WATCH_H

#include <stdbool.h>
#include <stdint.h>

struct clock;
struct config;
struct event_base;
struct self_watch;
struct transfers;
struct turn;

/* Borrowed, and outlive it. */
struct self_watch_parts {
    struct event_base *base;
    const struct clock *clock;
    struct turn *turn;
    struct transfers *transfers;
    const struct config *config;
};

struct self_watch *self_watch_new(const struct self_watch_parts *parts);
/* After turn_free(), before transfers_free(). NULL is fine. */
void self_watch_free(struct self_watch *watch);

/* Another configuration from now on. */
void self_watch_use(struct self_watch *watch, const struct config *config);

#endif
