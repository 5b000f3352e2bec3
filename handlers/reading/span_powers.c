/* The power of each span: that of the words it stands among. */
#include "spans.h"

#include "power_denied.h"

/* An outlet of a bus or train is seat power, which counts as nothing; no wall goes along on a
 * drive.
 */
static enum power_source
power_of(int word, const struct span *span)
{
    switch (word) {
    case POWER_WORD_WALL:
        return span->kind == LEG_DRIVE ? POWER_SOURCE_NONE : POWER_SOURCE_WALL;
    case POWER_WORD_CAR:
        return POWER_SOURCE_CAR;
    case POWER_WORD_PLUG:
        return span->kind == LEG_DRIVE && !span->has_seats ? POWER_SOURCE_CAR
               : span->kind == LEG_WAIT                    ? POWER_SOURCE_WALL
                                                           : POWER_SOURCE_NONE;
    default:
        return POWER_SOURCE_NONE;
    }
}

/* The only span of the clause of `at`, behind it: "9 hours, can plug in at lunch for an hour". */
static struct span *
span_behind_in_clause(const struct items *items, struct spans *spans, size_t at)
{
    size_t from = clause_start(items, at), to = clause_end(items, at), i;
    struct span *only = NULL;

    for (i = 0; i < spans->count; i++) {
        if (spans->list[i].at >= from && spans->list[i].at < to) {
            if (only != NULL || spans->list[i].at < at) {
                return NULL;
            }
            only = &spans->list[i];
        }
    }
    return only != NULL && only->kind == LEG_WAIT ? only : NULL;
}

/* The span that words at `at` are of: the one before them in their sentence, else the next one. */
static struct span *
span_around(const struct items *items, struct spans *spans, size_t at)
{
    size_t from = sentence_start(items, at), to = sentence_end(items, at), i;
    struct span *before = span_behind_in_clause(items, spans, at);

    if (before != NULL) {
        return before;
    }

    for (i = 0; i < spans->count; i++) {
        struct span *span = &spans->list[i];

        if (span->at >= from && span->at < to && span->at < at &&
            (before == NULL || span->at >= before->at)) {
            before = span;
        }
        if (span->at >= at && span->at < to && before == NULL) {
            return span;
        }
    }
    return before;
}

static const char vehicles[] = " car van truck suv jeep rv carro coche auto camioneta troca ";

static bool
sentence_has(const struct items *items, size_t at, const char *words)
{
    size_t from = sentence_start(items, at), to = sentence_end(items, at);

    return tokens_between_among(items->tokens, items->list[from].from, items->list[to - 1].to,
                                words);
}

/* "There is an outlet at the hotel": not where one drives. */
static bool
is_elsewhere(const struct items *items, size_t at, int word, const struct span *span)
{
    return word == POWER_WORD_PLUG && span->kind == LEG_DRIVE &&
           !sentence_has(items, at, vehicles) && sentence_has(items, at, " at there alla en ");
}

/*
 * "We drive 90 minutes. The car has an adapter.": words of power in a sentence without a span are
 * of the drives if they name the car, of the wait told last if they name the wall.
 */
static void
power_apart(const struct items *items, struct spans *spans, size_t at, int word)
{
    bool car =
        word == POWER_WORD_CAR || (word == POWER_WORD_PLUG && sentence_has(items, at, vehicles));
    size_t i;

    for (i = spans->count; i > 0; i--) {
        struct span *span = &spans->list[i - 1];

        if (car && span->kind == LEG_DRIVE && !span->has_seats && !span->has_power) {
            span->has_power = true;
            span->power = POWER_SOURCE_CAR;
        } else if (word == POWER_WORD_WALL && span->kind == LEG_WAIT && span->at < at) {
            span->has_power = true;
            span->power = POWER_SOURCE_WALL;
            return;
        }
    }
}

/* One drives in the same sentence. */
static bool
drives_near(const struct items *items, const struct spans *spans, size_t at)
{
    size_t from = sentence_start(items, at), i;

    for (i = 0; i < spans->count; i++) {
        if (spans->list[i].kind == LEG_DRIVE && spans->list[i].at >= from &&
            spans->list[i].at < at) {
            return true;
        }
    }
    return false;
}

