/*
 * Where they are, told in an open emergency: an address, a room, a road, a gate's code, or in words
 * where that was asked for. Whoever calls the emergency number for them needs it.
 */
#include <string.h>

#include "found.h"
#include "steps.h"

/* Before a number: "cabin 14", "cuarto 212", "hwy 24". */
static const char numbered[] =
    " cabin cabins room rm apt apartment condo suite ste lot site campsite space building bldg "
    "chalet house villa townhouse yurt trailer floor highway hwy route rt exit km kilometer "
    "kilometro milepost marker loop street cabana cabanas cuarto habitacion hab depto departamento "
    "apartamento piso edificio casa lote sitio calle carretera autopista salida manzana interior "
    "numero bungalow posada ";
/* Behind a number, a few words between: "22 aspen ct". */
static const char streets[] =
    " st street rd road dr drive ln lane ave avenue blvd ct court cir circle trail trl highway hwy "
    "pl terrace pkwy parkway loop pike alley square plaza calle avenida ";
static const char not_between[] =
    " the a of in on out to and my his her our your is for at min mins minutes hour hours miles "
    "mile ft feet percent years year batteries battery people hr hrs de en y con el la . ? ! % ";
static const char measures[] = " min mins minutes minutos hour hours horas percent degrees grados "
                               "feet ft people personas years anos % ";
static const char codes[] =
    "gate code|door code|lock code|entry code|lockbox code|code is|code for the gate|gate is "
    "open|codigo de la puerta|codigo del porton|codigo de entrada|codigo es|clave de la puerta|"
    "clave del porton";
static const char address_is[] = "address is|my address|our address|mi direccion|"
                                 "nuestra direccion|direccion es|la direccion";
/* "We are at the", and then what one can find. */
static const char we_are[] =
    "we are at|we are in|we are on|we are by|we are near|we are behind|we are past|we are above|we "
    "are below|we are across|we are next to|we are outside|we are up|we r at|we r in|were at|"
    "were in|im at|im in|im on|im by|i am at|i am in|i am by|hes in|hes at|shes in|shes at|he is "
    "in|he is at|she is in|she is at|its at|staying at|staying in|parked at|parked in|located at|"
    "estamos en|estamos arriba|estamos abajo|estamos frente|estamos junto|estamos pasando|estoy "
    "arriba|estoy abajo|estoy frente|estamos por|estamos atras|estamos cerca|estoy en|estoy "
    "por|esta en|hospedados en|"
    "hospedada en|hospedado en|nos quedamos en|vivimos en|aqui en";
static const char found_there[] =
    " lodge hotel motel inn resort cabin condo house lobby desk lot campground trailhead lift "
    "gondola village restaurant store station condo bar library visitor center lake road street "
    "park room bathroom kitchen garage basement pool tub sauna chalet trailer rv campsite floor "
    "hallway stairs elevator parking slope run trail pass bridge recepcion cabana casa cuarto "
    "habitacion bano cocina estacionamiento campamento restaurante tienda gasolinera telesilla "
    "mirador posada refugio calle camino lago parque centro pasillo escaleras elevador piso bosque "
    "loma puente hill barn driveway rancho pueblo iglesia alberca porton sotano cochera ";
static const char floors[] = "nd floor|rd floor|th floor|st floor|second floor|third floor|first "
                             "floor|ground floor|top floor|segundo piso|tercer piso|primer piso|"
                             "planta baja";

/* Of such a place something else is told: "the desk cant call". */
static const char tells_otherwise[] =
    " is its was are busy cant can cannot not no dont wont closed called call calls calling lady "
    "helping helps said says came comes has have he she esta no puede llamar llamo dice dijo "
    "cerrado cerrada ocupado viene vino ";

static bool
is_numbered_at(const struct tokens *tokens, size_t at)
{
    static const char letters[] = " b c d e f g h ";
    size_t next = at + 1;

    while (token_among(tokens, next, " # number no num nr numero is ")) {
        next++;
    }
    if (token_is(tokens, at, "unit")) { /* of a house, unless it is ours */
        return token_among(tokens, next, letters);
    }
    return token_among(tokens, at, numbered) && next < tokens->count &&
           (tokens->list[next].kind == TOKEN_NUMBER || token_among(tokens, next, letters)) &&
           !token_among(tokens, next + 1, measures);
}

static bool
is_street_at(const struct tokens *tokens, size_t at)
{
    enum { BETWEEN = 4 };
    size_t next = at + 1;

    if (tokens->list[at].kind != TOKEN_NUMBER || token_among(tokens, next, not_between)) {
        return false;
    }
    for (; next < at + BETWEEN && next < tokens->count; next++) {
        if (token_among(tokens, next, streets)) {
            return next > at + 1;
        }
        if (token_among(tokens, next, not_between)) {
            return false;
        }
    }
    return false;
}

/* "39.6403", as a phone gives it. */
static bool
is_coordinate_at(const struct tokens *tokens, size_t at)
{
    enum { DIGITS = 4 };
    const char *text = tokens->list[at].text;
    size_t point = strcspn(text, ".,");

    return tokens->list[at].kind == TOKEN_NUMBER && strlen(text) > point + DIGITS;
}

static bool
is_with_found_there(const struct tokens *tokens)
{
    enum { NEAR = 7 };
    size_t i, taken;

    for (i = 0; i < tokens->count; i++) {
        taken = tokens_phrase_at(tokens, i, we_are);
        if (taken > 0 && tokens_between_among(tokens, i + taken, i + taken + NEAR, found_there)) {
            return true;
        }
    }
    return false;
}

bool
place_told(const struct asked *asked)
{
    enum { SHORT = 8 };
    const struct tokens *tokens = &asked->tokens;
    size_t i;

    for (i = 0; i < tokens->count; i++) {
        if (is_numbered_at(tokens, i) || is_street_at(tokens, i) || is_coordinate_at(tokens, i)) {
            return true;
        }
    }
    if (tokens_have(tokens, "?|cree|piensa|thinks|believes")) {
        return false;
    }
    return tokens_have(tokens, codes) || tokens_have(tokens, floors) ||
           tokens_have(tokens, address_is) || tokens_any_among(tokens, 0, " http https ") ||
           is_with_found_there(tokens) ||
           /* such texts were answered with "Text us where you are" */
           (found_alerted_because(asked->context, "help:") && tokens->count <= SHORT &&
            !tokens_any_among(tokens, 0, tells_otherwise) &&
            tokens_any_among(tokens, 0, found_there));
}
