/* Mode and setting that hold now, by the last telling. Pure. */
#ifndef SETTINGS_H
#define SETTINGS_H

#include "items.h"
#include "told.h"

/* "turned it up from 2 to 3", "was on 2 but went to 3": a setting told twice, the last holds. To be
 * called before charges are read, which would take the numbers for theirs. */
void settings_changed(struct items *items);

/* Litres a minute are the unit's setting unless a cylinder is asked about. After charges_read(). */
void settings_read(struct items *items, struct told *told);

/* "number 2" as all that a clause says, at the word: a setting. */
bool is_lone_number(const struct items *items, size_t at);

#endif
