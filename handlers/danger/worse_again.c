/*
 * "Ya no esta bien", "recayo", "worse again" while staff have not closed what was told before: the
 * emergency is on again, whether or not it was told to be over in between. To a symptom that is
 * none by itself we answered "Worse? Call 911", so the same holds for it, whatever lesser sign the
 * same words show. And while an emergency stands, that it is "no better" reaches who has it.
 */
#include <string.h>

#include "fill.h"
#include "lately.h"
#include "not_well.h"
#include "say.h"
#include "steps.h"
#include "yes_no.h"

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
/* While an emergency stands, what has not become better is told to who has it. */
static const char no_better[] =
    "no better|not better|not any better|not much better|isnt better|isnt any better|"
    "not feeling better|no improvement|not improving|isnt improving|not getting better|"
    "isnt getting better|doesnt get better|wont get better|no change|unchanged|nothing changed|"
    "hasnt changed|hasnt improved|still the same|still same|still bad|still hurts|still hurting|"
    "still in pain|wont go away|not going away|didnt help|doesnt help|isnt helping|not helping|"
    "sigue igual|sigo igual|sigue mal|sigo mal|sigue lo mismo|sigue sin mejorar|no mejora|"
    "no mejoro|no se mejora|no esta mejor|no estoy mejor|no ha mejorado|no hay mejoria|"
    "sin mejoria|sin cambio|sin cambios|no cambia|no ha cambiado|no se le quita|no se me quita|"
    "no se le pasa|no se me pasa|no le pasa|no le ayuda|no ayuda|igual de mal|esta igual|"
    "estoy igual|todo igual";
static const char all_the_same[] =
    " same the about just it its he hes she shes im is still as before "
    "igual lo mismo pues no yes si sigue ella el mi mama papa esta muy ";
/* The whole of a short text: while an emergency stands, and after any symptom. */
static const char in_short[] = "again|otra vez|de nuevo|me falta|le falta|no puedo|no puede";
static const char worse_in_short[] = "worse|peor";
/* What "again" may be said of, beside people; and what got worse, if it stands before that. */
static const char things[] =
    " battery batteries charge weather traffic storm snow signal wifi reception road roads noise "
    "beep beeping alarm machine unit concentrator power bateria pila carga clima tiempo nieve "
    "senal internet carretera trafico ruido pitido pitar alarma maquina aparato equipo luz ";
static const char nothing_ill[] = " oxygen oxigeno color hambre sueno apetito ";
static const char asks[] = "?|should|do i|do we|what do|will you|can i|que hago|que hacemos|debo|"
                           "debemos|llamo|puedo|podemos";
enum { SHORT_TEXT = 4, NEAR = 3 };

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

/* "If he gets worse", "until it is worse"; "si esta peor" at the head of a text is a yes. */
static bool
is_supposed(const struct tokens *tokens, size_t at)
{
    const bool is_asked = tokens_have(tokens, asks);
    size_t i;

    for (i = 0; i < at; i++) {
        if ((token_among(tokens, i, " when cuando if si ") && is_asked) ||
            (at - i <= NEAR && token_among(tokens, i, " if until unless case hasta ")) ||
            (at - i <= NEAR && i > 0 && token_is(tokens, i, "si"))) {
            return true;
        }
    }
    return false;
}

/* "The noise got worse", but not "on the battery is worse" or "the machine is off he feels worse".
 */
static bool
is_of_thing(const struct tokens *tokens, size_t at, size_t words)
{
    static const char determiners[] = " the my his her our el la los las mi su ";
    size_t i;

    for (i = at; i > tokens_back(at, NEAR); i--) {
        if (token_among(tokens, i - 1, " . , ; ! and y he she him her i me we they ella ")) {
            break;
        }
        if (token_among(tokens, i - 1, things)) {
            for (i--; i > 0 && token_among(tokens, i - 1, determiners); i--) {
            }
            return i == 0 || !token_among(tokens, i - 1, " with without on off con sin en ");
        }
    }
    return token_among(tokens, at + words, determiners) &&
           token_among(tokens, at + words + 1, things);
}

/* "Not worse", "no esta peor"; "no, he is worse" denies something else. */
static bool
is_denied(const struct tokens *tokens, size_t at)
{
    size_t i;

    for (i = at; i > 0 && (i == at || token_among(tokens, i, " is any much getting esta es va "));
         i--) {
        if (yes_no_denies_at(tokens, i - 1)) {
            return true;
        }
    }
    return false;
}

