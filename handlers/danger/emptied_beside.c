#include "emptied_beside.h"

#include "clause.h"
#include "emptied.h"
#include "persons.h"
#include "yes_no.h"

enum { NEAR = 3, FAR = 5 };

/* One that there is beside it. */
static const char others[] =
    " spare spares extra extras other others another otra otras otro otros "
    "repuesto repuestos ";
static const char no_other_thing[] = " vez day time night dia noche ";
const char emptied_as_well[] = "too|also|as well|tambien|tampoco|neither";
static const char is_alone[] =
    "have none|got none|have no more|have nothing else|got nothing else|nothing else left|"
    "only one i have|only one we have|only one i got|only one|no tengo mas|no tenemos mas|"
    "no hay mas|no me queda ninguna|no nos queda ninguna|no tengo ninguna|no tenemos ninguna|"
    "no queda ninguna|es la unica|era la unica|la unica que|es el unico|era el unico|"
    "el unico que|all we had|all i had";
static const char chargers[] = " charger chargers cord adapter cargador cable ";
static const char broken[] =
    " broken broke fried lost missing forgot dead quit melted roto perdido "
    "olvide quemado descompuesto ";
/* What is said of one that there is. */
static const char has_it[] =
    "have|got|ive|he has|she has|full|fully|charged|here|tengo|tenemos|traigo|traemos|hay|queda|"
    "quedan|cargada|cargado|llena|lleno|llenas|llenos|aqui";
/* Or of one that is in use. */
static const char uses_it[] =
    "with me|with us|charging|works|working|fine|good|on the other|on my other|on the spare|"
    "on my spare|on another|on the extra|using|use|switched|switch|swapped|swap|changed|put|"
    "plugged|opened|hooked|uso|usar|usando|puse|poner|pongo|meter|meterle|meto|pusimos|cambie|"
    "cambiamos|cargando|"
    "funciona|sirve|jala|abri|abrimos|conmigo|con la otra|con el otro|con otra|con otro|con la de "
    "repuesto|"
    "con el de repuesto|conecte";
/* Who asks, orders or waits for one has none, nor who has it elsewhere. */
static const char not_at_hand[] =
    " home house hotel cabin lodge room office trunk left forgot need needs bring send get gets "
    "want wants wish borrow lend loan order ordered rent buy find deliver delivered wait waiting "
    "coming come hope casa cabana cuarto oficina cajuela deje olvide olvidamos necesito "
    "necesitamos ocupo ocupamos traer traen traigan traiganme mandar mandan manden mandenme quiero "
    "quisiera prestar prestan preste presten prestenme prestas presta conseguir consigo consigueme "
    "consiga consigan pedir pedi pedimos pido dar dan den denme regalan regalen comprar compro "
    "compre espero esperando esperar falta ";
/* They ask whether there is one, or somebody else has it. */
static const char asks_for_it[] =
    " you u they anyone anybody somebody someone sister brother friend neighbor can could may "
    "might "
    "will would do does did should if how where when until cuando donde como quien alguien ustedes "
    "tienen puede pueden podria podrian vecino vecina hermana hermano amigo amiga ";
/* "I have to find another" */
static const char has_to[] = "have to|got to|has to|tengo que|tenemos que|hay que";
/* What somebody did to one that they have no more; and how or where one is that is of no use. */
static const char gave_away[] =
    " lost lose left forgot gave given sold returned lent broke dropped perdi perdimos deje "
    "dejamos "
    "olvide olvidamos devolvi devolvimos entregue entregamos regale vendi ";
static const char is_gone[] =
    " broken broke fried lost missing melted stolen stole leaking left forgot gave away returned "
    "home house hotel cabin lodge roto rota perdido perdida quemado quemada descompuesto "
    "descompuesta robaron robado robada deje dejamos olvide olvidamos devolvi devolvimos entregue "
    "entregamos casa cabana ";
static const char far_off[] =
    "on the road|on the trail|on a trail|on the highway|on the freeway|on the mountain|on the pass|"
    "at the pass|on the summit|at the summit|on the slopes|on the slope|on the lift|on a "
    "hike|hiking|"
    "driving|in the car|in my car|in our car|in the truck|in the van|in the jeep|on the bus|"
    "in the woods|in the forest|on the lake|stranded|middle of nowhere|side of the road|"
    "en el cerro|en la carretera|en el camino|en camino|en el sendero|en el monte|en la montana|"
    "en la sierra|en el carro|en el coche|en la camioneta|en el auto|en la troca|en el autobus|"
    "en el bosque|en el lago|manejando|varados|varado|varada";
