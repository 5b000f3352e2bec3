/*
 * Everyone on call was called about an urgent alert or an emergency, and nobody has taken it: its
 * renter is told so, once for each level, and what to do without us. No time is promised. For the
 * transaction that is open.
 */
#ifndef NOBODY_YET_H
#define NOBODY_YET_H

#include "calls.h"

/* For an alert that is called now, as alert_rows_due() and alert_renters() fill it. Whoever gets no
 * texts, asked for none, or has told a death, is told nothing. */
int nobody_yet_tell(const struct caller *caller, const struct alert_row *alert,
                    struct fault *fault);

/* Somebody of this name has taken it: a renter who was told that nobody has hears so, once. */
int nobody_yet_taken(const struct caller *caller, const struct alert_renter *renter,
                     enum alert_level level, const char *holder, struct fault *fault);

#endif
