/*
 * Power that is neither wall nor car: what the unit takes against what an inverter, a generator, a
 * power station gives (power/source.h). Seat power counts as nothing. Whatever comes of it, the
 * office is asked before it is used.
 */
#include <string.h>

#include "estimate_parts.h"
#include "flight.h"
#include "memory.h"
#include "outlet.h"
#include "source.h"
#include "steps.h"
#include "watts.h"

static const char power_source[] = "power-source";

enum kind { KIND_NONE, KIND_SEAT, KIND_BANK, KIND_GENERATOR, KIND_INVERTER, KIND_RV, KIND_ANY };

/* In this order: "the inverter in our RV" is an inverter, "the outlet of a power bank" a bank. */
static const struct {
    enum kind kind;
    const char *words;
} kinds[] = {
    {KIND_SEAT, "seat power|seat outlet|seat outlets|seat plug|seat socket|seat usb|"
                "power at the seat|power at my seat|power * seat|plug * seat|outlet * seat|"
                "outlets * seat|outlets by the seats|outlet on the plane|outlets on the plane|"
                "plane outlet|airplane outlet|plug on the plane|plug in on the plane|"
                "plane * power|power on the plane|power on board|toma del asiento|"
                "enchufe del asiento|corriente del asiento|enchufe * asiento|toma * asiento|"
                "corriente * asiento|enchufe del avion|enchufe en el avion|enchufes en el avion|"
                "corriente en el avion|toma del avion"},
    {KIND_BANK, "power bank|powerbank|power banks|battery bank|power station|powerstation|"
                "power brick|power pack|portable power|battery station|usb battery|"
                "jump starter|banco de energia|banco de bateria|banco de baterias|bateria externa|"
                "bateria portatil|cargador portatil|estacion de energia|estacion portatil|"
                "planta portatil"},
    {KIND_GENERATOR, "generator|generators|genarator|generater|genny|genset|generador|generadores|"
                     "planta electrica|planta de luz"},
    {KIND_INVERTER, "inverter|inverters|invertor|inversor|inversores"},
    {KIND_RV, "rv|rvs|camper|campervan|motorhome|motor home|houseboat|boat|campsite|camp site|"
              "campground|hookup|hook up|shore power|autocaravana|caravana|casa rodante|"
              "lancha|barco|bote|velero"},
};

static const char asks_watts[] = "watts|watt|wattage|how much power|vatios|vatiaje|cuanta potencia|"
                                 "cuanta corriente";

static const char usb_only[] = "no outlet|no outlets|no plug|without outlet|only usb|just usb|"
                               "usb only|sin toma|no tiene toma|solo usb|nada mas usb";
static const char has_no_outlet[] = "no|nope|none|not|usb|doesnt|hasnt|without|ninguna|ninguno|sin";

enum { SHORT_TEXT = 8 };

/* What there is, what it must feed. */
struct other_power {
    enum kind kind;
    struct watts_told there;
    struct running running;
    struct watts takes;
    int rating; /* watts of a source that is enough */
};

/* ---- what is asked --------------------------------------------------------------------------- */

static enum kind
kind_of(const struct asked *asked)
{
    size_t i;

    for (i = 0; i < sizeof kinds / sizeof kinds[0]; i++) {
        if (tokens_have(&asked->tokens, kinds[i].words)) {
            return kinds[i].kind;
        }
    }
    return KIND_NONE;
}

/* A source is named and power of it is spoken of, or the unit's watts are asked for. */
static bool
is_asked(const struct asked *asked, struct other_power *power)
{
    watts_read(&asked->tokens, &power->there);
    power->kind = kind_of(asked);
    if (power->there.watts == 0 && power->there.tenths_wh == 0 &&
        (asked->told->leg_count > 0 || told_has_charge(asked->told))) {
        return false; /* a trip on batteries, with or without a seat's outlet */
    }
    if (power->kind == KIND_NONE) {
        power->kind = KIND_ANY;
        return asked_is_surely_about(asked, power_source) &&
               (power->there.watts > 0 || tokens_have(&asked->tokens, asks_watts));
    }
    return asked_is_surely_about(asked, power_source) || power->there.watts > 0 ||
           power->there.tenths_wh > 0 || power->there.lacks_volts ||
           (power->kind != KIND_RV && asked->search.sureness != SURE);
}

