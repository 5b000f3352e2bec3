#include "states_past.h"

#include "bare_numbers.h"
#include "hedges.h"

enum { PHRASE_REACH = 4 };

/* "and 41 when I looked just now" */
static bool
tells_before(const struct items *items, size_t from, size_t now)
{
    size_t begin = clause_start(items, now), i;

    begin = begin > from ? begin : from;
    for (i = now; i > begin && now - i < PHRASE_REACH; i--) {
        if (item_in(items, i - 1, UNIT_PERCENT) ||
            (item_free_number(items, i - 1) && items->list[i - 1].value > BIG_MIN * 1000)) {
            return true;
        }
    }
    return false;
}

/* "the other is 60", "battery 2 has 40", but no "the other day" */
static bool
begins_with_battery(const struct items *items, size_t at)
{
    at += item_is(items, at, ITEM_LINK) && !item_is(items, at, ITEM_OTHER) ? 1 : 0;
    return (item_is(items, at, ITEM_OTHER) || item_is(items, at, ITEM_ORDINAL) ||
            item_value(items, at, ITEM_BATTERY) == 1) &&
           !token_among(items->tokens, items->list[at].to,
                        " day night week time dia noche semana vez ") &&
           !item_text(items, at, "this") && !item_text(items, at, "esta");
}

/* "was full but I used it some": less by now, and nobody says how much */
static bool
was_but_is_not(const struct items *items, size_t at, size_t after)
{
    size_t from = clause_start(items, at);

    if (items_have_word(items, from, at, " thought figured assumed creia pense crei pensaba ") &&
        token_among(items->tokens, items->list[after - 1].to,
                    item_is(items, at, ITEM_FULL) ? " but pero , and y when " : " but pero ")) {
        return true; /* "I thought it was full but it says 71" */
    }
    return item_is(items, at, ITEM_FULL) && at > from && item_is(items, at - 1, ITEM_WAS) &&
           token_among(items->tokens, items->list[after - 1].to, " but pero ") &&
           !begins_with_battery(items, after + 1);
}

/* "had 2 at 100 but I am down to 1 at 100": those of now are told behind */
static bool
had_but_fewer(const struct items *items, size_t at, size_t after)
{
    size_t but = items->list[after - 1].to, i;

    if (items_find(items, clause_start(items, at), at, ITEM_WAS) == at ||
        !token_among(items->tokens, but, " but pero ")) {
        return false;
    }
    for (i = but + 1; i < but + 5; i++) {
        if (tokens_phrase_at(items->tokens, i,
                             "down to|left with|now i|now have|only have|now only|solo me queda|"
                             "nomas me queda|ahora tengo|ya solo|ya nomas") > 0) {
            return true;
        }
    }
    return false;
}

/* "was 95 this morning, no idea now", "ahora no se" */
static bool
is_unknown_now(const struct items *items, size_t from)
{
    size_t i;

    for (i = from; i < items->count; i++) {
        if (item_is(items, i, ITEM_UNKNOWN) &&
            (item_is(items, i + 1, ITEM_NOW) || item_is(items, i - 1, ITEM_NOW) ||
             item_is(items, i - 1, ITEM_NOW_IS) ||
             token_among(items->tokens, items->list[i].from - 1, " now today ahora hoy "))) {
            return true;
        }
    }
    return false;
}

/* "now at the top its 62": the next number of the clause, told by a verb. */
static bool
tells_after_now(const struct items *items, size_t now)
{
    size_t to = clause_end(items, now), i;

    for (i = now + 1; i < to && i < now + PHRASE_REACH + 4; i++) {
        if (items->list[i].is == ITEM_NUMBER || items->list[i].is == ITEM_AMOUNT) {
            return (item_in(items, i, UNIT_PERCENT) ||
                    (item_free_number(items, i) && items->list[i].value > BIG_MIN * 1000)) &&
                   (item_is(items, i - 1, ITEM_NOW_IS) || item_is(items, i - 1, ITEM_SHOWS) ||
                    item_is(items, i - 1, ITEM_AT) || item_is(items, i - 1, ITEM_LINK));
        }
    }
    return false;
}

