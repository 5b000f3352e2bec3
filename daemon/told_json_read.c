/* The reverse of told_json.c. */
#include <stdlib.h>
#include <string.h>

#include "memory.h"
#include "told_json.h"

enum { MINUTES_MAX = 100000 };

static void
read_charges(const json_t *list, struct told *told)
{
    json_t *charge;
    size_t i;

    json_array_foreach (list, i, charge) {
        json_int_t low = json_integer_value(json_array_get(charge, 0));
        json_int_t high = json_integer_value(json_array_get(charge, 1));

        if (told->charge_count < TOLD_BATTERIES_MAX && low >= 0 && low <= high && high <= 100) {
            told->charges[told->charge_count++] = (struct percent){(int)low, (int)high};
        }
    }
}

static void
read_lights(const json_t *list, struct told *told)
{
    json_t *lights;
    size_t i;

    json_array_foreach (list, i, lights) {
        json_int_t lit = json_integer_value(lights);

        if (told->light_count < TOLD_BATTERIES_MAX && lit >= 0 && lit <= 100) {
            told->lights[told->light_count++] = (int)lit;
        }
    }
}

static enum power_source
read_power(const json_t *name)
{
    const char *words = json_string_value(name);
    enum power_source power;

    for (power = POWER_SOURCE_CAR; words != NULL && power > POWER_SOURCE_NONE; power--) {
        if (strcmp(power_source_name(power), words) == 0) {
            return power;
        }
    }
    return POWER_SOURCE_NONE;
}

static int
read_number(const json_t *json, const char *key, int high)
{
    json_int_t value = json_integer_value(json_object_get(json, key));

    return value > 0 && value <= high ? (int)value : 0;
}

static int
read_tenths(const json_t *number)
{
    double value = json_is_number(number) ? json_number_value(number) : 0;

    return value > 0 && value < 100 ? (int)(value * 10 + 0.5) : 0;
}

static void
read_use(const json_t *json, struct told *told)
{
    const char *mode = json_string_value(json_object_get(json, "mode"));
    const char *activity = json_string_value(json_object_get(json, "activity"));
    const json_t *setting = json_object_get(json, "setting");

    if (mode != NULL && mode_named(mode) != MODE_COUNT) {
        told->has_mode = true;
        told->mode = mode_named(mode);
    }
    if (json_is_number(setting)) {
        told->has_setting = true;
        told->setting_tenths = read_tenths(setting);
    }
    if (activity != NULL && activity_named(activity) != ACTIVITY_COUNT) {
        told->has_activity = true;
        told->activity = activity_named(activity);
    }
    told->drives = activity != NULL && strcmp(activity, "drive") == 0;
    told->since_min = read_number(json, "since_min", MINUTES_MAX);
    told->on_power = read_power(json_object_get(json, "on_power"));
}

/* "06:30" as minutes after midnight; false if it is none. */
static bool
read_clock(const json_t *text, int *minutes)
{
    const char *written = json_is_string(text) ? json_string_value(text) : "";
    char *end;
    long hour = strtol(written, &end, 10), minute = 60;

    if (end != written && *end == ':') {
        minute = strtol(end + 1, &end, 10);
    }
    if (*end != '\0' || hour < 0 || hour > 23 || minute < 0 || minute > 59) {
        return false;
    }
    *minutes = (int)(hour * 60 + minute);
    return true;
}

static void
read_times(const json_t *json, struct told *told)
{
    const char *day = json_string_value(json_object_get(json, "day"));
    int i;

    told->has_ready_by = read_clock(json_object_get(json, "ready_by"), &told->ready_by);
    told->has_remind_at = read_clock(json_object_get(json, "remind_at"), &told->remind_at);
    told->remind_before_min = read_number(json, "remind_before_min", MINUTES_MAX);
    for (i = 0; day != NULL && i < DAY_COUNT; i++) {
        if (strcmp(told_day_name((enum told_day)i), day) == 0) {
            told->has_day = true;
            told->day = (enum told_day)i;
        }
    }
}

static enum leg_kind
read_leg_kind(const json_t *name)
{
    const char *words = json_string_value(name);
    enum leg_kind kind;

    for (kind = LEG_DRIVE; words != NULL && kind < LEG_OTHER; kind++) {
        if (strcmp(leg_kind_name(kind), words) == 0) {
            return kind;
        }
    }
    return LEG_OTHER;
}

static void
read_ways(const json_t *json, struct told *told)
{
    const char *is = json_string_value(json_object_get(json, "flight_is"));
    json_t *leg;
    size_t i;

    json_array_foreach (json_object_get(json, "legs"), i, leg) {
        if (told->leg_count < TOLD_LEGS_MAX) {
            told->legs[told->leg_count++] =
                (struct told_leg){.minutes = read_number(leg, "minutes", MINUTES_MAX),
                                  .kind = read_leg_kind(json_object_get(leg, "kind")),
                                  .power = read_power(json_object_get(leg, "power"))};
        }
    }
    told->flight_minutes = read_number(json, "flight_minutes", MINUTES_MAX);
    told->flight_is_gate = is != NULL && strcmp(is, "gate") == 0;
    told->flight_is_air = is != NULL && strcmp(is, "air") == 0;
}

