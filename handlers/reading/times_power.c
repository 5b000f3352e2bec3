/* What the unit runs or charges from: see times.h. */
#include "times.h"

#include "power_denied.h"

static enum power_source
source_of(int word)
{
    switch (word) {
    case POWER_WORD_BATTERY:
    case POWER_WORD_OUT:
        return POWER_SOURCE_BATTERY;
    case POWER_WORD_WALL:
    case POWER_WORD_BACK:
        return POWER_SOURCE_WALL;
    case POWER_WORD_CAR:
        return POWER_SOURCE_CAR;
    default:
        return POWER_SOURCE_NONE;
    }
}

/* "60 on battery B" */
static bool
is_named_battery(const struct items *items, size_t at)
{
    size_t after = items->list[at].to;

    if (item_text(items, at, "con") &&
        (item_is(items, at + 1, ITEM_AT) || (at + 1 < items->count && items->list[at + 1].spent))) {
        return true; /* "con la pila a dos tercios" */
    }
    return item_text(items, at, "on") && item_value(items, at, ITEM_POWER) == POWER_WORD_BATTERY &&
           (item_is(items, at - 1, ITEM_LIGHT) || item_in(items, at - 1, UNIT_PERCENT) ||
            token_among(items->tokens, after, " a b c ") || item_is(items, at + 1, ITEM_NAMED) ||
            (item_is(items, at + 1, ITEM_NUMBER) && items->list[at + 1].spent));
}

/* "to charge it off the wall": what it comes from; else "off the wall" is away from it. */
static bool
charges_off_wall(const struct items *items, size_t at)
{
    return item_text(items, at, "off") &&
           token_among(items->tokens, items->list[at].to - 1, " wall outlet mains plug socket ");
}

/* "in the outlet", "el contacto": a house's, where no car is spoken of; "la enchufe" is a verb. */
static bool
is_house_outlet(const struct items *items, size_t at)
{
    size_t last = items->list[at].to - 1;

    return item_value(items, at, ITEM_POWER) == POWER_WORD_PLUG &&
           token_among(items->tokens, last,
                       " outlet socket enchufe contacto toma tomacorriente ") &&
           !token_among(items->tokens, tokens_back(last, 1), " la lo las los me se ") &&
           !tokens_any_among(items->tokens, 0,
                             " car truck van rv auto carro coche camioneta camper seat bus train ");
}

static bool
has_power_word(const struct items *items, enum power_word word)
{
    size_t at;

    for (at = 0; at < items->count; at++) {
        if (item_value(items, at, ITEM_POWER) == (int)word) {
            return true;
        }
    }
    return false;
}

/* "not plugged in because the socket is broken": what it runs from, where no way is spoken of. */
static bool
is_not_plugged_in(const struct items *items, size_t at)
{
    return item_value(items, at, ITEM_POWER) == POWER_WORD_NONE &&
           items->list[at].to == items->list[at].from + 3 &&
           token_is(items->tokens, items->list[at].from, "not") &&
           token_is(items->tokens, items->list[at].from + 1, "plugged");
}

/* "3 hours there (no power)": of the place, and no outage. */
static bool
is_place_without(const struct items *items, size_t at)
{
    size_t from = clause_start(items, at), i;

    if (item_value(items, at, ITEM_POWER) != POWER_WORD_OUT ||
        !token_among(items->tokens, items->list[at].from, " no without sin ")) {
        return false;
    }
    from = from > 1 && item_text(items, from - 1, "(") ? clause_start(items, from - 1) : from;
    for (i = from; i < at && !item_in(items, i, UNIT_MINUTE); i++) {
    }
    return i < at;
}

/* Over words that carry nothing, at most so many, from `token` on (back to the ones before). */
static const char little[] =
    " it him her us me the a an just only its my our his back over la lo el "
    "del de pura puro solo sola su mi se me nos power ";

/* "switched it over to the battery", "runs on just the battery", "la cambie a bateria" */
static bool
is_put_on_battery(const struct items *items, size_t at)
{
    static const char verbs[] = " been hes shes im lleva llevo put switched switch switching moved "
                                "move run runs running ran went "
                                "go going changed change swapped cambie cambiamos cambio pase "
                                "pasamos puse anda andamos corre trabaja ";
    size_t before = items->list[at].from, steps;

    if (item_value(items, at, ITEM_BATTERY) != 1 &&
        item_value(items, at, ITEM_POWER) != POWER_WORD_BATTERY) {
        return false;
    }
    if (item_is(items, at + 1, ITEM_NUMBER) ||
        token_among(items->tokens, items->list[at].to, " a b c ")) {
        return false; /* "switched to battery 2" */
    }
    while (before > 0 && token_among(items->tokens, before - 1, little)) {
        before--;
    }
    if (item_is(items, at, ITEM_POWER)) {
        before++; /* "on battery" has its own */
    } else if (before == 0 ||
               !token_among(items->tokens, before - 1, " on onto off to a en con ")) {
        return false;
    }
    for (steps = 0; before > 1 && steps < 4; before--, steps++) {
        if (token_among(items->tokens, before - 2, verbs)) {
            return true;
        }
        if (!token_among(items->tokens, before - 2, little)) {
            return false;
        }
    }
    return false;
}

