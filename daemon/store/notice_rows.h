/*
 * Notices: one text to many renters. `notice` and `notice_phone` are append-only; what became of a
 * text stands with its row of the outbox, and whether it was answered is read from what came in.
 */
#ifndef NOTICE_ROWS_H
#define NOTICE_ROWS_H

#include "store.h"

struct notice_row {
    int64_t number;
    int64_t at_utc_s;
    const char *who;     /* staff phone */
    const char *english; /* as the office wrote it */
    const char *spanish; /* or NULL */
    const char *picked;  /* by what rentals were picked, in words */
    bool is_urgent;
};

/* One phone, or a rental without any (phone NULL). */
struct notice_phone {
    const char *rental_id, *phone;
    const char *hindrance; /* why it was not texted, or NULL */
    int64_t outbox_id;     /* 0 if it was not texted */
    /* Only read: */
    const char *event;      /* what became of the text last, "delivered"; NULL: nothing yet */
    int64_t next_utc_s;     /* when it is sent or tried again; 0 if it is settled */
    int64_t answered_utc_s; /* when a person first wrote from there after it; 0: nobody yet */
};

int notice_rows_add(struct store *store, const struct notice_row *row, int64_t *number,
                    struct fault *fault);
int notice_rows_add_phone(struct store *store, int64_t number, const struct notice_phone *phone,
                          struct fault *fault);

/* Newest first, in `arena`. */
int notice_rows_all(struct store *store, void *arena, struct notice_row **rows, size_t *count,
                    struct fault *fault);
int notice_rows_find(struct store *store, void *arena, int64_t number, struct notice_row *row,
                     bool *found, struct fault *fault);
/* In `arena`, as they were put in. */
int notice_rows_phones(struct store *store, void *arena, int64_t number,
                       struct notice_phone **phones, size_t *count, struct fault *fault);

/* Of which notice a row of the outbox is; 0 of none. */
int notice_rows_of_outbox(struct store *store, int64_t outbox_id, int64_t *number,
                          struct fault *fault);
/* How many notices this phone was texted since then. */
int notice_rows_texted(struct store *store, const char *phone, int64_t since_utc_s, int *count,
                       struct fault *fault);

#endif
