/*
 * Whether the batteries last a trip: played leg by leg on the low end (power/trip.h), said in a few
 * sentences: whether, where it runs short, what is left, what would mend it. What falls short is
 * called to staff, at once if they may leave within 12 hours.
 */
#include <string.h>

#include "estimate_parts.h"
#include "memory.h"
#include "steps.h"
#include "trip_plan.h"
#include "when.h"

enum { SOON_S = 12 * 3600, LEG_MINUTES_MAX = 2880 };

static const char drive_trip[] = "drive-trip";

/* One trip on its way to an answer. */
struct planned {
    const struct asked *asked;
    const struct told *told;
    struct charges charges;
    bool assumed_full;
    struct trip_plan low, high;
    struct trip_outcome outcome, best;
    enum trip_mend mend;
};

/* ---- what is missing ------------------------------------------------------------------------- */

static bool
has_legs(const struct told *told)
{
    size_t i;

    for (i = 0; i < told->leg_count; i++) {
        if (told->legs[i].minutes > LEG_MINUTES_MAX) {
            return false;
        }
    }
    return told->leg_count > 0 && told->leg_count <= TRIP_LEGS_MAX;
}

static void
ask_back(const struct asked *asked, struct verdict *verdict, const struct told *told)
{
    bool lengths = !has_legs(told);
    struct answer *answer = estimate_add(asked, verdict, ANSWER_ASK, ROUTE_ANSWER, told,
                                         lengths ? "which-legs" : "which-charge", drive_trip);

    answer->text = estimate_say(asked, lengths ? SAY_TRIP_ASK_LENGTH : SAY_WHICH_CHARGE, "");
    (void)open_question_ask(asked, verdict, QUESTION_WHICH_CHARGE);
}

/* Batteries of which no charge is asked for count as full: those told, else the record's. */
static bool
find_charges(struct planned *planned)
{
    const struct percent full = {100, 100};
    const struct rental *rental = planned->asked->rental;
    struct charges *charges = &planned->charges;

    if (!estimate_charges(planned->told, planned->asked->equipment, full, charges)) {
        return false;
    }
    planned->assumed_full = charges->count == 0;
    while (planned->assumed_full && charges->count < rental->battery_count) {
        charges->list[charges->count++] = full;
    }
    return charges->count > 0;
}

/* ---- what is said ---------------------------------------------------------------------------- */

static void
append(const struct planned *planned, char **text, enum phrase phrase, const char *argument)
{
    estimate_append(text, estimate_say(planned->asked, phrase, argument));
}

/* When they set out; 0 if it is not told. */
static int64_t
start_of(const struct planned *planned)
{
    const struct told *told = planned->told;

    return told->has_ready_by
               ? when_told(planned->asked->context->zone, planned->asked->context->now_utc_s,
                           told->ready_by, told->has_day, told->day)
               : 0;
}

static char *
mend_words(const struct planned *planned)
{
    static const enum phrase mends[] = {[TRIP_MEND_NONE] = SAY_TRIP_MEND_NONE,
                                        [TRIP_MEND_CAR_CORD] = SAY_TRIP_MEND_CAR,
                                        [TRIP_MEND_WALL_STOPS] = SAY_TRIP_MEND_WALL,
                                        [TRIP_MEND_ONE_BATTERY] = SAY_TRIP_MEND_ONE,
                                        [TRIP_MEND_TWO_BATTERIES] = SAY_TRIP_MEND_TWO};

    return estimate_say(planned->asked, mends[planned->mend], NULL);
}

/* What is told as left is so once there, not before something is charged again. */
static bool
is_left_at_end(const struct planned *planned)
{
    const struct trip_outcome *outcome = &planned->outcome;

    return outcome->least_at_end ||
           trip_left(&planned->low.trip, outcome) == outcome->margin_minutes;
}

static void
append_lasts(const struct planned *planned, char **text, enum phrase phrase)
{
    const struct asked *asked = planned->asked;
    const struct trip_outcome *outcome = &planned->outcome;
    int left = trip_left(&planned->low.trip, outcome);

    estimate_append(text, say(asked->arena, asked->context->house, asked->language, phrase,
                              say_minutes(asked->arena, outcome->total_minutes),
                              say_minutes(asked->arena, left), NULL));
}

