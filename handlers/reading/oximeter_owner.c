/*
 * Whose number it is. A battery, a room or a thermostat in the sentence takes a number for its own,
 * unless somebody leads straight to that number ("the pack is dead he is at 78") or the thing has
 * its own told already ("setting 2", "on 3 liters", "the pack is fine im at 79").
 */
#include "oximeter_parts.h"
#include "persons.h"

enum {
    LEAD_REACH = 5,
    FLOW_WORDS = 3,
    LOW_BATTERY = 45,
    HIGHEST_GRAVE = 85 /* so low a value of somebody would be an emergency, whatever it is of */
};

/* What has numbers, beside the words of oximeter_other_things. */
static const char vetoes[] =
    " phone cell laptop tablet celular telefono thermostat heater thermometer temp temperature "
    "temperatura termostato clima weather clock reloj gauge manometro dial scale speed "
    "speedometer bottle botella tanque cilindro bus flight vuelo gate road route highway exit "
    "floor piso cuarto habitacion departamento screen pantalla price total bill cost deposit "
    "precio deposito psi bar volume volumen cumple birthday outside "
    "inside afuera oven water agua pool tub spring score game channel canal page pagina "
    "carga cargada cargado cargar charging charger cargador lasts miles pesos "
    "dolares dollars weigh weighs spare repuesto machine maquina unit peso pesa steps pasos order "
    "pedido size talla medida tip box backup readout ";

const char oximeter_between[] =
    " at to in is was it its around about only just now still like a the en de hasta como entre "
    "between and y down up back into low high mid esta anda va = : ";
/* Between somebody and their value also these; and one of these there must be. */
static const char between_someone[] = " sits sitting ";
static const char leading[] =
    " at to a en around read reads reading dropped drops dropping fell falling marca "
    "marco satura trae anda ";
/* One who may as well tell it of their battery; "el" and "the pack of mom" are of a thing. */
static const char many[] = " they theyre im i estoy yo le me ";
/* Whom something is done to; they lead to a value only behind a preposition: "with her at 79", but
 * "plug her in at 80". */
static const char objects[] = " him her ";
const char oximeter_asks_how[] = " how cuanto cuanta cuantos cuantas ";
static const char of[] = " of for with de del para con ";
static const char determiners[] = " the my his her our el la mi su nuestra nuestro ";

static const char flow_units[] = " liter liters litro litros lpm ";
/* What is told of a thing, and what may stand between the two. */
static const char states[] =
    " dead empty died out flat gone off black broken broke fine good ok okay charged full charging "
    "dying muerta muertas murio murieron vacia vacias vacio acabo acabaron apagada apagado bien "
    "llena llenas ";
static const char spent[] = " dead empty died flat muerta muertas murio vacia vacias vacio acabo ";
static const char copulas[] = " is are s both now all just totally completely almost reads read "
                              "reading readings says at went se esta estan en marca ya ";

bool
oximeter_ends_sentence(const struct tokens *tokens, size_t at)
{
    return token_among(tokens, at, " . ! ? ; ");
}

bool
oximeter_is_flow(const struct tokens *tokens, size_t at)
{
    int thousandths;

    return tokens_number(tokens, at, false, &thousandths) == 1 &&
           token_among(tokens, at + 1, flow_units);
}

/* So many tokens before `end` tell a flow: "on 2 liters", "at setting 2". */
static size_t
flow_before(const struct tokens *tokens, size_t end)
{
    int thousandths;

    if (end < FLOW_WORDS || !token_among(tokens, end - FLOW_WORDS, " on at con en a ")) {
        return 0;
    }
    return oximeter_is_flow(tokens, end - 2) ||
                   (token_is(tokens, end - 2, "setting") &&
                    tokens_number(tokens, end - 1, false, &thousandths) == 1)
               ? FLOW_WORDS
               : 0;
}

bool
oximeter_is_someone(const struct tokens *tokens, size_t at)
{
    /* in Spanish it is "they are" */
    bool is_verb =
        token_is(tokens, at, "son") && !(at > 0 && token_among(tokens, at - 1, determiners));

    return token_among(tokens, at, person_words) && !is_verb;
}

/* A value may be told of them right behind. */
static bool
leads(const struct tokens *tokens, size_t at)
{
    bool is_behind_preposition = at > 0 && token_among(tokens, at - 1, of);

    return token_is(tokens, at, "el") ||
           (oximeter_is_someone(tokens, at) &&
            (!token_among(tokens, at, objects) || is_behind_preposition));
}

