/*
 * They are told to call the emergency number and cannot, or fear that they will not be understood:
 * "no signal", "no tengo saldo", "el 911 habla español?". That emergency calls go through without
 * credit and on any network, that many places take texts, and that an interpreter comes on the line
 * is common practice, no source.
 */
#include "say.h"
#include "steps.h"

static const char cannot[] =
    "no signal|no service|no bars|no reception|no coverage|no cell service|no phone service|"
    "cant call|can not call|cannot call|couldnt call|unable to call|cant make calls|cant dial|"
    "no way to call|call wont go|calls wont go|wont go through|not going through|cant get through|"
    "call failed|calls fail|out of minutes|no minutes|no credit|phone is cut off|can only text|"
    "only texts work|no hay senal|sin senal|no tengo senal|no tenemos senal|no agarra senal|"
    "no agarro senal|no puedo llamar|no podemos llamar|no puede llamar|no puedo marcar|"
    "no podemos marcar|no entra la llamada|no entran las llamadas|no sale la llamada|"
    "no salen las llamadas|no salen llamadas|no me deja llamar|no me deja marcar|no tengo saldo|"
    "no tenemos saldo|sin saldo|no hay saldo|no me queda saldo|sin credito|no tengo credito|"
    "no tengo minutos|sin minutos|no tengo cobertura|no hay cobertura|sin cobertura|"
    "solo puedo mandar mensajes|no tengo como llamar|no tengo telefono para llamar";
static const char speak_spanish[] =
    "speak spanish|speaks spanish|dont speak english|doesnt speak english|no english|"
    "habla espanol|hablan espanol|hablan en espanol|atienden en espanol|contestan en espanol|"
    "en espanol|no hablo ingles|no habla ingles|no hablamos ingles|no se ingles|no sabe ingles|"
    "no sabemos ingles|no entiendo ingles|no entiendo el ingles|solo hablo espanol";

bool
cannot_call_told(const struct asked *asked)
{
    return tokens_have(&asked->tokens, cannot);
}

const char *
cannot_call_words(const struct asked *asked)
{
    bool is_cannot = cannot_call_told(asked);

    if (!is_cannot && !tokens_have(&asked->tokens, speak_spanish)) {
        return NULL;
    }
    return say(asked->arena, asked->context->house, asked->language,
               is_cannot ? SAY_CANNOT_CALL : SAY_IN_SPANISH, NULL);
}
