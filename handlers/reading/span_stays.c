/* Stays that are told by what one does there: see span_stays.h. */
#include "span_stays.h"

#include "span_cues.h"

enum { EVENT_REACH = 6 };

static bool
is_unknown_word(const struct items *items, size_t at)
{
    return at < items->count && items->list[at].is == ITEM_WORD &&
           items->list[at].meaning_count == 0 &&
           !token_among(items->tokens, items->list[at].from,
                        " another other otro otra otros otras more mas again ya total or o for por "
                        "at takes tarda took toma ");
}

/* Nothing but words that are not known, and little ones: "bible study 90 min". */
static bool
is_all_unknown(const struct items *items, size_t from, size_t to)
{
    bool unknown = false;
    size_t i;

    for (i = from; i < to; i++) {
        if (is_unknown_word(items, i)) {
            unknown = true;
        } else if (!item_is(items, i, ITEM_LINK) && !item_is(items, i, ITEM_ARTICLE) &&
                   !is_then(items, i)) {
            return false;
        }
    }
    return unknown;
}

/* "35 min by bus, shop for two hours": another thing than before, whatever it is. */
bool
does_something(const struct items *items, size_t last, size_t at)
{
    size_t from = clause_start(items, at), i;

    if (at > 1 && item_is(items, at - 1, ITEM_WORD) && is_then(items, at - 2)) {
        return true; /* "then soak 2 hours" */
    }
    if (from > last && is_all_unknown(items, from, at)) {
        return true; /* "beach 3 h" */
    }
    if (token_among(items->tokens, items->list[at].to, " de of ") &&
        is_unknown_word(items, at + 2)) {
        return true; /* "90 min de loteria" */
    }
    for (i = from > last ? from : last + 1; i < at; i++) {
        if (items->list[i].is == ITEM_WORD && items->list[i].meaning_count == 0 &&
            (item_text(items, at - 1, "for") || item_text(items, at + 1, "at"))) {
            return true;
        }
    }
    return false;
}

/* "church is a 10 min walk, runs 75 min", "the sermon goes an hour", "el bautizo dura 2 horas" */
bool
runs_itself(const struct items *items, size_t at)
{
    static const char whole[] =
        " trip way route whole thing journey loop crossing outing it this that "
        "battery batteries bateria baterias pila pilas viaje trayecto camino "
        "vuelta todo eso esto cosa one each primer primero "
        "segundo tercer tercero ultimo tramo leg hop ";
    size_t from = clause_start(items, at), i;

    if (at == from + 1 && token_among(items->tokens, items->list[from].from, " runs lasts dura ")) {
        return true;
    }
    for (i = at; i > from + 1 && at - i < EVENT_REACH; i--) {
        if (token_among(items->tokens, items->list[i - 1].to - 1,
                        " goes lasts runs dura durara last go run ")) {
            return is_unknown_word(items, i - 2) &&
                   items_find(items, from, i - 1, ITEM_GOING) == i - 1 &&
                   !items_have_word(items, from, i - 1, whole);
        }
        if (!item_is(items, i - 1, ITEM_LINK) && !item_is(items, i - 1, ITEM_ARTICLE) &&
            !item_is(items, i - 1, ITEM_HEDGE)) {
            return false;
        }
    }
    return false;
}

bool
has_event(const struct items *items, size_t at)
{
    size_t to = sentence_end(items, at);

    return items_find(items, sentence_start(items, at), to, ITEM_EVENT) < to;
}

bool
lies_between(const struct items *items, size_t at)
{
    static const char between[] =
        "in between|between them|between those|between the two|between both|between flights|"
        "between the flights|en medio|entre ellos|entre los dos|entre uno y otro|entre vuelos|"
        "entre medio|entre vuelo y vuelo|entre cada uno|entre los vuelos";
    static const char leads[] = " is its there theres an a i we have ive weve got about hay es una "
                                "tengo tenemos , : unos como son with ";
    size_t first = items->list[span_first(items, at)].from, steps, i;

    while (first > 0 && token_among(items->tokens, first - 1, leads)) {
        first--;
    }
    for (steps = 2; steps <= 4 && steps <= first; steps++) {
        i = tokens_phrase_at(items->tokens, first - steps, between);
        if (i == steps) {
            return true;
        }
    }
    return false;
}
