/* Goals and stays whose time is not told: "charged before our ride comes", "ok till bedtime?", "for
 * a day at the zoo". Pure. */
#ifndef UNTIMED_H
#define UNTIMED_H

#include "items.h"

/* It should be ready before something. */
bool is_ready_untimed(const struct items *items);
/* It should last until something. */
bool lasts_until_untimed(const struct items *items);
/* It should do for a day, or a part of it, somewhere. */
bool spends_part_of_day(const struct items *items);

#endif
