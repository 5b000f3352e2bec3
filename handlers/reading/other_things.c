#include "other_things.h"

/* "la bateria del carro", "the battery of my phone" */
static bool
is_battery_of_thing(const struct tokens *tokens, size_t token)
{
    static const char things[] = " carro coche auto camioneta troca celular telefono cel control "
                                 "reloj audifono audifonos car truck van phone remote watch ";

    if (token_is(tokens, token, "del")) {
        return token_among(tokens, token + 1, things);
    }
    return token_among(tokens, token, " de of in ") &&
           token_among(tokens, token + 1, " la mi su my the his her ") &&
           token_among(tokens, token + 2, things);
}

/* A battery is told of outside the clause [from, to). */
static bool
has_battery_elsewhere(const struct items *items, size_t from, size_t to)
{
    size_t at;

    for (at = 0; at < items->count; at++) {
        if ((at < from || at >= to) &&
            (item_is(items, at, ITEM_BATTERY) || item_is(items, at, ITEM_OTHER) ||
             item_is(items, at, ITEM_LIGHT) || item_is(items, at, ITEM_FULL))) {
            return true;
        }
    }
    return false;
}

/* "the cat is 15", "ella tiene 81", where batteries are told of by their own word: of whatever it
 * says, and no battery. */
static bool
is_of_unknown_subject(const struct items *items, size_t at)
{
    static const char gauges[] =
        " screen display thing number meter gauge reading readout indicator "
        "panel pantalla pantallita numero medidor indicador marcador "
        "aparato aparatito maquina machine unit concentrator ";
    static const char whose[] = " the my his her our el mi su nuestro ";
    static const char persons[] = " ella esposa esposo mama papa abuela abuelo mami papi suegra "
                                  "suegro ";
    static const char verbs[] = " is has says weighs scored tiene dice pesa cumple ";
    size_t from = clause_start(items, at), verb, noun, first;

    if (at < from + 2 || items->list[at].is != ITEM_NUMBER) {
        return false;
    }
    verb = at - 1;
    noun = at - 2;
    if (!token_among(items->tokens, items->list[verb].from, verbs) ||
        items->list[verb].to != items->list[verb].from + 1 ||
        !has_battery_elsewhere(items, from, clause_end(items, at))) {
        return false;
    }
    first = items->list[noun].from;
    if (token_among(items->tokens, first, persons)) {
        return token_is(items->tokens, items->list[verb].from, "tiene");
    }
    return items->list[noun].is == ITEM_WORD && items->list[noun].meaning_count == 0 &&
           !token_among(items->tokens, first, gauges) && first > 0 &&
           token_among(items->tokens, first - 1, whose);
}

/* "my phone is at 30 %", "the gas tank is at a quarter" */
bool
is_of_other_thing(const struct items *items, size_t at)
{
    static const char others[] =
        " phone cell cellphone tablet laptop telefono celular "
        "thermostat thermometer termometro thermo watch reloj radio tv heater oven speedometer "
        "scale bascula tele televisor "
        "termostato humidity computer camera flashlight scooter wheelchair "
        "gas gasoline fuel diesel propane gasolina ";
    static const char vehicles[] = " car truck van jeep boat rv golf ";
    size_t from = clause_start(items, at), i;

    if (is_of_unknown_subject(items, at)) {
        return true;
    }
    for (i = at; i > from && at - i < 6; i--) {
        if (item_is(items, i - 1, ITEM_BATTERY) &&
            is_battery_of_thing(items->tokens, items->list[i - 1].to)) {
            return true;
        }
        if (item_is(items, i - 1, ITEM_AND) || item_is(items, i - 1, ITEM_BATTERY)) {
            return (token_among(items->tokens, items->list[i - 1].from - 1, others) ||
                    token_among(items->tokens, items->list[i - 1].from - 1, vehicles)) &&
                   item_is(items, i - 1, ITEM_BATTERY); /* "phone battery", "car battery" */
        }
        if (token_among(items->tokens, items->list[i - 1].from, " but pero ")) {
            return false;
        }
        if (token_among(items->tokens, items->list[i - 1].to - 1, others) ||
            token_among(items->tokens, items->list[i - 1].from, others)) {
            return true;
        }
    }
    return false;
}

/* "temperature fell to minus 5": a number by itself is degrees there. */
bool
is_of_weather(const struct items *items, size_t at)
{
    size_t from = clause_start(items, at), i;

    for (i = at; items->list[at].is == ITEM_NUMBER && i > from; i--) {
        if (item_is(items, i - 1, ITEM_BATTERY) || items->list[i - 1].is == ITEM_NUMBER ||
            items->list[i - 1].is == ITEM_AMOUNT) {
            return false;
        }
        if (token_among(items->tokens, items->list[i - 1].to - 1,
                        " temperature temp temps temperatures temperatura temperaturas ")) {
            return true;
        }
    }
    return false;
}
