#include "emptied.h"

#include "yes_no.h"

static const char batteries[] = " battery batteries batt batts bateria baterias pila pilas pilita ";
static const char tanks[] = " tank tanks cylinder cylinders bottle bottles gauge tanque tanques "
                            "tanquecito cilindro cilindros manometro ";
/* Behind its name, and before it. */
const char emptied_words[] =
    "died|dead|empty|drained|ran out|run out|ran dry|out|gone|finished|done|quit|flat|zero|0|"
    "murio|murieron|muerta|muertas|muerto|acabo|acabaron|acabado|acabada|vacio|vacia|vacios|"
    "vacias|vaciaron|agoto|agotaron|agotado|agotada|agotadas|descargo|descargaron|descargada|"
    "descargadas|termino|terminaron|trono|cero";
static const char ran_out_of[] =
    "ran out of|run out of|is out of|am out of|are out of|im out of|died|empty|quede sin|"
    "quedamos sin|quedo sin|estoy sin|estamos sin|ando sin|andamos sin|sigo sin|seguimos sin|murio|"
    "murieron|acabo|acabaron|vacio|agoto|agotaron|descargo|descargaron|termino|terminaron|trono|"
    "no queda|no tiene|ya no tengo|ya no tenemos|ya no hay|ya no traigo";
static const char between[] =
    " is are was were s just has have had now all completely totally both went gone reads says "
    "marks at on me us it my our the la se me nos le les ya esta estan quedo quedaron marca dice "
    "completamente totalmente toda todo todas todos ha han del de repente la el las los mi mis su "
    "sus nuestra nuestro tengo oxigeno oxygen o2 nada en a ";
/* No verb by itself: behind "what" it may be a thing, as in "que hago con el tanque vacio". */
static const char as_thing[] =
    " dead empty drained out gone flat vacio vacia vacios vacias muerta muertas muerto agotado "
    "agotada agotadas descargada descargadas ";

/* Just before it: it is not told to be so now. */
static const char supposed[] = " if when until till before once whenever would will could might "
                               "may should gonna almost nearly "
                               "si cuando hasta antes casi ";
static const char yes_no_head[] = " is are was were does do did can could will would should may ";
static const char asking_head[] = " what how why which que como cual cuanto cuanta cuantas ";
static const char in_general[] =
    "what if|what happens|what does|how do i know|how can i tell|how will i know|how do you know|"
    "que pasa|que significa|que quiere decir|como se cuando|como se si|como puedo saber";

/* Whose battery or tank it is, if it is none of ours. */
static const char owners[] =
    " phone phones cell cellphone cellular car cars truck trucks van vest jacket gloves heated "
    "bike "
    "ebike drill radio gps clock toy watch hearing aid aids remote laptop tablet camera flashlight "
    "smoke detector scooter jeep water propane gas fuel scuba telefono celular cel carro coche "
    "auto "
    "camioneta troca reloj control audifono audifonos linterna camara agua gasolina ";
static const char vehicles[] = " car cars truck van jeep scooter carro coche auto camioneta troca ";
static const char determiners[] = " the my our his her a el la mi su un una this ";

/* One of several, before its name; and one that there is beside it. */
static const char of_several[] = " spare extra other another second one otra repuesto segunda una "
                                 "primera first ";
static const char others[] = " spare spares extra extras other others another otra otras repuesto "
                             "repuestos ";
static const char no_other_thing[] = " vez day time night dia noche ";
static const char as_well[] = "too|also|as well|tambien|tampoco|neither";
static const char not_at_hand[] =
    "home|house|hotel|cabin|lodge|room|office|left|forgot|need|needs|bring|send|get|want|casa|"
    "cabana|cuarto|oficina|deje|olvide|olvidamos|necesito|necesitamos|ocupo|traer|traigan|"
    "traiganme|"
    "mandar|manden|mandenme|quiero";
static const char far_off[] =
    "on the road|on the trail|on a trail|on the highway|on the freeway|on the mountain|on the pass|"
    "at the pass|on the summit|at the summit|on the slopes|on the slope|on the lift|on a "
    "hike|hiking|"
    "driving|in the car|in my car|in our car|in the truck|in the van|in the jeep|on the bus|"
    "in the woods|in the forest|on the lake|stranded|middle of nowhere|side of the road|"
    "en el cerro|en la carretera|en el camino|en camino|en el sendero|en el monte|en la montana|"
    "en la sierra|en el carro|en el coche|en la camioneta|en el auto|en la troca|en el autobus|"
    "en el bosque|en el lago|manejando|varados|varado|varada";
