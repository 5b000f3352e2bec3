/* Durations, clock times, days, modes: values of a record as words (declared in say.h). */
#include "say.h"

#include <string.h>

#include "memory.h"

static const char *const days[LANGUAGE_COUNT][7] = {
    {"Sunday", "Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday"},
    {"domingo", "lunes", "martes", "miércoles", "jueves", "viernes", "sabado"},
};

static const char *const months[LANGUAGE_COUNT][12] = {
    {"Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"},
    {"enero", "febrero", "marzo", "abril", "mayo", "junio", "julio", "agosto", "septiembre",
     "octubre", "noviembre", "diciembre"},
};

static const char *const modes[LANGUAGE_COUNT][MODE_COUNT] = {
    {"continuous", "pulse", "night"},
    {"continuo", "pulso", "noche"},
};

static const char *const fors[LANGUAGE_COUNT][ACTIVITY_COUNT] = {
    {"at rest", "for walking", "for sleep", "for flying"},
    {"en reposo", "para caminar", "para dormir", "para volar"},
};

char *
say_minutes(void *arena, int minutes)
{
    int hours = minutes / 60;

    if (hours == 0) {
        return memory_format(arena, "%d min", minutes);
    }
    if (minutes % 60 == 0) {
        return memory_format(arena, "%d h", hours);
    }
    return memory_format(arena, "%d h %d min", hours, minutes % 60);
}

static int
hour_on_the_dial(const struct local_time *local)
{
    return local->hour % 12 == 0 ? 12 : local->hour % 12;
}

static const char *
half_of_day(const struct local_time *local)
{
    return local->hour < 12 ? "am" : "pm";
}

char *
say_clock(void *arena, const struct zone *zone, int64_t utc_s)
{
    struct local_time local = zone_local(zone, utc_s);

    return memory_format(arena, "%d:%02d %s", hour_on_the_dial(&local), local.minute,
                         half_of_day(&local));
}

char *
say_date(void *arena, const struct zone *zone, enum language language, int64_t utc_s)
{
    struct local_time local = zone_local(zone, utc_s);
    const char *day = days[language][local.weekday];
    const char *month = months[language][local.month - 1];

    return language == LANGUAGE_ES ? memory_format(arena, "%s %d de %s", day, local.day, month)
                                   : memory_format(arena, "%s, %s %d", day, month, local.day);
}

char *
say_day(void *arena, const struct zone *zone, enum language language, int64_t utc_s)
{
    struct local_time local = zone_local(zone, utc_s);
    char *clock = local.minute == 0
                      ? memory_format(arena, "%d %s", hour_on_the_dial(&local), half_of_day(&local))
                      : say_clock(arena, zone, utc_s);

    return memory_format(arena, "%s, %s", say_date(arena, zone, language, utc_s), clock);
}

char *
say_tenths(void *arena, int tenths)
{
    return tenths % 10 == 0 ? memory_format(arena, "%d", tenths / 10)
                            : memory_format(arena, "%d.%d", tenths / 10, tenths % 10);
}

char *
say_mode(void *arena, enum language language, enum mode mode, int setting_tenths)
{
    return memory_format(arena, "%s %s", modes[language][mode], say_tenths(arena, setting_tenths));
}

const char *
say_for(enum language language, enum activity activity)
{
    return fors[language][activity];
}

char *
say_backup(void *arena, enum language language, const struct rental *rental)
{
    const struct backup *backup = &rental->backup;

    if (!backup->known || backup->kind == NULL) {
        return NULL;
    }
    if (language == LANGUAGE_ES) {
        const char *kind = strcmp(backup->kind, "cylinder") == 0 ? "tanque" : backup->kind;

        return memory_format(arena, "su reserva (%s%s%s)", kind, backup->size != NULL ? " " : "",
                             backup->size != NULL ? backup->size : "");
    }
    return memory_format(arena, "your %s%s%s", backup->size != NULL ? backup->size : "",
                         backup->size != NULL ? " " : "", backup->kind);
}

char *
say_use_backup(void *arena, const struct house *house, enum language language,
               const struct rental *rental)
{
    char *backup = rental == NULL ? NULL : say_backup(arena, language, rental);

    return say(arena, house, language, backup != NULL ? SAY_BACKUP : SAY_BACKUP_IF_ANY, backup,
               NULL);
}
