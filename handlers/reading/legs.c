/*
 * Spans become legs: ways back and what is told once for several are added, and what was told out
 * of order is put in it.
 */
#include "legs.h"

#include "amounts.h"
#include "clocks.h"
#include "flight_figures.h"
#include "spans.h"
#include "subjects.h"

static void
add_leg(struct told *told, const struct span *span)
{
    if (told->leg_count < TOLD_LEGS_MAX) {
        told->legs[told->leg_count++] = (struct told_leg){span->minutes, span->kind, span->power};
    }
}

static size_t
count_kind(const struct spans *spans, enum leg_kind kind)
{
    size_t count = 0, i;

    for (i = 0; i < spans->count; i++) {
        count += spans->list[i].kind == kind ? 1 : 0;
    }
    return count;
}

/* "Two flights, 2 h and 3 h, layover 90 min": the waits lie between the flights. */
static void
interleave(const struct spans *spans, struct told *told)
{
    size_t flight = 0, wait = 0;

    while (flight < spans->count) {
        while (flight < spans->count && spans->list[flight].kind != LEG_FLIGHT) {
            flight++;
        }
        while (wait < spans->count && spans->list[wait].kind != LEG_WAIT) {
            wait++;
        }
        if (flight < spans->count) {
            add_leg(told, &spans->list[flight++]);
        }
        if (wait < spans->count) {
            add_leg(told, &spans->list[wait++]);
        }
    }
}

/* Behind "3 flights": "of 1 hour", ", an hour each". */
static bool
is_length_of_each(const struct items *items, size_t at)
{
    if (at < items->count && items->list[at].is == ITEM_PAUSE) {
        return item_is_duration(items, at + 1) && item_is(items, at + 2, ITEM_EACH);
    }
    return item_is_duration(items, at + (item_is(items, at, ITEM_OF) ? 1U : 0U));
}

/* "3 flights of 1 hour": so many, with as many waits between them as lie there. */
static void
repeat_flights(const struct items *items, struct spans *spans)
{
    size_t i, n, flights = count_kind(spans, LEG_FLIGHT), waits = count_kind(spans, LEG_WAIT);
    struct span flight, wait;

    for (i = 1; i < items->count; i++) {
        if (item_is_duration(items, i) && items->list[i - 1].is == ITEM_NUMBER &&
            token_among(items->tokens, items->list[i].to, " flights vuelos flites ")) {
            break; /* "two 3 hour flights" */
        }
        if ((item_value(items, i, ITEM_GOING) == LEG_FLIGHT ||
             token_among(items->tokens, items->list[i].from, " legs hops segments tramos ")) &&
            is_length_of_each(items, i + 1) && items->list[i - 1].is == ITEM_NUMBER) {
            break;
        }
    }
    if (i >= items->count || flights != 1 || waits > 1 || spans->count != flights + waits) {
        return;
    }
    n = (size_t)items->list[i - 1].value / 1000;
    flight = spans->list[spans->list[0].kind == LEG_FLIGHT ? 0 : 1];
    wait = spans->list[spans->count - 1];
    for (i = 1; i < n && spans->count < TOLD_LEGS_MAX - 1; i++) {
        if (waits > 0 && i > 1) {
            spans->list[spans->count++] = wait;
        }
        spans->list[spans->count++] = flight;
    }
}

/* "3 flights .., 40 min between each" */
static void
repeat_wait(const struct items *items, struct spans *spans)
{
    size_t flights = count_kind(spans, LEG_FLIGHT), i;

    if (flights < 3 || count_kind(spans, LEG_WAIT) != 1 || spans->count != flights + 1 ||
        !items_any(items, ITEM_EACH)) {
        return;
    }
    for (i = 0; spans->list[i].kind != LEG_WAIT; i++) {
    }
    while (spans->count < 2 * flights - 1 && spans->count < TOLD_LEGS_MAX) {
        spans->list[spans->count++] = spans->list[i];
    }
}

