/* Clock times written in digits without a colon: see clock_parts.h. */
#include <string.h>

#include "clock_parts.h"
#include "clocks.h"

/* "the movie ends 930", "home by 515"; "until 100" is a charge. */
static bool
is_three_digits(const struct items *items, size_t at)
{
    int value = items->list[at].value / 1000;

    return strlen(items->tokens->list[items->list[at].from].text) == 3 && value > 100 &&
           value < 1300 && !item_text(items, at - 1, "for") &&
           (item_is(items, at - 1, ITEM_BY) || item_is(items, at - 1, ITEM_UNTIL) ||
            item_is(items, at - 1, ITEM_ARRIVE) || item_is(items, at - 1, ITEM_DEPART) ||
            item_is(items, at - 1, ITEM_SINCE));
}

/* "0630", "by 1900" */
bool
clock_of_four_digits(struct items *items, size_t at)
{
    const struct item *item = &items->list[at];
    const char *text = items->tokens->list[item->from].text;
    bool led = item_is(items, at - 1, ITEM_BY) || item_is(items, at - 1, ITEM_UNTIL) ||
               item_is(items, at - 1, ITEM_AT) || item_is(items, at - 1, ITEM_CLOCK_LEAD) ||
               item_is(items, at - 1, ITEM_DEPART) || item_is(items, at - 1, ITEM_NOW_IS) ||
               item_is(items, at - 1, ITEM_SINCE) || item_is(items, at - 1, ITEM_ARRIVE) ||
               item_is(items, at + 1, ITEM_DEPART) || item_is(items, at + 1, ITEM_ARRIVE) ||
               (item_is(items, at - 1, ITEM_TO) && at > 1 &&
                items->list[at - 2].is == ITEM_CLOCK); /* "0900 to 1500" */
    int value = item->value / 1000;
    size_t digits = strlen(text);
    bool unit;

    if (!item_free_number(items, at) || !item->digits ||
        (digits != 4 && !is_three_digits(items, at)) || item->to > item->from + 1 ||
        (text[0] != '0' && (lexicon_cue(items->tokens, CUE_CYLINDER) ||
                            tokens_have(items->tokens, "needle|pointer|aguja")))) {
        return false; /* "its 1400 now" of a cylinder is its pressure */
    }
    unit = item_is(items, at + 1, ITEM_UNIT) &&
           (enum unit)item_value(items, at + 1, ITEM_UNIT) != UNIT_HOUR;
    if (unit || (text[0] != '0' && !led) || (text[0] != '0' && value % 5 != 0) ||
        value % 100 > 59 || value > 2400 || item_is(items, at - 1, ITEM_NAMED)) {
        return false;
    }
    clock_make(items, at, item_is(items, at + 1, ITEM_UNIT) ? 2 : 1,
               value / 100 * 60 + value % 100);
    items->list[at].ampm = digits == 4;
    return true;
}

/* "bus at 6 15 am" */
bool
clock_of_two_numbers(struct items *items, size_t at)
{
    const struct item *hour = &items->list[at], *minute = hour + 1;

    if (!item_free_number(items, at) || !item_free_number(items, at + 1) || !hour->digits ||
        !minute->digits || hour->value < 1000 || hour->value > 12 * 1000 ||
        hour->value % 1000 != 0 || minute->value >= 60 * 1000 ||
        strlen(items->tokens->list[minute->from].text) != 2 ||
        !(item_is(items, at + 2, ITEM_AM) || item_is(items, at + 2, ITEM_PM))) {
        return false;
    }
    clock_make(items, at, 2, hour->value / 1000 * 60 + minute->value / 1000);
    items->list[at].colon = true;
    return true;
}

/* "off at 7.30", "it is 6.15" */
bool
clock_with_dot(struct items *items, size_t at)
{
    const struct item *item = &items->list[at];
    const char *text = items->tokens->list[item->from].text, *dot = strchr(text, '.');
    int hour = item->value / 1000, minute = item->value % 1000 / 10;
    bool led = item_is(items, at - 1, ITEM_BY) || item_is(items, at - 1, ITEM_UNTIL) ||
               item_value(items, at - 1, ITEM_AT) == AT_AT || item_is(items, at - 1, ITEM_DEPART) ||
               item_is(items, at - 1, ITEM_NOW_IS) || item_is(items, at - 1, ITEM_SINCE) ||
               item_is(items, at - 1, ITEM_ARRIVE) || item_is(items, at - 1, ITEM_CLOCK_LEAD);

    if (!item_free_number(items, at) || !item->digits || dot == NULL || strlen(dot) != 3 ||
        hour < 1 || hour > 23 || minute > 59 || item->value != item->high ||
        !(led || tells_half_of_day(items, at + 1)) || item_is(items, at + 1, ITEM_UNIT)) {
        return false;
    }
    clock_make(items, at, 1, hour * 60 + minute);
    items->list[at].colon = true;
    return true;
}

/* "a las 20 horas" was made a length; "a las 27 horas" is no time that there is. */
bool
clock_of_hours(struct items *items, size_t at)
{
    const struct item *item = &items->list[at];

    if (!item_in(items, at, UNIT_MINUTE) || /* "las 18 horas con 10" */
        !(item->whole_hours || item->value >= 13 * 60) || item->value >= 2 * MINUTES_OF_DAY ||
        !token_is(items->tokens, item->from - (item->from > 0 ? 1 : 0), "las") ||
        !(item_is(items, at - 1, ITEM_CLOCK_LEAD) || item_is(items, at - 1, ITEM_BY) ||
          item_is(items, at - 1, ITEM_UNTIL)) ||
        item_is(items, at - 1, ITEM_AGO_LEAD) ||
        tokens_phrase_at(items->tokens, item->to, "que dura|que duran|que tarda|que falta") > 0 ||
        (token_among(items->tokens, item->to, " de que ") &&
         !token_among(items->tokens, item->from > 1 ? item->from - 2 : item->to,
                      " a para hasta desde antes como tipo "))) { /* "las 2 horas de camino" */
        return false;
    }
    clock_make(items, at, 1, item->value);
    items->list[at].ampm = true;
    return true;
}

/* "it's two, no, three batteries" */
bool
clock_is_count_taken_back(const struct items *items, size_t at)
{
    size_t next = at + 1;

    if (next >= items->count || items->list[next].is != ITEM_PAUSE ||
        !(item_is(items, next + 1, ITEM_CORRECT) || item_text(items, next + 1, "no"))) {
        return false;
    }
    next += 2;
    next += next < items->count && items->list[next].is == ITEM_PAUSE ? 1 : 0;
    return next < items->count && items->list[next].is == ITEM_NUMBER &&
           item_is(items, next + 1, ITEM_BATTERY);
}
