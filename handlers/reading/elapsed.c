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

/* "on her battery", "con la bateria" in the items [from, to) */
static bool
is_on_battery(const struct items *items, size_t from, size_t to)
{
    static const char whose[] = " the his her its my just only la su pura ";
    size_t i, before;

    for (i = from; i < to; i++) {
        if (item_value(items, i, ITEM_POWER) == POWER_WORD_BATTERY) {
            return true;
        }
        before = items->list[i].from;
        while (before > 0 && token_among(items->tokens, before - 1, whose)) {
            before--;
        }
        if (item_is(items, i, ITEM_BATTERY) && before > 0 &&
            token_among(items->tokens, before - 1, " on off con en ") &&
            !item_is(items, i + 1, ITEM_NUMBER)) {
            return true;
        }
    }
    return false;
}

/* "for half an hour she has been on the battery", "una hora lleva en bateria" */
static bool
has_been_on_battery(const struct items *items, size_t at)
{
    static const char been[] = " been lleva llevo llevamos llevan ";
    size_t from = clause_start(items, at), to = clause_end(items, at), i;

    for (i = from; i < to; i++) {
        if (items_have_word(items, i, i + 1, been)) {
            return i < at ? is_on_battery(items, i, at) : is_on_battery(items, i, to);
        }
    }
    return false;
}

/* "can it be off the charger 30 min?": still to come */
bool
length_is_wished(const struct items *items, size_t at)
{
    return items_have_word(items, clause_start(items, at), at,
                           " can could will would if need needs want must should long ");
}

/* "it has been on battery for 45 min", "off the charger 30 min" */
static bool
has_run_for(const struct items *items, size_t at)
{
    size_t from = clause_start(items, at), before = at, i;
    bool been = false;

    for (i = items->list[from].from; i < items->list[at].from; i++) {
        been = been || (token_is(items->tokens, i, "been") && items->list[at].from - i <= 7);
    }
    while (before > from &&
           (item_is(items, before - 1, ITEM_HEDGE) || item_is(items, before - 1, ITEM_LINK) ||
            item_text(items, before - 1, "for"))) {
        before--;
    }
    return before > from && (item_value(items, before - 1, ITEM_POWER) == POWER_WORD_BATTERY ||
                             (been && (item_is(items, before - 1, ITEM_USE) ||
                                       item_is(items, before - 1, ITEM_POWER) ||
                                       item_text(items, before - 1, "charging"))));
}

bool
elapsed_on_power(const struct items *items, size_t at)
{
    return !length_is_wished(items, at) &&
           (has_run_for(items, at) || has_been_on_battery(items, at));
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
