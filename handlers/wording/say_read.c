/* What was read out of a text, said back so that a misreading shows (declared in say.h). */
#include "say.h"

#include "memory.h"

static const char *const leg_words[LANGUAGE_COUNT][LEG_OTHER + 1] = {
    {[LEG_DRIVE] = "drive",
     [LEG_FLIGHT] = "flight",
     [LEG_WAIT] = "stay",
     [LEG_HIKE] = "walk",
     [LEG_OTHER] = "out"},
    {[LEG_DRIVE] = "camino",
     [LEG_FLIGHT] = "vuelo",
     [LEG_WAIT] = "parada",
     [LEG_HIKE] = "a pie",
     [LEG_OTHER] = "fuera"},
};

static const char *const power_words[LANGUAGE_COUNT][POWER_SOURCE_CAR + 1] = {
    {[POWER_SOURCE_NONE] = "",
     [POWER_SOURCE_BATTERY] = "",
     [POWER_SOURCE_WALL] = " plugged in",
     [POWER_SOURCE_CAR] = " on the car cord"},
    {[POWER_SOURCE_NONE] = "",
     [POWER_SOURCE_BATTERY] = "",
     [POWER_SOURCE_WALL] = " enchufado",
     [POWER_SOURCE_CAR] = " con cable de auto"},
};

static const char *const day_words[LANGUAGE_COUNT][DAY_COUNT] = {
    {"today", "tomorrow", "Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday",
     "Sunday"},
    {"hoy", "mañana", "lunes", "martes", "miércoles", "jueves", "viernes", "sabado", "domingo"},
};

const char *
say_leg(enum language language, enum leg_kind kind)
{
    return leg_words[language][kind];
}

static void
part(char **text, const char *words)
{
    memory_append(text, "%s%s", (*text)[0] == '\0' ? "" : ", ", words);
}

static void
say_charges(void *arena, bool spanish, const struct told *told, char **text)
{
    size_t i;

    for (i = 0; i < told->charge_count; i++) {
        struct percent charge = told->charges[i];

        part(text, charge.low == charge.high
                       ? memory_format(arena, "%d%%", charge.low)
                       : memory_format(arena, "%d-%d%%", charge.low, charge.high));
    }
    for (i = 0; i < told->light_count; i++) {
        part(text, memory_format(arena, "%d %s", told->lights[i],
                                 told->lights[i] == 1 ? (spanish ? "luz" : "light")
                                                      : (spanish ? "luces" : "lights")));
    }
    if (told->count > 0) {
        part(text, memory_format(arena, spanish ? "%d sin carga dicha" : "%d of unknown charge",
                                 told->count));
    }
}

static void
say_use(void *arena, enum language language, const struct told *told, char **text)
{
    bool spanish = language == LANGUAGE_ES;

    if (told->has_mode && told->has_setting) {
        part(text, say_mode(arena, language, told->mode, told->setting_tenths));
    } else if (told->has_setting) {
        part(text, memory_format(arena, spanish ? "nivel %s" : "setting %s",
                                 say_tenths(arena, told->setting_tenths)));
    }
    if (told->since_min > 0) {
        part(text, memory_format(arena, spanish ? "hace %s" : "%s ago",
                                 say_minutes(arena, told->since_min)));
    }
}

static char *
dial(void *arena, int minutes)
{
    int hour = minutes / 60 % 12;

    return memory_format(arena, "%d:%02d %s", hour == 0 ? 12 : hour, minutes % 60,
                         minutes < 12 * 60 ? "am" : "pm");
}

static void
say_times(void *arena, enum language language, const struct told *told, char **text)
{
    bool timed = told->has_ready_by || told->has_remind_at;

    if (timed) {
        char *clock = dial(arena, told->has_ready_by ? told->ready_by : told->remind_at);

        part(text, told->has_day
                       ? memory_format(arena, "%s %s", clock, day_words[language][told->day])
                       : clock);
    }
    if (told->remind_before_min > 0) {
        part(text, memory_format(arena, language == LANGUAGE_ES ? "%s antes" : "%s before",
                                 say_minutes(arena, told->remind_before_min)));
    }
}

static void
say_ways(void *arena, enum language language, const struct told *told, char **text)
{
    size_t i;

    for (i = 0; i < told->leg_count; i++) {
        part(text, memory_format(arena, "%s %s%s", leg_words[language][told->legs[i].kind],
                                 say_minutes(arena, told->legs[i].minutes),
                                 power_words[language][told->legs[i].power]));
    }
    if (told->flight_minutes > 0) {
        part(text, memory_format(arena, "%s %s", leg_words[language][LEG_FLIGHT],
                                 say_minutes(arena, told->flight_minutes)));
    }
}

static void
say_cylinder(void *arena, const struct told *told, char **text)
{
    if (told->psi > 0) {
        part(text, memory_format(arena, "%d psi", told->psi));
    }
    if (told->bar > 0) {
        part(text, memory_format(arena, "%d bar", told->bar));
    }
    if (told->size[0] != '\0') {
        part(text, told->size);
    }
    if (told->flow_tenths > 0) {
        part(text, memory_format(arena, "%s L/min", say_tenths(arena, told->flow_tenths)));
    }
}

/* Only what something is counted with. */
static void
say_measures(void *arena, bool spanish, const struct told *told, char **text)
{
    if (told->celsius.told) {
        part(text, memory_format(arena, "%d C", told->celsius.value));
    }
    if (told->fahrenheit.told) {
        part(text, memory_format(arena, "%d F", told->fahrenheit.value));
    }
    if (told->altitude_ft.told) {
        part(text, memory_format(arena, spanish ? "%d pies" : "%d ft", told->altitude_ft.value));
    }
    if (told->altitude_m.told) {
        part(text, memory_format(arena, "%d m", told->altitude_m.value));
    }
}

char *
say_read(void *arena, enum language language, const struct told *told)
{
    char *text = memory_copy(arena, "");

    say_charges(arena, language == LANGUAGE_ES, told, &text);
    say_use(arena, language, told, &text);
    say_ways(arena, language, told, &text);
    say_cylinder(arena, told, &text);
    say_times(arena, language, told, &text);
    say_measures(arena, language == LANGUAGE_ES, told, &text);
    return text;
}
