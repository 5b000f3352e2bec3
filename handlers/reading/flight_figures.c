/* What a flight's length is a figure of: see flight_figures.h. */
#include "flight_figures.h"

#include "amounts.h"
#include "charges.h"
#include "clocks.h"

enum { AIRLINE_REACH = 8 };

/* "I don't know if that's gate to gate", "is it gate to gate?" */
static bool
is_doubted(const struct items *items, size_t at)
{
    size_t from = sentence_start(items, at);

    if (items_find(items, from, at, ITEM_UNKNOWN) < at || item_is(items, at - 1, ITEM_NOT) ||
        items_have_word(items, from, at, " if whether si ")) {
        return true;
    }
    return token_among(items->tokens, items->list[from].from, " is es ") &&
           item_text(items, sentence_end(items, at), "?") && at - from <= 2;
}

/* "the airline told me 3 batteries for a flight of 4 hours": how many, before any length */
static bool
tells_batteries(const struct items *items, size_t at)
{
    size_t to = clause_end(items, at), i;
    bool figure = false;

    for (i = clause_start(items, at); i < at; i++) {
        figure = figure || item_is_duration(items, i); /* "3 hours says the airline with 2 packs" */
    }
    for (i = at + 1; i < to && !figure && !item_is_duration(items, i); i++) {
        if (item_is(items, i, ITEM_BATTERY)) {
            return items->list[i - 1].is == ITEM_NUMBER;
        }
    }
    return false;
}

/* "the airline wants 150 % of it": a rule, no figure. */
static bool
is_rule(const struct items *items, size_t at)
{
    size_t after = items->list[at].to, i;

    if (items_have_word(items, at, sentence_end(items, at),
                        " before beforehand early antes temprano anticipacion ")) {
        return true; /* "the airline says be there 2 hours before" */
    }
    if (tells_batteries(items, at)) {
        return true;
    }
    for (i = after; i < after + 3 && !token_among(items->tokens, i, " . ! ? ; "); i++) {
        if (token_among(items->tokens, i,
                        " bring have take carry llevar lleve traer wants want requires require "
                        "needs asks rule rules makes make policy pide "
                        "exige quiere requiere regla ")) {
            return true;
        }
    }
    return false;
}

/* "no idea if thats in the air or gate to gate": not known, and no length told since */
static bool
is_unknown_figure(const struct items *items, size_t from, size_t at)
{
    size_t i;

    for (i = at; i > from && !item_is_duration(items, i - 1); i--) {
        if (item_is(items, i - 1, ITEM_UNKNOWN)) {
            return true;
        }
    }
    return false;
}

/* "2 hours in the air", "thats in the air", but no "enough in the air?" of its own. */
static bool
is_air(const struct items *items)
{
    size_t at, from, to, i;

    for (at = 0; at < items->count; at++) {
        if (!item_is(items, at, ITEM_AIR)) {
            continue;
        }
        from = sentence_start(items, at);
        to = sentence_end(items, at);
        if (is_unknown_figure(items, from, at)) {
            continue;
        }
        if (!item_text(items, to, "?")) {
            return true;
        }
        for (i = from; i < to; i++) {
            if (item_is_duration(items, i)) {
                return true;
            }
        }
    }
    return false;
}

/* "10:20 to 12:05, those are the times on the airline's itinerary": of a flight that is told by
 * its two clock times. */
static bool
is_printed(const struct items *items)
{
    size_t at, clocks = 0, lengths = 0, airline = items->count;

    for (at = 0; at < items->count; at++) {
        lengths += item_is_duration(items, at) ? 1 : 0;
        clocks += items->list[at].is == ITEM_CLOCK ? 1 : 0;
        if (item_is(items, at, ITEM_GATE) && !is_rule(items, at) && !is_doubted(items, at)) {
            airline = at;
        }
    }
    if (airline < items->count && lengths > 0) {
        return items_have_word(items, sentence_start(items, airline), sentence_end(items, airline),
                               " times tiempos figures numbers duraciones ");
    }
    return clocks == 2 && airline < items->count &&
           items_have_word(items, sentence_start(items, airline), sentence_end(items, airline),
                           " times time printed itinerary schedule website horario horarios "
                           "horas itinerario pagina ");
}

/* "gate to gate", or a length that the airline gave: not all that an airline says is one. */
static bool
is_gate(const struct items *items)
{
    size_t at, i;

    if (is_printed(items)) {
        return true;
    }

    for (at = 0; at < items->count; at++) {
        if (item_value(items, at, ITEM_GATE) == 0 && !is_doubted(items, at)) {
            return true;
        }
        if (!item_is(items, at, ITEM_GATE) || item_value(items, at, ITEM_GATE) == 0 ||
            is_rule(items, at) || is_doubted(items, at)) {
            continue;
        }
        for (i = at > AIRLINE_REACH ? at - AIRLINE_REACH : 0; i < at + AIRLINE_REACH; i++) {
            if ((item_is_duration(items, i) && !item_is(items, i + 1, ITEM_BEFORE)) ||
                (i < items->count && items->list[i].is == ITEM_CLOCK)) {
                return true;
            }
        }
    }
    return false;
}

