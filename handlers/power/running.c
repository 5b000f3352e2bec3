/*
 * Who does not tell what they are doing is awake: at rest or walking. Only if what they tell of
 * mode and setting fits neither, orders for sleep and flight are looked at too.
 */
#include "running.h"

enum { AWAKE = 2 }; /* ACTIVITY_REST and ACTIVITY_WALKING come first in the enum */

_Static_assert((int)ACTIVITY_REST < AWAKE && (int)ACTIVITY_WALKING < AWAKE, "awake ones lead");

static const struct run_time *
figure_of(const struct equipment *equipment, enum mode mode, int setting_tenths)
{
    return equipment == NULL ? NULL : equipment_run_time(equipment, mode, setting_tenths);
}

static bool
fits_told(const struct order *order, const struct told *told)
{
    return (!told->has_mode || told->mode == order->mode) &&
           (!told->has_setting || told->setting_tenths == order->setting_tenths);
}

/* Takes this order if it drains more than what was found before. One without figure stops it. */
static void
consider(struct running *running, const struct order *order, enum activity activity,
         const struct equipment *equipment)
{
    const struct run_time *figure = figure_of(equipment, order->mode, order->setting_tenths);
    bool first = running->order == NULL;

    if (running->is == RUNNING_NO_FIGURE) {
        return;
    }
    if (figure == NULL || first || figure->lasts.low < running->figure->lasts.low) {
        running->is = figure == NULL ? RUNNING_NO_FIGURE : RUNNING_ORDERED;
        running->order = order;
        running->activity = activity;
        running->figure = figure;
    }
}

/* The orders for activities [from, to), those that fit what is told. */
static struct running
most_draining(const struct rental *rental, const struct equipment *equipment,
              const struct told *told, int from, int to)
{
    struct running running = {.is = RUNNING_NO_ORDER, .activity = (enum activity)from};
    int i;

    for (i = from; i < to; i++) {
        if (rental->orders[i].known && fits_told(&rental->orders[i], told)) {
            consider(&running, &rental->orders[i], (enum activity)i, equipment);
        }
    }
    return running;
}

/* What runs is not what is ordered; a mode told without its number has no figure. */
static struct running
differing(const struct running *ordered, const struct equipment *equipment, const struct told *told)
{
    struct running running = *ordered;

    running.is = RUNNING_DIFFERS;
    running.figure = !told->has_setting
                         ? NULL
                         : figure_of(equipment, told->has_mode ? told->mode : ordered->order->mode,
                                     told->setting_tenths);
    return running;
}

struct running
running_now(const struct rental *rental, const struct equipment *equipment, const struct told *told)
{
    const struct told nothing = {0};
    int from = told->has_activity ? (int)told->activity : 0;
    int to = told->has_activity ? (int)told->activity + 1 : AWAKE;
    struct running running = most_draining(rental, equipment, told, from, to);
    struct running ordered;

    if (running.order == NULL && !told->has_activity) {
        running = most_draining(rental, equipment, told, AWAKE, ACTIVITY_COUNT);
    }
    if (running.order != NULL) {
        return running;
    }
    ordered = most_draining(rental, equipment, &nothing, from, to);
    if (ordered.order == NULL && !told->has_activity) {
        ordered = most_draining(rental, equipment, &nothing, AWAKE, ACTIVITY_COUNT);
    }
    return ordered.order == NULL ? ordered : differing(&ordered, equipment, told);
}
