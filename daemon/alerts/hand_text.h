/*
 * What a text orders of alerts, phones, rests and turns, written down: the verdict is obeyed, never
 * changed. For the transaction that is open.
 */
#ifndef HAND_TEXT_H
#define HAND_TEXT_H

#include "calls.h"
#include "message.h"

/* `text_id` is the text that was decided. Returns 0 or -1. */
int hand_text_write(const struct caller *caller, const struct message *message, int64_t text_id,
                    const struct verdict *verdict, struct fault *fault);

/* What a renter texts goes to the person who has the conversation; after alerts are written. */
int hand_text_pass_on(const struct caller *caller, const struct message *message, int64_t text_id,
                      const struct verdict *verdict, struct fault *fault);

#endif
