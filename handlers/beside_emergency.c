/*
 * What people ask or tell while they wait for an ambulance, beside whether they have called: may
 * the oxygen stay on, what is the setting, where to with the unit; or that no ambulance gets
 * through. To keep the oxygen on as ordered and to do what 911 says is common practice, no source.
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

bool
nobody_gets_through_told(const struct asked *asked)
{
    return tokens_have(&asked->tokens, nobody_gets_through);
}

const char *
beside_emergency_words(const struct asked *asked)
{
    bool is_cut_off = nobody_gets_through_told(asked);

    if (!is_cut_off && !tokens_have(&asked->tokens, of_the_oxygen)) {
        return NULL;
    }
    return say(asked->arena, asked->context->house, asked->language,
               is_cut_off ? SAY_NOBODY_GETS_THROUGH : SAY_KEEP_ON, NULL);
}
