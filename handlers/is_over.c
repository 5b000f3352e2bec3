/*
 * What was wrong is over: "it stopped beeping", "ya regreso la luz", "I feel better". Nobody's word
 * for it closes an alert, and nothing is called well: they are thanked and told what to look at.
 */
#include "say.h"
#include "steps.h"

enum { WORDS_MAX = 9 }; /* in a longer text it is no more than a part of what is told */

static const char over[] =
    "stopped beeping|quit beeping|no longer beeping|beeping stopped|beeping has stopped|"
    "stopped alarming|alarm stopped|alarm is off|alarm went off by itself|power is back|"
    "power came back|powers back|power back on|power back|lights are back|lights came back|"
    "electricity is back|works again|working again|works now|working now|running again|"
    "fixed it|got it working|got it going|i feel better|im feeling better|feel better now|"
    "feels better|feeling better|"
    "ya no pita|ya no suena|ya no hace ruido|ya dejo de pitar|ya dejo de sonar|dejo de pitar|"
    "dejo de sonar|volvio la luz|regreso la luz|llego la luz|ya regreso|ya volvio|ya hay luz|"
    "ya funciona|ya prendio|ya jala|ya sirve|ya arranco|ya trabaja|ya quedo|ya esta bien|"
    "ya se arreglo|ya lo arregle|ya lo arreglamos|me siento mejor|se siente mejor|"
    "ya se siente bien|ya se le paso|ya se me paso|ya me paso|ya se le quito|ya se me quito";
static const char not_over[] =
    "not|isnt|doesnt|dont|wont|cant|still|never|but|if|when|until|than|should|?|better on|"
    "better with|better without|better off|better at|better in|better after|pero|todavia|aun|si|"
    "cuando|hasta|otra vez|mejor con|mejor sin|mejor en|mejor a|mejor si|mejor que";

/* "Feels better at 3" is about a setting. */
static bool
has_number(const struct tokens *tokens)
{
    size_t i;

    for (i = 0; i < tokens->count; i++) {
        if (tokens->list[i].kind == TOKEN_NUMBER) {
            return true;
        }
    }
    return false;
}

bool
is_over_told(const struct asked *asked)
{
    const struct tokens *tokens = &asked->tokens;

    return tokens->count <= WORDS_MAX && tokens_have(tokens, over) &&
           !tokens_have(tokens, not_over) && !has_number(tokens);
}

bool
is_over_decide(const struct asked *asked, struct verdict *verdict)
{
    struct answer *answer;

    if (!is_over_told(asked)) {
        return false;
    }
    answer = verdict_add(verdict, ANSWER_OFFICE, ROUTE_STAFF, "is-over");
    answer->text = say(asked->arena, asked->context->house, asked->language, SAY_IS_OVER, NULL);
    if (asked->context->alert_count > 0 && asked_is_active_renter(asked)) {
        verdict_alert(verdict, ALERT_OFFICE, false, "is-over", "says it is over");
    }
    return true;
}
