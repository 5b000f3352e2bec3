#include "emptied.h"

#include "clause.h"
#include "emptied_beside.h"
#include "persons.h"

const char emptied_batteries[] =
    " battery batteries batt batts bat bats batery baterys batterie battry batterys "
    "pack packs bateria baterias pila pilas pilita ";
const char emptied_tanks[] =
    " tank tanks cylinder cylinders bottle bottles backup gauge reserva respaldo tanque tanques "
    "tanquecito cilindro cilindros manometro ";
/* Behind its name, and before it. */
const char emptied_words[] =
    "died|dyed|ded|dead|empty|drained|ran out|run out|"
    "ran dry|dry|out|gone|finished|done|quit|flat|zero|0|seco|"
    "murio|murieron|muerta|muertas|muerto|acabo|acabaron|acabado|acabada|vacio|vacia|vacios|"
    "vacias|vaciaron|agoto|agotaron|agotado|agotada|agotadas|descargo|descargaron|descargada|"
    "descargadas|termino|terminaron|trono|cero";
static const char ran_out_of[] =
    "ran out of|run out of|is out of|am out of|are out of|im out of|died|empty|quede sin|"
    "quedamos sin|quedo sin|estoy sin|estamos sin|ando sin|andamos sin|sigo sin|seguimos sin|murio|"
    "murieron|acabo|acabaron|vacio|agoto|agotaron|descargo|descargaron|termino|terminaron|trono|"
    "no queda|no tiene|ya no tengo|ya no tenemos|ya no hay|ya no traigo";
const char emptied_between[] =
    " is are was were s just has have had now all completely totally both went gone reads says "
    "marks at on me us it my our the la se me nos le les ya esta estan quedo quedaron marca dice "
    "completamente totalmente toda todo todas todos ha han del de repente la el las los mi mis su "
    "sus nuestra nuestro tengo oxigeno oxygen o2 nada en a ";
/* No verb by itself: behind "what" it may be a thing, as in "que hago con el tanque vacio". */
static const char as_thing[] =
    " dead empty drained out gone flat vacio vacia vacios vacias muerta muertas muerto agotado "
    "agotada agotadas descargada descargadas ";

/* Just before it: it is not told to be so now. */
static const char supposed[] = " if whenever would will could might may should gonna almost nearly "
                               "si casi ";
/* The same, unless it is told as what happened. */
static const char at_a_time[] = " when until till before once cuando hasta antes ";
static const char yes_no_head[] = " is are was were does do did can could will would should may ";
static const char asking_head[] = " what how why which que como cual cuanto cuanta cuantas ";
static const char in_general[] =
    "what if|what happens|what does|how do i know|how can i tell|how will i know|how do you know|"
    "que pasa|que significa|que quiere decir|como se cuando|como se si|como puedo saber";

/* Whose battery or tank it is, if it is none of ours. */
const char emptied_owners[] =
    " phone phones cell cellphone cellular car cars truck trucks van vest jacket gloves heated "
    "bike "
    "ebike drill radio gps clock toy watch hearing aid aids remote laptop tablet camera flashlight "
    "smoke detector scooter jeep water propane gas fuel scuba telefono celular cel carro coche "
    "auto "
    "camioneta troca reloj control audifono audifonos linterna camara agua gasolina ";
/* These have tanks, and no batteries: "we ran out of gas battery died". */
static const char vessels[] = " water propane gas fuel scuba agua gasolina ";
static const char vehicles[] = " car cars truck van jeep scooter carro coche auto camioneta troca ";
static const char determiners[] = " the my our his her a el la mi su un una this ";

/* One of several, before its name; and one that there is beside it. */
static const char of_several[] = " spare extra other another second one otra repuesto segunda una "
                                 "primera first ";
