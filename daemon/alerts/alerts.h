/*
 * Alerts: staff are called about each open one until someone takes it, and again if no outcome
 * follows; one is opened or raised if a renter leaves a grave question of ours unanswered; whose
 * turn begins is asked to confirm it (turns.h). Who is called at which step is arithmetic
 * (alert_steps.h), worked out anew from the rows each time; this file only acts on it: it writes
 * the texts into the outbox, in a job of the turn.
 */
#ifndef ALERTS_H
#define ALERTS_H

#include "config.h"
#include "outbox_rows.h"

struct alerts;
struct clock;
struct event_base;
struct turn;

/* Borrowed, and outlive the alerts. */
struct alerts_parts {
    struct event_base *base;
    const struct clock *clock;
    struct store *store;
    struct turn *turn;
    const struct config *config;
};

struct alerts *alerts_new(const struct alerts_parts *parts);
/* NULL is fine. */
void alerts_free(struct alerts *alerts);

/* Another configuration from now on. */
void alerts_use(struct alerts *alerts, const struct config *config);

/* Something may be due: after each COMMIT, and at the start. */
void alerts_look(struct alerts *alerts);

/* No more calls are begun; for a process that ends. */
void alerts_close(struct alerts *alerts);

#endif
