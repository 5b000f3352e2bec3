/*
 * We asked for what a sum lacks: how full the batteries are, the airline's figure, the size of the
 * cylinder. The answer is read as if it told that kind of thing ("E, 1500, 2" is no sentence), put
 * to what was told before, and the sum is worked out.
 */
#include <string.h>

#include "estimate_parts.h"
#include "memory.h"
#include "steps.h"
#include "yes_no.h"

static const struct sum_kind {
    enum told_kind kind;
    const char *leads[LANGUAGE_COUNT]; /* what an answer is read behind */
} sums[] = {
    {TOLD_CHARGING, {"charging: batteries", "cargar: baterias"}},
    {TOLD_FLIGHT, {"flight of", "vuelo de"}},
    {TOLD_CYLINDER, {"cylinder", "cilindro"}},
};

static const struct yes_no_about airline_says_so = {
    .things = " it that eso ", .well = "thats right|correct|it is|asi es", .ill = " wrong "};

/* Works it out; false if this kind is not what was asked, or nothing can be. */
static bool
work_out(const struct asked *asked, struct verdict *verdict, enum told_kind kind,
         const struct told *told)
{
    switch (kind) {
    case TOLD_CHARGING:
        return estimate_charging(asked, verdict, told);
    case TOLD_FLIGHT:
        return estimate_flight(asked, verdict, told);
    case TOLD_CYLINDER:
        estimate_cylinder(asked, verdict, told);
        return true;
    default:
        return false;
    }
}

/* The kind of sum that made us ask; NULL if it was about hours left. */
static const struct sum_kind *
sum_asked_about(const struct asked *before, const struct verdict *verdict)
{
    struct verdict scratch = *verdict;
    size_t i;

    for (i = 0; i < sizeof sums / sizeof sums[0]; i++) {
        bool settles = sums[i].kind == TOLD_CHARGING ? charge_time_decide(before, &scratch)
                       : sums[i].kind == TOLD_FLIGHT ? fly_decide(before, &scratch)
                                                     : cylinder_left_decide(before, &scratch);

        if (settles) {
            return &sums[i];
        }
    }
    return NULL;
}

/* Each of these takes what the answer tells; false if it tells nothing of it. */

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

static bool
take_flight(const struct told *answer, struct told *told)
{
    if (answer->flight_minutes > 0 || answer->leg_count > 0) {
        told->flight_minutes = answer->flight_minutes;
        memcpy(told->legs, answer->legs, sizeof told->legs);
        told->leg_count = answer->leg_count;
        /* The airline's figure was asked for, so it is one unless they say otherwise. */
        told->flight_is_air = answer->flight_is_air;
        told->flight_is_gate = !answer->flight_is_air;
        return true;
    }
    if (answer->flight_is_gate) {
        told->flight_is_gate = true;
        told->flight_is_air = false;
    }
    return answer->flight_is_gate;
}

static bool
take_cylinder(const struct told *answer, struct told *told)
{
    if (answer->psi > 0 || answer->bar > 0) {
        told->psi = answer->psi;
        told->bar = answer->bar;
    }
    if (answer->size[0] != '\0') {
        memcpy(told->size, answer->size, sizeof told->size);
    }
    told->flow_tenths = answer->flow_tenths > 0 ? answer->flow_tenths : told->flow_tenths;
    return answer->psi > 0 || answer->bar > 0 || answer->size[0] != '\0' || answer->flow_tenths > 0;
}

static bool
take_time_and_mode(const struct told *answer, struct told *told)
{
    if (answer->has_ready_by) {
        told->has_ready_by = true;
        told->ready_by = answer->ready_by;
        told->has_day = answer->has_day || told->has_day;
        told->day = answer->has_day ? answer->day : told->day;
        told->missing &= ~(unsigned)MISSING_AM_PM;
    }
    if (answer->has_setting) {
        told->has_mode = answer->has_mode || told->has_mode;
        told->mode = answer->has_mode ? answer->mode : told->mode;
        told->has_setting = true;
        told->setting_tenths = answer->setting_tenths;
    }
    return answer->has_ready_by || answer->has_setting;
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

/* Puts what the answer tells to what was told before. False if it tells nothing that was asked. */
static bool
put_together(const struct asked *asked, const struct sum_kind *sum, struct told *told)
{
    struct told answer;
    bool took;

    told_read(asked->arena, asked->context->kb,
              memory_format(asked->arena, "%s %s", sum->leads[asked->language], asked->text),
              &answer);
    if (answer.impossible) {
        return false;
    }
    switch (sum->kind) {
    case TOLD_CHARGING:
        took = take_charges(&answer, told);
        return take_time_and_mode(&answer, told) || took;
    case TOLD_FLIGHT:
        return take_flight(&answer, told) || take_yes(asked, told);
    default:
        return take_cylinder(&answer, told);
    }
}

bool
sum_goes_on(const struct asked *asked, struct verdict *verdict)
{
    const char *about = asked->context->conversation.asked_about;
    const struct sum_kind *sum;
    struct asked before, after;
    struct told told;

    if (about == NULL) {
        return false;
    }
    before = asked_question(asked, about, asked->context->conversation.asked_utc_s);
    sum = sum_asked_about(&before, verdict);
    if (sum == NULL) {
        return false;
    }
    estimate_read(&before, sum->kind, &told);
    if (!put_together(asked, sum, &told)) {
        return false;
    }
    after = before; /* the question's own words, the charges of now */
    after.wrote_utc_s = asked->wrote_utc_s;
    open_question_close(verdict);
    return work_out(&after, verdict, sum->kind, &told);
}
