/*
 * The calls that are due about open alerts, and what else happens to alerts by time alone: a
 * question of ours that nobody answered, a renter whom a person left waiting, or whom nobody has
 * answered at all. Written from the rows and the clock each time, so that a restart or a gap
 * changes nothing. For the transaction that is open.
 */
#ifndef ALERT_CALLS_H
#define ALERT_CALLS_H

#include "calls.h"

/* One call that was made, for the log. */
struct called {
    int64_t alert;
    enum alert_level level;
    bool is_recheck;
    const char *who; /* their name */
};

struct alert_calls {
    struct called *list; /* in the caller's arena */
    size_t count;
    size_t due, failed; /* alerts: one that cannot be called must not keep the others from it */
};

/* Makes all that are due. Afterwards each open alert has its next step in the future, but those
 * that failed, which are logged. */
int alert_calls_make(const struct caller *caller, struct alert_calls *calls, struct fault *fault);

/* When something is due next; INT64_MAX if nothing is open. */
int alert_calls_next(struct store *store, int64_t *next_utc_s, struct fault *fault);

#endif
