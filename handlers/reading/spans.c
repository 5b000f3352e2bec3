#include "spans.h"

#include "amounts.h"
#include "charges.h"
#include "clock_chain.h"
#include "clocks.h"
#include "legs.h"
#include "span_bare.h"

/* No flight is longer. */
enum { MM_OF_MILE = 1609344, MM_OF_KM = 1000000, FLIGHT_MAX = 19 * 60 };

static void
add_span(struct spans *spans, size_t at, int minutes)
{
    if (spans->count < TOLD_LEGS_MAX && minutes > 0) {
        spans->list[spans->count++] = (struct span){.at = at, .minutes = minutes};
    }
}

/* ---- distances
 * ------------------------------------------------------------------------------------- */

static bool
is_distance(const struct items *items, size_t at)
{
    return (item_in(items, at, UNIT_MILE) || item_in(items, at, UNIT_KM)) && !items->list[at].spent;
}

static bool
is_speed(const struct items *items, size_t at)
{
    return (item_in(items, at, UNIT_MPH) || item_in(items, at, UNIT_KMH)) &&
           !items->list[at].spent && items->list[at].value > 0;
}

static long long
in_millimetres(const struct item *item, int value)
{
    bool miles = item->unit == UNIT_MILE || item->unit == UNIT_MPH;

    return (long long)value * (miles ? MM_OF_MILE : MM_OF_KM);
}

/* "180 miles and we average 60": a speed, in what the distance is told in. */
static bool
is_bare_speed(const struct items *items, size_t at)
{
    static const char leads[] = " average averaging averages doing promedio ";
    size_t before = at < items->count ? items->list[at].from : 0;

    while (before > 0 &&
           token_among(items->tokens, before - 1, " about around maybe de a unos como only at ")) {
        before--;
    }
    return item_free_number(items, at) && items->list[at].value >= 15 * 1000 &&
           items->list[at].value <= 130 * 1000 && before > 0 &&
           token_among(items->tokens, before - 1, leads) && !item_is(items, at + 1, ITEM_UNIT);
}

static void
make_bare_speeds(struct items *items)
{
    size_t at, way;

    for (at = 0; at < items->count; at++) {
        for (way = at; way > 0 && !is_distance(items, way - 1); way--) {
        }
        if (way > 0 && is_bare_speed(items, at)) {
            items->list[at].is = ITEM_AMOUNT;
            items->list[at].unit = items->list[way - 1].unit == UNIT_MILE ? UNIT_MPH : UNIT_KMH;
        }
    }
}

/* Minutes of a distance by the next speed, or the one before; 0 if there is none. */
static int
minutes_by_speed(struct items *items, size_t at, size_t *speed)
{
    long long way, pace;
    size_t i;

    *speed = items->count;
    for (i = at + 1; i < items->count && *speed == items->count; i++) {
        *speed = is_speed(items, i) ? i : *speed;
        if (is_distance(items, i)) {
            break;
        }
    }
    for (i = at; i > 0 && *speed == items->count; i--) {
        *speed = is_speed(items, i - 1) ? i - 1 : *speed;
    }
    if (*speed == items->count) {
        return 0;
    }
    way = in_millimetres(&items->list[at], items->list[at].high) * 60;
    pace = in_millimetres(&items->list[*speed], items->list[*speed].value);
    way = (way + pace - 1) / pace;
    return way > 14 * MINUTES_OF_DAY ? 14 * MINUTES_OF_DAY : (int)way;
}

/* ---- ways by the clock
 * ------------------------------------------------------------------------------ */

static size_t
next_clock(const struct items *items, size_t from)
{
    while (from < items->count && (items->list[from].is != ITEM_CLOCK || items->list[from].spent)) {
        from++;
    }
    return from;
}

static bool
ends_way(const struct items *items, size_t at)
{
    enum clock_role role = clock_role(items, at);
    size_t from = clause_start(items, at);

    return role == CLOCK_ARRIVE || role == CLOCK_UNTIL || item_is(items, at - 1, ITEM_TO) ||
           items_find(items, from, at, ITEM_ARRIVE) < at ||
           items_find(items, from, at, ITEM_HOMEWARD) < at ||
           item_is(items, at + 1 + (tells_half_of_day(items, at + 1) ? 1U : 0U), ITEM_HOMEWARD);
}

