/* When batteries are full, what they have by a time, and a plan for the night. */
#include "charge_time_parts.h"

#include <assert.h>
#include <string.h>

#include "memory.h"
#include "outlet.h"
#include "steps.h"

static const char charge_time[] = "charge-time";

enum { MINUTE_S = 60, FULL = 100, FAST = 80, FREEZING_CELSIUS = 0 };

static const char asks_time[] =
    "how long|how much time|how many hours|how many minutes|when|what time|by what|will * be|"
    "what will|what do i have|full by|charged by|til|till|until|long|cuanto|cuando|a que hora|"
    "cuantas horas|alcanzan|alcanza|llenas a|llenas para|cargadas para";
static const char asks_plan[] =
    "plan for tonight|plan for the night|plan tonight|charging plan|charge plan|plan to charge|"
    "plan for charging|charging schedule|schedule for tonight|order to charge|which order|"
    "what order|what will i have by|what will we have by|what do i have by|what will i have at|"
    "plan para esta noche|plan para la noche|plan de carga|plan para cargar|en que orden|"
    "que voy a tener|que voy a tener a|que tendre|con cuanto amanezco";
static const char says_running[] =
    "while it runs|while its running|while running|while it is running|while its on|while it is on|"
    "while i use it|while im using|while using|while wearing|while im on it|while it works|"
    "while * breathe|unit on|machine on|con el equipo encendido|encendido|prendido|"
    "mientras lo uso|mientras funciona|en uso|mientras duermo|while i sleep|while im asleep";
static const char says_off[] =
    "unit off|unit is off|machine off|machine is off|turned off|"
    "switched off|its off|not running|not using it|con el equipo apagado|"
    "apagado|apagada|sin usar";

static const char says_apart[] =
    "in the charger|in its charger|separate charger|external charger|outside charger|"
    "charging station|desktop charger|en el cargador|cargador aparte|cargador externo";

/* ---- what is asked --------------------------------------------------------------------------- */

static bool
asks_for_plan(const struct tokens *tokens)
{
    return tokens_have(tokens, asks_plan);
}

/* "Both charged before we leave": by when is not told. */
static bool
is_untimed(const struct told *told)
{
    return (told->missing & MISSING_READY_BY) != 0 && !told->has_ready_by;
}

static bool
is_time_asked(const struct tokens *tokens, const struct told *told)
{
    return told->has_ready_by || is_untimed(told) || told->leg_count > 0 ||
           tokens_have(tokens, asks_time);
}

/* "How many hours if both are full?" asks for hours, whatever page is nearest. */
static bool
is_all_full(const struct told *told)
{
    size_t i;

    for (i = 0; i < told->charge_count; i++) {
        if (told->charges[i].low < FULL) {
            return false;
        }
    }
    return told->charge_count > 0 && told->light_count == 0;
}

/* These words ask for a charging sum; what they tell of batteries is in `told`. */
static bool
is_asked(const struct asked *asked, const struct tokens *tokens, const struct told *told,
         bool is_kind)
{
    if (asks_for_plan(tokens)) {
        return true;
    }
    return (is_kind || (asked_is_surely_about(asked, charge_time) && told_has_charge(told) &&
                        !is_all_full(told))) &&
           is_time_asked(tokens, told) &&
           (told_has_charge(told) || told->has_ready_by || told->count > 0 ||
            (told->missing & MISSING_AM_PM) != 0);
}

/* A piece that only tells charges belongs to the question that stands beside it. */
static bool
only_tells(const struct asked *asked)
{
    return told_has_charge(asked->told) && !tokens_have(&asked->tokens, "?") &&
           !is_time_asked(&asked->tokens, asked->told);
}

/* ---- what there is to charge with ------------------------------------------------------------ */

static void
add_place(struct charge_sum *sum, enum charge_place place, const struct charge_minutes *rate)
{
    if (rate->known && sum->place_count < CHARGING_PLACES_MAX) {
        sum->is[sum->place_count] = place;
        sum->places[sum->place_count++] = *rate;
    }
}

/* Watts of the unit in the mode that drains most of those ordered; 0 if a figure is not known. */
static int
running_watts(const struct asked *asked, const struct told *told)
{
    const struct running running = running_now(asked->rental, asked->equipment, told);

    return running.figure == NULL ? 0 : running.figure->watts;
}

