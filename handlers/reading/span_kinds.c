/*
 * A span takes as its kind the nearest word for a way or a place that no other span has taken:
 * before it ("bus 45 min") or behind it ("45 min on the bus"), of two as near the one before. In a
 * list ("3 flights: 1h, 2h30") it is that of the span before.
 */
#include "amounts.h"
#include "span_cues.h"
#include "span_stays.h"
#include "span_ways.h"
#include "spans.h"

/* The last untaken cue of the clause before, "Road trip, 6 hours"; items->count if none. */
static size_t
cue_of_clause_before(const struct items *items, size_t at, size_t taken_from)
{
    size_t start = clause_start(items, at), place = items->count, i;

    if (start < 2 || items->list[start - 1].is != ITEM_PAUSE) {
        return items->count;
    }
    for (i = start - 1; i > taken_from && i > clause_start(items, start - 2); i--) {
        if (!is_cue(items, i - 1)) {
            continue;
        }
        if (item_value(items, i - 1, ITEM_GOING) != LEG_WAIT || !leads_to(items, i - 1)) {
            return i - 1;
        }
        place = i - 1; /* "the bus to the mall, 35 minutes" tells the bus, "voy a misa, una hora" */
    }
    return place;
}

/* "3 hours at the lake": wherever that is */
static bool
trip_at_place(const struct items *items, size_t at)
{
    size_t next = at + 2;

    if (token_among(items->tokens, items->list[at].to, " down up ")) {
        return span_stays_there(items, at); /* "an hour down for most people" */
    }
    next += item_is(items, next, ITEM_LINK) ? 1 : 0;
    if (item_is(items, at + 1, ITEM_AT) && !item_text(items, at + 1, "with") &&
        !item_text(items, at + 1, "con") &&
        !token_among(items->tokens, items->list[at + 1].to, " total all average promedio ") &&
        (item_is(items, next, ITEM_WORD) || item_is(items, next, ITEM_NAMED))) {
        return true;
    }
    if (token_among(items->tokens, items->list[at].to, " with con ") &&
        token_among(items->tokens, items->list[at].to + 1, " mi mis su my our her his ") &&
        next < items->count) {
        return items->list[next].is == ITEM_WORD &&
               items->list[next].meaning_count == 0; /* "2 hours with my sister" */
    }
    return (item_text(items, at + 1, "en") && item_text(items, at + 2, "casa")) ||
           (item_is(items, at + 1, ITEM_WORD) && item_is(items, at + 2, ITEM_AT) &&
            item_value(items, at + 2, ITEM_AT) != AT_ON); /* "30 min parked at the view" */
}

/* A later span is told to be the way back. */
static bool
comes_back(const struct items *items, size_t at)
{
    size_t to = sentence_end(items, at), i;

    for (i = at + 1; i < to; i++) {
        bool span = item_is_duration(items, i) || items->list[i].is == ITEM_NUMBER;

        if (span &&
            (item_is(items, i + 1, ITEM_HOMEWARD) || item_is(items, i - 1, ITEM_HOMEWARD))) {
            return true;
        }
    }
    return false;
}

static bool
is_to_airport(const struct items *items, size_t at)
{
    size_t token = at < items->count ? items->list[at].from : 0, i;

    for (i = token + 1;
         token_among(items->tokens, token, " to from al hasta del ") && i < token + 4; i++) {
        if (token_among(items->tokens, i, " airport terminal aeropuerto ")) {
            return true;
        }
    }
    return false;
}

/* "Have an hour and 15 before the taxi", "it has to hold 2 hours until the van comes". */
static bool
waits_for(const struct items *items, const struct span *span, bool has_cue)
{
    size_t start = clause_start(items, span->at), behind = items->list[span->at].to;

    return (token_among(items->tokens, behind, " before antes ") &&
            items_find(items, start, span->at, ITEM_HAVE) < span->at) ||
           (!has_cue && token_among(items->tokens, behind, " until till til ") &&
            items_have_word(items, start, span->at, " hold last go stay "));
}

