#include "clocks.h"

#include <string.h>

#include "clock_parts.h"

enum { NOON_MINUTES = 12 * 60 };

/* ---- the time itself ---------------------------------------------------------------------------
 */

static bool
is_hour(const struct items *items, size_t at)
{
    const struct item *item = &items->list[at];

    return item_free_number(items, at) && item->value >= 1000 && item->value < 25 * 1000 &&
           !item->negative && !item->ordinal && !item->times && !item->fraction &&
           item->value == item->high && !clock_is_count_taken_back(items, at) &&
           (item->value % 1000 == 0 || item->value % 1000 == 500 || item->value % 1000 == 250);
}

static bool
is_minute(const struct items *items, size_t at)
{
    return item_free_number(items, at) && items->list[at].value < 60 * 1000 &&
           items->list[at].value % 1000 == 0 && !items->list[at].one;
}

/* Turns `count` items from `at` into a clock time. */
void
clock_make(struct items *items, size_t at, size_t count, int minutes)
{
    struct item clock = {.is = ITEM_CLOCK, .day = NO_DAY};

    clock.hedged = items->list[at].hedged;
    clock.cannot = minutes > MINUTES_OF_DAY;
    clock.value = minutes < 0 ? minutes + NOON_MINUTES : minutes % MINUTES_OF_DAY;
    clock.ampm = minutes >= 13 * 60;
    items_replace(items, at, count, clock);
}

static int
part_minutes(const struct items *items, size_t at)
{
    if (item_is(items, at, ITEM_HALF)) {
        return 30;
    }
    if (item_is(items, at, ITEM_QUARTER)) {
        return 15;
    }
    if (is_minute(items, at)) {
        return items->list[at].value / 1000;
    }
    if (item_in(items, at, UNIT_MINUTE) && items->list[at].value < 60) {
        return items->list[at].value;
    }
    return 0;
}

/* "twenty to nine" */
static bool
is_spelled_part(const struct item *item)
{
    return !item->digits && item->value % 5000 == 0 && item->value < 30 * 1000;
}

/* "quarter past 7", "ten to six", "cuarto para las 8" */
static bool
part_first(struct items *items, size_t at)
{
    int part = part_minutes(items, at);
    bool past = item_text(items, at + 1, "past") || item_text(items, at + 1, "after");
    bool before = item_is(items, at + 1, ITEM_TO_HOUR) && !past;

    if (part == 0 || !(past || before) ||
        (item_text(items, at + 1, "of") && !item_is(items, at, ITEM_QUARTER)) ||
        !is_hour(items, at + 2) || items->list[at + 2].value > 12 * 1000 ||
        items->list[at + 2].value % 1000 != 0 || item_is(items, at + 3, ITEM_UNIT) ||
        (before && (item_is(items, at - 1, ITEM_FROM) || item_is(items, at - 1, ITEM_BETWEEN))) ||
        item_is(items, at + 3, ITEM_BATTERY)) {
        return false;
    }
    if (before && items->list[at].is == ITEM_NUMBER && !item_is(items, at + 3, ITEM_AM) &&
        !item_is(items, at + 3, ITEM_PM) && !item_is(items, at + 3, ITEM_DAYPART) &&
        !item_is(items, at - 1, ITEM_CLOCK_LEAD) && !item_is(items, at - 1, ITEM_BY) &&
        !item_is(items, at - 1, ITEM_AT) && !item_is(items, at - 1, ITEM_UNTIL) &&
        !item_is(items, at - 1, ITEM_NOW_IS) && !item_text(items, at + 1, "para") &&
        !is_spelled_part(&items->list[at])) {
        return false; /* "from 10 to 12": a range */
    }
    clock_make(items, at, 3, items->list[at + 2].value / 1000 * 60 + (past ? part : -part));
    return true;
}

