#include "hedges.h"

enum { HEDGE = 5, HEDGE_REACH = 3 };

size_t
back_over_links(const struct items *items, size_t at)
{
    while (at > 0 && (item_is(items, at - 1, ITEM_LINK) || item_is(items, at - 1, ITEM_ARTICLE)) &&
           !item_is(items, at - 1, ITEM_WILL_BE) && !item_is(items, at - 1, ITEM_SHOWS) &&
           !item_is(items, at - 1, ITEM_FROM) && !item_is(items, at - 1, ITEM_ALL)) {
        at--;
    }
    return at - 1;
}

bool
is_hedged(const struct items *items, size_t at, size_t after)
{
    size_t before = at;
    int steps = 0;

    if (item_is(items, after, ITEM_HEDGE_AFTER) &&
        (!item_is(items, after, ITEM_HEDGE) || items->list[after - 1].is == ITEM_AMOUNT)) {
        return true;
    }
    while (before > 0 && steps++ < 3) {
        before--;
        if (item_is(items, before, ITEM_HEDGE) ||
            token_among(items->tokens, items->list[before].to - 1,
                        " about around like roughly como ")) {
            return true; /* also "its about" */
        }
        if (!item_is(items, before, ITEM_LINK) && !item_is(items, before, ITEM_AT) &&
            !item_is(items, before, ITEM_ARTICLE)) {
            return false;
        }
    }
    return false;
}

struct percent
hedge(struct percent charge, bool hedged)
{
    if (hedged) {
        charge.low = charge.low > HEDGE ? charge.low - HEDGE : 0;
        charge.high = charge.high < 100 - HEDGE ? charge.high + HEDGE : 100;
    }
    return charge;
}

struct percent
hedge_under(const struct items *items, size_t at, struct percent charge)
{
    size_t first = items->list[at].from;
    bool number = items->list[at].is == ITEM_NUMBER || items->list[at].is == ITEM_AMOUNT;
    bool less =
        first > 1 &&
        ((token_is(items->tokens, first - 2, "less") &&
          token_is(items->tokens, first - 1, "than")) ||
         (token_is(items->tokens, first - 2, "menos") && token_is(items->tokens, first - 1, "de")));
    bool under =
        first > 0 && (token_among(items->tokens, first - 1, " under below almost nearly casi ") ||
                      (token_is(items->tokens, first - 1, "quite") &&
                       token_is(items->tokens, tokens_back(first, 2), "not")));

    if (number && !items->list[at].fraction && (less || under)) {
        int lacking = less ? 2 * HEDGE : HEDGE;

        charge.low = charge.low > lacking ? charge.low - lacking : 0;
    }
    return charge;
}

int
round_up(int thousandths)
{
    return (thousandths + 999) / 1000;
}