/* In the car only the unit charges, and only as fast as outlet and cord give. */
static void
find_car(const struct asked *asked, struct charge_sum *sum)
{
    const struct equipment *unit = asked->equipment;
    bool running = unit->car.both_at_once;
    const struct charge_minutes *rate = running ? &unit->charging_running : &unit->charging_off;
    int watts, unit_watts = running ? running_watts(asked, sum->told) : 0;

    if (!rate->known || (running && unit_watts == 0)) {
        return;
    }
    watts = outlet_charge_watts(unit, rate);
    if (watts > 0 && unit->car.amps_limit > 0 &&
        outlet_feeds(unit->car.amps_limit, watts + unit_watts)) {
        sum->fuse_amps = outlet_fuse_amps(watts + unit_watts);
        add_place(sum, running ? PLACE_RUNNING : PLACE_OFF, rate);
    }
}

static int
full_minutes(const struct charge_sum *sum, const struct charge_minutes *places, size_t count)
{
    struct charging_plan plan;

    charging_plan(sum->charges.list, sum->charges.count, places, count, FULL, &plan);
    return plan.all_done.high;
}

static void
add_chargers(const struct asked *asked, struct charge_sum *sum)
{
    int i;

    for (i = 0; i < asked->rental->chargers; i++) {
        add_place(sum, PLACE_APART, &asked->equipment->charging_apart);
    }
}

/*
 * Oxygen goes first: unless they say that the unit is off, it counts as running, which takes
 * longer. Nor do their chargers count unless they say so, or are told what to put where.
 */
static void
find_wall(const struct asked *asked, struct charge_sum *sum)
{
    const struct equipment *unit = asked->equipment;
    bool off = tokens_have(&asked->tokens, says_off);
    bool running = tokens_have(&asked->tokens, says_running);
    struct charge_sum more;

    if (tokens_have(&asked->tokens, says_apart)) {
        add_chargers(asked, sum);
        return;
    }
    if (unit->charging_running.known && !off) {
        add_place(sum, PLACE_RUNNING, &unit->charging_running);
    } else if (!running) {
        add_place(sum, PLACE_OFF, &unit->charging_off);
    }
    more = *sum;
    add_chargers(asked, &more);
    if (sum->for_plan || sum->place_count == 0) {
        *sum = more;
        return;
    }
    if (more.place_count > 1) {
        sum->apart_minutes = full_minutes(&more, more.places, more.place_count);
    }
    if (sum->is[0] == PLACE_RUNNING && !running && unit->charging_off.known) {
        sum->off_minutes = full_minutes(sum, &unit->charging_off, 1);
    }
}

static bool
is_from_car(const struct told *told)
{
    size_t i;

    for (i = 0; i < told->leg_count; i++) {
        if (told->legs[i].power == POWER_SOURCE_CAR) {
            return true;
        }
    }
    return told->on_power == POWER_SOURCE_CAR;
}

static int
until_night(const struct asked *asked)
{
    const struct zone *zone = asked->context->zone;
    struct local_time local = zone_local(zone, asked->context->now_utc_s);
    int before_morning =
        local.hour * MINUTE_S + local.minute + 24 * MINUTE_S - NIGHT_FROM_HOUR * MINUTE_S;

    return before_morning < NIGHT_MINUTES ? -before_morning : 24 * MINUTE_S - before_morning;
}

/* ---- what must be asked back ----------------------------------------------------------------- */

/* "All are empty": as many as the record has. */
static bool
spread_over_record(const struct asked *asked, struct told *told)
{
    size_t count = asked->rental->battery_count;

    if ((told->missing & MISSING_HOW_MANY) == 0 || !told_has_charge(told)) {
        return true;
    }
    if (told->charge_count != 1 || told->light_count > 0 || count == 0) {
        return false;
    }
    while (told->charge_count < count && told->charge_count < TOLD_BATTERIES_MAX) {
        told->charges[told->charge_count++] = told->charges[0];
    }
    return true;
}

