#include "corrections.h"

#include "amounts.h"
#include "bare_numbers.h"
#include "clocks.h"
#include "corrected.h"
#include "elapsed.h"

enum { REACH = 8 };

/* A number stands near behind, over words that carry nothing. */
static bool
leads_to_number(const struct items *items, size_t at)
{
    size_t i;

    for (i = at; i < items->count && i < at + 5; i++) {
        const struct item *item = &items->list[i];

        if (item->is == ITEM_NUMBER || item->is == ITEM_AMOUNT || item->is == ITEM_CLOCK) {
            return true;
        }
        if (item->is == ITEM_STOP ||
            (item_is(items, i, ITEM_WORD) &&
             !token_among(items->tokens, item->from, " better make rather mejor "))) {
            return false;
        }
    }
    return false;
}

/* "80 no 60": without a pause the no may be of either, and the lower holds. */
static bool
is_lower_charge(const struct items *items, size_t no, size_t next)
{
    const struct item *before = &items->list[no - 1];

    return item_is(items, no - 1, ITEM_LIGHT)
               ? no > 1 && items->list[next].value < items->list[no - 2].value
               : before->value > BIG_MIN * 1000 && items->list[next].value < before->value;
}

bool
corrections_no_between(const struct items *items, size_t at)
{
    size_t next = at + 1 + (item_is(items, at + 1, ITEM_AT) ? 1U : 0U);
    bool behind =
        at > 0 && (items->list[at - 1].is == ITEM_NUMBER || item_in(items, at - 1, UNIT_PERCENT) ||
                   item_is(items, at - 1, ITEM_LIGHT));

    return behind && item_text(items, at, "no") && items->list[at].to - items->list[at].from == 1 &&
           next < items->count && is_lower_charge(items, at, next) &&
           (items->list[next].is == ITEM_NUMBER || item_in(items, next, UNIT_PERCENT)) &&
           (clause_stops(items, next + 1) || item_is(items, next + 1, ITEM_AND) ||
            token_among(items->tokens, items->list[next].to, " how cuanto cuanta cuantas "));
}

/* "no, perdon", or a no of its own between pauses */
static bool
corrects(const struct items *items, size_t at)
{
    bool first =
        at > 0 && (items->list[at - 1].is == ITEM_PAUSE || items->list[at - 1].is == ITEM_STOP);
    bool denied = items_have_word(items, at, clause_end(items, at), " antes dije puse before ");
    bool alone =
        !denied && item_text(items, at, "no") && items->list[at].to - items->list[at].from == 1 &&
        ((first && !item_is(items, at + 1, ITEM_POWER) && leads_to_number(items, at + 1)) ||
         corrections_no_between(items, at));

    return alone || item_is(items, at, ITEM_CORRECT);
}

/* "I said 2 but it is 1", "dije 2 llenas pero es 1" */
static size_t
but_after_said(const struct items *items, size_t at)
{
    const struct tokens *tokens = items->tokens;
    size_t i;

    if (!token_among(tokens, items->list[at].from, " said dije told puse escribi wrote ")) {
        return 0;
    }
    for (i = at + 1; i < items->count && i < at + 2 * REACH; i++) {
        if (item_text(items, i, "but") || item_text(items, i, "pero")) {
            return i;
        }
    }
    return 0;
}

/* The "but" of "I said 7 but it is at 6". */
static bool
is_but_after_said(const struct items *items, size_t at)
{
    size_t i;

    for (i = 0; i < at && (item_text(items, at, "but") || item_text(items, at, "pero")); i++) {
        if (but_after_said(items, i) == at) {
            return true;
        }
    }
    return false;
}

size_t
corrections_from(const struct items *items)
{
    size_t from = 0, at, but;

    for (at = 0; at < items->count; at++) {
        if (corrects(items, at) &&
            (from == 0 || leads_to_number(items, at + 1) ||
             items_find(items, at, items->count, ITEM_FULL) < items->count)) {
            from = at;
        }
        but = but_after_said(items, at);
        from = but > 0 ? but : from;
    }
    return from;
}

bool
corrections_lead(const struct items *items, size_t at)
{
    size_t from = corrections_from(items), before = at;

    while (before > from + 1 &&
           (items->list[before - 1].is == ITEM_PAUSE || item_is(items, before - 1, ITEM_LINK) ||
            item_is(items, before - 1, ITEM_NOW_IS) || item_is(items, before - 1, ITEM_AT) ||
            item_is(items, before - 1, ITEM_HEDGE))) {
        before--;
    }
    return from > 0 && before == from + 1;
}

static bool
is_amount(const struct items *items, size_t at)
{
    return at < items->count && items->list[at].is == ITEM_AMOUNT &&
           items->list[at].unit != UNIT_OTHER;
}

