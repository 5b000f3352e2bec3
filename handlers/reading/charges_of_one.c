#include "charges_of_one.h"

#include "beside_numbers.h"

/* "para las diez llena", "ya llena": when it is so is told in the clause. */
static bool
tells_hour(const struct items *items, size_t at)
{
    size_t from = clause_start(items, at), to = clause_end(items, at), i;

    for (i = from; i < to; i++) {
        if (items->list[i].is == ITEM_CLOCK || item_is(items, i, ITEM_DAY) ||
            item_is(items, i, ITEM_CLOCK_LEAD) || item_is(items, i, ITEM_BY)) {
            return true;
        }
    }
    return token_among(items->tokens, tokens_back(items->list[at].from, 1), " ya already ");
}

void
charges_drop_goal(const struct items *items, struct groups *groups)
{
    const struct group *last = &groups->list[groups->count > 0 ? groups->count - 1 : 0];
    const struct state *before = &groups->list[groups->count > 1 ? groups->count - 2 : 0].state;

    if (groups->count > 1 && !last->state.is_lights && last->state.charge.low == 100 &&
        !last->named && last->times == 1 && last->subject == 0 &&
        (before->is_lights || before->charge.high < 100) &&
        clause_start(items, last->state.from) > before->from &&
        (sentence_start(items, last->state.from) > before->from ||
         tells_hour(items, last->state.from)) &&
        item_text(items, sentence_end(items, last->state.from), "?")) {
        groups_drop(groups, groups->count - 1, 1);
    }
}

/* Something in the text speaks of a second battery. */
static bool
speaks_of_another(const struct items *items)
{
    size_t i, nouns = 0;

    for (i = 0; i < items->count; i++) {
        nouns += item_value(items, i, ITEM_BATTERY) == 1 ? 1 : 0;
        if (names_battery(items, i) || item_value(items, i, ITEM_BATTERY) == 2 ||
            item_is(items, i, ITEM_EACH) || item_is(items, i, ITEM_SAME) ||
            token_among(items->tokens, items->list[i].from, " ones plus + y & also tambien and ")) {
            return true;
        }
    }
    return nouns > 1;
}

void
charges_join(const struct items *items, struct groups *groups)
{
    struct percent *first = &groups->list[0].state.charge;
    size_t i;

    for (i = 0; i < groups->count; i++) {
        const struct group *group = &groups->list[i];

        if (group->state.is_lights || group->times != 1 || group->subject > 0 ||
            (i > 0 && sentence_start(items, group->state.from) <= groups->list[i - 1].state.from)) {
            return;
        }
    }
    if (groups->count < 2 || speaks_of_another(items)) {
        return;
    }
    for (i = 1; i < groups->count; i++) {
        if (groups->list[i].state.charge.low < first->low) {
            *first = groups->list[i].state.charge;
        }
    }
    groups->count = 1;
}

bool
charges_of_any(const struct items *items, const struct state *state)
{
    size_t from = clause_start(items, state->from), each, behind;

    each = items_find(items, from, state->from, ITEM_EACH);
    behind = each + 1;
    behind += item_is(items, behind, ITEM_BATTERY) ? 1 : 0;
    return each < state->from &&
           (item_is(items, behind, ITEM_LASTS) || item_is(items, each - 1, ITEM_LASTS));
}

bool
speaks_of_one(const struct items *items)
{
    size_t at, next;

    if (tokens_have(items->tokens,
                    "does one last|will one last|one last on|i get from one|i get out "
                    "of one|does one give|dura una|rinde una|da una|aguanta una")) {
        return true;
    }
    for (at = 0; at < items->count; at++) {
        if ((item_is(items, at, ITEM_EACH) && item_text(items, at, "per")) ||
            (item_is(items, at + 1, ITEM_BATTERY) &&
             token_among(items->tokens, items->list[at + 1].from - 1,
                         " single per each every por cada "))) {
            return true; /* "per battery" */
        }
        if (!item_is(items, at, ITEM_ARTICLE)) {
            continue;
        }
        for (next = at + 1; next < at + 5 && next < items->count; next++) {
            if (item_value(items, next, ITEM_BATTERY) == 1) {
                return true;
            }
            if (items->list[next].is == ITEM_STOP || items->list[next].is == ITEM_PAUSE ||
                item_is(items, next, ITEM_AT)) {
                break;
            }
        }
    }
    return false;
}
