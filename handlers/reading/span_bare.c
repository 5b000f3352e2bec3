/* Lengths whose unit is not told: see span_bare.h. */
#include "span_bare.h"

#include "amounts.h"

/* "the way down is one and a half", "de bajada 2" */
static bool
follows_way(const struct items *items, size_t at)
{
    size_t from = clause_start(items, at), before = items->list[at].from;

    while (
        before > items->list[from].from &&
        token_among(items->tokens, before - 1, " is takes another about like es son otras como ")) {
        before--;
    }
    return before > items->list[from].from && (before < items->list[at].from || items->spanish) &&
           token_among(items->tokens, before - 1,
                       " down up back return returning home over out bajada subida vuelta regreso "
                       "ida bajar subir regresar volver regresamos volvemos ");
}

/* "walk 20, bus 40, walk 20 min": the unit comes last. */
static bool
minutes_follow(const struct items *items, size_t at)
{
    size_t i;

    for (i = at + 1; i < items->count && items->list[i].is != ITEM_STOP; i++) {
        if (item_is_duration(items, i)) {
            return items->list[at].value >= 10 * 1000 && !items->list[i].spent &&
                   item_is(items, at - 1, ITEM_GOING);
        }
    }
    return false;
}

/* "bus 25, walk 15": minutes, once a length was told. */
bool
span_is_bare_minutes(const struct items *items, size_t at, const struct spans *spans)
{
    const struct item *item = &items->list[at];

    return item_free_number(items, at) && !item->one && !item->ordinal && !item->fraction &&
           !item->times && item->value % 1000 == 0 && item->value >= 5 * 1000 &&
           item->value <= 180 * 1000 &&
           (spans->count > 0 || minutes_follow(items, at) ||
            (item->value >= 10 * 1000 && span_is_way_out(items, at))) &&
           (span_is_way_out(items, at) || item_is(items, at - 1, ITEM_GOING) ||
            token_among(items->tokens, item->to, " between entre ") ||
            item_is(items, at + 1, ITEM_GOING) || item_is(items, at + 1, ITEM_HOMEWARD) ||
            (item_is(items, at - 1, ITEM_HOMEWARD) && spans->count > 0) ||
            (spans->count > 0 && items->list[at].value >= 10 * 1000 && follows_way(items, at) &&
             item->value == item->high) ||
            (item_is(items, at - 2, ITEM_GOING) && item->value >= 10 * 1000 &&
             token_among(items->tokens, items->list[at - 1].from, " down up back home ")) ||
            (item_is(items, at - 2, ITEM_GOING) &&
             token_among(items->tokens, items->list[at - 1].from, " otros another "))) &&
           !item_is(items, at + 1, ITEM_UNIT) &&
           !(item_is(items, at - 1, ITEM_GOING) && /* "bus 61 takes 2 hours" */
             token_among(items->tokens, items->list[at].to, " takes tarda leaves sale goes va "));
}

/* "150 minutes on the coach, a stop, 150 more": minutes, as those told before */
bool
span_is_as_many_more(const struct items *items, size_t at, const struct spans *spans)
{
    bool of_way = token_among(items->tokens, items->list[at].to, " more mas ");

    return spans->count > 0 && item_free_number(items, at) && !items->list[at].one && of_way &&
           at + 2 == clause_end(items, at) && items->list[at].value >= 13 * 1000 &&
           items->list[at].value <= 600 * 1000 && items->list[at].value % 1000 == 0;
}

/* "10 back", "otros 40 de bajada" */
static bool
leads_back(const struct items *items, size_t at)
{
    return item_is(items, at + 1, ITEM_HOMEWARD) ||
           tokens_phrase_at(items->tokens, items->list[at].to,
                            "down|de bajada|bajada|bajando|de subida|back down|back up|"
                            "para bajar|pa bajar|al bajar") > 0;
}

bool
span_is_as_out(const struct items *items, size_t at, const struct spans *spans)
{
    size_t i;

    if (!item_free_number(items, at) || items->list[at].one || !leads_back(items, at)) {
        return false;
    }
    for (i = 0; i < spans->count; i++) {
        const struct item *out = &items->list[spans->list[i].at];

        if (spans->list[i].minutes * 1000 == items->list[at].value && !out->whole_hours) {
            return true;
        }
    }
    return false;
}

bool
span_is_half_hour_back(const struct items *items, size_t at, const struct spans *spans)
{
    size_t i;

    if (!item_is(items, at, ITEM_HALF) || items->list[at].spent || !leads_back(items, at)) {
        return false;
    }
    for (i = 0; i < spans->count; i++) {
        if (spans->list[i].minutes % 60 == 30) {
            return true;
        }
    }
    return false;
}

