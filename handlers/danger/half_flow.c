#include "half_flow.h"

#include "clause.h"

/* It flows, and not as it should: nobody can live on that, so it counts as NO. */
static const char half_flows[] =
    "barely|hardly|weak|weakly|faint|faintly|a little|little bit|just a bit|a tiny bit|very little|"
    "on and off|off and on|comes and goes|cuts in and out|in and out|sometimes|half|kind of|kinda|"
    "sort of|partly|not much|not well|not really|poco|poca|poquito|poquita|tantito|apenas|a medias|"
    "a ratos|por ratos|a veces|fallando|falla|mal|mas o menos|debil|debilito|va y viene|casi no|"
    "casi nada";
/* It is of the flow if its clause names that, or names nothing at all. */
static const char of_flow[] =
    " oxygen o2 air flow flows flowing coming comes come working works work runs run running "
    "blowing breeze power electricity oxigeno aire sale saliendo llega jala funciona funcionando "
    "trabaja anda prende fallando ";
static const char with_half[] =
    " yes yeah yep si sip ok okay sure not but pero only just even very really still like it its "
    "is there "
    "are a un una el la some any anything think guess maybe i the that thats out again today "
    "ahorita "
    "muy solo nomas todavia sigue ya esta como pues creo que nada me now , . ! ";
/* And not of the flow, if it names one of these and no flow beside the half. */
static const char of_else[] =
    " battery batteries batt spare charge light lights screen display noise noisy loud quiet smell "
    "smells tired scared worried late bateria baterias pila pilas carga luz luces foco pantalla "
    "ruido suena oye huele olor ve lejos tarde cansado cansada ";
/* What the oxygen comes out of, or is told to come with: behind these words it is of the flow. */
static const char outlets[] = " cannula prongs tube tubing hose mask nose battery batteries canula "
                              "puntas manguera manguerita tubo mascarilla nariz bateria pila ";
static const char out_of[] = " through out from of in into on at with por de en con ";
static const char articles[] = " the my his her its la el mi su a una un ";
static const char of_person[] = " feel feels feeling im am he hes she shes siento siente estoy if ";
static const char restarts[] = " turned turning turn switched switch flipped plugged unplugged "
                               "power cycled cycle restarted tried ";
static const char by_and_by[] = "poco a poco|little by little";
static const char not_so[] = " nada no not isnt ";

/* "I turned it off and on", "off and on again works": it was started anew. */
static bool
is_restart(const struct tokens *tokens, size_t at, size_t end)
{
    static const char works[] = " works work worked working fixed funciona jala sirve ";
    const struct clause before = {tokens_back(at, 4), at};

    return token_among(tokens, at, " on off ") &&
           (clause_has(tokens, before, restarts) ||
            (token_is(tokens, end, "again") && token_among(tokens, end + 1, works)));
}

/* "Out the tube", "por la manguera", "on battery". */
static bool
is_outlet(const struct tokens *tokens, size_t at)
{
    size_t before = at;

    while (before > 0 && token_among(tokens, before - 1, articles)) {
        before--;
    }
    return token_among(tokens, at, outlets) && before > 0 &&
           token_among(tokens, before - 1, out_of);
}

/* Something else is named in the clause than the flow and what it comes out of. */
static bool
names_else(const struct tokens *tokens, struct clause clause)
{
    size_t i;

    for (i = clause.from; i < clause.end; i++) {
        if (token_among(tokens, i, of_else) && !is_outlet(tokens, i)) {
            return true;
        }
    }
    return false;
}

/* Nothing in the clause but the half at [at, end), fillers and what the oxygen comes out of. */
static bool
is_half_alone(const struct tokens *tokens, struct clause clause, size_t at, size_t end)
{
    size_t i;

    for (i = clause.from; i < clause.end; i++) {
        if ((i < at || i >= end) && !token_among(tokens, i, with_half) &&
            !token_among(tokens, i, out_of) && !token_among(tokens, i, articles) &&
            !is_outlet(tokens, i)) {
            return false;
        }
    }
    return true;
}

/* "Yes sort of it sounds weak": it answers us before anything else is said. */
static bool
is_half_yes(const struct tokens *tokens, struct clause clause, size_t at, size_t end)
{
    size_t i;

    for (i = clause.from; i < at; i++) {
        if (!token_among(tokens, i, with_half)) {
            return false;
        }
    }
    return yes_no_begins_with_yes(tokens) && clause.from == 0 && at > 0 &&
           token_among(tokens, end, " it its there is y pero ");
}

/* Of what the words of half a flow at [at, end) are told: NO if of the flow, "yes a little", "it
 * works sometimes", "barely out of the cannula"; YES if of something else, "battery at half",
 * "nada mal". */
static enum yes_no
half_told_at(const struct tokens *tokens, size_t at, size_t end)
{
    enum { NEAR = 3 };
    struct clause clause = {clause_around(tokens, at).from, clause_around(tokens, end - 1).end};
    struct clause near = {tokens_back(at, NEAR), at};
    struct clause beside = {near.from > clause.from ? near.from : clause.from,
                            end + NEAR < clause.end ? end + NEAR : clause.end};

    if (clause_has(tokens, near, of_person) || is_restart(tokens, at, end) ||
        tokens_phrase_at(tokens, at, by_and_by) > 0 ||
        (at > clause.from && token_among(tokens, at - 1, not_so))) {
        return SAID_YES;
    }
    if (clause_has(tokens, beside, of_flow) || is_half_yes(tokens, clause, at, end)) {
        return SAID_NO;
    }
    if (names_else(tokens, clause)) {
        return SAID_YES;
    }
    return clause_has(tokens, clause, of_flow) || is_half_alone(tokens, clause, at, end)
               ? SAID_NO
               : SAID_NEITHER;
}

enum yes_no
half_flow_told(const struct tokens *tokens)
{
    enum yes_no worst = SAID_YES;
    size_t i, words;

    for (i = 0; i < tokens->count; i++) {
        words = tokens_phrase_at(tokens, i, half_flows);
        if (words > 0 && worst != SAID_NO) {
            enum yes_no told = half_told_at(tokens, i, i + words);

            worst = told == SAID_YES ? worst : told;
        }
    }
    return worst;
}
