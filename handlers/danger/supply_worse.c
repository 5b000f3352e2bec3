#include "supply_worse.h"

#include <string.h>

#include "clause.h"
#include "found.h"
#include "last_cylinder.h"
#include "steps.h"
#include "yes_no.h"

enum {
    SHORT_TEXT = 14,
    SIGNAL_TEXT = 9,
    LOW_PERCENT = 25,
    STUCK_PERCENT = 10,
    FEW_PERCENT = 5,
    FULL_PERCENT = 100,
    STUCK_MINUTES = 15,
    THOUSAND = 1000
};

/* ---- what was told ----------------------------------------------------------------------------
 */

struct trouble_told {
    bool any, no_plug, stopped;
};

/* `others` are reasons that name no sign. */
static bool
tells(const struct open_alert *alert, const char *const *signs, const char *const *others)
{
    bool is_told = false;

    for (; *signs != NULL; signs++) {
        is_told = is_told || found_alert_tells(alert, *signs);
    }
    for (; *others != NULL; others++) {
        is_told = is_told || strstr(alert->reasons, *others) != NULL;
    }
    return is_told;
}

/* In this conversation, and nobody has closed it: batteries last for hours. */
static struct trouble_told
told_lately(const struct asked *whole)
{
    static const char *const no_plugs[] = {"power-out-now", "last-battery", NULL};
    static const char *const no_plugs_too[] = {"trouble:last-battery", NULL};
    static const char *const stops[] = {"unit-stopped", "no-oxygen-source", NULL};
    static const char *const stops_too[] = {"trouble:stopped", "trouble:on-backup",
                                            "flowing:", NULL};
    static const char *const of_supply[] = {"cylinder-trouble", NULL};
    static const char *const of_supply_too[] = {"trouble:ran-out", "trouble:cylinder-low", NULL};
    const struct context *context = whole->context;
    struct trouble_told told = {false};
    size_t i;

    for (i = 0; i < context->alert_count && context->role != SENDER_STAFF; i++) {
        const struct open_alert *alert = &context->alerts[i];
        bool is_old = context->now_utc_s - alert->opened_utc_s > context->house->conversation_s;

        if (!is_old && alert->level >= ALERT_URGENT) {
            told.no_plug = told.no_plug || tells(alert, no_plugs, no_plugs_too);
            told.stopped = told.stopped || tells(alert, stops, stops_too);
            told.any =
                told.any || told.no_plug || told.stopped || tells(alert, of_supply, of_supply_too);
        }
    }
    return told;
}

/* ---- charges -----------------------------------------------------------------------------------
 */

/* What a bare charge stands among: "al 25", "now 10", "its at 3%", "vamos en 8". */
static const char around_charge[] =
    " al a at is its it in on now only just down to still the ya va van vamos anda esta estamos en "
    "el la por ciento percent nomas solo apenas ahora ahorita queda quedan me nos bajo like about "
    "como left says shows dice marca and y battery bateria pila ";

/* "Al 3", "down to 4", "2 left": a number so small may as well be a setting or a count, so it must
 * be led like a charge. -1 if there is no such number, or another beside it. */
static int
bare_charge(const struct tokens *tokens)
{
    enum { LEAST_CLEAR = 7 };
    int percent = -1, thousandths = 0;
    size_t i, taken;

    if (!tokens_words_among(tokens, around_charge)) {
        return -1;
    }
    for (i = 0; i < tokens->count; i += taken) {
        taken = tokens_number(tokens, i, false, &thousandths);
        if (taken == 0) {
            taken = 1;
            continue;
        }
        if (percent >= 0 || thousandths % THOUSAND != 0 || thousandths > LOW_PERCENT * THOUSAND ||
            (thousandths < LEAST_CLEAR * THOUSAND && !token_among(tokens, i + taken, " left % ") &&
             (i == 0 || !token_among(tokens, i - 1, " al to queda quedan ")))) {
            return -1;
        }
        percent = thousandths / THOUSAND;
    }
    return percent;
}

/* The fullest battery that is told, in percent; -1 if none is. One light is no more than low. */
static int
fullest(const struct asked *whole)
{
    const struct told *told = whole->told;
    int most = -1;
    size_t i;

    if (!told_has_charge(told)) {
        return bare_charge(&whole->tokens);
    }
    for (i = 0; i < told->charge_count; i++) {
        most = told->charges[i].high > most ? told->charges[i].high : most;
    }
    for (i = 0; i < told->light_count; i++) {
        int percent = told->lights[i] > 1 ? FULL_PERCENT : told->lights[i] * LOW_PERCENT;

        most = percent > most ? percent : most;
    }
    return told->count > 0 ? FULL_PERCENT : most; /* one of which no charge is told */
}