/* "was at 90 when we sat down, 58 when we paid": a lower one later, of another moment */
static bool
tells_lower_later(const struct items *items, size_t at, size_t after)
{
    size_t i;

    if (!token_among(items->tokens, items->list[after - 1].to,
                     " when before cuando al antes at ")) {
        return false;
    }
    for (i = after; i < items->count && items->list[i].is != ITEM_STOP; i++) {
        if ((item_free_number(items, i) || item_in(items, i, UNIT_PERCENT)) &&
            items->list[i].value < items->list[at].value && items->list[i].value > BIG_MIN * 1000 &&
            clause_start(items, i) + 2 > i) {
            return token_among(items->tokens, items->list[i].to,
                               " when by after cuando al despues % percent at ");
        }
    }
    return false;
}

/* "now its 62", "62 now": another charge follows that is of now. */
static bool
tells_of_now(const struct items *items, size_t from)
{
    size_t i, next;

    for (i = from; i < items->count; i++) {
        if (!item_is(items, i, ITEM_NOW) && !item_is(items, i, ITEM_NOW_IS) &&
            !token_among(items->tokens, items->list[i].from, " today hoy ")) {
            continue;
        }
        for (next = i + 1; item_is(items, next, ITEM_LINK) || item_is(items, next, ITEM_AT) ||
                           item_is(items, next, ITEM_OTHER) || item_is(items, next, ITEM_BATTERY) ||
                           (next < items->count && items->list[next].one) ||
                           item_is(items, next, ITEM_HEDGE) || item_is(items, next, ITEM_SHOWS);
             next++) {
        }
        if (item_is(items, next, ITEM_NOT) && clause_stops(items, next + 1)) {
            return true; /* "was 100, now its not, like 60" */
        }
        if (item_in(items, next, UNIT_PERCENT) || tells_before(items, from, i) ||
            tells_after_now(items, i) || (i > from && item_in(items, i - 1, UNIT_PERCENT)) ||
            (item_free_number(items, next) && items->list[next].value > BIG_MIN * 1000) ||
            (i > from && item_free_number(items, i - 1) &&
             items->list[i - 1].value > BIG_MIN * 1000)) {
            return true;
        }
    }
    return false;
}

/* "its at 25, was 100 at bedtime": told of the same battery behind what it is now */
static bool
was_before_now(const struct items *items, size_t at)
{
    size_t from = clause_start(items, at), last;

    if (from < 2 || !item_is(items, from, ITEM_WAS) || at - from > 2) {
        return false;
    }
    last = from - 2;
    return items->list[last].spent &&
           (items->list[last].is == ITEM_NUMBER || item_in(items, last, UNIT_PERCENT)) &&
           items_find(items, clause_start(items, last), last, ITEM_OTHER) == last &&
           (items_find(items, clause_start(items, last), last, ITEM_NOW_IS) < last ||
            items_find(items, clause_start(items, last), last, ITEM_SHOWS) < last);
}

/* "turned it on at 9 with 100, it is 11:30 and it shows 40": of one battery, which sank. */
static bool
is_of_start(const struct items *items, size_t at, size_t after)
{
    static const char starts[] = " turned started left began set prendi prendimos empece empezamos "
                                 "sali salimos arranque encendi puse put plugged unplugged ";
    bool now = false;
    size_t i;

    if (!items_have_word(items, clause_start(items, at), at, starts)) {
        return false;
    }
    for (i = after; i < items->count && !item_is(items, i, ITEM_OTHER) &&
                    !item_is(items, i, ITEM_BATTERY) && !item_is(items, i, ITEM_FULL);
         i++) {
        now = now || items->list[i].is == ITEM_CLOCK || item_is(items, i, ITEM_NOW) ||
              item_is(items, i, ITEM_NOW_IS);
        if (now && (item_free_number(items, i) || item_in(items, i, UNIT_PERCENT)) &&
            items->list[i].value > BIG_MIN * 1000) {
            return (item_is(items, at, ITEM_FULL) ||
                    items->list[i].value < items->list[at].value) &&
                   (item_is(items, i - 1, ITEM_SHOWS) || item_is(items, i - 1, ITEM_AT));
        }
    }
    return false;
}

