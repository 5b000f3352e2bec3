#include "amounts_after.h"

enum { WARM_CELSIUS_MAX = 50 };

/* "5 grados bajo cero centigrados", "20 degrees F": a unit right behind says which degrees. */
void
degrees_make(struct items *items, size_t at)
{
    struct item *item = &items->list[at];

    if (items->spanish && item_in(items, at, UNIT_BELOW_ZERO) &&
        !item_is(items, at + 1, ITEM_UNIT)) {
        item->negative = true;
        item->unit = UNIT_CELSIUS; /* where Spanish is spoken */
        return;
    }
    if (item->is != ITEM_AMOUNT || (item->unit != UNIT_DEGREE && item->unit != UNIT_BELOW_ZERO) ||
        !item_is(items, at + 1, ITEM_UNIT)) {
        return;
    }
    if (item_value(items, at + 1, ITEM_UNIT) == UNIT_BELOW_ZERO || item->unit == UNIT_BELOW_ZERO) {
        item->negative = true;
    }
    item->unit = (enum unit)item_value(items, at + 1, ITEM_UNIT);
    items_replace(items, at, 2, *item);
}

/* Degrees of which kind is not told: those of the language, "-5 grados" and "20 below"; a heat that
 * nobody bears in the one is meant in the other. */
void
degrees_complete(struct items *items, size_t at)
{
    struct item *item = &items->list[at];

    if (!item_in(items, at, UNIT_DEGREE) && !item_in(items, at, UNIT_BELOW_ZERO)) {
        return;
    }
    item->negative = item->negative || item->unit == UNIT_BELOW_ZERO;
    item->unit =
        items->spanish && item->value <= WARM_CELSIUS_MAX * 1000 ? UNIT_CELSIUS : UNIT_FAHRENHEIT;
}

/* "120 millas a 60 por hora" */
void
speed_unit(struct items *items, size_t at)
{
    size_t i;

    for (i = at; item_in(items, at, UNIT_PER_HOUR) && i > 0; i--) {
        if (item_in(items, i - 1, UNIT_MILE) || item_in(items, i - 1, UNIT_KM)) {
            items->list[at].unit = items->list[i - 1].unit == UNIT_MILE ? UNIT_MPH : UNIT_KMH;
        }
    }
}

/* "240 miles at 60" */
void
speed_bare(struct items *items, size_t at)
{
    struct item *item = &items->list[at];

    size_t before = at - (item_is(items, at - 1, ITEM_HEDGE) ? 1U : 0U);

    if (item_free_number(items, at) && item_value(items, before - 1, ITEM_AT) == AT_AT &&
        (item_in(items, before - 2, UNIT_MILE) || item_in(items, before - 2, UNIT_KM)) &&
        !item_is(items, at + 1, ITEM_UNIT) && item->value <= 120 * 1000) {
        item->is = ITEM_AMOUNT;
        item->unit = items->list[before - 2].unit == UNIT_MILE ? UNIT_MPH : UNIT_KMH;
    }
}

/* "10 C below zero" */
void
degrees_below(struct items *items, size_t at)
{
    struct item *item = &items->list[at];

    if ((item_in(items, at, UNIT_CELSIUS) || item_in(items, at, UNIT_FAHRENHEIT)) &&
        item_is(items, at + 1, ITEM_UNIT) &&
        item_value(items, at + 1, ITEM_UNIT) == UNIT_BELOW_ZERO) {
        item->negative = true;
        items_replace(items, at, 2, *item);
    }
}
