/*
 * What they run on is told to be empty: "my battery died", "se me acabo el tanque". Nobody may
 * breathe from anything then, so a person is called and it is asked whether oxygen flows, as with a
 * unit that stopped. It is told now, of ours, and of all there is: what is only supposed, asked,
 * past or to be given back, a phone's or a car's battery, the one of several, and figures are for
 * others to answer.
 */
#include "say.h"
#include "steps.h"
#include "yes_no.h"

static const char batteries[] = " battery batteries batt batts bateria baterias pila pilas pilita ";
static const char tanks[] = " tank tanks cylinder cylinders bottle bottles gauge tanque tanques "
                            "tanquecito cilindro cilindros manometro ";
/* Behind its name, and before it. */
static const char is_empty[] =
    "died|dead|empty|drained|ran out|run out|ran dry|out|gone|finished|done|quit|flat|zero|0|"
    "murio|murieron|muerta|muertas|muerto|acabo|acabaron|acabado|acabada|vacio|vacia|vacios|"
    "vacias|vaciaron|agoto|agotaron|agotado|agotada|agotadas|descargo|descargaron|descargada|"
    "descargadas|termino|terminaron|trono|cero";
static const char ran_out_of[] =
    "ran out of|run out of|is out of|am out of|im out of|died|empty|quede sin|quedamos sin|"
    "quedo sin|murio|murieron|acabo|acabaron|vacio|agoto|agotaron|descargo|descargaron|termino|"
    "terminaron|trono|no queda|no tiene";
static const char between[] =
    " is are was were s just has have had now all completely totally both went gone reads says "
    "marks at on me us it my our the se me nos le les ya esta estan quedo quedaron marca dice "
    "completamente totalmente toda todo todas todos ha han del de repente la el las los mi mis su "
    "sus nuestra nuestro tengo oxigeno oxygen o2 nada en a ";

/* Of another time, another thing, or not of all there is. */
static const char told_otherwise[] =
    "if|when|until|till|before|once|would|will|could|might|may|should|how long|how many|yesterday|"
    "last night|last time|this "
    "morning|phone|phones|cell|car|cars|truck|trucks|van|vest|jacket|gloves|heated|bike|ebike|"
    "drill|radio|gps|clock|toy|watch|hearing|remote|laptop|"
    "tablet|camera|flashlight|smoke|scooter|jeep|water|propane|gas|fuel|scuba|return|where "
    "do|where can|take it|bring it|turn it in|donde lo|donde la|donde se|pick up|"
    "pickup|picked up|exchange|drop off|refill|refilled|plugged in|charging|charged|full|left|"
    "fine|works|working|running|si|cuando|hasta|antes|cuanto|cuanta|cuantas|como se|ayer|anoche|"
    "telefono|celular|cel|carro|coche|auto|camioneta|troca|reloj|control|audifono|linterna|camara|"
    "agua|gasolina|devolver|devuelvo|recoger|recogen|regresar|regreso|entregar|entrego|rellenar|"
    "rellenan|cambiar|cargando|cargar|cargue|enchufada|enchufado|enchufe|llena|llenas|llenos|"
    "lleno|queda|quedan|funciona|casi|almost|nearly";
static const char of_several[] = "spare|spares|extra|extras|other|others|another|second|one|otra|"
                                 "otras|repuesto|segunda|una|primera|first";
static const char asks[] = " is are does do did was que how what why esta ";

enum { DENIED_WITHIN = 3 };

/* "The battery hasnt died" */
static bool
is_denied(const struct tokens *tokens, size_t at)
{
    size_t i;

    for (i = at > DENIED_WITHIN ? at - DENIED_WITHIN : 0; i < at; i++) {
        if (yes_no_denies_at(tokens, i)) {
            return true;
        }
    }
    return false;
}