/* Lasts, but so barely that a delay ends it: never told as "it lasts". */
static void
append_tight(const struct planned *planned, char **text)
{
    const struct asked *asked = planned->asked;
    const struct trip_outcome *outcome = &planned->outcome;

    append_lasts(planned, text,
                 !is_left_at_end(planned)     ? SAY_TRIP_TIGHT_MID
                 : outcome->least_minutes > 0 ? SAY_TRIP_TIGHT
                                              : SAY_TRIP_TIGHT_BARE);
    append(planned, text, SAY_TRIP_KEEP, say_minutes(asked->arena, outcome->reserve_minutes));
    estimate_append(text, mend_words(planned));
}

static void
append_verdict(const struct planned *planned, char **text)
{
    const struct asked *asked = planned->asked;
    const struct trip_outcome *outcome = &planned->outcome;

    if (trip_is_safe(outcome)) {
        append_lasts(planned, text, is_left_at_end(planned) ? SAY_TRIP_LASTS : SAY_TRIP_LASTS_MID);
        return;
    }
    if (outcome->lasts) {
        append_tight(planned, text);
        return;
    }
    estimate_append(text,
                    say(asked->arena, asked->context->house, asked->language, SAY_TRIP_SHORT,
                        say_minutes(asked->arena, outcome->runs_out_at),
                        say_leg(asked->language, planned->told->legs[outcome->runs_out_leg].kind),
                        say_minutes(asked->arena, outcome->short_minutes), NULL));
}

static char *
text_of(const struct planned *planned)
{
    const struct asked *asked = planned->asked;
    char *text = memory_copy(asked->arena, "");

    if (planned->low.too_high) {
        append(planned, &text, SAY_TRIP_HEIGHT,
               memory_format(asked->arena, "%d", asked->equipment->altitude_ft));
    }
    append_verdict(planned, &text);
    if (!planned->outcome.lasts) {
        append(planned, &text, SAY_TRIP_CALL, NULL);
    }
    append(planned, &text, SAY_READ, say_read(asked->arena, asked->language, planned->told));
    if (planned->assumed_full) {
        append(planned, &text, SAY_TRIP_FULL,
               memory_format(asked->arena, "%zu", planned->charges.count));
    }
    if (planned->low.differs) {
        estimate_append(&text, estimate_record_says(asked, &planned->low.running));
    }
    if (planned->outcome.lasts && (planned->low.differs || planned->low.too_high)) {
        append(planned, &text, SAY_STAFF_WILL_CALL, NULL);
    }
    return text;
}

static void
extra(const struct planned *planned, struct answer *answer, enum phrase phrase,
      const char *argument)
{
    estimate_extra(answer, estimate_say(planned->asked, phrase, argument));
}

/* ", and pulse 2 at rest": orders that legs on battery count with beside `running`. */
static char *
other_orders(const struct planned *planned, const struct running *running)
{
    const struct asked *asked = planned->asked;
    char *others = memory_copy(asked->arena, "");
    bool said[ACTIVITY_COUNT] = {false};
    size_t i;

    said[running->activity] = true;
    for (i = 0; i < planned->low.trip.leg_count; i++) {
        const struct running *on = &planned->low.on[i];

        if (planned->low.legs[i].power == TRIP_NO_POWER && on->is == RUNNING_ORDERED &&
            on->figure != NULL && on->figure != running->figure && !said[on->activity]) {
            said[on->activity] = true;
            memory_append(&others, "%s%s %s", asked->language == LANGUAGE_ES ? ", y " : ", and ",
                          say_mode(asked->arena, asked->language, on->figure->mode,
                                   on->figure->setting_tenths),
                          say_for(asked->language, on->activity));
        }
    }
    return others;
}

/* What it was counted with, and what is left if that is with another order: a number said of the
 * end is of that one, so it goes first. */
