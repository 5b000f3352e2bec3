/* How many batteries a flight takes: 14 CFR 382.133 and 49 CFR 175.10 (power/flight.h). */
#include <assert.h>
#include <string.h>

#include "estimate_parts.h"
#include "flight.h"
#include "memory.h"
#include "steps.h"

static const char fly[] = "fly";

enum { HOUR_S = 3600, SOON_S = 12 * HOUR_S, FULL = 100, SHORT_TEXT = 8 };

static const char of_batteries[] = "battery|batteries|batt|batts|bats|pack|packs|spare|spares|"
                                   "bateria|baterias|pila|pilas|enough|alcanza|alcanzan|suficiente|"
                                   "suficientes";
static const char how_many[] =
    "how many batteries|how many batts|how many bats|how many packs|how many spares|"
    "how much battery|enough batteries|cuantas baterias|cuantas pilas|cuanta bateria|"
    "suficientes baterias";
static const char starts_soon[] = "today|tonight|right now|at the gate|at gate|boarding|board in|"
                                  "at the airport|hoy|esta noche|abordando|en el aeropuerto";

/* What a flight comes to. */
struct flight_sum {
    int gates[TOLD_LEGS_MAX];
    size_t flights;
    int gate_minutes, ground_minutes; /* of all */
    int need_minutes;
    struct ground ground; /* what runs in flight, and the need as its time */
    int needed, has;      /* batteries */
};

static bool
has_minutes(const struct told *told)
{
    size_t i;

    for (i = 0; i < told->leg_count; i++) {
        if (told->legs[i].kind == LEG_FLIGHT) {
            return true;
        }
    }
    return told->flight_minutes > 0;
}

/* A wait counts though it has a plug, which may be taken; a drive on the car's power does not. */
static bool
add_up(const struct told *told, struct flight_sum *sum)
{
    size_t i;

    if (told->flight_minutes > 0) {
        sum->gates[sum->flights++] = told->flight_minutes;
    }
    for (i = 0; i < told->leg_count && sum->flights < TOLD_LEGS_MAX; i++) {
        const struct told_leg *leg = &told->legs[i];

        if (leg->kind == LEG_FLIGHT) {
            sum->gates[sum->flights++] = leg->minutes;
        } else if (leg->power != POWER_SOURCE_CAR) {
            sum->ground_minutes += leg->minutes;
        }
    }
    for (i = 0; i < sum->flights; i++) {
        if (sum->gates[i] > FLIGHT_MINUTES_MAX) {
            return false;
        }
        sum->gate_minutes += sum->gates[i];
    }
    sum->need_minutes = flight_need(sum->gates, sum->flights, sum->ground_minutes);
    return true;
}

/* ---- what must be asked back ----------------------------------------------------------------- */

static bool
ask_what_lacks(const struct asked *asked, struct verdict *verdict, const struct told *told)
{
    char *text = memory_copy(asked->arena, "");

    if (told->flight_is_gate && has_minutes(told)) {
        return false;
    }
    if (has_minutes(told) && !told->flight_is_air) {
        estimate_append(&text, estimate_say(asked, SAY_IS_IT_GATE,
                                            say_read(asked->arena, asked->language, told)));
    } else {
        if (told->flight_is_air) {
            estimate_append_read(asked, told, &text);
            estimate_append(&text, estimate_say(asked, SAY_AIR_IS_LEAST, NULL));
        }
        estimate_append(&text, estimate_say(asked, SAY_ASK_GATE_TO_GATE, NULL));
    }
    estimate_ask_back(asked, verdict, told, fly, text);
    return true;
}

/* ---- how many batteries ---------------------------------------------------------------------- */

/* The order for flying, whatever else they name. */
static bool
find_order(const struct asked *asked, const struct told *told, struct flight_sum *sum)
{
    struct told in_flight = *told;
    struct told ordered = {.has_activity = true, .activity = ACTIVITY_FLIGHT};
    bool differs;

    in_flight.has_activity = true;
    in_flight.activity = ACTIVITY_FLIGHT;
    differs = running_now(asked->rental, asked->equipment, &in_flight).is == RUNNING_DIFFERS;
    sum->ground = (struct ground){
        .told = *told,
        .running = running_now(asked->rental, asked->equipment, &ordered),
        .time = {sum->need_minutes, sum->need_minutes},
    };
    return differs;
}