/* "we left the outlet", "la saque del enchufe", "away from the wall": what it ran from is behind.
 */
static bool
is_left_behind(const struct tokens *tokens, size_t token)
{
    static const char nouns[] = " wall outlet plug socket mains pared enchufe contacto toma "
                                "tomacorriente corriente ";
    size_t before = token;

    if (!token_among(tokens, token, nouns)) {
        return false;
    }
    while (before > 0 && token_among(tokens, before - 1, " the our my its a la el del de from ")) {
        before--;
    }
    return before > 0 && before < token &&
           token_among(tokens, before - 1,
                       " left leaving away off unhooked unplugged pulled yanked quite quitamos "
                       "saque sacamos saco desconecte desconectamos desenchufe desenchufamos ");
}

/* "the cord is out", "the plug came loose", "se salio el cable" */
static bool
is_come_loose(const struct tokens *tokens, size_t token)
{
    size_t after = token + 1;

    if (token_among(tokens, token, " cable enchufe cordon ")) {
        return tokens_phrase_at(tokens, tokens_back(token, 3),
                                "se salio el|se zafo el|se solto el") == 3 ||
               tokens_phrase_at(tokens, after, "se salio|se zafo|se solto|se desconecto") > 0;
    }
    return token_among(tokens, token, " cord plug ") &&
           tokens_phrase_at(tokens, after,
                            "is out|came out|came loose|fell out|got pulled|popped out|is loose|"
                            "came undone|pulled out|came off|is off") > 0;
}

static bool
is_off_power(const struct items *items)
{
    size_t at, token;

    for (at = 0; at < items->count; at++) {
        if (is_put_on_battery(items, at)) {
            return true;
        }
    }
    for (token = 0; token < items->tokens->count; token++) {
        if (is_left_behind(items->tokens, token) || is_come_loose(items->tokens, token)) {
            return true;
        }
    }
    return false;
}

void
power_read(const struct items *items, struct told *told)
{
    bool charging = told->kind == TOLD_CHARGING;
    size_t at;

    if (told->kind == TOLD_TRIP && told->since_min > 0) {
        told->on_power =
            has_power_word(items, POWER_WORD_BATTERY) ? POWER_SOURCE_BATTERY : POWER_SOURCE_NONE;
        return;
    }
    if (!charging && told->kind != TOLD_HOURS_LEFT && told->kind != TOLD_BATTERY_LIFE &&
        told->kind != TOLD_WATCH) {
        return;
    }
    for (at = 0; at < items->count; at++) {
        enum power_source source = source_of(item_value(items, at, ITEM_POWER));

        if (is_named_battery(items, at) ||
            (told->kind == TOLD_WATCH &&
             token_among(items->tokens, items->list[at].from,
                         " unplug off desconectar desenchufar desconectarlo desconectarla "
                         "desenchufarlo desenchufarla "))) {
            continue; /* "remind me to unplug" */
        }
        if (charging && (charges_off_wall(items, at) || is_house_outlet(items, at))) {
            source = POWER_SOURCE_WALL;
        }
        if (told->kind == TOLD_HOURS_LEFT && is_not_plugged_in(items, at)) {
            source = POWER_SOURCE_BATTERY;
        }
        if (told->leg_count > 0 && is_place_without(items, at)) {
            continue;
        }
        if (source != POWER_SOURCE_NONE && charging == (source != POWER_SOURCE_BATTERY) &&
            !(source != POWER_SOURCE_BATTERY && power_is_denied(items, at))) {
            told->on_power = source; /* the last telling */
        }
    }
    if (told->kind == TOLD_HOURS_LEFT && told->on_power == POWER_SOURCE_NONE &&
        is_off_power(items)) {
        told->on_power = POWER_SOURCE_BATTERY;
    }
    if (charging && told->on_power == POWER_SOURCE_NONE && told->leg_count == 1 &&
        !lexicon_cue(items->tokens, CUE_ENOUGH)) {
        told->on_power = told->legs[0].power; /* "stopped 45 min, there is a plug on the wall" */
    }
    if (charging && told->on_power == POWER_SOURCE_NONE &&
        tokens_have(
            items->tokens,
            "on the car|off the car|in the car|in my car|in our car|in the truck|in the van|"
            "con el auto|con el carro|con el coche|con la camioneta|en el carro|en el coche|en el "
            "auto|en la camioneta|"
            "en mi carro|in the rv|en la troca|en la van|en el camper|"
            "en su carro|en nuestro carro|in his truck|in her car|in his car|"
            "in the suv|in the jeep|in the camper|in the minivan")) {
        told->on_power = POWER_SOURCE_CAR;
    }
}
