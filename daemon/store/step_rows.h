/*
 * What a step of the wall clock does to times that stand in rows. An interval (when to call again,
 * by when an answer is due, when to try a send anew) is so many seconds from when it began,
 * whatever the wall shows meanwhile: it moves with the step. A date (an office alert that waits for
 * office hours) stays. Whatever happened, nothing waits longer than its own interval from now.
 */
#ifndef STEP_ROWS_H
#define STEP_ROWS_H

#include "store.h"
#include "verdict.h"

/* The longest that each may wait from now on; seconds, and a time for what waits for the office. */
struct step_limits {
    int64_t call_s[ALERT_EMERGENCY + 1]; /* of ALERT_OFFICE: unused */
    int64_t office_call_utc_s;
    int64_t answer_s, talk_s, send_s;
};

/* The wall clock shows `step_s` seconds more than it would have (less: negative). Intervals move.
 */
int step_rows_shift(struct store *store, int64_t step_s, struct fault *fault);

/* After a step, and at a start: nothing is due later than it may be, and nothing was taken or sent
 * in the future. */
int step_rows_clamp(struct store *store, const struct step_limits *limits, int64_t now_utc_s,
                    struct fault *fault);

#endif
