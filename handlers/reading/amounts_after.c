#include "amounts_after.h"

#include "amounts.h"

enum { WARM_CELSIUS_MAX = 50, HOURS_MAX = 12 };

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

/* The longest of the lengths before it, in minutes; 0 if there is none since batteries were spoken
 * of. */
static int
longest_before(const struct items *items, size_t at)
{
    int longest = 0;
    size_t i;

    for (i = at;
         i > 0 && !item_is(items, i - 1, ITEM_BATTERY) && !item_is(items, i - 1, ITEM_FULL) &&
         !item_is(items, i - 1, ITEM_CHARGE) && !item_is(items, i - 1, ITEM_LIGHT);
         i--) {
        if (item_is_duration(items, i - 1) && items->list[i - 1].value > longest) {
            longest = items->list[i - 1].value;
        }
    }
    return longest;
}

/* "150 minutes on the coach, half an hour stop, 150 more", "y otras 2 en carro": hours if
 * so few, and an hour or more was told before. */
void
lengths_more(struct items *items, size_t at)
{
    struct item *item = &items->list[at];
    bool more = item_text(items, at + 1, "more") || item_text(items, at + 1, "mas");
    bool others = item_text(items, at - 1, "otras") || item_text(items, at - 1, "otros") ||
                  item_text(items, at - 1, "another");
    size_t next = at + (more ? 2U : 1U);
    int longest;
    bool ends = next >= items->count || items->list[next].is == ITEM_STOP ||
                items->list[next].is == ITEM_PAUSE || item_is(items, next, ITEM_GOING) ||
                (item_text(items, next, "en") && item_is(items, next + 1, ITEM_GOING));

    if (!(more || others) || !ends || !item_free_number(items, at) || item->value % 1000 != 0) {
        return;
    }
    longest = longest_before(items, at);
    if (longest > 0) {
        bool hours = longest >= 60 && item->value <= HOURS_MAX * 1000;

        item->is = ITEM_AMOUNT;
        item->unit = UNIT_MINUTE;
        item->value = item->high = item->value / 1000 * (hours ? 60 : 1);
        item->whole_hours = hours;
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