static const char fears_death[] =
    "going to die|gonna die|will die|im dying|i am dying|hes dying|shes dying|he is dying|"
    "she is dying|voy a morir|va a morir|vamos a morir|me muero|se muere|me estoy muriendo|"
    "se esta muriendo";

/* It is seen to, or runs on something else. */
static const char seen_to[] =
    " plugged charging charged full fine works working running enchufada enchufado cargando cargar "
    "cargue llena llenas llenos lleno funciona queda quedan cambie cambiamos swapped ";
static const char from_backup[] =
    "on the tank|on tank|on a tank|on my tank|using the tank|have the tank|have a tank|"
    "have my tank|got the tank|on backup|on the backup|on my backup|on the cylinder|con el tanque|"
    "tengo el tanque|tengo tanque|tenemos tanque|con la reserva|con el cilindro";
static const char long_ago[] = "yesterday|last night|last time|ayer|anoche|la vez pasada";
static const char how_long[] = "how long|how many|cuanto|cuanta|cuantas";
static const char asks[] =
    "?|where|how|when|can|could|do|should|will|donde|como|cuando|puedo|pueden";
static const char gives_back[] =
    "return|take it|bring it|turn it in|drop off|drop it off|exchange|refill|refilled|pick up|"
    "pickup|picked up|devolver|devuelvo|recoger|recogen|regresar|regreso|entregar|entrego|"
    "rellenar|rellenan|cambiar|llevo|dejo";
static const char amounts[] =
    " % percent psi bar bars light lights left more por raya rayas luces luz mas ";
static const char times[] =
    " hour hours hr hrs h min mins minute minutes hora horas minuto minutos ";

static const char persons[] =
    " dad mom mum mother father husband wife son daughter grandma grandpa nana brother sister "
    "he she him her papa mama madre padre esposo esposa hijo hija abuelo abuela abuelito abuelita "
    "hermano hermana senor senora ";

enum { NEAR = 3, BESIDE_NAME = 2 };

/* Where it is told: the first of its words, the name, and the last. */
struct place {
    size_t from, name, last;
    bool is_thing; /* no more than "battery empty" */
};

/* One of these in tokens [from, to), nothing ended in between. */
static bool
stands_in(const struct tokens *tokens, size_t from, size_t to, const char *words)
{
    size_t i;

    for (i = to; i > from; i--) {
        if (token_among(tokens, i - 1, " . , ; ! ? : and y but pero ")) {
            return false;
        }
        if (token_among(tokens, i - 1, words)) {
            return true;
        }
    }
    return false;
}

static size_t
skip_between(const struct tokens *tokens, size_t at, bool until_empty)
{
    while (token_among(tokens, at, between) &&
           !(until_empty && tokens_phrase_at(tokens, at, emptied_words) > 0)) {
        at++;
    }
    return at;
}

/* "The tank just went empty" or "se nos acabo la pila" begins at `at`. */
static bool
place_at(const struct tokens *tokens, size_t at, const char *supplies, struct place *place)
{
    size_t words = tokens_phrase_at(tokens, at, ran_out_of), next;

    if (token_among(tokens, at, supplies)) {
        next = skip_between(tokens, at + 1, true);
        words = tokens_phrase_at(tokens, next, emptied_words);
        *place = (struct place){.from = at,
                                .name = at,
                                .last = next + words,
                                .is_thing = next == at + 1 && token_among(tokens, next, as_thing)};
        return words > 0;
    }
    next = skip_between(tokens, at + words, false);
    *place = (struct place){.from = at, .name = next, .last = next + 1};
    /* "empty tank" is a thing, "died the battery" is told */
    return words > 0 && token_among(tokens, next, supplies) && !token_is(tokens, at, "empty");
}

/* "The battery hasnt died" */
static bool
is_denied(const struct tokens *tokens, const struct place *place)
{
    size_t end = place->name == place->from ? place->last - 1 : place->from, i;

    for (i = tokens_back(end, NEAR); i < end; i++) {
        if (yes_no_denies_at(tokens, i)) {
            return true;
        }
    }
    return false;
}

/* "How do i get the battery out" */
static bool
is_taken_out(const struct tokens *tokens, const struct place *place)
{
    return place->is_thing && token_is(tokens, place->name + 1, "out") &&
           stands_in(tokens, tokens_back(place->name, NEAR + 1), place->name,
                     " get got gets getting take took taking pull pulled pulling slide slid pop "
                     "popped pry remove have had keep bring brought swap put ");
}

