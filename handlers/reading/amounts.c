#include "amounts.h"

#include <string.h>

#include "amounts_after.h"
#include "ranges.h"

enum {
    DAY_MINUTES = 24 * 60,
    DURATION_MAX = 14 * DAY_MINUTES,
    LIGHTS_MAX = 10,
    WARM_CELSIUS_MAX = 50
};

bool
item_is_duration(const struct items *items, size_t at)
{
    return item_in(items, at, UNIT_MINUTE);
}

int
duration_minutes(const struct items *items, size_t at)
{
    return items->list[at].high;
}

/* ---- whole numbers --------------------------------------------------------------------------- */

static int
part_value(const struct items *items, size_t at)
{
    if (item_value(items, at, ITEM_FRACTION) == 750) {
        return 750;
    }
    if (item_is(items, at, ITEM_HALF)) {
        return 500;
    }
    if (at < items->count && items->list[at].is == ITEM_NUMBER && items->list[at].fraction &&
        items->list[at].value < 1000) {
        return items->list[at].value; /* "an hour and 3/4" */
    }
    return item_is(items, at, ITEM_QUARTER) ? 250 : 0;
}

static bool
can_be_halved(const struct items *items, size_t at)
{
    const struct item *item = &items->list[at];
    bool pronoun =
        item->one && (item_is(items, at - 1, ITEM_FULL) || item_is(items, at - 1, ITEM_CHARGE) ||
                      item_is(items, at - 1, ITEM_OTHER) ||
                      (item_text(items, at - 1, "en") && !item_is(items, at - 1, ITEM_MODE) &&
                       !item_is(items, at - 1, ITEM_SETTING)));

    return item->is == ITEM_NUMBER && !item->spent && !item->fraction && !pronoun &&
           item->value % 1000 == 0 && item->value < 100 * 1000;
}

/* "two and a half", "dos y media"; not "one and a half battery" in the sense of two things. */
static void
add_part(struct items *items, size_t at)
{
    size_t part = at + 2;
    bool of_battery;
    int value;

    if (!can_be_halved(items, at) || !item_is(items, at + 1, ITEM_AND) ||
        item_text(items, at + 1, "+") || item_text(items, at + 1, "mas")) {
        return;
    }
    part += item_is(items, part, ITEM_ARTICLE) ? 1 : 0;
    value = part_value(items, part);
    if ((item_is(items, at - 1, ITEM_MODE) || item_is(items, at - 1, ITEM_SETTING)) &&
        item_is(items, part + 1, ITEM_UNIT) &&
        item_value(items, part + 1, ITEM_UNIT) != UNIT_FLOW) {
        return; /* "en pulso 3 y media hora de camino" */
    }
    if (value == 0) {
        return; /* nothing more may stand there at all: "mine has one and" */
    }
    of_battery = item_is(items, part + 1, ITEM_BATTERY) || item_is(items, part + 1, ITEM_FULL) ||
                 (part + 1 < items->count && items->list[part + 1].one) ||
                 item_text(items, part, "la") || item_text(items, part, "a");
    if (!items->spanish && items->tokens->list[items->list[part].from].text[0] != 'a' &&
        !item_is(items, part - 1, ITEM_ARTICLE) && !item_is(items, part + 1, ITEM_UNIT)) {
        return; /* "20 and half" are two charges */
    }
    if (items->spanish && !item_is(items, part + 1, ITEM_UNIT) &&
        (items->list[at].value > 12 * 1000 || item_text(items, part, "un"))) {
        return; /* "una y un cuarto" are two charges */
    }
    if (part + 1 < items->count && items->list[part + 1].one) {
        return; /* "a half one and a quarter one" */
    }
    if ((of_battery && !item_text(items, part, "a")) ||
        (item_text(items, part, "a") && item_is(items, part + 1, ITEM_BATTERY))) {
        return;
    }
    items->list[at].value += value;
    items->list[at].one = false;
    items->list[at].high = items->list[at].value;
    items_replace(items, at, part + 1 - at, items->list[at]);
}

/* "seven eighths" */
static void
add_fraction(struct items *items, size_t at)
{
    static const struct {
        const char *names;
        int parts;
    } kinds[] = {{" thirds tercios ", 3},  {" fourths quarters cuartos ", 4},
                 {" fifths quintos ", 5},  {" sixths sextos ", 6},
                 {" eighths octavos ", 8}, {" tenths decimos ", 10}};
    size_t token = items->list[at].to, i;

    if (!item_free_number(items, at) || at + 1 >= items->count ||
        items->list[at + 1].to != token + 1 || item_is(items, at + 2, ITEM_UNIT)) {
        return;
    }
    for (i = 0; i < sizeof kinds / sizeof kinds[0]; i++) {
        if (token_among(items->tokens, token, kinds[i].names) &&
            items->list[at].value < kinds[i].parts * 1000) {
            items->list[at].value /= kinds[i].parts;
            items->list[at].high = items->list[at].value;
            items->list[at].fraction = true;
            items_replace(items, at, 2, items->list[at]);
            return;
        }
    }
}

