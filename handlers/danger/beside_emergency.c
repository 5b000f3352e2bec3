/*
 * What people ask or tell while they wait for an ambulance. To keep the oxygen on as ordered, to do
 * what 911 says, to let the medics look and to call even if somebody refuses is common practice, no
 * source. Nothing is told of first aid: who answers the emergency number does that.
 */
#include "beside_emergency.h"

#include <string.h>

#include "found.h"
#include "memory.h"
#include "persons.h"
#include "steps.h"

static const struct beside_words words[] = {
    [BESIDE_HOSPICE] = {"help:" HOSPICE_REASON, "tells of hospice or DNR", SAY_HOSPICE_NOW,
                        PHRASE_COUNT},
    [BESIDE_REFUSES] = {"help:refuses", "will not have 911 called", SAY_CALL_ANYWAY,
                        SAY_STAFF_ALERTED},
    [BESIDE_CANNOT_CALL] = {"help:cannot-call", "cannot call: call 911 for them", SAY_CANNOT_CALL,
                            SAY_STAFF_CALL_FOR_YOU},
    [BESIDE_NO_WAY] = {"help:no-way", "no ambulance gets there", SAY_NOBODY_GETS_THROUGH,
                       SAY_STAFF_CALL_FOR_YOU},
    [BESIDE_LATE] = {"help:late", "help does not come: call 911 for them", SAY_HELP_IS_LATE,
                     PHRASE_COUNT},
    [BESIDE_STILL_NEEDED] = {"help:still-needed", "asks whether help is needed", SAY_LET_THEM_COME,
                             SAY_STAFF_ALERTED},
    [BESIDE_ASKS_WHETHER] = {"help:asks-whether", "asks if 911 was called", SAY_IT_IS_A_PROGRAM,
                             SAY_STAFF_ALERTED},
    [BESIDE_ASKS_WHERE] = {"help:where", "does not know where they are", SAY_WHERE_UNKNOWN,
                           SAY_STAFF_ALERTED},
    [BESIDE_PLACE] = {"help:place", "tells where they are", SAY_PLACE_TOLD, PHRASE_COUNT},
    [BESIDE_SOMEBODY_CAME] = {NULL, NULL, SAY_IF_IT_IS_HELP, PHRASE_COUNT},
    [BESIDE_OXYGEN] = {NULL, NULL, SAY_KEEP_ON, SAY_STAFF_ALERTED},
    [BESIDE_ASKS_WHAT_TO_DO] = {"help:asks-what-to-do", "asks what to do", SAY_ASK_911,
                                SAY_STAFF_ALERTED},
    [BESIDE_TELLS_MORE] = {"help:tells-more", "tells more", SAY_TELL_911_THIS, PHRASE_COUNT},
};

static const char of_the_oxygen[] =
    "keep * oxygen|keep it on|keep him on|keep her on|take it off|take him off|take her off|"
    "oxygen on|oxygen off|leave it on|flow setting|his setting|her setting|my setting|"
    "what setting|which setting|what flow|how many liters|with the machine|with the unit|"
    "bring the machine|bring the unit|take the machine|take the unit|pick up the machine|"
    "pick up the unit|pick the unit up|get the machine|quito el oxigeno|quitarle el oxigeno|"
    "quitarme el oxigeno|dejo el oxigeno|dejarle el oxigeno|se lo quito|se lo dejo|le quito|"
    "que nivel|en que nivel|cuantos litros|con el aparato|con la maquina|llevo el aparato|"
    "llevar el aparato|llevar la maquina|recoger el aparato|recoger la maquina";

