#include "whole_and_half.h"

#include "counted.h"
#include "told.h"

/* "two and a half batteries", "dos pilas y media": the items it takes, 0 if there is none. */
size_t
whole_and_half_at(const struct items *items, size_t at)
{
    const struct item *item = &items->list[at];
    size_t next = at + 1, last;
    bool noun, made = item_free_number(items, at) && item->value % 1000 == 500 &&
                      item->value == item->high && !item->fraction &&
                      item->value < TOLD_BATTERIES_MAX * 1000;

    if (made) { /* amounts.c made one number of it */
        next += item_is(items, next, ITEM_FULL) ? 1 : 0;
        return item_value(items, next, ITEM_BATTERY) == 2 ? next + 1 - at : 0;
    }
    if (item_is(items, at, ITEM_ARTICLE) && item_value(items, next, ITEM_BATTERY) == 1 &&
        item_is(items, next + 1, ITEM_AND)) { /* "a pack and a half" */
        last = next + 2 + (item_is(items, next + 2, ITEM_ARTICLE) ? 1U : 0U);
        return item_is(items, last, ITEM_HALF) && !item_is(items, last + 1, ITEM_FULL) &&
                       !item_is(items, last + 1, ITEM_OTHER) &&
                       !item_is(items, last + 1, ITEM_BATTERY)
                   ? last + 1 - at
                   : 0;
    }
    if (item_text(items, at, "pila") || item_text(items, at, "bateria")) {
        return (!item_is(items, at - 1, ITEM_NUMBER) || items->list[at - 1].one) &&
                       item_is(items, next, ITEM_AND) && item_text(items, next + 1, "media") &&
                       (next + 2 >= items->count || clause_stops(items, next + 2) ||
                        item_is(items, next + 2, ITEM_AT))
                   ? 3
                   : 0; /* "me queda pila y media" */
    }
    if (!is_count(items, at)) {
        return 0;
    }
    noun = item_is(items, next, ITEM_BATTERY);
    next += noun ? 1 : 0;
    if (!item_is(items, next, ITEM_AND)) {
        return 0;
    }
    next += item_is(items, next + 1, ITEM_ARTICLE) ? 2 : 1;
    if (!item_is(items, next, ITEM_HALF)) {
        return 0;
    }
    last = next + 1;
    if (item_value(items, last, ITEM_BATTERY) == 2) {
        return last + 1 - at;
    }
    return noun && items->spanish && item_text(items, next, "media") &&
                   (last >= items->count || clause_stops(items, last) ||
                    item_is(items, last, ITEM_AT))
               ? last - at
               : 0;
}
