#include "follow_take.h"

#include <string.h>

enum {
    THOUSAND = 1000,
    SETTING_MAX = 6,
    LEAST_PERCENT = 5,
    LEAST_PSI = 100,
    FLOW_MAX = 15,
    HOUR = 60,
    HOURS_MAX = 24,
    NOON = 12 * 60,
    BAR_MAX = 344
};

/* ---- a number alone -------------------------------------------------------------------------- */

static bool
is_uniform(const struct told *told)
{
    size_t i;

    for (i = 1; i < told->charge_count; i++) {
        if (memcmp(&told->charges[i], &told->charges[0], sizeof told->charges[0]) != 0) {
            return false;
        }
    }
    return told->light_count == 0 && told->count == 0 && told->charge_count > 0;
}

static void
set_all(struct told *told, struct percent charge, int count)
{
    told->charge_count = 0;
    told->light_count = 0;
    told->count = 0;
    while ((int)told->charge_count < count && told->charge_count < TOLD_BATTERIES_MAX) {
        told->charges[told->charge_count++] = charge;
    }
    told->missing &= ~(unsigned)(MISSING_HOW_MANY | MISSING_CHARGE);
}

/* So many batteries, each as full as those before. */
static enum taken
take_count(int count, struct told *told)
{
    if (count < 1 || count > TOLD_BATTERIES_MAX) {
        return TAKEN_UNSURE;
    }
    if (told->charge_count == 0 && told->light_count == 0) {
        told->count = count;
        return TAKEN;
    }
    if (!is_uniform(told)) {
        return TAKEN_UNSURE;
    }
    set_all(told, told->charges[0], count);
    return TAKEN;
}

static enum taken
take_percent(int percent, struct told *told)
{
    if (percent < LEAST_PERCENT || percent > 100 || !is_uniform(told)) {
        return TAKEN_UNSURE; /* "2" may be batteries, and of two charges one is meant */
    }
    set_all(told, (struct percent){percent, percent}, (int)told->charge_count);
    return TAKEN;
}

/* The unit is that of what it replaces: "2 hours", "make that 3". */
static enum taken
take_length(int thousandths, struct told *told)
{
    int *minutes = told->leg_count == 1 ? &told->legs[0].minutes : &told->flight_minutes;
    bool hours = *minutes >= HOUR && *minutes % 15 == 0 && thousandths <= HOURS_MAX * THOUSAND;

    if (*minutes <= 0 || (!hours && (thousandths < 5 * THOUSAND || thousandths % THOUSAND != 0))) {
        return TAKEN_UNSURE;
    }
    *minutes = hours ? (thousandths * HOUR + THOUSAND - 1) / THOUSAND : thousandths / THOUSAND;
    return TAKEN;
}

/* In the same half of the day as the hour that it replaces. */
static enum taken
take_hour(int hour, struct told *told)
{
    if (hour < 1 || hour > 23 || (told->missing & MISSING_AM_PM) != 0) {
        return TAKEN_UNSURE;
    }
    told->ready_by =
        hour > 12 ? hour * HOUR : hour % 12 * HOUR + (told->ready_by >= NOON ? NOON : 0);
    return TAKEN;
}

static enum taken
take_setting_number(int thousandths, struct told *told)
{
    if (thousandths > FLOW_MAX * THOUSAND || thousandths <= 0) {
        return TAKEN_UNSURE;
    }
    told->has_activity = false; /* the order that it fits tells what they do */
    told->has_setting = true;
    told->setting_tenths = thousandths / 100;
    return TAKEN;
}

/* Gauge and flow are too far apart to be taken for each other. */
static enum taken
take_cylinder_number(int thousandths, struct told *told)
{
    int whole = thousandths / THOUSAND;

    if (thousandths > 0 && whole <= FLOW_MAX) {
        told->flow_tenths = thousandths / 100;
    } else if (told->bar > 0 && whole <= BAR_MAX) {
        told->bar = whole;
    } else if (told->bar <= 0 && whole >= LEAST_PSI) {
        told->psi = whole;
    } else {
        return TAKEN_UNSURE;
    }
    return TAKEN;
}

static bool
runs_on_setting(enum told_kind kind)
{
    return kind == TOLD_HOURS_LEFT || kind == TOLD_BATTERY_LIFE || kind == TOLD_TRIP;
}

