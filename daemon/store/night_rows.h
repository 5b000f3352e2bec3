/*
 * What happened in a stretch of time, for the night book: texts with what was decided, what was
 * sent, alerts. Reads only; lists are in `arena`, in order of time.
 */
#ifndef NIGHT_ROWS_H
#define NIGHT_ROWS_H

#include "store.h"

/* From `since_utc_s`, before `until_utc_s`; of one phone, or of all (NULL). */
struct night_span {
    int64_t since_utc_s, until_utc_s;
    const char *phone;
};

struct night_text {
    int64_t id;
    const char *sender, *first_name, *place; /* the last two by the verdict's rental, or NULL */
    const char *body;                        /* NULL once it is erased */
    int64_t sent_utc_s, received_utc_s;
    const char *route, *json; /* of the newest verdict; NULL: none, or erased */
};

int night_rows_texts(struct store *store, void *arena, const struct night_span *span,
                     struct night_text **texts, size_t *count, struct fault *fault);

/* What was sent, or waits to be, in answer to texts of the span. */
struct night_reply {
    int64_t text_id;
    const char *body; /* NULL once it is erased */
    int64_t created_utc_s;
    const char *state; /* newest of its events ("delivered"), NULL: not tried yet */
};

int night_rows_replies(struct store *store, void *arena, const struct night_span *span,
                       struct night_reply **replies, size_t *count, struct fault *fault);

struct night_alert {
    int64_t number;
    const char *phone, *first_name, *place;
    const char *level;   /* the gravest it had */
    const char *reasons; /* "sign:dizzy-headache, gap" */
    int64_t opened_utc_s;
    int64_t taken_utc_s;  /* 0: nobody has taken it */
    const char *taken_by; /* staff phone */
    int64_t closed_utc_s; /* 0: open */
    const char *outcome;  /* in the words of staff */
    int64_t calls;        /* how often staff were called */
};

/* Those opened in the span, and those opened before it and still open when it began. */
int night_rows_alerts(struct store *store, void *arena, const struct night_span *span,
                      struct night_alert **alerts, size_t *count, struct fault *fault);

#endif
