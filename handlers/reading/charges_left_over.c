#include "charges_left_over.h"

#include <assert.h>

#include "amounts.h"

enum { ABOVE_HOURS = 12, FEW = 2 };

/* "im 78", "turning 81": of somebody, and no charge */
static bool
is_of_a_person(const struct items *items, size_t at)
{
    static const char ages[] = " im am hes shes turned turning turns cumplo cumple cumplio soy age "
                               "aged of de a en la el room number numero page mile gate por ";

    return token_among(items->tokens, tokens_back(items->list[at].from, 1), ages) ||
           tokens_phrase_at(items->tokens, tokens_back(items->list[at].from, 2),
                            "he is|she is|i am|mom is|dad is") == 2;
}

bool
nobody_took(const struct items *items, size_t at)
{
    const struct item *item = &items->list[at];

    return item_free_number(items, at) && !item->one && !item->ordinal && !item->times &&
           !item->fraction && !item->negative && item->value > ABOVE_HOURS * 1000 &&
           item->high <= 100 * 1000 && item->value % 1000 == 0 && item->high % 1000 == 0 &&
           !item_is(items, at + 1, ITEM_UNIT) && !item_is(items, at - 1, ITEM_NAMED) &&
           !item_is(items, at - 1, ITEM_PRICE) && !item_is(items, at - 1, ITEM_CLOCK_LEAD) &&
           !item_is(items, at - 1, ITEM_BY) && !item_is(items, at - 1, ITEM_UNTIL) &&
           !(item_is(items, at + 1, ITEM_WORD) && items->list[at + 1].meaning_count == 0 &&
             clause_end(items, at) > at + 1) &&
           !is_of_a_person(items, at);
}

size_t
charges_left_over(struct items *items, struct told *told)
{
    size_t at, first = items->count;
    int found = 0;
    bool untold; /* hours are asked for, and nothing else is told of batteries */

    for (at = 0; at < items->count; at++) {
        found += nobody_took(items, at) ? 1 : 0;
    }
    untold = told->count == 0 && told->kind == TOLD_HOURS_LEFT && found <= FEW;
    if (found == 0 || (found != told->count && !untold) || told->impossible ||
        told->kind == TOLD_WATCH || told->kind == TOLD_CYLINDER) {
        return first;
    }
    assert(told->charge_count == 0 && found <= TOLD_BATTERIES_MAX);
    for (at = 0; at < items->count; at++) {
        if (nobody_took(items, at)) {
            told->charges[told->charge_count++] =
                (struct percent){items->list[at].value / 1000, items->list[at].high / 1000};
            told->count -= told->count > 0 ? 1 : 0;
            items_spend(items, at, 1);
            first = at < first ? at : first;
        }
    }
    return first;
}