static const char not_to_call[] =
    "refuses|refusing|not send * ambulance|dont send * ambulance|not send anyone|dont send anyone|"
    "no manden * ambulancia|no mande * ambulancia|no envien * ambulancia|no manden a nadie|"
    "doesnt want me to|doesnt want us to|doesnt want to go|does not want to go|"
    "no 911 he|no 911 she|says no 911|doesnt want 911|dont want 911|no ambulance he|no ambulance "
    "she|"
    "doesnt want an ambulance|doesnt want the ambulance|doesnt want help|dont want an ambulance|"
    "dont want to call|dont want me to|not to call|tells me not to|told me not to|says dont call|"
    "said dont call|says no ambulance|wants no ambulance|he says no|she says no|hell say no|if i "
    "call|if we call|scared to call|bother them|bother anyone|bother anybody|afraid to call|cant "
    "afford|no insurance|ambulance cost|"
    "ambulance costs|costs too much|undocumented|no papers|immigration|deported|told * to leave|"
    "told * to go|sent them away|sent them home|turned them away|i didnt need it|i dont need it|"
    "no quiere que|no quiere ambulancia|no "
    "quiere la ambulancia|no quiere una ambulancia|no quiere ir|no quiere ayuda|"
    "no me deja llamar|no nos deja llamar|no me deja que llame|se niega|se rehusa|que no "
    "llame|que no llamemos|no quiere llamar|no quiero llamar|miedo llamar|miedo de llamar|"
    "indocumentado|indocumentada|indocumentados|sin papeles|no tengo papeles|la migra|no tengo "
    "seguro|les dije que se fueran|los mande de vuelta|los corrio";
/* Who is ill says so; who is with them to look after them is believed no more, but refuses not. */
static const char says_fine[] =
    "says hes fine|says shes fine|says he is fine|says she is fine|says hes ok|says shes ok|says "
    "im overreacting|says its nothing|dice que esta bien|dice que se siente bien|dice que no es "
    "nada";
static const char carers[] = "nurse|doctor|medic|medics|paramedic|paramedics|enfermera|enfermero|"
                             "doctora|medico|medica|paramedico|paramedicos";
/* Who keeps them from it; of the phone it is another thing. */
static const char hinders[] = "wont let me|wont let us|wont let anyone|refuse|not letting me";

static const char still_needed[] =
    "need * ambulance|need * paramedics|need * medics|need them to come|need 911|needs 911|"
    "cancel * ambulance|cancel it|cancel them|cancel 911|call it off|call them off|"
    "send them away|send them back|turn them away|still come|still need them|"
    "hace falta * ambulancia|necesita * ambulancia|necesitamos * ambulancia|cancelo|cancelar|"
    "cancelamos|hace falta que vengan|necesario que vengan|todavia tienen que venir";
static const char asks_needed[] = "?|do|does|should|can|really|still|cancel|puedo|debo|cancelo|"
                                  "cancelar|todavia|aun|de veras|off|away";

/* By itself: to them it is told or asked that help turns back. */
static const char calls_off[] =
    "call off * ambulance|call off the paramedics|call off the medics|call off 911|call off help|"
    "call 911 off|call * ambulance off|called off * ambulance|called off 911|called it off|"
    "called them off|canceled * ambulance|cancelled * ambulance|canceled 911|cancelled 911|"
    "canceling * ambulance|cancelling * ambulance|"
    "ambulance to turn|ambulance turn|ambulance to go back|ambulance go back|ambulance back|"
    "them to turn|paramedics to turn|medics to turn|stop * ambulance|paramedics back|"
    "them to go back|cancele la ambulancia|cancelen la ambulancia|cancelo la ambulancia|"
    "cancelamos la ambulancia|cancele el 911|ya la cancele|la puedo cancelar|"
    "que se regrese|que se regresen|que se devuelva|que se devuelvan|que se den vuelta|"
    "que se de vuelta|que den vuelta|que de vuelta|que de la vuelta|que den la vuelta|"
    "regreso la ambulancia|regresar la ambulancia|regresar a la ambulancia|"
    "detener la ambulancia|parar la ambulancia|paro la ambulancia|"
    "que no venga la ambulancia|les digo que no vengan|les digo que ya no vengan|"
    "decirles que no vengan|decirles que ya no vengan";

static const char asks_where[] =
    "whats the address|what is the address|what address|what is my address|whats my address|"
    "whats our address|dont know the address|dont know my address|dont know our address|"
    "dont know where we are|dont know where i am|no idea where|where are we|where am i|"
    "address here|do you have the address|have my address|cual es la direccion|cual es mi "
    "direccion|que direccion|wants the address|want the address|know the address|wants our address|"
    "asking for the address|asks for the address|need the address|needs the address|quieren la "
    "direccion|piden la direccion|pide la direccion|preguntan la direccion|no se la direccion|no "
    "se mi direccion|no sabemos la direccion|"
    "no se donde estoy|no se donde estamos|no sabemos donde|donde estamos|donde estoy|"
    "tienen mi direccion|tienen la direccion";