/* By the maker's estimate and by our own low end, the more of the two. False without a figure. */
static bool
count_batteries(const struct asked *asked, const struct told *told, struct flight_sum *sum)
{
    const struct percent full = {FULL, FULL};
    const struct run_time *figure = sum->ground.running.figure;
    int retired = asked->equipment->retirement_health;
    struct charges charges;
    struct told counted = *told;
    int lasts[BATTERY_SET_MAX], another, by_maker = 0;

    if (told_batteries(told) == 0) {
        counted.count = (int)asked->rental->battery_count;
    }
    if (figure == NULL || !estimate_charges(&counted, asked->equipment, full, &charges)) {
        return false;
    }
    another = battery_time(figure->lasts, (struct percent){retired, retired}, full).low;
    if (another == 0 || figure->lasts.low == 0) {
        return false;
    }
    if (charges.count > 0 &&
        !battery_set_lasts(asked->rental, asked->equipment, figure->lasts, charges.list,
                           charges.count, asked->wrote_utc_s, lasts)) {
        return false;
    }
    sum->has = (int)charges.count;
    sum->needed = flight_batteries(sum->need_minutes, lasts, charges.count, another);
    if (figure->makers_figure) {
        by_maker = flight_batteries(sum->need_minutes, NULL, 0, figure->lasts.low);
    }
    sum->needed = by_maker > sum->needed ? by_maker : sum->needed;
    return true;
}

/* ---- the answer ------------------------------------------------------------------------------ */

static bool
is_soon(const struct asked *asked, const struct told *told)
{
    int64_t utc_s;

    return tokens_have(&asked->tokens, starts_soon) || (told->has_day && told->day == DAY_TODAY) ||
           (told->has_ready_by && estimate_ready_by(asked, told, &utc_s) &&
            utc_s - asked->context->now_utc_s <= SOON_S);
}

static enum alert_level
level_of_short(const struct asked *asked, const struct told *told)
{
    return is_soon(asked, told) ? ALERT_URGENT : ALERT_OFFICE;
}

/* What these batteries are allowed on board. False, staff called, if the flight fails on it. */
static bool
append_limits(const struct asked *asked, struct verdict *verdict, const struct flight_sum *sum,
              char **text)
{
    const struct equipment *unit = asked->equipment;
    enum watt_hours class = flight_watt_hours(unit->rated_wh, unit->volts, unit->amp_hours);
    int allowed = flight_batteries_allowed(class, unit->batteries_held);

    if (class == WATT_HOURS_APPROVAL) {
        estimate_append(text, estimate_say(asked, SAY_NEEDS_APPROVAL,
                                           memory_format(asked->arena, "%d", allowed)));
    } else if (class == WATT_HOURS_REFUSED) {
        estimate_append(text, estimate_say(asked, SAY_NOT_ON_PLANE, NULL));
    }
    if (allowed >= 0 && sum->needed > allowed) {
        estimate_append(text, estimate_say(asked, SAY_CANT_BE_DONE, NULL));
        verdict_alert(verdict, level_of_short(asked, &sum->ground.told), false,
                      "power:flight-cant-be-done", "flight not on these batteries");
        return false;
    }
    if (!unit->aircraft_label) {
        estimate_append(text, estimate_say(asked, SAY_NO_LABEL, NULL));
        verdict_alert(verdict, level_of_short(asked, &sum->ground.told), false,
                      "power:no-aircraft-label", "flight, no aircraft label");
        return false;
    }
    return true;
}

static void
append_what_they_have(const struct asked *asked, struct verdict *verdict,
                      const struct flight_sum *sum, char **text)
{
    char *has = memory_format(asked->arena, "%d", sum->has);
    int more = sum->needed - sum->has;

    if (more <= 0) {
        estimate_append(text, estimate_say(asked, SAY_HAS_ENOUGH, has));
        return;
    }
    estimate_append(text, say(asked->arena, asked->context->house, asked->language, SAY_HAS_TOO_FEW,
                              has, memory_format(asked->arena, "%d", more), NULL));
    verdict_alert(verdict, level_of_short(asked, &sum->ground.told), false, "office:extra-battery",
                  memory_format(asked->arena, "flight: %d more %s", more,
                                more == 1 ? "battery" : "batteries"));
}

static char *
needs_text(const struct asked *asked, const struct flight_sum *sum)
{
    const struct running *running = &sum->ground.running;

    return say(asked->arena, asked->context->house, asked->language, SAY_FLIGHT_NEEDS,
               say_minutes(asked->arena, sum->gate_minutes),
               say_minutes(asked->arena, sum->need_minutes),
               memory_format(asked->arena, "%d", sum->needed),
               say_mode(asked->arena, asked->language, running->figure->mode,
                        running->figure->setting_tenths),
               NULL);
}

static void
add_extras(const struct asked *asked, const struct flight_sum *sum, bool goes,
           struct answer *answer)
{
    if (sum->ground_minutes > 0) {
        estimate_extra(answer, estimate_say(asked, SAY_WITH_GROUND,
                                            say_minutes(asked->arena, sum->ground_minutes)));
    }
    if (goes) {
        estimate_extra(answer, estimate_say(asked, SAY_CALL_AIRLINE, NULL));
        estimate_extra(answer, estimate_say(asked, SAY_IN_CABIN, NULL));
    }
    if (sum->ground_minutes == 0) {
        estimate_extra(answer, estimate_say(asked, SAY_GROUND_ON_TOP, NULL));
    }
}

