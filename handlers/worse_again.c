/*
 * "Ya no esta bien", "recayo", "worse again" while staff have not closed what was told before: the
 * emergency is on again, whether or not it was told to be over in between. To a symptom that is
 * none by itself we answered "Worse? Call 911", so the same holds for it.
 */
#include <string.h>

#include "say.h"
#include "steps.h"

static const char of_a_person[] =
    "not ok anymore|not okay anymore|not fine anymore|not good anymore|not well anymore|"
    "isnt ok anymore|isnt fine anymore|no longer ok|no longer fine|not ok again|bad again|"
    "sick again|worse again|got worse|gotten worse|getting worse|gets worse|worse now|is worse|"
    "im worse|feel worse|feels worse|feeling worse|relapsed|a relapse|"
    "ya no esta bien|ya no estoy bien|ya no se siente bien|ya no me siento bien|otra vez mal|"
    "mal otra vez|otra vez muy mal|se puso mal|se puso peor|se puso muy mal|me puse mal|"
    "me puse peor|recayo|recai|recaida|empeoro|empeore|empeorando|esta peor|estoy peor|va peor|"
    "voy peor|sigue peor|se siente peor|me siento peor|se ve peor|volvio a ponerse mal|"
    "se volvio a poner mal|otra vez igual de mal";
/* Of whatever it was. */
static const char of_it[] = "started again|starting again|starts again|happening again|happened "
                            "again|it came back|its back|it is back|empezo otra vez|"
                            "otra vez empezo|volvio a empezar|le volvio|me volvio|"
                            "volvio a pasar|otra vez le dio|le dio otra vez|otra vez me dio|"
                            "me dio otra vez|otra vez igual";
/* The whole of a short text, while an emergency stands. */
static const char in_short[] = "again|otra vez|de nuevo|me falta|le falta|no puedo|no puede";
enum { SHORT_TEXT = 4 };
/* It is supposed or asked, or of a thing. */
static const char otherwise[] =
    "if|when|in case|until|not worse|no worse|isnt worse|never|si|cuando|no esta peor|"
    "no se siente peor|no me siento peor|no estoy peor|battery|batteries|charge|weather|traffic|"
    "storm|snow|signal|noise|beep|beeping|alarm|machine|unit|concentrator|power|oxygen|bateria|"
    "pila|carga|clima|nieve|senal|ruido|pitido|pitar|alarma|maquina|aparato|equipo|luz|oxigeno|"
    "color|hambre|sueno|apetito";

enum { LATELY_S = 3600 };

/* A sign that a person shows, not old, and not closed by staff. */
static bool
was_told_of_symptom(const struct context *context)
{
    size_t i;

    for (i = 0; i < context->alert_count; i++) {
        if (context->alerts[i].level >= ALERT_URGENT &&
            strstr(context->alerts[i].reasons, "sign:") != NULL) {
            return context->now_utc_s - context->conversation.last_utc_s <= LATELY_S;
        }
    }
    return false;
}

/* "Otra vez no puedo", "again": nothing else is told. */
static bool
is_again_in_short(const struct tokens *tokens)
{
    return tokens->count <= SHORT_TEXT && tokens_have(tokens, in_short) &&
           !tokens_have(tokens, "?|llamar|call|thanks|gracias");
}

bool
worse_again_decide(const struct asked *whole, struct verdict *verdict)
{
    bool is_grave = open_emergency_stands(whole->context);

    if (whole->context->role == SENDER_STAFF || verdict->answer_count > 0 ||
        tokens_have(&whole->tokens, otherwise) ||
        !(tokens_have(&whole->tokens, of_a_person) ||
          (is_grave &&
           (tokens_have(&whole->tokens, of_it) || is_again_in_short(&whole->tokens)))) ||
        !(is_grave || was_told_of_symptom(whole->context))) {
        return false;
    }
    verdict_add(verdict, ANSWER_SIGN, ROUTE_EMERGENCY, "worse-again")->text =
        say(whole->arena, whole->context->house, whole->language, SAY_EMERGENCY_FIRST, NULL);
    verdict_alert(verdict, ALERT_EMERGENCY, true, "sign:worse-again", "worse again");
    return true;
}