static const char what_to_do[] =
    "what now|now what|what do i|what do we|what should i|what should we|what can i|what can we|"
    "what else can|how do i|how do we|how to|how should i|how should we|how long do "
    "i|how many|"
    "should i|should we|should he|should she|can i|can we|can he|can she|could i|may i|"
    "is it ok to|is it okay to|is it safe to|ok if i|okay if i|what if i|what if we|"
    "dont know how|dont know what|cpr|compressions|rescue breaths|mouth to mouth|tell me how|tell "
    "me what|what to do|am i supposed|are we supposed|which side|"
    "que hago|que hacemos|que le hago|que le hacemos|que mas hago|que puedo|que podemos|que debo|"
    "que sigue|ahora que|y ahora|y mientras|como le hago|como le hacemos|como hago|como hacemos|"
    "como se hace|no se hacer|no se como|no se que|rcp|compresiones|boca a boca|masaje|esta bien "
    "si|sirve si";
/* Of somebody: "should i lay him flat" is, "do i take her machine" is not. */
static const char to_somebody[] =
    "le doy|le damos|le puedo|le podemos|le pongo|le ponemos|lo acuesto|la acuesto|lo siento|"
    "lo levanto|la levanto|lo muevo|la muevo|lo llevo|la llevo|lo llevamos|la llevamos|"
    "llevarlo|llevarla|acostarlo|acostarla|moverlo|moverla|levantarlo|levantarla|darle";
static const char of_things[] = " maquina aparato equipo unidad tanque filtro bateria machine unit "
                                "tank filter battery batteries concentrator ";
/* These ask only at the head of a text, or with a mark. */
static const char may_i[] = "puedo|podemos|debo|debemos|puede tomar|puede comer|puede beber|"
                            "puede dormir";

/* "Do i tilt his head", but not "who do i talk to"; "la volteo de lado", at the head of a text. */
static bool
asks_of_doing(const struct tokens *tokens)
{
    static const char nouns[] = " mano foto moto radio ";
    size_t i, length;

    for (i = 0; i + 1 < tokens->count; i++) {
        if (token_is(tokens, i, "do") && token_among(tokens, i + 1, " i we ") &&
            !(i > 0 && token_among(tokens, i - 1, " who where when "))) {
            return true;
        }
    }
    if (tokens->count <= 2 || !token_among(tokens, 0, " lo la le los las les ") ||
        tokens->list[1].kind != TOKEN_WORD || token_among(tokens, 1, nouns)) {
        return false; /* "lo siento" is sorry */
    }
    length = strlen(tokens->list[1].text);
    return length > 2 && tokens->list[1].text[length - 1] == 'o';
}

static bool
asks_what_to_do(const struct tokens *tokens)
{
    bool is_marked = tokens_have(tokens, "?");

    return tokens_have(tokens, what_to_do) || asks_of_doing(tokens) ||
           tokens_phrase_at(tokens, 0, may_i) > 0 || (is_marked && tokens_have(tokens, may_i)) ||
           (tokens_have(tokens, to_somebody) && !tokens_any_among(tokens, 0, of_things));
}

static bool
refuses(const struct tokens *tokens)
{
    size_t i;

    for (i = 1; i < tokens->count; i++) {
        if (token_among(tokens, i - 1, person_words) && tokens_phrase_at(tokens, i, hinders) > 0) {
            return true;
        }
    }
    if (tokens_have(tokens, says_fine) && !tokens_have(tokens, carers)) {
        return true;
    }
    return tokens_have(tokens, not_to_call) &&
           !tokens_have(tokens, "already called|i called|we called|called 911|ya llame|"
                                "if i call will|if i call do|if we call will");
}

/* It is told, or was and they will have no ambulance or ask what to do now. */
static bool
is_of_hospice(const struct asked *whole)
{
    return death_is_only_near(whole) ||
           (found_alerted_because(whole->context, HOSPICE_REASON) &&
            (refuses(&whole->tokens) || asks_what_to_do(&whole->tokens)));
}

/* "Llame", "called", and nothing else; it may as well ask us to call, so it is answered. */
static bool
is_called_in_short(const struct asked *asked)
{
    struct tokens rest =
        tokens_without(asked->arena, &asked->tokens, "llame|llamamos|called|ya llame|ya llamamos");
    size_t i;

    for (i = 0; i < rest.count; i++) {
        if (rest.list[i].kind != TOKEN_SIGN &&
            !token_among(&rest, i, " si yes ya lo los le les ")) {
            return false;
        }
    }
    return rest.count < asked->tokens.count && !tokens_have(&asked->tokens, "?|llame ya");
}

