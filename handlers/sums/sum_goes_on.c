/*
 * We asked for what a sum lacks: how full the batteries are, when they must be, how long each part
 * of a trip is, the airline's figure, the size of the cylinder. The answer is read as if it told
 * that kind of thing ("E, 1500, 2" is no sentence), put to what was told before, and the sum is
 * worked out.
 */
#include <string.h>

#include "answered_time.h"
#include "cylinder.h"
#include "estimate_parts.h"
#include "memory.h"
#include "steps.h"
#include "sum_parts.h"
#include "yes_no.h"

/* Puts what the answer tells to what was told before. False if it tells nothing that was asked. */
typedef bool take(const struct asked *asked, const struct asked *before, const struct told *answer,
                  struct told *told);
static take take_charging, take_trip, take_flight;

static bool asks_about_trip(const struct asked *before, struct verdict *verdict);
static bool work_out_cylinder(const struct asked *asked, struct verdict *verdict,
                              const struct told *told);

static const struct sum_kind {
    enum told_kind kind;
    /* It was this that made us ask. */
    bool (*settles)(const struct asked *before, struct verdict *verdict);
    take *take;
    bool (*work_out)(const struct asked *asked, struct verdict *verdict, const struct told *told);
    const char *leads[LANGUAGE_COUNT]; /* what an answer is read behind */
} sums[] = {
    {TOLD_CHARGING,
     charge_time_decide,
     take_charging,
     estimate_charging,
     {"charging: batteries", "cargar: baterias"}},
    {TOLD_FLIGHT, fly_decide, take_flight, estimate_flight, {"flight of", "vuelo de"}},
    {TOLD_CYLINDER,
     cylinder_left_was_asked,
     sum_take_cylinder,
     work_out_cylinder,
     {"cylinder", "cilindro"}},
    {TOLD_TRIP, asks_about_trip, take_trip, estimate_trip, {"trip:", "viaje:"}},
};

static const struct yes_no_about airline_says_so = {
    .things = " it that eso ", .well = "thats right|correct|it is|asi es", .ill = " wrong "};

/* Several lengths and nothing else are a trip's: an answer that itself was not enough. */
static bool
asks_about_trip(const struct asked *before, struct verdict *verdict)
{
    struct told told = *before->told;

    told.kind = told.kind == TOLD_HOURS_LEFT && told.leg_count > 1 ? TOLD_TRIP : told.kind;
    return estimate_trip(before, verdict, &told);
}

static bool
work_out_cylinder(const struct asked *asked, struct verdict *verdict, const struct told *told)
{
    estimate_cylinder(asked, verdict, told);
    return true;
}

/* The kind of sum that made us ask; NULL if it was about hours left. */
static const struct sum_kind *
sum_asked_about(const struct asked *before, const struct verdict *verdict)
{
    size_t i;

    for (i = 0; i < sizeof sums / sizeof sums[0]; i++) {
        struct verdict scratch = *verdict;

        if (sums[i].settles(before, &scratch)) {
            return &sums[i];
        }
    }
    return NULL;
}

static bool
take_charges(const struct told *answer, struct told *told)
{
    size_t i;

    if (told_batteries(answer) == 0) {
        return false;
    }
    if (answer->charge_count == 1 && told_batteries(answer) == 1 && told_batteries(told) > 1) {
        told->charge_count = (size_t)told_batteries(told); /* "all empty" */
        for (i = 0; i < told->charge_count; i++) {
            told->charges[i] = answer->charges[0];
        }
    } else {
        memcpy(told->charges, answer->charges, sizeof told->charges);
        told->charge_count = answer->charge_count;
    }
    memcpy(told->lights, answer->lights, sizeof told->lights);
    told->light_count = answer->light_count;
    told->count = answer->count;
    told->missing &= ~(unsigned)(MISSING_HOW_MANY | MISSING_CHARGE);
    told->missing |= answer->missing & (MISSING_HOW_MANY | MISSING_CHARGE);
    return true;
}

