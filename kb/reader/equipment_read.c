/*
 * An equipment file is a promise about hours of oxygen, so everything that cannot be so is refused:
 * a battery whose volts and amp-hours do not make its watt-hours, a higher setting that lasts
 * longer than a lower one, a gauge whose next light means less charge.
 */
#include "equipment_read.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>
#include <strings.h>

#include <jansson.h>

#include "json_fields.h"
#include "memory.h"

enum { MINUTES_MAX = 100000, SENTENCE_MAX = 400, NAME_MAX_BYTES = 40 };

/* Rounding on the case and in the file; more than this is a slip of the pen. */
static const double watt_hours_apart_max = 0.10;

/* A setting as tenths; false (with a fault) if it is no whole tenth or out of bounds. */
static bool
read_setting(struct json_place place, json_t *object, int *tenths)
{
    double setting;

    if (!json_read_number(place, object, "setting", JSON_REQUIRED, 0.1, 15, &setting)) {
        return false;
    }
    if (fabs(setting * 10 - round(setting * 10)) > 1e-9) {
        json_fault(json_place_key(place, "setting"), "found %g; expected whole tenths, such as 1.5",
                   setting);
        return false;
    }
    *tenths = (int)round(setting * 10);
    return true;
}

static bool
read_mode(struct json_place place, json_t *object, enum mode *mode)
{
    const char *name;

    if (!json_read_text(place, object, "mode", JSON_REQUIRED, NAME_MAX_BYTES, &name)) {
        return false;
    }
    if (mode_named(name) == MODE_COUNT) {
        json_fault(json_place_key(place, "mode"),
                   "found \"%s\"; expected continuous, pulse or night", name);
        return false;
    }
    *mode = mode_named(name);
    return true;
}

/* Reads one of two words: true for `yes`, false for `no`. */
static void
read_either(struct json_place place, json_t *object, const char *key, const char *yes,
            const char *no, bool *out)
{
    const char *word;

    if (!json_read_text(place, object, key, JSON_REQUIRED, NAME_MAX_BYTES, &word)) {
        return;
    }
    if (strcmp(word, yes) != 0 && strcmp(word, no) != 0) {
        json_fault(json_place_key(place, key), "found \"%s\"; expected \"%s\" or \"%s\"", word, yes,
                   no);
        return;
    }
    *out = strcmp(word, yes) == 0;
}

/* Adds a fault if this row contradicts an earlier one. */
static void
check_run_time(struct json_place place, const struct equipment *equipment,
               const struct run_time *row)
{
    size_t i;

    for (i = 0; i < equipment->run_time_count; i++) {
        const struct run_time *other = &equipment->run_times[i];
        bool higher = row->setting_tenths > other->setting_tenths;
        const struct run_time *upper = higher ? row : other, *lower = higher ? other : row;

        if (row->mode != other->mode) {
            continue;
        }
        if (row->setting_tenths == other->setting_tenths) {
            json_fault(place, "%s %g is there twice; keep one", mode_name(row->mode),
                       row->setting_tenths / 10.0);
        } else if (row->of_new_battery == other->of_new_battery &&
                   row->makers_figure == other->makers_figure &&
                   (upper->lasts.low > lower->lasts.low || upper->lasts.high > lower->lasts.high)) {
            json_fault(place, "%s %g would last longer than %s %g; correct the minutes",
                       mode_name(row->mode), upper->setting_tenths / 10.0, mode_name(row->mode),
                       lower->setting_tenths / 10.0);
        }
    }
}

static void
read_run_times(struct json_place place, json_t *value, struct equipment *equipment)
{
    static const char *const keys[] = {"mode",   "setting", "minutes", "battery",
                                       "figure", "watts",   NULL};
    struct run_time *rows;
    size_t i;
    json_t *element;

    if (!json_check_array(place, value, 1)) {
        return;
    }
    rows = memory_array(place.arena, struct run_time, json_array_size(value));
    equipment->run_times = rows;
    json_array_foreach (value, i, element) {
        struct json_place here = json_place_index(place, i);
        struct run_time row = {0};
        bool is_whole;

        if (!json_check_object(here, element, keys)) {
            continue;
        }
        is_whole = read_mode(here, element, &row.mode);
        is_whole = read_setting(here, element, &row.setting_tenths) && is_whole;
        is_whole = json_read_interval(here, element, "minutes", JSON_REQUIRED, 1, MINUTES_MAX,
                                      &row.lasts.low, &row.lasts.high) &&
                   is_whole;
        read_either(here, element, "battery", "new", "fleet", &row.of_new_battery);
        read_either(here, element, "figure", "maker", "office", &row.makers_figure);
        json_read_integer(here, element, "watts", JSON_OPTIONAL, 1, 2000, &row.watts);
        if (is_whole) {
            check_run_time(here, equipment, &row);
            rows[equipment->run_time_count++] = row;
        }
    }
}