/* "3 hours gate to gate": the flight has its length. */
static bool
has_figure(const struct items *items)
{
    size_t at;

    for (at = 0; at < items->count; at++) {
        if (item_is_duration(items, at) && !items->list[at].spent &&
            (item_value(items, at + 1, ITEM_GATE) == 0 || item_is(items, at + 1, ITEM_AIR))) {
            return true;
        }
    }
    return false;
}

/* Two clock times, the first a start and the second an end. */
static bool
way_by_clock(const struct items *items, bool flies, size_t *from, size_t *to)
{
    enum clock_role role;

    *from = next_clock(items, 0);
    *to = next_clock(items, *from + 1);
    if (*to >= items->count) {
        return false;
    }
    role = clock_role(items, *from);
    if (role == CLOCK_ARRIVE && clock_role(items, *to) == CLOCK_DEPART) {
        size_t end = *from; /* "lands at 4, leaves at noon" */

        *from = *to;
        *to = end;
        return true;
    }
    if (flies && role == CLOCK_DEPART && clock_role(items, *to) == CLOCK_DEPART) {
        return false; /* "the first leaves at 1, the second at 5": when they land is not told */
    }
    if (flies && role == CLOCK_ARRIVE && has_figure(items)) {
        return false; /* "at the airport at 9, flight at 11, 3 hours gate to gate" */
    }
    if (flies && next_clock(items, *to + 1) == items->count && role != CLOCK_NOW &&
        role != CLOCK_BY && clock_role(items, *to) != CLOCK_NOW) {
        return true; /* a flight is told by its two times */
    }
    if (role == CLOCK_OF_NOTHING && clock_role(items, *to) == CLOCK_ARRIVE &&
        items_find(items, clause_start(items, *from), *from, ITEM_GOING) < *from) {
        return true; /* "ferry at 8 am, returns 5 pm" */
    }
    return (role == CLOCK_DEPART || role == CLOCK_THEN ||
            ((role == CLOCK_OF_NOTHING || role == CLOCK_EVENT) &&
             clause_start(items, *from) == clause_start(items, *to))) &&
           ends_way(items, *to);
}

/* "una hora menos": the unit is part of the phrase. */
static int
counts_hours_apart(const struct items *items, size_t at)
{
    bool article = item_is(items, at, ITEM_ARTICLE);
    int hours = article ? 1 : at < items->count ? items->list[at].value / 1000 : 0;

    if (!(item_free_number(items, at) || article) || at + 1 >= items->count ||
        !token_among(items->tokens, items->list[at + 1].from, " hora horas hour hours ")) {
        return 0;
    }
    if (item_is(items, at + 1, ITEM_BEHIND)) {
        return hours;
    }
    return item_is(items, at + 1, ITEM_AHEAD) ? -hours : 0;
}

static bool
is_told_of_there(const struct items *items)
{
    return tokens_have(items->tokens,
                       "mas que aqui|menos que aqui|mas que aca|menos que aca|alla es|"
                       "alla son|alli es|alli son|mas alla|menos alla");
}

/* Hours that the clocks at the end are behind (+) or ahead (-) of ours. */
static int
zone_minutes(struct items *items)
{
    size_t at, next;

    for (at = 0; at < items->count; at++) {
        int hours = counts_hours_apart(items, at);

        if (hours != 0) {
            items_spend(items, at, 1);
            return hours * 60;
        }
        if (!item_is_duration(items, at) || items->list[at].spent) {
            continue;
        }
        if (tokens_phrase_at(items->tokens, items->list[at].to,
                             "time change|time difference|de diferencia") > 0) {
            bool ahead = items_have_word(items, at, clause_end(items, at),
                                         " forward ahead later adelante adelantados mas ");

            items_spend(items, at, 1); /* which way is not told: the longer */
            return ahead ? -items->list[at].value : items->list[at].value;
        }
        if (token_among(items->tokens, items->list[at].from - (at > 0), " gain gains gaining ")) {
            items_spend(items, at, 1);
            return items->list[at].value;
        }
        if (token_among(items->tokens, items->list[at].from - (at > 0), " lose loses losing ")) {
            items_spend(items, at, 1);
            return -items->list[at].value;
        }
        if (is_told_of_there(items) &&
            token_among(items->tokens, items->list[at].to - 1, " mas menos ")) {
            items_spend(items, at, 1); /* "alla es dos horas mas que aqui" */
            return token_is(items->tokens, items->list[at].to - 1, "mas") ? -items->list[at].value
                                                                          : items->list[at].value;
        }
        for (next = at + 1; next < at + 4; next++) {
            bool behind = item_is(items, next, ITEM_BEHIND),
                 ahead = item_is(items, next, ITEM_AHEAD);

            if (behind || ahead) {
                items_spend(items, at, 1);
                return behind ? items->list[at].value : -items->list[at].value;
            }
            if (!item_is(items, next, ITEM_LINK)) {
                break;
            }
        }
    }
    return 0;
}

