/* Words near a span that tell what kind of a way or stay it is. Part of span_kinds.c. Pure. */
#ifndef SPAN_CUES_H
#define SPAN_CUES_H

#include "spans.h"

/* "then", "luego", "and": what follows is another span's. */
bool is_then(const struct items *items, size_t at);
/* Ends the words that may be of a span. */
bool stops_cue(const struct items *items, size_t at);
/* A word for a way or a place; "no layover" is none. */
bool is_cue(const struct items *items, size_t at);
/* Steps to the cue before (or behind); 0 if there is none. */
size_t cue_back(const struct items *items, size_t at, size_t taken_from);
size_t cue_ahead(const struct items *items, size_t at);
/* "to the clinic" */
bool leads_to(const struct items *items, size_t cue);
/* "to the casino 45 min by bus" */
bool goes_there(const struct items *items, size_t place, size_t way);
/* "to the clinic is 55 minutes": the way there */
bool is_destination(const struct items *items, size_t cue);

/* Gives the span the kind of a cue, and its seats; or a kind alone. */
void set_kind(struct span *span, const struct items *items, size_t cue);
void take_kind(struct span *span, enum leg_kind kind);

#endif