/* What behind a number says that it is no hour. */
static bool
counts_things(const struct items *items, size_t at)
{
    static const enum item_is things[] = {ITEM_BATTERY, ITEM_FULL,  ITEM_CHARGE, ITEM_LIGHT,
                                          ITEM_UNIT,    ITEM_OTHER, ITEM_MODE,   ITEM_HALF};
    size_t i;

    for (i = 0; i < sizeof things / sizeof things[0]; i++) {
        if (item_is(items, at, things[i]) &&
            !(things[i] == ITEM_OTHER && item_is(items, at, ITEM_LINK))) {
            return true;
        }
    }
    return item_is(items, at, ITEM_OF) &&
           (item_is(items, at + 1, ITEM_LIGHT) || item_free_number(items, at + 1));
}

/* "five minutes to noon" */
static bool
part_to_noon(struct items *items, size_t at)
{
    int part = part_minutes(items, at);
    bool past = item_text(items, at + 1, "past") || item_text(items, at + 1, "after");

    if (part == 0 || !(past || item_is(items, at + 1, ITEM_TO_HOUR)) ||
        item_text(items, at + 1, "of") || !item_is(items, at + 2, ITEM_NOON) ||
        (!past && (item_is(items, at - 1, ITEM_FROM) || item_is(items, at - 1, ITEM_BETWEEN)))) {
        return false;
    }
    part = item_value(items, at + 2, ITEM_NOON) + (past ? part : MINUTES_OF_DAY - part);
    clock_make(items, at, 3, part % MINUTES_OF_DAY);
    items->list[at].ampm = true;
    return true;
}

/* "set off at half seven": half past */
static bool
half_hour(struct items *items, size_t at)
{
    size_t from = clause_start(items, at);
    bool led = item_is(items, at - 1, ITEM_BY) || item_is(items, at - 1, ITEM_UNTIL) ||
               (item_value(items, at - 1, ITEM_AT) == AT_AT &&
                (clause_end(items, at) == at + 2 || items_find(items, from, at, ITEM_DEPART) < at ||
                 items_find(items, from, at, ITEM_ARRIVE) < at ||
                 items_find(items, from, at, ITEM_REMIND) < at));

    if (!led || !item_text(items, at, "half") || !item_is(items, at, ITEM_HALF) ||
        !is_hour(items, at + 1) || items->list[at + 1].value > 12 * 1000 ||
        items->list[at + 1].value % 1000 != 0 || counts_things(items, at + 2)) {
        return false;
    }
    clock_make(items, at, 2, items->list[at + 1].value / 1000 * 60 + 30);
    items->list[at].ampm = false;
    return true;
}

/* "put in a fresh battery at 2": no setting, which a battery has not */
static bool
is_change_of_battery(const struct items *items, size_t at)
{
    size_t from = clause_start(items, at);

    return items_have_word(items, from, at,
                           " swapped changed put popped clipped snapped loaded slid stuck ") &&
           (items_find(items, from, at, ITEM_BATTERY) < at ||
            items_find(items, from, at, ITEM_FULL) < at ||
            items_find(items, from, at, ITEM_OTHER) < at);
}

/* "at 8 it said 80, its 11:30 now", "on battery since 8, now its 11:30": what time it is now tells
 * that what it was then has an hour. */
static bool
is_before_now(const struct items *items, size_t at)
{
    size_t first = items->list[at].from, i;
    bool then = token_among(items->tokens, tokens_back(first, 1), " since desde ") ||
                (token_is(items->tokens, tokens_back(first, 1), "at") &&
                 (clause_start(items, at) + 1 == at || is_change_of_battery(items, at) ||
                  token_among(items->tokens, tokens_back(first, 2),
                              " started start began left unplugged ")));

    for (i = at + 1; then && i < items->count; i++) {
        if (items->list[i].is == ITEM_CLOCK &&
            (item_is(items, i - 1, ITEM_NOW_IS) || item_is(items, i - 1, ITEM_NOW) ||
             item_is(items, i + 1, ITEM_NOW))) {
            return true;
        }
    }
    return false;
}