/* "two point five" */
static void
add_point(struct items *items, size_t at)
{
    bool point = item_text(items, at + 1, "point") || item_text(items, at + 1, "punto");

    if (item_free_number(items, at) && point && item_free_number(items, at + 2) &&
        items->list[at + 2].value < 10 * 1000 && items->list[at].value < 100 * 1000) {
        items->list[at].value += items->list[at + 2].value / 10;
        items->list[at].one = false;
        items->list[at].high = items->list[at].value;
        items_replace(items, at, 3, items->list[at]);
    }
}

/* "minus 2", "-40", but "9-10" and "las 8 menos 10" are none. */
static void
add_minus(struct items *items, size_t at)
{
    const struct tokens *tokens = items->tokens;
    bool sign, word;

    if (!item_free_number(items, at + 1)) {
        return;
    }
    sign = item_text(items, at, "-") && tokens->list[items->list[at + 1].from].glued &&
           !tokens->list[items->list[at].from].glued;
    word = item_is(items, at, ITEM_MINUS) && !item_free_number(items, at - 1) &&
           !item_is(items, at - 1, ITEM_HALF);
    if ((sign && at > 0 && items->list[at - 1].is == ITEM_NUMBER) || !(sign || word)) {
        return;
    }
    items->list[at + 1].negative = true;
    items_replace(items, at, 2, items->list[at + 1]);
}

/* "batteries x4", "x 4" */
static void
add_times(struct items *items, size_t at)
{
    if (item_text(items, at, "x") && item_free_number(items, at + 1) &&
        items->list[at + 1].value <= 12 * 1000) {
        items->list[at + 1].times = true;
        items_replace(items, at, 2, items->list[at + 1]);
    }
}

/* ---- units ----------------------------------------------------------------------------------- */

static int
in_minutes(int value, enum unit unit)
{
    long long minutes = value;

    if (unit == UNIT_HOUR) {
        minutes *= 60;
    } else if (unit == UNIT_DAY) {
        minutes *= DAY_MINUTES;
    }
    minutes = (minutes + 999) / 1000;
    return minutes > DURATION_MAX ? DURATION_MAX : (int)minutes;
}

static bool
is_time_unit(enum unit unit)
{
    return unit == UNIT_MINUTE || unit == UNIT_HOUR || unit == UNIT_DAY;
}

/* "2700 m" are metres, "2 h 55 m" minutes. */
static enum unit
unit_at(const struct items *items, size_t at, int number)
{
    enum unit unit = (enum unit)item_value(items, at, ITEM_UNIT);

    return item_text(items, at, "m") && number >= 300 * 1000 ? UNIT_METER : unit;
}

/* Makes items [at, at + count) an amount of [low, high] thousandths of the unit. */
static void
make_amount(struct items *items, size_t at, size_t count, struct item number, enum unit unit)
{
    struct item amount = number;

    amount.is = ITEM_AMOUNT;
    amount.unit = is_time_unit(unit) ? UNIT_MINUTE : unit;
    if (is_time_unit(unit)) {
        amount.value = in_minutes(number.value, unit);
        amount.high = in_minutes(number.high, unit);
        amount.days = unit == UNIT_DAY && number.value >= 1000;
        amount.whole_hours = unit == UNIT_HOUR && number.high % 1000 == 0;
    }
    items_replace(items, at, count, amount);
}

/* "half an hour", "half a liter", "a quarter mile" */
static bool
may_be_parted(enum unit unit)
{
    return is_time_unit(unit) || unit == UNIT_FLOW || unit == UNIT_MILE || unit == UNIT_KM;
}

/* "half an hour", "media hora", "tres cuartos de hora", "quarter of a mile" */
static bool
part_of_unit(struct items *items, size_t at)
{
    struct item number = {.day = NO_DAY};
    size_t next = at + 1;
    int value = item_is(items, at, ITEM_FRACTION) ? item_value(items, at, ITEM_FRACTION)
                                                  : part_value(items, at);

    if (value == 0) {
        return false;
    }
    next += item_text(items, next, "of") || item_text(items, next, "de") ? 1 : 0;
    next += item_is(items, next, ITEM_ARTICLE) || item_text(items, next, "una") ? 1 : 0;
    if (!item_is(items, next, ITEM_UNIT) || !may_be_parted(unit_at(items, next, 0))) {
        return false;
    }
    number.value = number.high = value;
    make_amount(items, at, next + 1 - at, number, unit_at(items, next, 0));
    items->list[at].whole_hours = false;
    return true;
}