/* The last amount before `at` that may be meant; items->count if there is none. */
static size_t
last_amount(const struct items *items, size_t at, bool spent)
{
    size_t i;

    for (i = at; i > 0 && at - i < REACH; i--) {
        if (is_amount(items, i - 1) && items->list[i - 1].spent == spent) {
            return i - 1;
        }
    }
    return items->count;
}

/* The first number or amount behind a correction. */
static size_t
first_quantity(const struct items *items, size_t at)
{
    size_t i;

    for (i = at; i < items->count && i < at + REACH; i++) {
        if (is_amount(items, i) || item_free_number(items, i)) {
            return i;
        }
    }
    return items->count;
}

static bool
stands_alone(const struct items *items, size_t at)
{
    return !item_is(items, at + 1, ITEM_BATTERY) && !item_is(items, at + 1, ITEM_FULL) &&
           !item_is(items, at + 1, ITEM_CHARGE) && !item_is(items, at + 1, ITEM_LIGHT) &&
           (!item_is(items, at + 1, ITEM_AT) || corrected_with_something(items, at)) &&
           !item_is(items, at + 1, ITEM_UNIT) && !item_is(items, at - 1, ITEM_SETTING) &&
           !item_is(items, at - 1, ITEM_MODE) && !item_is(items, at + 1, ITEM_AM) &&
           !item_is(items, at + 1, ITEM_PM) && item_value(items, at - 1, ITEM_AT) != AT_ON;
}

/* A bare number takes the unit of what it replaces: "6 hours, no wait, 7". */
static void
take_unit(struct items *items, size_t at, const struct item *of)
{
    struct item *number = &items->list[at];

    number->is = ITEM_AMOUNT;
    number->unit = of->unit;
    if (of->unit == UNIT_MINUTE) {
        bool hours = of->value >= 60 && of->high % 15 == 0;

        number->value = hours ? (number->value * 60 + 999) / 1000 : (number->value + 999) / 1000;
        number->high = number->value;
    }
}

/* The new length is told of the same as the old one: "half an hour ago, no, 35 minutes", "3 hours
 * in the van, sorry, 4 hours". */
static void
take_place(struct items *items, size_t old, size_t new)
{
    bool ends =
        item_in(items, new, UNIT_MINUTE) && clause_stops(items, new + 1) && !items->list[old].spent;

    if (item_is(items, old + 1, ITEM_AGO) || item_is(items, old - 1, ITEM_AGO_LEAD) || ends) {
        items->list[old].value = items->list[new].value;
        items->list[old].high = items->list[new].high;
        items->list[new].spent = true;
    } else {
        items->list[old].spent = true;
    }
}

static void
replace_amount(struct items *items, size_t correction, bool was_denied)
{
    size_t new = first_quantity(items, correction + 1);
    size_t old = last_amount(items, correction + 1, was_denied);

    if (new < items->count && !was_denied && corrected_way_back(items, correction, new)) {
        return;
    }
    if (new >= items->count || old >= items->count ||
        (was_denied && new > sentence_end(items, correction))) {
        return;
    }
    if (items->list[new].is == ITEM_NUMBER) {
        if (!stands_alone(items, new) || items->list[new].ordinal ||
            corrected_is_next_sentence(items, correction, new) ||
            (items->list[new].value > 12 * 1000 && corrected_is_charge(items, old, correction)) ||
            corrected_is_setting(items, old, correction, new)) {
            return;
        }
        take_unit(items, new, &items->list[old]);
    }
    if (items->list[new].unit == items->list[old].unit && items->list[new].unit != UNIT_PERCENT) {
        take_place(items, old, new);
    }
}

/* "half an hour ago. well 35 minutes really", "3 hours and some .. 3 and a half": told again, more
 * closely. */
static void
tell_more_closely(struct items *items, size_t at)
{
    struct item *length = &items->list[at];
    size_t next = at + 1, new;

    if (item_is(items, next, ITEM_AGO)) { /* "half an hour ago it was 70. well 35 minutes really" */
        next = sentence_end(items, at);
    }
    while (next < items->count &&
           (item_is(items, next, ITEM_AGO) || item_is(items, next, ITEM_SOMETHING) ||
            items->list[next].is == ITEM_STOP || items->list[next].is == ITEM_PAUSE)) {
        next++;
    }
    for (new = next; item_is(items, new, ITEM_LINK) || item_is(items, new, ITEM_HEDGE); new ++) {
    }
    if (!item_in(items, at, UNIT_MINUTE) || length->spent || next == at + 1 ||
        new == items->count) {
        return;
    }
    if (item_in(items, new, UNIT_MINUTE) && !items->list[new].spent &&
        token_among(items->tokens, items->list[next].from, " well bueno more rather ") &&
        token_among(items->tokens, items->list[new].to, " really actually now . creo ya mas ")) {
        take_place(items, at, new);
    } else if (item_free_number(items, new) && items->list[new].value % 1000 == 500 &&
               length->whole_hours && items->list[new].value * 60 / 1000 - length->value == 30 &&
               stands_alone(items, new) && items->list[at + 1].is != ITEM_STOP) {
        take_unit(items, new, length);
        length->spent = true;
    }
}

