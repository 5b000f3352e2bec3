#include "fill_unit.h"

#include <math.h>

#include "memory.h"
#include "say.h"

typedef const char *value_of(void *arena, const struct equipment *unit, enum language language);

static const char *const mode_words[LANGUAGE_COUNT][MODE_COUNT] = {
    {"continuous flow", "pulse", "night"}, {"flujo continuo", "pulso", "noche"}};
static const char *const and_words[LANGUAGE_COUNT] = {" and ", " y "};

/* What the car's outlet does for the unit. */
enum car_use { CAR_BOTH_AT_ONCE, CAR_EITHER, CAR_RUNS, CAR_CHARGES, CAR_NEITHER, CAR_USES };
static const char *const car_uses[LANGUAGE_COUNT][CAR_USES] = {
    {"Your unit runs from the car outlet and charges at the same time.",
     "From the car outlet your unit can run, or charge while it is off, but not both at once.",
     "Your unit runs from the car outlet but does not charge there.",
     "Your unit charges from the car outlet while it is off, but does not run from it.",
     "Your unit neither runs nor charges from the car outlet."},
    {"Su aparato trabaja y carga al mismo tiempo con la toma del carro.",
     "Con la toma del carro su aparato trabaja, o carga si esta apagado, pero no las dos cosas.",
     "Su aparato trabaja con la toma del carro, pero ahi no carga.",
     "Su aparato carga con la toma del carro si esta apagado, pero no trabaja con ella.",
     "Su aparato no trabaja ni carga con la toma del carro."}};

static const char *
name(void *arena, const struct equipment *unit, enum language language)
{
    (void)arena;
    (void)language; /* its own name */
    return unit->name;
}

static const char *
car_outlet(void *arena, const struct equipment *unit, enum language language)
{
    const struct car_outlet *car = &unit->car;
    enum car_use use;

    (void)arena;
    if (!car->known) {
        return NULL;
    }
    if (car->runs && car->charges) {
        use = car->both_at_once ? CAR_BOTH_AT_ONCE : CAR_EITHER;
    } else {
        use = car->runs ? CAR_RUNS : car->charges ? CAR_CHARGES : CAR_NEITHER;
    }
    return car_uses[language][use];
}

/* The office wrote it in its unit's file, in English. */
static const char *
in_english(const char *written, enum language language)
{
    return language == LANGUAGE_EN ? written : NULL;
}

static const char *
gauge_how(void *arena, const struct equipment *unit, enum language language)
{
    (void)arena;
    return in_english(unit->gauge_how, language);
}

static const char *
gauge_bands(void *arena, const struct equipment *unit, enum language language)
{
    static const char *const light_words[LANGUAGE_COUNT][2] = {{"light is", "lights are"},
                                                               {"luz es de", "luces son de"}};
    char *text = memory_copy(arena, "");
    size_t i;

    if (unit->gauge_count == 0) {
        return NULL;
    }
    for (i = 0; i < unit->gauge_count; i++) {
        const struct gauge_step *step = &unit->gauge[i];

        memory_append(&text, language == LANGUAGE_ES ? "%s%d %s %d a %d%%" : "%s%d %s %d to %d%%",
                      i == 0 ? "" : ", ", step->lights, light_words[language][step->lights != 1],
                      step->band.low, step->band.high);
    }
    return text;
}

static const char *
swap_how(void *arena, const struct equipment *unit, enum language language)
{
    (void)arena;
    return in_english(unit->swap_how, language);
}

static const char *
swap_oxygen(void *arena, const struct equipment *unit, enum language language)
{
    static const char *const words[LANGUAGE_COUNT][2] = {
        {"Oxygen keeps flowing during the change.", "Oxygen stops during the change."},
        {"El oxigeno sigue saliendo durante el cambio.", "El oxigeno se corta durante el cambio."}};

    (void)arena;
    if (unit->swap_how == NULL) {
        return NULL;
    }
    return words[language][unit->oxygen_stops_on_swap];
}

/* What they need is counted with the high end. */
static const char *
charge_time(void *arena, const struct equipment *unit, enum language language)
{
    const struct charge_minutes *off = &unit->charging_off, *running = &unit->charging_running;
    char *text;

    if (!off->known) {
        return NULL;
    }
    text = memory_format(arena,
                         language == LANGUAGE_ES
                             ? "Una bateria vacia tarda hasta %s en llenarse con el aparato apagado"
                             : "One empty battery takes up to %s to full with the unit off",
                         say_minutes(arena, off->to_full.high));
    if (running->known) {
        memory_append(&text,
                      language == LANGUAGE_ES ? ", hasta %s mientras da oxigeno"
                                              : ", up to %s while it gives oxygen",
                      say_minutes(arena, running->to_full.high));
    }
    memory_append(&text, ".");
    return text;
}

