#include "items.h"

#include <string.h>

#include "memory.h"

bool
item_is(const struct items *items, size_t at, enum item_is is)
{
    size_t i;

    if (at >= items->count) {
        return false;
    }
    if (items->list[at].is == is) {
        return is != ITEM_WORD || items->list[at].meaning_count == 0;
    }
    for (i = 0; i < items->list[at].meaning_count; i++) {
        if (items->list[at].meanings[i]->is == is) {
            return true;
        }
    }
    return false;
}

int
item_value(const struct items *items, size_t at, enum item_is is)
{
    size_t i;

    for (i = 0; at < items->count && i < items->list[at].meaning_count; i++) {
        if (items->list[at].meanings[i]->is == is) {
            return items->list[at].meanings[i]->value;
        }
    }
    return -1;
}

bool
item_in(const struct items *items, size_t at, enum unit unit)
{
    return at < items->count && items->list[at].is == ITEM_AMOUNT && items->list[at].unit == unit;
}

bool
item_text(const struct items *items, size_t at, const char *text)
{
    return at < items->count && token_is(items->tokens, items->list[at].from, text);
}

bool
item_free_number(const struct items *items, size_t at)
{
    return at < items->count && items->list[at].is == ITEM_NUMBER && !items->list[at].spent;
}

void
items_replace(struct items *items, size_t at, size_t count, struct item item)
{
    item.from = items->list[at].from;
    item.to = items->list[at + count - 1].to;
    items->list[at] = item;
    memmove(items->list + at + 1, items->list + at + count,
            (items->count - at - count) * sizeof items->list[0]);
    items->count -= count - 1;
}

void
items_spend(struct items *items, size_t at, size_t count)
{
    size_t i;

    for (i = at; i < at + count && i < items->count; i++) {
        items->list[i].spent = true;
    }
}

static bool
ends_clause(const struct items *items, size_t at, bool pauses)
{
    return items->list[at].is == ITEM_STOP || (pauses && items->list[at].is == ITEM_PAUSE);
}

static size_t
start_of(const struct items *items, size_t at, bool pauses)
{
    at = at < items->count ? at : items->count; /* callers look before the first item too */
    while (at > 0 && !ends_clause(items, at - 1, pauses)) {
        at--;
    }
    return at;
}

static size_t
end_of(const struct items *items, size_t at, bool pauses)
{
    while (at < items->count && !ends_clause(items, at, pauses)) {
        at++;
    }
    return at;
}

size_t
clause_start(const struct items *items, size_t at)
{
    return start_of(items, at, true);
}

bool
clause_stops(const struct items *items, size_t at)
{
    return at >= items->count || items->list[at].is == ITEM_STOP ||
           items->list[at].is == ITEM_PAUSE;
}

size_t
clause_end(const struct items *items, size_t at)
{
    return end_of(items, at, true);
}

size_t
sentence_start(const struct items *items, size_t at)
{
    return start_of(items, at, false);
}

size_t
sentence_end(const struct items *items, size_t at)
{
    return end_of(items, at, false);
}

size_t
items_find(const struct items *items, size_t from, size_t to, enum item_is is)
{
    while (from < to && !item_is(items, from, is)) {
        from++;
    }
    return from;
}

bool
items_any(const struct items *items, enum item_is is)
{
    return items_find(items, 0, items->count, is) < items->count;
}

bool
items_have_word(const struct items *items, size_t from, size_t to, const char *words)
{
    size_t end = to < items->count ? items->list[to].from : items->tokens->count;

    return from < items->count &&
           tokens_between_among(items->tokens, items->list[from].from, end, words);
}

/* ---- making them ----------------------------------------------------------------------------- */

static bool
is_glued_number(const struct tokens *tokens, size_t at)
{
    return at < tokens->count && tokens->list[at].kind == TOKEN_NUMBER && tokens->list[at].glued;
}

