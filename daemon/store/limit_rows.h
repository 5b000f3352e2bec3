/*
 * How many texts come and go: what limits on floods are measured by, and who is over one now. Every
 * count looks at no more rows than the limit it is for, however long the flood.
 */
#ifndef LIMIT_ROWS_H
#define LIMIT_ROWS_H

#include "store.h"

/* Texts of a sender before `text_id`. */
struct limit_texts {
    const char *sender, *body;
    int64_t text_id;
    int64_t since_utc_s; /* not older than this */
    int most;            /* no more than so many are looked at */
};

/* *count of them there are, *same of them in these very words. */
int limit_rows_texts(struct store *store, const struct limit_texts *texts, int *count, int *same,
                     struct fault *fault);

/* Replies to anybody since then, counted to `most`. */
int limit_rows_replies(struct store *store, int64_t since_utc_s, int most, int *count,
                       struct fault *fault);

/* Whether we sent these very words to this phone since then. */
int limit_rows_is_ours(struct store *store, const char *phone, const char *body,
                       int64_t since_utc_s, bool *is_ours, struct fault *fault);

/* Whether a phone was over a limit at some moment since then. */
int limit_rows_was_over(struct store *store, const char *phone, int64_t since_utc_s, bool *was_over,
                        struct fault *fault);
/* It is now; of `is_new` the time begins. */
int limit_rows_over(struct store *store, const char *phone, int64_t now_utc_s, bool is_new,
                    struct fault *fault);

#endif