/* What leads to a clock time even if only an hour is told. */
static bool
leads_to_hour(const struct items *items, size_t at)
{
    static const enum item_is leads[] = {ITEM_BY, ITEM_UNTIL, ITEM_CLOCK_LEAD};
    size_t i, before = at;

    while (item_is(items, before - 1, ITEM_HEDGE) && before > 0) {
        before--;
    }
    if (item_text(items, before - 1, "for") || item_text(items, before - 1, "to") ||
        item_text(items, before - 1, "through") ||
        (item_text(items, before - 1, "para") && !item_is(items, before - 1, ITEM_CLOCK_LEAD)) ||
        (items->list[at].one && !item_is(items, before - 1, ITEM_CLOCK_LEAD))) {
        return false;
    }
    if (item_text(items, before - 1, "las") || item_text(items, before - 1, "la")) {
        return false; /* "las 3 en cero": half a lead, see follows_hour() */
    }
    for (i = 0; i < sizeof leads / sizeof leads[0]; i++) {
        if (item_is(items, before - 1, leads[i])) {
            return items->list[at].value <= 12 * 1000 || leads[i] == ITEM_CLOCK_LEAD;
        }
    }
    if (item_is(items, before - 1, ITEM_NOW_IS) &&
        token_among(items->tokens, items->list[before - 1].to - 1, " las la ")) {
        return items->list[at].value <= 12 * 1000; /* "y son las 12 y 10" */
    }
    if (item_is(items, before - 1, ITEM_NOW_IS) &&
        items_find(items, 0, before, ITEM_CLOCK) < before) {
        return items->list[at].value <= 12 * 1000 && !item_is(items, at + 1, ITEM_BEHIND) &&
               !item_is(items, at + 1, ITEM_AHEAD); /* "left at 8:30 and now its 10" */
    }
    return (item_value(items, before - 1, ITEM_NOW_IS) == 1 || is_before_now(items, before)) &&
           items->list[at].value <= 12 * 1000;
}

/* "show starts 7" */
static bool
is_event_that_starts(const struct items *items, size_t at)
{
    return item_is(items, at, ITEM_EVENT) && items->list[at].to > items->list[at].from + 1;
}

static bool
tells_charge(const struct items *items, size_t at)
{
    return item_is(items, at, ITEM_FULL) || item_in(items, at, UNIT_PERCENT) ||
           (item_free_number(items, at) && items->list[at].value > 12 * 1000);
}

static size_t
back_over_battery(const struct items *items, size_t at)
{
    return item_is(items, at, ITEM_BATTERY) ? at - 1 : at;
}

/* "leave 7, home 6", "out at 8, back at 5": one leaves before in the sentence. */
static bool
is_return_hour(const struct items *items, size_t at)
{
    size_t from = sentence_start(items, at);

    return (item_is(items, at - 1, ITEM_ARRIVE) || item_is(items, at - 1, ITEM_HOMEWARD)) &&
           !item_is(items, at - 1, ITEM_DEPART) && items_find(items, from, at, ITEM_CLOCK) < at &&
           items_find(items, from, at, ITEM_DEPART) < at;
}

