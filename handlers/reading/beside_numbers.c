#include "beside_numbers.h"

#include <string.h>

#include "amounts.h"
#include "bare_numbers.h"
#include "persons.h"

/* "1 full, 1 maybe 30" */
static bool
is_one_of_list(const struct items *items, size_t at)
{
    return items->list[at].value == 1000 && at > 0 &&
           (items->list[at - 1].is == ITEM_PAUSE || item_is(items, at - 1, ITEM_AND)) &&
           (item_is(items, at + 1, ITEM_HEDGE) ||
            token_among(items->tokens, items->list[at].to, " thats is its "));
}

/* "A 90 y B 50" */
static bool
is_letter(const struct items *items, size_t at)
{
    return item_is(items, at, ITEM_WORD) &&
           token_among(items->tokens, items->list[at].from, " b c d ") &&
           (at == 0 || item_is(items, at - 1, ITEM_AND) || items->list[at - 1].is == ITEM_PAUSE ||
            items->list[at - 1].is == ITEM_NUMBER) &&
           items_any(items, ITEM_BATTERY) && !items_any(items, ITEM_CYLINDER);
}

/* "one's 72": its apostrophe is lost in the word. */
static bool
is_one_is(const struct items *items, size_t at)
{
    const struct token *word = &items->tokens->list[items->list[at].from];

    return token_is(items->tokens, items->list[at].from, "ones") &&
           items->list[at].to == items->list[at].from + 1 &&
           word->end - word->start > strlen(word->text);
}

bool
names_battery(const struct items *items, size_t at)
{
    return at < items->count &&
           (is_one_is(items, at) || is_letter(items, at) || item_is(items, at, ITEM_OTHER) ||
            item_is(items, at, ITEM_ORDINAL) || item_is(items, at, ITEM_ALL) ||
            item_is(items, at, ITEM_BOTH) ||
            (items->list[at].is == ITEM_NUMBER &&
             (items->list[at].one || items->list[at].ordinal || is_one_of_list(items, at) ||
              (items->spanish && item_text(items, at - 1, "la") &&
               items->list[at - 1].to == items->list[at - 1].from + 1) ||
              item_text(items, at - 1, "number") || item_text(items, at - 1, "numero") ||
              /* "battery 2 is 60", "la 2 en 47" */
              (item_value(items, at - 1, ITEM_BATTERY) == 1 &&
               items->list[at].value <= 12 * 1000))));
}

/* What behind a bare number says that it counts or sets something else. */
bool
is_of_something(const struct items *items, size_t at, bool big)
{
    static const enum item_is things[] = {ITEM_BATTERY, ITEM_UNIT,   ITEM_LIGHT, ITEM_FULL,
                                          ITEM_CHARGE,  ITEM_OCLOCK, ITEM_GOING};
    size_t i;

    for (i = 0; i < sizeof things / sizeof things[0]; i++) {
        if (item_is(items, at, things[i]) && !item_is(items, at, ITEM_LINK) &&
            !item_is(items, at, ITEM_AT) &&
            !(big && (things[i] == ITEM_BATTERY || things[i] == ITEM_GOING))) {
            return true;
        }
    }
    return false;
}

