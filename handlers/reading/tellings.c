#include "tellings.h"

#include "bare_numbers.h"
#include "beside_numbers.h"
#include "persons.h"

enum { TELLING_REACH = 9, FEWEST = 5, NEARLY_FULL = 85, NEARLY_EMPTY = 10 };

/* What is between a battery and its charge belongs to another thing, or wishes. */
static bool
breaks_off(const struct items *items, size_t at)
{
    static const enum item_is others[] = {
        ITEM_MODE,   ITEM_SETTING, ITEM_NAMED,  ITEM_PRICE, ITEM_GOING,    ITEM_DEPART,
        ITEM_EVENT,  ITEM_UNTIL,   ITEM_BY,     ITEM_LASTS, ITEM_NOT,      ITEM_FULL,
        ITEM_CHARGE, ITEM_DAY,     ITEM_HALF,   ITEM_LIGHT, ITEM_EACH,     ITEM_ARRIVE,
        ITEM_BEFORE, ITEM_EARLIER, ITEM_REMIND, ITEM_SIZE,  ITEM_CYLINDER, ITEM_AND};
    size_t i;

    if (items->list[at].is == ITEM_NUMBER || items->list[at].is == ITEM_AMOUNT ||
        items->list[at].is == ITEM_CLOCK ||
        (item_is(items, at, ITEM_WILL_BE) && !item_is(items, at, ITEM_LINK))) {
        return true;
    }
    for (i = 0; i < sizeof others / sizeof others[0]; i++) {
        if (item_is(items, at, others[i])) {
            return true;
        }
    }
    return token_among(items->tokens, items->list[at].to - 1, person_words) ||
           token_among(items->tokens, items->list[at].from,
                       " if till til when phone cell guy lady day time si cuando hasta dia vez "
                       "room flight trip tank telefono celular ");
}

/* "in the car", "on my dresser": where a battery is. */
static bool
is_place(const struct items *items, size_t at)
{
    size_t first = items->list[at].from;

    return first > 0 &&
           ((first > 1 &&
             token_among(items->tokens, first - 1, " the my his her our a la el mi su ") &&
             token_among(items->tokens, first - 2, " in on from by inside en de ")) ||
            token_among(items->tokens, first - 1, " del al "));
}

/* "hers", "the machine": the battery that is in it. */
static bool
is_holder(const struct items *items, size_t at)
{
    return token_among(items->tokens, items->list[at].to - 1,
                       " hers mine machine unit concentrator maquina aparato concentrador mia ");
}

size_t
telling_of(const struct items *items, size_t at)
{
    size_t from = clause_start(items, at), holder = items->count, i;

    from = from == at && item_text(items, at - 1, ":") ? clause_start(items, at - 1) : from;
    for (i = at; i > from && at - i < TELLING_REACH; i--) {
        if (names_battery(items, i - 1) || item_is(items, i - 1, ITEM_BATTERY)) {
            return item_is(items, i - 1, ITEM_ALL) ? items->count : i - 1;
        }
        if (!is_place(items, i - 1) && breaks_off(items, i - 1)) {
            break;
        }
        holder = is_holder(items, i - 1) ? i - 1 : holder;
    }
    return holder;
}

/* "is", "has", "at": between the battery and the number. */
static bool
has_link(const struct items *items, size_t from, size_t at)
{
    size_t i;

    for (i = from; i < at; i++) {
        if (item_is(items, i, ITEM_SHOWS) || item_is(items, i, ITEM_HAVE) ||
            item_is(items, i, ITEM_HEDGE) || item_is(items, i, ITEM_NOW) ||
            item_is(items, i, ITEM_WAS) ||
            (item_is(items, i, ITEM_AT) && item_value(items, i, ITEM_AT) != AT_IN) ||
            token_among(items->tokens, items->list[i].to - 1,
                        " : = - is are s looks esta estan trae tiene anda va ")) {
            return true;
        }
    }
    return false;
}