/* ", in the car with its charger": a clause of its own for all drives of the sentence. */
static bool
is_clause_of_car(const struct items *items, const struct spans *spans, size_t at, int word)
{
    size_t from = clause_start(items, at), to = clause_end(items, at), i;
    bool car = word == POWER_WORD_CAR;

    for (i = 0; i < spans->count; i++) {
        if (spans->list[i].at >= from && spans->list[i].at < to) {
            return false;
        }
    }
    for (i = items->list[from].from; word == POWER_WORD_PLUG && i < items->list[to - 1].to; i++) {
        car = car || token_among(items->tokens, i, vehicles);
    }
    return car;
}

/* "3 hours on the island, the car has a plug": a plug of the car is of no stay elsewhere. */
static bool
is_of_car_left(const struct items *items, const struct spans *spans, const struct span *span,
               size_t at)
{
    size_t i;

    for (i = 0; i < spans->count && spans->list[i].kind == LEG_WAIT; i++) {
    }
    return span->kind == LEG_WAIT && i < spans->count &&
           clause_start(items, span->at) != clause_start(items, at);
}

/* What is fed from a car's plug is a drive, whatever it was called. */
static void
drives_by_plug(struct spans *spans)
{
    size_t i;

    for (i = 0; i < spans->count; i++) {
        if (spans->list[i].kind == LEG_OTHER && spans->list[i].power == POWER_SOURCE_CAR) {
            spans->list[i].kind = LEG_DRIVE;
        }
    }
}

/* "plugged in on the way down only", "enchufado de ida": of the first drive or the last one, where
 * there are several. False if the words tell no side. */
static bool
power_one_way(const struct items *items, struct spans *spans, size_t at, int word)
{
    static const char out[] = " down there out up ida over bajada subida ";
    static const char back[] = " back home return vuelta regreso ";
    size_t to = clause_end(items, at), drives = 0, first = 0, last = 0, i;
    bool way = items_have_word(items, at, to, " way ida vuelta regreso "), homeward;

    for (i = 0; i < spans->count; i++) {
        if (spans->list[i].kind == LEG_DRIVE) {
            first = drives++ == 0 ? i : first;
            last = i;
        }
        way = way && !(spans->list[i].at >= clause_start(items, at) && spans->list[i].at < to);
    }
    homeward = items_have_word(items, at, to, back);
    if (!way || drives < 2 || homeward == items_have_word(items, at, to, out) ||
        (word != POWER_WORD_CAR && word != POWER_WORD_PLUG)) {
        return false;
    }
    i = homeward ? last : first;
    spans->list[i].has_power = true;
    spans->list[i].power = spans->list[i].has_seats ? POWER_SOURCE_NONE : POWER_SOURCE_CAR;
    return true;
}

void
spans_power(const struct items *items, struct spans *spans)
{
    bool whole_way = tokens_have(items->tokens, "whole way|all the way|whole drive|whole time|"
                                                "entire way|todo el camino|entire drive");
    size_t at, i;

    for (at = 0; at < items->count; at++) {
        int word = item_value(items, at, ITEM_POWER);
        struct span *span;

        if (word < 0 || power_is_denied(items, at)) {
            continue;
        }
        if (power_one_way(items, spans, at, word)) {
            continue;
        }
        span = span_around(items, spans, at);
        if (span != NULL && drives_near(items, spans, at) &&
            ((word == POWER_WORD_CAR && span->kind != LEG_DRIVE) ||
             is_clause_of_car(items, spans, at, word))) {
            power_apart(items, spans, at, word);
            continue; /* "5 hours with a 30 minute stop, car charger" */
        }
        if (span != NULL && word == POWER_WORD_CAR && is_of_car_left(items, spans, span, at)) {
            continue;
        }
        if (span == NULL && (spans->count == 1 || whole_way) && spans->count > 0 &&
            !is_elsewhere(items, at, word, &spans->list[0])) {
            span = &spans->list[0];
        }
        if (span == NULL) {
            power_apart(items, spans, at, word);
            continue;
        }
        if (span->has_power && word == POWER_WORD_PLUG) {
            continue;
        }
        span->has_power = true;
        span->power = span->kind == LEG_FLIGHT ? POWER_SOURCE_NONE : power_of(word, span);
        if (span > spans->list && span->homeward && span->power == POWER_SOURCE_CAR &&
            (clause_start(items, span->at) == clause_start(items, (span - 1)->at) ||
             clause_start(items, span->at) != clause_start(items, at)) &&
            !(span - 1)->has_power) {
            (span - 1)->power = span->power; /* "2 hours there and 2 back with the adapter" */
        }
        for (i = 0; whole_way && i < spans->count; i++) {
            if (spans->list[i].kind == span->kind) {
                spans->list[i].power = span->power;
            }
        }
    }
    drives_by_plug(spans);
}

