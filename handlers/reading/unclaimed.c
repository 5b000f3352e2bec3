#include "unclaimed.h"

#include "charges_left_over.h"

enum { CANDIDATES_MAX = 4, LOW = 10 };

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

/* "to 80", "hasta 90", "at least 70": how far, and not from where. */
static bool
is_led_up_to(const struct items *items, size_t at)
{
    return token_among(items->tokens, tokens_back(items->list[at].from, 1),
                       " to until till reach reaches hits hit least want wants reach al hasta a "
                       "minimo llegar llegue ");
}

/* A charge below full that was put aside as a goal, or a number that nobody took: *charge set. */
static bool
is_candidate(const struct items *items, size_t at, struct percent *charge)
{
    const struct item *item = &items->list[at];
    int word = item_value(items, at, ITEM_CHARGE);

    if (nobody_took(items, at) ||
        (item->wished && (item->is == ITEM_NUMBER || item_in(items, at, UNIT_PERCENT)))) {
        *charge = (struct percent){item->value / 1000, item->high / 1000};
        return !is_led_up_to(items, at) && item->high < 100 * 1000;
    }
    *charge = (struct percent){word / 1000, word % 1000};
    return item->wished && word >= 0 && word % 1000 <= LOW;
}

void
unclaimed_charges(struct items *items, struct told *told)
{
    struct percent found[CANDIDATES_MAX], charge;
    size_t count = 0, at;
    int times;

    if (told->kind != TOLD_CHARGING || told_has_charge(told) || told->impossible) {
        return;
    }
    for (at = 0; at < items->count; at++) {
        if (is_candidate(items, at, &charge) && count++ < CANDIDATES_MAX) {
            found[count - 1] = charge;
        }
    }
    if (count == 0 || count > CANDIDATES_MAX || (told->count > 0 && (int)count > told->count)) {
        return;
    }
    times = count == 1 && found[0].high == 0 && told->count > 1 ? told->count : 1;
    for (at = 0; at < count * (size_t)times; at++) {
        told->charges[told->charge_count++] = found[at % count];
        told->count -= told->count > 0 ? 1 : 0;
    }
}