enum { NEAR = 3, BESIDE_NAME = 2, PRONOUN_REACH = 8 };

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
    while (token_among(tokens, at, emptied_between) &&
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

/* "Now its empty", "this ones dead", "ya esta vacio" at `at`: of a supply that is named before it.
 */
static bool
pronoun_at(const struct tokens *tokens, size_t at, const char *supplies, struct place *place)
{
    static const char pronouns[] =
        "its|it is|it|it just|this one is|this ones|this one|this is|mine is|ours is|ours|"
        "ya esta|ya se|ahora esta|ya quedo|y esta|se me|se nos";
    static const char empty[] =
        "empty|dead|died|dyed|drained|flat|ran out|ran dry|run out|vacio|vacia|"
        "muerta|muerto|murio|agotado|agotada|acabo|agoto|descargo|termino";
    size_t words = tokens_phrase_at(tokens, at, pronouns), next = at + words, name;

    while (words > 0 && token_among(tokens, next, " now just all completely already ya ")) {
        next++;
    }
    words = words > 0 ? tokens_phrase_at(tokens, next, empty) : 0;
    for (name = at; words > 0 && name > tokens_back(at, PRONOUN_REACH); name--) {
        if (token_among(tokens, name - 1, supplies)) {
            *place = (struct place){.from = at, .name = name - 1, .last = next + words};
            return true;
        }
    }
    return false;
}

/* "The battery hasnt died" */
static bool
is_denied(const struct tokens *tokens, const struct place *place)
{
    bool is_behind = place->from < place->name; /* "no se acabo la pila" */
    size_t end = is_behind ? place->from : place->last - 1, near = tokens_back(end, NEAR);
    size_t from = place->from > place->name && near < place->from ? place->from : near;

    return clause_denies(tokens, (struct clause){from, end});
}

/* "How do i get the battery out", "could you run some batteries out to us" */
static bool
is_taken_out(const struct tokens *tokens, const struct place *place)
{
    return place->is_thing && token_is(tokens, place->name + 1, "out") &&
           (token_among(tokens, place->name + 2, " to here there ") ||
            stands_in(tokens, tokens_back(place->name, NEAR + 1), place->name,
                      " get got gets getting take took taking pull pulled pulling slide slid pop "
                      "popped pry remove have had keep bring brought swap put "));
}

/* "When the battery died he turned grey": it did; but not "when the battery is dead". */
static bool
happened(const struct tokens *tokens, const struct place *place)
{
    static const char verbs[] = " died ran quit went murio murieron acabo acabaron vacio agoto "
                                "agotaron descargo descargaron termino terminaron trono ";
    size_t i;

    for (i = place->from; i < place->last; i++) {
        if (token_among(tokens, i, verbs)) {
            return !tokens_have(tokens, "what do|what should|que hago|que hacemos|que se hace");
        }
    }
    return false;
}

/* "What now tank empty", "que hago se murio": they ask what to do, not of the thing. */
static size_t
asks_what_to_do(const struct tokens *tokens)
{
    size_t words = tokens_phrase_at(tokens, 0,
                                    "what now|what do i do|what do we do|what to do|"
                                    "what should i do|que hago|que hacemos|que hago ahora|"
                                    "ahora que|y ahora que hago|que hago ya");

    return token_among(tokens, words, " with about when if of for con cuando si del de ") ? 0
                                                                                          : words;
}

static bool
is_supposed(const struct tokens *tokens, const struct place *place)
{
    size_t near = tokens_back(place->from, NEAR);

    return stands_in(tokens, near, place->from, supposed) ||
           (stands_in(tokens, near, place->from, at_a_time) && !happened(tokens, place)) ||
           (token_among(tokens, 0, yes_no_head) && !token_is(tokens, 1, "you") &&
            place->from <= NEAR) ||
           tokens_have(tokens, in_general) ||
           (token_among(tokens, 0, asking_head) && place->is_thing && asks_what_to_do(tokens) == 0);
}

/* "The truck broke battery died", "ran out of gas battery died": the owner at `at` is none. */
static bool
is_told_of_owner(const struct tokens *tokens, const struct place *place, size_t at)
{
    return tokens_phrase_at(tokens, at + 1, emptied_words) > 0 ||
           token_among(tokens, at + 1, " broke stopped stuck ") ||
           (token_among(tokens, at, vessels) &&
            token_among(tokens, place->name, emptied_batteries));
}

/* "My phone battery", "se quedo sin bateria mi celular", "battery of the car"; but not "we are in
 * the car battery died". */
static bool
is_of_other_thing(const struct tokens *tokens, const struct place *place)
{
    size_t near = tokens_back(place->name, BESIDE_NAME), after = place->name + 1, i = place->name;

    if (tokens_phrase_at(tokens, near, "ice pack|ice packs") > 0) {
        return true; /* but not "stuck on black ice battery died" */
    }
    if (stands_in(tokens, near, place->name, emptied_owners)) {
        while (!token_among(tokens, i, emptied_owners)) {
            i--;
        }
        if (is_told_of_owner(tokens, place, i)) {
            return false;
        }
        while (i > 0 && token_among(tokens, i - 1, determiners)) {
            i--;
        }
        return !token_among(tokens, i - 1, " in en ");
    }
    if (place->name > place->from &&
        stands_in(tokens, tokens_back(place->from, NEAR), place->from, emptied_owners)) {
        return true;
    }
    after = place->last > after ? place->last : after;
    if (token_among(tokens, after, " of on for in de del en ")) {
        bool may_be_place = token_among(tokens, after, " in en ");

        for (after++; token_among(tokens, after, determiners); after++) {
        }
        return token_among(tokens, after, emptied_owners) &&
               !(may_be_place && token_among(tokens, after, vehicles));
    }
    return token_among(tokens, place->name + 1, determiners) &&
           token_among(tokens, place->name + 2, emptied_owners);
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
        if ((place_at(tokens, i, supplies, place) || pronoun_at(tokens, i, supplies, place)) &&
            !is_denied(tokens, place) && !is_taken_out(tokens, place) &&
            !is_supposed(tokens, place) && !is_of_other_thing(tokens, place) &&
            (several || !is_one_of_several(tokens, place))) {
            return true;
        }
    }
    return false;
}

static const char none[] = " no sin zero cero ";

