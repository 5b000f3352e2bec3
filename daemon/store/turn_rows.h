/* What was said of turns on call: who was asked to confirm one, who did, who was asked in vain.
 * Append-only. A turn is named by when it began. */
#ifndef TURN_ROWS_H
#define TURN_ROWS_H

#include "store.h"

enum turn_event { TURN_ASKED, TURN_CONFIRMED, TURN_PASSED };

struct turn_row {
    enum turn_event event;
    const char *who; /* staff phone */
    int64_t at_utc_s;
};

/* In the order in which it happened, in `arena`. */
int turn_rows_of(struct store *store, void *arena, int64_t turn_utc_s, struct turn_row **rows,
                 size_t *count, struct fault *fault);
int turn_rows_add(struct store *store, int64_t turn_utc_s, const struct turn_row *row,
                  struct fault *fault);

#endif
