/*
 * Alerts: calls to staff about one rental. `alert` and `alert_event` are append-only; `alert_due`
 * holds one row for each that is open, with its next step.
 */
#ifndef ALERT_ROWS_H
#define ALERT_ROWS_H

#include "context.h"
#include "road.h"
#include "store.h"

/* Instead of a renter's phone: the alert is about hutbell itself. */
#define ALERT_ABOUT_US "hutbell"

/* One renter of an alert about a mains failure that several have told (alert_group_rows.h). */
struct alert_renter {
    int64_t number; /* of their own alert, which is called with the others */
    const char *rental_id, *phone;
    const char *first_name, *place; /* as in alert_row */
    const char *brief;
    int64_t runs_out_utc_s; /* low end of their batteries; 0 if they told no charge */
    const char *until;      /* that as a clock time, set by alert_renters(); or NULL */
    int64_t told_utc_s;     /* as in alert_row: of this renter */
    bool is_new;            /* staff have not been called since it joined the others */
};

struct alert_row {
    int64_t number; /* what staff call it */
    enum alert_level level;
    const char *rental_id;          /* or NULL */
    const char *phone;              /* whose text began it */
    const char *first_name, *place; /* read from the current record, never stored; or NULL */
    const char *one_of; /* "Anna, Bert": first names if it may be about any of several rentals */
    const char *reason, *brief; /* brief: what staff are told, "fainted + dizzy" */
    int64_t text_id;            /* 0 for none */
    int64_t level_utc_s;        /* since when it has its level: raised then, or opened */
    const char *taken_by;       /* phone, or NULL */
    int64_t taken_utc_s;
    int calls;              /* how often staff were called; since it joined others, with them */
    size_t people_called;   /* how many of them before it was raised */
    int64_t next_utc_s;     /* when the next call is due; INT64_MAX for none */
    bool ring;              /* rings from the first call on, even if it is no emergency */
    const char *offered_to; /* whoever has it passes it on to this staff phone; or NULL */
    int64_t offer_ends_utc_s;
    const char *area; /* of a mains failure: where; else NULL */
    int64_t runs_out_utc_s;
    int64_t told_utc_s;        /* when its renter was told that nobody has answered yet; 0: not;
                                  below 0: and then who has it */
    int64_t joins_since_utc_s; /* to be opened: it joins a mains failure told there since then */
    const struct alert_renter *renters; /* set by alert_renters() if there are several */
    size_t renter_count;
};

enum alert_event {
    ALERT_OPENED,
    ALERT_RAISED, /* a graver reason for the same rental */
    ALERT_ADDED,  /* another text about it */
    ALERT_CALLED,
    ALERT_TAKEN,
    ALERT_RECHECKED, /* taken, but no outcome in time: called again */
    ALERT_CLOSED,
    ALERT_OFFERED, /* whoever has it passes it on; `who` is to take it */
    ALERT_RELEASED /* whoever had it left the renter without an answer: nobody has it now */
};

enum { ALERT_OFFICE_PAUSE_S = 600, ALERT_BRIEF_MAX = 80 /* bytes: it is texted */ };

/*
 * Opens an alert, or adds to the open one of the same rental (or, without a rental, phone) and
 * raises its level if this one is graver; what staff are told then names both. Without a rental_id
 * it is that of the text's verdict, if there is one. A graver level or a reason that is new to an
 * open alert brings its next call forward to alert->next_utc_s. The same reason once more does not,
 * but for an office alert: that is called again about a further text, ALERT_OFFICE_PAUSE_S after
 * its last call or later. *number is the alert's; *is_new if it was opened now.
 *
 * One about a mains failure joins others of that area; any other reason that is urgent or graver,
 * told before or after, keeps it out of them (alert_group_rows.h).
 */
int alert_rows_open(struct store *store, const struct alert_row *alert, int64_t now_utc_s,
                    int64_t *number, bool *is_new, struct fault *fault);

/* Those that are to be called, and with each all that have joined it. */
int alert_rows_due(struct store *store, void *arena, int64_t now_utc_s, struct alert_row **rows,
                   size_t *count, struct fault *fault);
int alert_rows_next(struct store *store, int64_t *next_utc_s, struct fault *fault);

/* The open alert of this number, in `arena`; *found is false if it is closed or there is none. */
int alert_rows_find(struct store *store, void *arena, int64_t number, struct alert_row *row,
                    bool *found, struct fault *fault);

/* Records that one of staff was called; *call_id names the call. */
int alert_rows_called(struct store *store, int64_t number, enum alert_event event, const char *who,
                      int64_t now_utc_s, int64_t *call_id, struct fault *fault);
/* Whether this person was called after that call. */
int alert_rows_is_called_since(struct store *store, int64_t number, const char *who,
                               int64_t call_id, bool *is_called, struct fault *fault);
/* A call within so many seconds is soon enough. */
enum { ALERT_SOON_S = 3600 };

/* Its renter was told that nobody has answered yet. */
int alert_rows_told(struct store *store, int64_t number, int64_t now_utc_s, struct fault *fault);

/* When to call again. */
int alert_rows_next_call(struct store *store, int64_t number, int64_t next_utc_s,
                         struct fault *fault);
/* The next call is due at next_utc_s, unless it is due earlier. */
int alert_rows_bring_forward(struct store *store, int64_t number, int64_t next_utc_s,
                             struct fault *fault);
/* A call was lost: the next is due at next_utc_s if the alert has none to come soon after. */
int alert_rows_call_again(struct store *store, int64_t number, int64_t next_utc_s,
                          struct fault *fault);
/* Who takes or closes an alert, and how they said so: the name of a road, or "shell". */
struct alert_hand {
    const char *who; /* staff phone */
    const char *road;
    int64_t now_utc_s;
};

/* With all that are called with it. *taken is false if it is closed or someone else has it, unless
 * others were called since because whoever took it gave no outcome in time. */
int alert_rows_take(struct store *store, int64_t number, const struct alert_hand *hand,
                    int64_t recheck_utc_s, bool *taken, struct fault *fault);
/* Whoever has it passes it on to `to`, who may take it until then. It is called again then. */
int alert_rows_offer(struct store *store, int64_t number, const struct alert_hand *hand,
                     const char *to, int64_t ends_utc_s, struct fault *fault);
int alert_rows_offer_over(struct store *store, int64_t number, struct fault *fault);
/* Nobody has it any more; it is called now, and by itself. */
int alert_rows_release(struct store *store, int64_t number, int64_t now_utc_s, struct fault *fault);
/* A person has dealt with it: nothing that we asked its renter waits for an answer any more. */
int alert_rows_close(struct store *store, int64_t number, const struct alert_hand *hand,
                     const char *note, bool *closed, struct fault *fault);

/* A phone without a rental turned out to be of this one: so is its open alert, unless that rental
 * has one already. */
int alert_rows_attach(struct store *store, const char *phone, const char *rental_id,
                      struct fault *fault);

/* Open alerts begun by this phone or about a rental that names it; NULL: all. In `arena`. One whose
 * taker gave no outcome in time counts as taken by nobody, as in alert_rows_take(). */
int alert_rows_open_of(struct store *store, void *arena, const char *phone,
                       struct open_alert **alerts, size_t *count, struct fault *fault);

/* Whether one of those has this among its reasons. */
int alert_rows_open_because(struct store *store, void *arena, const char *phone, const char *reason,
                            bool *is_so, struct fault *fault);

/* The reverse of alert_level_name(); ALERT_NONE for anything else. */
enum alert_level alert_level_named(const char *name);

#endif