/* "9:15": no such time if the hour is past 24 or the minute past 59. */
static size_t
colon_clock_at(const struct tokens *tokens, size_t at, struct item *item)
{
    int hour, minute;

    if (!token_is(tokens, at + 1, ":") || !tokens->list[at + 1].glued ||
        !is_glued_number(tokens, at + 2) || strlen(tokens->list[at + 2].text) != 2) {
        return 0;
    }
    hour = tokens->list[at].thousandths / 1000;
    minute = tokens->list[at + 2].thousandths / 1000;
    item->is = ITEM_CLOCK;
    item->colon = true;
    item->cannot = hour > 24 || minute > 59 || (hour == 24 && minute > 0);
    item->ampm = hour > 12 || hour == 0 || tokens->list[at].text[0] == '0';
    item->value = (hour % 24) * 60 + minute;
    return 3;
}

/* "1/2" and "5 1/2"; what divides by something else is a date or a name. */
static size_t
slash_fraction_at(const struct tokens *tokens, size_t at, int *thousandths)
{
    int above, below;

    if (at + 2 >= tokens->count || tokens->list[at].kind != TOKEN_NUMBER ||
        !token_is(tokens, at + 1, "/") || tokens->list[at + 2].kind != TOKEN_NUMBER) {
        return 0;
    }
    above = tokens->list[at].thousandths / 1000;
    below = tokens->list[at + 2].thousandths / 1000;
    if (below < 2 || below > 8 || below == 7 || above < 1 || above > 2 * below) {
        return 0;
    }
    *thousandths = above * 1000 / below;
    return 3;
}

/* "3.500 m": three digits behind a dot are thousands, and no setting has as many places. */
static bool
has_thousands(const struct token *token)
{
    const char *dot = strchr(token->text, '.');

    return token->kind == TOKEN_NUMBER && dot != NULL && strlen(dot) == 4 && dot > token->text &&
           dot - token->text < 3 && token->text[0] != '0';
}

static void
make_number(struct item *item, int value)
{
    item->is = ITEM_NUMBER;
    item->value = item->high = value;
}

static size_t
digits_at(const struct tokens *tokens, size_t at, struct item *item)
{
    size_t taken = colon_clock_at(tokens, at, item);
    int fraction;

    item->digits = true;
    if (taken > 0) {
        return taken;
    }
    make_number(item, tokens->list[at].thousandths * (has_thousands(&tokens->list[at]) ? 1000 : 1));
    taken = slash_fraction_at(tokens, at, &fraction);
    if (taken > 0) {
        make_number(item, fraction);
        item->fraction = true;
        return taken;
    }
    taken = 1;
    if (item->value <= 30 * 1000 && token_among(tokens, at + 1, " thousand mil ")) {
        item->value = item->high = item->value * 1000; /* "12 thousand" */
        return 2;
    }
    if (item->value % 1000 == 0 && slash_fraction_at(tokens, at + 1, &fraction) > 0 &&
        fraction < 1000) {
        item->value = item->high = item->value + fraction;
        return 4;
    }
    if (at + 1 < tokens->count && tokens->list[at + 1].end - tokens->list[at + 1].start == 2 &&
        token_among(tokens, at + 1, " half quarter threequarters ")) { /* a character of its own */
        item->value += token_is(tokens, at + 1, "half")      ? 500
                       : token_is(tokens, at + 1, "quarter") ? 250
                                                             : 750;
        item->high = item->value;
        return 2;
    }
    if (token_is(tokens, at + 1, "k") && tokens->list[at + 1].glued && item->value < 100 * 1000) {
        item->value = item->high = item->value * 1000;
        return 2;
    }
    if (token_is(tokens, at + 1, "s") && tokens->list[at + 1].glued && item->value % 10000 == 0 &&
        item->value < 100 * 1000) {
        item->high = item->value + 9000; /* "in the 70s" */
        return 2;
    }
    if (token_among(tokens, at + 1, " st nd rd th ") && tokens->list[at + 1].glued) {
        item->ordinal = true;
        return 2;
    }
    return taken;
}

