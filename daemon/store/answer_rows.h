/*
 * Questions of ours that wait for an answer on which somebody's safety hangs: one row a phone, and
 * when staff are called unless it comes.
 */
#ifndef ANSWER_ROWS_H
#define ANSWER_ROWS_H

#include "context.h"
#include "store.h"

struct answer_row {
    const char *phone;
    enum open_question question;
    const char *rental_id; /* or NULL */
    int64_t text_id;       /* that made us ask */
    int64_t due_utc_s;
};

/* Asked now. The same question asked once more keeps the time it had. */
int answer_rows_wait(struct store *store, const struct answer_row *row, struct fault *fault);

/* Answered, or not open any more. */
int answer_rows_drop(struct store *store, const char *phone, struct fault *fault);
/* Not answered, but `text_id` was written to a person since it was asked. */
int answer_rows_rest(struct store *store, const char *phone, int64_t text_id, struct fault *fault);
/* Dropped as answered, of every phone that was asked about this rental. */
int answer_rows_drop_rental(struct store *store, const char *rental_id, struct fault *fault);

/* Those whose time has come, in `arena`. */
int answer_rows_due(struct store *store, void *arena, int64_t now_utc_s, struct answer_row **rows,
                    size_t *count, struct fault *fault);
/* When the next one's comes; *next_utc_s is INT64_MAX if none waits. */
int answer_rows_next(struct store *store, int64_t *next_utc_s, struct fault *fault);

#endif
