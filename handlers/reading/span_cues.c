/* Words near a span that tell its kind: see span_cues.h. */
#include "span_cues.h"

#include "amounts.h"

enum { CUE_REACH = 7 };

bool
is_then(const struct items *items, size_t at)
{
    return item_text(items, at, "then") || item_text(items, at, "luego") ||
           item_text(items, at, "despues") || item_is(items, at, ITEM_AND);
}

bool
stops_cue(const struct items *items, size_t at)
{
    return items->list[at].is == ITEM_STOP || items->list[at].is == ITEM_PAUSE ||
           (items->list[at].is == ITEM_AMOUNT && items->list[at].unit == UNIT_MINUTE) ||
           items->list[at].is == ITEM_CLOCK;
}

/* What one does, as a leg: who rests or sleeps is in one place; -1 if the item tells nothing. */
static int
going_at(const struct items *items, size_t at)
{
    int going = item_value(items, at, ITEM_GOING), activity = item_value(items, at, ITEM_ACTIVITY);

    return going < 0 && (activity == ACTIVITY_REST || activity == ACTIVITY_SLEEP) ? (int)LEG_WAIT
                                                                                  : going;
}

/* A word for a way or a place; "no layover" is none. */
bool
is_cue(const struct items *items, size_t at)
{
    return going_at(items, at) >= 0 &&
           !(at > 0 && (item_text(items, at - 1, "no") || item_text(items, at - 1, "sin")));
}

/* Steps to the cue before (or behind); 0 if there is none. */
size_t
cue_back(const struct items *items, size_t at, size_t taken_from)
{
    size_t i;

    for (i = at; i > taken_from && at - i < CUE_REACH; i--) {
        if (items->list[i - 1].is == ITEM_CLOCK &&
            token_among(items->tokens, items->list[at].from - 1, " for runs lasts goes dura ")) {
            continue; /* "lunch at 12 for an hour", "starts at 1 and runs 3 hours" */
        }
        if (stops_cue(items, i - 1)) {
            return 0;
        }
        if (is_cue(items, i - 1)) {
            return at - (i - 1);
        }
    }
    return 0;
}

size_t
cue_ahead(const struct items *items, size_t at)
{
    size_t i;

    for (i = at + 1; i < items->count && i - at < CUE_REACH; i++) {
        if (stops_cue(items, i) || is_then(items, i) || item_text(items, i, "before") ||
            item_text(items, i, "antes") || item_text(items, i, "until") ||
            item_text(items, i, "till") || item_text(items, i, "til")) {
            return 0;
        }
        if (is_cue(items, i)) {
            return i - at;
        }
    }
    return 0;
}

/* "to the clinic" */
bool
leads_to(const struct items *items, size_t cue)
{
    size_t before = items->list[cue].from;

    if (token_among(items->tokens, before,
                    " wait sit stay visit rest eat stop esperar comer parar sentarme visitar ")) {
        return false; /* what one does, not where one goes */
    }
    if (before > 1 && cue > 0 && items->list[cue - 1].is == ITEM_WORD &&
        items->list[cue - 1].meaning_count == 0 &&
        token_among(items->tokens, before - 2, " the my his her our a ")) {
        before--; /* "to the heart doctor" */
    }
    before -= before > 0 && token_among(items->tokens, before - 1, " the my his her our la el mi ");
    return before > 0 && token_among(items->tokens, before - 1, " to from al a ");
}

void
set_kind(struct span *span, const struct items *items, size_t cue)
{
    static const char with_seats[] =
        " bus train coach shuttle subway metro tram tren autobus "
        "camion trolley tranvia limo microbus micro buseta omnibus trolebus metrobus minibus "
        "railway railroad monorail pesero pesera trencito ferrocarril ";
    size_t i;

    span->has_kind = true;
    span->kind = (enum leg_kind)going_at(items, cue);
    for (i = items->list[cue].from; i < items->list[cue].to; i++) {
        span->has_seats = span->has_seats || token_among(items->tokens, i, with_seats);
    }
}

/* "to the casino 45 min by bus" */
bool
goes_there(const struct items *items, size_t place, size_t way)
{
    return item_value(items, place, ITEM_GOING) == LEG_WAIT && leads_to(items, place) &&
           item_value(items, way, ITEM_GOING) != LEG_WAIT;
}

/* "to the clinic is 55 minutes": the way there */
bool
is_destination(const struct items *items, size_t cue)
{
    return item_value(items, cue, ITEM_GOING) == LEG_WAIT && leads_to(items, cue) &&
           token_among(items->tokens, items->list[cue].to, " is takes are es son ");
}

void
take_kind(struct span *span, enum leg_kind kind)
{
    span->has_kind = true;
    span->kind = kind;
}