/* ---- worse -------------------------------------------------------------------------------------
 */

static const char of_other_things[] =
    "phone|cell|cellphone|laptop|tablet|watch|car|truck|van|jeep|engine|smoke|microwave|fridge|"
    "rain|snow|wifi|internet|tv|heater|elevator|lift|bus|traffic|telefono|celular|carro|coche|"
    "camioneta|lluvia|nieve|tele|refri|microondas|elevador|calefaccion|cough|bleeding|pain|crying|"
    "hiccups|tos|dolor|hipo";
static const char supposed[] = "if|what if|when should|would|should it|how do i|how long|si se|"
                               "cuando se|que pasa si|cuanto";
static const char settled[] = "no longer|not anymore|ya no|stopped beeping|stopped blinking|quit "
                              "beeping|dejo de pitar|dejo de parpadear|power is back|volvio la luz|"
                              "ya hay luz|plugged in|on the wall|enchufado|enchufada|conectado|"
                              "charging|cargando";

/* "Stopped again", "se paro otra vez", "volvio a apagarse". */
static bool
tells_stopped_again(const struct tokens *tokens)
{
    enum { NEAR = 4 };
    static const char stops[] = " stopped stops quit quits died dies dead paro para apago apaga "
                                "murio fallo apagandose parandose ";
    static const char stops_in_two[] = "shut off|shut down|shuts off|shuts down|cut out|cuts out|"
                                       "went off|turned off|gone off|no air|no oxygen|no flow|"
                                       "not working|sin aire|sin oxigeno|no sale|no funciona|"
                                       "no prende|no jala";
    static const char again[] = "again|once more|otra vez|de nuevo|nuevamente";
    static const char in_one[] = "volvio a pararse|volvio a parar|se volvio a parar|"
                                 "volvio a apagarse|se volvio a apagar|volvio a apagar|"
                                 "volvio a fallar|volvio a morir|se me volvio a apagar|"
                                 "volvio a dejar de";
    /* Of the supply only with nothing else beside it: "gone again", "se fue otra vez". */
    static const char in_short[] = "off again|down again|out again|gone again|fue otra vez|"
                                   "otra vez se fue|fue de nuevo|volvio a ir";
    static const char around_short[] =
        " off down out gone again it is its the unit machine power lights electricity just now "
        "thing went oh no se nos la luz fue otra vez de nuevo volvio a ir ya ay corriente ";
    static const char phones[] = " phone cell cellphone tablet laptop telefono celular cel movil ";
    size_t i, j;

    if (tokens_have(tokens, in_one) ||
        (tokens_have(tokens, in_short) && tokens_words_among(tokens, around_short))) {
        return true;
    }
    for (i = 0; i < tokens->count; i++) {
        if ((!token_among(tokens, i, stops) && tokens_phrase_at(tokens, i, stops_in_two) == 0) ||
            clause_has(tokens, clause_around(tokens, i), phones)) {
            continue;
        }
        for (j = tokens_back(i, NEAR); j < i + NEAR + 1; j++) {
            if (tokens_phrase_at(tokens, j, again) > 0) {
                return true;
            }
        }
    }
    return false;
}

/* "Se me acabo una", "first one died", "on the second battery now": the next may be the last. */
static bool
tells_one_used_up(const struct asked *whole)
{
    static const char last[] = "on the last|on my last|on our last|on its last|last one in|"
                               "last one now|la ultima|en la ultima|ultima pila|ultima bateria|"
                               "only one left|one left|one battery left|me queda una|nos queda una|"
                               "queda una|solo una|una sola";
    static const char one_of_two[] =
        "se me acabo una|se acabo una|se nos acabo una|ya se acabo una|se murio una|"
        "una ya se acabo|una se acabo|una ya no|se descargo una|se vacio una|gaste una|"
        "ya gaste una|se acabo la primera|se me acabo la primera|la primera se acabo|"
        "la primera ya se acabo|en la segunda|con la segunda|puse la otra|con la otra|"
        "one is dead|one is empty|one is gone|one is done|one died|one dead|one empty|one down|"
        "one gone|one ran out|one battery died|one battery is dead|one battery is empty|"
        "one battery down|one battery gone|used one up|used up one|first one died|"
        "first one is dead|first one is empty|first one is done|first one is gone|"
        "first one ran out|first battery died|first battery is dead|first battery is empty|"
        "first battery is done|first battery ran out|on the second|on second|on the other one|"
        "on the other battery|switched to the second|switched to the other|on battery two|"
        "on battery 2|put in the second|put in the other|put the other|put the second";
    bool has_more = whole->rental != NULL && whole->rental->battery_count > 2;

    return tokens_have(&whole->tokens, last) ||
           (!has_more && tokens_have(&whole->tokens, one_of_two));
}

