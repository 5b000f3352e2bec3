/* What an answer to a question back (sum_goes_on.c) and a text that goes on with what was answered
 * (follow_up.c) share. Private to them. */
#ifndef SUM_PARTS_H
#define SUM_PARTS_H

#include "asked.h"

/* Puts what `answer` tells of a cylinder to `told`: gauge, size, flow. False if it tells nothing of
 * it; `before` is what it was asked for. */
bool sum_take_cylinder(const struct asked *asked, const struct asked *before,
                       const struct told *answer, struct told *told);
/* The same for the time by which batteries must be charged. "2 full" is no time. */
bool sum_take_ready_by(const struct asked *asked, const struct asked *before,
                       const struct told *answer, struct told *told);

#endif