static bool
runs_on_battery(enum told_kind kind)
{
    return runs_on_setting(kind) || kind == TOLD_CHARGING;
}

enum taken
follow_take_number(const struct follow_words *words, enum told_thing last, struct told *told,
                   enum told_thing *newest)
{
    int thousandths = words->thousandths, whole = thousandths / THOUSAND;

    *newest = last;
    if (told->kind == TOLD_CYLINDER) {
        *newest = THING_CYLINDER;
        return take_cylinder_number(thousandths, told);
    }
    if (words->is_at && !words->corrects && runs_on_setting(told->kind) &&
        thousandths <= SETTING_MAX * THOUSAND) {
        *newest = THING_SETTING;
        return take_setting_number(thousandths, told);
    }
    if (words->of_all && runs_on_battery(told->kind)) {
        *newest = THING_CHARGE;
        return take_percent(whole, told);
    }
    if (last != THING_LENGTH && last != THING_SETTING && thousandths % THOUSAND != 0) {
        return TAKEN_UNSURE;
    }
    switch (last) {
    case THING_CHARGE:
        return take_percent(whole, told);
    case THING_COUNT:
        return words->is_at ? TAKEN_UNSURE : take_count(whole, told);
    case THING_SETTING:
        return take_setting_number(thousandths, told);
    case THING_LENGTH:
        return take_length(thousandths, told);
    case THING_TIME:
        return take_hour(whole, told);
    case THING_NONE:
    case THING_CYLINDER:
    case THING_SEVERAL:
        break;
    }
    return TAKEN_UNSURE;
}

/* ---- more than that -------------------------------------------------------------------------- */

/* "One is at 2 lights": of several that were alike one is not as it was told; false if they were
 * not alike, for then nothing tells which. */
static bool
take_one_of(const struct told *answer, struct told *told)
{
    bool of_lights = told->charge_count == 0 && told->light_count > 1 && told->count == 0;
    size_t i;

    for (i = 1; of_lights && i < told->light_count; i++) {
        of_lights = told->lights[i] == told->lights[0];
    }
    if (answer->count > 0 || (!of_lights && !is_uniform(told))) {
        return false;
    }
    told->light_count -= of_lights ? 1 : 0;
    told->charge_count -= of_lights ? 0 : 1;
    if (answer->light_count > 0) {
        told->lights[told->light_count++] = answer->lights[0];
    } else {
        told->charges[told->charge_count++] = answer->charges[0];
    }
    return true;
}

/* "They are at 50": each of them. One of several, and nothing tells which: unsure. */
static enum taken
take_charges(const struct follow_words *words, const struct told *answer, struct told *told)
{
    int has = told_batteries(told), tells = told_batteries(answer);
    bool alike = answer->charge_count == 1 && is_uniform(told) &&
                 memcmp(&told->charges[0], &answer->charges[0], sizeof told->charges[0]) == 0;

    if (told_of_untold_number(answer)) {
        return TAKEN_UNSURE;
    }
    if (tells == 0 || (words->person && !words->of_battery)) {
        return TAKEN_NOTHING;
    }
    if (words->adds) {
        return TAKEN_UNSURE;
    }
    if (!told_has_charge(answer)) {
        return take_count(answer->count, told);
    }
    if (tells == 1 && has > 1 && !alike) {
        if (words->of_one && !words->of_all && take_one_of(answer, told)) {
            return TAKEN;
        }
        if (!words->of_all || answer->charge_count != 1) {
            return TAKEN_UNSURE;
        }
        set_all(told, answer->charges[0], has);
        return TAKEN;
    }
    memcpy(told->charges, answer->charges, sizeof told->charges);
    memcpy(told->lights, answer->lights, sizeof told->lights);
    told->charge_count = answer->charge_count;
    told->light_count = answer->light_count;
    told->count = answer->count;
    told->missing &= ~(unsigned)(MISSING_HOW_MANY | MISSING_CHARGE);
    told->missing |= answer->missing & (MISSING_HOW_MANY | MISSING_CHARGE);
    return TAKEN;
}