/* "at 6" is a clock time where someone leaves, arrives, unplugs or wants to be told. */
static bool
at_some_hour(const struct items *items, size_t at)
{
    static const enum item_is acts[] = {ITEM_DEPART, ITEM_ARRIVE,    ITEM_EVENT,
                                        ITEM_REMIND, ITEM_THEN_LEFT, ITEM_DAY};
    size_t from, i, j;

    if (!item_is(items, at - 1, ITEM_AT) && !item_is(items, at - 1, ITEM_SINCE) &&
        !(item_is(items, at - 1, ITEM_ARRIVE) && /* "left home at 8" */
          token_is(items->tokens, items->list[at].from - 1, "at")) &&
        !is_return_hour(items, at) && !item_is(items, at - 1, ITEM_DEPART) &&
        !item_text(items, at - 1, "left") && !is_event_that_starts(items, at - 1) &&
        !item_is(items, at - 1, ITEM_HEDGE)) {
        return false;
    }
    if (is_return_hour(items, at)) {
        return items->list[at].value <= 12 * 1000;
    }
    if (item_value(items, at - 1, ITEM_AT) == AT_ON ||
        item_value(items, at - 1, ITEM_AT) == AT_IN) {
        return false;
    }
    if (items->list[at].value > 12 * 1000 || item_text(items, at - 1, "set") ||
        item_text(items, at - 1, "setting") ||
        token_is(items->tokens, items->list[at].from - 1, "to")) {
        return false; /* "set to 2" */
    }
    if (item_is(items, at - 1, ITEM_SINCE) || tells_half_of_day(items, at - 2)) {
        return true; /* "in the evening at 8" */
    }
    from = clause_start(items, at);
    if (item_value(items, at - 1, ITEM_AT) == AT_ON && item_text(items, at - 1, "back") &&
        items_any(items, ITEM_SETTING)) {
        return false; /* "turned it to 3, now back at 4" */
    }
    if (items_find(items, from, at, ITEM_WAS) < at && tells_charge(items, at - 2)) {
        return true; /* "had 100 at 9" */
    }
    if (item_is(items, back_over_battery(items, at - 2), ITEM_FULL) &&
        lexicon_cue(items->tokens, CUE_CHARGING)) {
        return item_value(items, at - 1, ITEM_AT) == AT_AT; /* "I need it full at 7" */
    }
    from = at > from + 5 ? at - 5 : from;
    for (i = from; i < at; i++) {
        if (item_value(items, i, ITEM_POWER) > POWER_WORD_BATTERY) {
            return true;
        }
        for (j = 0; j < sizeof acts / sizeof acts[0]; j++) {
            if (item_is(items, i, acts[j])) {
                return true;
            }
        }
    }
    return false;
}

/* What behind a number makes it an hour: "6 am", "6 tomorrow morning", "11 oclock", "6ish tonight"
 */
static bool
follows_hour(const struct items *items, size_t at)
{
    if (item_value(items, at, ITEM_DAYPART) == DAYPART_NIGHT &&
        items->list[at - 1].is == ITEM_NUMBER && items->list[at - 1].value <= 5 * 1000 &&
        !item_is(items, at - 2, ITEM_CLOCK_LEAD) &&
        items_have_word(items, 0, items->count, " day daytime dia ")) {
        return false; /* "on 2 during the day, 3 at night" */
    }
    return tells_half_of_day(items, at) || item_is(items, at, ITEM_OCLOCK) ||
           (item_is(items, at, ITEM_DAY) && tells_half_of_day(items, at + 1)) ||
           (item_is(items, at, ITEM_DAY) && item_is(items, at - 2, ITEM_BY));
}

/* How many items after the hour tell its minutes: "5 y media", "8 menos cuarto", "seven thirty". */
static size_t
minutes_after_hour(const struct items *items, size_t at, int *minutes)
{
    bool less = item_is(items, at, ITEM_LESS);
    bool past = item_is(items, at, ITEM_PAST) && !item_text(items, at, "past") &&
                !item_text(items, at, "after");

    if (items->list[at - 1].value % 1000 == 0 && (less || past) &&
        part_minutes(items, at + 1) > 0 && !counts_things(items, at + 2)) {
        *minutes = less ? -part_minutes(items, at + 1) : part_minutes(items, at + 1);
        return 2;
    }
    if (is_minute(items, at) && items->list[at].value >= 10 * 1000 && !items->list[at].digits &&
        !items->list[at - 1].digits && !counts_things(items, at + 1)) {
        *minutes = items->list[at].value / 1000;
        return 1;
    }
    return 0;
}

