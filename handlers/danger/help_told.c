/*
 * What is told of the emergency number and of helpers where no emergency is open: that they do not
 * come is one, whatever else is not told; and who has called, or is with them, is not told to call.
 */
#include <string.h>

#include "beside_emergency.h"
#include "say.h"
#include "steps.h"

/* The text names them. */
static const char named[] =
    " ambulance ambulances paramedic paramedics medic medics emt emts rescue rescuers helicopter "
    "chopper 911 ambulancia ambulancias paramedico paramedicos helicoptero rescate rescatistas "
    "emergencias ";
/* Or it only thinks of it, or is out for pleasure. */
static const char not_now[] =
    "if|would|in case|tour|tours|ride|rides|sightseeing|what happens|how do|how does|how long does|"
    "yesterday|last|ayer|en caso|paseo|paseos|siempre|otro dia|the other day|joke|jokes|curious";

/* They have called, or help is on its way. */
static const char has_called[] =
    "called 911|911 called|911 has been called|911 was called|already called|i called|we called|"
    "called the ambulance|called an ambulance|called them|on the phone with 911|on with 911|"
    "911 is on the way|911 is coming|ambulance is on|ambulance on the way|ambulance on its way|"
    "ambulance is coming|ambulance coming|paramedics are coming|medics are coming|"
    "paramedics are on|medics are on|llamamos al 911|ya llame|ya llamamos|"
    "ya hable al 911|ya viene la ambulancia|viene la ambulancia|ambulancia viene|"
    "ambulancia ya viene|ambulancia en camino|vienen los paramedicos";
/* They are with them, or were. */
static const char has_come[] =
    "ambulance is here|ambulance took|ambulance came|ambulance left|ambulance has left|"
    "paramedics are here|paramedics took|paramedics came|paramedics left|medics are here|"
    "medics took|medics came|medics left|medics just left|paramedics just left|911 came|911 took|"
    "they came|going to hospital|going to the hospital|at the hospital|in the hospital|at the er|"
    "llego la ambulancia|llegaron los paramedicos|ambulancia ya llego|ambulancia se fue|"
    "se fue la ambulancia|se lo llevo la ambulancia|se la llevo la ambulancia|en el hospital|"
    "en urgencias|al hospital";
static const char in_doubt[] =
    "not|didnt|havent|hasnt|isnt|arent|never|nobody|no one|no|cant|wont|wrong|if|need|needs|want|"
    "wants|but|please|should i call|should we call|do i call|can you|could you|did you|did anyone|"
    "has anyone|have you|will you|you called|who called|alone|pero|nadie|nunca|necesito|"
    "necesita|sola|solo|ustedes|alguien";

static bool
tells_failing(const struct asked *whole, enum beside *beside)
{
    const struct tokens *tokens = &whole->tokens;

    *beside = beside_emergency_read(whole);
    return tokens_any_among(tokens, 0, named) && !tokens_have(tokens, not_now) &&
           (*beside == BESIDE_REFUSES || *beside == BESIDE_NO_WAY || *beside == BESIDE_LATE);
}

const char *
help_told_words(const struct asked *whole)
{
    const struct tokens *tokens = &whole->tokens;
    enum phrase phrase = PHRASE_COUNT;
    enum beside beside;

    if (tells_failing(whole, &beside) || beside == BESIDE_STILL_NEEDED) {
        phrase = beside_emergency_words(beside)->phrase;
    } else if (cannot_call_words(whole) == NULL && !tokens_have(tokens, in_doubt)) {
        phrase = tokens_have(tokens, has_come)     ? SAY_KEEP_ON
                 : tokens_have(tokens, has_called) ? SAY_HELP_COMES
                                                   : PHRASE_COUNT;
    }
    return phrase == PHRASE_COUNT
               ? NULL
               : say(whole->arena, whole->context->house, whole->language, phrase, NULL);
}

bool
help_fails_decide(const struct asked *whole, struct verdict *verdict)
{
    enum beside beside;
    const struct beside_words *words;

    if (verdict->answer_count > 0 || open_emergency_stands(whole->context) ||
        !tells_failing(whole, &beside)) {
        return false;
    }
    words = beside_emergency_words(beside);
    verdict_add(verdict, ANSWER_OFFICE, ROUTE_EMERGENCY, "help-fails")->text =
        say(whole->arena, whole->context->house, whole->language, words->phrase, NULL);
    verdict_alert(verdict, ALERT_EMERGENCY, true, words->reason, words->brief);
    return true;
}