/* Behind a length of way or time: "2 miles from the car", "1 hour drive", "a 2 horas del hotel". */
static const char ways[] = " mile miles mi km kms kilometers kilometres kilometros millas feet ft "
                           "pies hour hours hr hrs min mins minute minutes hora horas minuto "
                           "minutos block blocks cuadras ";
static const char leads_away[] =
    " from away drive driving walk walking hike out up down off till til "
    "until de del para a hasta caminando manejando ";
static const char places[] =
    " car truck hotel home house cabin lodge town trailhead parking camp road hospital charger "
    "outlet wall base bottom carro coche camioneta casa cabana pueblo estacionamiento campamento "
    "enchufe caminando manejando drive walk hike walking driving away ";
static const char presses[] =
    "going to die|gonna die|will die|im dying|i am dying|hes dying|shes dying|he is dying|"
    "she is dying|voy a morir|va a morir|vamos a morir|me muero|se muere|me estoy muriendo|"
    "se esta muriendo|hurry|hurry up|come quick|come fast|quick please|please quick|apurense|"
    "apurele|rapido por favor|por favor rapido|vengan rapido|urge|de prisa|"
    "how long do i have|how long does he have|how long does she have|how long do we have|"
    "how long have i got|cuanto tiempo tengo|cuanto me queda|cuanto le queda";

static const char seen_to[] =
    " plugged charging charged full fine works working running enchufada enchufado cargando cargar "
    "cargue llena llenas llenos lleno funciona queda quedan cambie cambiamos swapped ";
static const char may_be_of_person[] = " fine full works working running ";
static const char writers[] = " i im we were estoy estamos ";
/* It was so or is wished to be: it is not so now. */
static const char past_or_wished[] =
    " was were had used until before need needs want wants bring send get new era eran estaba "
    "estaban tenia antes necesito necesita necesitamos quiero ocupo traigan manden traer ";
/* They breathe from the wall, so that no battery is needed; in the past only of a night that is
 * over. */
static const char from_wall[] =
    "on the wall|on wall power|on wall plug|on house power|on the house power|en la pared|"
    "a la pared|con la corriente|con corriente de la casa";
static const char at_night[] = "overnight|last night|all night|in the night|during the night|"
                               "anoche|en la noche|toda la noche|de noche";
static const char no_wall[] =
    " no not nothing nada isnt wasnt arent doesnt dont didnt wont cant off dead loose hang hangs "
    "hanging need "
    "needs if until before when got get sin si hasta antes cuando apagado colgado necesito ";
static const char from_backup[] =
    "on the tank|on tank|on a tank|on my tank|using the tank|have the tank|have a tank|"
    "have my tank|got the tank|on backup|on the backup|on my backup|on the cylinder|con el tanque|"
    "tengo el tanque|tengo tanque|tenemos tanque|con la reserva|con el cilindro";
static const char long_ago[] = " yesterday ayer anoche ";
static const char long_ago_phrases[] = "last night|last time|la vez pasada";
static const char how_long[] = "how long|how many|cuanto|cuanta|cuantas";
/* Behind "how long": not of charging, but of them, or of help on its way. */
static const char of_them[] =
    "till|until|before|to get|to bring|can you|will you|you get|do i|do we|does he|does she|have i|"
    "can i|can he|can she|without|traer|traen|llegar|llegan|tardan|tarda en "
    "llegar|vienen|sin|puedo|"
    "puede|tengo|aguanto|aguanta";
static const char asks[] =
    "?|where|how|when|what time|can|could|do|should|will|donde|como|cuando|a que hora|a q hora|"
    "puedo|pueden";
static const char gives_back[] =
    "return|take it|bring it|turn it in|drop off|drop it off|exchange|refill|refilled|pick up|"
    "pickup|picked up|devolver|devuelvo|recoger|recogen|regresar|regreso|entregar|entrego|"
    "rellenar|rellenan|cambiar|llevo|dejo";
static const char amounts[] =
    " % percent psi bar bars light lights left more por raya rayas luces luz mas ";
static const char hours[] =
    " hour hours hr hrs h min mins minute minutes hora horas minuto minutos ";

/* ---- another one --------------------------------------------------------------------------- */

static bool
names_supply(const struct tokens *tokens, size_t at)
{
    return token_among(tokens, at, emptied_batteries) || token_among(tokens, at, emptied_tanks);
}

/* Another one is spoken of at `at`; not the one that was told to be empty itself. */
static bool
names_other(const struct tokens *tokens, size_t at)
{
    return token_among(tokens, at, others) && !token_among(tokens, at + 1, no_other_thing);
}