static int
minutes_between(const struct item *from, const struct item *to)
{
    int minutes = to->value - from->value;
    int round = from->ampm && to->ampm ? MINUTES_OF_DAY : MINUTES_OF_DAY / 2;

    return (minutes % round + round) % round;
}

/* "leave at 7, two hours by car, there at 9" */
static bool
is_told_as_length(const struct items *items, int minutes)
{
    size_t at;

    for (at = 0; at < items->count; at++) {
        if (item_is_duration(items, at) && !items->list[at].spent &&
            duration_minutes(items, at) == minutes) {
            return true;
        }
    }
    return false;
}

static void
read_clock_way(struct items *items, struct told *told, struct spans *spans)
{
    size_t from, to;
    int minutes, zone;

    if (!way_by_clock(items, told->kind == TOLD_FLIGHT, &from, &to)) {
        return;
    }
    zone = told->kind == TOLD_FLIGHT ? zone_minutes(items) : 0;
    minutes = minutes_between(&items->list[from], &items->list[to]) + zone;
    if (told->kind == TOLD_FLIGHT && minutes > FLIGHT_MAX) {
        told->impossible = true; /* it lands before it has left */
        told->impossible_what = items_words(items, from, to > from ? to + 1 - from : 1);
        told->missing |= MISSING_FLIGHT_MINUTES;
        items_spend(items, from, 1);
        items_spend(items, to, 1);
        return;
    }
    if (minutes <= 0) {
        return;
    }
    if (told->kind == TOLD_TRIP && items->list[from].ampm) {
        told->has_ready_by = true;
        told->ready_by = items->list[from].value;
        told->has_day = items->list[from].day != NO_DAY;
        told->day = told->has_day ? (enum told_day)items->list[from].day : DAY_TODAY;
        told->missing &= ~(unsigned)MISSING_AM_PM;
    }
    items_spend(items, from, 1);
    items_spend(items, to, 1);
    if (!is_told_as_length(items, minutes)) {
        add_span(spans, from, minutes);
    }
}

/* ---- finding the spans
 * ------------------------------------------------------------------------------ */

/* "door to door" includes what is no flight. */
static bool
is_door_to_door(const struct items *items, size_t at)
{
    size_t to = clause_end(items, at);

    return items_find(items, at, at + 4 < to ? at + 4 : to, ITEM_DOOR) <
           (at + 4 < to ? at + 4 : to);
}

/* A vehicle or a walk in [from, to) */
static bool
tells_way(const struct items *items, size_t from, size_t to)
{
    size_t at;

    for (at = from; at < to; at++) {
        int going = item_value(items, at, ITEM_GOING);

        if (going == LEG_DRIVE || going == LEG_HIKE || going == LEG_OTHER) {
            return true;
        }
    }
    return false;
}

/* "2 hours to get to the airport, then 95 minutes in the air": one flight, and the way to it. */
static bool
is_way_to_airport(const struct items *items, size_t at)
{
    size_t to = clause_end(items, at), lengths = 0, i;

    for (i = 0; i < items->count; i++) {
        lengths += item_is_duration(items, i) ? 1 : 0;
    }
    for (i = at; i < to && !item_text(items, i, "then") && !item_text(items, i, "luego"); i++) {
    }
    to = i;
    return lengths == 2 && items_find(items, at, to, ITEM_AIR) == to &&
           items_find(items, at, to, ITEM_GATE) == to &&
           items_have_word(items, at, to, " airport aeropuerto ") &&
           items_have_word(items, at, to, " to al hasta ") &&
           !tells_way(items, clause_start(items, at), to) &&
           items_find(items, clause_start(items, at), to, ITEM_POWER) == to &&
           !items_have_word(items, at, to, " flight vuelo at en ");
}