/* What they do has its own order, so a setting told for something else goes with that. */
static enum taken
take_running(const struct told *answer, struct told *told)
{
    bool does =
        answer->has_activity && (told->kind == TOLD_HOURS_LEFT || told->kind == TOLD_BATTERY_LIFE);

    if (!runs_on_setting(told->kind)) {
        return TAKEN_NOTHING;
    }
    if (does) {
        told->has_activity = true;
        told->activity = answer->activity;
        told->has_mode = told->has_setting = false;
    }
    if (!does && (answer->has_mode || answer->has_setting)) {
        told->has_activity = false; /* the order that it fits tells what they do */
    }
    if (answer->has_mode) {
        told->has_setting = told->has_setting && told->has_mode && told->mode == answer->mode;
        told->has_mode = true;
        told->mode = answer->mode;
    }
    if (answer->has_setting) {
        told->has_setting = true;
        told->setting_tenths = answer->setting_tenths;
    }
    return does || answer->has_mode || answer->has_setting ? TAKEN : TAKEN_NOTHING;
}

static enum taken
take_surroundings(const struct told *answer, struct told *told)
{
    bool cold = answer->celsius.told || answer->fahrenheit.told;
    bool height = answer->altitude_ft.told || answer->altitude_m.told;

    if (cold) {
        told->celsius = answer->celsius;
        told->fahrenheit = answer->fahrenheit;
    }
    if (height) {
        told->altitude_ft = answer->altitude_ft;
        told->altitude_m = answer->altitude_m;
    }
    return cold || height ? TAKEN : TAKEN_NOTHING;
}

/* The one leg that is of this kind, or the only one; NULL if which is meant is not clear. */
static struct told_leg *
leg_meant(const struct told_leg *leg, struct told *told)
{
    struct told_leg *meant = NULL;
    size_t i;

    if (told->leg_count == 1) {
        return &told->legs[0];
    }
    for (i = 0; i < told->leg_count; i++) {
        if (told->legs[i].kind == leg->kind && leg->kind != LEG_OTHER) {
            if (meant != NULL) {
                return NULL;
            }
            meant = &told->legs[i];
        }
    }
    return meant;
}

static enum taken
take_legs(const struct follow_words *words, const struct told *answer, struct told *told)
{
    struct told_leg *meant;

    if (answer->leg_count == 0) {
        return TAKEN_NOTHING;
    }
    if (words->adds || words->another) {
        return TAKEN_UNSURE; /* to which leg, and is it one of its own? */
    }
    if (answer->leg_count > 1) {
        memcpy(told->legs, answer->legs, sizeof told->legs);
        told->leg_count = answer->leg_count;
        return TAKEN;
    }
    meant = leg_meant(&answer->legs[0], told);
    if (meant == NULL) {
        return TAKEN_UNSURE;
    }
    meant->minutes = answer->legs[0].minutes;
    if (answer->legs[0].kind != LEG_OTHER && answer->legs[0].kind != meant->kind) {
        meant->kind = answer->legs[0].kind;
        meant->power = answer->legs[0].power;
    } else if (answer->legs[0].power != POWER_SOURCE_NONE) {
        meant->power = answer->legs[0].power;
    }
    return TAKEN;
}

static enum taken
take_flight(const struct told *answer, struct told *told)
{
    if (answer->flight_minutes == 0 || told->leg_count > 1) {
        return answer->flight_minutes == 0 ? TAKEN_NOTHING : TAKEN_UNSURE;
    }
    told->leg_count = 0;
    told->flight_minutes = answer->flight_minutes;
    told->flight_is_gate = answer->flight_is_gate || told->flight_is_gate;
    told->flight_is_air = answer->flight_is_air;
    return TAKEN;
}

static enum taken
both(enum taken one, enum taken other)
{
    return one > other ? one : other;
}

enum taken
follow_take_told(const struct follow_words *words, const struct told *answer, struct told *told)
{
    enum taken taken = both(take_charges(words, answer, told), take_surroundings(answer, told));

    switch (told->kind) {
    case TOLD_HOURS_LEFT:
    case TOLD_BATTERY_LIFE:
        return both(taken, take_running(answer, told));
    case TOLD_TRIP:
        taken = both(taken, take_running(answer, told));
        return both(taken, take_legs(words, answer, told));
    case TOLD_FLIGHT:
        return both(taken, take_flight(answer, told));
    case TOLD_CHARGING:
        if (answer->on_power != POWER_SOURCE_NONE) {
            told->on_power = answer->on_power;
            taken = both(taken, TAKEN);
        }
        return taken;
    case TOLD_NOTHING:
    case TOLD_CYLINDER:
    case TOLD_WATCH:
        break;
    }
    return TAKEN_NOTHING;
}
