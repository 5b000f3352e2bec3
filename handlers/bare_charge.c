/*
 * Charges told without a question: "both full", "2 lights", "las dos llenas". Whoever reports them
 * wants to know how long they last. A percentage with nothing beside it may as well be an
 * oximeter's, which a person must see: it is asked which of the two it is.
 */
#include "bare_charge.h"

#include "emergency.h"
#include "memory.h"
#include "say.h"
#include "steps.h"

/* What a charge is told of or with, and no reading is. */
static const char of_batteries[] =
    " battery batteries batt batts bat bats pack packs spare spares both all each two three four "
    "one first second other another full half empty dead charged lights light bar bars left unit "
    "machine bateria baterias pila pilas ambas ambos todas cada dos tres cuatro una otra primera "
    "segunda llena llenas media medias mitad vacia vacias muerta muertas cargada cargadas luz "
    "luces rayita rayitas queda quedan equipo ";
static const char around_charges[] =
    " low percent at is are on in of the and my i have got ive its it them they just now still "
    "here with a y por ciento al la las el en de con un tengo tiene tienen estan esta ahora ";

/* What we asked about, by its name. */
static const char named[] = "battery|batteries|charge|bateria|baterias|pila|carga";

/* No word but of these lists (the second may be ""), and no question mark. */
static bool
has_only(const struct tokens *tokens, const char *words, const char *or_of)
{
    size_t i;

    for (i = 0; i < tokens->count; i++) {
        if (tokens->list[i].kind == TOKEN_WORD && !token_among(tokens, i, words) &&
            !token_among(tokens, i, or_of)) {
            return false;
        }
    }
    return !tokens_have(tokens, "?");
}

bool
bare_percent_is_told(const struct asked *asked)
{
    return asked->told->charge_count > 0 && asked->told->light_count == 0 &&
           has_only(&asked->tokens, around_charges, "");
}

bool
bare_charge_is_told(const struct asked *asked)
{
    return told_has_charge(asked->told) && !asked->told->impossible &&
           has_only(&asked->tokens, of_batteries, around_charges) && !bare_percent_is_told(asked);
}

/* The lowest percentage that was told. */
static int
lowest_of(const struct told *told)
{
    int lowest = 100;
    size_t i;

    for (i = 0; i < told->charge_count; i++) {
        lowest = told->charges[i].low < lowest ? told->charges[i].low : lowest;
    }
    return lowest;
}

int
bare_percent_as_reading(const struct asked *whole)
{
    static const char of_oximeters[] =
        "oxygen|o2|reading|readings|finger|oximeter|sat|sats|saturation|spo2|pulse ox|pulse "
        "oximeter|"
        "clip|meter|oxigeno|oximetro|lectura|dedo|saturacion|pinza|aparatito|cosito";
    static const char of_units[] = "unit|machine|concentrator|display|screen|tank|equipo|aparato|"
                                   "maquina|concentrador|pantalla|tanque";
    static const char no_battery[] =
        "not * battery|not * batteries|isnt * battery|no * bateria|no * pila|no * carga";
    const char *about = whole->context->conversation.asked_about;
    struct asked before;

    if (about == NULL || asked_open_question(whole) != QUESTION_WHICH_CHARGE ||
        !tokens_have(&whole->tokens, of_oximeters) || tokens_have(&whole->tokens, of_units) ||
        (tokens_have(&whole->tokens, named) && !tokens_have(&whole->tokens, no_battery))) {
        return 0;
    }
    before = asked_question(whole, about, whole->context->conversation.asked_utc_s);
    return bare_percent_is_told(&before) ? lowest_of(before.told) : 0;
}

bool
bare_charge_is_of_battery(const struct asked *asked)
{
    return tokens_have(&asked->tokens, named) &&
           has_only(&asked->tokens,
                    " battery batteries charge charges its it is the a of my "
                    "bateria baterias pila pilas carga es la las de una mi ",
                    "");
}

/* As a reading it would be an emergency, and somebody who texts may have it. */
static bool
may_be_grave(const struct asked *asked)
{
    enum { LEAST_READING = 70 };
    int limit = emergency_reading(asked->context);
    size_t i;

    for (i = 0; i < asked->told->charge_count; i++) {
        if (asked->told->charges[i].low >= LEAST_READING && asked->told->charges[i].low <= limit) {
            return true;
        }
    }
    return false;
}

bool
bare_percent_decide(const struct asked *asked, struct verdict *verdict)
{
    struct answer *answer;

    if (!bare_percent_is_told(asked)) {
        return false;
    }
    /* If it is a reading, and they do not answer, a person sees it all the same; so too if it
     * cannot be asked because a graver question of ours is open. */
    if (asked_is_active_renter(asked)) {
        verdict_alert(verdict, may_be_grave(asked) ? ALERT_URGENT : ALERT_OFFICE, false,
                      "bare-percent", "battery or reading?");
    }
    if (!open_question_ask(asked, verdict, QUESTION_WHICH_CHARGE)) {
        return false;
    }
    answer = verdict_add(verdict, ANSWER_ASK, ROUTE_ANSWER, "which-percent");
    answer->read = asked->told;
    answer->text = say(asked->arena, asked->context->house, asked->language, SAY_WHICH_PERCENT,
                       asked->text, NULL);
    return true;
}
