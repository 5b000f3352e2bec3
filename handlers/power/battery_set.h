/*
 * Several batteries together, when nobody knows which of the record's batteries shows which
 * charge: the low end takes the worst pairing, the high end the best. Pure.
 */
#ifndef BATTERY_SET_H
#define BATTERY_SET_H

#include "battery_time.h"
#include "equipment.h"
#include "rental.h"

enum { BATTERY_SET_MAX = 12, HEALTH_OLD_S = 366 * 86400 };

/*
 * Share of a new battery's capacity that is counted with: as measured within the last 12 months,
 * else the retirement limit or what was measured before, the lower. 0 if neither is known.
 */
int battery_health(const struct battery *battery, int retirement_health, int64_t now_utc_s);

/*
 * Time of `count` batteries (at most BATTERY_SET_MAX) with these charges, at `full` for a new one.
 * If they are more than the record has, the others count at the retirement limit. `at_most` > 0
 * counts only so many of them: the emptiest for the low end, the fullest for the high end.
 * Returns false, nothing set, if a battery's health is not known.
 */
bool battery_set_time(const struct rental *rental, const struct equipment *equipment,
                      struct minutes full, const struct percent *charges, size_t count,
                      size_t at_most, int64_t now_utc_s, struct minutes *time);

/*
 * How long each of these batteries surely lasts, the longest first, if the fullest is the weakest;
 * `lasts` has room for `count`. Returns false, nothing set, if a battery's health is not known.
 */
bool battery_set_lasts(const struct rental *rental, const struct equipment *equipment,
                       struct minutes full, const struct percent *charges, size_t count,
                       int64_t now_utc_s, int *lasts);

#endif