static void
read_gauge_steps(struct json_place place, json_t *value, struct equipment *equipment)
{
    static const char *const keys[] = {"lights", "percent", NULL};
    struct gauge_step *steps;
    size_t i;
    json_t *element;

    if (!json_check_array(place, value, 2)) {
        return;
    }
    steps = memory_array(place.arena, struct gauge_step, json_array_size(value));
    equipment->gauge = steps;
    json_array_foreach (value, i, element) {
        struct json_place here = json_place_index(place, i);
        struct gauge_step step = {0};
        const struct gauge_step *last =
            equipment->gauge_count == 0 ? NULL : &steps[equipment->gauge_count - 1];

        if (!json_check_object(here, element, keys) ||
            !json_read_integer(here, element, "lights", JSON_REQUIRED, 0, 20, &step.lights) ||
            !json_read_interval(here, element, "percent", JSON_REQUIRED, 0, 100, &step.band.low,
                                &step.band.high)) {
            continue;
        }
        if (last != NULL && (step.lights <= last->lights || step.band.low < last->band.low ||
                             step.band.high < last->band.high)) {
            json_fault(here, "expected more lights and no less charge than in the step before");
        }
        steps[equipment->gauge_count++] = step;
    }
}

static void
read_gauge(struct json_place place, json_t *value, struct equipment *equipment)
{
    static const char *const keys[] = {"how", "steps", NULL};
    json_t *steps;

    if (!json_check_object(place, value, keys)) {
        return;
    }
    json_read_text(place, value, "how", JSON_REQUIRED, SENTENCE_MAX, &equipment->gauge_how);
    steps = json_object_get(value, "steps");
    if (steps != NULL) {
        read_gauge_steps(json_place_key(place, "steps"), steps, equipment);
    }
}

static void
read_swap(struct json_place place, json_t *value, struct equipment *equipment)
{
    static const char *const keys[] = {"how", "oxygen_stops", NULL};

    if (json_check_object(place, value, keys)) {
        json_read_text(place, value, "how", JSON_REQUIRED, SENTENCE_MAX, &equipment->swap_how);
        json_read_boolean(place, value, "oxygen_stops", JSON_REQUIRED,
                          &equipment->oxygen_stops_on_swap);
    }
}

static void
read_battery(struct json_place place, json_t *value, struct equipment *equipment)
{
    static const char *const keys[] = {"rated_wh",          "volts", "amp_hours", "held",
                                       "retirement_health", NULL};
    double product;

    if (!json_check_object(place, value, keys)) {
        return;
    }
    json_read_number(place, value, "rated_wh", JSON_OPTIONAL, 1, 2000, &equipment->rated_wh);
    json_read_number(place, value, "volts", JSON_OPTIONAL, 1, 100, &equipment->volts);
    json_read_number(place, value, "amp_hours", JSON_OPTIONAL, 0.1, 200, &equipment->amp_hours);
    json_read_integer(place, value, "held", JSON_OPTIONAL, 1, 8, &equipment->batteries_held);
    json_read_integer(place, value, "retirement_health", JSON_REQUIRED, 30, 100,
                      &equipment->retirement_health);
    product = equipment->volts * equipment->amp_hours;
    if (product > 0 && equipment->rated_wh > 0 &&
        fabs(product - equipment->rated_wh) > watt_hours_apart_max * equipment->rated_wh) {
        json_fault(json_place_key(place, "rated_wh"),
                   "found %g; %g volts times %g amp-hours make %g; correct what is wrong",
                   equipment->rated_wh, equipment->volts, equipment->amp_hours, product);
    }
}

static void
read_charge_minutes(struct json_place place, json_t *object, const char *key,
                    struct charge_minutes *minutes)
{
    static const char *const keys[] = {"to_80", "to_full", NULL};
    json_t *value = json_object_get(object, key);
    struct json_place here = json_place_key(place, key);
    struct charge_minutes read = {.known = true};

    if (value == NULL || !json_check_object(here, value, keys) ||
        !json_read_interval(here, value, "to_80", JSON_REQUIRED, 1, MINUTES_MAX, &read.to_80.low,
                            &read.to_80.high) ||
        !json_read_interval(here, value, "to_full", JSON_REQUIRED, 1, MINUTES_MAX,
                            &read.to_full.low, &read.to_full.high)) {
        return;
    }
    if (read.to_full.low < read.to_80.low || read.to_full.high < read.to_80.high) {
        json_fault(here, "to_full is shorter than to_80; correct the minutes");
        return;
    }
    *minutes = read;
}

