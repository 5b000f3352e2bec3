#include "trip_leg.h"

#include <errno.h>
#include <stdlib.h>
#include <string.h>

bool
trip_leg_number(const char *text, char **end, long least, long most, int *value)
{
    long number;

    errno = 0;
    number = strtol(text, end, 10);
    *value = (int)number;
    return errno == 0 && *end != text && least <= number && number <= most;
}

static bool
read_length(const char *text, int *minutes)
{
    char *end;
    int more;

    if (!trip_leg_number(text, &end, 0, 2880, minutes)) {
        return false;
    }
    if (*end == ':' && *minutes <= 48) {
        *minutes *= 60;
        if (!trip_leg_number(end + 1, &end, 0, 59, &more)) {
            return false;
        }
        *minutes += more;
    }
    return *end == '\0' && *minutes > 0 && *minutes <= 2880;
}

bool
trip_leg_read(char *words, struct told_leg *leg)
{
    static const struct {
        const char *name;
        enum leg_kind kind;
    } kinds[] = {{"drive", LEG_DRIVE},
                 {"flight", LEG_FLIGHT},
                 {"stay", LEG_WAIT},
                 {"walk", LEG_HIKE},
                 {"other", LEG_OTHER}};
    char *rest;
    const char *kind = strtok_r(words, " ", &rest);
    const char *length = strtok_r(NULL, " ", &rest), *power = strtok_r(NULL, " ", &rest);
    size_t i;

    *leg = (struct told_leg){0};
    for (i = 0; kind != NULL && i < sizeof(kinds) / sizeof(kinds[0]); i++) {
        if (strcmp(kind, kinds[i].name) == 0 && length != NULL &&
            read_length(length, &leg->minutes)) {
            leg->kind = kinds[i].kind;
            leg->power = power == NULL                ? POWER_SOURCE_NONE
                         : strcmp(power, "wall") == 0 ? POWER_SOURCE_WALL
                                                      : POWER_SOURCE_CAR;
            return power == NULL || strcmp(power, "wall") == 0 || strcmp(power, "car") == 0;
        }
    }
    return false;
}