/* YES to "Is that the airline's own gate-to-gate time?" */
static bool
take_yes(const struct asked *asked, struct told *told)
{
    bool is_yes = told->flight_minutes + (int)told->leg_count > 0 && !told->flight_is_air &&
                  yes_no_read(&asked->tokens, &airline_says_so) == SAID_YES;

    told->flight_is_gate = told->flight_is_gate || is_yes;
    return is_yes;
}

static void
take_legs(const struct told *answer, struct told *told)
{
    memcpy(told->legs, answer->legs, sizeof told->legs);
    told->leg_count = answer->leg_count;
}

static bool
goes_by_land(const struct told *told)
{
    size_t i;

    for (i = 0; i < told->leg_count; i++) {
        if (told->legs[i].kind == LEG_DRIVE || told->legs[i].kind == LEG_HIKE) {
            return true;
        }
    }
    return false;
}

static bool
take_flight(const struct asked *asked, const struct asked *before, const struct told *answer,
            struct told *told)
{
    (void)before;
    if (goes_by_land(asked->told)) {
        return false; /* "bus 3 hours, 2 full": another question */
    }
    if (answer->flight_minutes > 0 || answer->leg_count > 0) {
        told->flight_minutes = answer->flight_minutes;
        take_legs(answer, told);
        /* The airline's figure was asked for, so it is one unless they say otherwise. */
        told->flight_is_air = answer->flight_is_air;
        told->flight_is_gate = !answer->flight_is_air;
        return true;
    }
    if (answer->flight_is_gate) {
        told->flight_is_gate = true;
        told->flight_is_air = false;
    }
    return answer->flight_is_gate || take_yes(asked, told);
}

/* A bare "2" where nothing but the flow is still asked for. */
static int
bare_flow_tenths(const struct asked *asked, const struct told *told)
{
    enum { THOUSANDTHS_A_TENTH = 100 };
    bool lacks_flow =
        told->size[0] != '\0' && (told->psi > 0 || told->bar > 0) && told->flow_tenths == 0;
    int thousandths;

    if (!lacks_flow || asked->tokens.count != 1 ||
        tokens_number(&asked->tokens, 0, true, &thousandths) != 1 ||
        thousandths / THOUSANDTHS_A_TENTH > CYLINDER_FLOW_TENTHS_MAX) {
        return 0;
    }
    return thousandths / THOUSANDTHS_A_TENTH;
}

bool
sum_take_cylinder(const struct asked *asked, const struct asked *before, const struct told *answer,
                  struct told *told)
{
    int flow_tenths = answer->flow_tenths > 0 ? answer->flow_tenths : bare_flow_tenths(asked, told);

    (void)before;
    if (answer->psi > 0 || answer->bar > 0) {
        told->psi = answer->psi;
        told->bar = answer->bar;
    }
    if (answer->size[0] != '\0') {
        memcpy(told->size, answer->size, sizeof told->size);
    }
    told->flow_tenths = flow_tenths > 0 ? flow_tenths : told->flow_tenths;
    return answer->psi > 0 || answer->bar > 0 || answer->size[0] != '\0' || flow_tenths > 0;
}

/* A time by itself, or only the half of the day or the day that was left open. */
static bool
take_bare_time(const struct asked *asked, const struct asked *before, struct told *told)
{
    int64_t utc_s;

    if (answered_time(asked, &utc_s)) {
        answered_as_told(asked, utc_s, &told->ready_by, &told->day);
        told->has_day = true;
        return true;
    }
    if ((told->missing & MISSING_AM_PM) != 0) {
        return answered_half_of_day(asked, before->text, &told->ready_by);
    }
    if (told->has_ready_by && answered_day(asked, told->ready_by, &told->day)) {
        told->has_day = true;
        return true;
    }
    return false;
}

/* When they must be charged. "2 full" is no time. */
bool
sum_take_ready_by(const struct asked *asked, const struct asked *before, const struct told *answer,
                  struct told *told)
{
    if (answer->has_ready_by) {
        told->ready_by = answer->ready_by;
        told->has_day = answer->has_day || told->has_day;
        told->day = answer->has_day ? answer->day : told->day;
    } else if (told_batteries(answer) > 0 || !take_bare_time(asked, before, told)) {
        return false;
    }
    told->has_ready_by = true;
    told->leg_count = 0; /* "in 2 hours" was no leg */
    told->missing &= ~(unsigned)(MISSING_AM_PM | MISSING_READY_BY);
    return true;
}

