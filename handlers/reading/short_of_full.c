#include "short_of_full.h"

bool
short_of_full_at(const struct items *items, size_t at, struct state *state)
{
    static const char behind[] =
        "short of full|short of a full|from full|away from full|below full|shy of full|"
        "short of a hundred|short of 100|shy of 100|shy of a hundred|para estar llena|para llena|"
        "para que este llena|para llenarse|para llegar al 100|para llegar al cien|para el 100|"
        "para el cien|para la carga completa";
    const struct item *item = &items->list[at];
    bool percent = item_in(items, at, UNIT_PERCENT);
    bool lacks =
        token_among(items->tokens, tokens_back(item->from, 1), " falta faltan lacks short ");
    size_t taken, next = at + 1;

    if (!(percent || item_free_number(items, at)) || item->negative || item->value > 100 * 1000 ||
        item->value % 1000 != 0 || item->value != item->high || item_in(items, at, UNIT_MINUTE)) {
        return false;
    }
    taken = tokens_phrase_at(items->tokens, item->to, behind);
    if (taken == 0 || (items->spanish && !lacks)) {
        return false;
    }
    while (next < items->count && items->list[next].from < item->to + taken) {
        next++;
    }
    state->charge = (struct percent){100 - item->value / 1000, 100 - item->value / 1000};
    state->count = next - at;
    return true;
}

bool
is_used_up(const struct items *items, size_t at, size_t after)
{
    static const char used[] = " used gone spent burned gaste gasto gastado gastada usado usada ";

    return token_among(items->tokens, items->list[after - 1].to, used) ||
           token_among(items->tokens, tokens_back(items->list[at].from, 1),
                       " used burned gaste gasto gastado usado ") ||
           tokens_phrase_at(items->tokens, items->list[after - 1].to, "is gone|is used|are gone") >
               0;
}
