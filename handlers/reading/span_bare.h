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
/* "10 minutes on foot, mass an hour, and 10 back": as many minutes as the way there */
bool span_is_as_out(const struct items *items, size_t at, const struct spans *spans);
/* "media hora de ida y media de regreso": half of the hour told before */
bool span_is_half_hour_back(const struct items *items, size_t at, const struct spans *spans);

#endif
