/*
 * They are told to call the emergency number and cannot, or fear that they will not be understood:
 * "no signal", "no tengo saldo", "el 911 habla español?". That emergency calls go through without
 * credit and on any network, that many places take texts, and that an interpreter comes on the line
 * is common practice, no source. It is only asked for beside an emergency: in doubt they cannot.
 */
#include "memory.h"
#include "say.h"
#include "steps.h"

/* Words of `first` and of `second` with nothing but `between` between them, and close behind that,
 * unless it is NULL, one of `then`. */
struct near {
    const char *first, *between, *second, *then;
};

#define NO_CALL                                                                                    \
    " call calls dial calling llamar llamarle llamarles llamarlos llamada llamadas marcar "        \
    "marcarle comunicarme comunicarnos "
#define SIGNAL                                                                                     \
    " signal service reception coverage cell senal cobertura recepcion servicio saldo credito "
#define PHONE " phone phones cellphone mobile telefono celular cel movil "
#define NOT                                                                                        \
    " no not never doesnt dont didnt wont isnt arent wasnt cant cannot couldnt nobody noone "      \
    "nadie "
#define TAKES                                                                                      \
    " answer answers answered answering pick picking picked picks work works working go going "    \
    "goes ring ringing connect connecting respond responding reply replying through load "         \
    "available reachable contesta contestan contesto contestaron contestando responde responden "  \
    "sirve funciona jala agarra entra sale salen conecta toman "

/* What a call needs is not there, or it is tried and does not go. "No llamé" is another thing, and
 * so are "don't want to call" and "can't breathe, call 911". */
static const struct near cannot[] = {
    {" no not without dont doesnt didnt havent hasnt isnt arent aint never zero lost losing cant "
     "cannot sin ningun ninguna perdi perdimos ",
     " have any a the got get much enough good there is cell phone catch find hay tengo tenemos "
     "tiene agarra llega ni de el la aqui mucha ninguna ",
     SIGNAL, NULL},
    {SIGNAL, " is has just keeps here se me esta ",
     " no not dont doesnt isnt gone out down dead lost weak drops dropped ", NULL},
    {" cant cannot couldnt unable ", " to even get make a any the through out i seem phone ",
     NO_CALL, NULL},
    {" no ",
     " me nos se puedo podemos puede pueden pude pudo pudimos logro logra logramos deja dejan sale "
     "salen salio entra entran tengo tenemos hay como forma manera con que de para hacer la las "
     "una ni ",
     NO_CALL, NULL},
    /* the number itself: "911 wont pick up", "911 hung up", "no me contestan en el 911" */
    {" 911 ",
     " is was just still even really line number call calls lines here it its they keeps kept me "
     "nos lo les le siempre solo nomas esta da y ",
     " hung hangs hanging dropped drops drop disconnected disconnects busy unavailable failed "
     "fails "
     "failing ocupado ocupada cuelga cuelgan colgo colgaron corta cortan corto ",
     NULL},
    {" 911 ",
     " is was just still even really line number call calls lines here it its they keeps me nos lo "
     "les le me siempre ",
     NOT, TAKES},
    {" no nadie ", " me nos le les se puedo podemos ", TAKES, " 911 "},
    {" no ", " me nos se puedo podemos puede ",
     " comunicar comunicarme comunicarnos comunico comunica entra sale conecta ", " 911 "},
    {" nobody noone one not dont wont doesnt didnt no ", " is are even to picking up ",
     " answer answers answered answering pick picks picked picking reply ", " 911 "},
    {" cuelga cuelgan colgo colgaron corta cortan corto ", " me nos el la los al de en ", " 911 ",
     NULL},
    {" cant cannot couldnt unable ", " get reach connect able to through hold a of even raise ",
     " 911 ", NULL},
};

/* The phone that fails; it counts for nothing if there is another. */
static const struct near phone_fails[] = {
    {" no without lost sin ", " my working other cell any tengo tenemos hay traigo mi ", PHONE,
     NULL},
    {" dont doesnt havent hasnt ", " have a any my got his her ", PHONE, NULL},
    {PHONE, " is has just keeps battery se me esta ya ",
     " no not wont cant cannot doesnt isnt never dead died dying broke broken locked descompuso "
     "murio apago descargo ",
     NULL},
};
static const char other_phone[] =
    "i have hers|i have his|have hers|have his|have my wifes|have my husbands|using hers|using his|"
    "use hers|use his|on her phone|on his phone|wifes phone|husbands phone|another phone|"
    "other phone works|borrowed|this one works|works now|tengo otro|otro telefono|otro celular|uso "
    "el de|con el de";

