#include "fill_unit.h"

#include <math.h>

#include "memory.h"
#include "say.h"

typedef const char *value_of(void *arena, const struct equipment *unit);

static const char *const mode_words[MODE_COUNT] = {"continuous flow", "pulse", "night"};

static const char *
name(void *arena, const struct equipment *unit)
{
    (void)arena;
    return unit->name;
}

static const char *
car_outlet(void *arena, const struct equipment *unit)
{
    const struct car_outlet *car = &unit->car;

    (void)arena;
    if (!car->known) {
        return NULL;
    }
    if (car->runs && car->charges) {
        return car->both_at_once
                   ? "Your unit runs from the car outlet and charges at the same time."
                   : "From the car outlet your unit can run, or charge while it is off, but not "
                     "both at once.";
    }
    if (car->runs) {
        return "Your unit runs from the car outlet but does not charge there.";
    }
    return car->charges ? "Your unit charges from the car outlet while it is off, but does not run "
                          "from it."
                        : "Your unit neither runs nor charges from the car outlet.";
}

static const char *
gauge_how(void *arena, const struct equipment *unit)
{
    (void)arena;
    return unit->gauge_how;
}

static const char *
gauge_bands(void *arena, const struct equipment *unit)
{
    char *text = memory_copy(arena, "");
    size_t i;

    if (unit->gauge_count == 0) {
        return NULL;
    }
    for (i = 0; i < unit->gauge_count; i++) {
        const struct gauge_step *step = &unit->gauge[i];

        memory_append(&text, "%s%d %s %d to %d%%", i == 0 ? "" : ", ", step->lights,
                      step->lights == 1 ? "light is" : "lights are", step->band.low,
                      step->band.high);
    }
    return text;
}

static const char *
swap_how(void *arena, const struct equipment *unit)
{
    (void)arena;
    return unit->swap_how;
}

static const char *
swap_oxygen(void *arena, const struct equipment *unit)
{
    (void)arena;
    if (unit->swap_how == NULL) {
        return NULL;
    }
    return unit->oxygen_stops_on_swap ? "Oxygen stops during the change."
                                      : "Oxygen keeps flowing during the change.";
}

/* What they need is counted with the high end. */
static const char *
charge_time(void *arena, const struct equipment *unit)
{
    const struct charge_minutes *off = &unit->charging_off, *running = &unit->charging_running;
    char *text;

    if (!off->known) {
        return NULL;
    }
    text = memory_format(arena, "One empty battery takes up to %s to full with the unit off",
                         say_minutes(arena, off->to_full.high));
    if (running->known) {
        memory_append(&text, ", up to %s while it gives oxygen",
                      say_minutes(arena, running->to_full.high));
    }
    memory_append(&text, ".");
    return text;
}

static const char *
modes(void *arena, const struct equipment *unit)
{
    const char *has[MODE_COUNT];
    size_t count = 0, i;
    char *text;
    int mode;

    for (mode = 0; mode < MODE_COUNT; mode++) {
        for (i = 0; i < unit->run_time_count; i++) {
            if (unit->run_times[i].mode == (enum mode)mode) {
                has[count++] = mode_words[mode];
                break;
            }
        }
    }
    if (count == 0) {
        return NULL;
    }
    text = memory_copy(arena, has[0]);
    for (i = 1; i < count; i++) {
        memory_append(&text, "%s%s", i + 1 == count ? " and " : ", ", has[i]);
    }
    return text;
}

static const char *
tube(void *arena, const struct equipment *unit)
{
    char *text = NULL;
    int mode;

    for (mode = 0; mode < MODE_COUNT; mode++) {
        if (unit->tube_feet[mode] <= 0) {
            continue;
        }
        if (text == NULL) {
            text = memory_copy(arena, "");
        } else {
            memory_append(&text, ", ");
        }
        memory_append(&text, "%g feet in %s", unit->tube_feet[mode], mode_words[mode]);
    }
    return text;
}

static const char *
no_breath(void *arena, const struct equipment *unit)
{
    (void)arena;
    return unit->no_breath;
}