/* "a las 27": no hour that there is */
static bool
is_beyond_day(const struct items *items, size_t at)
{
    return item_free_number(items, at) && items->list[at].value >= 25 * 1000 &&
           items->list[at].value < 60 * 1000 && items->list[at].value % 1000 == 0 &&
           items->list[at].value == items->list[at].high &&
           item_is(items, at - 1, ITEM_CLOCK_LEAD) &&
           token_is(items->tokens, items->list[at].from - 1, "las") &&
           token_is(items->tokens, tokens_back(items->list[at].from, 2), "a") &&
           !counts_things(items, at + 1);
}

static bool
hour_first(struct items *items, size_t at)
{
    size_t next = at + 1, more;
    int minutes = 0;
    bool led, sure;

    if (!is_hour(items, at)) {
        if (is_beyond_day(items, at)) {
            clock_make(items, at, 1, items->list[at].value / 1000 * 60);
            return true;
        }
        return false;
    }
    if (item_is(items, next, ITEM_HEDGE_AFTER)) {
        items->list[at].hedged = true;
        next++;
    }
    led = leads_to_hour(items, at) || at_some_hour(items, at);
    more = minutes_after_hour(items, next, &minutes);
    led = led || (items->list[at].one && more > 0 &&
                  (item_is(items, at - 1, ITEM_BY) || item_is(items, at - 1, ITEM_UNTIL) ||
                   item_is(items, at - 1, ITEM_ARRIVE) || item_is(items, at - 1, ITEM_DEPART) ||
                   item_value(items, at - 1, ITEM_AT) == AT_AT)); /* "home by one thirty" */
    next += more;
    sure =
        follows_hour(items, next) ||
        (item_is(items, next, ITEM_NOW) &&
         (more > 0 || item_is(items, at - 1, ITEM_NOW_IS) || item_is(items, at - 1, ITEM_LINK)) &&
         !item_is(items, at - 1, ITEM_SHOWS));
    if (!sure && item_is(items, at - 1, ITEM_CLOCK_LEAD) && more > 0) {
        sure = true; /* "las 4 y cuarto" */
    }
    sure = sure || (item_text(items, at - 1, "a") && item_is(items, at - 1, ITEM_CLOCK_LEAD) &&
                    (item_is(items, next, ITEM_CHARGE) || item_is(items, next, ITEM_FULL)));
    sure = sure || (item_is(items, next, ITEM_FULL) && item_is(items, at - 2, ITEM_THEN_LEFT) &&
                    item_text(items, at - 1, "at")); /* "unplugged at 9 full" */
    if (!sure && (!led || counts_things(items, next))) {
        return false;
    }
    if (items->list[at].value % 1000 != 0) {
        minutes = items->list[at].value % 1000 * 60 / 1000; /* "5 y media" was made 5.5 */
    }
    clock_make(items, at, next - at, items->list[at].value / 1000 * 60 + minutes);
    return true;
}

/* "from 6 to 9 pm", "6-9 pm": the first is of the same half of the day, or the one before it. */
static void
first_of_two(struct items *items, size_t at)
{
    const struct item *last = at + 2 < items->count ? &items->list[at + 2] : NULL;
    int minutes;

    if (last != NULL && last->is == ITEM_CLOCK && !last->ampm && last->colon &&
        is_hour(items, at) && items->list[at].value <= 12 * 1000 &&
        item_is(items, at + 1, ITEM_TO) &&
        (item_is(items, at - 1, ITEM_GOING) || item_is(items, at - 1, ITEM_EVENT) ||
         item_is(items, at - 1, ITEM_FROM) || item_is(items, at - 1, ITEM_BETWEEN))) {
        clock_make(items, at, 1, items->list[at].value * 60 / 1000);
        return; /* "zoo 10 to 2:30" */
    }
    if (last == NULL || last->is != ITEM_CLOCK || !last->ampm || !is_hour(items, at) ||
        items->list[at].value > 12 * 1000 || !item_is(items, at + 1, ITEM_TO) ||
        !(item_is(items, at - 1, ITEM_BETWEEN) || item_is(items, at - 1, ITEM_FROM) ||
          item_text(items, at + 1, "-"))) {
        return;
    }
    minutes = items->list[at].value * 60 / 1000 % NOON_MINUTES;
    minutes +=
        last->value >= NOON_MINUTES && minutes < last->value - NOON_MINUTES ? NOON_MINUTES : 0;
    clock_make(items, at, 1, minutes);
    items->list[at].ampm = true;
}

