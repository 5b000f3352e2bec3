/*
 * Content with its placeholders (kb/reader/placeholders.h) filled in from house, record and unit,
 * and the conditions under which a topic holds.
 */
#ifndef FILL_H
#define FILL_H

#include "context.h"

struct filling {
    const struct house *house;
    const struct zone *zone;           /* may be NULL without a rental */
    const struct rental *rental;       /* NULL: every record placeholder takes its own words */
    const struct equipment *equipment; /* of its unit, or NULL */
    enum language language;
    int64_t now_utc_s;
};

/*
 * A copy of `text` in `arena`. A record placeholder without value gives the words after its bar;
 * what is no placeholder stays as it is. `*used_record` (may be NULL) is set to whether a value of
 * the record or unit was put in.
 */
char *fill(void *arena, const char *text, const struct filling *with, bool *used_record);

/* True if the text has a placeholder that would be filled from a record. */
bool fill_wants_record(const char *text);

/*
 * Whether a topic holds for this rental: conditions "mode pulse" (also continuous, night: the unit
 * has it), "backup", "car-charger", "unit ID". Without a rental only "unit" fails: nobody's unit
 * is known, and general words are right for everyone.
 */
bool fill_only_if_holds(const char *const *conditions, size_t count, const struct filling *with);

#endif
