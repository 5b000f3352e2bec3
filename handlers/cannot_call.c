/*
 * They are told to call the emergency number and cannot, or fear that they will not be understood:
 * "no signal", "no tengo saldo", "el 911 habla español?". That emergency calls go through without
 * credit and on any network, that many places take texts, and that an interpreter comes on the line
 * is common practice, no source. It is only asked for beside an emergency: in doubt they cannot.
 */
#include "memory.h"
#include "say.h"
#include "steps.h"

/* Words of `first` and of `second` with nothing but `between` between them. */
struct near {
    const char *first, *between, *second;
};

#define NO_CALL                                                                                    \
    " call calls dial calling llamar llamarle llamarles llamarlos llamada llamadas marcar "        \
    "marcarle comunicarme comunicarnos "
#define SIGNAL                                                                                     \
    " signal service reception coverage cell senal cobertura recepcion servicio saldo credito "
#define PHONE " phone phones cellphone mobile telefono celular cel movil "

/* What a call needs is not there, or it is tried and does not go. "No llamé" is another thing, and
 * so are "don't want to call" and "can't breathe, call 911". */
static const struct near cannot[] = {
    {" no not without dont doesnt didnt havent hasnt isnt arent aint never zero lost losing cant "
     "cannot sin ningun ninguna perdi perdimos ",
     " have any a the got get much enough good there is cell phone catch find hay tengo tenemos "
     "tiene agarra llega ni de el la aqui mucha ninguna ",
     SIGNAL},
    {SIGNAL, " is has just keeps here se me esta ",
     " no not dont doesnt isnt gone out down dead lost weak drops dropped "},
    {" no without lost sin ", " my working other cell any tengo tenemos hay traigo mi ", PHONE},
    {" dont doesnt havent hasnt ", " have a any my got his her ", PHONE},
    {PHONE, " is has just keeps battery se me esta ya ",
     " no not wont cant cannot doesnt isnt never dead died dying broke broken locked descompuso "
     "murio apago descargo "},
    {" cant cannot couldnt unable ", " to even get make a any the through out i seem phone ",
     NO_CALL},
    {" no ",
     " me nos se puedo podemos puede pueden pude pudo pudimos logro logra logramos deja dejan sale "
     "salen salio entra entran tengo tenemos hay como forma manera con que de para hacer la las "
     "una ni ",
     NO_CALL},
};

static const char in_other_words[] =
    "no bars|no service|not able to call|not able to get through|could not call|can not call|"
    "can not dial|no way to call|no way of calling|how do i call without|wont let me call|"
    "wont let us call|wont call|doesnt call|call wont|calls wont|calls dont|call doesnt|"
    "calls not|wont go through|not going through|cant get through|couldnt get through|call failed|"
    "calls fail|call fails|calls failed|call keeps|call drops|call dropped|calls drop|call * ended|"
    "call * cut off|out of minutes|no minutes|out of credit|no credit|phone is cut off|"
    "can only text|only can text|only texts work|only text works|just this tablet|only a tablet|"
    "911 is busy|911 busy|911 * answer|911 * answering|911 * pick up|no answer * 911|"
    "911 * contesta|911 * contestan|contesta * 911|contestan * 911|911 ocupado|"
    "no hay red|sin red|no tengo red|no tenemos red|no agarra red|no agarra senal|"
    "no agarro senal|no llega * senal|se fue * senal|se va * senal|no tengo minutos|sin minutos|"
    "se corta * llamada|se corto * llamada|se cae * llamada|se cayo * llamada|"
    "solo puedo mandar mensajes|solo puedo mensajes|solo mensajes";
/* Asks us to do it, who cannot either. */
static const char asks_us[] =
    "call * for me|call * for us|call * for him|call * for her|can you call 911|can you call them|"
    "could you call 911|could you call them|please call 911|please call them|you call 911|"
    "you call them|you guys call|llame usted|llamen ustedes|llamar ustedes|llamar usted|"
    "llamen por mi|llame por mi|llamen por nosotros|llame por nosotros|llamele usted|"
    "hablenle ustedes|pueden llamar * 911|puede llamar * 911|me llaman * 911|llamenle ustedes";

/* They called, and nobody took it; of a person ("he doesnt answer") it is as grave. */
static const char not_taken[] =
    "no answer|no reply|nobody answers|nobody answered|no one answers|no one answered|"
    "nobody is answering|no one is answering|not answering|dont answer|doesnt answer|didnt answer|"
    "arent answering|wont answer|nobody picks up|no one picks up|nobody picked up|"
    "no one picked up|not picking up|didnt pick up|dont pick up|wont pick up|line is busy|"
    "busy signal|its busy|keeps ringing|rings and rings|just rings|only rings|on hold|"
    "no contestan|no contesta|no me contestan|nadie contesta|nadie contesto|no contestaron|"
    "no responden|nadie responde|no me responden|suena ocupado|esta ocupado|da ocupado|"
    "en espera|suena y suena";
static const char speak_spanish[] =
    "speak spanish|speaks spanish|dont speak english|doesnt speak english|no english|"
    "habla espanol|hablan espanol|hablan en espanol|atienden en espanol|contestan en espanol|"
    "en espanol|no hablo ingles|no habla ingles|no hablamos ingles|no se ingles|no sabe ingles|"
    "no sabemos ingles|no entiendo ingles|no entiendo el ingles|solo hablo espanol";

static bool
are_near(const struct tokens *tokens, const struct near *near)
{
    size_t at, next;

    for (at = 0; at < tokens->count; at++) {
        if (!token_among(tokens, at, near->first)) {
            continue;
        }
        for (next = at + 1; next < tokens->count; next++) {
            if (token_among(tokens, next, near->second)) {
                return true;
            }
            if (!token_among(tokens, next, near->between)) {
                break;
            }
        }
    }
    return false;
}

bool
cannot_call_told(const struct asked *asked)
{
    const struct tokens *tokens = &asked->tokens;
    bool is_told = tokens_have(tokens, in_other_words) || tokens_have(tokens, asks_us) ||
                   (open_emergency_stands(asked->context) && tokens_have(tokens, not_taken));
    size_t i;

    for (i = 0; i < sizeof(cannot) / sizeof(cannot[0]) && !is_told; i++) {
        is_told = are_near(tokens, &cannot[i]);
    }
    return is_told && !open_emergency_is_helped(asked);
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

const char *
cannot_call_brief(const struct asked *asked)
{
    return memory_format(asked->arena, "cannot call: call %s for them",
                         asked->context->house->emergency_number);
}
