/*
 * Spans that are spent in one place, told by what happens there, whether its word is known or not
 * ("sermon goes an hour", "shop for two hours", "90 min de loteria"). Part of span_kinds.c. Pure.
 */
#ifndef SPAN_STAYS_H
#define SPAN_STAYS_H

#include "spans.h"

/* Something that lasts by itself. */
bool runs_itself(const struct items *items, size_t at);
/* Another thing than the span at item `last`, whatever it is. */
bool does_something(const struct items *items, size_t last, size_t at);
/* "in between 1 hour", "en medio 40 min": what lies between two others. */
bool lies_between(const struct items *items, size_t at);
/* An event with a time of its own is told in the sentence. */
bool has_event(const struct items *items, size_t at);

#endif