/* "Gurgling", "so cold", "lost him", "gone": few words, and nothing named but somebody. */
static bool
is_of_body_in_short(const struct tokens *tokens)
{
    enum { FEW = 4 };
    static const char of_body[] =
        " gurgling gurgle gurgles rattling rattle rattles foam foaming drooling cold colder "
        "freezing "
        "quiet silent still limp stiff floppy gone going fading slipping lost losing lose dying "
        "left "
        "dark grey gray purple pale white clammy sweaty wet dry noise noises sound sounds snoring "
        "moaning gasping twitching jerking broken "
        "gorgotea gorgoteando gorgoteo ronquido ronca espuma babea frio fria helado helada callado "
        "callada quieto quieta tieso tiesa flojo floja ido perdimos perdi pierdo perdemos "
        "perdiendo "
        "morado morada palido palida gris sudando ruido ruidos quejido tiembla temblando ";
    static const char things[] =
        " machine unit concentrator battery batteries filter charger power lights light alarm "
        "rental "
        "bag cart key keys phone maquina aparato equipo filtro bateria pila luz llave bolsa "
        "cargador telefono not no isnt ";

    return tokens->count <= FEW && tokens_any_among(tokens, 0, of_body) &&
           !tokens_any_among(tokens, 0, things);
}

/* Trouble of who or what is named, of which no list knows: "she is cold", "it got so quiet", "y
 * empece a ver doble". What is calm, or tells who and where they are, is none. */
static bool
tells_more(const struct asked *asked)
{
    static const char of_short_form[] = " hes shes im its theyre ";
    static const char subjects[] = " he she it i everything everyone skin eyes hands face legs "
                                   "breathing pulse heart arm lips machine unit battery tube "
                                   "tubing hose cannula mask prongs humidifier bubbles bubbling ";
    static const char states[] =
        " is are was has have got gets getting went goes looks seems feels felt turned started "
        "starts stopped keeps kept cant wont doesnt didnt just began fell threw took came popped ";
    static const char spanish[] = " esta estoy anda sigue siente siento tiene tengo empece empezo "
                                  "puso puse ponen pone duele ve veo respira cayo quedo da dio ";
    static const char calm[] =
        " here outside waiting ready unlocked old years with coming ok okay fine better good calm "
        "awake talking sitting thanks thank rented renting due called calling name son daughter "
        "aqui afuera esperando lista listo anos bien mejor tranquilo tranquila despierto "
        "despierta perfecto perfecta perfect normal laughing eating riendo comiendo plugged going "
        "gracias llame llamando hablando conmigo nombre hola hello ";
    enum { HEAD = 3 };
    const struct tokens *tokens = &asked->tokens;
    bool tells = ran_out_told(asked) != RAN_OUT_NOTHING ||
                 equipment_trouble_told(asked) != TROUBLE_NONE ||
                 is_of_body_in_short(&asked->tokens);
    size_t i;

    for (i = 0; i < tokens->count && !tells; i++) {
        tells =
            (token_among(tokens, i, of_short_form) && i + 1 < tokens->count) ||
            ((token_among(tokens, i, subjects) || token_among(tokens, i, person_words)) &&
             tokens_between_among(tokens, i + 1, i + 3, states)) ||
            token_among(tokens, i, spanish) ||
            (i < HEAD && token_is(tokens, i, "se") && (i == 0 || !token_is(tokens, i - 1, "no")));
    }
    return tells && !explained_passes(asked) && !tokens_have(tokens, "?") &&
           !tokens_any_among(tokens, 0, calm);
}

bool
beside_emergency_of_person(const struct asked *whole, enum beside beside)
{
    static const char behind_her[] =
        " to in on up down flat back out water some something anything her it myself ourselves "
        "there off a the aspirin food , . ? ! and if or while ";
    const struct tokens *tokens = &whole->tokens;
    size_t i;

    if (beside == BESIDE_TELLS_MORE) {
        return tokens_any_among(tokens, 0, " he hes she shes ella ") &&
               whole->told->charge_count == 0 && whole->told->light_count == 0;
    }
    for (i = 0; i < tokens->count && beside == BESIDE_ASKS_WHAT_TO_DO; i++) {
        if (token_among(tokens, i, " him them ") ||
            (token_is(tokens, i, "her") &&
             (i + 1 == tokens->count || token_among(tokens, i + 1, behind_her)))) {
            return true;
        }
    }
    return beside == BESIDE_ASKS_WHAT_TO_DO && tokens_have(tokens, to_somebody) &&
           !tokens_any_among(tokens, 0, of_things);
}