static bool
is_supposed(const struct tokens *tokens, const struct place *place)
{
    return stands_in(tokens, tokens_back(place->from, NEAR), place->from, supposed) ||
           (token_among(tokens, 0, yes_no_head) && !token_is(tokens, 1, "you") &&
            place->from <= NEAR) ||
           tokens_have(tokens, in_general) ||
           (token_among(tokens, 0, asking_head) && place->is_thing);
}

/* "My phone battery", "se quedo sin bateria mi celular", "battery of the car"; but not "we are in
 * the car battery died". */
static bool
is_of_other_thing(const struct tokens *tokens, const struct place *place)
{
    size_t near = tokens_back(place->name, BESIDE_NAME), after = place->name + 1, i = place->name;

    if (stands_in(tokens, near, place->name, owners)) {
        while (!token_among(tokens, i, owners)) {
            i--;
        }
        while (i > 0 && token_among(tokens, i - 1, determiners)) {
            i--;
        }
        return !token_among(tokens, i - 1, " in en ");
    }
    if (place->name > place->from &&
        stands_in(tokens, tokens_back(place->from, NEAR), place->from, owners)) {
        return true;
    }
    after = place->last > after ? place->last : after;
    if (token_among(tokens, after, " of on for in de del en ")) {
        bool may_be_place = token_among(tokens, after, " in en ");

        for (after++; token_among(tokens, after, determiners); after++) {
        }
        return token_among(tokens, after, owners) &&
               !(may_be_place && token_among(tokens, after, vehicles));
    }
    return token_among(tokens, place->name + 1, determiners) &&
           token_among(tokens, place->name + 2, owners);
}

static bool
is_one_of_several(const struct tokens *tokens, const struct place *place)
{
    return stands_in(tokens, tokens_back(place->name, BESIDE_NAME), place->name, of_several) ||
           (token_among(tokens, tokens_back(place->name, 1), " my the las los mis ") &&
            token_among(tokens, tokens_back(place->name, 2), " of de ") &&
            stands_in(tokens, tokens_back(place->name, NEAR), place->name, of_several));
}

/* It is told here, and of what they breathe from; `several` too if there is no other either. */
static bool
find_place(const struct tokens *tokens, const char *supplies, bool several, struct place *place)
{
    size_t i;

    for (i = 0; i < tokens->count; i++) {
        if (place_at(tokens, i, supplies, place) && !is_denied(tokens, place) &&
            !is_taken_out(tokens, place) && !is_supposed(tokens, place) &&
            !is_of_other_thing(tokens, place) && (several || !is_one_of_several(tokens, place))) {
            return true;
        }
    }
    return false;
}

/* "Dead battery", "sin pila!", and nothing else. "No tank" is none: they may never have had one. */
static bool
is_bare_thing(const struct tokens *message, const char *supplies, struct place *place)
{
    size_t count = message->count;

    *place = (struct place){.name = 1, .last = 2, .is_thing = true};
    while (count > 2 && token_among(message, count - 1, " . ! ")) {
        count--;
    }
    return count == 2 && token_among(message, 1, supplies) &&
           (token_among(message, 0, as_thing) ||
            (supplies == batteries && token_among(message, 0, " no sin zero cero ")));
}

/* Another one is spoken of at `at`; not the one that was told to be empty itself. */
static bool
names_other(const struct tokens *tokens, size_t at)
{
    return token_among(tokens, at, others) && !token_among(tokens, at + 1, no_other_thing);
}

/* "No spare", "the other one wont charge", "spare died too". */
static bool
tells_no_other(const struct tokens *message)
{
    bool too = tokens_have(message, as_well);
    size_t i, next;

    if (yes_no_denies_one_of(message, others)) {
        return true;
    }
    for (i = 0; i < message->count; i++) {
        if (!names_other(message, i)) {
            continue;
        }
        for (next = i + 1;
             token_among(message, next, between) || token_among(message, next, " one ones ") ||
             token_among(message, next, batteries) || token_among(message, next, tanks);) {
            if (tokens_phrase_at(message, next, emptied_words) > 0) {
                break;
            }
            next++;
        }
        if (tokens_phrase_at(message, next, emptied_words) > 0 &&
            (too ||
             !(token_among(message, i + 1, batteries) || token_among(message, i + 1, tanks)))) {
            return true;
        }
    }
    return false;
}

static bool
tells_other_at_hand(const struct tokens *message)
{
    size_t i;

    for (i = 0; i < message->count; i++) {
        if (names_other(message, i)) {
            return !tokens_have(message, not_at_hand);
        }
    }
    return false;
}