static void
read_charging(struct json_place place, json_t *value, struct equipment *equipment)
{
    static const char *const keys[] = {"off", "running", "apart", NULL};

    if (json_check_object(place, value, keys)) {
        read_charge_minutes(place, value, "off", &equipment->charging_off);
        read_charge_minutes(place, value, "running", &equipment->charging_running);
        read_charge_minutes(place, value, "apart", &equipment->charging_apart);
    }
}

static void
read_car(struct json_place place, json_t *value, struct equipment *equipment)
{
    static const char *const keys[] = {"runs", "charges", "both_at_once", "amps_limit", NULL};
    struct car_outlet *car = &equipment->car;
    bool is_whole;

    if (!json_check_object(place, value, keys)) {
        return;
    }
    is_whole = json_read_boolean(place, value, "runs", JSON_REQUIRED, &car->runs);
    is_whole = json_read_boolean(place, value, "charges", JSON_REQUIRED, &car->charges) && is_whole;
    is_whole = json_read_boolean(place, value, "both_at_once", JSON_REQUIRED, &car->both_at_once) &&
               is_whole;
    json_read_integer(place, value, "amps_limit", JSON_OPTIONAL, 1, 40, &car->amps_limit);
    if (car->both_at_once && !(car->runs && car->charges)) {
        json_fault(json_place_key(place, "both_at_once"),
                   "found true; expected false, for it does not run and charge");
    }
    car->known = is_whole;
}

static void
read_needs_wall(struct json_place place, json_t *value, struct equipment *equipment)
{
    const char **list;
    size_t i;
    json_t *element;

    if (!json_check_array(place, value, 0)) {
        return;
    }
    list = memory_array(place.arena, const char *, json_array_size(value) + 1);
    equipment->needs_wall = list;
    json_array_foreach (value, i, element) {
        const char *text = json_is_string(element) ? json_string_value(element) : "";
        size_t length = strcspn(text, " ");
        char *mode = memory_copy_n(place.arena, text, length);
        char *end = NULL;

        if (mode_named(mode) == MODE_COUNT ||
            (text[length] != '\0' && (strtod(text + length + 1, &end) <= 0 || *end != '\0'))) {
            json_fault(json_place_index(place, i),
                       "expected a mode, or a mode and a setting, such as \"continuous 3\"");
            continue;
        }
        list[equipment->needs_wall_count++] = memory_copy(place.arena, text);
    }
}

static void
read_alarms(struct json_place place, json_t *value, struct equipment *equipment)
{
    static const char *const keys[] = {"shows", "meaning", "meaning_es", "oxygen_stops", NULL};
    struct alarm *alarms;
    size_t i, j;
    json_t *element;

    if (!json_check_array(place, value, 1)) {
        return;
    }
    alarms = memory_array(place.arena, struct alarm, json_array_size(value));
    equipment->alarms = alarms;
    json_array_foreach (value, i, element) {
        struct json_place here = json_place_index(place, i);
        struct alarm alarm = {0};

        if (!json_check_object(here, element, keys)) {
            continue;
        }
        json_read_text(here, element, "shows", JSON_REQUIRED, NAME_MAX_BYTES, &alarm.shows);
        json_read_text(here, element, "meaning", JSON_REQUIRED, SENTENCE_MAX, &alarm.meaning);
        json_read_text(here, element, "meaning_es", JSON_OPTIONAL, SENTENCE_MAX, &alarm.meaning_es);
        json_read_boolean(here, element, "oxygen_stops", JSON_REQUIRED, &alarm.oxygen_stops);
        for (j = 0; alarm.shows != NULL && j < equipment->alarm_count; j++) {
            if (strcasecmp(alarms[j].shows, alarm.shows) == 0) {
                json_fault(here, "\"%s\" is there twice; keep one", alarm.shows);
            }
        }
        if (alarm.shows != NULL && alarm.meaning != NULL) {
            alarms[equipment->alarm_count++] = alarm;
        }
    }
}

static void
read_tube_feet(struct json_place place, json_t *value, struct equipment *equipment)
{
    static const char *const keys[] = {"continuous", "pulse", "night", NULL};
    int mode;

    if (json_check_object(place, value, keys)) {
        for (mode = 0; mode < MODE_COUNT; mode++) {
            json_read_number(place, value, mode_name((enum mode)mode), JSON_OPTIONAL, 1, 200,
                             &equipment->tube_feet[mode]);
        }
    }
}

static void
read_temperatures(struct json_place place, json_t *object, const char *key,
                  struct temperatures *temperatures)
{
    temperatures->known =
        json_read_interval(place, object, key, JSON_OPTIONAL, -60, 100, &temperatures->low_celsius,
                           &temperatures->high_celsius);
}