static const char *
modes(void *arena, const struct equipment *unit, enum language language)
{
    const char *has[MODE_COUNT];
    size_t count = 0, i;
    char *text;
    int mode;

    for (mode = 0; mode < MODE_COUNT; mode++) {
        for (i = 0; i < unit->run_time_count; i++) {
            if (unit->run_times[i].mode == (enum mode)mode) {
                has[count++] = mode_words[language][mode];
                break;
            }
        }
    }
    if (count == 0) {
        return NULL;
    }
    text = memory_copy(arena, has[0]);
    for (i = 1; i < count; i++) {
        memory_append(&text, "%s%s", i + 1 == count ? and_words[language] : ", ", has[i]);
    }
    return text;
}

static const char *
tube(void *arena, const struct equipment *unit, enum language language)
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
        memory_append(&text, language == LANGUAGE_ES ? "%g pies en %s" : "%g feet in %s",
                      unit->tube_feet[mode], mode_words[language][mode]);
    }
    return text;
}

static const char *
no_breath(void *arena, const struct equipment *unit, enum language language)
{
    (void)arena;
    return in_english(unit->no_breath, language);
}

static const char *
needs_wall(void *arena, const struct equipment *unit, enum language language)
{
    char *text;
    size_t i;

    if (unit->needs_wall_count == 0 || language != LANGUAGE_EN) { /* as the office wrote it */
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
supply(void *arena, const struct equipment *unit, enum language language)
{
    return unit->supply_volts_high == 0
               ? NULL
               : memory_format(arena,
                               language == LANGUAGE_ES ? "%d a %d voltios" : "%d to %d volts",
                               unit->supply_volts_low, unit->supply_volts_high);
}

static const char *
altitude_limit(void *arena, const struct equipment *unit, enum language language)
{
    const char *feet;

    if (unit->altitude_ft == 0) {
        return NULL;
    }
    feet = language == LANGUAGE_ES ? "pies" : "feet";
    return unit->altitude_ft < 1000 ? memory_format(arena, "%d %s", unit->altitude_ft, feet)
                                    : memory_format(arena, "%d,%03d %s", unit->altitude_ft / 1000,
                                                    unit->altitude_ft % 1000, feet);
}

/* In Fahrenheit, rounded inwards: the range said is never wider than the one allowed. */
static const char *
fahrenheit(void *arena, const struct temperatures *range, enum language language)
{
    return !range->known
               ? NULL
               : memory_format(arena, language == LANGUAGE_ES ? "%.0f a %.0f F" : "%.0f to %.0f F",
                               ceil(range->low_celsius * 1.8 + 32),
                               floor(range->high_celsius * 1.8 + 32));
}

static const char *
run_temperatures(void *arena, const struct equipment *unit, enum language language)
{
    return fahrenheit(arena, &unit->running, language);
}

static const char *
charge_temperatures(void *arena, const struct equipment *unit, enum language language)
{
    return fahrenheit(arena, &unit->charging, language);
}

static const char *
weight(void *arena, const struct equipment *unit, enum language language)
{
    return unit->weight_grams == 0
               ? NULL
               : memory_format(arena, language == LANGUAGE_ES ? "%.1f libras" : "%.1f pounds",
                               unit->weight_grams / 453.59237);
}

static const char *
sound(void *arena, const struct equipment *unit, enum language language)
{
    return unit->sound_db == 0
               ? NULL
               : memory_format(arena, language == LANGUAGE_ES ? "%d decibeles" : "%d decibels",
                               unit->sound_db);
}

static const char *
watt_hours(void *arena, const struct equipment *unit, enum language language)
{
    return unit->rated_wh <= 0
               ? NULL
               : memory_format(arena, language == LANGUAGE_ES ? "%g Wh" : "%g watt-hours",
                               unit->rated_wh);
}

static const char *
aircraft(void *arena, const struct equipment *unit, enum language language)
{
    static const char *const words[LANGUAGE_COUNT][2] = {
        {"Your unit has no label for use on aircraft.",
         "Your unit carries the red label for use on aircraft."},
        {"Su aparato no lleva la etiqueta para usarse en avion.",
         "Su aparato lleva la etiqueta roja para usarse en avion."}};

    (void)arena;
    return words[language][unit->aircraft_label];
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
    return values[placeholder] == NULL ? NULL : values[placeholder](arena, unit, language);
}