static bool
ask_what_lacks(const struct asked *asked, struct verdict *verdict, struct told *told)
{
    const char *text = NULL;

    if (!spread_over_record(asked, told) || !told_has_charge(told) || told->count > 0) {
        text = estimate_say(asked, SAY_WHICH_CHARGE, "");
    } else if (estimate_too_many(asked, verdict, told, charge_time)) {
        return true;
    } else if ((told->missing & MISSING_AM_PM) != 0) {
        text = estimate_say(asked, SAY_WHICH_HALF_OF_DAY, NULL);
    } else if (is_untimed(told) && !tokens_have(&asked->tokens, asks_time)) {
        text = estimate_say(asked, SAY_BY_WHEN, say_read(asked->arena, asked->language, told));
    }
    if (text != NULL) {
        estimate_ask_back(asked, verdict, told, charge_time, text);
    }
    return text != NULL;
}

/* ---- too cold or too hot --------------------------------------------------------------------- */

static int
fahrenheit(int celsius)
{
    return (celsius * 9 + 5 * 32) / 5;
}

/* The first number above or below which no battery of this unit is charged; false if it is neither.
 */
static bool
says_temperature_forbids(const struct asked *asked, const struct told *told, const char **text)
{
    const struct temperatures *allowed = &asked->equipment->charging;
    int low = allowed->known && allowed->low_celsius > FREEZING_CELSIUS ? allowed->low_celsius
                                                                        : FREEZING_CELSIUS;
    bool too_cold = (told->celsius.told && told->celsius.value < low) ||
                    (told->fahrenheit.told && told->fahrenheit.value < fahrenheit(low));
    bool too_hot =
        allowed->known &&
        ((told->celsius.told && told->celsius.value > allowed->high_celsius) ||
         (told->fahrenheit.told && told->fahrenheit.value > fahrenheit(allowed->high_celsius)));
    int limit = too_cold ? low : allowed->high_celsius;

    if (too_cold || too_hot) {
        *text = say(asked->arena, asked->context->house, asked->language,
                    too_cold ? SAY_TOO_COLD : SAY_TOO_HOT, memory_format(asked->arena, "%d", limit),
                    memory_format(asked->arena, "%d", fahrenheit(limit)), NULL);
    }
    return too_cold || too_hot;
}

/* ---- the answer ------------------------------------------------------------------------------ */

static void
add_plain(const struct asked *asked, struct verdict *verdict, const struct told *told,
          const char *text)
{
    estimate_add(asked, verdict, ANSWER_ESTIMATE, ROUTE_ANSWER, told, charge_time, charge_time)
        ->text = text;
}

/* Until when a plan goes: the time told, or the end of the night. False if that time is past. */
static bool
plan_until(const struct asked *asked, const struct charge_sum *sum, int *until)
{
    int64_t utc_s;

    *until = sum->night_from + NIGHT_MINUTES;
    if (sum->told->has_ready_by) {
        if (!estimate_ready_by(asked, sum->told, &utc_s)) {
            return false;
        }
        utc_s = (utc_s - asked->context->now_utc_s) / MINUTE_S;
        *until = utc_s > TIMETABLE_MINUTES_MAX ? TIMETABLE_MINUTES_MAX : (int)utc_s;
    }
    return true;
}

static void
fill_answer(const struct asked *asked, const struct charge_sum *sum, int until,
            struct answer *answer)
{
    const struct told *told = sum->told;

    if (sum->full.count == 0) {
        answer->text = estimate_say(asked, SAY_ALL_ARE_FULL, NULL);
    } else if (told->leg_count == 1 && told->legs[0].power != POWER_SOURCE_NONE) {
        charge_say_after(asked, sum, told->legs[0].minutes, answer);
    } else if (told->has_ready_by || asks_for_plan(&asked->tokens)) {
        charge_say_plan(asked, sum, until, answer);
    } else {
        charge_say_when(asked, sum, answer);
    }
}

static const char *
assumptions(const struct charge_sum *sum)
{
    return sum->from_car                 ? "car"
           : sum->is[0] == PLACE_RUNNING ? "wall; unit running"
           : sum->is[0] == PLACE_OFF     ? "wall; unit off"
                                         : "wall; charger";
}

