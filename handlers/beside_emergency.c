/*
 * What people ask or tell while they wait for an ambulance, beside whether they have called: may
 * the oxygen stay on, what is the setting, where to with the unit; or that no ambulance gets
 * through or none comes. To keep the oxygen on as ordered and to do what 911 says is common
 * practice, no source.
 */
#include "say.h"
#include "steps.h"

static const char of_the_oxygen[] =
    "keep * oxygen|keep it on|keep him on|keep her on|take it off|take him off|take her off|"
    "oxygen on|oxygen off|leave it on|flow setting|his setting|her setting|my setting|"
    "what setting|which setting|what flow|how many liters|with the machine|with the unit|"
    "bring the machine|bring the unit|take the machine|take the unit|pick up the machine|"
    "pick up the unit|pick the unit up|get the machine|quito el oxigeno|quitarle el oxigeno|"
    "quitarme el oxigeno|dejo el oxigeno|dejarle el oxigeno|se lo quito|se lo dejo|le quito|"
    "que nivel|en que nivel|cuantos litros|con el aparato|con la maquina|llevo el aparato|"
    "llevar el aparato|llevar la maquina|recoger el aparato|recoger la maquina";
static const char nobody_gets_through[] =
    "no ambulance|ambulance cant|ambulance can not|ambulance wont|ambulance is stuck|"
    "road is closed|roads are closed|road closed|roads closed|pass is closed|snowed in|"
    "cant reach us|cant get to us|cant get here|cant get through to us|no hay ambulancia|"
    "no puede llegar|no pueden llegar|no puede subir|no pueden subir|carretera cerrada|"
    "carretera esta cerrada|camino cerrado|camino esta cerrado|paso cerrado";

static const char is_late[] =
    "no llegan|no llega|no han llegado|no ha llegado|sin llegar|nadie llega|nadie ha llegado|"
    "nadie llego|nadie viene|nadie vino|nadie ha venido|no vienen|no viene|no han venido|"
    "no ha venido|no aparecen|no aparece|tardan mucho|tarda mucho|se tardan|ya tardaron|"
    "not here yet|still not here|arent here|isnt here|not come yet|havent come|hasnt come|"
    "havent arrived|hasnt arrived|not arrived|havent shown up|nobody came|no one came|"
    "nobody has come|no one has come|nobody is here|no one is here|nobody is coming|"
    "no one is coming|nobody showed up|still no ambulance|still no one|where are they|"
    "where is the ambulance|wheres the ambulance|taking too long|taking forever|"
    "take too long|still waiting for them|still waiting for the ambulance";
/* What else does not come. */
static const char not_of_help[] = "aire|oxigeno|luz|corriente|senal|internet|mensaje|mensajes|"
                                  "paquete|pedido|refund|message|package";

bool
help_is_late_told(const struct asked *asked)
{
    return tokens_have(&asked->tokens, is_late) && !tokens_have(&asked->tokens, not_of_help);
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

bool
nobody_gets_through_told(const struct asked *asked)
{
    return tokens_have(&asked->tokens, nobody_gets_through);
}

const char *
beside_emergency_words(const struct asked *asked)
{
    enum phrase phrase;

    if (nobody_gets_through_told(asked)) {
        phrase = SAY_NOBODY_GETS_THROUGH;
    } else if (help_is_late_told(asked)) {
        phrase = SAY_HELP_IS_LATE;
    } else if (tokens_have(&asked->tokens, of_the_oxygen) || is_called_in_short(asked)) {
        phrase = SAY_KEEP_ON;
    } else {
        return NULL;
    }
    return say(asked->arena, asked->context->house, asked->language, phrase, NULL);
}