/* "45 there, 45 back by car, an hour at the clinic": the wait lies between the two ways. */
static void
wait_between(const struct items *items, struct spans *spans)
{
    struct span back;

    if (spans->count == 3 && spans->list[0].kind == LEG_WAIT &&
        span_is_way_out(items, spans->list[1].at) && spans->list[1].kind != LEG_WAIT &&
        spans->list[2].kind == spans->list[1].kind) {
        back = spans->list[0]; /* "4 hours of dialysis, the van 30 there and 30 back" */
        spans->list[0] = spans->list[1];
        spans->list[1] = back;
        return;
    }
    if (spans->count != 3 ||
        !(span_is_way_out(items, spans->list[0].at) ||
          tokens_have(items->tokens, "in between|en medio|entre medio|inbetween")) ||
        spans->list[2].kind != LEG_WAIT || spans->list[1].kind == LEG_WAIT) {
        return;
    }
    back = spans->list[1];
    if (spans->list[0].kind == LEG_WAIT || !spans->list[0].has_kind) {
        spans->list[0].kind = back.kind;
    }
    spans->list[1] = spans->list[2];
    spans->list[2] = back;
}

/* "we wait 2 hours. before that 1 hour of driving": told behind it, and comes first. */
static void
told_backwards(const struct items *items, struct spans *spans)
{
    size_t i;

    for (i = 1; i < spans->count; i++) {
        size_t from = items->list[clause_start(items, spans->list[i].at)].from;

        if (spans->list[i].at > spans->list[i - 1].at &&
            tokens_phrase_at(items->tokens, from,
                             "before that|but before that|before it|antes de eso|y antes") > 0) {
            struct span first = spans->list[i];

            spans->list[i] = spans->list[i - 1];
            spans->list[i - 1] = first;
        }
    }
}

/* "same way back": what moved one there, in reverse. */
static void
same_way_back(const struct items *items, struct spans *spans)
{
    size_t told = spans->count, i;
    size_t same = items_find(items, 0, items->count, ITEM_SAME_BACK);

    if (same == items->count ||
        (told > 1 && over_links(items, spans->list[told - 1].at + 1) == same &&
         spans->list[told - 1].homeward)) {
        return; /* "2 hours back the same": its length is told */
    }
    for (i = told; i > 0 && spans->count < TOLD_LEGS_MAX; i--) {
        if (spans->list[i - 1].kind != LEG_WAIT) {
            spans->list[spans->count++] = spans->list[i - 1];
        }
    }
}

/* Power told right before "both ways" is that of all ways. */
static void
power_of_both_ways(const struct items *items, struct spans *spans, size_t at)
{
    enum power_source power = POWER_SOURCE_NONE;
    size_t i;

    for (i = 0; i < spans->count; i++) {
        if (clause_start(items, at) > spans->list[i].at && spans->list[i].power != power &&
            spans->list[i].kind != LEG_WAIT) {
            power = spans->list[i].power;
        }
    }
    for (i = 0; i < spans->count; i++) {
        if (spans->list[i].kind == LEG_DRIVE && power == POWER_SOURCE_CAR) {
            spans->list[i].power = power;
        }
    }
}

/* "1 hr drive with the car charger, 2 hrs up top, 1 hr drive same": with the same power */
static void
same_power(const struct items *items, struct spans *spans)
{
    size_t i, j;

    for (i = 1; i < spans->count; i++) {
        size_t after = items->list[spans->list[i].at].to, to;

        for (to = after; to < after + 3 && !token_among(items->tokens, to, " same igual "); to++) {
        }
        for (j = 0; j < i && to < after + 3 && !spans->list[i].has_power; j++) {
            if (spans->list[j].kind == spans->list[i].kind && spans->list[j].has_power) {
                spans->list[i].power = spans->list[j].power;
            }
        }
    }
}

static void
there_and_back(const struct items *items, struct spans *spans)
{
    size_t at = items_find(items, 0, items->count, ITEM_EACH_WAY), i, way = 0;

    for (i = 0; i < spans->count; i++) {
        size_t from = spans->list[i].at, to = clause_end(items, from);

        if (at < items->count && to < at &&
            (spans->list[i].homeward ||
             items_have_word(items, from, to, " back home vuelta regreso "))) {
            power_of_both_ways(items, spans, at);
            return; /* "2 hours there, 2 hours back, car charger both ways" */
        }
    }
    if (at == items->count || spans->count == 0) {
        return;
    }
    for (i = 0; i < spans->count; i++) {
        way = spans->list[i].at < at ? i : way;
    }
    if (spans->count < TOLD_LEGS_MAX) {
        struct span there = spans->list[way];

        spans->list[spans->count++] = there;
        for (i = way; i > 0; i--) { /* what was told before it lies between */
            spans->list[i] = spans->list[i - 1];
        }
        spans->list[0] = there;
    }
}

