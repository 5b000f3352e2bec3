#include "surroundings.h"

#include <string.h>

#include "charges.h"
#include "corrections.h"
#include "memory.h"

/* Lower ones are lengths of hose or steps walked. */
enum {
    HEIGHT_FEET_MIN = 1000,
    HEIGHT_METRES_MIN = 300,
    NEAR = 4,
    PRESSURE_PSI_MAX = 6000,
    PRESSURE_BAR_MAX = 420
};

static const char of_body[] = " fever fiebre calentura ";
/* What has a temperature of its own, which is not that of the air. */
static const char of_water[] = " water springs tub pool jacuzzi sauna soup oven shower bath agua "
                               "aguas termales tina alberca piscina sopa horno regadera ";
static const char height_words[] = " altitude elevation altura altitud elev high sobre up ";

static bool
near_word(const struct items *items, size_t at, const char *words)
{
    size_t from = items->list[at].from, to = items->list[at].to;

    return tokens_between_among(items->tokens, tokens_back(from, NEAR), to + 3, words);
}

/* "the springs (104 F water)", "a fever of 38 C" */
static bool
is_of_no_air(const struct items *items, size_t at)
{
    return near_word(items, at, of_body) || near_word(items, at, of_water);
}

static int
rounded(const struct item *item)
{
    int value = item->negative ? -item->value : item->value;

    return value / 1000;
}

static void
take(struct told_measure *measure, int value)
{
    *measure = (struct told_measure){true, value};
}

/* Colder or hotter than any place where somebody breathes. */
static bool
no_air_is_so(const struct item *item)
{
    int value = (item->negative ? -item->value : item->value) / 1000;

    return (item->unit == UNIT_CELSIUS && (value < -90 || value > 70)) ||
           (item->unit == UNIT_FAHRENHEIT && (value < -130 || value > 160));
}

void
surroundings_read(struct items *items, struct told *told)
{
    size_t at;

    for (at = 0; at < items->count; at++) {
        const struct item *item = &items->list[at];
        int value = rounded(item);
        bool high = near_word(items, at, height_words);

        if (item->is != ITEM_AMOUNT || item->spent) {
            continue;
        }
        if (no_air_is_so(item)) {
            told->impossible = true;
            told->impossible_what = items_words(items, at, 1);
        } else if (item->unit == UNIT_CELSIUS && !is_of_no_air(items, at)) {
            take(&told->celsius, value);
        } else if (item->unit == UNIT_FAHRENHEIT && !is_of_no_air(items, at)) {
            take(&told->fahrenheit, value);
        } else if (item->unit == UNIT_FEET &&
                   (value >= HEIGHT_FEET_MIN || (high && value >= 500))) {
            take(&told->altitude_ft, value);
        } else if (item->unit == UNIT_METER &&
                   (value >= HEIGHT_METRES_MIN || (high && value >= 150))) {
            take(&told->altitude_m, value);
        }
    }
}

/* ---- cylinder
 * ---------------------------------------------------------------------------------------- */

static bool
is_pressure(const struct items *items, size_t at)
{
    return item_in(items, at, UNIT_PSI) || item_in(items, at, UNIT_BAR) ||
           item_in(items, at, UNIT_POUND);
}

/* A bare number that a gauge shows: no cylinder holds so many bar. */
static bool
is_bare_psi(const struct items *items, size_t at)
{
    return item_free_number(items, at) && items->list[at].value >= 400 * 1000 &&
           items->list[at].value <= 6000 * 1000 && items->list[at].value % 10000 == 0 &&
           !items->list[at].ordinal && !item_is(items, at - 1, ITEM_NAMED) &&
           !item_is(items, at - 1, ITEM_PRICE);
}

/* "had 2000 at 9", "tenia 2000 en la manana" */
static bool
was_so(const struct items *items, size_t at)
{
    size_t from = clause_start(items, at), to = clause_end(items, at), i;

    for (i = from; i < to; i++) {
        if (i < at && at - i <= 4 && item_is(items, i, ITEM_WAS)) {
            return true;
        }
        if (i > at && item_is(items, i, ITEM_EARLIER)) {
            return i < at + 3;
        }
        if (i > at && (item_is(items, i, ITEM_AND) || items->list[i].is == ITEM_AMOUNT)) {
            break;
        }
    }
    return false;
}

/* "yesterday 1800, today I havent looked": what it is now nobody knows. */
static bool
is_not_looked_at_since(const struct items *items, size_t at)
{
    size_t to = at + 2 < items->count ? at + 2 : items->count;

    return items_find(items, clause_start(items, at), to, ITEM_EARLIER) < to &&
           items_find(items, at, items->count, ITEM_UNKNOWN) < items->count;
}

/* "500 left of 2000": when it was full */
static bool
is_what_it_held(const struct items *items, size_t at)
{
    return item_is(items, at - 1, ITEM_OF) || item_text(items, at - 1, "from") ||
           item_text(items, at - 1, "/");
}

/* "22000 psi": more than any cylinder is filled to (common practice, no source). */
static bool
no_cylinder_holds(const struct item *item)
{
    return item->is == ITEM_AMOUNT &&
           item->value > (item->unit == UNIT_BAR ? PRESSURE_BAR_MAX : PRESSURE_PSI_MAX) * 1000;
}

