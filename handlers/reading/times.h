/*
 * Times of a text: how long ago the charges were so, what it runs from since, when it must be
 * ready, when to remind. Pure. Each marks what it took, so that legs are made of what remains.
 */
#ifndef TIMES_H
#define TIMES_H

#include "charges.h"
#include "items.h"
#include "told.h"

/* since_min and is_earlier, of lengths ("45 min ago") and of two clock times. */
void since_read(struct items *items, const struct charges_read *charges, struct told *told);

/* on_power, as far as the kind of what is asked wants it. */
void power_read(const struct items *items, struct told *told);

/* ready_by, remind_at, remind_before_min, day. */
void goals_read(struct items *items, struct told *told);

/* Clock times that cannot be ("26:00") and lengths below zero. */
void impossible_times(struct items *items, struct told *told);

#endif
