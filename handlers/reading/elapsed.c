#include "elapsed.h"

#include "amounts.h"

enum { HOURS_MAX = 12 };

/* "for", "unas": carries nothing before a length. */
static bool
is_little(const struct items *items, size_t at)
{
    return item_is(items, at, ITEM_LINK) || item_is(items, at, ITEM_HEDGE) ||
           item_is(items, at, ITEM_ARTICLE);
}

bool
elapsed_since(const struct items *items, size_t at)
{
    static const char so[] = " so thats van which making ";
    size_t from = sentence_start(items, at), before = at, i;

    while (before > from && is_little(items, before - 1) &&
           !token_among(items->tokens, items->list[before - 1].to - 1, so)) {
        before--;
    }
    if (before == from || !token_among(items->tokens, items->list[before - 1].to - 1, so)) {
        return false;
    }
    for (i = before; i > from; i--) {
        if (item_is_duration(items, i - 1)) {
            return false;
        }
        if (item_is(items, i - 1, ITEM_SINCE) ||
            token_among(items->tokens, items->list[i - 1].from, " since desde ")) {
            return !item_is(items, at + 1, ITEM_LEFT);
        }
    }
    return false;
}

bool
elapsed_has_been_so(const struct items *items, size_t at)
{
    static const char between[] = " now already she he it its shes hes we weve i ive they has have "
                                  "is unit machine concentrator the mom moms dad mother father ";
    const struct tokens *tokens = items->tokens;
    size_t first = items->list[at].from, i = items->list[at].to, next;

    while (first > 0 && token_among(tokens, first - 1, " a an about around nearly almost ")) {
        first--;
    }
    while (token_among(tokens, i, between)) {
        i++;
    }
    if (first == 0 || !token_is(tokens, first - 1, "for") ||
        !token_among(tokens, i, " been running ")) {
        return false;
    }
    for (next = at + 1; next < items->count && items->list[next].to <= i; next++) {
    }
    for (; next < items->count && !clause_stops(items, next); next++) {
        int power = item_value(items, next, ITEM_POWER);

        if (power >= 0) {
            return power == POWER_WORD_BATTERY || power == POWER_WORD_OUT;
        }
    }
    return false;
}

/* Behind it "ago", before it "hace", or since when. */
static bool
has_passed(const struct items *items, size_t at)
{
    size_t before = at;

    while (before > 0 && is_little(items, before - 1) &&
           !item_is(items, before - 1, ITEM_AGO_LEAD)) {
        before--;
    }
    return item_is(items, at + 1, ITEM_AGO) || item_is(items, before - 1, ITEM_AGO_LEAD) ||
           elapsed_since(items, at);
}

/* The item behind "maybe", "could be", "o quizas"; items->count if it is not told so. */
static size_t
behind_maybe(const struct items *items, size_t at)
{
    static const char maybe[] =
        "maybe|possibly|perhaps|could be|could have been|might be|might have been|may be|quiza|"
        "quizas|tal vez|talvez|a lo mejor|puede que|puede ser|puede que sean|capaz que";
    size_t token = items->list[at].to, taken, next = at + 1;

    token = item_is(items, at + 1, ITEM_AGO) ? items->list[at + 1].to : token;
    token += token_is(items->tokens, token, ",") ? 1 : 0;
    token += token_among(items->tokens, token, " or o and y it ya ") ? 1 : 0;
    taken = tokens_phrase_at(items->tokens, token, maybe);
    if (taken == 0) {
        return items->count;
    }
    while (next < items->count && items->list[next].from < token + taken) {
        next++;
    }
    while (is_little(items, next)) {
        next++;
    }
    return next;
}

static void
take_longer(struct items *items, size_t at)
{
    size_t next = behind_maybe(items, at);
    struct item *length = &items->list[at];
    int minutes;

    if (item_is_duration(items, next)) {
        minutes = duration_minutes(items, next);
    } else if (item_free_number(items, next) && items->list[next].value <= HOURS_MAX * 1000 &&
               length->high >= 60 && !item_is(items, next + 1, ITEM_UNIT) &&
               !item_is(items, next + 1, ITEM_BATTERY) && !item_is(items, next + 1, ITEM_LIGHT) &&
               !item_is(items, next + 1, ITEM_FULL)) {
        minutes = items->list[next].value * 60 / 1000;
    } else {
        return;
    }
    if (minutes > length->high) {
        length->value = length->high = minutes;
    }
    items_spend(items, next, 1);
}

void
elapsed_take_longer(struct items *items)
{
    size_t at;

    for (at = 0; at < items->count; at++) {
        if (item_is_duration(items, at) && !items->list[at].spent && has_passed(items, at)) {
            take_longer(items, at);
        }
    }
}