/* "0700 hrs" is a clock time. */
static bool
is_clock_number(const struct items *items, size_t at)
{
    const char *text = items->tokens->list[items->list[at].from].text;

    return items->list[at].digits && text[0] == '0' && strlen(text) == 4;
}

/* "hour drive", "the first hour" */
static bool
is_an_hour(const struct items *items, size_t at)
{
    size_t first = items->list[at].from;

    if (first > 0 && token_among(items->tokens, items->list[at].from, " hour hora ") &&
        token_among(items->tokens, first - 1, " first last past final primera ultima ")) {
        return true;
    }
    if (token_is(items->tokens, items->list[at].from, "hour") && first > 0 &&
        token_is(items->tokens, first - 1, "same") && item_is(items, at + 1, ITEM_AND)) {
        return true; /* "the same hour and ten back" */
    }
    return item_text(items, at, "hour") && item_is(items, at + 1, ITEM_GOING) &&
           !item_is(items, at - 1, ITEM_HALF);
}

/* "another hour", "otra hora" */
static bool
is_another(const struct items *items, size_t at)
{
    return token_among(items->tokens, items->list[at].from, " another otra ") &&
           items->list[at].to == items->list[at].from + 1 &&
           item_value(items, at + 1, ITEM_UNIT) == UNIT_HOUR;
}

/* "pulse 2 hours?": what is asked, and the number is the mode's. */
static bool
is_of_mode(const struct items *items, size_t at, size_t unit)
{
    return (item_is(items, at - 1, ITEM_MODE) || item_is(items, at - 1, ITEM_SETTING)) &&
           item_value(items, unit, ITEM_UNIT) == UNIT_HOUR && items->list[at].value <= 6 * 1000 &&
           (unit + 1 >= items->count || item_text(items, unit + 1, "?") ||
            token_among(items->tokens, items->list[unit].to, " left lft remaining "));
}

/* A number with its unit, or a unit that an article counts: "an hour", "hora y media". */
static bool
number_of_unit(struct items *items, size_t at)
{
    struct item number = {.value = 1000, .high = 1000, .day = NO_DAY};
    bool counted = item_free_number(items, at);
    bool article = (item_is(items, at, ITEM_ARTICLE) && !item_in(items, at - 1, UNIT_OTHER)) ||
                   is_another(items, at);
    size_t next = at + (counted || article ? 1 : 0), unit_item;
    bool half_follows;
    int part;

    if (counted) {
        number = items->list[at];
        next += item_is(items, next, ITEM_HEDGE_AFTER) && item_is(items, next + 1, ITEM_UNIT);
        next += item_text(items, next, "-") && item_is(items, next + 1, ITEM_UNIT) ? 1 : 0;
        next += (item_text(items, next, "more") || item_text(items, next, "full") ||
                 item_text(items, next, "whole") || item_text(items, next, "extra")) &&
                item_is(items, next + 1, ITEM_UNIT);
    }
    if (!item_is(items, next, ITEM_UNIT) ||
        (counted && (is_clock_number(items, at) || is_of_mode(items, at, next)))) {
        return false;
    }
    if (number.value <= LIGHTS_MAX * 1000 && item_is(items, next, ITEM_LIGHT) &&
        !items_any(items, ITEM_CYLINDER)) {
        return false; /* "2 bars" of the gauge */
    }
    unit_item = next;
    half_follows = item_is(items, next + 1, ITEM_AND);
    next += half_follows ? 2 : 1;
    next += half_follows && item_is(items, next, ITEM_ARTICLE) ? 1 : 0;
    part = half_follows ? part_value(items, next) : 0;
    if (part > 0 && (number.value % 1000 == 0) && !item_is(items, next + 1, ITEM_BATTERY) &&
        !item_is(items, next + 1, ITEM_UNIT)) { /* "10 min y media hora" are two */
        number.value += part;
        number.high += part;
        next++;
    } else {
        next = unit_item + 1;
        if (!counted && !article && !is_an_hour(items, unit_item)) {
            return false; /* a unit alone tells no amount */
        }
    }
    if (article && token_among(items->tokens, items->list[unit_item].to, " or o ") &&
        item_free_number(items, next + 1) && items->list[next + 1].value > number.value &&
        items->list[next + 1].value <= 3 * 1000 && !item_is(items, next + 2, ITEM_UNIT) &&
        !item_is(items, next + 2, ITEM_BATTERY)) {
        number.high = items->list[next + 1].value; /* "an hour or two" */
        next += 2;
    }
    make_amount(items, at, next - at, number, unit_at(items, unit_item, number.value));
    return true;
}

