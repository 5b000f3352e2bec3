/* Verdicts as they were written: what was decided, by what content and program, from which state.
 */
#ifndef VERDICT_ROWS_H
#define VERDICT_ROWS_H

#include "store.h"
#include "verdict.h"

struct verdict_row {
    int64_t text_id;
    int64_t supersedes; /* verdict that this one replaces, 0 for none */
    int64_t at_utc_s;
    const char *kb_digest;
    const char *rental_id, *rental_digest; /* or NULL */
    int64_t conversation_row;              /* it started from this one; 0 from none */
    const char *started_from;              /* JSON: the rest of the context by ids and digests */
    enum route route;
    enum language language;
    enum alert_level alert_level;
    const char *json; /* NULL once erased */
};

/* The program's version is added. */
int verdict_rows_add(struct store *store, const struct verdict_row *row, int64_t *verdict_id,
                     struct fault *fault);

/* What working a reply out again takes: which state it started from, how loud staff were called. */
int verdict_rows_start(struct store *store, int64_t verdict_id, int64_t *conversation_row,
                       enum alert_level *alert_level, struct fault *fault);

#endif