bool
telling_number(const struct items *items, size_t at, size_t after)
{
    size_t battery = telling_of(items, at);
    bool big = items->list[at].value > BIG_MIN * 1000;

    if (big && is_placed(items, at) && tells_other_before(items, at)) {
        return true; /* "99 in it 99 in the bag" */
    }
    if (battery == items->count || !ends_here(items, after) || items->list[at].value > 100 * 1000 ||
        !has_link(items, battery + 1, at)) {
        return false;
    }
    return big || (items->list[at].value >= FEWEST * 1000 && clause_end(items, at) == after &&
                   item_value(items, at - 1, ITEM_AT) != AT_ON);
}

/* Full or empty words, which mean other things where no battery is told of. */
static size_t
weak_word(const struct items *items, size_t at, struct percent *charge)
{
    static const struct {
        const char *phrases;
        struct percent charge;
    } words[] = {
        {"charged|all the way full|cargada|cargadas", {100, 100}},
        {"all green|all the way up|en verde|al maximo", {NEARLY_FULL, 100}},
        {"out|spent|shot|done|done "
         "for|toast|gone|dry|on empty|finished|history|out of power|flat|"
         "agotada|agotadas|acabada|acabadas|terminada|en cero|en ceros|sin carga|sin nada|frita",
         {0, 0}},
        {"nearly done|almost done|about done|nearly out|about out|almost spent|por acabarse|por "
         "morir|por apagarse",
         {0, 10}},
    };
    size_t i, longest = 0;

    for (i = 0; i < sizeof words / sizeof words[0]; i++) {
        size_t tokens = tokens_phrase_at(items->tokens, items->list[at].from, words[i].phrases);

        if (tokens > longest) {
            longest = tokens;
            *charge = words[i].charge;
        }
    }
    return longest;
}

/* The items that so many tokens from item `at` on take; 0 if they end within one. */
static size_t
items_of(const struct items *items, size_t at, size_t tokens)
{
    size_t next = at;

    while (next < items->count && items->list[next].to < items->list[at].from + tokens) {
        next++;
    }
    return next < items->count && items->list[next].to == items->list[at].from + tokens
               ? next + 1 - at
               : 0;
}

/* "is the other one done?" */
static bool
is_question(const struct items *items, size_t at)
{
    return item_text(items, sentence_end(items, at), "?") &&
           token_among(items->tokens, items->list[clause_start(items, at)].from,
                       " is are do does did was were has have esta estan ya ");
}

/* Nothing follows that the word could be said of. */
static bool
ends_telling(const struct items *items, size_t at)
{
    return clause_stops(items, at) || item_is(items, at, ITEM_AND) ||
           (item_value(items, at, ITEM_AT) == AT_ON &&
            (item_free_number(items, at + 1) || item_is(items, at + 1, ITEM_MODE) ||
             item_is(items, at + 1, ITEM_SETTING))) ||
           token_among(items->tokens, items->list[at].from, " while but with = pero mientras ");
}

bool
telling_word_at(const struct items *items, size_t at, struct state *state)
{
    struct percent charge = {0, 0};
    size_t count = items_of(items, at, weak_word(items, at, &charge));
    size_t battery = count > 0 ? telling_of(items, at) : items->count;

    if (battery == items->count || is_holder(items, battery) || !ends_telling(items, at + count) ||
        items_have_word(items, clause_start(items, at), at,
                        " will would can should get gets be when whens how until till cuando "
                        "hasta ") ||
        is_question(items, at)) {
        return false;
    }
    state->count = count;
    state->charge = charge;
    if (token_among(items->tokens, tokens_back(items->list[at].from, 1),
                    " much almost nearly mostly about practically casi ")) {
        state->charge.low = charge.high == 100 ? NEARLY_FULL : 0; /* "pretty much charged" */
        state->charge.high = charge.high == 100 ? 99 : NEARLY_EMPTY;
    }
    return true;
}
