#include "state_nouns.h"

#include <string.h>

#include "hedges.h"

static const char no_nouns[] =
    " long time much many hours will would can could shall should may might must if so but because "
    "since while when hi hey "
    "hello please thanks thx thank like as lol ok okay how what and or then per puede podria thing "
    "thingy gizmo gadget contraption box portable breather juice cosa maquinita cajita "
    "eso esto claro creo aun todavia ahorita podra si pero porque cuando hola oye para con como "
    "gracias porfa favor osea entonces que ";

/* "the cup was full": what was so */
static size_t
over_was(const struct items *items, size_t before)
{
    return item_is(items, before, ITEM_WAS) && item_text(items, before, "was") &&
                   item_is(items, before - 1, ITEM_WORD)
               ? before - 1
               : before;
}

bool
has_noun_behind(const struct items *items, size_t at)
{
    return item_is(items, at + 1, ITEM_WORD) &&
           !token_among(items->tokens, items->list[at].to, no_nouns);
}

/* "the plug in this van is dead": of what feeds, and no battery or "it" since */
static bool
is_of_socket(const struct items *items, size_t at)
{
    size_t from = items->list[clause_start(items, at)].from, first = items->list[at].from, i;

    if (!item_is(items, at, ITEM_CHARGE)) {
        return false;
    }
    for (i = first; i > from && first - i < 7; i--) {
        if (token_among(items->tokens, i - 1, " it its theyre they and y pero but ")) {
            return false;
        }
        if (token_among(items->tokens, i - 1,
                        " plug socket outlet lighter adapter adaptor inverter cord cable usb port "
                        "encendedor enchufe toma tomacorriente adaptador contacto inversor ")) {
            return true;
        }
    }
    return false;
}

/* "muerto de sueno", "muertas de risa", "huele a muerto": a battery is no man, and tired of nothing
 */
static bool
is_of_dead_person(const struct items *items, size_t at)
{
    size_t last = items->list[at].to - 1, after = items->list[at].to;

    return items->spanish && (token_among(items->tokens, last, " muerto muertos ") ||
                              (token_among(items->tokens, last, " muerta muertas ") &&
                               token_is(items->tokens, after, "de") &&
                               !token_among(items->tokens, after + 1, " pila bateria carga ")));
}

/* "pague el mes completo", "el vaso muy lleno" */
static bool
is_masculine_of(const struct items *items, size_t at)
{
    return items->spanish &&
           token_among(items->tokens, items->list[at].to - 1, " completo lleno vacio ") &&
           token_among(items->tokens,
                       tokens_back(items->list[at].from,
                                   token_among(items->tokens, tokens_back(items->list[at].from, 1),
                                               " muy tan mas esta ")
                                       ? 2
                                       : 1),
                       " mes dia turno viaje camino recorrido vaso estomago pague pago precio "
                       "nombre curso botecito deposito ");
}

/* "el lugar esta lleno": a battery is feminine, and what is not is named */
static bool
is_masculine_subject(const struct items *items, size_t at)
{
    size_t noun = items->list[at].from;

    if (!items->spanish ||
        !token_among(items->tokens, items->list[at].to - 1, " completo lleno vacio ")) {
        return false;
    }
    while (noun > 0 &&
           token_among(items->tokens, noun - 1, " muy tan mas bien esta va quedo ya ")) {
        noun--;
    }
    return noun > 1 && token_among(items->tokens, noun - 2, " el un mi su este ese ") &&
           !token_among(items->tokens, noun - 1,
                        " otro mio uno aparato equipo cargador paquete concentrador primero "
                        "segundo tercero foco repuesto tanque cilindro ");
}

/* "la que esta vacia": of a battery, whatever stands before */
static bool
is_the_one_that_is(const struct items *items, size_t at)
{
    return tokens_phrase_at(items->tokens, tokens_back(items->list[at].from, 3),
                            "la que esta|las que estan|el que esta") == 3;
}

/* "full moon", "dead quiet", "my belly is full": nothing near is a battery. */
bool
is_of_no_battery(const struct items *items, size_t at)
{
    size_t from = clause_start(items, at), before = over_was(items, back_over_links(items, at)), i;
    bool noun_behind = has_noun_behind(items, at);
    bool is_phrase = token_among(items->tokens, items->list[at].from, " is are "); /* "is flat" */
    bool noun_before = before < at && (before + 1 < at || is_phrase) &&
                       item_is(items, before, ITEM_WORD) &&
                       !token_among(items->tokens, items->list[before].from, no_nouns) &&
                       strlen(items->tokens->list[items->list[before].from].text) > 1; /* "B is" */

    if (is_of_socket(items, at) || is_the_one_that_is(items, at)) {
        return is_of_socket(items, at);
    }
    if (noun_behind && token_among(items->tokens, items->list[at].to - 1, " dead ") &&
        items->list[at - (at > 0)].is != ITEM_NUMBER && before + 1 >= at) {
        return true; /* "theres a dead spot" */
    }
    if (is_of_dead_person(items, at) || is_masculine_of(items, at) ||
        is_masculine_subject(items, at)) {
        return true;
    }
    for (i = from; i < at; i++) {
        if (item_is(items, i, ITEM_BATTERY) || item_is(items, i, ITEM_OTHER) ||
            item_is(items, i, ITEM_ORDINAL) || item_is(items, i, ITEM_BOTH) ||
            item_is(items, i, ITEM_ALL) || item_is(items, i, ITEM_HAVE) ||
            items->list[i].is == ITEM_NUMBER || item_is(items, i, ITEM_SHOWS)) {
            return false;
        }
    }
    if (before < at &&
        (before + 1 < at || token_among(items->tokens, items->list[at].from - 1, " is esta ")) &&
        (item_is(items, before, ITEM_GOING) || item_is(items, before, ITEM_EVENT) ||
         (item_is(items, before, ITEM_NAMED) &&
          token_among(items->tokens, items->list[before].from, " lot room hotel gate site ")))) {
        return true; /* "the bus is full" */
    }
    return (noun_behind && !item_is(items, at + 1, ITEM_BATTERY)) || noun_before;
}
