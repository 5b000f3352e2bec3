#include "rental.h"

#include <string.h>

static const char *const state_names[] = {
    [RENTAL_BOOKED] = "booked",     [RENTAL_OUT] = "out",       [RENTAL_OVERDUE] = "overdue",
    [RENTAL_RETURNED] = "returned", [RENTAL_CLOSED] = "closed",
};

static const char *const activity_names[ACTIVITY_COUNT] = {
    [ACTIVITY_REST] = "rest",
    [ACTIVITY_WALKING] = "walking",
    [ACTIVITY_SLEEP] = "sleep",
    [ACTIVITY_FLIGHT] = "flight",
};

bool
rental_is_active(const struct rental *rental)
{
    return rental->state == RENTAL_BOOKED || rental_is_out(rental);
}

bool
rental_is_out(const struct rental *rental)
{
    return rental->state == RENTAL_OUT || rental->state == RENTAL_OVERDUE;
}

const char *
activity_name(enum activity activity)
{
    return activity_names[activity];
}

enum activity
activity_named(const char *name)
{
    int i;

    for (i = 0; i < ACTIVITY_COUNT; i++) {
        if (strcmp(activity_names[i], name) == 0) {
            break;
        }
    }
    return (enum activity)i;
}

const char *
rental_state_name(enum rental_state state)
{
    return state_names[state];
}

int
rental_state_named(const char *name)
{
    int i;

    for (i = 0; i <= RENTAL_CLOSED; i++) {
        if (strcmp(state_names[i], name) == 0) {
            return i;
        }
    }
    return -1;
}