/* ---- power for a part of the way ------------------------------------------------------------- */

enum side { SIDE_NONE, SIDE_FIRST, SIDE_LAST };

/* "the first hour", "las ultimas 2 horas" */
static enum side
side_of(const struct items *items, size_t at)
{
    size_t first = items->list[at].from;

    if (first == 0) {
        return SIDE_NONE;
    }
    return token_among(items->tokens, first - 1, " first primera primeras ")      ? SIDE_FIRST
           : token_among(items->tokens, first - 1, " last final ultima ultimas ") ? SIDE_LAST
                                                                                  : SIDE_NONE;
}

/* The word of power in the clause of a part; -1 if there is none, or it is told not to be there. */
static int
power_of_clause(const struct items *items, size_t at)
{
    size_t to = clause_end(items, at), i;

    for (i = clause_start(items, at); i < to; i++) {
        int word = item_value(items, i, ITEM_POWER);

        if (word == POWER_WORD_WALL || word == POWER_WORD_CAR || word == POWER_WORD_PLUG) {
            return power_is_negated(items, i) ? -1 : word;
        }
    }
    return -1;
}

/* "drive 3 hours, wait 90 min, last hour drive": of the drive, and not of the wait. */
static bool
may_be_part(const struct span *part, const struct span *whole)
{
    return !part->has_kind || part->kind == whole->kind;
}

/* The span that it is a part of; spans->count if there is none. */
static size_t
whole_of(const struct items *items, const struct spans *spans, size_t part, bool has_power)
{
    size_t at = spans->list[part].at;
    bool of = item_is(items, at + 1, ITEM_OF) || item_text(items, at + 1, "de");
    size_t other;

    for (other = part > 0 ? part - 1 : 0; other < spans->count && other <= part + 1; other++) {
        if (other != part && (of || may_be_part(&spans->list[part], &spans->list[other])) &&
            spans->list[other].minutes > spans->list[part].minutes &&
            (of ? other > part && clause_start(items, spans->list[other].at) <= at
                : has_power && side_of(items, spans->list[other].at) == SIDE_NONE)) {
            return other;
        }
    }
    return spans->count;
}

void
spans_split(const struct items *items, struct spans *spans)
{
    size_t part, whole, low;

    for (part = 0; part < spans->count; part++) {
        enum side side = side_of(items, spans->list[part].at);
        int word = power_of_clause(items, spans->list[part].at);
        struct span with, rest;

        whole = side == SIDE_NONE ? spans->count : whole_of(items, spans, part, word >= 0);
        if (whole == spans->count) {
            continue;
        }
        with = rest = spans->list[whole];
        with.minutes = spans->list[part].minutes;
        with.power = with.kind == LEG_FLIGHT ? POWER_SOURCE_NONE : power_of(word, &with);
        rest.minutes -= with.minutes;
        rest.power = POWER_SOURCE_NONE;
        low = part < whole ? part : whole;
        spans->list[low] = side == SIDE_FIRST ? with : rest;
        spans->list[low + 1] = side == SIDE_FIRST ? rest : with;
        return;
    }
}