/* Some span lies behind this item. */
static bool
goes_on(const struct spans *spans, size_t at)
{
    size_t i;

    for (i = 0; i < spans->count; i++) {
        if (spans->list[i].at > at) {
            return true;
        }
    }
    return false;
}

/* A pause lies between a span and the way behind it. */
static bool
is_apart(const struct items *items, size_t span, size_t way)
{
    return clause_end(items, span) < way;
}

/* "30 min by bus, 2 hours there, then the bus home": as long as the way there. False if there is a
 * way home of which no length is known. */
static bool
untimed_way_home(const struct items *items, struct spans *spans)
{
    size_t at, i;

    for (at = items->count; at > 1; at--) {
        bool home = item_is(items, at - 1, ITEM_HOMEWARD) && !goes_on(spans, at - 1);
        int going = item_value(items, at - 2, ITEM_GOING);

        if (!home || (going != LEG_DRIVE && going != LEG_HIKE)) {
            continue;
        }
        for (i = 0; i < spans->count && spans->list[i].kind != (enum leg_kind)going; i++) {
        }
        if (i + 1 < spans->count && spans->count < TOLD_LEGS_MAX &&
            spans->list[spans->count - 1].kind == LEG_WAIT) {
            spans->list[spans->count++] = spans->list[i];
            return true;
        }
        return spans->count == 0 || !is_apart(items, spans->list[spans->count - 1].at, at - 2);
    }
    return true;
}

/* A number that nobody took stands among words of ways: "the bus there 40, back 35 or 50". */
static bool
has_unread_length(const struct items *items)
{
    size_t at, from, to;

    for (at = 0; at < items->count; at++) {
        if (!item_free_number(items, at) || items->list[at].one || items->list[at].ordinal ||
            items->list[at].fraction || item_is(items, at + 1, ITEM_WORD) ||
            item_is(items, at - 1, ITEM_NAMED)) {
            continue;
        }
        from = clause_start(items, at);
        to = clause_end(items, at);
        if (token_among(items->tokens, items->list[at].to, " more mas ") ||
            items_find(items, from, to, ITEM_GOING) < to ||
            items_find(items, from, to, ITEM_HOMEWARD) < to) {
            return true;
        }
    }
    return false;
}

/* "2 hours there, we stay till 5": from when on, nobody has read. */
static bool
has_untimed_stay(const struct items *items)
{
    size_t at;

    for (at = 0; at < items->count; at++) {
        if (items->list[at].is == ITEM_CLOCK && !items->list[at].spent &&
            clock_role(items, at) == CLOCK_UNTIL &&
            items_have_word(items, clause_start(items, at), at,
                            " stay staying stays there quedamos quedo estamos quedaremos ")) {
            return true;
        }
    }
    return false;
}

void
legs_read(struct items *items, struct told *told)
{
    struct spans spans = {0};
    size_t flights, waits, i;
    bool home_known;

    spans_find(items, told, &spans);
    spans_kind(items, told, &spans);
    wait_between(items, &spans);
    told_backwards(items, &spans);
    if (told->kind == TOLD_FLIGHT) {
        flight_figures_settle(items, told, &spans);
        repeat_flights(items, &spans);
        repeat_wait(items, &spans);
    }
    spans_power(items, &spans);
    same_power(items, &spans);
    spans_split(items, &spans);
    home_known = untimed_way_home(items, &spans);
    there_and_back(items, &spans);
    same_way_back(items, &spans);
    flights = count_kind(&spans, LEG_FLIGHT);
    waits = count_kind(&spans, LEG_WAIT);
    if (told->kind == TOLD_FLIGHT && flights == 1 && spans.count == 1) {
        told->flight_minutes = spans.list[0].minutes;
        return;
    }
    if (told->kind == TOLD_FLIGHT && flights > 1 && flights == waits + 1 &&
        spans.count == flights + waits) {
        interleave(&spans, told);
        return;
    }
    for (i = 0; i < spans.count; i++) {
        add_leg(told, &spans.list[i]);
    }
    if (told->kind == TOLD_TRIP &&
        (!home_known || has_unread_length(items) || has_untimed_stay(items))) {
        told->missing |= MISSING_MINUTES;
    }
}

bool
legs_move(const struct told *told)
{
    size_t i;

    for (i = 0; i < told->leg_count; i++) {
        if (told->legs[i].kind == LEG_DRIVE || told->legs[i].kind == LEG_FLIGHT ||
            told->legs[i].kind == LEG_HIKE) {
            return true;
        }
    }
    return false;
}
