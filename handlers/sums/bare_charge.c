/*
 * Charges told without a question: "both full", "2 lights", "las dos llenas". Whoever reports them
 * wants to know how long they last. A percentage with nothing beside it may as well be an
 * oximeter's, which a person must see: it is asked which of the two it is.
 */
#include "bare_charge.h"

#include "emergency.h"
#include "memory.h"
#include "persons.h"
#include "say.h"
#include "steps.h"

/* What a charge is told of or with, and no reading is. */
static const char of_batteries[] =
    " battery batteries batt batts bat bats pack packs spare spares both all each two three four "
    "one first second other another full half empty dead charged lights light bar bars left unit "
    "machine bateria baterias pila pilas ambas ambos todas cada dos tres cuatro una otra primera "
    "segunda llena llenas media medias mitad vacia vacias muerta muertas cargada cargadas luz "
    "luces rayita rayitas queda quedan equipo "
    "changed swapped switched replaced put new fresh already ya cambie cambiamos puse pusimos "
    "nuevas ";
static const char around_charges[] =
    " low percent at is are on in of the and my i have got ive its it them they just now still "
    "here with a y por ciento al la las el en de con un tengo tiene tienen estan esta ahora ";

/* Beside whose it is: "my wife has 84", "esta en 81 mi mama". */
static const char of_people[] = " mi su el has had was gets got says trae anda ";

/* What we asked about, by its name. */
static const char named[] = "battery|batteries|charge|bateria|baterias|pila|carga";

/* No word but of these lists (the others may be ""), and no question mark. */
static bool
has_only(const struct tokens *tokens, const char *words, const char *or_of, const char *or_persons)
{
    size_t i;

    for (i = 0; i < tokens->count; i++) {
        if (tokens->list[i].kind == TOKEN_WORD && !token_among(tokens, i, words) &&
            !token_among(tokens, i, or_of) && !token_among(tokens, i, or_persons)) {
            return false;
        }
    }
    return !tokens_have(tokens, "?");
}

bool
bare_percent_is_told(const struct asked *asked)
{
    return asked->told->charge_count > 0 && asked->told->light_count == 0 &&
           has_only(&asked->tokens, around_charges, of_people, person_words);
}

bool
bare_charge_is_told(const struct asked *asked)
{
    return (told_has_charge(asked->told) || told_of_untold_number(asked->told)) &&
           !asked->told->impossible && has_only(&asked->tokens, of_batteries, around_charges, "") &&
           !bare_percent_is_told(asked);
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

/* The text before, if we asked what its percentage is. */
static bool
asked_what_it_is(const struct asked *whole, struct asked *before)
{
    const char *about = whole->context->conversation.asked_about;

    if (about == NULL || asked_open_question(whole) != QUESTION_WHICH_CHARGE) {
        return false;
    }
    *before = asked_question(whole, about, whole->context->conversation.asked_utc_s);
    return bare_percent_is_told(before);
}

/* Words of an oximeter, of which some may as well be of the unit. */
static const char of_oximeters[] =
    "finger|oximeter|sat|sats|saturation|spo2|pulse ox|pulse oximeter|clip|dedo|oximetro|"
    "saturacion|pinza";
static const char may_be_of_oximeters[] =
    "oxygen|o2|reading|readings|meter|mine|oxigeno|lectura|aparatito|cosito|mio|mia";
static const char of_units[] = "unit|machine|concentrator|display|screen|tank|mine|aparato|maquina|"
                               "concentrador|pantalla|tanque|mio|mia";

/* "Not the battery" speaks of none. */
static bool
speaks_of_battery(const struct tokens *tokens)
{
    return tokens_have(tokens, named) &&
           !tokens_have(tokens, "not * battery|not * batteries|isnt * battery|no * bateria|"
                                "no * pila|no * carga");
}

int
bare_percent_as_reading(const struct asked *whole)
{
    const struct tokens *tokens = &whole->tokens;
    bool is_reading = tokens_have(tokens, of_oximeters) ||
                      (tokens_have(tokens, may_be_of_oximeters) && !tokens_have(tokens, of_units));
    struct asked before;

    return is_reading && !speaks_of_battery(tokens) && asked_what_it_is(whole, &before)
               ? lowest_of(before.told)
               : 0;
}

bool
bare_charge_is_of_battery(const struct asked *asked)
{
    return tokens_have(&asked->tokens, named) &&
           has_only(&asked->tokens,
                    " battery batteries charge charges its it is the a of my "
                    "bateria baterias pila pilas carga es la las de una mi ",
                    "", "");
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

/* It was asked of the text before, `of`, and this does not tell: "the reading on the machine". */
static bool
is_asked_again(const struct asked *asked, struct asked *of)
{
    return !bare_percent_is_told(asked) &&
           (tokens_have(&asked->tokens, may_be_of_oximeters) &&
            tokens_have(&asked->tokens, of_units) && asked_what_it_is(asked, of));
}

/* The percentages as they were told, or by themselves where there is more: "84 and 60". */
static const char *
values_of(const struct asked *asked)
{
    const struct told *told = asked->told;
    const char *values = "";
    size_t i;

    if (has_only(&asked->tokens, around_charges, "", "")) {
        return asked->text;
    }
    for (i = 0; i < told->charge_count; i++) {
        values = memory_format(asked->arena, "%s%s%d", values,
                               i == 0                           ? ""
                               : asked->language == LANGUAGE_ES ? " y "
                                                                : " and ",
                               told->charges[i].low);
    }
    return values;
}

bool
bare_percent_decide(const struct asked *asked, struct verdict *verdict)
{
    struct answer *answer;
    struct asked of = *asked;
    bool is_again = is_asked_again(asked, &of), is_grave;

    if (!is_again && !bare_percent_is_told(asked)) {
        return false;
    }
    /* If it is a reading, and they do not answer, a person sees it all the same; so too if it
     * cannot be asked because a graver question of ours is open. Of a stranger that is so of what
     * may be grave: they may be a renter's guest. */
    is_grave = may_be_grave(&of);
    if (is_grave || asked_is_active_renter(asked)) {
        verdict_alert(verdict, is_grave ? ALERT_URGENT : ALERT_OFFICE, false, "bare-percent",
                      "battery or reading?");
    }
    if (!is_again && !open_question_ask(asked, verdict, QUESTION_WHICH_CHARGE)) {
        return false;
    }
    answer = verdict_add(verdict, ANSWER_ASK, ROUTE_ANSWER, "which-percent");
    answer->read = of.told;
    answer->text = say(asked->arena, asked->context->house, asked->language, SAY_WHICH_PERCENT,
                       values_of(&of), NULL);
    return true;
}
