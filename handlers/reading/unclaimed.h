/*
 * What no other reader has taken: a battery that is spoken of without its charge, numbers that can
 * only be charges once everything else has its own. After all other readers. Pure.
 */
#ifndef UNCLAIMED_H
#define UNCLAIMED_H

#include "items.h"
#include "told.h"

/* "how long will my battery go": one battery, whose charge is asked back. */
void unclaimed_battery(const struct items *items, struct told *told);

#endif
