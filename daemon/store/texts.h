/*
 * Texts of renters: the only place that keeps their words, and what tells a repeat from a new text.
 */
#ifndef TEXTS_H
#define TEXTS_H

#include "context.h"
#include "message.h"
#include "store.h"

int texts_add(struct store *store, const struct message *message, int64_t *text_id,
              struct fault *fault);

/* A text as it came, in `arena`; *found false if there is none or its words are erased. */
int texts_load(struct store *store, void *arena, int64_t text_id, struct message *message,
               bool *found, struct fault *fault);

/*
 * Texts of the same sender before `text_id` that were sent within JOIN_RECENT_S of `message` or
 * came in so shortly before it; oldest first, at most TEXTS_RECENT_MAX, ids beside them.
 */
enum { TEXTS_RECENT_MAX = 16 };
struct recent_texts {
    struct recent_text list[TEXTS_RECENT_MAX];
    int64_t ids[TEXTS_RECENT_MAX];
    size_t count;
};
int texts_recent(struct store *store, void *arena, const struct message *message, int64_t text_id,
                 struct recent_texts *recent, struct fault *fault);

/*
 * Takes the renter's words out for good: those of the text, and the verdict and replies that may
 * echo them. A reply that is still to be sent goes first: then nothing is done and *erased is
 * false.
 */
int texts_erase(struct store *store, int64_t text_id, int64_t now_utc_s, bool *erased,
                struct fault *fault);

/* ---- Repeats ------------------------------------------------------------------------------- */

enum repeat {
    REPEAT_NOT,
    REPEAT_CERTAIN, /* same gateway, same id (or, without ids, same time sent), same content */
    REPEAT_LIKELY   /* no id and no time: the same content within 10 seconds; never of a sign */
};

/* *text_id is the text that it repeats. Same id with other content is a new text. */
int texts_find_repeat(struct store *store, const struct message *message, enum repeat *repeat,
                      int64_t *text_id, struct fault *fault);

/* Remembers what would make another text a repeat of this one, and drops what is older. */
int texts_remember(struct store *store, const struct message *message, int64_t text_id,
                   int64_t drop_before_utc_s, struct fault *fault);

#endif