/* "the bus tour 9 to 4", "at the fair, 10 to 4": no range, for it falls; no setting that is turned
 * down. */
static bool
goes_round_noon(const struct items *items, size_t at)
{
    size_t from = sentence_start(items, at), to = sentence_end(items, at);

    return items->list[at].value > items->list[at + 2].value && !items->list[at].one &&
           !item_text(items, at + 1, "o") && !item_text(items, at + 1, "or") &&
           items_find(items, from, at + 2, ITEM_SETTING) > at &&
           items_find(items, from, to, ITEM_LIGHT) == to &&
           !items_have_word(items, from, at,
                            " turned turn went dropped down baje bajo setting lights liters ") &&
           (lexicon_cue(items->tokens, CUE_TRIP) || items_find(items, from, at, ITEM_GOING) < at ||
            items_find(items, from, at, ITEM_EVENT) < at ||
            (items->list[at].value >= 7 * 1000 &&
             (item_is(items, at - 1, ITEM_FROM) || item_is(items, at - 1, ITEM_BETWEEN))));
}

/* "gone 9 to 4", "out from 10 to 3": two hours whose half of the day is not told. */
static bool
hours_away(struct items *items, size_t at)
{
    size_t before =
        at - (item_is(items, at - 1, ITEM_FROM) || item_is(items, at - 1, ITEM_BETWEEN));

    bool to = item_is(items, at + 1, ITEM_TO) ||
              (item_is(items, at + 1, ITEM_UNTIL) && before < at); /* "from 10 till 3" */

    if (at == 0 || !is_hour(items, at) || !to || !is_hour(items, at + 2) ||
        items->list[at].value > 12 * 1000 || items->list[at + 2].value > 12 * 1000 ||
        counts_things(items, at + 3) ||
        !(item_is(items, before - 1, ITEM_GOING) || goes_round_noon(items, at))) {
        return false;
    }
    clock_make(items, at + 2, 1, items->list[at + 2].value * 60 / 1000);
    clock_make(items, at, 1, items->list[at].value * 60 / 1000);
    return true;
}

static bool
is_twelve(const struct items *items, size_t at)
{
    return at < items->count && (item_free_number(items, at)
                                     ? items->list[at].value == 12 * 1000
                                     : items->list[at].is == ITEM_CLOCK && !items->list[at].ampm &&
                                           items->list[at].value % NOON_MINUTES == 0);
}

void
clocks_make(struct items *items)
{
    size_t at;

    for (at = 0; at < items->count; at++) {
        if (item_is(items, at, ITEM_NOON) && is_twelve(items, at - 1)) {
            at--; /* "las 12 del mediodia" */
            clock_make(items, at, 2, NOON_MINUTES);
            items->list[at].ampm = true;
        } else if (item_is(items, at, ITEM_NOON)) {
            clock_make(items, at, 1, item_value(items, at, ITEM_NOON));
            items->list[at].ampm = true;
        } else if (items->list[at].is == ITEM_CLOCK) {
            if (clock_is_length(items, at)) {
                clock_make_length(items, at);
            }
        } else if (!clock_of_four_digits(items, at) && !clock_of_two_numbers(items, at) &&
                   !clock_with_dot(items, at) && !clock_of_hours(items, at) &&
                   !hours_away(items, at) && !part_first(items, at) && !part_to_noon(items, at) &&
                   !half_hour(items, at)) {
            (void)hour_first(items, at);
        }
    }
    for (at = 0; at < items->count; at++) {
        if (items->list[at].is == ITEM_CLOCK) {
            clock_complete(items, at);
        }
    }
    for (at = 0; at < items->count; at++) {
        first_of_two(items, at);
    }
}
