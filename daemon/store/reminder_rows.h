/*
 * Texts that renters asked for, until they are sent or off. A row is never deleted; what becomes of
 * it is its state, and next_utc_s says when the daemon has something to do about it. The renter's
 * words are not here: a row points at their text.
 */
#ifndef REMINDER_ROWS_H
#define REMINDER_ROWS_H

#include "context.h"
#include "store.h"

enum reminder_state {
    REMINDER_STATE_WAITS,
    REMINDER_STATE_OFF_CHARGE, /* a newer charge was told by another phone: its owner is told */
    REMINDER_STATE_OFF_RECORD, /* another unit, other batteries or a new order: the same */
    REMINDER_STATE_SENT,
    REMINDER_STATE_LATE,
    REMINDER_STATE_CANCELLED
};

struct reminder_row {
    int64_t id;
    struct reminder reminder;
    const char *phone, *gateway;
    enum language language;
    int64_t text_id; /* that asked for it */
    enum reminder_state state;
    const char *words; /* of that text; NULL once it is erased */
};

/*
 * Sets one, or notes that it was offered. A new RUNNING_OUT replaces the phone's for that rental;
 * one at the same time as another that waits is the same.
 */
int reminder_rows_set(struct store *store, const struct reminder_row *row, int64_t now_utc_s,
                      struct fault *fault);

/* Those of a phone that wait or were offered, by texts before `text_id`; in `arena`. */
int reminder_rows_of_phone(struct store *store, void *arena, const char *phone, int64_t text_id,
                           struct reminder **list, size_t *count, struct fault *fault);

/* Nothing more is sent: of a phone, of a rental. */
int reminder_rows_end_phone(struct store *store, const char *phone, const char *reason,
                            int64_t now_utc_s, struct fault *fault);
int reminder_rows_end_rental(struct store *store, const char *rental_id, const char *reason,
                             int64_t now_utc_s, struct fault *fault);

/*
 * What watched the charge of this rental is off: a newer one was told by `told_by`, who hears of it
 * in the reply; NULL: the record changed. The other phones are told.
 */
int reminder_rows_void(struct store *store, const char *rental_id, const char *told_by,
                       int64_t now_utc_s, struct fault *fault);

/* Those about which something is to be done now, in `arena`. */
int reminder_rows_due(struct store *store, void *arena, int64_t now_utc_s,
                      struct reminder_row **rows, size_t *count, struct fault *fault);
/* When the next one's time comes; *next_utc_s is INT64_MAX if none waits. */
int reminder_rows_next(struct store *store, int64_t *next_utc_s, struct fault *fault);

int reminder_rows_put_off(struct store *store, int64_t id, int64_t next_utc_s, struct fault *fault);
/* Sent, late or cancelled; `reason` may be NULL. */
int reminder_rows_settle(struct store *store, int64_t id, enum reminder_state state,
                         const char *reason, int64_t now_utc_s, struct fault *fault);

#endif