bool
ends_here(const struct items *items, size_t at)
{
    return at >= items->count || items->list[at].is == ITEM_STOP ||
           items->list[at].is == ITEM_PAUSE || item_is(items, at, ITEM_AND) ||
           item_is(items, at, ITEM_AT) || item_is(items, at, ITEM_EACH) ||
           item_is(items, at, ITEM_LEFT) || item_is(items, at, ITEM_NOW) ||
           item_is(items, at, ITEM_HEDGE_AFTER) || item_is(items, at, ITEM_SOMETHING) ||
           item_is(items, at, ITEM_LINK) || item_is(items, at, ITEM_HAVE) ||
           item_is(items, at, ITEM_TO) || item_is(items, at, ITEM_OTHER) ||
           item_is(items, at, ITEM_SAME) || item_is(items, at, ITEM_ORDINAL) ||
           item_is(items, at, ITEM_FULL) || item_is(items, at, ITEM_CLOCK_LEAD) ||
           item_is(items, at, ITEM_DEPART) || item_is(items, at, ITEM_AGO) ||
           item_is(items, at, ITEM_WAS) || items->list[at].is == ITEM_SIGN ||
           item_is(items, at, ITEM_NOT) || item_is(items, at, ITEM_POWER) ||
           item_is(items, at, ITEM_CORRECT) || item_is(items, at, ITEM_THEN_LEFT) ||
           item_is(items, at, ITEM_USE) || item_is(items, at, ITEM_SINCE) ||
           item_is(items, at, ITEM_UNTIL) || item_is(items, at, ITEM_BATTERY) ||
           item_is(items, at, ITEM_NAMED) || item_is(items, at, ITEM_ACTIVITY) ||
           item_is(items, at, ITEM_MODE) || item_is(items, at, ITEM_SETTING) ||
           item_is(items, at, ITEM_NOW_IS) || items->list[at].one || items->list[at].ordinal ||
           (at > 0 && begins_list(items, at - 1)) ||
           token_among(items->tokens, items->list[at].from,
                       " top bottom left right upper lower while when if but because how what will "
                       "can mientras cuando si pero porque "
                       "cuanto cuantas hasta alcanza ");
}

/* "una se va en 2 h y la otra en 4", "duran ocho horas y mi hija jura que son tres" */
bool
tells_length_before(const struct items *items, size_t at)
{
    size_t i;

    for (i = sentence_start(items, at); i < at; i++) {
        if (item_in(items, i, UNIT_MINUTE)) {
            return true;
        }
    }
    return false;
}

/* A battery is spoken of earlier in the clause, and no other number or charge since. */
bool
follows_battery(const struct items *items, size_t at)
{
    size_t from = clause_start(items, at), i;

    for (i = at; i > from && at - i < 7; i--) {
        const struct item *item = &items->list[i - 1];

        if (names_battery(items, i - 1) || item_is(items, i - 1, ITEM_BATTERY)) {
            return true;
        }
        if (item->is == ITEM_AMOUNT || item->is == ITEM_CLOCK || item->is == ITEM_NUMBER ||
            item_is(items, i - 1, ITEM_LASTS) || item_is(items, i - 1, ITEM_FULL) ||
            item_is(items, i - 1, ITEM_MODE) || item_is(items, i - 1, ITEM_SETTING)) {
            return false;
        }
    }
    return false;
}

/* "10, 20 and 30" */
bool
begins_list(const struct items *items, size_t at)
{
    size_t last = at + (item_is(items, at + 1, ITEM_HEDGE_AFTER) ? 1U : 0U);
    bool joined = item_is(items, last + 1, ITEM_AND) ||
                  (last + 1 < items->count && items->list[last + 1].is == ITEM_PAUSE &&
                   !item_text(items, last + 1, ":")); /* "I have 2: 77 and 33" */
    size_t next;

    for (next = last + 1; item_is(items, next, ITEM_AND) ||
                          (next > last + 1 && item_is(items, next, ITEM_ARTICLE)) ||
                          (next < items->count && items->list[next].is == ITEM_PAUSE);
         next++) {
    }
    joined = joined || (items->list[at].digits && next == at + 1 && item_free_number(items, next) &&
                        items->list[next].digits && items->list[next].value > BIG_MIN * 1000 &&
                        items->list[at].value > BIG_MIN * 1000 &&
                        !items->tokens->list[items->list[next].from].glued);
    if (!joined || !item_free_number(items, next) || items->list[next].one ||
        !ends_here(items, next + 1)) {
        return false;
    }
    return (items->list[next].value > BIG_MIN * 1000 && items->list[next].value <= 100 * 1000) ||
           ((items->list[next].value >= 5 * 1000 || items->list[next].value == 0) &&
            begins_list(items, next));
}

/* "1 full 1 at 10" */
bool
is_few_batteries(const struct items *items, size_t at)
{
    return at < items->count && items->list[at].is == ITEM_NUMBER && items->list[at].digits &&
           items->list[at].value <= 4 * 1000 && items->list[at].value % 1000 == 0 &&
           !item_is(items, at - 1, ITEM_SETTING) && !item_is(items, at - 1, ITEM_MODE) &&
           !item_is(items, at - 1, ITEM_AT) && !item_is(items, at - 1, ITEM_NAMED);
}