/* "It beeps", "la otra parpadea", "red light now". */
static bool
tells_signal(const struct tokens *tokens)
{
    static const char signals[] =
        "beep|beeps|beeping|beeped|chirping|chirps|alarm|alarming|alarms|blinking|blinks|flashing|"
        "flashes|red light|red now|its red|light is red|light went red|turned red|low battery|"
        "battery low|battery is low|almost out|almost dead|almost empty|nearly out|nearly dead|"
        "nearly empty|running low|getting low|going low|very low|parpadea|parpadeando|pita|"
        "pitando|suena la alarma|esta sonando|foco rojo|luz roja|en rojo|rojo|casi se acaba|"
        "casi vacia|casi se apaga|ya casi se|poca pila|poca bateria|poca carga|bateria baja|"
        "pila baja|ya mero se|queda poco|queda poquito|le queda poca|le queda poco";

    return tokens->count <= SIGNAL_TEXT && tokens_have(tokens, signals);
}

/* "Power company says tomorrow noon", "dicen que hasta manana": hours, and no end in sight. While
 * we wait whether oxygen flows, who says so need not be told. */
static bool
tells_it_stays_out(const struct asked *whole)
{
    static const char who[] = "power company|electric company|utility|utility company|they say|"
                              "they said|they are saying|lodge says|lodge said|crew says|no power|"
                              "power wont|compania|dicen|dijeron|dice la|no hay luz|sin luz|"
                              "no vuelve|no va a volver";
    static const char or_when[] = "says|said|saying|estimate|estimated|back on|restored|power|"
                                  "electricity|until|till|hasta|luz|dice";
    static const char when[] = "tomorrow|tomorow|tmrw|noon|morning|midnight|tonight|all night|"
                               "overnight|hours|hrs|days|weekend|monday|tuesday|wednesday|thursday|"
                               "friday|saturday|sunday|manana|mediodia|en la noche|toda la noche|"
                               "de la noche|madrugada|medianoche|horas|dias|lunes|martes|miercoles|"
                               "jueves|viernes|sabado|domingo";
    const struct tokens *tokens = &whole->tokens;
    bool waits = asked_open_question(whole) == QUESTION_FLOWING;

    return tokens_have(tokens, when) && !tokens_have(tokens, "?") &&
           (tokens_have(tokens, who) || (waits && tokens_have(tokens, or_when)));
}

/* "Needle on zero", "aguja en cero". */
static bool
tells_cylinder_low(const struct asked *whole)
{
    enum { LOW_PSI = 500, LOW_BAR = 34 };
    static const char gauge[] = "needle|gauge|dial|tank|cylinder|bottle|aguja|manometro|tanque|"
                                "cilindro|reloj|marca";
    static const char at_end[] = "zero|empty|red|on e|in the red|cero|vacio|rojo|almost out|"
                                 "nearly out|almost gone|nearly gone|casi se acaba|casi vacio|"
                                 "quarter|an eighth";
    const struct told *told = whole->told;

    return (told->psi > 0 && told->psi <= LOW_PSI) ||
           (told->psi <= 0 && told->bar > 0 && told->bar <= LOW_BAR) ||
           (tokens_have(&whole->tokens, gauge) &&
            (tokens_have(&whole->tokens, at_end) || tokens_have(&whole->tokens, "at 0|on 0|en 0")));
}

/* A figure is worked with, a quarter is no figure, and other words tell of the end. */
static bool
is_at_end(const struct asked *whole)
{
    return whole->told->psi > 0 || whole->told->bar > 0
               ? last_cylinder_ends(whole)
               : !tokens_have(&whole->tokens, "quarter|an eighth");
}

/* A tank is on record, or this text has one: who is on it does not run on what is told to be low.
 */
static bool
has_backup(const struct asked *whole)
{
    static const char tanks[] = " tank tanks cylinder cylinders bottle backup tanque tanques "
                                "cilindro cilindros reserva respaldo ";

    return (whole->rental != NULL && whole->rental->backup.known &&
            whole->rental->backup.kind != NULL) ||
           (tokens_any_among(&whole->tokens, 0, tanks) &&
            !yes_no_denies_one_of(&whole->tokens, tanks));
}

static enum supply_worse
worse_with_charge(const struct asked *whole, const struct trouble_told *lately, int percent)
{
    if (percent < 0 || percent > LOW_PERCENT) {
        return SUPPLY_NOT_WORSE;
    }
    return lately->no_plug && percent <= FEW_PERCENT && !has_backup(whole) ? SUPPLY_NONE_LEFT
                                                                           : SUPPLY_LAST;
}

