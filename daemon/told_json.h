/* What was read out of a text, as JSON: in `ask --json` and in the store's battery accounts. */
#ifndef TOLD_JSON_H
#define TOLD_JSON_H

#include <jansson.h>

#include "context.h"

/* A new object; keys as in an answer's `read`, absent where the text does not tell. Numbers and our
 * own names only: the renter's words do not pass. */
json_t *told_json(const struct told *told);

/* The reverse; what does not fit is left out. The kind and impossible_what are lost. */
void told_from_json(const json_t *json, struct told *told);

/* What was answered last, for the store; numbers and our own names only. NULL reads as none. */
json_t *last_answer_json(const struct last_answer *last);
void last_answer_from_json(void *arena, const json_t *json, struct last_answer *last);

#endif