/* Another charge was told in the sentence. */
bool
tells_other_before(const struct items *items, size_t at)
{
    size_t i;

    for (i = sentence_start(items, at); i < at; i++) {
        if (items->list[i].spent &&
            (item_in(items, i, UNIT_PERCENT) || item_is(items, i, ITEM_FULL) ||
             (items->list[i].is == ITEM_NUMBER && items->list[i].value > BIG_MIN * 1000))) {
            return true;
        }
    }
    return false;
}

/* A battery, or what is in the unit, is spoken of in the clause before. */
bool
is_of_battery_told(const struct items *items, size_t at)
{
    size_t from = clause_start(items, at - 1), i;

    for (i = at; i > from + 1; i--) {
        if (items->list[i - 1].is == ITEM_NUMBER || items->list[i - 1].is == ITEM_AMOUNT) {
            break;
        }
        if (token_among(items->tokens, items->list[i - 1].to - 1, " it one ") &&
            token_among(items->tokens, tokens_back(items->list[i - 1].to - 1, 1), " in ")) {
            return true;
        }
    }
    for (i = from; i < at; i++) {
        if (item_is(items, i, ITEM_BATTERY) || item_is(items, i, ITEM_OTHER) ||
            item_value(items, i, ITEM_POWER) == POWER_WORD_BATTERY) {
            return true;
        }
        if (items->list[i].is == ITEM_NUMBER || items->list[i].is == ITEM_AMOUNT) {
            return false;
        }
    }
    return items_have_word(items, from, at, " in ") && items_have_word(items, from, at, " it one ");
}

/* "the one in my bag 8", "la de la bolsa 8": of a battery that is told by its place. */
bool
is_of_placed_one(const struct items *items, size_t at, size_t after)
{
    size_t from = items->list[clause_start(items, at)].from, first = items->list[at].from;
    size_t begin = from + (token_among(items->tokens, from, " and y the ") ? 1 : 0);

    begin += token_among(items->tokens, begin, " the ") ? 1 : 0;
    return ends_here(items, after) && first > begin + 2 && first < begin + 9 &&
           ((token_is(items->tokens, begin, "one") &&
             token_among(items->tokens, begin + 1, " in on that thats inside im ")) ||
            (token_among(items->tokens, begin, " la el ") &&
             token_among(items->tokens, begin + 1, " que del de ")));
}

bool
is_placed(const struct items *items, size_t at)
{
    static const char places[] = " unit machine it bag backpack purse drawer car suitcase closet "
                                 "box concentrator maquina aparato mochila bolsa cajon maleta "
                                 "carro equipo concentrador bolso ";
    size_t after = items->list[at].to, i;

    if (token_among(items->tokens, after, " puesta puestas adentro inside ")) {
        return true;
    }
    if (!token_among(items->tokens, after, " in on en inside ")) {
        return false;
    }
    for (i = after + 1; i < after + 4; i++) {
        if (token_among(items->tokens, i, places)) {
            return true;
        }
        if (!token_among(items->tokens, i, " the my a his her la el mi su mis los las ")) {
            return false;
        }
    }
    return false;
}

/* "and 41 when I looked just now" */
bool
is_seen_now(const struct items *items, size_t at, size_t after)
{
    size_t to = clause_end(items, at);

    return after < to && token_among(items->tokens, items->list[after].from, " when cuando ") &&
           items_find(items, after, to, ITEM_NOW) < to;
}

/* "+ 8 in the machine" */
bool
is_in_machine(const struct items *items, size_t after)
{
    return (item_text(items, after, "in") || item_text(items, after, "en")) &&
           items_have_word(items, after, after + 3,
                           " machine unit concentrator slot maquina aparato ");
}

/* "was full this morning and is 35 now": said of what was told before */
bool
is_so_now(const struct items *items, size_t at, size_t after)
{
    size_t from = sentence_start(items, at);

    return item_is(items, after, ITEM_NOW) &&
           token_among(items->tokens, tokens_back(items->list[at].from, 1), " is its esta va ") &&
           items_find(items, from, at, ITEM_BATTERY) < at &&
           items_find(items, from, at, ITEM_WAS) < at;
}

