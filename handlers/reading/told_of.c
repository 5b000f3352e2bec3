#include "told_of.h"

#include "bare_numbers.h"
#include "beside_numbers.h"
#include "counted.h"
#include "subjects.h"

/* "machine 64": the battery that is in it */
static bool
is_machine(const struct items *items, size_t at)
{
    return token_among(items->tokens, items->list[at].to - 1,
                       " machine concentrator maquina aparato concentrador ");
}

/* What stands between a battery and the charge that is told of it: "is", "says", "de ellas". */
static bool
is_telling(const struct items *items, size_t at)
{
    return item_is(items, at, ITEM_LINK) || item_is(items, at, ITEM_SHOWS) ||
           item_is(items, at, ITEM_HAVE) || item_is(items, at, ITEM_HEDGE) ||
           item_is(items, at, ITEM_SAME) || item_is(items, at, ITEM_NOW) ||
           item_is(items, at, ITEM_OF) ||
           (item_is(items, at, ITEM_AT) && item_value(items, at, ITEM_AT) != AT_IN) ||
           token_among(items->tokens, items->list[at].from, " ellas esas them those these ");
}

/* The battery of which the number is told; items->count if the words before it lead to none. */
static size_t
battery_of(const struct items *items, size_t at)
{
    size_t from = clause_start(items, at), found = items->count, i;

    for (i = at; i > from; i--) {
        if (item_text(items, i - 1, "esta")) {
            found = i - 1; /* "this one" or "is": what stands before it tells which */
            continue;
        }
        if (names_battery(items, i - 1) || item_is(items, i - 1, ITEM_BATTERY) ||
            is_machine(items, i - 1) || is_count(items, i - 1)) {
            return i - 1;
        }
        if (!is_telling(items, i - 1)) {
            break;
        }
    }
    return found;
}

/* "the other two are 80 and 35", "both read 40 and 60" */
static bool
is_list_of_several(const struct items *items, size_t at, size_t battery)
{
    return begins_list(items, at) && battery + 1 < at && is_count(items, battery) &&
           item_is(items, at - 1, ITEM_LINK) &&
           token_among(items->tokens, items->list[at].from - 1, " are read say were estan son ");
}

/* "una de ellas", "one of the 80s" */
static bool
is_one_of_them(const struct items *items, size_t battery)
{
    return items->list[battery].is == ITEM_NUMBER && items->list[battery].value <= 3 * 1000 &&
           tokens_phrase_at(items->tokens, items->list[battery].from + 1,
                            "of the|of them|of those|de ellas|de esas|de las") > 0;
}

bool
is_told_of_battery(const struct items *items, size_t at, size_t after)
{
    size_t battery = battery_of(items, at);
    bool big = items->list[at].value > BIG_MIN * 1000;
    bool ends_clause = clause_end(items, at) == after;

    if (battery == items->count) {
        return false;
    }
    if (is_list_of_several(items, at, battery)) {
        return true;
    }
    if (is_machine(items, battery)) {
        return big && battery + 1 == at && clause_start(items, at) + 1 >= at &&
               ends_here(items, after);
    }
    if (is_one_of_them(items, battery)) {
        return ends_here(items, after);
    }
    if (!names_battery(items, battery)) {
        return false;
    }
    return (big && ends_here(items, after)) || (items->list[at].value == 0 && ends_clause) ||
           (items->list[at].value >= 5 * 1000 && ends_clause && tells_other_before(items, at) &&
            item_value(items, at - 1, ITEM_AT) != AT_ON);
}

bool
is_joined_to_charge(const struct items *items, size_t at, size_t after)
{
    size_t next = over_links(items, after + 1);
    bool full = item_is(items, next, ITEM_FULL);

    if (item_is(items, after, ITEM_TO)) { /* "enough to go 25 to full" */
        return item_is(items, after + 1, ITEM_FULL) && lexicon_cue(items->tokens, CUE_CHARGING);
    }
    return clause_start(items, at) == at && item_is(items, after, ITEM_AND) &&
           (full || item_is(items, next, ITEM_CHARGE)); /* "62 + a full one" */
}