/* "The battery for mom is at 80": the thing right before tells what the number is of; "im here with
 * mom at 78" and "numbers of my dad at 79" name none. */
static bool
is_owner_of_thing(const struct tokens *tokens, size_t who)
{
    size_t thing = who;

    while (thing > 0 && token_among(tokens, thing - 1, determiners)) {
        thing--;
    }
    if (thing < 2 || !token_among(tokens, thing - 1, of)) {
        return false;
    }
    thing -= 2;
    return token_among(tokens, thing, oximeter_other_things) || token_among(tokens, thing, vetoes);
}

size_t
oximeter_who_leads(const struct tokens *tokens, size_t at)
{
    bool is_led = flow_before(tokens, at) > 0;
    size_t passed = 0, i = at;

    while (i > 0 && passed++ < LEAD_REACH) {
        size_t flow = flow_before(tokens, i);

        if (flow > 0) {
            i -= flow;
            continue;
        }
        i--;
        if (is_led && (leads(tokens, i) || token_among(tokens, i, many))) {
            return is_owner_of_thing(tokens, i) ? at : i;
        }
        is_led = is_led || token_among(tokens, i, leading);
        if (!token_among(tokens, i, oximeter_between) && !token_among(tokens, i, leading) &&
            !token_among(tokens, i, between_someone)) {
            return at;
        }
    }
    return at;
}

bool
oximeter_is_of_someone(const struct tokens *tokens, size_t at)
{
    size_t who = oximeter_who_leads(tokens, at);

    return who < at && !token_among(tokens, who, many);
}

static bool
is_but(const struct tokens *tokens, size_t at)
{
    return token_among(tokens, at, " but pero ");
}

/* "setting 2", "3 liters" has its number, so another one is not of it. */
static bool
has_own_number(const struct tokens *tokens, size_t thing, size_t at)
{
    size_t number = token_is(tokens, thing, "setting") ? thing + 1 : thing - 1;
    int thousandths;

    return (token_is(tokens, thing, "setting") ||
            (thing > 0 && token_among(tokens, thing, flow_units))) &&
           number != at && tokens_number(tokens, number, false, &thousandths) > 0 &&
           thousandths < OXIMETER_LOWEST_BARE * 1000;
}

bool
oximeter_is_spent(const struct tokens *tokens, size_t thing)
{
    size_t next = thing + 1;

    while (token_among(tokens, next, copulas)) {
        next++;
    }
    return token_among(tokens, next, spent);
}

bool
oximeter_tells_of_thing(const struct tokens *tokens, size_t thing, size_t end)
{
    size_t name = thing, next;
    int thousandths;

    while (token_among(tokens, name, " and the my both our his y la el las los mi ")) {
        name++;
    }
    for (next = name + 1; next < end && token_among(tokens, next, copulas);) {
        next++;
    }
    return (token_among(tokens, name, oximeter_other_things) ||
            token_among(tokens, name, vetoes)) &&
           ((name > 0 && token_among(tokens, name - 1, spent)) ||
            (next < end && (token_among(tokens, next, states) ||
                            tokens_number(tokens, next, false, &thousandths) > 0)));
}

/* "She was at 90 when the lights quit, how long": so a battery was, unless it may be a value that
 * nobody should have. */
static bool
was_charge(const struct tokens *tokens, size_t who, size_t at)
{
    size_t i, taken;

    if (oximeter_value(tokens, at, &taken) <= HIGHEST_GRAVE) {
        return false;
    }

    for (i = who; i < at; i++) {
        if (token_among(tokens, i, " was were estaba estaban ")) {
            return tokens_have(tokens, oximeter_hours_asked);
        }
    }
    return false;
}

/* The sentence around the number speaks of something else that has it for its own; around someone's
 * value only as far as a "but", and not before who leads to it. */
static bool
is_of_thing(const struct tokens *tokens, size_t at)
{
    size_t who = oximeter_who_leads(tokens, at), i = at;
    bool of_someone = oximeter_is_of_someone(tokens, at);
    bool is_asked = false; /* "mom is at 79 how long will the tank last": its number is not known */

    if (was_charge(tokens, who, at)) {
        who = at;
        of_someone = false;
    }
    while (i > 0 && !oximeter_ends_sentence(tokens, i - 1) &&
           !(of_someone && (i == who || is_but(tokens, i - 1)))) {
        i--;
    }
    for (; i < tokens->count && !oximeter_ends_sentence(tokens, i) &&
           !(of_someone && is_but(tokens, i));
         i++) {
        bool is_thing =
            token_among(tokens, i, vetoes) ||
            (token_among(tokens, i, oximeter_other_things) && !has_own_number(tokens, i, at));
        bool is_apart =
            who < at && oximeter_tells_of_thing(tokens, i, i < at ? who : tokens->count);

        is_asked = is_asked || (of_someone && i > at && token_among(tokens, i, oximeter_asks_how));
        if (is_thing && !is_apart && (!is_asked || token_among(tokens, i, oximeter_batteries))) {
            return true;
        }
    }
    return false;
}

