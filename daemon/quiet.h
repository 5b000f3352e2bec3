/*
 * Quiet hours: when a renter is texted nothing but answers, by the clock on the wall where the
 * renter is. 8 am to 9 pm is 47 CFR 64.1200(c)(1), which is about sales; we keep it for whatever
 * the program starts by itself and is not urgent. Arithmetic only.
 */
#ifndef QUIET_H
#define QUIET_H

#include "config.h"

/* The zone of a rental's place; NULL: not known, so the house's. */
const struct zone *quiet_zone(const struct config *config, const char *place);

/* The first moment from `utc_s` on that is not quiet: `utc_s` itself if it is not. */
int64_t quiet_ends(const struct config *config, const char *place, int64_t utc_s);
/* When the next quiet hours begin, after a moment that is not quiet; INT64_MAX if there are none.
 */
int64_t quiet_begins(const struct config *config, const char *place, int64_t utc_s);

#endif