/* "ya es de 4", "its 4 now": hours, as what was */
static bool
is_bare_hours(const struct items *items, size_t at)
{
    return item_free_number(items, at) && !items->list[at].one && !items->list[at].ordinal &&
           items->list[at].value <= 24 * 1000 && stands_alone(items, at) && at > 0 &&
           token_among(items->tokens, items->list[at].from - 1, " es de its is son like como ");
}

/* "it was 2 h 20 but they rebooked me, now its 3 h 40": what was so, up to the same unit again. */
static void
replace_what_was(struct items *items, size_t at)
{
    size_t from = clause_start(items, at), i;
    bool was = false, but = false;

    for (i = from; i < at; i++) {
        was = was || (at - i <= 4 && item_is(items, i, ITEM_WAS)) ||
              token_among(items->tokens, items->list[i].from, " originally ");
    }
    if (!was || !is_amount(items, at) || items->list[at].spent ||
        items->list[at].unit == UNIT_PERCENT) {
        return;
    }
    for (i = at + 1; i < items->count && i < at + 3 * REACH; i++) {
        but = but || item_text(items, i, "but") || item_text(items, i, "pero") ||
              item_is(items, i, ITEM_NOW) || item_is(items, i, ITEM_NOW_IS);
        if (but && items->list[at].unit == UNIT_MINUTE && items->list[at].value >= 60 &&
            is_bare_hours(items, i)) {
            take_unit(items, i, &items->list[at]);
            items->list[at].spent = true;
            return;
        }
        if (is_amount(items, i) && items->list[i].unit == items->list[at].unit) {
            items->list[at].spent =
                items->list[at].spent ||
                (but && !item_is(items, i + 1, ITEM_AGO) && !item_is(items, at + 1, ITEM_AGO));
            return;
        }
    }
}

/* "4 hours but with stops more like 5 and a half": hours, and the longer */
static void
take_more_like(struct items *items, size_t at)
{
    struct item *length = &items->list[at];
    size_t next;
    int minutes;

    for (next = at + 1; next < items->count && next < at + REACH + 2 &&
                        items->list[next].is != ITEM_STOP && !item_is_duration(items, next);
         next++) {
        size_t first = items->list[next].from;

        minutes = items->list[next].value * 60 / 1000;
        if (item_free_number(items, next) && length->high >= 60 && minutes > length->high &&
            items->list[next].value <= 24 * 1000 && !item_is(items, next + 1, ITEM_BATTERY) &&
            !item_is(items, next + 1, ITEM_FULL) && !item_is(items, next + 1, ITEM_LIGHT) &&
            !item_is(items, next + 1, ITEM_UNIT) && first > 1 &&
            tokens_phrase_at(items->tokens, first - 2,
                             "more like|closer to|mas como|como unas|mas cerca") == 2) {
            length->value = length->high = minutes;
            items->list[next].spent = true;
            return;
        }
    }
}

/* "flight 2 h 30, maybe 3": hours, and the longer */
static void
take_maybe_longer(struct items *items, size_t at)
{
    struct item *length = &items->list[at];
    size_t next = at + 1;
    int minutes;

    next += next < items->count && items->list[next].is == ITEM_PAUSE ? 1 : 0;
    if (!token_among(items->tokens, next < items->count ? items->list[next].from : 0,
                     " maybe possibly perhaps quiza quizas or o ") ||
        !item_free_number(items, next + 1) || items->list[next + 1].one ||
        items->list[next + 1].value > 12 * 1000 || item_is(items, next + 2, ITEM_BATTERY) ||
        item_is(items, next + 2, ITEM_UNIT) || item_is(items, next + 2, ITEM_LIGHT) ||
        item_is(items, next + 2, ITEM_FULL)) {
        return;
    }
    minutes = items->list[next + 1].value * 60 / 1000;
    if (minutes > length->high && length->high >= 60) {
        length->value = length->high = minutes;
        items->list[next + 1].spent = true;
    }
}

/* "2 hours, lunch could take an hour": said of another thing than the length at `at`, whose own
 * noun may stand right behind it. */
static bool
is_of_other_thing(const struct items *items, size_t at, size_t could)
{
    static const char no_nouns[] = " but though although it that this which pero eso aunque que ";
    size_t i = at + 1;

    i +=
        item_is(items, i, ITEM_GOING) || (item_is(items, i, ITEM_WORD) && items->list[i].to < could)
            ? 1
            : 0;
    for (; i < items->count && items->list[i].from < could; i++) {
        if (item_is(items, i, ITEM_GOING) || item_is(items, i, ITEM_EVENT) ||
            (item_is(items, i, ITEM_WORD) &&
             !token_among(items->tokens, items->list[i].from, no_nouns))) {
            return true;
        }
    }
    return false;
}

