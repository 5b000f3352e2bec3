/*
 * Delivery reports: what a gateway tells later about a text that it took. Each is a job of the
 * turn.
 *
 * A gateway may report the same twice, or the parts of one text each: a word that the row has
 * already, and any after "delivered", changes nothing.
 *
 * A report may come before our own record of the send is written. While the outbox has something in
 * hand, a report about a text that is not known is kept for a while and looked up again.
 */
#ifndef DELIVERIES_H
#define DELIVERIES_H

#include <stdbool.h>

#include "gateway.h"

struct clock;
struct deliveries;
struct event_base;
struct outbox;
struct turn;

/* Borrowed, and outlive the deliveries. */
struct deliveries_parts {
    struct event_base *base;
    const struct clock *clock;
    struct turn *turn;
    const struct outbox *outbox;
    const struct config *config;
};

struct deliveries *deliveries_new(const struct deliveries_parts *parts);
/* Reports that are kept still are told as not written. After turn_free(). NULL is fine. */
void deliveries_free(struct deliveries *deliveries);

/* Another configuration from now on. */
void deliveries_use(struct deliveries *deliveries, const struct config *config);

/*
 * Takes a report that a text was delivered or failed; it is copied. `done` is called once, later:
 * whether it was written, or needed no writing because the text is not ours.
 */
void deliveries_take(struct deliveries *deliveries, const struct gateway *gateway,
                     const struct delivery *delivery, void (*done)(void *data, bool is_written),
                     void *data);

#endif