static struct told_measure
read_measure(const json_t *value)
{
    json_int_t number = json_integer_value(value);
    bool told = json_is_integer(value) && number > -100000 && number < 100000;

    return (struct told_measure){.told = told, .value = told ? (int)number : 0};
}

static void
read_cylinder_and_place(const json_t *json, struct told *told)
{
    const char *size = json_string_value(json_object_get(json, "size"));

    told->psi = read_number(json, "psi", 100000);
    told->bar = read_number(json, "bar", 100000);
    told->flow_tenths = read_tenths(json_object_get(json, "flow_lpm"));
    if (size != NULL && strlen(size) < sizeof told->size) {
        memcpy(told->size, size, strlen(size) + 1);
    }
    told->celsius = read_measure(json_object_get(json, "celsius"));
    told->fahrenheit = read_measure(json_object_get(json, "fahrenheit"));
    told->altitude_ft = read_measure(json_object_get(json, "altitude_ft"));
    told->altitude_m = read_measure(json_object_get(json, "altitude_m"));
}

static unsigned
read_missing(const json_t *list)
{
    unsigned missing = 0;
    json_t *name;
    size_t i;
    int bit;

    json_array_foreach (list, i, name) {
        for (bit = 0; json_is_string(name) && bit < MISSING_COUNT; bit++) {
            if (strcmp(told_missing_name((enum told_missing)(1U << bit)),
                       json_string_value(name)) == 0) {
                missing |= 1U << bit;
            }
        }
    }
    return missing;
}

void
told_from_json(const json_t *json, struct told *told)
{
    json_int_t count = json_integer_value(json_object_get(json, "count"));

    memset(told, 0, sizeof(*told));
    read_charges(json_object_get(json, "charges"), told);
    read_lights(json_object_get(json, "lights"), told);
    told->count = count > 0 && count <= 1000 ? (int)count : 0;
    read_use(json, told);
    read_times(json, told);
    read_ways(json, told);
    read_cylinder_and_place(json, told);
    told->impossible = json_is_true(json_object_get(json, "impossible"));
    told->missing = read_missing(json_object_get(json, "missing"));
}

static const struct {
    enum told_thing thing;
    const char *name;
} things[] = {{THING_CHARGE, "charge"},  {THING_COUNT, "count"}, {THING_SETTING, "setting"},
              {THING_LENGTH, "length"},  {THING_TIME, "time"},   {THING_CYLINDER, "cylinder"},
              {THING_SEVERAL, "several"}};

enum { THINGS = sizeof things / sizeof things[0] };

json_t *
last_answer_json(const struct last_answer *last)
{
    const char *kind = last->is_sum ? told_kind_name(last->told.kind) : NULL;
    json_t *json = memory_must(json_pack("{s:I}", "at", (json_int_t)last->at_utc_s));
    size_t i;

    if (kind == NULL) {
        return json;
    }
    json_object_set_new(json, "kind", memory_must(json_string(kind)));
    json_object_set_new(json, "wrote", memory_must(json_integer(last->wrote_utc_s)));
    json_object_set_new(json, "told", told_json(&last->told));
    if (last->rental_id != NULL) {
        json_object_set_new(json, "rental", memory_must(json_string(last->rental_id)));
    }
    for (i = 0; i < THINGS; i++) {
        if (things[i].thing == last->newest) {
            json_object_set_new(json, "newest", memory_must(json_string(things[i].name)));
        }
    }
    return json;
}

void
last_answer_from_json(void *arena, const json_t *json, struct last_answer *last)
{
    const char *kind = json_string_value(json_object_get(json, "kind"));
    const char *newest = json_string_value(json_object_get(json, "newest"));
    const char *rental = json_string_value(json_object_get(json, "rental"));
    enum told_kind is;
    size_t i;

    memset(last, 0, sizeof(*last));
    last->at_utc_s = json_integer_value(json_object_get(json, "at"));
    for (is = TOLD_HOURS_LEFT; kind != NULL && is < TOLD_WATCH; is++) {
        if (strcmp(told_kind_name(is), kind) == 0) {
            last->is_sum = true;
            told_from_json(json_object_get(json, "told"), &last->told);
            last->told.kind = is;
        }
    }
    last->wrote_utc_s = json_integer_value(json_object_get(json, "wrote"));
    last->rental_id = rental == NULL ? NULL : memory_copy(arena, rental);
    for (i = 0; newest != NULL && i < THINGS; i++) {
        if (strcmp(things[i].name, newest) == 0) {
            last->newest = things[i].thing;
        }
    }
}