static const char *
needs_wall(void *arena, const struct equipment *unit)
{
    char *text;
    size_t i;

    if (unit->needs_wall_count == 0) {
        return NULL;
    }
    text = memory_copy(arena, "");
    for (i = 0; i < unit->needs_wall_count; i++) {
        memory_append(&text, "%s%s",
                      i == 0 ? "" : (i + 1 == unit->needs_wall_count ? " and " : ", "),
                      unit->needs_wall[i]);
    }
    if (text[0] >= 'a' && text[0] <= 'z') {
        text[0] = (char)(text[0] - 'a' + 'A');
    }
    memory_append(&text, " run%s from the wall only.", unit->needs_wall_count == 1 ? "s" : "");
    return text;
}

static const char *
supply(void *arena, const struct equipment *unit)
{
    return unit->supply_volts_high == 0
               ? NULL
               : memory_format(arena, "%d to %d volts", unit->supply_volts_low,
                               unit->supply_volts_high);
}

static const char *
altitude_limit(void *arena, const struct equipment *unit)
{
    if (unit->altitude_ft == 0) {
        return NULL;
    }
    return unit->altitude_ft < 1000 ? memory_format(arena, "%d feet", unit->altitude_ft)
                                    : memory_format(arena, "%d,%03d feet", unit->altitude_ft / 1000,
                                                    unit->altitude_ft % 1000);
}

/* In Fahrenheit, rounded inwards: the range said is never wider than the one allowed. */
static const char *
fahrenheit(void *arena, const struct temperatures *range)
{
    return !range->known
               ? NULL
               : memory_format(arena, "%.0f to %.0f F", ceil(range->low_celsius * 1.8 + 32),
                               floor(range->high_celsius * 1.8 + 32));
}

static const char *
run_temperatures(void *arena, const struct equipment *unit)
{
    return fahrenheit(arena, &unit->running);
}

static const char *
charge_temperatures(void *arena, const struct equipment *unit)
{
    return fahrenheit(arena, &unit->charging);
}

static const char *
weight(void *arena, const struct equipment *unit)
{
    return unit->weight_grams == 0
               ? NULL
               : memory_format(arena, "%.1f pounds", unit->weight_grams / 453.59237);
}

static const char *
sound(void *arena, const struct equipment *unit)
{
    return unit->sound_db == 0 ? NULL : memory_format(arena, "%d decibels", unit->sound_db);
}

static const char *
watt_hours(void *arena, const struct equipment *unit)
{
    return unit->rated_wh <= 0 ? NULL : memory_format(arena, "%g watt-hours", unit->rated_wh);
}

static const char *
aircraft(void *arena, const struct equipment *unit)
{
    (void)arena;
    return unit->aircraft_label ? "Your unit carries the red label for use on aircraft."
                                : "Your unit has no label for use on aircraft.";
}

static value_of *const values[PLACEHOLDER_COUNT] = {
    [PLACEHOLDER_UNIT] = name,
    [PLACEHOLDER_CAR_OUTLET] = car_outlet,
    [PLACEHOLDER_GAUGE_HOW] = gauge_how,
    [PLACEHOLDER_GAUGE_BANDS] = gauge_bands,
    [PLACEHOLDER_SWAP_HOW] = swap_how,
    [PLACEHOLDER_SWAP_OXYGEN] = swap_oxygen,
    [PLACEHOLDER_CHARGE_TIME] = charge_time,
    [PLACEHOLDER_MODES] = modes,
    [PLACEHOLDER_TUBE] = tube,
    [PLACEHOLDER_NO_BREATH] = no_breath,
    [PLACEHOLDER_NEEDS_WALL] = needs_wall,
    [PLACEHOLDER_SUPPLY] = supply,
    [PLACEHOLDER_ALTITUDE_LIMIT] = altitude_limit,
    [PLACEHOLDER_RUN_TEMPERATURES] = run_temperatures,
    [PLACEHOLDER_CHARGE_TEMPERATURES] = charge_temperatures,
    [PLACEHOLDER_WEIGHT] = weight,
    [PLACEHOLDER_SOUND] = sound,
    [PLACEHOLDER_WATT_HOURS] = watt_hours,
    [PLACEHOLDER_AIRCRAFT] = aircraft,
};

const char *
fill_unit_value(void *arena, enum placeholder placeholder, const struct equipment *unit,
                enum language language)
{
    /* The unit's own name needs no language; its sentences are written in the office's English. */
    if (values[placeholder] == NULL ||
        (language != LANGUAGE_EN && placeholder != PLACEHOLDER_UNIT)) {
        return NULL;
    }
    return values[placeholder](arena, unit);
}