/* "went out with 80", "salio con 85 hace una hora": of the battery that went along */
bool
is_taken_along(const struct items *items, size_t at, size_t after)
{
    static const char going[] = " left leaves leaving went gone go going set headed took started "
                                "salio sali salimos salieron salir fue fui fuimos iba anda ando "
                                "arranco arranque empezo ";
    size_t from = items->list[clause_start(items, at)].from, first = items->list[at].from, i;
    bool ends = ends_here(items, after) || item_is(items, after, ITEM_AGO_LEAD) ||
                (item_is_duration(items, after) && item_is(items, after + 1, ITEM_AGO)) ||
                (item_is(items, after, ITEM_ARTICLE) && item_is_duration(items, after + 1));

    if (!ends || first < from + 2 || !token_among(items->tokens, first - 1, " with con ")) {
        return false;
    }
    for (i = first - 1; i > from && first - i < 7; i--) {
        if (token_among(items->tokens, i - 1, going)) {
            return true;
        }
    }
    return false;
}

/* "just watching tv, 65, on 2": a clause of nothing but a number, and how it is set behind it; "my
 * wife, 79, on 2" tells her age. */
bool
is_clause_before_setting(const struct items *items, size_t at)
{
    size_t i;

    if (at < 2 || clause_start(items, at) != at || clause_end(items, at) != at + 1 ||
        items->list[at].value <= 12 * 1000 || items->list[at].high > 100 * 1000 ||
        !(item_value(items, at + 2, ITEM_AT) == AT_ON || item_is(items, at + 2, ITEM_SETTING) ||
          item_is(items, at + 2, ITEM_MODE)) ||
        token_among(items->tokens, items->list[at - 1].from - 1, person_words) ||
        token_among(items->tokens, items->list[at - 1].from - 1, " im i me yo he she ella ")) {
        return false;
    }
    for (i = 0; i < items->count; i++) {
        if (item_in(items, i, UNIT_PERCENT) || item_is(items, i, ITEM_FULL) ||
            item_is(items, i, ITEM_LIGHT) || item_is(items, i, ITEM_CHARGE) ||
            item_is(items, i, ITEM_CYLINDER)) {
            return false;
        }
    }
    return true;
}

/* "is 40 enough", "will 40 do" */
bool
is_asked_of(const struct items *items, size_t at, size_t after)
{
    size_t first = items->list[at].from;

    if (item_value(items, after, ITEM_AT) == AT_ON && item_free_number(items, after + 1)) {
        after += 2; /* "will 70 on 2 do" */
    }
    if (item_is(items, after + 1, ITEM_UNTIL) && first > 0 &&
        token_is(items->tokens, first - 1, "is") &&
        token_among(items->tokens, items->list[after].from, " good ok okay ")) {
        return !items->list[at].negative; /* "is 50 good til the nurse comes" */
    }
    return first > 0 && after < items->count && !items->list[at].negative &&
           token_among(items->tokens, first - 1, " is will are would can does with con puede ") &&
           token_among(items->tokens, items->list[after].from,
                       token_is(items->tokens, first - 1, "con")
                           ? " para basta alcanza "
                           : " enough sufficient plenty do get cover work last suficiente ");
}

/* "charging from 10" */
static bool
is_charging_from(const struct items *items, size_t at)
{
    size_t first = items->list[at].from;

    return first > 0 && token_among(items->tokens, first - 1, " charging charge cargando cargar ");
}

bool
is_start_of_charging(const struct items *items, size_t at, size_t before)
{
    bool big = items->list[at].value > BIG_MIN * 1000;

    return lexicon_cue(items->tokens, CUE_CHARGING) || items_any(items, ITEM_POWER)
               ? big || items->list[at].value == 0 || item_is(items, at + 1, ITEM_TO) ||
                     is_charging_from(items, before) ||
                     token_is(items->tokens, items->list[before].from, "starting")
               : big && (item_is(items, at + 1, ITEM_TO) || at + 1 >= items->count ||
                         items->list[at + 1].is == ITEM_STOP);
}
