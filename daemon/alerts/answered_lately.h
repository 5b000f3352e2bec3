/*
 * Who was answered unrecorded lately. With a broken store a gateway sends the same text again and
 * again, and its sender is to hear of it once; but something graver is let through. Memory only,
 * and bounded.
 */
#ifndef ANSWERED_LATELY_H
#define ANSWERED_LATELY_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "context.h"

enum { ANSWERED_PAUSE_S = 300, ANSWERED_SENDERS_MAX = 10000 };

struct answered_lately;

struct answered_lately *answered_lately_new(void);
/* NULL is fine. */
void answered_lately_free(struct answered_lately *lately);

/* Whether this sender was answered about something at least as grave in the last 5 minutes. */
bool answered_lately(const struct answered_lately *lately, const char *sender,
                     enum alert_level level, int64_t now_utc_s);

/* The sender is answered now. */
void answered_lately_note(struct answered_lately *lately, const char *sender,
                          enum alert_level level, int64_t now_utc_s);

/* How many senders are remembered, at most ANSWERED_SENDERS_MAX. */
size_t answered_lately_count(const struct answered_lately *lately);

#endif
