/*
 * Conversations that a person of staff has with a renter through the line. Who has one also stands
 * in the conversation's newest row; here is when the renter must have been answered.
 */
#ifndef TALK_ROWS_H
#define TALK_ROWS_H

#include "context.h"
#include "store.h"

struct talk_row {
    const char *phone, *who; /* the renter's and the person's */
    int64_t alert_number;
    int64_t due_utc_s; /* INT64_MAX: the renter waits for no answer */
};

/* From now on `who` has it, whoever had it before. `text_id` is the text that made it so; 0: none,
 * then the phone has a conversation already. */
int talk_rows_begin(struct store *store, const struct talk_row *row, int64_t text_id,
                    struct fault *fault);
/* The renter waits: an answer is due at due_utc_s, unless it is due earlier. */
int talk_rows_wait(struct store *store, const char *phone, int64_t due_utc_s, struct fault *fault);
/* The conversation is the program's again. */
int talk_rows_end(struct store *store, const char *phone, struct fault *fault);

/* In `arena`; *found is false if no person has this phone's conversation. */
int talk_rows_find(struct store *store, void *arena, const char *phone, struct talk_row *row,
                   bool *found, struct fault *fault);
/* Those about an alert, and those whose answer is due. In `arena`. */
int talk_rows_of_alert(struct store *store, void *arena, int64_t alert_number,
                       struct talk_row **rows, size_t *count, struct fault *fault);
int talk_rows_due(struct store *store, void *arena, int64_t now_utc_s, struct talk_row **rows,
                  size_t *count, struct fault *fault);
/* *next_utc_s is INT64_MAX if nobody waits. */
int talk_rows_next(struct store *store, int64_t *next_utc_s, struct fault *fault);

/* How a renter was spoken with last. */
struct talk_renter {
    const char *gateway;    /* NULL: they never texted */
    enum language language; /* of our last answer; English without one */
    bool opted_out;
};

int talk_rows_renter(struct store *store, void *arena, const char *phone,
                     struct talk_renter *renter, struct fault *fault);

#endif
