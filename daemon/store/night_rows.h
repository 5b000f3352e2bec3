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

/* Why something went out that answers no text of its receiver. */
enum night_sent {
    NIGHT_ANSWER,   /* it does answer one */
    NIGHT_STAFF,    /* staff wrote it to them */
    NIGHT_NOTICE,   /* staff wrote it to many */
    NIGHT_REMINDER, /* they had asked for it */
    NIGHT_ALERT     /* how their alert or their talk with staff stands */
};

/* What was sent, or waits to be: in answer to texts of the span, or in the span by itself. */
struct night_reply {
    enum night_sent why;
    int64_t text_id;  /* the text that it answers, or that made us send it; 0: none */
    const char *to;   /* phone */
    const char *by;   /* staff phone; NULL: the program wrote it */
    const char *body; /* NULL once it is erased */
    int64_t created_utc_s;
    const char *state;              /* newest of its events ("delivered"), NULL: not tried yet */
    const char *first_name, *place; /* by the receiver's record, or NULL; not set for answers */
};

/* In order of time. */
int night_rows_replies(struct store *store, void *arena, const struct night_span *span,
                       struct night_reply **replies, size_t *count, struct fault *fault);

/* Whether what is no answer went out before this text came. */
bool night_sent_before(const struct night_reply *sent, const struct night_text *text);

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