static bool
has_both_figures(const struct items *items)
{
    bool gate = false;
    size_t at;

    for (at = 0; at < items->count; at++) {
        gate = gate || item_value(items, at, ITEM_GATE) == 0;
    }
    return gate && items_any(items, ITEM_AIR);
}

void
flight_is_read(const struct items *items, struct told *told)
{
    if (told->kind != TOLD_FLIGHT ||
        (told->flight_minutes == 0 && told->leg_count == 0 && !told->impossible)) {
        return;
    }
    if (told->flight_is_gate) {
        return; /* flight_figures_settle() has told */
    }
    if (told->impossible && told->flight_minutes == 0 && told->leg_count == 0 &&
        has_both_figures(items)) {
        return; /* the two speak against each other */
    }
    told->flight_is_air = is_air(items);
    told->flight_is_gate = !told->flight_is_air && is_gate(items);
}

/* ---- two figures of one flight --------------------------------------------------------------- */

/* The nearest word of its clause that says what a length is a figure of; items->count if none. */
static size_t
figure_of(const struct items *items, size_t at)
{
    size_t from = clause_start(items, at), to = clause_end(items, at), near, i;
    size_t figure = items->count;

    for (near = to - from, i = from; i < to; i++) {
        size_t steps = i > at ? i - at : at - i;

        if ((item_is(items, i, ITEM_AIR) || item_is(items, i, ITEM_GATE)) && steps < near) {
            near = steps;
            figure = i;
        }
    }
    return figure;
}

/* A clock time or number that nobody took stands beside "gate to gate", "in the air", "airline". */
static bool
has_unread_figure(const struct items *items)
{
    size_t at, to, i;

    for (at = 0; at < items->count; at++) {
        if (!item_is(items, at, ITEM_GATE) && !item_is(items, at, ITEM_AIR)) {
            continue;
        }
        to = sentence_end(items, at);
        for (i = sentence_start(items, at); i < to; i++) {
            const struct item *item = &items->list[i];

            if (!item->spent && item->is == ITEM_CLOCK && item->colon &&
                clock_role(items, i) == CLOCK_OF_NOTHING && !item_is(items, i + 1, ITEM_GOING)) {
                return true;
            }
        }
    }
    return false;
}

/* "two flights", "the second flight": each figure is of its own. */
static bool
has_several_flights(const struct items *items)
{
    size_t at;

    for (at = 1; at < items->count; at++) {
        if (item_value(items, at, ITEM_GOING) == LEG_FLIGHT &&
            (item_is(items, at - 1, ITEM_ORDINAL) || item_is(items, at - 1, ITEM_BOTH) ||
             items->list[at - 1].ordinal ||
             (items->list[at - 1].is == ITEM_NUMBER && items->list[at - 1].value > 1000 &&
              token_among(items->tokens, items->list[at].from, " flights flites vuelos hops ")))) {
            return true;
        }
    }
    return false;
}

void
flight_figures_settle(const struct items *items, struct told *told, struct spans *spans)
{
    size_t first, second, gate, longer;
    bool first_air, second_air;

    if (spans->count == 1 && has_unread_figure(items)) {
        spans->count = 0;
        return;
    }
    if (has_several_flights(items)) {
        return;
    }
    if (spans->count != 2 || spans->list[0].kind != LEG_FLIGHT ||
        spans->list[1].kind != LEG_FLIGHT) {
        return;
    }
    first = figure_of(items, spans->list[0].at);
    second = figure_of(items, spans->list[1].at);
    first_air = item_is(items, first, ITEM_AIR);
    second_air = item_is(items, second, ITEM_AIR);
    if (spans->list[0].minutes == spans->list[1].minutes &&
        ((first == items->count && second < items->count) ||
         items_find(items, spans->list[0].at, spans->list[1].at, ITEM_CORRECT) <
             spans->list[1].at)) {
        spans->list[0] = spans->list[1]; /* "a half hour hop, in the air 30 min" */
        spans->count = 1;
        return;
    }
    if (first == items->count || second == items->count || first_air == second_air) {
        return;
    }
    gate = first_air ? second : first;
    longer = spans->list[1].minutes > spans->list[0].minutes ? 1 : 0;
    if (spans->list[longer].minutes > spans->list[1 - longer].minutes &&
        longer == (first_air ? 0U : 1U) && item_value(items, gate, ITEM_GATE) == 0 &&
        !is_doubted(items, gate)) {
        told->impossible = true; /* longer in the air than from gate to gate */
        told->impossible_what = items_words(items, spans->list[longer].at, 1);
        told->missing |= MISSING_FLIGHT_MINUTES;
        spans->count = 0;
        return;
    }
    told->flight_is_gate =
        longer == (first_air ? 1U : 0U) && !is_doubted(items, gate) && !is_rule(items, gate);
    spans->list[0] = spans->list[longer];
    spans->count = 1;
}
