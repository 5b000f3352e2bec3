/* What the renter is doing: resting, walking, asleep, on the way. Pure. */
#ifndef ACTIVITY_READ_H
#define ACTIVITY_READ_H

#include "items.h"
#include "told.h"

/* The activity told last; the caller drops it where kind or legs tell it. */
void activity_read(const struct items *items, struct told *told);

/* Who sleeps or rests is told in a clause without a length: how one is now, whatever must last. */
bool activity_is_apart(const struct items *items);

/* "charging while I am driving": what one does meanwhile, though it is no way that is planned. */
bool activity_drives_meanwhile(const struct items *items);

#endif
