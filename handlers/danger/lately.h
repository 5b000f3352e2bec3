/* What an alert that nobody has closed was told of, as long as it is likely to be gone on with. */
#ifndef LATELY_H
#define LATELY_H

#include "context.h"

/*
 * A finger that reads low is measured again after 3 to 15 minutes, and who asked about a pill tells
 * within the hour that it was ten: what effect it has shows by then. An hour takes in some four
 * measurements and a talk with somebody else in between; the text after it has a context of its
 * own. Common practice, no source.
 */
enum { LATELY_S = 3600 };

/* When an alert that is open was last told for one of these signs; 0 if there is none, or it and
 * our last answer are longer ago than LATELY_S, or the conversation in which it was told is over.
 */
int64_t lately_alerted_utc_s(const struct context *context, const char *const *ids, size_t count);

/* The same of an oximeter's value, or one told to be low. */
int64_t lately_reading_utc_s(const struct context *context);

#endif