/* ---- what the unit takes --------------------------------------------------------------------- */

/* False if the equipment file has no watts for what is ordered. */
static bool
find_takes(const struct asked *asked, struct other_power *power)
{
    const struct equipment *unit = asked->equipment;
    struct told told = *asked->told;
    int charge_watts = 0;

    told.has_mode = told.has_mode && told.has_setting; /* "300 W continuous" is no mode */
    power->running = running_now(asked->rental, unit, &told);
    if (power->running.figure == NULL || power->running.figure->watts == 0) {
        return false;
    }
    if (unit->charging_running.known) {
        charge_watts = outlet_charge_watts(unit, &unit->charging_running);
        if (charge_watts == 0) {
            return false;
        }
    }
    power->takes = source_takes(power->running.figure->watts, charge_watts);
    power->rating = outlet_inverter_watts(power->takes.high);
    return true;
}

/* ---- what is said ---------------------------------------------------------------------------- */

static void
append(const struct asked *asked, char **text, enum phrase phrase, const char *argument)
{
    estimate_append(text, estimate_say(asked, phrase, argument));
}

static char *
number(const struct asked *asked, int value)
{
    return memory_format(asked->arena, "%d", value);
}

static void
append_takes(const struct asked *asked, const struct other_power *power, char **text)
{
    const struct run_time *figure = power->running.figure;

    estimate_append(
        text, say(asked->arena, asked->context->house, asked->language, SAY_SOURCE_TAKES,
                  say_mode(asked->arena, asked->language, figure->mode, figure->setting_tenths),
                  number(asked, power->takes.high), number(asked, power->rating), NULL));
}

static void
append_there(const struct asked *asked, const struct other_power *power, char **text)
{
    int watts = power->there.watts;
    bool enough = source_is_enough(watts, power->takes);

    if (watts > 0 && !(enough && power->there.is_peak)) {
        append(asked, text, enough ? SAY_SOURCE_ENOUGH : SAY_SOURCE_SMALL, number(asked, watts));
    }
}

/* "Plan on 3 h from its 500 Wh ..." */
static void
append_lasts(const struct asked *asked, const struct other_power *power, char **text)
{
    struct minutes lasts = source_lasts(power->there.tenths_wh, power->takes);
    bool enough = source_is_enough(power->there.watts, power->takes);
    bool gives = enough && !power->there.is_peak;

    if (enough || power->there.watts == 0) {
        estimate_append(text, say(asked->arena, asked->context->house, asked->language,
                                  gives ? SAY_SOURCE_LASTS : SAY_SOURCE_LASTS_IF,
                                  say_minutes(asked->arena, lasts.low),
                                  say_tenths(asked->arena, power->there.tenths_wh), NULL));
    }
}

/* On board it is a spare battery: 49 CFR 175.10 (power/flight.h). */
static void
append_on_board(const struct asked *asked, const struct other_power *power, char **text)
{
    enum watt_hours class = flight_watt_hours(power->there.tenths_wh / 10.0, 0, 0);

    if (tokens_have(&asked->tokens, "plane|airplane|flight|fly|flying|airline|avion|vuelo|volar")) {
        append(asked, text,
               class == WATT_HOURS_REFUSED ? SAY_SOURCE_NOT_ON_BOARD : SAY_SOURCE_ON_BOARD, NULL);
    }
}