static bool
take_mode(const struct told *answer, struct told *told)
{
    if (answer->has_setting) {
        told->has_mode = answer->has_mode || told->has_mode;
        told->mode = answer->has_mode ? answer->mode : told->mode;
        told->has_setting = true;
        told->setting_tenths = answer->setting_tenths;
    }
    return answer->has_setting;
}

static bool
take_charging(const struct asked *asked, const struct asked *before, const struct told *answer,
              struct told *told)
{
    bool charges = take_charges(answer, told);
    bool ready_by = sum_take_ready_by(asked, before, answer, told);
    bool mode = !ready_by && take_mode(answer, told); /* "at 9" reads like a setting */

    return charges || ready_by || mode;
}

static bool
take_trip(const struct asked *asked, const struct asked *before, const struct told *answer,
          struct told *told)
{
    bool charges = take_charges(answer, told);

    (void)asked;
    (void)before;
    if (answer->leg_count > 0) {
        take_legs(answer, told);
        told->missing &= ~(unsigned)MISSING_MINUTES;
    }
    return charges || answer->leg_count > 0;
}

/*
 * What is asked about should this leave a thing open: the words of before, or the answer if that
 * tells what is still needed of them and more.
 */
static const char *
next_about(const struct asked *before, const struct asked *asked, const struct sum_kind *sum)
{
    return sum->kind == TOLD_TRIP && asked->told->leg_count > 1 && !told_has_charge(before->told)
               ? asked->text
               : before->text;
}

/* What a text tells as an answer about this kind of sum. */
static void
read_answer(const struct asked *asked, const struct sum_kind *sum, const char *text,
            struct told *answer)
{
    told_read(asked->arena, asked->context->lexicon,
              memory_format(asked->arena, "%s %s", sum->leads[asked->language], text), answer);
}

/* Size, gauge and flow come in texts of their own: "E", "1800", "2". */
static void
take_short_texts(const struct asked *asked, const struct asked *before, const struct sum_kind *sum,
                 struct told *told)
{
    enum { SHORT_WORDS = 3 };
    const struct context *context = asked->context;
    size_t i;

    for (i = 0; i < context->recent_count && sum->kind == TOLD_CYLINDER; i++) {
        const char *text = context->recent[i].text;
        struct told answer;

        if (tokens_read(asked->arena, text).count <= SHORT_WORDS) {
            read_answer(asked, sum, text, &answer);
            (void)(!answer.impossible && sum->take(asked, before, &answer, told));
        }
    }
}

static bool
goes_on_with(const struct asked *asked, struct verdict *verdict, const struct asked *before,
             const struct sum_kind *sum)
{
    struct asked after = *before;
    struct told told, answer;

    read_answer(asked, sum, asked->text, &answer);
    estimate_read(before, sum->kind, &told);
    told.kind = sum->kind;
    take_short_texts(asked, before, sum, &told);
    if (answer.impossible || !sum->take(asked, before, &answer, &told)) {
        return false;
    }
    asked_set_text(&after, next_about(before, asked, sum));
    /* The words of both, the charges of now. */
    after.tokens =
        tokens_read(asked->arena, memory_format(asked->arena, "%s. %s", before->text, asked->text));
    after.wrote_utc_s = asked->wrote_utc_s;
    open_question_close(verdict);
    return sum->work_out(&after, verdict, &told);
}

bool
sum_goes_on(const struct asked *asked, struct verdict *verdict)
{
    const char *about = asked->context->conversation.asked_about;
    struct verdict scratch = *verdict;
    const struct sum_kind *sum;
    struct asked before;

    if (about == NULL) {
        return false;
    }
    before = asked_question(asked, about, asked->context->conversation.asked_utc_s);
    if (reminder_decide(&before, &scratch)) {
        return reminder_goes_on(&before, asked, verdict);
    }
    sum = sum_asked_about(&before, verdict);
    if (sum != NULL) {
        return goes_on_with(asked, verdict, &before, sum);
    }
    scratch = *verdict;
    return other_power_decide(&before, &scratch) && other_power_goes_on(&before, asked, verdict);
}