static void
say_past(const struct asked *asked, struct verdict *verdict, const struct told *told)
{
    int64_t midnight_s = asked->context->now_utc_s;
    struct local_time local = zone_local(asked->context->zone, midnight_s);

    local.hour = told->ready_by / MINUTE_S;
    local.minute = told->ready_by % MINUTE_S;
    estimate_ask_back(asked, verdict, told, charge_time,
                      estimate_say(asked, SAY_THAT_IS_PAST,
                                   say_clock(asked->arena, asked->context->zone,
                                             zone_utc(asked->context->zone, &local))));
}

static void
answer_sum(const struct asked *asked, struct verdict *verdict, struct charge_sum *sum)
{
    struct answer *answer;
    int until;

    charging_plan(sum->charges.list, sum->charges.count, sum->places, sum->place_count, FULL,
                  &sum->full);
    charging_plan(sum->charges.list, sum->charges.count, sum->places, sum->place_count, FAST,
                  &sum->to_80);
    if (!plan_until(asked, sum, &until)) {
        say_past(asked, verdict, sum->told);
        return;
    }
    answer = estimate_add(asked, verdict, ANSWER_ESTIMATE, ROUTE_ANSWER, sum->told, charge_time,
                          charge_time);
    fill_answer(asked, sum, until, answer);
    estimate_attach_plain(asked, answer, ESTIMATE_CHARGING, sum->full.all_done,
                          (int)sum->charges.count, assumptions(sum));
}

bool
estimate_charging(const struct asked *asked, struct verdict *verdict, const struct told *told)
{
    const struct percent unknown = {0, 100};
    struct told counted = *told;
    struct charge_sum sum = {.told = &counted, .from_car = is_from_car(told)};
    const struct topic *car = kb_topic(asked->context->kb, "charge-car", asked->language);
    const char *text;

    if (asked->rental == NULL || asked->equipment == NULL) {
        return false;
    }
    if (says_temperature_forbids(asked, told, &text)) {
        add_plain(asked, verdict, told, text);
        return true;
    }
    if (sum.from_car && asked->equipment->car.known && !asked->equipment->car.charges &&
        car != NULL) {
        topics_answer(asked, verdict, car); /* it says so */
        return true;
    }
    if (ask_what_lacks(asked, verdict, &counted)) {
        return true;
    }
    if (!estimate_charges(&counted, asked->equipment, unknown, &sum.charges)) {
        estimate_ask_back(asked, verdict, told, charge_time,
                          estimate_say(asked, SAY_WHICH_CHARGE, ""));
        return true;
    }
    estimate_remember(asked, verdict, &counted);
    sum.night_from = until_night(asked);
    sum.for_plan = told->has_ready_by || asks_for_plan(&asked->tokens);
    if (sum.from_car) {
        find_car(asked, &sum);
    } else {
        find_wall(asked, &sum);
    }
    if (sum.place_count == 0) {
        estimate_to_person(asked, verdict, told, charge_time,
                           estimate_say(asked, SAY_NO_CHARGE_FIGURE, NULL), ALERT_OFFICE,
                           "power:no-charge-figure", "charging time?");
        return true;
    }
    answer_sum(asked, verdict, &sum);
    return true;
}

/* The whole text asks for it, and this piece of it only tells the charges. */
static bool
is_part_of_question(const struct asked *asked, const struct told *told)
{
    struct tokens whole;

    if (!only_tells(asked)) {
        return false;
    }
    whole = tokens_read(asked->arena, asked->message->text);
    return is_asked(asked, &whole, told, told->kind == TOLD_CHARGING);
}

bool
charge_time_decide(const struct asked *asked, struct verdict *verdict)
{
    struct told told;
    bool is_kind = estimate_read(asked, TOLD_CHARGING, &told);

    if (told.impossible ||
        (!is_asked(asked, &asked->tokens, &told, is_kind) && !is_part_of_question(asked, &told)) ||
        equipment_trouble_told(asked) != TROUBLE_NONE) {
        return false;
    }
    if (estimate_is_said(verdict, charge_time)) {
        return true;
    }
    if (asked->which_rental) {
        open_question_which_rental(asked, verdict, charge_time);
        return true;
    }
    return estimate_charging(asked, verdict, &told);
}
