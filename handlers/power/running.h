/*
 * What the unit runs on now, as far as text and record tell: the mode and setting that battery
 * time is counted with. "The most draining mode ordered for what they are doing." Pure.
 */
#ifndef RUNNING_H
#define RUNNING_H

#include "equipment.h"
#include "rental.h"
#include "told.h"

enum running_is {
    RUNNING_ORDERED,  /* an order for what they do; `order` and `figure` are set */
    RUNNING_DIFFERS,  /* told otherwise than ordered; `figure` is of what runs, or NULL */
    RUNNING_NO_ORDER, /* nothing is ordered for what they do */
    RUNNING_NO_FIGURE /* ordered, but the equipment file has no time for it */
};

struct running {
    enum running_is is;
    enum activity activity;        /* what the order is for, or what was told */
    const struct order *order;     /* the record's; NULL if there is none */
    const struct run_time *figure; /* the equipment file's; NULL if there is none */
};

/* `equipment` may be NULL: then there is no figure. */
struct running running_now(const struct rental *rental, const struct equipment *equipment,
                           const struct told *told);

#endif
