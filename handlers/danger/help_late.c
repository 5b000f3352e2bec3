/*
 * Who was called does not come, says that it takes long, or cannot get to them: a person is called
 * again, who can call for them. What is long is common practice, no source.
 */
#include "steps.h"

static const char nobody_gets_through[] =
    "no ambulance|ambulance cant|ambulance can not|ambulance wont|ambulance is stuck|"
    "road is closed|roads are closed|road closed|roads closed|pass is closed|snowed in|"
    "road is blocked|roads are blocked|road blocked|turned around|turned back|"
    "no puede volar|no puede aterrizar|no puede bajar|no pudo aterrizar|"
    "cant reach us|cant get to us|cant get here|cant get through to us|no hay ambulancia|"
    "no puede llegar|no pueden llegar|no puede subir|no pueden subir|no pudo subir|"
    "no pudieron subir|no puede pasar|no pueden pasar|no hay paso|carretera cerrada|"
    "carretera esta cerrada|camino cerrado|camino esta cerrado|paso cerrado";

static const char helpers[] =
    " ambulance they paramedics medics emts rescue truck helicopter chopper 911 "
    "help nobody ambulancia paramedicos ellos ";
static const char cannot[] = " cant cannot couldnt wont unable cannt ";
static const char gets[] = " get reach make come fly drive land ";

static const char is_late[] =
    "no llegan|no llega|no han llegado|no ha llegado|sin llegar|nadie llega|nadie ha llegado|"
    "nadie llego|nadie viene|nadie vino|nadie ha venido|no vienen|no viene|no han venido|"
    "no ha venido|no aparecen|no aparece|tardan mucho|tarda mucho|se tardan|ya tardaron|"
    "nunca llego|nunca llegaron|nunca vino|nunca vinieron|no vinieron|no llegaron|no llego|"
    "donde estan|donde viene la ambulancia|no nos encuentran|no me encuentran|no encuentran|"
    "not here yet|still not here|arent here|isnt here|not come yet|havent come|hasnt come|"
    "havent arrived|hasnt arrived|not arrived|havent shown up|nobody came|no one came|"
    "never came|never showed|never arrived|didnt come|did not come|didnt show|"
    "nobody has come|no one has come|nobody is here|no one is here|nobody is coming|"
    "no one is coming|nobody showed up|no one showed up|nobody yet|no one yet|noone came|"
    "still no ambulance|still no one|where are they|where r they|where are the|no sign of them|"
    "where is everybody|where is everyone|wheres everybody|wheres everyone|where is the "
    "ambulance|wheres the ambulance|taking too long|taking forever|taking so long|"
    "wrong cabin|wrong house|wrong address|wrong room|wrong place|wrong street|wrong door|"
    "otra cabana|otra casa|cabana equivocada|casa equivocada|direccion equivocada|"
    "lugar equivocado|ambulance is late|"
    "not the ambulance|not an ambulance|not the paramedics|not the medics|not the emts|"
    "no es la ambulancia|no era la ambulancia|no son los paramedicos|no eran los paramedicos|"
    "take too long|still waiting for them|still waiting for the ambulance|cant find us|"
    "cant find the|cant find me";
/* What else does not come. */
static const char not_of_help[] = "aire|oxigeno|luz|corriente|senal|internet|mensaje|mensajes|"
                                  "paquete|pedido|refund|message|package";

/* With a long time beside it: they wait, or were told so. */
static const char waits[] =
    " wait waiting waited away late ambulance called call eta paramedics medics esperar esperando "
    "espero esperamos esperan tardan tarda tardar tardaran dicen dijeron dijo ambulancia llame "
    "llamamos llegan pasaron said say says told ";
static const char not_waits[] =
    "should i wait|should we wait|can i wait|can it wait|can we wait|could it wait|do i wait|debo "
    "esperar|puedo esperar|battery|batteries|tank|charge|bateria|baterias|tanque|carga|oxygen left";

/* A quarter of an hour and more: "40 min", "an hour", "media hora". */
static bool
tells_long_time(const struct tokens *tokens)
{
    enum { LONG = 15, THOUSAND = 1000 };
    static const char minutes[] = " min mins minute minutes minuto minutos ";
    static const char hours[] = " hour hours hr hrs hora horas ";
    int thousandths = 0;
    size_t i, taken;

    for (i = 0; i < tokens->count; i++) {
        taken = tokens_number(tokens, i, true, &thousandths);
        if ((taken > 0 && token_among(tokens, i + taken, minutes) &&
             thousandths >= LONG * THOUSAND) ||
            (taken > 0 && token_among(tokens, i + taken, hours)) ||
            (token_among(tokens, i, " an half media couple few several varias ") &&
             tokens_between_among(tokens, i + 1, i + 3, hours))) {
            return true;
        }
    }
    return false;
}

bool
help_is_late_told(const struct asked *asked)
{
    const struct tokens *tokens = &asked->tokens;

    return (tokens_have(tokens, is_late) && !tokens_have(tokens, not_of_help)) ||
           (tells_long_time(tokens) && tokens_any_among(tokens, 0, waits) &&
            !tokens_have(tokens, not_waits));
}

bool
nobody_gets_through_told(const struct asked *asked)
{
    enum { NEAR = 4 };
    const struct tokens *tokens = &asked->tokens;
    size_t i;

    for (i = 0; i < tokens->count; i++) {
        if (token_among(tokens, i, helpers) && token_among(tokens, i + 1, cannot) &&
            tokens_between_among(tokens, i + 2, i + NEAR, gets)) {
            return true;
        }
    }
    return tokens_have(tokens, nobody_gets_through);
}
