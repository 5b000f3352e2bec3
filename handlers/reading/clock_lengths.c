/* What is written as a clock time and is a length: see clock_parts.h. */
#include "clock_parts.h"
#include "clocks.h"
#include "told.h"

enum { FIGURE_REACH = 6 };

/* "the 4:30 flight takes 3 hours", "is 3 hours", "3 hours gate to gate": its length is told. */
static bool
has_other_length(const struct items *items, size_t at)
{
    size_t to = sentence_end(items, at), i;

    for (i = at + 1; i < to; i++) {
        if (item_in(items, i, UNIT_MINUTE) && !items->list[i].spent &&
            (item_is(items, i - 1, ITEM_LASTS) || item_is(items, i + 1, ITEM_GATE) ||
             item_is(items, i + 1, ITEM_AIR) ||
             token_among(items->tokens, items->list[i].from - 1, " is takes lasts "))) {
            return true;
        }
    }
    return false;
}

/* "a 2:45 flight", and "the 2:45 flight" if it has no other length */
static bool
is_length_of_flight(const struct items *items, size_t at)
{
    size_t from = items->list[at].from;

    return from > 0 && item_is(items, at + 1, ITEM_GOING) &&
           !(token_among(items->tokens, from - 1, " the my our this ") &&
             token_among(items->tokens, items->list[at].to,
                         " bus train shuttle ferry boat van coach taxi cab ride ")) &&
           (token_among(items->tokens, from - 1, " a an un una ") ||
            (token_among(items->tokens, from - 1, " the my our this ") &&
             !has_other_length(items, at)));
}

static const char nth[] = " first second third primer primero segundo tercer tercero ";

/* "first flight 1:45", "el primer vuelo 1:10" */
static bool
is_one_of_flights(const struct items *items, size_t at)
{
    return item_value(items, at, ITEM_GOING) == LEG_FLIGHT && at > 0 &&
           (item_is(items, at - 1, ITEM_ORDINAL) || items->list[at - 1].ordinal ||
            token_among(items->tokens, items->list[at].from - 1, nth));
}

/* "flights", "legs"; or a first and a second one, of which no hour is told, nor when they leave */
static bool
tells_several_flights(const struct items *items)
{
    bool first = false, second = false;
    size_t i;

    if (tokens_have(items->tokens, "flights|vuelos|flites|legs|tramos|hops")) {
        return true;
    }
    for (i = 0; i < items->tokens->count; i++) {
        first = first || token_among(items->tokens, i, " first primer primero ");
        second = second || token_among(items->tokens, i, " second segundo ");
    }
    return first && second && !items_any(items, ITEM_DEPART) && !items_any(items, ITEM_ARRIVE) &&
           !items_any(items, ITEM_AM) && !items_any(items, ITEM_PM);
}

/* "two flights: the first is 1:25, the second 3:05" */
static bool
is_of_nth_flight(const struct items *items, size_t at)
{
    size_t before = at;

    while (before > 0 &&
           (item_is(items, before - 1, ITEM_LINK) || item_is(items, before - 1, ITEM_HEDGE) ||
            item_is(items, before - 1, ITEM_OF) || item_text(items, before - 1, "one") ||
            item_text(items, before - 1, "uno"))) {
        before--;
    }
    return before > 0 &&
           (item_is(items, before - 1, ITEM_ORDINAL) || items->list[before - 1].ordinal ||
            token_among(items->tokens, items->list[before - 1].to - 1, nth) ||
            is_one_of_flights(items, before - 1)) &&
           tells_several_flights(items);
}

/* "gate to gate they said 3:40": nothing between that a clock time is of. */
static bool
is_told_as_figure(const struct items *items, size_t at)
{
    size_t from = clause_start(items, at), i;

    for (i = at; i > from && at - i < FIGURE_REACH; i--) {
        if (item_value(items, i - 1, ITEM_GATE) == 0 || item_is(items, i - 1, ITEM_AIR)) {
            return true;
        }
        if (items->list[i - 1].is == ITEM_AMOUNT || items->list[i - 1].is == ITEM_CLOCK ||
            item_is(items, i - 1, ITEM_DEPART) || item_is(items, i - 1, ITEM_ARRIVE)) {
            return false;
        }
    }
    return false;
}

