#include "ranges.h"

static bool
has_unit(const struct items *items, size_t at)
{
    return item_is(items, at, ITEM_UNIT) ||
           (item_is(items, at, ITEM_HEDGE_AFTER) && item_is(items, at + 1, ITEM_UNIT));
}

/* "del 40 al 50 por ciento", unless it is charged from the one to the other */
static bool
is_of_percents(const struct items *items, size_t at)
{
    return item_is(items, at - 1, ITEM_FROM) && item_text(items, at + 1, "al") &&
           item_is(items, at + 3, ITEM_UNIT) &&
           item_value(items, at + 3, ITEM_UNIT) == UNIT_PERCENT &&
           !lexicon_cue(items->tokens, CUE_CHARGING);
}

/* "pulso 3 a 2600 metros", "en 2 a 15 grados": a setting and where it runs. */
static bool
is_setting_and_place(const struct items *items, size_t at)
{
    static const enum unit of_place[] = {UNIT_METER,   UNIT_FEET,       UNIT_DEGREE,
                                         UNIT_CELSIUS, UNIT_FAHRENHEIT, UNIT_BELOW_ZERO};
    int unit = item_value(items, at + 3, ITEM_UNIT);
    size_t i;

    for (i = 0; i < sizeof of_place / sizeof of_place[0]; i++) {
        if (unit == (int)of_place[i]) {
            return item_text(items, at + 1, "a") && items->list[at].value <= 10 * 1000;
        }
    }
    return false;
}

/* "Batt 2 - 30%": a label and what it is at, which the blanks tell. */
static bool
is_battery_and_charge(const struct items *items, size_t at)
{
    return item_value(items, at - 1, ITEM_BATTERY) == 1 && at > 0 &&
           items->list[at].value <= 6 * 1000 &&
           !items->tokens->list[items->list[at + 2].from].glued;
}

/*
 * "2-3 hours", "40 to 50 %", "entre 30 y 40", "hace 2 o 3 horas": two numbers are one range if a
 * unit follows or a word or dash says so. "From 20 to 80" is a way, not a range.
 */
void
range_join(struct items *items, size_t at)
{
    bool between = item_is(items, at - 1, ITEM_BETWEEN);
    bool joined = item_is(items, at + 1, ITEM_TO) || (between && item_is(items, at + 1, ITEM_AND));
    const struct item *low, *high;
    bool dash, told;

    if (item_free_number(items, at) && joined && between &&
        token_among(items->tokens, items->list[at + 1].to, " el the ") &&
        item_free_number(items, at + 3)) {
        items_replace(items, at + 1, 2, items->list[at + 1]); /* "entre el 40 y el 50" */
    }
    if (item_free_number(items, at) && is_of_percents(items, at)) {
        joined = between = true; /* "del 40 al 50 por ciento" */
    }
    if (!item_free_number(items, at) || !joined || !item_free_number(items, at + 2)) {
        return;
    }
    low = &items->list[at];
    high = &items->list[at + 2];
    dash = item_text(items, at + 1, "-");
    told = has_unit(items, at + 3) || between ||
           ((dash || item_text(items, at + 1, "or") || item_text(items, at + 1, "o") ||
             (item_text(items, at + 1, "to") && item_is(items, at - 1, ITEM_SHOWS))) &&
            low->value > 12 * 1000 && high->value <= 100 * 1000);
    if (low->value >= high->value || low->negative || (low->one && item_text(items, at + 1, "a")) ||
        low->fraction || low->times || !told || item_text(items, at + 1, "hasta") ||
        is_setting_and_place(items, at) || (dash && is_battery_and_charge(items, at)) ||
        (item_is(items, at - 1, ITEM_FROM) && item_is(items, at + 3, ITEM_UNIT) &&
         item_value(items, at + 3, ITEM_UNIT) == UNIT_PERCENT &&
         lexicon_cue(items->tokens, CUE_CHARGING))) {
        return;
    }
    items->list[at].high = high->value;
    items_replace(items, at, 3, items->list[at]);
    if (between) {
        items_replace(items, at - 1, 2, items->list[at]);
    }
}
