/*
 * Charges told without a question: "both full", "2 lights", "las dos llenas". Whoever reports them
 * wants to know how long they last. A percentage with nothing beside it may as well be an
 * oximeter's, which a person must see: it is asked which of the two it is.
 */
#include "bare_charge.h"

#include "memory.h"
#include "say.h"
#include "steps.h"

static const char of_reports[] =
    " battery batteries batt batts bat bats pack packs spare spares both all each two three four "
    "one first second other another full half empty dead charged low light lights bar bars left "
    "percent at is are on in of the and my i have got ive its it them they just now still here "
    "unit machine with a "
    "bateria baterias pila pilas ambas ambos todas cada dos tres cuatro una un otra primera "
    "segunda llena llenas media medias mitad vacia vacias muerta muertas cargada cargadas luz "
    "luces rayita rayitas por ciento al a la las el en de y con tengo tiene tienen estan esta "
    "queda quedan ahora equipo ";
static const char of_percents[] = " percent por ciento and y at is its a now al esta ahora ";

static bool
has_only(const struct tokens *tokens, const char *words)
{
    size_t i;

    for (i = 0; i < tokens->count; i++) {
        if (tokens->list[i].kind == TOKEN_WORD && !token_among(tokens, i, words)) {
            return false;
        }
    }
    return !tokens_have(tokens, "?");
}

bool
bare_percent_is_told(const struct asked *asked)
{
    return asked->told->charge_count > 0 && asked->told->light_count == 0 &&
           has_only(&asked->tokens, of_percents);
}

bool
bare_charge_is_told(const struct asked *asked)
{
    return told_has_charge(asked->told) && !asked->told->impossible &&
           has_only(&asked->tokens, of_reports) && !bare_percent_is_told(asked);
}

bool
bare_charge_is_of_battery(const struct asked *asked)
{
    return tokens_have(&asked->tokens, "battery|batteries|charge|bateria|baterias|pila|carga") &&
           has_only(&asked->tokens, " battery batteries charge charges its it is the a of my "
                                    "bateria baterias pila pilas carga es la las de una mi ");
}

bool
bare_percent_decide(const struct asked *asked, struct verdict *verdict)
{
    struct answer *answer;

    if (!asked_is_active_renter(asked) || !bare_percent_is_told(asked) ||
        !open_question_ask(asked, verdict, QUESTION_WHICH_CHARGE)) {
        return false;
    }
    answer = verdict_add(verdict, ANSWER_ASK, ROUTE_ANSWER, "which-percent");
    answer->read = asked->told;
    answer->text = say(asked->arena, asked->context->house, asked->language, SAY_WHICH_PERCENT,
                       asked->text, NULL);
    /* If it is a reading, and they do not answer, a person sees it all the same. */
    verdict_alert(verdict, ALERT_OFFICE, false, "bare-percent", "battery or reading?");
    return true;
}