/* By what stands right behind the span, nearer than any other word. */
static bool
find_kind_right_behind(const struct items *items, struct span *span, bool has_cue)
{
    size_t after = span->at + 1;

    if (span->pace > 0) {
        return false; /* how fast tells more than what stands behind it */
    }
    if (waits_for(items, span, has_cue) || lies_between(items, span->at)) {
        take_kind(span, LEG_WAIT);
        return true;
    }
    after += item_text(items, after, "from") && (item_is(items, after + 1, ITEM_AIR) ||
                                                 item_value(items, after + 1, ITEM_GATE) == 0)
                 ? 1
                 : 0;
    if (item_is(items, after, ITEM_AIR) || item_value(items, after, ITEM_GATE) == 0) {
        take_kind(span, LEG_FLIGHT);
    } else if (item_text(items, after, "between") || (!has_cue && trip_at_place(items, span->at))) {
        take_kind(span, LEG_WAIT);
    } else if (!has_cue && is_to_airport(items, after)) {
        take_kind(span, LEG_OTHER); /* "90 minutes to the airport" */
    } else if (item_text(items, after, "away")) {
        take_kind(span, LEG_DRIVE); /* "the clinic is 40 min away by car" */
        if (cue_ahead(items, span->at) > 0) {
            set_kind(span, items, span->at + cue_ahead(items, span->at)); /* "away walking" */
        }
    }
    return span->has_kind;
}

/* "return trip about 2 hours", "regreso de 3 horas" */
static bool
follows_homeward(const struct items *items, size_t at)
{
    size_t first = span_first(items, at);

    first -= first > 0 && item_text(items, first - 1, "de") ? 1 : 0;
    return item_is(items, first - 1, ITEM_HOMEWARD);
}

/* "an hour up and 45 minutes down", "otra hora de bajada", "regresamos otras 3": the way once more
 */
static bool
goes_up_or_down(const struct items *items, size_t at)
{
    size_t first = items->list[span_first(items, at)].from;

    first -= first > 0 && token_among(items->tokens, first - 1, " otras otros otra ") ? 1 : 0;
    return tokens_phrase_at(items->tokens, items->list[at].to,
                            "down|de bajada|de subida|bajada|subida|back down|back up") > 0 ||
           (first > 0 && token_among(items->tokens, first - 1, " regresamos regreso volvemos "));
}

/* Of a span with no word of a way or a place near it. */
static void
find_kind_alone(const struct items *items, struct span *span, size_t taken_from, bool trip)
{
    size_t at = span->at, before;

    if (span_is_way_out(items, at) && comes_back(items, at) &&
        !(trip && item_text(items, at + 1, "there"))) {
        return; /* "half an hour there, half an hour back": how is not told */
    }
    if (goes_up_or_down(items, at)) {
        span->homeward = true;
        return;
    }
    if (span_stays_there(items, at) || (trip && item_value(items, at - 1, ITEM_LASTS) == 0)) {
        take_kind(span, LEG_WAIT);
        return;
    }
    span->homeward =
        item_is(items, at + 1, ITEM_HOMEWARD) || item_is(items, at + 1, ITEM_SAME_BACK) ||
        (item_is(items, at + 1, ITEM_LINK) && item_is(items, at + 2, ITEM_SAME_BACK)) ||
        follows_homeward(items, at) ||
        (item_is(items, at + 2, ITEM_HOMEWARD) && !stops_cue(items, at + 1));
    if (span->homeward) {
        return;
    }
    before = cue_of_clause_before(items, at, taken_from);
    if (before < items->count &&
        !(span_is_way_out(items, at) && item_value(items, before, ITEM_GOING) == LEG_WAIT)) {
        set_kind(span, items, before);
    }
}

