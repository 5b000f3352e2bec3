/* Bare numbers that go on with lengths told before: "bus 25, walk 15", "2 hours there and 2 back",
 * "150 more". Part of spans.c. Pure. */
#ifndef SPAN_BARE_H
#define SPAN_BARE_H

#include "items.h"
#include "spans.h"

/* Of the free number at `at`, by the words around it and the spans found so far. */
bool span_is_bare_minutes(const struct items *items, size_t at, const struct spans *spans);
bool span_is_bare_hours(const struct items *items, size_t at, const struct spans *spans);
/* "150 more": minutes, as those told before */
bool span_is_as_many_more(const struct items *items, size_t at, const struct spans *spans);

#endif
