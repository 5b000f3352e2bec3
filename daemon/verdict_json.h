/*
 * What the program says about one text: one JSON object a line, for `ask --json`, the store and
 * whoever reads either. Keys: id, route, topics, language, answers, replies, parts, alert.
 */
#ifndef VERDICT_JSON_H
#define VERDICT_JSON_H

#include "verdict.h"

/* In `arena`, one line without its end. `id` names the text. */
char *verdict_json(void *arena, const char *id, const struct verdict *verdict);

#endif