/* One of these has run out: "the tank just went empty", "se nos acabo la pila". */
static bool
tells_empty(const struct tokens *tokens, const char *supplies)
{
    size_t i, j, words;

    for (i = 0; i < tokens->count; i++) {
        if (token_among(tokens, i, supplies)) {
            for (j = i + 1;
                 tokens_phrase_at(tokens, j, is_empty) == 0 && token_among(tokens, j, between);) {
                j++;
            }
            if (tokens_phrase_at(tokens, j, is_empty) > 0 && !is_denied(tokens, j)) {
                return true;
            }
        }
        words = tokens_phrase_at(tokens, i, ran_out_of);
        for (j = i + words; words > 0 && token_among(tokens, j, between);) {
            j++;
        }
        /* "empty tank" is a thing, "died the battery" is told */
        if (words > 0 && token_among(tokens, j, supplies) && !is_denied(tokens, i) &&
            !token_is(tokens, i, "empty")) {
            return true;
        }
    }
    return false;
}

static bool
tells_figures(const struct tokens *tokens)
{
    size_t i;

    for (i = 0; i < tokens->count; i++) {
        if (tokens->list[i].kind == TOKEN_NUMBER && tokens->list[i].thousandths > 0) {
            return true;
        }
    }
    return false;
}

/* What the whole message tells beside it counts too: "murio la bateria. ya la puse a cargar". */
static enum ran_out
told_in(const struct tokens *tokens, const struct tokens *message)
{
    if (tells_figures(tokens) || token_among(tokens, 0, asks) ||
        tokens_have(message, told_otherwise)) {
        return RAN_OUT_NOTHING;
    }
    if (tells_empty(tokens, tanks)) {
        return RAN_OUT_TANK;
    }
    return tells_empty(tokens, batteries) && !tokens_have(message, of_several) ? RAN_OUT_BATTERY
                                                                               : RAN_OUT_NOTHING;
}

enum ran_out
ran_out_told(const struct asked *asked)
{
    struct tokens message = tokens_read(asked->arena, asked->message->text);
    enum ran_out told =
        told_in(&asked->tokens, asked_in_message(asked) ? &message : &asked->tokens);

    return told == RAN_OUT_NOTHING || weak_battery_told(asked) ? RAN_OUT_NOTHING : told;
}

bool
ran_out_of_backup(const struct asked *asked)
{
    static const char backups[] = " tank tanks cylinder cylinders backup tanque tanques cilindro "
                                  "cilindros reserva respaldo ";

    return yes_no_denies_one_of(&asked->tokens, backups) || ran_out_told(asked) == RAN_OUT_TANK;
}

bool
ran_out_is_all(const struct asked *asked)
{
    struct tokens rest = tokens_without(asked->arena, &asked->tokens, is_empty);
    size_t i;

    for (i = 0; i < rest.count; i++) {
        if (rest.list[i].kind == TOKEN_WORD && !token_among(&rest, i, between) &&
            !token_among(&rest, i, batteries) && !token_among(&rest, i, tanks)) {
            return false;
        }
    }
    return ran_out_told(asked) != RAN_OUT_NOTHING;
}

bool
ran_out_decide(const struct asked *asked, struct verdict *verdict)
{
    const struct house *house = asked->context->house;
    enum ran_out told = ran_out_told(asked);
    bool is_tank = told == RAN_OUT_TANK;
    const char *backup;

    if (told == RAN_OUT_NOTHING || equipment_trouble_told(asked) == TROUBLE_DANGER) {
        return false;
    }
    backup = is_tank ? NULL : say_use_backup(asked->arena, house, asked->language, asked->rental);
    verdict_add(verdict, ANSWER_OFFICE, ROUTE_EQUIPMENT, "ran-out")->text =
        say(asked->arena, house, asked->language, is_tank ? SAY_RAN_OUT_TANK : SAY_RAN_OUT_BATTERY,
            backup, NULL);
    verdict_alert(verdict, ALERT_URGENT, true, "trouble:ran-out",
                  is_tank ? "cylinder empty" : "battery empty");
    flowing_ask(asked, verdict);
    return true;
}