static void
say_counted(const struct planned *planned, struct answer *answer)
{
    const struct asked *asked = planned->asked;
    const struct running *running = &planned->low.running, *after = &planned->low.after;

    if (planned->outcome.margin_minutes > 0 && is_left_at_end(planned) &&
        after->figure != running->figure) {
        estimate_extra(answer,
                       say(asked->arena, asked->context->house, asked->language, SAY_TRIP_LEFT_WITH,
                           say_mode(asked->arena, asked->language, after->figure->mode,
                                    after->figure->setting_tenths),
                           say_for(asked->language, after->activity), NULL));
    }
    if (running->figure != NULL) {
        estimate_say_counted(asked, running, other_orders(planned, running), answer);
    }
}

/* What would mend it, and what it was counted with. */
static void
add_extras(const struct planned *planned, struct answer *answer)
{
    const struct asked *asked = planned->asked;
    const struct trip_outcome *outcome = &planned->outcome;
    int64_t start_utc_s = start_of(planned);

    if (!outcome->lasts) {
        estimate_extra(answer, mend_words(planned));
    }
    if (planned->low.no_car_cord) {
        extra(planned, answer, SAY_TRIP_NO_CORD, NULL);
    }
    if (!outcome->lasts && start_utc_s != 0) {
        extra(planned, answer, SAY_TRIP_AT,
              say_clock(asked->arena, asked->context->zone,
                        start_utc_s + outcome->runs_out_at * INT64_C(60)));
    }
    say_counted(planned, answer);
    if (planned->low.cold_percent < 100) {
        extra(planned, answer, SAY_COLD,
              memory_format(asked->arena, "%d", planned->low.cold_percent));
    }
}

/* ---- what is kept and who is called ---------------------------------------------------------- */

static int
lasts_minutes(const struct trip_outcome *outcome)
{
    return outcome->lasts ? outcome->total_minutes + outcome->margin_minutes : outcome->runs_out_at;
}

static const struct estimate *
estimate_of(const struct planned *planned)
{
    static const char *const mends[] = {[TRIP_MEND_NONE] = "none",
                                        [TRIP_MEND_CAR_CORD] = "car-cord",
                                        [TRIP_MEND_WALL_STOPS] = "wall-stops",
                                        [TRIP_MEND_ONE_BATTERY] = "one-battery",
                                        [TRIP_MEND_TWO_BATTERIES] = "two-batteries"};
    const struct asked *asked = planned->asked;
    const struct running *running = &planned->low.running;
    const struct trip_outcome *outcome = &planned->outcome;
    struct estimate *estimate = memory_new(asked->arena, struct estimate);
    struct trip_estimate *trip = memory_new(asked->arena, struct trip_estimate);
    int low = lasts_minutes(outcome), high = lasts_minutes(&planned->best);

    *trip = (struct trip_estimate){.total_minutes = outcome->total_minutes,
                                   .lasts = outcome->lasts,
                                   .short_minutes = outcome->short_minutes,
                                   .margin_minutes = outcome->margin_minutes,
                                   .mend = trip_is_safe(outcome) ? NULL : mends[planned->mend]};
    *estimate = (struct estimate){
        .kind = ESTIMATE_TRIP,
        .minutes = {low, high > low ? high : low},
        .mode = running->figure != NULL ? running->figure->mode : running->order->mode,
        .setting_tenths = running->figure != NULL ? running->figure->setting_tenths
                                                  : running->order->setting_tenths,
        .activity = running->activity,
        .batteries = (int)planned->charges.count,
        .from_utc_s = start_of(planned) != 0 ? start_of(planned) : asked->context->now_utc_s,
        .assumed = memory_format(asked->arena, "health as measured or %d %%; cold share %d %%%s",
                                 asked->equipment->retirement_health, planned->low.cold_percent,
                                 planned->assumed_full ? "; all full" : ""),
        .trip = trip};
    return estimate;
}

/* Who tells what is in the batteries now, and no time, may be about to leave. */
static bool
starts_soon(const struct planned *planned)
{
    int64_t start_utc_s = start_of(planned);

    return start_utc_s != 0 ? start_utc_s - planned->asked->context->now_utc_s <= SOON_S
                            : told_has_charge(planned->told);
}

