/* Clock times of a text as moments. Pure. */
#ifndef WHEN_H
#define WHEN_H

#include "told.h"
#include "zone.h"

/*
 * The next moment, later than now, at which the wall shows `minutes` after midnight. With a day
 * told it is of that day: today's may be past, and the moment is then not later than now; a day of
 * the week is the next one, today's as long as its time is still to come.
 */
int64_t when_told(const struct zone *zone, int64_t now_utc_s, int minutes, bool has_day,
                  enum told_day day);

#endif
