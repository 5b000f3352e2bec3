/*
 * Texts that are to be sent. `outbox` rows and their events are append-only; `outbox_due` holds one
 * row for each that is not settled yet and is what the sender looks at.
 */
#ifndef OUTBOX_ROWS_H
#define OUTBOX_ROWS_H

#include "road.h"
#include "store.h"
#include "verdict.h"

enum outbox_about { OUTBOX_REPLY, OUTBOX_ALERT };

/* A text as it is put in. */
struct outbox_new {
    enum outbox_about about;
    int64_t text_id;     /* the renter's text it answers, 0 for none */
    int64_t verdict_id;  /* 0 for none */
    int64_t alert_id;    /* 0 for none */
    int64_t call_id;     /* the call that it is one road of, 0 for none */
    enum road road;      /* text, unless it is about an alert */
    const char *gateway; /* name of the gateway or telephone service that carries it */
    const char *to;      /* phone; of staff it says who, whatever the road */
    const char *body;
    enum urgency urgency;
    int64_t now_utc_s;
    int64_t start_utc_s;   /* not sent before; 0: now */
    int64_t expires_utc_s; /* worked out anew after this; 0 never */
    int64_t give_up_utc_s; /* handed to a person after this */
};

struct outbox_row {
    int64_t id;
    enum outbox_about about;
    int64_t text_id, verdict_id, alert_id, call_id;
    enum road road;
    const char *gateway, *to, *body, *key; /* key: idempotency key, random, the row's own */
    enum urgency urgency;
    int64_t created_utc_s, expires_utc_s, give_up_utc_s;
    int attempts;       /* tries that were begun */
    int64_t next_utc_s; /* when it is tried; 0 if it is settled */
};

int outbox_rows_add(struct store *store, const struct outbox_new *row, int64_t *id,
                    struct fault *fault);

/* What may be tried now, most urgent first, then oldest; at most `room`, in `arena`. Of a reply of
 * several texts only the first that is not settled. */
int outbox_rows_due(struct store *store, void *arena, int64_t now_utc_s, size_t room,
                    struct outbox_row **rows, size_t *count, struct fault *fault);
/* When the next one is due; *next_utc_s is INT64_MAX if none. */
int outbox_rows_next(struct store *store, int64_t *next_utc_s, struct fault *fault);

/* How many are not settled, and since when the oldest of them waits (INT64_MAX if none). */
int outbox_rows_waiting(struct store *store, int64_t *count, int64_t *oldest_utc_s,
                        struct fault *fault);

/* Rows of one verdict that expire and are not settled: all are worked out again together. */
int outbox_rows_stale(struct store *store, void *arena, int64_t verdict_id,
                      struct outbox_row **rows, size_t *count, struct fault *fault);

/* Replies to one text that do not expire, settled or not: they are never worked out again. */
int outbox_rows_timeless(struct store *store, void *arena, int64_t text_id,
                         struct outbox_row **rows, size_t *count, struct fault *fault);

/* What can become of a try; each is appended to outbox_event. */
enum outbox_event {
    OUTBOX_TRIED_AGAIN_LATER, /* stays due at next_utc_s */
    OUTBOX_ACCEPTED,          /* by the gateway, with its id */
    OUTBOX_DELIVERED,         /* by the gateway's report */
    OUTBOX_UNDELIVERED,       /* by the gateway's report */
    OUTBOX_REFUSED,           /* the gateway will never take it */
    OUTBOX_GIVEN_UP,          /* too old */
    OUTBOX_REPLACED,          /* worked out anew as another row */
    OUTBOX_NOT_CONFIRMED      /* an emergency not accepted or reported in time; staff were told */
};

struct outbox_result {
    int64_t id;
    enum outbox_event event;
    int64_t now_utc_s, next_utc_s;
    const char *gateway_id; /* or NULL */
    const char *detail;     /* "HTTP 503", or NULL */
};

int outbox_rows_result(struct store *store, const struct outbox_result *result,
                       struct fault *fault);

/* The row of this road that a gateway calls by its own id or by our key; *found false if none. */
int outbox_rows_by_gateway_id(struct store *store, void *arena, enum road road, const char *gateway,
                              const char *gateway_id, struct outbox_row *row, bool *found,
                              struct fault *fault);

/* How the roads of a call to one of staff fare. */
struct outbox_call {
    unsigned used;   /* set of roads, see road.h */
    unsigned failed; /* those of them on which each text failed at least once */
};

int outbox_rows_call(struct store *store, int64_t call_id, const char *to, struct outbox_call *call,
                     struct fault *fault);

/* An alert is in someone's hands or closed: calls about it that wait to be sent are dropped. */
int outbox_rows_quiet(struct store *store, int64_t alert_id, int64_t now_utc_s,
                      struct fault *fault);
/* A phone wants no texts any more: what waits to be sent to it and is less urgent than `keep` is
 * dropped. */
int outbox_rows_drop_to(struct store *store, const char *to, enum urgency keep, int64_t now_utc_s,
                        struct fault *fault);
/* Whether a row was replaced or dropped, so that what becomes of its send matters no more. */
int outbox_rows_is_dropped(struct store *store, int64_t id, bool *is_dropped, struct fault *fault);

/* Whether a row has neither this event yet nor "delivered": a report of it tells something new. */
int outbox_rows_is_news(struct store *store, int64_t id, enum outbox_event event, bool *is_news,
                        struct fault *fault);

/* Whether it is the first time that a text of this row's verdict did not get through, its newest
 * event among them. */
int outbox_rows_failed_once(struct store *store, const struct outbox_row *row, bool *once,
                            struct fault *fault);

/* Emergencies that are neither delivered nor told as not confirmed: texts accepted before
 * `before_utc_s`, and replies that are as old and no gateway has accepted. */
int outbox_rows_unconfirmed(struct store *store, void *arena, int64_t before_utc_s,
                            struct outbox_row **rows, size_t *count, struct fault *fault);

#endif