/* It is told at `at`, and said to be empty: "the spare tank is empty". */
static bool
is_other_empty(const struct tokens *tokens, size_t at)
{
    size_t next = at + 1;

    while (tokens_phrase_at(tokens, next, emptied_words) == 0 &&
           (token_among(tokens, next, emptied_between) || token_among(tokens, next, " one ones ") ||
            names_supply(tokens, next))) {
        next++;
    }
    return tokens_phrase_at(tokens, next, emptied_words) > 0;
}

/* "The charger isnt working", "cant charge it", "no la puedo cargar". */
static bool
tells_no_charging(const struct tokens *message)
{
    size_t i;

    for (i = 0; i < message->count; i++) {
        struct clause clause = clause_around(message, i);

        if ((token_among(message, i, chargers) && !clause_has(message, clause, emptied_owners) &&
             (clause_denies(message, clause) || clause_has(message, clause, broken))) ||
            (token_among(message, i, " charge recharge cargar carga cargue ") && i > 0 &&
             (yes_no_denies_at(message, i - 1) ||
              (token_among(message, i - 1, " puedo puede podemos ") &&
               clause_denies(message, clause))))) {
            return true;
        }
    }
    return false;
}

/* "My spare got stolen", "i gave the other away", "the spare is at the hotel"; but not of one that
 * they ask for: "can i borrow another one, i left mine at home". */
static bool
is_other_gone(const struct tokens *tokens, size_t at)
{
    struct clause clause = clause_around(tokens, at), after = {at, clause.end},
                  before = {tokens_back(at, NEAR), at};

    before.from = before.from < clause.from ? clause.from : before.from;
    return !token_among(tokens, at, " another ") && !token_is(tokens, clause.end, "?") &&
           !clause_has(tokens, clause, asks_for_it) && !clause_denies(tokens, clause) &&
           (clause_has(tokens, before, gave_away) || clause_has(tokens, after, is_gone));
}

bool
tells_no_other(const struct tokens *message)
{
    bool too = tokens_have(message, emptied_as_well);
    size_t i;

    if (yes_no_denies_one_of(message, others) || tokens_have(message, is_alone) ||
        tells_no_charging(message)) {
        return true;
    }
    for (i = 0; i < message->count; i++) {
        if (names_other(message, i) &&
            ((is_other_empty(message, i) && (too || !names_supply(message, i + 1))) ||
             is_other_gone(message, i))) {
            return true;
        }
    }
    return false;
}

/* "We have another but need the wrench", "tengo otro pero no abre". */
static bool
is_of_no_use(const struct tokens *tokens, struct clause clause)
{
    struct clause next = clause_around(tokens, clause.end + 1);

    return token_among(tokens, clause.end, " but pero ") &&
           (clause_denies(tokens, next) || clause_has(tokens, next, not_at_hand) ||
            clause_has(tokens, next, is_gone));
}

/* Its own clause says so; that it is only spoken of says nothing. */
bool
tells_other_at_hand(const struct tokens *message)
{
    size_t i;

    for (i = 0; i < message->count; i++) {
        struct clause clause = clause_around(message, i);
        bool is_asked = token_is(message, clause.end, "?") ||
                        clause_has(message, clause, asks_for_it) ||
                        clause_tells(message, clause, has_to);

        if (names_other(message, i) && !is_other_empty(message, i) && !is_other_gone(message, i) &&
            !clause_has(message, clause, not_at_hand) && !clause_denies(message, clause) &&
            !is_of_no_use(message, clause) &&
            (clause_tells(message, clause, uses_it) ||
             (!is_asked && clause_tells(message, clause, has_it)))) {
            return true;
        }
    }
    return false;
}

/* ---- how it is ------------------------------------------------------------------------------ */

/* "Plugged in but nothing", "works no more", "not charging". */
static bool
is_denied_near(const struct tokens *tokens, size_t at)
{
    size_t i;

    for (i = tokens_back(at, NEAR); i <= at + NEAR; i++) {
        if (yes_no_denies_at(tokens, i) || (i > at && token_among(tokens, i, " but pero "))) {
            return true;
        }
    }
    return false;
}

bool
tells_seen_to(const struct tokens *message)
{
    size_t i;

    for (i = 0; i < message->count; i++) {
        struct clause before = clause_around(message, i);

        before.end = i; /* who or what it is said of, and how, stands before it */
        if (token_among(message, i, seen_to) && !is_denied_near(message, i) &&
            !clause_has(message, before, past_or_wished) &&
            !clause_has(message, before, emptied_owners) &&
            !(token_among(message, i, may_be_of_person) &&
              (clause_has(message, before, person_words) ||
               clause_has(message, before, writers))) &&
            !token_among(message, i + 1, " late out low ")) {
            return true;
        }
    }
    return false;
}