static void
read_pressure(struct items *items, struct told *told)
{
    bool past = false, told_before = false;
    size_t at;

    for (at = 0; at < items->count; at++) {
        const struct item *item = &items->list[at];
        bool bare = is_bare_psi(items, at);

        if (item->spent || !(is_pressure(items, at) || bare)) {
            continue;
        }
        if (is_not_looked_at_since(items, at)) {
            items_spend(items, at, 1);
            continue;
        }
        if (told_before &&
            (is_what_it_held(items, at) || item->value / 1000 > told->psi + told->bar) && !past &&
            !corrections_lead(items, at)) {
            items_spend(items, at, 1);
            continue;
        }
        if (item->negative || no_cylinder_holds(item)) {
            told->impossible = true;
            told->impossible_what = items_words(items, at, 1);
            told->missing |= MISSING_PRESSURE;
        } else if (!told_before || past || !was_so(items, at)) {
            past = was_so(items, at);
            told_before = true;
            told->psi = !bare && item->unit == UNIT_BAR ? 0 : item->value / 1000;
            told->bar = !bare && item->unit == UNIT_BAR ? item->value / 1000 : 0;
        }
        items_spend(items, at, 1);
    }
}

static bool
is_size(const struct tokens *tokens, size_t at)
{
    return token_among(tokens, at, " b c d e h m m6 m9 m2 m4 m22 m60 ml6 jd me ") &&
           tokens->list[at].kind == TOKEN_WORD;
}

static size_t
size_token(const struct items *items, size_t at)
{
    size_t after = items->list[at].to;

    return after + (token_among(items->tokens, after, " is es of de a an ") ? 1 : 0);
}

bool
cylinder_size_at(const struct items *items, size_t at)
{
    return item_is(items, at, ITEM_SIZE) && is_size(items->tokens, size_token(items, at));
}

static void
take_size(struct told *told, const char *text)
{
    size_t i;

    for (i = 0; i + 1 < TOLD_SIZE_MAX && text[i] != '\0'; i++) {
        told->size[i] = (char)(text[i] >= 'a' && text[i] <= 'z' ? text[i] - 'a' + 'A' : text[i]);
    }
    told->size[i] = '\0';
}

/* "size E", "E tank", "cilindro tipo E", "it is an E" */
static void
read_size(const struct items *items, struct told *told)
{
    const struct tokens *tokens = items->tokens;
    size_t at, i;

    for (at = 0; at < items->count; at++) {
        size_t first = items->list[at].from, after = items->list[at].to;

        if (cylinder_size_at(items, at)) {
            take_size(told, tokens->list[size_token(items, at)].text);
            return;
        }
        if (item_is(items, at, ITEM_CORRECT) && token_among(tokens, after, " e d ")) {
            take_size(told, tokens->list[after].text);
            return;
        }
        if (token_among(tokens, first, " m6 m9 m22 m60 ml6 ")) {
            take_size(told, tokens->list[first].text);
            return;
        }
        if (item_is(items, at, ITEM_SIZE) && first > 0 && is_size(tokens, first - 1)) {
            take_size(told, tokens->list[first - 1].text);
            return;
        }
        if (!item_is(items, at, ITEM_CYLINDER) && !token_is(tokens, first, "tubo")) {
            continue; /* "tubo D": a cylinder only before its letter, for a cannula is one too */
        }
        if (first > 0 && is_size(tokens, first - 1)) {
            take_size(told, tokens->list[first - 1].text);
        } else if (is_size(tokens, after)) {
            take_size(told, tokens->list[after].text);
        } else {
            for (i = after; i < after + NEAR; i++) {
                if (i < after + 2 && token_is(tokens, i, "d")) {
                    take_size(told, tokens->list[i].text);
                }
                if (token_among(tokens, i,
                                " an a un una es is chico grande pequeno small big large los las "
                                "the its de its "
                                "little kind el tipo portable portatil type ") &&
                    is_size(tokens, i + 1) && !(token_is(tokens, i, "a") && items->spanish)) {
                    take_size(told, tokens->list[i + 1].text);
                }
            }
        }
    }
}

/* "900 psi in the D", "600 psi, D": a letter by itself, once nothing else tells the size. */
static void
read_bare_size(const struct items *items, struct told *told)
{
    const struct tokens *tokens = items->tokens;
    size_t at;

    for (at = 1; at < tokens->count; at++) {
        bool first = at == 1 && token_among(tokens, 0, " d e ") &&
                     (token_among(tokens, 1, " at on with con a al , ") ||
                      tokens->list[1].kind == TOKEN_NUMBER);
        bool ends = at + 1 >= tokens->count || tokens->list[at + 1].kind == TOKEN_SIGN ||
                    token_among(tokens, at + 1,
                                " trae tiene marca va queda cuanto reads shows has at on with last "
                                "lasts a con dura at in kind size type one tank model en ");
        bool named = token_is(tokens, at - 1, ":") && at + 1 < tokens->count &&
                     tokens->list[at + 1].kind == TOKEN_NUMBER; /* "tank: E 1900 psi" */
        bool between = token_among(tokens, at - 1, " psi libras lbs bar bares ") &&
                       (at + 1 >= tokens->count || tokens->list[at + 1].kind != TOKEN_WORD);

        if (first) { /* "E at 140 bar", "E, 1500 psi" */
            take_size(told, tokens->list[0].text);
        } else if (token_among(tokens, at, " d e ") &&
                   (between || named || /* "500 psi D 2 liters" */
                    (ends &&
                     token_among(tokens, at - 1,
                                 " the an a un una uno los las , in el la : es is my his her our "
                                 "mi su both ambos "
                                 "says say dice reads letter letra stamped . ") &&
                     !(token_is(tokens, at, "e") && items->spanish &&
                       token_is(tokens, at - 1, ","))))) {
            take_size(told, tokens->list[at].text);
        }
    }
}

void
cylinder_read(struct items *items, struct told *told)
{
    if (!items_any(items, ITEM_CYLINDER) && !lexicon_cue(items->tokens, CUE_CYLINDER) &&
        told->kind != TOLD_CYLINDER) {
        return;
    }
    read_pressure(items, told);
    read_size(items, told);
    if (told->size[0] == '\0') {
        read_bare_size(items, told);
    }
}