/* "walking to church 15 min": how one gets to the place */
static bool
find_way_to(const struct items *items, struct span *span, size_t place, size_t taken_from)
{
    size_t from = clause_start(items, place), i;

    from = from > taken_from ? from : taken_from;
    for (i = place; item_value(items, place, ITEM_GOING) == LEG_WAIT && leads_to(items, place) &&
                    i > from && place - i < 4;
         i--) {
        if (item_value(items, i - 1, ITEM_GOING) == LEG_HIKE ||
            item_value(items, i - 1, ITEM_GOING) == LEG_DRIVE) {
            set_kind(span, items, i - 1);
            return true;
        }
    }
    return false;
}

/* `taken_from`: cues before this item belong to earlier spans. Returns the new one. */
static size_t
find_kind(const struct items *items, struct span *span, size_t taken_from, bool trip)
{
    size_t back = cue_back(items, span->at, taken_from), ahead = cue_ahead(items, span->at);
    size_t behind;

    if (find_kind_right_behind(items, span, back > 0 || ahead > 0)) {
        return item_text(items, span->at + 1, "away") && ahead > 0 ? span->at + ahead + 1
                                                                   : span->at;
    }
    if (back > 0 && ahead == 0 && item_is(items, span->at + 1, ITEM_HOMEWARD) &&
        item_value(items, span->at - back, ITEM_GOING) == LEG_WAIT) {
        span->homeward = true; /* "40 min to the market and 40 back" */
        return span->at;
    }
    if (back > 0 && ahead == 0 && find_way_to(items, span, span->at - back, taken_from)) {
        return span->at;
    }
    if (back > 0 && ahead == 0 && span->pace == 0 && is_destination(items, span->at - back)) {
        take_kind(span, LEG_OTHER); /* how one gets there is not told */
        return span->at;
    }
    if (back > 0 && (ahead == 0 || back <= ahead) &&
        !(ahead > 0 && (goes_there(items, span->at - back, span->at + ahead) ||
                        (is_destination(items, span->at - back) &&
                         item_value(items, span->at + ahead, ITEM_GOING) != LEG_WAIT)))) {
        set_kind(span, items, span->at - back);
        return span->at;
    }
    if (ahead > 0) {
        set_kind(span, items, span->at + ahead);
        if (span->kind == LEG_WAIT && leads_to(items, span->at + ahead)) {
            span->kind = LEG_OTHER; /* "40 min to the clinic" */
            behind = cue_ahead(items, span->at + ahead);
            if (behind > 0 && goes_there(items, span->at + ahead, span->at + ahead + behind)) {
                ahead += behind;
                set_kind(span, items, span->at + ahead); /* "to the mall by shuttle" */
            }
        }
        return span->at + ahead + 1;
    }
    find_kind_alone(items, span, taken_from, trip);
    return span->at;
}

static enum leg_kind
way_there(const struct spans *spans)
{
    size_t i;

    for (i = 0; i < spans->count; i++) {
        if (spans->list[i].has_kind && spans->list[i].kind != LEG_WAIT) {
            return spans->list[i].kind;
        }
    }
    return LEG_OTHER;
}

/* A cue anywhere in the sentence, of which no span is nearer. */
static bool
find_kind_in_sentence(const struct items *items, struct span *span)
{
    size_t from = sentence_start(items, span->at), to = sentence_end(items, span->at);
    size_t cue = items_find(items, from, to, ITEM_GOING);

    if (cue < to) {
        set_kind(span, items, cue);
    }
    return cue < to;
}

/* "30 min there and 30 back by car": how one goes, told for several ways. */
static void
find_way_in_sentence(const struct items *items, struct span *span)
{
    size_t to = sentence_end(items, span->at), i;

    for (i = sentence_start(items, span->at); i < to; i++) {
        int going = item_value(items, i, ITEM_GOING);

        if (is_cue(items, i) && (going == LEG_DRIVE || going == LEG_HIKE)) {
            set_kind(span, items, i);
            return;
        }
    }
}