/* What may not stand behind a bare number of minutes: it counts something else then. */
static bool
counts_something(const struct items *items, size_t at)
{
    static const enum item_is things[] = {ITEM_BATTERY, ITEM_FULL,  ITEM_CHARGE,  ITEM_LIGHT,
                                          ITEM_UNIT,    ITEM_OTHER, ITEM_ORDINAL, ITEM_MODE};
    size_t i;

    for (i = 0; i < sizeof things / sizeof things[0]; i++) {
        if (item_is(items, at, things[i])) {
            return true;
        }
    }
    return false;
}

/* "concierto de 4 horas y 30 min de carro": two lengths */
static bool
begins_new_way(const struct items *items, size_t hours, size_t minutes)
{
    size_t way = minutes + 1, before = hours > 0 ? hours - 1 : 0;
    int going;

    way += item_is(items, way, ITEM_OF) || item_is(items, way, ITEM_LINK) ? 1 : 0;
    going = item_value(items, way, ITEM_GOING);
    before -= before > 0 && (item_is(items, before, ITEM_OF) || item_is(items, before, ITEM_LINK) ||
                             item_is(items, before, ITEM_LASTS))
                  ? 1
                  : 0;
    return item_is_duration(items, minutes) && going >= 0 && hours > 0 &&
           item_is(items, before, ITEM_GOING) && item_value(items, before, ITEM_GOING) != going;
}

/* "2h30", "1 hr 5", "5 hours and 20 minutes", "5 horas y 20" */
static void
add_minutes(struct items *items, size_t at)
{
    size_t next = at + 1;
    bool joined, glued;
    struct item *hours = &items->list[at];

    if (!item_is_duration(items, at) || !hours->whole_hours || hours->value != hours->high) {
        return;
    }
    joined = item_is(items, next, ITEM_AND) || item_text(items, next, "con");
    next += joined ? 1 : 0;
    if (joined && begins_new_way(items, at, next)) {
        return;
    }
    if (item_is_duration(items, next) && items->list[next].value < 60 &&
        !items->list[next].negative) {
        hours->value += items->list[next].value;
    } else if (item_free_number(items, next) && items->list[next].value < 60 * 1000 &&
               items->list[next].value % 1000 == 0 && !items->list[next].one &&
               !items->list[next].ordinal && !counts_something(items, next + 1)) {
        glued = items->tokens->list[items->list[next].from].glued;
        if (joined && !glued && items->list[next].value < 5 * 1000) {
            return;
        }
        hours->value += items->list[next].value / 1000;
    } else {
        return;
    }
    hours->high = hours->value;
    hours->whole_hours = false;
    items_replace(items, at, next + 1 - at, *hours);
}

/* "an hour to an hour and a half", "entre una hora y hora y media" */
static void
join_lengths(struct items *items, size_t at)
{
    const struct item *high = at + 2 < items->count ? &items->list[at + 2] : NULL;
    bool between = item_is(items, at - 1, ITEM_BETWEEN) && item_is(items, at + 1, ITEM_AND);

    if (high == NULL || !item_is_duration(items, at) || !item_is_duration(items, at + 2) ||
        !(item_is(items, at + 1, ITEM_TO) || between) || high->value <= items->list[at].value ||
        high->value > 3 * items->list[at].value) {
        return;
    }
    items->list[at].high = high->high;
    items->list[at].whole_hours = false;
    items_replace(items, at, 3, items->list[at]);
    if (between) {
        items_replace(items, at - 1, 2, items->list[at]);
    }
}

void
amounts_make(struct items *items)
{
    static void (*const on_numbers[])(struct items *, size_t) = {
        add_fraction, add_minus, add_times, add_point, add_part, range_join};
    static void (*const on_amounts[])(struct items *, size_t) = {
        add_minutes,   join_lengths,     degrees_make, degrees_make,
        degrees_below, degrees_complete, speed_unit,   speed_bare};
    size_t at, i;

    for (i = 0; i < sizeof on_numbers / sizeof on_numbers[0]; i++) {
        for (at = 0; at < items->count; at++) {
            on_numbers[i](items, at);
        }
    }
    for (at = 0; at < items->count; at++) {
        if (!part_of_unit(items, at)) {
            (void)number_of_unit(items, at);
        }
    }
    for (i = 0; i < sizeof on_amounts / sizeof on_amounts[0]; i++) {
        for (at = 0; at < items->count; at++) {
            on_amounts[i](items, at);
        }
    }
}