static void
call_staff(const struct planned *planned, struct verdict *verdict)
{
    enum alert_level level = starts_soon(planned) ? ALERT_URGENT : ALERT_OFFICE;

    if (!planned->outcome.lasts) {
        verdict_alert(verdict, level, false, "power:trip-short", "trip: batteries too short");
    }
    if (planned->low.too_high) {
        verdict_alert(verdict, level, false, "power:height", "trip above the unit's height");
    }
    if (planned->low.differs) {
        verdict_alert(verdict, ALERT_URGENT, false, "power:differs", "setting differs");
    }
}

static void
answer(struct planned *planned, struct verdict *verdict)
{
    bool to_staff = !planned->outcome.lasts || planned->low.too_high || planned->low.differs;
    struct answer *said =
        estimate_add(planned->asked, verdict, ANSWER_ESTIMATE,
                     to_staff ? ROUTE_STAFF : ROUTE_ANSWER, planned->told, drive_trip, drive_trip);

    said->estimate = estimate_of(planned);
    said->text = text_of(planned);
    add_extras(planned, said);
    call_staff(planned, verdict);
}

/* No number is made up: a person answers. */
static void
to_staff(const struct planned *planned, struct verdict *verdict, enum trip_plan_is lacks)
{
    const struct asked *asked = planned->asked;
    const struct running *running = &planned->low.running;
    struct answer *said = estimate_add(asked, verdict, ANSWER_OFFICE, ROUTE_STAFF, planned->told,
                                       drive_trip, drive_trip);
    char *text = memory_copy(asked->arena, "");

    if (lacks == TRIP_PLAN_WALL_ONLY) {
        estimate_append(&text, estimate_wall_only(asked, running, planned->told));
        append(planned, &text, SAY_STAFF_WILL_CALL, NULL);
    } else {
        append(planned, &text, SAY_NO_FIGURE, NULL);
    }
    if (running->is == RUNNING_DIFFERS) {
        estimate_append(&text, estimate_record_says(asked, running));
    }
    said->text = text;
    verdict_alert(verdict, starts_soon(planned) ? ALERT_URGENT : ALERT_OFFICE, false,
                  lacks == TRIP_PLAN_WALL_ONLY ? "power:wall-only" : "power:no-figure",
                  "trip: will it last?");
}

static void
plan(struct planned *planned, struct verdict *verdict)
{
    const struct asked *asked = planned->asked;
    enum trip_plan_is lacks =
        trip_plan_make(asked->rental, asked->equipment, planned->told, planned->charges.list,
                       planned->charges.count, asked->wrote_utc_s, TRIP_PLAN_LOW, &planned->low);

    if (lacks != TRIP_PLAN_READY) {
        to_staff(planned, verdict, lacks);
        return;
    }
    (void)trip_plan_make(asked->rental, asked->equipment, planned->told, planned->charges.list,
                         planned->charges.count, asked->wrote_utc_s, TRIP_PLAN_HIGH,
                         &planned->high);
    trip_play(&planned->low.trip, &planned->outcome);
    trip_play(&planned->high.trip, &planned->best);
    if (!trip_is_safe(&planned->outcome)) {
        planned->mend = trip_mend(&planned->low.trip, asked->equipment->retirement_health);
    }
    answer(planned, verdict);
}

bool
estimate_trip(const struct asked *asked, struct verdict *verdict, const struct told *told)
{
    struct planned *planned;
    bool tells = told->leg_count > 0 || told_has_charge(told);

    if (told->kind != TOLD_TRIP || told->impossible || !tells) {
        return false;
    }
    if (asked->which_rental) {
        open_question_which_rental(asked, verdict, drive_trip);
        return true;
    }
    if (asked->rental == NULL && has_legs(told) && told_has_charge(told)) {
        estimate_no_record(asked, verdict, told, drive_trip, "trip: lasts?");
        return true; /* the page would only ask for it all again */
    }
    if (asked->rental == NULL || asked->equipment == NULL) {
        return false;
    }
    planned = memory_new(asked->arena, struct planned);
    planned->asked = asked;
    planned->told = told;
    if (!has_legs(told) || (told->missing & (MISSING_CHARGE | MISSING_HOW_MANY)) != 0 ||
        !find_charges(planned)) {
        ask_back(asked, verdict, told);
        return true;
    }
    estimate_remember(asked, verdict, told);
    plan(planned, verdict);
    return true;
}
