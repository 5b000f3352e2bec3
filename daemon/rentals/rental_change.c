#include "rental_change.h"

#include <string.h>

static bool
is_same(const char *a, const char *b)
{
    return a == NULL || b == NULL ? a == b : strcmp(a, b) == 0;
}

static bool
has_battery(const struct rental *rental, const char *serial)
{
    size_t i;

    for (i = 0; i < rental->battery_count; i++) {
        if (is_same(rental->batteries[i].serial, serial)) {
            return true;
        }
    }
    return false;
}

/* The same ones in another order are the same. */
static bool
has_other_batteries(const struct rental *before, const struct rental *after)
{
    size_t i;

    for (i = 0; i < after->battery_count; i++) {
        if (!has_battery(before, after->batteries[i].serial)) {
            return true;
        }
    }
    return before->battery_count != after->battery_count;
}

static bool
is_another_order(const struct order *before, const struct order *after)
{
    return before->known != after->known ||
           (after->known &&
            (before->mode != after->mode || before->setting_tenths != after->setting_tenths));
}

static bool
is_confirmed_anew(const struct order *before, const struct order *after)
{
    return after->confirmed_by != NULL && after->dated_utc_s > before->dated_utc_s;
}

static bool
must_confirm_pulse(const struct rental *before, const struct rental *after)
{
    int i;

    if (is_same(before->unit, after->unit)) {
        return false; /* another unit of the same model */
    }
    for (i = 0; i < ACTIVITY_COUNT; i++) {
        const struct order *order = &after->orders[i];

        if (order->known && order->mode != MODE_CONTINUOUS && /* L/min are the same everywhere */
            !is_confirmed_anew(&before->orders[i], order)) {
            return true;
        }
    }
    return false;
}

struct rental_change
rental_change_of(const struct rental *before, const struct rental *after)
{
    struct rental_change change = {.confirm_pulse = ALERT_NONE};
    int i;

    if (before == NULL) {
        return change;
    }
    change.is_swap = !is_same(before->unit, after->unit) ||
                     !is_same(before->serial, after->serial) || has_other_batteries(before, after);
    for (i = 0; i < ACTIVITY_COUNT; i++) {
        change.is_new_order |= is_another_order(&before->orders[i], &after->orders[i]);
    }
    if (rental_is_active(after) && must_confirm_pulse(before, after)) {
        change.confirm_pulse = rental_is_out(after) ? ALERT_URGENT : ALERT_OFFICE;
    }
    return change;
}

bool
rental_change_voids_account(const struct rental_change *change)
{
    return change->is_swap || change->is_new_order;
}
