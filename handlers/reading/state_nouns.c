#include "state_nouns.h"

#include <string.h>

#include "hedges.h"

static const char no_nouns[] =
    " will would can could shall should may might must if so but because since while when hi hey "
    "hello please thanks thx thank like as lol ok okay how what and or then per puede podria thing "
    "thingy gizmo gadget contraption box portable breather juice cosa maquinita cajita "
    "podra si pero porque cuando hola oye para con como gracias porfa favor osea entonces que ";

/* "the cup was full": what was so */
static size_t
over_was(const struct items *items, size_t before)
{
    return item_is(items, before, ITEM_WAS) && item_text(items, before, "was") &&
                   item_is(items, before - 1, ITEM_WORD)
               ? before - 1
               : before;
}

/* "full moon", "dead quiet", "my belly is full": nothing near is a battery. */
bool
is_of_no_battery(const struct items *items, size_t at)
{
    size_t from = clause_start(items, at), before = over_was(items, back_over_links(items, at)), i;
    bool noun_behind = item_is(items, at + 1, ITEM_WORD) &&
                       !token_among(items->tokens, items->list[at].to, no_nouns);
    bool is_phrase = token_among(items->tokens, items->list[at].from, " is are "); /* "is flat" */
    bool noun_before = before < at && (before + 1 < at || is_phrase) &&
                       item_is(items, before, ITEM_WORD) &&
                       !token_among(items->tokens, items->list[before].from, no_nouns) &&
                       strlen(items->tokens->list[items->list[before].from].text) > 1; /* "B is" */

    for (i = from; i < at; i++) {
        if (item_is(items, i, ITEM_BATTERY) || item_is(items, i, ITEM_OTHER) ||
            item_is(items, i, ITEM_ORDINAL) || item_is(items, i, ITEM_BOTH) ||
            item_is(items, i, ITEM_ALL) || item_is(items, i, ITEM_HAVE) ||
            items->list[i].is == ITEM_NUMBER || item_is(items, i, ITEM_SHOWS)) {
            return false;
        }
    }
    if (before < at &&
        (before + 1 < at || token_among(items->tokens, items->list[at].from - 1, " is esta ")) &&
        (item_is(items, before, ITEM_GOING) || item_is(items, before, ITEM_EVENT))) {
        return true; /* "the bus is full" */
    }
    return (noun_behind && !item_is(items, at + 1, ITEM_BATTERY)) || noun_before;
}