static const char in_other_words[] =
    "no bars|no service|not able to call|not able to get through|could not call|can not call|"
    "can not dial|no way to call|no way of calling|how do i call without|wont let me call|"
    "wont let us call|wont call|doesnt call|call wont|calls wont|calls dont|call doesnt|"
    "calls not|wont go through|not going through|cant get through|couldnt get through|call failed|"
    "calls fail|call fails|calls failed|call keeps|call drops|call dropped|calls drop|call * ended|"
    "call * cut off|out of minutes|no minutes|out of credit|no credit|phone is cut off|"
    "can only text|only can text|only texts work|only text works|just this tablet|only a tablet|"
    "nobody has a phone|no one has a phone|me preste * telefono|nos preste * telefono|"
    "me presta * telefono|nadie tiene telefono|no answer * 911|on hold * 911|911 * on hold|"
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
    "line busy|busy signal|keeps ringing|rings and rings|just rings|only rings|on hold|hung up on|"
    "they hung up|keep hanging up|keeps hanging up|hangs up on|wont connect|not connecting|"
    "me cuelgan|me cuelga|nos cuelgan|me colgaron|nos colgaron|me colgo|no da linea|"
    "no contestan|no contesta|no me contestan|nadie contesta|nadie contesto|no contestaron|"
    "no responden|nadie responde|no me responden|suena ocupado|esta ocupado|da ocupado|"
    "en espera|suena y suena";
/* "Its busy" of the line, and not of the lobby. */
static const char busy[] = "its busy|it is busy|they are busy|ocupado";
static const char busy_with[] = " in at here on with and out up today tonight en con aqui ";
/* Who cannot is somebody else, who is at work there. */
static const char others_at[] = " desk lobby reception lodge hotel office clerk manager ";
/* What is no signal, though it is called so. */
static const char not_signal[] =
    "reception lady|reception desk|reception guy|reception man|reception girl|reception area|"
    "reception staff|reception clerk|room service|at reception|from reception|"
    "service here at the desk|service at the desk|service at the front|service in the lobby|"
    "no the|no la|no el";
/* They speak with them, or help is near. */
static const char is_through[] =
    "911 is answering|911 answered|911 is on|on the phone with|on the line with|on with 911|"
    "talking to 911|talking with 911|speaking to 911|speaking with 911|they answered|"
    "911 picked up|hablando con el 911|en linea con|ya contestaron|ya me contestaron|"
    "ya contesto|911 ya contesto|on their way|on the way|they are coming|they are here|theyre here|"
    "theyre coming|ya vienen|vienen en camino|ya llegaron|ya estan aqui";

/* Whether we called or will: who asks that may not call. */
static const char asking[] =
    " did have has will are is r do does were was didnt havent hasnt arent isnt if when ";
static const char asked_of[] = " you u ya yall anyone anybody someone somebody staff they help "
                               "ambulance paramedics medics rescue guys ";
static const char asked_for[] = " call called calling send sent sending coming dispatch dispatched "
                                "notify notified contact contacted phone phoned dial dialed ";
static const char asks_whether[] =
    "you called|u called|you guys called|u guys called|you phoned|u phoned|guys phoned|"
    "who called|you sent * ambulance|you sent someone|you sent help|"
    "si llaman ustedes|llamaron ustedes|ustedes llamaron|"
    "ustedes ya llamaron|alguien llamo|alguien ya llamo|alguien va a llamar|van a llamar|"
    "va a llamar alguien|van a mandar|mandaron a alguien|mandaron ambulancia|"
    "mandaron la ambulancia|ya mandaron";