/* "It is charging", but not "plugged in but nothing", "works no more", "not charging". */
static bool
tells_seen_to(const struct tokens *message)
{
    size_t i, j;

    for (i = 0; i < message->count; i++) {
        bool is_denied_here = false;

        if (!token_among(message, i, seen_to)) {
            continue;
        }
        for (j = tokens_back(i, NEAR); j <= i + NEAR; j++) {
            is_denied_here = is_denied_here || yes_no_denies_at(message, j) ||
                             (j > i && token_among(message, j, " but pero "));
        }
        if (!is_denied_here && !token_among(message, i + 1, " late out low ")) {
            return true;
        }
    }
    return false;
}

/* A charge, a pressure, or hours; since when it is so, or how many there were, are none. */
static bool
tells_amount(const struct tokens *message)
{
    size_t i;

    for (i = 0; i < message->count; i++) {
        if (message->list[i].kind != TOKEN_NUMBER || message->list[i].thousandths == 0) {
            continue;
        }
        if (token_among(message, i + 1, amounts) ||
            (token_among(message, i + 1, times) &&
             !token_among(message, i + 2, " ago now atras ") &&
             !(i > 0 && token_among(message, i - 1, " since for hace desde past ")))) {
            return true;
        }
    }
    return false;
}

/* "1 battery at 0%, when is it full in the car?" */
static bool
asks_when_full(const struct tokens *message)
{
    return tokens_have(message, asks) &&
           tokens_have(message,
                       "full|fully|be ready|be done|ready by|all be ready|recharge|llenarse|"
                       "llenar|llena|llenas|carga completa|cargarse|cargada|cargadas");
}

/* It may be empty, but they speak of something else, or have what they need. */
static bool
tells_no_need(const struct tokens *message)
{
    return tells_amount(message) || tells_other_at_hand(message) || tells_seen_to(message) ||
           tokens_have(message, long_ago) || tokens_have(message, how_long) ||
           asks_when_full(message) ||
           (tokens_have(message, asks) && tokens_have(message, gives_back));
}

/* "Battery died and so did my dad" */
static bool
tells_of_somebody(const struct tokens *tokens, const struct place *place)
{
    size_t at = place->last, i;
    bool so_did;

    if (!stands_in(tokens, place->from, place->last,
                   " died dead murio murieron muerta muerto muertas ")) {
        return false;
    }
    while (token_among(tokens, at, " , . and y ")) {
        at++;
    }
    so_did = token_is(tokens, at, "so") && token_among(tokens, at + 1, " did has is ");
    for (i = at + (so_did ? 2 : 0); token_among(tokens, i, determiners); i++) {
    }
    /* in doubt somebody who has no oxygen left lives: it must be said, and nothing behind it */
    return token_among(tokens, i, persons) &&
           (so_did ? i + 1 == tokens->count
                   : token_among(tokens, i + 1, " died murio ") &&
                         tokens_phrase_at(tokens, i + 2, as_well) > 0 && i + 3 >= tokens->count);
}

struct emptied
emptied_read(const struct tokens *piece, const struct tokens *message)
{
    struct emptied emptied = {0};
    struct place place;
    bool no_other = tells_no_other(message);
    bool is_pressing = tokens_have(message, fears_death) ||
                       (tokens_have(message, far_off) && !asks_when_full(message));

    emptied.tank = find_place(piece, tanks, true, &place) || is_bare_thing(message, tanks, &place);
    emptied.battery = !emptied.tank && (find_place(piece, batteries, no_other, &place) ||
                                        is_bare_thing(message, batteries, &place));
    if (!emptied.tank && !emptied.battery) {
        return emptied;
    }
    emptied.somebody_too = tells_of_somebody(piece, &place);
    if (!no_other && !is_pressing && tells_no_need(message)) {
        return (struct emptied){.somebody_too = emptied.somebody_too};
    }
    emptied.nothing_else = (no_other || is_pressing) && !tells_seen_to(message) &&
                           !tokens_have(message, from_backup) &&
                           (no_other || !tells_other_at_hand(message));
    return emptied;
}

bool
emptied_is_all(const struct tokens *without_empty)
{
    size_t i;

    for (i = 0; i < without_empty->count; i++) {
        if (without_empty->list[i].kind == TOKEN_WORD && !token_among(without_empty, i, between) &&
            !token_among(without_empty, i, batteries) && !token_among(without_empty, i, tanks)) {
            return false;
        }
    }
    return true;
}