static void
answer_sum(const struct asked *asked, struct verdict *verdict, const struct flight_sum *sum,
           bool differs)
{
    char *text = needs_text(asked, sum);
    bool goes = append_limits(asked, verdict, sum, &text), calls = !goes || sum->needed > sum->has;
    struct answer *answer;

    if (goes) {
        append_what_they_have(asked, verdict, sum, &text);
    }
    if (differs) {
        estimate_append(&text, estimate_record_says(asked, &sum->ground.running));
        estimate_append(&text, estimate_say(asked, SAY_STAFF_WILL_CALL, NULL));
        verdict_alert(verdict, ALERT_OFFICE, false, "power:differs", "setting differs");
    }
    answer =
        estimate_add(asked, verdict, ANSWER_ESTIMATE, calls || differs ? ROUTE_STAFF : ROUTE_ANSWER,
                     &sum->ground.told, fly, fly);
    answer->text = text;
    add_extras(asked, sum, goes, answer);
    estimate_attach(asked, answer, &sum->ground, ESTIMATE_FLIGHT, sum->needed);
}

static void
no_order(const struct asked *asked, struct verdict *verdict, const struct told *told,
         const struct flight_sum *sum)
{
    char *text = say(asked->arena, asked->context->house, asked->language, SAY_FLIGHT_NO_ORDER,
                     say_minutes(asked->arena, sum->gate_minutes),
                     say_minutes(asked->arena, sum->need_minutes), NULL);

    estimate_to_person(asked, verdict, told, fly, text, level_of_short(asked, told),
                       "power:no-flight-order", "flies, no order for it");
}

/* Without a record the need can be told, and not how many batteries that is. */
static bool
of_no_record(const struct asked *asked, struct verdict *verdict, const struct told *told)
{
    struct flight_sum sum = {.flights = 0};

    bool asks = tokens_have(&asked->tokens, how_many) || asked->tokens.count <= SHORT_TEXT;

    if (!asks || !has_minutes(told) || !add_up(told, &sum)) {
        return false;
    }
    estimate_add(asked, verdict, ANSWER_TOPIC, ROUTE_ANSWER, told, fly, fly)->text =
        say(asked->arena, asked->context->house, asked->language, SAY_FLIGHT_UNKNOWN,
            say_minutes(asked->arena, sum.gate_minutes),
            say_minutes(asked->arena, sum.need_minutes), NULL);
    return true;
}

bool
estimate_flight(const struct asked *asked, struct verdict *verdict, const struct told *told)
{
    struct flight_sum sum = {.flights = 0};
    bool differs;

    if (asked->rental == NULL || asked->equipment == NULL) {
        return of_no_record(asked, verdict, told);
    }
    estimate_remember(asked, verdict, told);
    if (ask_what_lacks(asked, verdict, told)) {
        return true;
    }
    if (!add_up(told, &sum)) {
        estimate_ask_back(asked, verdict, told, fly,
                          estimate_say(asked, SAY_ASK_GATE_TO_GATE, NULL));
        return true;
    }
    differs = find_order(asked, told, &sum);
    if (sum.ground.running.is == RUNNING_NO_ORDER) {
        no_order(asked, verdict, told, &sum);
        return true;
    }
    if (!count_batteries(asked, told, &sum)) {
        estimate_to_person(
            asked, verdict, told, fly, estimate_say(asked, SAY_FLIGHT_NO_FIGURE, NULL),
            level_of_short(asked, told), "power:no-flight-figure", "batteries for a flight?");
        return true;
    }
    answer_sum(asked, verdict, &sum, differs);
    return true;
}

static bool
asks_whether_it_flies(const struct asked *asked)
{
    return tokens_have(&asked->tokens, "can i fly|can we fly|can he fly|can she fly|may i fly|"
                                       "can i take it|can it fly|ok to fly|puedo volar|"
                                       "puede volar|puedo llevar|podemos volar");
}

/* Batteries are asked for, here or in another sentence of the text; or all that flying takes, of
 * which the page would only ask for the time that is told. */
static bool
is_about_batteries(const struct asked *asked, const struct told *told)
{
    struct tokens whole;

    if (tokens_have(&asked->tokens, of_batteries) || told_batteries(told) > 0 ||
        asked->tokens.count <= SHORT_TEXT || asks_whether_it_flies(asked)) {
        return true;
    }
    whole = tokens_read(asked->arena, asked->message->text);
    return tokens_have(&whole, of_batteries);
}

bool
fly_decide(const struct asked *asked, struct verdict *verdict)
{
    struct told told;
    bool is_kind = estimate_read(asked, TOLD_FLIGHT, &told);

    if (told.kind != TOLD_FLIGHT || told.impossible ||
        (!is_kind && !tokens_have(&asked->tokens, of_batteries))) {
        return false;
    }
    if (has_minutes(&told) ? !is_about_batteries(asked, &told)
                           : !tokens_have(&asked->tokens, how_many)) {
        return false;
    }
    if (estimate_is_said(verdict, fly)) {
        return true;
    }
    if (asked->which_rental) {
        open_question_which_rental(asked, verdict, fly);
        return true;
    }
    return estimate_flight(asked, verdict, &told);
}