static const char asks_whether_with_mark[] = "llamaron|llamo|hablaron|avisaron|mandaron|llaman";
/* They press us, or ask us who comes and when. */
static const char presses[] =
    "you send help|u send help|you send * ambulance|u send * ambulance|"
    "you send someone|u send someone|you send somebody|u send somebody|you get us * ambulance|"
    "you get us help|u get us help|"
    "anyone coming|someone coming|help coming|will they come|do they come|will anyone come|"
    "will someone come|how long till|how long until|how much longer|how far are they|"
    "how far out|how far away|can you come|are you coming|are you there|anyone there|"
    "anybody there|answer me|"
    "when will they|when are they|when is the ambulance|when will the ambulance|when is help|hurry|"
    "vengan|pueden venir|puede venir|hay alguien ahi|estan ahi|contesten|contesteme|"
    "apurense|apurese|apurate|apurenle|apurele|cuando llegan|cuando llega|cuando vienen|"
    "cuanto tardan|cuanto falta|en cuanto llegan|van a venir|si vienen|alguien viene|viene alguien";
static const char presses_with_mark[] = "vienen|viene|llegan|llega|tardan";
static const char speak_spanish[] =
    "speak spanish|speaks spanish|dont speak english|doesnt speak english|no english|"
    "habla espanol|hablan espanol|hablan en espanol|atienden en espanol|contestan en espanol|"
    "en espanol|no hablo ingles|no habla ingles|no hablamos ingles|no se ingles|no sabe ingles|"
    "no sabemos ingles|no entiendo ingles|no entiendo el ingles|solo hablo espanol";

static bool
is_near_at(const struct tokens *tokens, size_t at, const struct near *near)
{
    enum { THEN = 4 };
    size_t next = at + 1;

    if (!token_among(tokens, at, near->first)) {
        return false;
    }
    while (next < tokens->count && !token_among(tokens, next, near->second)) {
        if (!token_among(tokens, next, near->between)) {
            return false;
        }
        next++;
    }
    return next < tokens->count &&
           (near->then == NULL ||
            tokens_between_among(tokens, next + 1, next + 1 + THEN, near->then));
}

/* One of these, and not told of who works there: "the desk cant call". */
static bool
any_near(const struct tokens *tokens, const struct near *list, size_t count)
{
    size_t i, at;

    for (i = 0; i < count; i++) {
        for (at = 0; at < tokens->count; at++) {
            if (is_near_at(tokens, at, &list[i]) &&
                !(at > 0 && token_among(tokens, at - 1, others_at))) {
                return true;
            }
        }
    }
    return false;
}

#define ANY_NEAR(tokens, list) any_near(tokens, list, sizeof(list) / sizeof((list)[0]))

static bool
is_line_busy(const struct tokens *tokens)
{
    size_t i, words;

    for (i = 0; i < tokens->count; i++) {
        words = tokens_phrase_at(tokens, i, busy);
        if (words > 0 && !token_among(tokens, i + words, busy_with)) {
            return true;
        }
    }
    return false;
}

bool
calling_asks_whether(const struct asked *asked)
{
    enum { NEAR = 4 };
    const struct tokens *tokens = &asked->tokens;
    size_t i, subject;

    for (i = 0; i + 1 < tokens->count; i++) {
        subject = i + 1 + token_among(tokens, i + 1, " the an any your ");
        if (token_among(tokens, i, asking) && token_among(tokens, subject, asked_of) &&
            tokens_between_among(tokens, subject + 1, subject + NEAR, asked_for)) {
            return true;
        }
    }
    return tokens_have(tokens, asks_whether) ||
           (tokens_have(tokens, "?") && tokens_have(tokens, asks_whether_with_mark));
}

bool
calling_presses(const struct asked *asked)
{
    struct tokens rest = tokens_without(asked->arena, &asked->tokens, "no hurry|in a hurry");

    return tokens_have(&rest, presses) ||
           (tokens_have(&rest, "?") && tokens_have(&rest, presses_with_mark));
}

bool
cannot_call_told(const struct asked *asked)
{
    struct tokens rest = tokens_without(asked->arena, &asked->tokens, not_signal);
    const struct tokens *tokens = &asked->tokens;

    if (tokens_have(tokens, is_through)) {
        return false;
    }
    return tokens_have(&rest, in_other_words) || ANY_NEAR(&rest, cannot) ||
           (ANY_NEAR(tokens, phone_fails) && !tokens_have(tokens, other_phone)) ||
           (tokens_have(tokens, asks_us) && !calling_asks_whether(asked)) ||
           (open_emergency_stands(asked->context) &&
            (tokens_have(tokens, not_taken) || is_line_busy(tokens)));
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
