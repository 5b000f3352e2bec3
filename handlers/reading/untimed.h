/* Goals whose time is not told: "charged before our ride comes", "ok till bedtime?". Pure. */
#ifndef UNTIMED_H
#define UNTIMED_H

#include "items.h"

/* It should be ready before something. */
bool is_ready_untimed(const struct items *items);
/* It should last until something. */
bool lasts_until_untimed(const struct items *items);

#endif
