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

/* What charging starts at, where none is told otherwise: what was put aside as if it were wished
 * for ("get my 20 to full"), and numbers that nobody took. */
void unclaimed_charges(struct items *items, struct told *told);

#endif
