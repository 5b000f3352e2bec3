/*
 * A step of the wall clock: somebody set it, or the machine learnt the time only after its start.
 * The program's own clock goes on as if nothing had happened (clock.h) until, in one transaction,
 * all intervals have moved with the step; then it shows the new time. So nothing falls due all at
 * once and nothing sleeps until a time that is past. Turns, office hours and other dates are worked
 * out anew from the new time.
 */
#ifndef STEP_WATCH_H
#define STEP_WATCH_H

#include "config.h"

struct clock;
struct event_base;
struct step_watch;
struct store;
struct turn;

/* Borrowed, and outlive the watch. */
struct step_watch_parts {
    struct event_base *base;
    struct clock *clock;
    struct turn *turn;
    const struct config *config;
};

/* At once it has the rows clamped, for the wall clock may have been set while nothing ran. */
struct step_watch *step_watch_new(const struct step_watch_parts *parts);
/* After turn_free(). NULL is fine. */
void step_watch_free(struct step_watch *watch);

/* Another configuration from now on. */
void step_watch_use(struct step_watch *watch, const struct config *config);

/* What is written for a step of so many seconds, `now_utc_s` being the new time. For the
 * transaction that is open. */
int step_write(struct store *store, const struct config *config, int64_t step_s, int64_t now_utc_s,
               struct fault *fault);

#endif
