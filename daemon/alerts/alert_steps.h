/*
 * Who is called about an open alert, and when the next call is due. Arithmetic only.
 *
 * Until someone takes it, the line is called from its front: one person at once, one more each
 * time `next_s` has passed, everyone from `everyone_s` on, and everyone again every `next_s`. Once
 * taken, a re-check: no outcome `recheck_s` later, and whoever took it and the next in line are
 * called, one more after each further `recheck_s`.
 *
 * It goes by how long the alert has had its level, not by how many calls were made, so that a
 * program that was down for a while catches up instead of starting over. One that is raised goes
 * through the steps of its new level from then on, but nobody who was called before is left out.
 */
#ifndef ALERT_STEPS_H
#define ALERT_STEPS_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

struct alert_state {
    int64_t level_utc_s;  /* when it was opened, or raised to its level */
    size_t people_called; /* before it was raised */
    bool is_taken;
    int64_t taken_utc_s;
    size_t taken_place; /* where in the line the one who took it stands, 0 is the front */
};

/* Seconds; 0 or less: that step is never made. */
struct alert_policy {
    int64_t next_s, everyone_s, recheck_s;
    int64_t again_s; /* if no other step is to come: the same once more */
};

struct alert_call_step {
    size_t from, count; /* places in the line, going round its end; count <= line */
    int64_t next_utc_s; /* > now; INT64_MAX for never, which again_s rules out */
};

/* A call is due now: whom, and when again. `line` is how many are on call, at least 1. */
struct alert_call_step alert_steps_due(const struct alert_state *state,
                                       const struct alert_policy *policy, int64_t now_utc_s,
                                       size_t line);

#endif