/* "leaves 14:00 and gets in 15:10 per the ticket": a time of the day, whoever printed it. */
static bool
is_of_airlines_times(const struct items *items, size_t at)
{
    size_t before = at;

    while (before > 0 &&
           (item_is(items, before - 1, ITEM_LINK) || item_is(items, before - 1, ITEM_AT) ||
            item_is(items, before - 1, ITEM_CLOCK_LEAD))) {
        before--;
    }
    return item_value(items, at + 1, ITEM_GATE) == 1 &&
           (item_is(items, before - 1, ITEM_ARRIVE) || item_is(items, before - 1, ITEM_DEPART));
}

/* "a 2:45 flight", "un vuelo de 2:45": a length. */
bool
clock_is_length(const struct items *items, size_t at)
{
    bool unit = item_is(items, at + 1, ITEM_UNIT) &&
                (enum unit)item_value(items, at + 1, ITEM_UNIT) == UNIT_HOUR;
    size_t before = at;

    if (!items->list[at].colon || items->list[at].value >= 20 * 60) {
        return false;
    }
    if (item_value(items, at - 1, ITEM_GATE) == 2 || item_value(items, at + 1, ITEM_GATE) == 2) {
        return false; /* "leaves the gate 8:10" */
    }
    if (is_of_airlines_times(items, at)) {
        return false;
    }
    if (unit || item_is(items, at - 1, ITEM_LASTS) || item_is(items, at + 1, ITEM_GATE) ||
        item_is(items, at + 1, ITEM_AIR) || item_is(items, at + 1, ITEM_DOOR) ||
        item_text(items, at + 1, "long") || item_value(items, at - 1, ITEM_GATE) == 0 ||
        is_length_of_flight(items, at)) {
        return true;
    }
    if (tells_half_of_day(items, at + 1) || item_is(items, at - 1, ITEM_CLOCK_LEAD) ||
        item_value(items, at - 1, ITEM_AT) == AT_AT) {
        return false;
    }
    if (!item_is(items, at - 1, ITEM_DEPART) &&
        (item_is(items, at + 1, ITEM_AND) ||
         (at + 1 < items->count && items->list[at + 1].is == ITEM_PAUSE)) &&
        at + 2 < items->count && items->list[at + 2].is == ITEM_CLOCK &&
        clock_is_length(items, at + 2)) {
        return true; /* "1:30 and 2:15 gate to gate" */
    }
    if (!item_is(items, at - 1, ITEM_DEPART) && lexicon_cue(items->tokens, CUE_FLIGHT) &&
        (item_is(items, at + 1, ITEM_AND) ||
         (at + 1 < items->count && items->list[at + 1].is == ITEM_PAUSE)) &&
        (at > 0 && (items->list[at - 1].is == ITEM_PAUSE || item_is(items, at - 1, ITEM_AND))) &&
        item_in(items, at + 2, UNIT_MINUTE)) {
        return true; /* "legs: 1:10, 2:30 and 55 min" */
    }
    if (is_told_as_figure(items, at) || is_of_nth_flight(items, at)) {
        return true;
    }
    while (before > 0 &&
           (item_is(items, before - 1, ITEM_LINK) || item_is(items, before - 1, ITEM_HEDGE) ||
            item_is(items, before - 1, ITEM_OF))) {
        before--;
    }
    return (item_is(items, before - 1, ITEM_GOING) || item_is(items, before - 1, ITEM_AIR) ||
            item_is(items, before - 1, ITEM_GATE)) &&
           !item_is(items, before - 1, ITEM_DEPART) &&
           (before < at || item_is(items, before - 1, ITEM_GATE) ||
            is_one_of_flights(items, before - 1) ||
            token_is(items->tokens, items->list[at].from - 1, "time"));
}

void
clock_make_length(struct items *items, size_t at)
{
    size_t count = item_is(items, at + 1, ITEM_UNIT) ? 2 : 1;
    struct item length = {.is = ITEM_AMOUNT, .unit = UNIT_MINUTE, .day = NO_DAY};

    length.value = length.high = items->list[at].value;
    items_replace(items, at, count, length);
}