/* "Will it get me through church. One hour." */
static bool
find_kind_before(const struct items *items, struct span *span, size_t taken_from)
{
    size_t from = sentence_start(items, span->at), to = sentence_end(items, span->at), i;

    for (i = from; i < to; i++) {
        if (i != span->at && !item_is(items, i, ITEM_LINK) && !item_is(items, i, ITEM_HEDGE) &&
            !item_is(items, i, ITEM_HEDGE_AFTER) && !item_is(items, i, ITEM_ARTICLE)) {
            return false;
        }
    }
    for (i = from; i > taken_from && from > 1 && i > sentence_start(items, from - 1); i--) {
        if (item_is(items, i - 1, ITEM_GOING)) {
            set_kind(span, items, i - 1);
            return true;
        }
    }
    return false;
}

/* "second leg 4 hours", "el segundo tramo 2 horas" */
static bool
is_of_one_flight(const struct items *items, size_t at)
{
    return items_have_word(items, clause_start(items, at), at,
                           " leg hop segment stretch tramo trayecto pierna ");
}

/* "150 min on the coach, a stop, 150 more": of the way, and no longer stop; else a list goes on */
static bool
goes_on_as_way(const struct items *items, size_t at)
{
    return items->list[at].is == ITEM_NUMBER &&
           token_among(items->tokens, items->list[at].to, " more mas ");
}

/* "2 hr 5 min, then a 50 min wait, then 1 hr 15": as many waits as flights before it */
static bool
awaits_flight(const struct spans *spans, size_t at)
{
    int open = 0;
    size_t i;

    for (i = 0; i < at; i++) {
        open += spans->list[i].kind == LEG_FLIGHT ? 1 : spans->list[i].kind == LEG_WAIT ? -1 : 0;
    }
    return open == 0 && spans->list[at - 1].kind == LEG_WAIT;
}

/* "the road is shut, they say 2 to 3 hours" */
static bool
is_held_up(const struct items *items)
{
    return tokens_have(items->tokens,
                       "road is shut|road is closed|road closed|roads are closed|road is blocked|"
                       "road opens|road to open|carretera esta cerrada|carretera cerrada|camino "
                       "esta cerrado|abran la carretera|abra la carretera|abran el camino");
}

/* Of a span of which nothing is told. */
static enum leg_kind
kind_of_asked(const struct items *items, const struct told *told)
{
    bool still = told->kind == TOLD_HOURS_LEFT &&
                 ((told->has_activity &&
                   (told->activity == ACTIVITY_SLEEP || told->activity == ACTIVITY_REST)) ||
                  is_held_up(items));

    return told->kind == TOLD_FLIGHT              ? LEG_FLIGHT
           : told->kind == TOLD_CHARGING || still ? LEG_WAIT
                                                  : LEG_OTHER;
}

/* "an hour between, 95 min", "y el segundo dura 95 min" */
static bool
is_next_flight(const struct items *items, size_t wait, size_t at)
{
    size_t from = clause_start(items, at);

    return token_among(items->tokens, items->list[wait].to, " between entre ") ||
           items_find(items, from > wait ? from : wait, at, ITEM_ORDINAL) < at ||
           items_have_word(items, from > wait ? from : wait, at,
                           " segundo tercero ultimo otro otra another other second third ");
}

/* As the span before, or what a flight goes on with. */
static enum leg_kind
kind_of_list(const struct items *items, const struct told *told, const struct spans *spans,
             size_t i)
{
    size_t at = spans->list[i].at;

    if (told->kind == TOLD_FLIGHT &&
        (item_text(items, at + 1, "more") || is_of_one_flight(items, at) ||
         (awaits_flight(spans, i) &&
          (is_then(items, at - 1) || is_next_flight(items, spans->list[i - 1].at, at))))) {
        return LEG_FLIGHT;
    }
    return goes_on_as_way(items, at) ? way_there(spans) : spans->list[i - 1].kind;
}

