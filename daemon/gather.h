/*
 * From a text to the context that its verdict may depend on: what the store, the configuration, the
 * content and the clock say now. The only bridge between the store and the handlers.
 */
#ifndef GATHER_H
#define GATHER_H

#include "context.h"
#include "loaded.h"
#include "message.h"
#include "store.h"

struct surroundings {
    const struct loaded *loaded;
    struct workspace *workspace;
    int64_t now_utc_s;
    bool is_unlimited; /* however many texts come, each is answered (limits.h) */
};

/* A context with the surroundings only: no record, no conversation. `sender` tells staff. */
struct context gather_without_record(const struct surroundings *surroundings, const char *sender);

enum { CONVERSATION_NEWEST = -1 };

/*
 * The context of a text that is stored as `text_id`, in `arena`. conversation_row names the state
 * to start from: CONVERSATION_NEWEST, 0 for none, or a row. *started_from is JSON that names what
 * the verdict row does not: snapshots, battery accounts, texts and alerts, by digest, row and id.
 * Closed rentals are left out: their numbers are given to others.
 */
int gather(struct store *store, void *arena, const struct surroundings *surroundings,
           const struct message *message, int64_t text_id, int64_t conversation_row,
           struct context *context, const char **started_from, struct fault *fault);

#endif