static char *
text_of(const struct asked *asked, const struct other_power *power)
{
    char *text = memory_copy(asked->arena, "");

    if (power->kind == KIND_SEAT) {
        append(asked, &text, SAY_SOURCE_SEAT, NULL);
        append_takes(asked, power, &text);
        return text;
    }
    append_takes(asked, power, &text);
    append_there(asked, power, &text);
    switch (power->kind) {
    case KIND_BANK:
        append_lasts(asked, power, &text);
        append_on_board(asked, power, &text);
        break;
    case KIND_GENERATOR:
        append(asked, &text, SAY_SOURCE_GENERATOR, NULL);
        break;
    case KIND_RV:
        append(asked, &text, SAY_SOURCE_RV, NULL);
        break;
    default:
        append(asked, &text, SAY_SOURCE_SINE, number(asked, outlet_fuse_amps(power->takes.high)));
        break;
    }
    append(asked, &text, SAY_SOURCE_ASK_US, NULL);
    return text;
}

/* ---- the answer ------------------------------------------------------------------------------ */

static void
to_person(const struct asked *asked, struct verdict *verdict, const struct running *running)
{
    char *wall_only = estimate_wall_only(asked, running, asked->told);
    char *text = memory_copy(asked->arena, wall_only != NULL ? wall_only : "");

    append(asked, &text, SAY_SOURCE_NO_FIGURE, NULL);
    estimate_to_person(asked, verdict, asked->told, power_source, text, ALERT_OFFICE,
                       "power:no-source-figure", "other power?");
}

static void
answer(const struct asked *asked, struct verdict *verdict, const struct other_power *power)
{
    bool differs = power->running.is == RUNNING_DIFFERS;
    char *text = text_of(asked, power);

    if (differs) {
        estimate_append(&text, estimate_record_says(asked, &power->running));
        verdict_alert(verdict, ALERT_OFFICE, false, "power:differs", "setting differs");
    }
    estimate_add(asked, verdict, ANSWER_ESTIMATE, differs ? ROUTE_STAFF : ROUTE_ANSWER, asked->told,
                 power_source, power_source)
        ->text = text;
}

static void
ask_watt_hours(const struct asked *asked, struct verdict *verdict, const struct other_power *power)
{
    char *text = memory_copy(asked->arena, "");

    append_takes(asked, power, &text);
    append_there(asked, power, &text);
    append(asked, &text, SAY_SOURCE_ASK_WH, NULL);
    estimate_ask_back(asked, verdict, asked->told, power_source, text);
}

bool
other_power_decide(const struct asked *asked, struct verdict *verdict)
{
    struct other_power power;

    if ((asked->rental == NULL && !asked->which_rental) || !is_asked(asked, &power)) {
        return false;
    }
    if (estimate_is_said(verdict, power_source)) {
        return true;
    }
    if (asked->which_rental) {
        open_question_which_rental(asked, verdict, power_source);
        return true;
    }
    if (asked->equipment == NULL) {
        return false;
    }
    if (!find_takes(asked, &power)) {
        to_person(asked, verdict, &power.running);
        return true;
    }
    if (power.kind == KIND_BANK && power.there.tenths_wh == 0) {
        ask_watt_hours(asked, verdict, &power);
    } else {
        answer(asked, verdict, &power);
    }
    return true;
}

/* What its label says; that it has no outlet, or nothing but USB, is an answer too. */
bool
other_power_goes_on(const struct asked *before, const struct asked *asked, struct verdict *verdict)
{
    struct watts_told there;
    struct asked both;

    watts_read(&asked->tokens, &there);
    if (!tokens_have(&asked->tokens, usb_only) &&
        (there.watts > 0 || there.tenths_wh > 0 || there.lacks_volts)) {
        open_question_close(verdict);
        both = *before;
        asked_set_text(&both, memory_format(asked->arena, "%s, %s", before->text, asked->text));
        return other_power_decide(&both, verdict);
    }
    if (asked->tokens.count > SHORT_TEXT || !tokens_have(&asked->tokens, has_no_outlet)) {
        return false;
    }
    open_question_close(verdict);
    estimate_add(asked, verdict, ANSWER_ESTIMATE, ROUTE_ANSWER, asked->told, power_source,
                 power_source)
        ->text = estimate_say(asked, SAY_SOURCE_USB_ONLY, NULL);
    return true;
}
