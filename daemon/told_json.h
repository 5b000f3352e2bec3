/* What was read out of a text, as JSON: in `ask --json` and in the store's battery accounts. */
#ifndef TOLD_JSON_H
#define TOLD_JSON_H

#include <jansson.h>

#include "told.h"

/* A new object; keys as in an answer's `read`, absent where the text does not tell. Numbers and our
 * own names only: the renter's words do not pass. */
json_t *told_json(const struct told *told);

/* The reverse; what does not fit is left out. impossible_what is lost. */
void told_from_json(const json_t *json, struct told *told);

#endif