bool
span_stays_there(const struct items *items, size_t at)
{
    size_t first = span_first(items, at);

    return ((item_text(items, at + 1, "there") || item_text(items, first - 1, "there")) &&
            items->list[at].is == ITEM_AMOUNT) ||
           tokens_phrase_at(items->tokens, items->list[at].to,
                            "up there|over there|down there|out there|up top|at the top") > 0 ||
           item_text(items, at + 1, "alla") || item_text(items, at + 1, "ahi") ||
           (first > 0 && items->list[at].is == ITEM_AMOUNT &&
            token_among(items->tokens, items->list[first].from - 1, " alla ahi alli "));
}

size_t
span_first(const struct items *items, size_t at)
{
    while (at > 0 && (item_is(items, at - 1, ITEM_HEDGE) || item_is(items, at - 1, ITEM_ARTICLE))) {
        at--;
    }
    return at;
}

bool
span_is_way_out(const struct items *items, size_t at)
{
    size_t next = at + 1;

    next += item_text(items, next, "de") ? 1 : 0;
    return item_text(items, next, "there") || item_text(items, next, "ida") ||
           (item_text(items, next, "out") &&
            !token_among(items->tokens, items->list[next].to, " here there side "));
}

static void
set_pace(struct spans *spans, const struct item *speed)
{
    bool miles = speed->unit == UNIT_MPH;

    spans->list[spans->count - 1].pace =
        miles ? speed->value : (int)((long long)speed->value * MM_OF_KM / MM_OF_MILE);
}

static void
find_spans(struct items *items, const struct told *told, struct spans *spans)
{
    size_t at, speed;

    make_bare_speeds(items);
    for (at = 0; at < items->count; at++) {
        bool is_as_out = span_is_as_out(items, at, spans);

        if (span_is_half_hour_back(items, at, spans)) {
            items_spend(items, at, 1);
            add_span(spans, at, 30);
        } else if (!is_as_out && span_is_bare_hours(items, at, spans)) {
            items_spend(items, at, 1);
            add_span(spans, at, items->list[at].value * 60 / 1000);
            items->list[at].whole_hours = true;
        } else if (is_as_out || span_is_bare_minutes(items, at, spans) ||
                   span_is_as_many_more(items, at, spans)) {
            items_spend(items, at, 1);
            add_span(spans, at, items->list[at].value / 1000);
        } else if (is_distance(items, at)) {
            int minutes = minutes_by_speed(items, at, &speed);

            if (minutes > 0) {
                items_spend(items, at, 1);
                add_span(spans, at, minutes);
                set_pace(spans, &items->list[speed]);
            }
        } else if (item_is_duration(items, at) && !items->list[at].spent) {
            bool door = (told->kind == TOLD_FLIGHT &&
                         (is_door_to_door(items, at) || is_way_to_airport(items, at))) ||
                        (items->list[at].days &&
                         (told->kind != TOLD_TRIP || /* "a day at the fair": how long is not told */
                          (!items->list[at].digits && items->list[at].high <= MINUTES_OF_DAY &&
                           !token_is(items->tokens, items->list[at].to, "trip"))));

            items_spend(items, at, 1);
            if (!door) {
                add_span(spans, at, duration_minutes(items, at));
            }
        }
    }
}

void
spans_find(struct items *items, struct told *told, struct spans *spans)
{
    if (told->kind == TOLD_TRIP && clock_chain_read(items, told, spans)) {
        return;
    }
    if (told->kind == TOLD_TRIP || told->kind == TOLD_FLIGHT) {
        read_clock_way(items, told, spans);
    }
    find_spans(items, told, spans);
}

bool
legs_any(const struct items *items)
{
    size_t from, to, at;

    for (at = 0; at < items->count; at++) {
        if ((item_is_duration(items, at) && !items->list[at].spent && !items->list[at].days) ||
            is_distance(items, at)) {
            return true;
        }
    }
    return way_by_clock(items, false, &from, &to);
}