/* "ya no trae 100, trae 70": denied by its verb, and told otherwise right behind */
static bool
is_denied_by_verb(const struct items *items, size_t at)
{
    size_t verb = back_over_links(items, at), next = at + 2, to = sentence_end(items, at);

    if (verb == 0 || verb >= at || !item_is(items, verb - 1, ITEM_NOT) ||
        !(item_is(items, verb, ITEM_SHOWS) || item_is(items, verb, ITEM_HAVE)) ||
        at + 1 >= items->count || items->list[at + 1].is != ITEM_PAUSE) {
        return false;
    }
    while (next < to && (item_is(items, next, ITEM_LINK) || item_is(items, next, ITEM_SHOWS) ||
                         item_is(items, next, ITEM_NOW_IS))) {
        next++;
    }
    return next < to && next > at + 2 &&
           (item_free_number(items, next) || item_in(items, next, UNIT_PERCENT));
}

bool
state_is_past(const struct items *items, size_t at, size_t after)
{
    size_t i;

    for (i = after; i < after + 2 && i < items->count; i++) {
        if (item_is(items, i, ITEM_EARLIER) &&
            (!item_is(items, i, ITEM_AM) || tells_of_now(items, after))) {
            return true;
        }
        if (!item_is(items, i, ITEM_LINK)) {
            break;
        }
    }
    if (is_denied_by_verb(items, at) || is_of_start(items, at, after) ||
        was_before_now(items, at) || was_but_is_not(items, at, after) ||
        had_but_fewer(items, at, after)) {
        return true;
    }
    for (i = clause_start(items, at); i < at; i++) {
        if ((item_is(items, i, ITEM_WAS) || item_is(items, i, ITEM_EARLIER) ||
             token_among(items->tokens, items->list[i].from, " tenia estaba traia marcaba ")) &&
            is_unknown_now(items, after)) {
            return true;
        }
        if (item_is(items, i, ITEM_WAS) && at - i < PHRASE_REACH + 3 &&
            (tells_of_now(items, after) || tells_lower_later(items, at, after))) {
            return true;
        }
        if ((item_is(items, i, ITEM_EARLIER) || item_is(items, i, ITEM_AGO)) &&
            tells_of_now(items, after)) {
            return true; /* "an hour ago 80, now 60" */
        }
    }
    return false;
}

static bool
is_light_number(const struct items *items, size_t at)
{
    return item_free_number(items, at) && items->list[at].value <= 5 * 1000 &&
           items->list[at].value % 1000 == 0 && !items->list[at].fraction &&
           !item_is(items, at + 1, ITEM_UNIT) && !item_is(items, at + 1, ITEM_BATTERY);
}

/* A number that may count lights, and nothing else. */
static bool
is_few(const struct items *items, size_t at)
{
    return is_light_number(items, at) && !item_is(items, at - 1, ITEM_SETTING) &&
           !item_is(items, at - 1, ITEM_MODE) && !item_is(items, at - 1, ITEM_AT);
}

bool
lights_are_past(const struct items *items, size_t at, size_t after, size_t *now)
{
    size_t from = clause_start(items, at), i;
    bool past = item_is(items, after, ITEM_EARLIER) ||
                token_among(items->tokens, items->list[after - 1].to, " when before cuando antes ");

    *now = items->count;
    for (i = from; i < at; i++) {
        past = past || (at - i < PHRASE_REACH && item_is(items, i, ITEM_WAS)) ||
               item_is(items, i, ITEM_EARLIER);
    }
    if (item_is(items, after, ITEM_WAS)) { /* "three lights were on this morning" */
        past = past || items_find(items, after, clause_end(items, at), ITEM_EARLIER) <
                           clause_end(items, at);
    }
    for (i = after; past && i < items->count; i++) {
        size_t next = i + 1;

        if (!item_is(items, i, ITEM_NOW) && !item_is(items, i, ITEM_NOW_IS)) {
            continue;
        }
        next += item_is(items, next, ITEM_LINK) || item_is(items, next, ITEM_SHOWS) ||
                        item_is(items, next, ITEM_NOW_IS)
                    ? 1
                    : 0;
        if (item_is(items, i, ITEM_NOW_IS) && item_value(items, next, ITEM_AT) == AT_ON &&
            is_light_number(items, next + 1)) {
            *now = next + 1; /* "and now its on 3" */
            return true;
        }
        if ((i > after && item_is(items, i - 1, ITEM_LIGHT)) ||
            item_is(items, next + 1, ITEM_LIGHT)) {
            return true;
        }
        *now = i > after && is_few(items, i - 1) ? i - 1
               : is_few(items, next)             ? next
                                                 : items->count;
        return *now < items->count;
    }
    return false;
}