static void
read_celsius(struct json_place place, json_t *value, struct equipment *equipment)
{
    static const char *const keys[] = {"running", "charging", "storage", NULL};

    if (json_check_object(place, value, keys)) {
        read_temperatures(place, value, "running", &equipment->running);
        read_temperatures(place, value, "charging", &equipment->charging);
        read_temperatures(place, value, "storage", &equipment->storage);
    }
}

static void
read_cold(struct json_place place, json_t *value, struct equipment *equipment)
{
    static const char *const keys[] = {"celsius", "percent", NULL};
    struct cold_step *steps;
    size_t i;
    json_t *element;

    if (!json_check_array(place, value, 1)) {
        return;
    }
    steps = memory_array(place.arena, struct cold_step, json_array_size(value));
    equipment->cold = steps;
    json_array_foreach (value, i, element) {
        struct json_place here = json_place_index(place, i);
        struct cold_step step;
        const struct cold_step *last =
            equipment->cold_count == 0 ? NULL : &steps[equipment->cold_count - 1];

        if (!json_check_object(here, element, keys) ||
            !json_read_integer(here, element, "celsius", JSON_REQUIRED, -60, 60, &step.celsius) ||
            !json_read_integer(here, element, "percent", JSON_REQUIRED, 0, 100, &step.percent)) {
            continue;
        }
        if (last != NULL && (step.celsius >= last->celsius || step.percent > last->percent)) {
            json_fault(here, "expected to be colder and to last no longer than the step before");
        }
        steps[equipment->cold_count++] = step;
    }
}

/* ---- The whole file ------------------------------------------------------------------------ */

/* Members that need more than one line to read. */
static const struct {
    const char *key;
    void (*read)(struct json_place place, json_t *value, struct equipment *equipment);
} members[] = {
    {"run_times", read_run_times},   {"gauge", read_gauge},       {"swap", read_swap},
    {"battery", read_battery},       {"charging", read_charging}, {"car", read_car},
    {"needs_wall", read_needs_wall}, {"alarms", read_alarms},     {"tube_feet", read_tube_feet},
    {"celsius", read_celsius},       {"cold", read_cold},
};

static void
read_members(struct json_place place, json_t *root, struct equipment *equipment)
{
    size_t i;

    for (i = 0; i < sizeof(members) / sizeof(members[0]); i++) {
        json_t *value = json_object_get(root, members[i].key);

        if (value != NULL) {
            members[i].read(json_place_key(place, members[i].key), value, equipment);
        }
    }
    json_read_text(place, root, "name", JSON_REQUIRED, NAME_MAX_BYTES, &equipment->name);
    json_read_text(place, root, "no_breath", JSON_OPTIONAL, SENTENCE_MAX, &equipment->no_breath);
    json_read_interval(place, root, "supply_volts", JSON_OPTIONAL, 1, 480,
                       &equipment->supply_volts_low, &equipment->supply_volts_high);
    json_read_integer(place, root, "altitude_ft", JSON_OPTIONAL, 500, 30000,
                      &equipment->altitude_ft);
    json_read_boolean(place, root, "aircraft_label", JSON_OPTIONAL, &equipment->aircraft_label);
    json_read_integer(place, root, "weight_grams", JSON_OPTIONAL, 100, 100000,
                      &equipment->weight_grams);
    json_read_integer(place, root, "sound_db", JSON_OPTIONAL, 10, 120, &equipment->sound_db);
    if (json_object_get(root, "battery") == NULL) {
        json_fault(json_place_key(place, "battery"),
                   "missing; expected at least {\"retirement_health\": 80}, the percentage at "
                   "which the office retires a battery");
    }
}

int
equipment_read(void *arena, const struct content_file *file, const char *id,
               struct equipment *equipment, struct faults *faults)
{
    static const char *const keys[] = {"name",         "run_times", "gauge",     "swap",
                                       "battery",      "charging",  "car",       "needs_wall",
                                       "no_breath",    "alarms",    "tube_feet", "supply_volts",
                                       "altitude_ft",  "celsius",   "cold",      "aircraft_label",
                                       "weight_grams", "sound_db",  NULL};
    size_t before = faults->count;
    struct json_place place = {arena, memory_copy(arena, file->name), "", faults};
    json_error_t error;
    json_t *root;

    memset(equipment, 0, sizeof(*equipment));
    equipment->id = memory_copy(arena, id);
    equipment->file = place.file;
    equipment->batteries_held = 1;
    root = json_loadb(file->bytes, file->length, JSON_REJECT_DUPLICATES, &error);
    if (root == NULL) {
        faults_add(faults, file->name, error.line, NULL, "column %d: %s; correct the JSON",
                   error.column, error.text);
        return -1;
    }
    if (json_check_object(place, root, keys)) {
        read_members(place, root, equipment);
    }
    json_decref(root);
    return faults->count == before ? 0 : -1;
}