/* Returns from where on cues are free for the next span. */
static size_t
kind_by_cues(const struct items *items, const struct told *told, struct spans *spans, size_t i,
             size_t free_from)
{
    struct span *span = &spans->list[i];
    bool trip = told->kind == TOLD_TRIP;
    size_t cue, taken_from;

    if (told->kind == TOLD_FLIGHT && i > 0 && awaits_flight(spans, i) &&
        clause_start(items, span->at) > spans->list[i - 1].at &&
        is_next_flight(items, spans->list[i - 1].at, span->at) &&
        cue_back(items, span->at, free_from) == 0 && cue_ahead(items, span->at) == 0) {
        take_kind(span, LEG_FLIGHT);
        return free_from;
    }
    taken_from =
        find_kind(items, span, free_from, trip && i > 0 && spans->list[i - 1].kind != LEG_WAIT);

    if (span->homeward) {
        span->kind = way_there(spans);
        span->has_kind = span->kind != LEG_OTHER;
    } else if (span->has_kind) {
        return taken_from;
    } else if (span->pace > 0) {
        take_kind(span, span->pace > WALK_MPH * 1000 ? LEG_DRIVE : LEG_HIKE);
    } else if (find_kind_before(items, span, free_from)) {
        return span->at;
    } else if (i > 0 && trip && does_something(items, spans->list[i - 1].at, span->at)) {
        take_kind(span, LEG_WAIT);
    } else if (i > 0 && spans->list[i - 1].has_kind &&
               !(span_is_way_out(items, span->at) && spans->list[i - 1].kind == LEG_WAIT)) {
        take_kind(span, kind_of_list(items, told, spans, i));
    } else if (spans->count == 1 && !find_kind_in_sentence(items, span)) {
        cue = items_find(items, 0, items->count, ITEM_GOING);
        if (cue < items->count && told->kind != TOLD_HOURS_LEFT) {
            set_kind(span, items, cue);
        }
    }
    return taken_from;
}

/* "vuelo a las 7, dura 2 horas 45 en el aire" */
static bool
is_of_air(const struct items *items, size_t at)
{
    return item_is(items, at + 1, ITEM_AIR) || item_value(items, at + 1, ITEM_GATE) == 0;
}

void
spans_kind(const struct items *items, const struct told *told, struct spans *spans)
{
    size_t taken_from = 0, i;

    for (i = 0; i < spans->count; i++) {
        struct span *span = &spans->list[i];

        if (span->settled || runs_itself(items, span->at)) {
            take_kind(span, span->settled                ? span->kind
                            : is_of_air(items, span->at) ? LEG_FLIGHT
                                                         : LEG_WAIT);
            continue;
        }
        taken_from = kind_by_cues(items, told, spans, i, taken_from);
        if ((!span->has_kind || (span->homeward && span->kind == LEG_OTHER)) &&
            (span->homeward || span_is_way_out(items, span->at)) && spans->count > 1) {
            find_way_in_sentence(items, span);
        }
        if (!span->has_kind && told->kind == TOLD_HOURS_LEFT && has_event(items, span->at)) {
            take_kind(span, LEG_WAIT); /* "need it to last 5 hours, show starts at 7" */
        }
        if (span->has_kind && span->kind == LEG_OTHER &&
            (span_is_mostly_walked(items, span->at) || span_is_walked(items, span))) {
            span->kind = LEG_HIKE;
        }
        if ((!span->has_kind || span_may_be_driven(items, span)) &&
            (told->kind == TOLD_TRIP || told->kind == TOLD_CHARGING) &&
            span_is_by_vehicle(items, span->at)) {
            take_kind(span, LEG_DRIVE);
        }
        if (!span->has_kind && told->kind == TOLD_TRIP && span_is_of_event(items, span->at)) {
            take_kind(span, LEG_WAIT);
        }
        if (!span->has_kind) {
            span->kind = kind_of_asked(items, told);
        }
    }
    spans_as_one_comes_back(items, spans);
}
