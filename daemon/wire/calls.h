/*
 * One call to one of staff about an alert, by one road or several: an event of the alert, and a row
 * of the outbox for each road. For the transaction that is open.
 */
#ifndef CALLS_H
#define CALLS_H

#include "alert_rows.h"
#include "config.h"
#include "outbox_rows.h"

struct caller {
    const struct config *config;
    struct store *store;
    void *arena;
    int64_t now_utc_s;
};

struct call {
    const struct alert_row *alert; /* as alert_rows_find() and alert_renters() fill it */
    const struct staff *staff;
    enum alert_event event; /* ALERT_CALLED or ALERT_RECHECKED */
    unsigned roads;         /* set of roads, see road.h */
    int64_t give_up_utc_s;  /* what is unsent by then is dropped for the next call */
    const char *text;       /* instead of the usual words, on the road text; or NULL */
};

int calls_make(const struct caller *caller, const struct call *call, struct fault *fault);

/* Further roads of a call that was made; no event. */
int calls_add_roads(const struct caller *caller, const struct call *call, int64_t call_id,
                    struct fault *fault);

/* How urgent a call is, and the reverse. */
enum urgency calls_urgency(enum alert_level level);
enum alert_level calls_level(enum urgency urgency);

/* What one of staff is told by a road, in the arena. */
const char *calls_words(const struct caller *caller, const struct alert_row *alert,
                        const struct staff *staff, enum road road);

/* Who carries what goes by this road: a gateway, the telephone service, or the road itself. */
const char *calls_carrier(const struct config *config, enum road road);

#endif
