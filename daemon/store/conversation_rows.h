/*
 * Conversations, consent, and what a renter told of the batteries: three append-only lists, of
 * which the newest entry counts.
 */
#ifndef CONVERSATION_ROWS_H
#define CONVERSATION_ROWS_H

#include "context.h"
#include "store.h"

/* "flowing" and back; QUESTION_NONE for a name that is none. */
const char *open_question_name(enum open_question question);
enum open_question open_question_named(const char *name);

/* Where the talk with a phone stands, consent included; row 0 if it never began. */
int conversation_rows_newest(struct store *store, void *arena, const char *phone,
                             struct conversation *conversation, struct fault *fault);
/* As it stood at a row (0: before it began); consent is today's. */
int conversation_rows_at(struct store *store, void *arena, const char *phone, int64_t row,
                         struct conversation *conversation, struct fault *fault);

/* Whether a conversation still stands where it began, at `row`, or where this text brought it. */
int conversation_rows_is_of(struct store *store, const char *phone, int64_t row, int64_t text_id,
                            bool *is_of, struct fault *fault);

/* The text that changed a conversation. */
struct conversation_step {
    const char *phone;
    int64_t text_id;
    const char *text;
    const struct conversation *before;
};

/*
 * Appends. after->asked_about must be a piece of the text or what the conversation held before; it
 * is kept as a span of that text. Other words are not kept: *asked_about_lost is true.
 */
int conversation_rows_add(struct store *store, const struct conversation_step *step,
                          const struct conversation *after, bool *asked_about_lost,
                          struct fault *fault);

int consent_rows_add(struct store *store, const char *phone, bool given, int64_t text_id,
                     int64_t now_utc_s, struct fault *fault);

/* `told` is JSON of told_json.h. */
int battery_rows_add(struct store *store, const char *rental_id, int64_t as_of_utc_s,
                     const char *told, int64_t text_id, struct fault *fault);
/* What was told so far counts no longer: the newest entry is an empty one from now on. Nothing is
 * done if nothing was told. */
int battery_rows_void(struct store *store, const char *rental_id, int64_t now_utc_s,
                      struct fault *fault);
/* *row is 0 and *told NULL if nothing was told yet. */
int battery_rows_newest(struct store *store, void *arena, const char *rental_id, int64_t *row,
                        int64_t *as_of_utc_s, char **told, struct fault *fault);

#endif
