#include "in_car.h"

#include "say.h"

static const char in_a_car[] =
    "in the car|in my car|in our car|in a car|in his car|in her car|in the truck|in my truck|"
    "in our truck|in a truck|in the van|in the suv|in the pickup|stuck in traffic|en el auto|"
    "en el carro|en el coche|en mi auto|en mi carro|en mi coche|en la camioneta|en la troca";

/* Somebody is in it, not what they forgot there; and not where exhaust gathers. */
static const char somebody[] = "i am|im|we are|were|i sit|stuck|sitting|waiting|driving|estoy|"
                               "estamos|voy|vamos|sentado|sentada|atorados|parados|manejando";
static const char lies_there[] = "forgot|left my|left the|left it|is in the car|are in the car|"
                                 "olvide|deje|dejamos|se quedo";
static const char indoors[] =
    "garage|garaje|carport|shed|barn|indoors|cochera|estacionamiento techado|bodega";

const char *
in_car_words(const struct asked *asked)
{
    if (asked->rental == NULL || !asked->rental->car_charger || asked->equipment == NULL ||
        !asked->equipment->car.known || !asked->equipment->car.runs ||
        !tokens_have(&asked->tokens, in_a_car) || !tokens_have(&asked->tokens, somebody) ||
        tokens_have(&asked->tokens, lies_there) || tokens_have(&asked->tokens, indoors)) {
        return NULL;
    }
    /* The socket may be dead without the engine: facts A5. Exhaust of an engine that runs in snow:
     * common practice, no source. */
    return say(asked->arena, asked->context->house, asked->language, SAY_IN_CAR, NULL);
}