enum supply_worse
supply_worse_told(const struct asked *whole)
{
    const struct tokens *tokens = &whole->tokens;
    struct trouble_told lately = told_lately(whole);
    enum supply_worse charge;
    int percent;

    if (!lately.any || tokens->count > SHORT_TEXT || is_over_told(whole) ||
        tokens_have(tokens, supposed) || tokens_have(tokens, of_other_things) ||
        tokens_have(tokens, settled)) {
        return SUPPLY_NOT_WORSE;
    }
    if (tells_cylinder_low(whole)) {
        return lately.stopped && is_at_end(whole) ? SUPPLY_CYLINDER_LAST : SUPPLY_CYLINDER_LOW;
    }
    if (tells_stopped_again(tokens)) {
        return SUPPLY_STOPPED_AGAIN;
    }
    percent = fullest(whole);
    charge = worse_with_charge(whole, &lately, percent);
    if (charge != SUPPLY_NOT_WORSE || percent > LOW_PERCENT) {
        return charge;
    }
    return tells_one_used_up(whole) || tells_signal(tokens) ||
                   (lately.no_plug && tells_it_stays_out(whole))
               ? SUPPLY_LAST
               : SUPPLY_NOT_WORSE;
}

/* ---- cut off -----------------------------------------------------------------------------------
 */

/* "Dead in ten minutes", "me quedan 5 min de bateria": what ends stands near; not "2 hr 5 min". */
static bool
tells_few_minutes(const struct tokens *tokens)
{
    enum { BEFORE = 4, BEHIND = 5 };
    static const char minutes[] = " min mins minute minutes minuto minutos ";
    static const char ends[] = " dead dies die dying gone empty left remaining quits stops lasts "
                               "queda quedan acaba apaga muere dura duran ";
    static const char hours[] = " hr hrs hour hours h hora horas and y ";
    int thousandths = 0;
    size_t i, taken;

    for (i = 0; i < tokens->count; i++) {
        taken = tokens_number(tokens, i, false, &thousandths);
        if (taken > 0 && token_among(tokens, i + taken, minutes) && thousandths > 0 &&
            thousandths <= STUCK_MINUTES * THOUSAND &&
            !(i > 0 && token_among(tokens, i - 1, hours)) &&
            tokens_between_among(tokens, tokens_back(i, BEFORE), i + taken + BEHIND, ends)) {
            return true;
        }
    }
    return false;
}

static const char supplies[] = "battery|batteries|batt|bat|unit|machine|concentrator|oxygen|o2|"
                               "bateria|baterias|pila|pilas|aparato|maquina|equipo|concentrador|"
                               "oxigeno";

static const char stuck[] =
    "no plug|no plugs|no outlet|no outlets|no socket|no place to plug|nowhere to plug|"
    "nowhere to charge|no where to plug|no where to charge|no way to charge|no way to plug|"
    "cant plug|cant charge|cannot charge|no charger|no power|without power|road closed|"
    "roads closed|road is closed|roads are closed|pass closed|pass is closed|stuck|stranded|"
    "trapped|chairlift|chair lift|ski lift|gondola|snowed in|in a ditch|in the ditch|lost on|"
    "we are lost|were lost|im lost|on the trail|on a trail|no hay donde|no hay en donde|"
    "no tengo donde|no tenemos donde|sin donde|no hay enchufe|no hay enchufes|sin enchufe|"
    "no hay contacto|sin contacto|no hay luz|sin luz|atorado|atorada|atorados|atoradas|atascado|"
    "atascada|atascados|varado|varada|varados|varadas|atrapado|atrapada|atrapados|atrapadas|"
    "telesilla|telecabina|estamos perdidos|carretera cerrada|camino cerrado|cerraron la carretera|"
    "en la zanja|en una zanja|en el sendero";
static const char others_charge[] =
    "phone|cell|cellphone|laptop|tablet|watch|scooter|car battery|truck battery|celular|telefono|"
    "carro|spare|another battery|other battery|second battery|extra battery|full one|de repuesto|"
    "otra bateria|otra pila|extra|cargada|cargadas|how long|will i|if";

bool
supply_is_cut_off(const struct asked *whole)
{
    const struct tokens *tokens = &whole->tokens;
    int percent = fullest(whole);
    bool is_low =
        (whole->told->charge_count > 0 && percent >= 0 && percent <= STUCK_PERCENT) ||
        (percent <= LOW_PERCENT && tells_few_minutes(tokens) && tokens_have(tokens, supplies));

    return is_low && whole->context->role != SENDER_STAFF && tokens_have(tokens, stuck) &&
           !tokens_have(tokens, others_charge) && !has_backup(whole) && !is_over_told(whole);
}
