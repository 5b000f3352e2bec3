#include "equipment.h"

#include <assert.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

static const char *const mode_names[MODE_COUNT] = {"continuous", "pulse", "night"};

const char *
mode_name(enum mode mode)
{
    assert((int)mode >= 0 && mode < MODE_COUNT);
    return mode_names[mode];
}

enum mode
mode_named(const char *name)
{
    int mode;

    for (mode = 0; mode < MODE_COUNT; mode++) {
        if (strcmp(mode_names[mode], name) == 0) {
            break;
        }
    }
    return (enum mode)mode;
}

const struct run_time *
equipment_run_time(const struct equipment *equipment, enum mode mode, int setting_tenths)
{
    size_t i;

    for (i = 0; i < equipment->run_time_count; i++) {
        const struct run_time *run_time = &equipment->run_times[i];

        if (run_time->mode == mode && run_time->setting_tenths == setting_tenths) {
            return run_time;
        }
    }
    return NULL;
}

bool
equipment_gauge_band(const struct equipment *equipment, int lights, struct percent *band)
{
    size_t i;

    for (i = 0; i < equipment->gauge_count; i++) {
        if (equipment->gauge[i].lights == lights) {
            *band = equipment->gauge[i].band;
            return true;
        }
    }
    return false;
}

bool
equipment_needs_wall(const struct equipment *equipment, enum mode mode, int setting_tenths)
{
    size_t length = strlen(mode_name(mode)), i;

    for (i = 0; i < equipment->needs_wall_count; i++) {
        const char *words = equipment->needs_wall[i];

        if (strncmp(words, mode_name(mode), length) == 0 &&
            (words[length] == '\0' ||
             lround(strtod(words + length, NULL) * 10) == setting_tenths)) {
            return true;
        }
    }
    return false;
}