/* One of these phrases, told of a person and as it is now. */
static bool
tells_of_person(const struct tokens *tokens, const char *phrases)
{
    size_t i, words;

    for (i = 0; i < tokens->count; i++) {
        words = tokens_phrase_at(tokens, i, phrases);
        if (words > 0 && !is_denied(tokens, i) && !is_supposed(tokens, i) &&
            !is_of_thing(tokens, i, words)) {
            return true;
        }
    }
    return false;
}

/* "Otra vez no puedo", "again", "much worse": nothing else is told. */
static bool
is_told_in_short(const struct tokens *tokens, bool is_grave)
{
    return tokens->count <= SHORT_TEXT && !tokens_any_among(tokens, 0, things) &&
           !tokens_have(tokens, "?|llamar|call|could be|couldnt be") &&
           ((is_grave && tokens_have(tokens, in_short) && !tokens_have(tokens, "thanks|gracias")) ||
            tells_of_person(tokens, worse_in_short));
}

/* "No better", "sigue igual", "the same". */
static bool
is_no_better(const struct tokens *tokens)
{
    return !tokens_have(tokens, "?") && !tokens_any_among(tokens, 0, things) &&
           (tells_of_person(tokens, no_better) || (tokens_have(tokens, "same|igual|lo mismo") &&
                                                   tokens_words_among(tokens, all_the_same)));
}

/* "Worse", "me siento peor": all that the text tells, and of a person. */
static bool
tells_only_worse(const struct tokens *tokens)
{
    static const char with_worse[] =
        " worse peor i im me he hes she shes it its is am feel feels feeling much even lot a now "
        "again getting got still my mom mum dad husband wife mother father and the el ella mi mama "
        "papa esposo esposa se siente siento esta estoy va voy otra vez mucho cada ya ahora de "
        "nuevo muy y igual o pues yes no si thanks thank you bit little gracias un poco ";
    size_t i;

    for (i = 0; i < tokens->count; i++) {
        if (tokens->list[i].kind == TOKEN_NUMBER || token_is(tokens, i, "?") ||
            (tokens->list[i].kind == TOKEN_WORD && !token_among(tokens, i, with_worse))) {
            return false;
        }
    }
    return tells_of_person(tokens, worse_in_short);
}

static bool
is_told(const struct tokens *tokens, bool is_grave)
{
    return tells_of_person(tokens, of_a_person) || is_told_in_short(tokens, is_grave) ||
           (is_grave &&
            (is_no_better(tokens) || tells_only_worse(tokens) || not_well_told(tokens))) ||
           (is_grave && tokens_have(tokens, of_it) && !tokens_any_among(tokens, 0, things) &&
            !tokens_any_among(tokens, 0, nothing_ill) && !tokens_have(tokens, "if|in case"));
}

bool
worse_again_decide(const struct asked *whole, struct verdict *verdict)
{
    bool is_grave = open_emergency_stands(whole->context);

    if (whole->context->role == SENDER_STAFF || is_over_told(whole) ||
        !(value_falls_told(whole) || (is_told(&whole->tokens, is_grave) &&
                                      (is_grave || was_told_of_symptom(whole->context))))) {
        return false;
    }
    verdict_add(verdict, ANSWER_SIGN, ROUTE_EMERGENCY, "worse-again")->text =
        say(whole->arena, whole->context->house, whole->language, SAY_EMERGENCY_FIRST, NULL);
    verdict_alert(verdict, ALERT_EMERGENCY, true, "sign:worse-again",
                  is_grave && is_no_better(&whole->tokens) ? "no better" : "worse again");
    return true;
}

bool
worse_alone_decide(const struct asked *whole, struct verdict *verdict)
{
    static const char unwell[] = "unwell";
    const struct filling with = {.house = whole->context->house, .language = whole->language};
    const struct sign *sign = kb_sign(whole->context->kb, unwell, whole->language);
    bool is_not_well = not_well_told(&whole->tokens);

    if (whole->context->role == SENDER_STAFF || verdict->answer_count > 0 ||
        !(is_not_well || tells_only_worse(&whole->tokens) || is_over_may_be_lost(whole))) {
        return false;
    }
    verdict_add(verdict, ANSWER_SIGN, ROUTE_CLINICAL, unwell)->text =
        sign != NULL
            ? fill(whole->arena, sign->reply, &with, NULL)
            : say(whole->arena, whole->context->house, whole->language, SAY_CLINICAL_READING, NULL);
    verdict_alert(verdict, ALERT_URGENT, true, "sign:unwell",
                  is_not_well ? "says: not well" : "may feel worse");
    return true;
}