/* "drive 2 more" */
static bool
is_more_of_a_way(const struct items *items, size_t at)
{
    return item_is(items, at - 1, ITEM_GOING) &&
           (item_text(items, at + 1, "more") || item_text(items, at + 1, "mas"));
}

/* "3 hours by car and then 5 at the lookout", "y otras 2 en carro" */
static bool
is_next_part(const struct items *items, size_t at)
{
    size_t first = items->list[at].from, to = clause_end(items, at), i;

    if (first == 0 || items->list[at].one ||
        !token_among(items->tokens, first - 1, " then luego despues otras otros another ") ||
        !(token_among(items->tokens, items->list[at].to, " en in at on by ") ||
          (token_is(items->tokens, items->list[at].to, "de") &&
           item_is(items, at + 2, ITEM_GOING)))) { /* "otras dos de guagua" */
        return false;
    }
    for (i = at + 1; i < to && i < at + 5; i++) {
        if (item_is(items, i, ITEM_BATTERY) || item_is(items, i, ITEM_OTHER) ||
            items->list[i].is == ITEM_NUMBER || item_is(items, i, ITEM_MODE)) {
            return false;
        }
        if (item_is(items, i, ITEM_GOING) || items->list[i].meaning_count == 0) {
            return true;
        }
    }
    return false;
}

/* "2 hrs each way and maybe 5 there" */
static bool
is_stay_there(const struct items *items, size_t at)
{
    return (item_text(items, at + 1, "there") || item_text(items, at + 1, "alla")) &&
           !items->list[at].one &&
           items_find(items, clause_start(items, at), at, ITEM_EACH_WAY) < at;
}

/* "4 hours by boat and 2 by car" */
static bool
is_by_vehicle(const struct items *items, size_t at)
{
    int going = item_value(items, at + 1, ITEM_GOING);

    if (token_among(items->tokens, items->list[at].to, " by on in ") && !items->list[at].one) {
        going = going >= 0 ? going : item_value(items, at + 2, ITEM_GOING);
    }
    return (item_is(items, at - 1, ITEM_AND) || (at > 0 && items->list[at - 1].is == ITEM_PAUSE)) &&
           (going == LEG_DRIVE || going == LEG_HIKE);
}

/* "drive 2 hours, hike 3, drive 2 back", "we drive 3 hrs, stay 5": nothing that it counts */
static bool
is_told_of_way(const struct items *items, size_t at)
{
    return item_is(items, at - 1, ITEM_GOING) && !items->list[at].one &&
           (clause_end(items, at) == at + 1 || item_is(items, at + 1, ITEM_AND) ||
            token_among(items->tokens, items->list[at].to, " then luego despues there alla "));
}

/* "2 hours there and 2 back": hours, as the length before. */
bool
span_is_bare_hours(const struct items *items, size_t at, const struct spans *spans)
{
    const struct item *item = &items->list[at];

    return spans->count > 0 &&
           (items->list[spans->list[spans->count - 1].at].whole_hours ||
            (items->list[spans->list[0].at].whole_hours &&
             (is_more_of_a_way(items, at) || is_next_part(items, at) ||
              is_told_of_way(items, at)))) &&
           item_free_number(items, at) && item->value <= 12 * 1000 && !item->ordinal &&
           !token_among(items->tokens, items->list[at].from - 1, " las los ") &&
           (item_is(items, at + 1, ITEM_HOMEWARD) ||
            item_value(items, at + 1, ITEM_GOING) == LEG_WAIT || is_more_of_a_way(items, at) ||
            (item_text(items, at + 1, "de") && item_is(items, at + 2, ITEM_GOING)) ||
            is_by_vehicle(items, at) ||
            (item_text(items, at - 1, "de") && item_is(items, at - 2, ITEM_OTHER)) ||
            (follows_way(items, at) && !items->list[at].one) || is_next_part(items, at) ||
            is_told_of_way(items, at) ||
            token_among(items->tokens, items->list[at].to,
                        " down up over out bajando subiendo abajo arriba bajada subida ") ||
            (item_text(items, at + 1, "de") &&
             token_among(items->tokens, items->list[at].to + 1, " bajada subida ")) ||
            span_stays_there(items, at) || is_stay_there(items, at)) &&
           !item_is(items, at + 1, ITEM_UNIT) && !item_is(items, at + 1, ITEM_BATTERY);
}