/* "No battery no nothing", "ni pila ni tanque": nothing but what there is not. "No battery" is all
 * of the piece, or "nothing" is told beside it, or the tank as well. */
static bool
tells_nothing_at_all(const struct tokens *piece)
{
    static const char nothing[] = " nothing anything nada none ninguna ninguno ";
    bool is_all = false;
    size_t batteries = 0, i;

    for (i = 0; i < piece->count; i++) {
        bool is_battery = token_among(piece, i, emptied_batteries);
        bool names_all = token_among(piece, i, nothing) || token_among(piece, i, emptied_tanks);

        is_all = is_all || names_all;
        batteries += is_battery;
        if (!is_battery && !names_all && piece->list[i].kind != TOKEN_SIGN &&
            !token_among(piece, i, none) &&
            !token_among(piece, i, " ni nor and or y left at all else i we got have more mas ")) {
            return false;
        }
    }
    return batteries > 0 && is_all && token_among(piece, 0, " no sin ni ");
}

/* "All the batteries are dead", "se me acabaron todas las pilas": each that they have. */
static bool
is_told_of_all(const struct tokens *piece, const struct place *place)
{
    static const char several[] = " batteries batts bats baterys batterys packs tanks cylinders "
                                  "bottles baterias pilas tanques "
                                  "cilindros ";
    struct clause clause = clause_around(piece, place->name);

    return token_among(piece, place->name, several) &&
           clause_has(piece, clause, " all every todas todos ");
}

/* "Dead battery", "sin pila!", and nothing else in the piece. "No tank" is none: they may never
 * have had one. */
static bool
is_bare_thing(const struct tokens *piece, const char *supplies, struct place *place)
{
    size_t count = piece->count;

    *place = (struct place){.name = 1, .last = 2, .is_thing = true};
    while (count > 2 && token_among(piece, count - 1, " . ! ")) {
        count--;
    }
    if (supplies == emptied_batteries && tells_nothing_at_all(piece)) {
        return true;
    }
    return count == 2 && token_among(piece, 1, supplies) &&
           (token_among(piece, 0, as_thing) ||
            (supplies == emptied_batteries && token_among(piece, 0, none)));
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
    return token_among(tokens, i, person_words) &&
           (so_did ? i + 1 == tokens->count
                   : token_among(tokens, i + 1, " died murio ") &&
                         tokens_phrase_at(tokens, i + 2, emptied_as_well) > 0 &&
                         i + 3 >= tokens->count);
}

/* "My tank", "se me acabo", "I ran out of battery". */
static bool
is_own(const struct tokens *tokens, const struct place *place)
{
    return tokens_between_among(tokens, tokens_back(place->from, NEAR), place->last,
                                " my i im our we me mi mis nos nuestro nuestra tengo quede ");
}

static struct emptied
read_place(const struct tokens *piece, const struct place *place)
{
    struct clause clause = clause_around(piece, place->from);

    return (struct emptied){.somebody_too = tells_of_somebody(piece, place),
                            .own = is_own(piece, place),
                            .start = piece->list[clause.from].start,
                            .end = piece->list[place->last - 1].end};
}

struct emptied
emptied_read(const struct tokens *piece, const struct tokens *message)
{
    struct emptied emptied;
    struct place place;
    bool no_other = tells_no_other(message) || tells_backup_used_up(message);
    bool is_pressing = tells_pressing(message);
    bool is_tank = find_place(piece, emptied_tanks, true, &place) ||
                   is_bare_thing(piece, emptied_tanks, &place);

    if (!is_tank && !find_place(piece, emptied_batteries, no_other, &place) &&
        !is_bare_thing(piece, emptied_batteries, &place)) {
        return (struct emptied){.battery = false};
    }
    emptied = read_place(piece, &place);
    if (!no_other && !is_pressing && tells_no_need(message)) {
        return (struct emptied){.somebody_too = emptied.somebody_too};
    }
    emptied.tank = is_tank;
    emptied.battery = !is_tank;
    is_pressing = is_pressing || is_told_of_all(piece, &place) || tells_nothing_at_all(piece);
    emptied.nothing_else = (no_other || is_pressing) && !tells_seen_to(message) &&
                           !tells_from_backup(message) &&
                           (no_other || !tells_other_at_hand(message));
    return emptied;
}

bool
emptied_is_all(const struct tokens *without_empty)
{
    size_t i;

    for (i = 0; i < without_empty->count; i++) {
        if (without_empty->list[i].kind == TOKEN_WORD &&
            !token_among(without_empty, i, emptied_between) &&
            !token_among(without_empty, i, none) &&
            !token_among(without_empty, i, emptied_batteries) &&
            !token_among(without_empty, i, emptied_tanks)) {
            return false;
        }
    }
    return true;
}

bool
emptied_is_word(const char *word)
{
    struct token token = {.kind = TOKEN_WORD, .text = word};
    const struct tokens one = {.list = &token, .count = 1};

    return tokens_phrase_at(&one, 0, emptied_words) > 0 ||
           token_among(&one, 0, emptied_batteries) || token_among(&one, 0, emptied_tanks);
}