static size_t
number_at(const struct items *items, size_t at, struct item *item)
{
    const struct tokens *tokens = items->tokens;
    int value;
    size_t taken;

    if (tokens->list[at].kind == TOKEN_NUMBER) {
        return digits_at(tokens, at, item);
    }
    if (token_is(tokens, at, "once") && !items->spanish) {
        return 0;
    }
    if (token_among(tokens, at, " one uno una un ")) {
        if (token_is(tokens, at + 1, "hundred") || token_is(tokens, at + 1, "thousand")) {
            taken = tokens_number(tokens, at, true, &value);
            make_number(item, value);
            return taken;
        }
        make_number(item, 1000);
        item->one = true;
        return 1;
    }
    if (token_among(tokens, at, " couple pair par ")) {
        make_number(item, 2000);
        return 1 + (token_among(tokens, at + 1, " of de ") ? 1 : 0);
    }
    taken = tokens_number(tokens, at, false, &value);
    if (taken > 0) {
        make_number(item, value);
        if (token_among(tokens, at,
                        " twenties thirties forties fifties sixties seventies "
                        "eighties nineties treintas cuarentas cincuentas sesentas setentas "
                        "ochentas noventas ")) {
            item->high += 9000; /* "in the sixties" */
        }
    }
    return taken;
}

/* "x4" */
static bool
times_at(const struct tokens *tokens, size_t at, struct item *item)
{
    const char *text = tokens->list[at].text;

    if (text[0] != 'x' || text[1] < '1' || text[1] > '9' || text[2] != '\0') {
        return false;
    }
    make_number(item, (text[1] - '0') * 1000);
    item->times = true;
    return true;
}

/* Phrases of the lexicon win over a number that begins them ("one more"). */
static size_t
phrase_at(const struct items *items, const struct lexicon *lexicon, size_t at, struct item *item)
{
    struct lexicon_found found =
        lexicon_at(lexicon, items->spanish ? LANGUAGE_ES : LANGUAGE_EN, items->tokens, at);

    memcpy(item->meanings, found.meanings, sizeof item->meanings);
    item->meaning_count = found.count;
    return found.tokens;
}

static const struct lexicon_entry left_over = {ITEM_LEFT, 0, false, "left"};

/* "how long have i got left at 2": what remains, and nobody left at 2. */
static bool
is_left_over(const struct tokens *tokens, size_t at)
{
    return at > 0 && token_is(tokens, at, "left") && token_is(tokens, at + 1, "at") &&
           token_among(tokens, at - 1,
                       " got have has is hours hrs time long much life battery "
                       "batteries charge juice minutes ");
}

static size_t
item_at(const struct items *items, const struct lexicon *lexicon, size_t at, struct item *item)
{
    const struct tokens *tokens = items->tokens;
    struct item number = {.day = NO_DAY}, phrase = {.day = NO_DAY, .is = ITEM_WORD};
    size_t as_number = number_at(items, at, &number);
    size_t as_phrase = phrase_at(items, lexicon, at, &phrase);

    if (is_left_over(tokens, at)) {
        phrase.meanings[0] = &left_over;
        phrase.meaning_count = as_phrase = 1;
    }
    if (as_phrase > as_number) {
        *item = phrase;
        return as_phrase;
    }
    if (as_number > 0) {
        *item = number;
        return as_number;
    }
    *item = phrase;
    if (tokens->list[at].kind == TOKEN_SIGN) {
        item->is = token_among(tokens, at, " . ! ? ; ¡ ¿ ") ? ITEM_STOP
                   : token_among(tokens, at, " , : ( ) / ") ? ITEM_PAUSE
                                                            : ITEM_SIGN;
    } else {
        (void)times_at(tokens, at, item);
    }
    return 1;
}

struct items
items_read(void *arena, const struct lexicon *lexicon, const struct tokens *tokens,
           enum language language)
{
    struct items items = {.arena = arena, .tokens = tokens, .spanish = language == LANGUAGE_ES};
    size_t at = 0;

    while (at < tokens->count) {
        struct item item = {.day = NO_DAY};
        size_t taken = item_at(&items, lexicon, at, &item), i;

        item.from = at;
        item.to = at + taken;
        for (i = at; i < at + taken; i++) {
            item.spent = item.spent || tokens->list[i].used;
        }
        items.list = memory_grow(arena, struct item, items.list, items.count);
        items.list[items.count++] = item;
        at += taken;
    }
    return items;
}
