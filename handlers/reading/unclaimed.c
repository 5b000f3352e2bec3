#include "unclaimed.h"

/* "the battery charger", "battery light": no battery is spoken of. */
static bool
names_another_thing(const struct items *items, size_t at)
{
    return token_among(items->tokens, items->list[at].to,
                       " charger chargers life lives time times light lights power gauge icon "
                       "symbol type size case bag door cover slot question use ");
}

/* Several are spoken of, or nobody knows how many. */
static bool
speaks_of_several(const struct items *items)
{
    size_t at;

    for (at = 0; at < items->count; at++) {
        if (item_value(items, at, ITEM_BATTERY) == 2 || item_is(items, at, ITEM_OTHER) ||
            item_is(items, at, ITEM_ORDINAL) || item_is(items, at, ITEM_BOTH) ||
            (item_is(items, at, ITEM_ALL) && !item_is(items, at, ITEM_LINK))) {
            return true;
        }
    }
    return false;
}

void
unclaimed_battery(const struct items *items, struct told *told)
{
    size_t at;

    if ((told->kind != TOLD_HOURS_LEFT && told->kind != TOLD_CHARGING && told->kind != TOLD_TRIP &&
         told->kind != TOLD_BATTERY_LIFE) ||
        told_batteries(told) > 0 || speaks_of_several(items)) {
        return;
    }
    for (at = 0; at < items->count; at++) {
        if (item_value(items, at, ITEM_BATTERY) == 1 && !items->list[at].spent &&
            !names_another_thing(items, at)) {
            told->count = 1;
            return;
        }
    }
}