bool
beside_emergency_only_asks(const struct asked *whole)
{
    enum { SHORT = 8 };
    static const char states[] =
        " he she hes shes it its im is are was were has have having be die get gets feel feels . ; "
        "! and but because ";
    const struct tokens *tokens = &whole->tokens;

    return tokens->count <= SHORT && token_among(tokens, 0, " can should do could may how ") &&
           tokens_between_among(tokens, 1, 3, " i we ") && !tokens_any_among(tokens, 1, states);
}

bool
beside_emergency_calls_off(enum beside beside)
{
    return beside == BESIDE_REFUSES || beside == BESIDE_STILL_NEEDED;
}

bool
beside_emergency_names_fire(const struct asked *whole)
{
    return tokens_have(&whole->tokens,
                       "on fire|fire|burning|burns|burnt|flames|smoke|smokes|smoking|smoky|sparks|"
                       "sparking|hissing|swollen|bulging|melting|melted|gas|monoxide|co alarm|"
                       "fuego|incendio|quema|quemando|quemandose|quemada|arde|ardiendo|humo|"
                       "humea|humeando|chispas|hinchada|inflada|derretida|monoxido");
}

enum beside
beside_emergency_read(const struct asked *whole)
{
    const struct tokens *tokens = &whole->tokens;

    if (is_of_hospice(whole)) {
        return BESIDE_HOSPICE;
    }
    if (refuses(tokens)) {
        return BESIDE_REFUSES;
    }
    if (cannot_call_told(whole)) {
        return BESIDE_CANNOT_CALL;
    }
    if (nobody_gets_through_told(whole)) {
        return BESIDE_NO_WAY;
    }
    if (help_is_late_told(whole)) {
        return BESIDE_LATE;
    }
    if (is_over_too_soon(whole) || tokens_have(tokens, calls_off) ||
        (tokens_have(tokens, still_needed) && tokens_have(tokens, asks_needed))) {
        return BESIDE_STILL_NEEDED;
    }
    if (calling_asks_whether(whole) || calling_presses(whole)) {
        return BESIDE_ASKS_WHETHER;
    }
    if (tokens_have(tokens, asks_where)) {
        return BESIDE_ASKS_WHERE;
    }
    if (place_told(whole)) {
        return BESIDE_PLACE;
    }
    if (is_over_may_be_others(whole)) {
        return BESIDE_SOMEBODY_CAME;
    }
    if (tokens_have(tokens, of_the_oxygen) || is_called_in_short(whole)) {
        return BESIDE_OXYGEN;
    }
    if (asks_what_to_do(tokens)) {
        return BESIDE_ASKS_WHAT_TO_DO;
    }
    return tells_more(whole) ? BESIDE_TELLS_MORE : BESIDE_NOTHING;
}

const struct beside_words *
beside_emergency_words(enum beside beside)
{
    return &words[beside];
}

bool
beside_emergency_of_call(enum beside beside)
{
    return beside <= BESIDE_ASKS_WHETHER;
}

const char *
first_aid_left_out(const struct asked *whole)
{
    static const char of_aid[] =
        "chest compressions|compressions|compression|cpr|rcp|mouth to mouth|rescue breaths|"
        "rescue breathing|heimlich|recovery position|compresiones en el pecho|compresiones|"
        "masaje cardiaco|masaje|respiracion boca a boca|boca a boca|doy respiracion|dar "
        "respiracion|"
        "pushes on his chest|pushes on her chest|push on his chest|push on her chest|"
        "press on his chest|press on her chest|push his chest|push her chest|empujo el pecho|"
        "aprieto el pecho";
    struct tokens rest = tokens_without(whole->arena, &whole->tokens, of_aid);
    char *text = memory_copy(whole->arena, "");
    size_t i;

    for (i = 0; i < rest.count; i++) {
        memory_append(&text, "%s%s", i > 0 ? " " : "", rest.list[i].text);
    }
    return text;
}