/* "But i was on the wall plug". */
static bool
tells_from_wall(const struct tokens *message)
{
    size_t i;

    for (i = 0; i < message->count; i++) {
        struct clause clause = clause_around(message, i);

        if (tokens_phrase_at(message, i, from_wall) > 0 && !clause_has(message, clause, no_wall) &&
            (!clause_has(message, clause, past_or_wished) || tokens_have(message, at_night))) {
            return true;
        }
    }
    return false;
}

/* "On the tank", and "and its empty" behind it or not. */
static bool
tells_backup(const struct tokens *message, bool used_up)
{
    size_t i, words, next;

    for (i = 0; i < message->count; i++) {
        words = tokens_phrase_at(message, i, from_backup);
        next = i + words;
        while (words > 0 && tokens_phrase_at(message, next, emptied_words) == 0 &&
               (token_among(message, next, emptied_between) ||
                token_among(message, next, " , and y but pero its it thats that "))) {
            next++;
        }
        if (words > 0 && (tokens_phrase_at(message, next, emptied_words) > 0) == used_up) {
            return true;
        }
    }
    return false;
}

bool
tells_from_backup(const struct tokens *message)
{
    return tells_backup(message, false);
}

bool
tells_backup_used_up(const struct tokens *message)
{
    return tells_backup(message, true);
}

/* "1 battery at 0%, when is it full in the car?" */
static bool
asks_when_full(const struct tokens *message)
{
    return tokens_have(message, asks) &&
           tokens_have(message,
                       "full|fully|be ready|be done|ready by|all be ready|recharge|llenarse|"
                       "llenar|llena|llenas|carga completa|cargarse|cargada|cargadas|si cargo|"
                       "cuando cargo|cargo una|cargo la|cargo las|las cargo|la cargo");
}

/* "2 miles from the car", "1 hour drive to the hotel": tokens from the number at `at` on. */
static bool
is_way(const struct tokens *tokens, size_t at)
{
    size_t i;
    int thousandths;
    size_t taken = tokens_number(tokens, at, true, &thousandths);

    if (taken == 0 || !token_among(tokens, at + taken, ways)) {
        return false;
    }
    if (!token_among(tokens, at + taken + 1, leads_away)) {
        return false;
    }
    for (i = at + taken + 1; i <= at + taken + FAR; i++) {
        if (token_among(tokens, i, places)) {
            return true;
        }
    }
    return false;
}

bool
tells_pressing(const struct tokens *message)
{
    size_t i;

    if (tokens_have(message, presses)) {
        return true;
    }
    for (i = 0; i < message->count; i++) {
        if (is_way(message, i)) {
            return true;
        }
    }
    return tokens_have(message, far_off) && !asks_when_full(message);
}

/* A charge or a pressure that is left, not of a phone; nor is it hours of way, or since when. */
static bool
tells_amount(const struct tokens *message)
{
    size_t i;

    for (i = 0; i < message->count; i++) {
        struct clause near = {tokens_back(i, NEAR), i};

        if (message->list[i].kind != TOKEN_NUMBER || message->list[i].thousandths == 0 ||
            clause_has(message, near, emptied_owners)) {
            continue;
        }
        if (token_among(message, i + 1, amounts) ||
            (token_among(message, i + 1, hours) && !is_way(message, i) &&
             !token_among(message, i + 2, " ago now atras ") &&
             !(i > 0 && token_among(message, i - 1, " since for hace desde past ")))) {
            return true;
        }
    }
    return false;
}

/* Of charging or a battery's life, and not of who waits. */
static bool
asks_how_long(const struct tokens *message)
{
    return tokens_have(message, how_long) && !tokens_have(message, of_them);
}

/* An emptying that is told with its day, and no longer is. */
static bool
is_long_ago(const struct tokens *message)
{
    size_t i, words;

    for (i = 0; i < message->count; i++) {
        struct clause clause = clause_around(message, i);

        words =
            token_among(message, i, long_ago) ? 1 : tokens_phrase_at(message, i, long_ago_phrases);
        for (; words > 0 && clause.from < clause.end; clause.from++) {
            if (tokens_phrase_at(message, clause.from, emptied_words) > 0) {
                return true;
            }
        }
    }
    return false;
}

bool
tells_no_need(const struct tokens *message)
{
    return tells_amount(message) || tells_other_at_hand(message) || tells_seen_to(message) ||
           tells_from_wall(message) || is_long_ago(message) || asks_how_long(message) ||
           asks_when_full(message) ||
           (tokens_have(message, asks) && tokens_have(message, gives_back));
}
