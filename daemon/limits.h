/*
 * Floods and loops: whether a text comes on top of more than a person writes, or than we want to
 * answer at once. What follows from it the handlers decide (limited_hold(), machine_decide()).
 */
#ifndef LIMITS_H
#define LIMITS_H

#include "config.h"
#include "message.h"
#include "store.h"

/* Fills context->limit, limit_told and is_echo of a text that is stored as `text_id`; the sender's
 * role must be there. */
int limits_gather(struct store *store, const struct config *config, const struct message *message,
                  int64_t text_id, struct context *context, struct fault *fault);

/* Keeps that the text was over a limit; if it is the first over that of all, calls staff. */
int limits_note(struct store *store, const struct config *config, const struct message *message,
                const struct context *context, struct fault *fault);

#endif