/* "a 20 minute errand but could be an hour": the longer */
static void
keep_longer(struct items *items, size_t at)
{
    const struct tokens *tokens = items->tokens;
    size_t next, i;

    if (!item_in(items, at, UNIT_MINUTE) || items->list[at].spent) {
        return;
    }
    take_maybe_longer(items, at);
    take_more_like(items, at);
    for (next = at + 1; next < items->count && next < at + REACH + 2 &&
                        !item_in(items, next, UNIT_MINUTE) && items->list[next].is != ITEM_STOP;
         next++) {
    }
    if (!item_in(items, next, UNIT_MINUTE) || items->list[next].spent) {
        return;
    }
    for (i = items->list[at].to; i < items->list[next].from; i++) {
        if (token_among(tokens, i, " could might may podria pueden puede podrian ") &&
            token_among(tokens, i + 1, " be take run last go ser tomar durar llegar ")) {
            if (is_of_other_thing(items, at, i)) {
                return;
            }
            items->list[items->list[next].high >= items->list[at].high ? at : next].spent = true;
            return;
        }
    }
}

void
corrections_of_amounts(struct items *items)
{
    size_t at;

    elapsed_take_longer(items);
    for (at = 0; at < items->count; at++) {
        keep_longer(items, at);
        tell_more_closely(items, at);
    }

    for (at = 0; at < items->count; at++) {
        replace_what_was(items, at);
    }
    for (at = 0; at < items->count; at++) {
        bool was_denied = is_amount(items, at) && items->list[at].spent && at > 0 &&
                          (item_is(items, at - 1, ITEM_NOT) || item_is(items, at - 2, ITEM_NOT));

        if (corrects(items, at)) {
            replace_amount(items, at, false);
        } else if (was_denied) {
            replace_amount(items, at, true);
        }
    }
}

/* "5:30 not 6:30 am": the one that is so has the half of the day and the day of the other. */
static void
take_denied_clock(struct items *items, size_t at)
{
    struct item *clock = &items->list[at], *denied = clock + 2;

    if (at + 2 >= items->count || clock->is != ITEM_CLOCK || !item_is(items, at + 1, ITEM_NOT) ||
        denied->is != ITEM_CLOCK) {
        return;
    }
    denied->spent = true;
    if (!clock->ampm && denied->ampm) {
        clock->value = clock->value % (MINUTES_OF_DAY / 2) +
                       (denied->value >= MINUTES_OF_DAY / 2 ? MINUTES_OF_DAY / 2 : 0);
        clock->ampm = true;
    }
    clock->day = clock->day == NO_DAY ? denied->day : clock->day;
}

/* "6 on Monday, no, Tuesday": the day alone; `old`: behind the clock time that it is of */
static void
correct_day(struct items *items, size_t at, size_t old)
{
    size_t day = at + 1;

    while (item_is(items, day, ITEM_LINK) || item_is(items, day, ITEM_CORRECT) ||
           (day < items->count && items->list[day].is == ITEM_PAUSE)) {
        day++;
    }
    if (old > 0 && item_is(items, day, ITEM_DAY) && items->list[old - 1].day != NO_DAY &&
        at - old < REACH) {
        items->list[old - 1].day = item_value(items, day, ITEM_DAY);
    }
}

void
corrections_of_clocks(struct items *items)
{
    size_t at, new, old;

    for (at = 0; at < items->count; at++) {
        take_denied_clock(items, at);
    }

    for (at = 1; at + 1 < items->count; at++) {
        if (!corrects(items, at) && !is_but_after_said(items, at)) {
            continue;
        }
        for (new = at + 1; new < items->count &&new < at + REACH; new ++) {
            if (items->list[new].is == ITEM_CLOCK) {
                break;
            }
        }
        for (old = at; old > 0 && items->list[old - 1].is != ITEM_CLOCK; old--) {
        }
        correct_day(items, at, old);
        if (new >= items->count || items->list[new].is != ITEM_CLOCK || old == 0) {
            continue;
        }
        items->list[old - 1].spent = true;
        items->list[new].role = (int)clock_role(items, old - 1);
        if (items->list[new].day == NO_DAY) {
            items->list[new].day = items->list[old - 1].day;
        }
        if (!items->list[new].ampm && items->list[old - 1].ampm) {
            items->list[new].value =
                items->list[new].value % (MINUTES_OF_DAY / 2) +
                (items->list[old - 1].value >= MINUTES_OF_DAY / 2 ? MINUTES_OF_DAY / 2 : 0);
            items->list[new].ampm = true;
        }
    }
}