/* "una dice 92 y otra 8", "the one in it 92, the one in my bag 8": no other person's value is so
 * low, so that both are batteries. */
static bool
is_beside_low_battery(const struct tokens *tokens, size_t at)
{
    static const char others[] = " left right top bottom izquierda derecha arriba abajo otra otro "
                                 "other spare second segunda bolsa bag purse mochila "
                                 "cajon drawer backpack maleta backup ";
    int thousandths;
    size_t from = at, i, next;

    while (from > 0 && !oximeter_ends_sentence(tokens, from - 1)) {
        from--;
    }
    for (i = from; i < tokens->count && !oximeter_ends_sentence(tokens, i); i++) {
        for (next = i + 1; token_among(tokens, i, others) && next < i + 4; next++) {
            size_t taken = tokens_number(tokens, next, false, &thousandths);

            if (taken > 0) {
                return thousandths <= LOW_BATTERY * 1000 && next != at &&
                       (next + taken >= tokens->count ||
                        tokens->list[next + taken].kind == TOKEN_SIGN ||
                        token_among(tokens, next + taken, " percent por and y how cuanto "));
            }
        }
    }
    return false;
}

/* In the sentence of the number; then it may be a person's. */
static bool
speaks_of_someone(const struct tokens *tokens, size_t at)
{
    while (at > 0 && !oximeter_ends_sentence(tokens, at - 1)) {
        at--;
    }
    for (; at < tokens->count && !oximeter_ends_sentence(tokens, at); at++) {
        if (oximeter_is_someone(tokens, at)) {
            return true;
        }
    }
    return false;
}

/* "it said 92 when I unplugged at 1:20", "forgot to plug it in, it shows 71" */
static bool
is_of_unplugging(const struct tokens *tokens, size_t at)
{
    return !speaks_of_someone(tokens, at) &&
           tokens_have(
               tokens,
               "havent plugged|havent been plugged|hasnt been on the wall|was full|were full|fully "
               "charged|a full battery|estaba llena|plug it in|plugged "
               "it in|plug her in|the cord|the cable|the outlet|"
               "an outlet|el cable|enchufarlo|enchufarla|conectarlo|conectarla|"
               "off the wall|off the charger|"
               "unplugged at|unplugged it at|when i unplugged|when we unplugged|"
               "off the wall at|off the charger at|off the wall since|pulled the plug at|"
               "unplugged since|hasnt been plugged|not been plugged|hasnt been on the charger|"
               "no la he conectado|no la he enchufado|desenchufe a las|desenchufamos a "
               "las|desconecte a las|"
               "desconectamos a las|cuando la desconecte|cuando la desenchufe|"
               "cuando desenchufe|cuando desconecte");
}

/* "text me when it gets to 30, it says 84": what is told to fall so far is a battery. */
bool
oximeter_is_watched_battery(const struct tokens *tokens, size_t at)
{
    static const char falls[] = "when it gets to|when it drops to|when it hits|when it falls to|"
                                "when it reaches|when its down to|when it is down to|when its at|"
                                "when it gets down to|cuando llegue a|cuando baje a|cuando llegue "
                                "al|cuando baje al|cuando este en|cuando ande en";
    int thousandths;
    size_t i;

    if (speaks_of_someone(tokens, at)) {
        return false;
    }
    for (i = 0; i < tokens->count; i++) {
        size_t number = i + tokens_phrase_at(tokens, i, falls);

        if (number > i && number != at && tokens_number(tokens, number, false, &thousandths) > 0 &&
            thousandths <= LOW_BATTERY * 1000 && thousandths % 1000 == 0) {
            return true;
        }
    }
    return false;
}

bool
oximeter_is_of_thing(const struct tokens *tokens, size_t at)
{
    return is_of_thing(tokens, at) ||
           (!oximeter_is_of_someone(tokens, at) &&
            (is_beside_low_battery(tokens, at) || is_of_unplugging(tokens, at) ||
             oximeter_is_watched_battery(tokens, at)));
}
