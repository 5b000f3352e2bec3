/* What the renter is doing: resting, walking, asleep, on the way. Pure. */
#ifndef ACTIVITY_READ_H
#define ACTIVITY_READ_H

#include "items.h"
#include "told.h"

/* The activity told last; the caller drops it where kind or legs tell it. */
void activity_read(const struct items *items, struct told *told);

#endif
