#include "told_json.h"

#include <stdio.h>
#include <string.h>

#include "memory.h"

static void
set(json_t *object, const char *key, json_t *value)
{
    json_object_set_new(object, key, memory_must(value));
}

/* 20 tenths are 2, 25 are 2.5. */
static json_t *
tenths(int value)
{
    return value % 10 == 0 ? json_integer(value / 10) : json_real(value / 10.0);
}

static void
set_charges(json_t *object, const struct told *told)
{
    json_t *list = memory_must(json_array());
    size_t i;

    for (i = 0; i < told->charge_count; i++) {
        json_array_append_new(
            list, memory_must(json_pack("[ii]", told->charges[i].low, told->charges[i].high)));
    }
    set(object, "charges", list);
}

static void
set_lights(json_t *object, const struct told *told)
{
    json_t *list = memory_must(json_array());
    size_t i;

    for (i = 0; i < told->light_count; i++) {
        json_array_append_new(list, memory_must(json_integer(told->lights[i])));
    }
    set(object, "lights", list);
}

/* "06:30" */
static json_t *
clock_time(int minutes)
{
    char text[16];

    (void)snprintf(text, sizeof text, "%02d:%02d", minutes / 60, minutes % 60);
    return json_string(text);
}

static void
set_use(json_t *object, const struct told *told)
{
    if (told->has_mode) {
        set(object, "mode", json_string(mode_name(told->mode)));
    }
    if (told->has_setting) {
        set(object, "setting", tenths(told->setting_tenths));
    }
    if (told->has_activity || told->drives) {
        set(object, "activity",
            json_string(told->drives ? "drive" : activity_name(told->activity)));
    }
    if (told->since_min > 0) {
        set(object, "since_min", json_integer(told->since_min));
    }
    if (told->on_power != POWER_SOURCE_NONE) {
        set(object, "on_power", json_string(power_source_name(told->on_power)));
    }
}

static void
set_times(json_t *object, const struct told *told)
{
    if (told->has_ready_by) {
        set(object, "ready_by", clock_time(told->ready_by));
    }
    if (told->has_remind_at) {
        set(object, "remind_at", clock_time(told->remind_at));
    }
    if (told->remind_before_min > 0) {
        set(object, "remind_before_min", json_integer(told->remind_before_min));
    }
    if (told->has_day) {
        set(object, "day", json_string(told_day_name(told->day)));
    }
}

static void
set_legs(json_t *object, const struct told *told)
{
    json_t *list = memory_must(json_array());
    size_t i;

    for (i = 0; i < told->leg_count; i++) {
        const struct told_leg *leg = &told->legs[i];

        json_array_append_new(list,
                              memory_must(json_pack("{s:i, s:s, s:s}", "minutes", leg->minutes,
                                                    "power", power_source_name(leg->power), "kind",
                                                    leg_kind_name(leg->kind))));
    }
    set(object, "legs", list);
}

static void
set_ways(json_t *object, const struct told *told)
{
    if (told->leg_count > 0) {
        set_legs(object, told);
    }
    if (told->flight_minutes > 0) {
        set(object, "flight_minutes", json_integer(told->flight_minutes));
    }
    if (told->flight_is_gate || told->flight_is_air) {
        set(object, "flight_is", json_string(told->flight_is_gate ? "gate" : "air"));
    }
}

static void
set_measure(json_t *object, const char *key, struct told_measure measure)
{
    if (measure.told) {
        set(object, key, json_integer(measure.value));
    }
}

static void
set_cylinder_and_place(json_t *object, const struct told *told)
{
    if (told->psi > 0) {
        set(object, "psi", json_integer(told->psi));
    }
    if (told->bar > 0) {
        set(object, "bar", json_integer(told->bar));
    }
    if (told->size[0] != '\0') {
        set(object, "size", json_string(told->size));
    }
    if (told->flow_tenths > 0) {
        set(object, "flow_lpm", tenths(told->flow_tenths));
    }
    set_measure(object, "celsius", told->celsius);
    set_measure(object, "fahrenheit", told->fahrenheit);
    set_measure(object, "altitude_ft", told->altitude_ft);
    set_measure(object, "altitude_m", told->altitude_m);
}

static void
set_missing(json_t *object, unsigned missing)
{
    json_t *list = memory_must(json_array());
    int i;

    for (i = 0; i < MISSING_COUNT; i++) {
        if ((missing & (1U << i)) != 0) {
            json_array_append_new(
                list, memory_must(json_string(told_missing_name((enum told_missing)(1U << i)))));
        }
    }
    set(object, "missing", list);
}

json_t *
told_json(const struct told *told)
{
    json_t *object = memory_must(json_object());

    if (told->charge_count > 0) {
        set_charges(object, told);
    }
    if (told->light_count > 0) {
        set_lights(object, told);
    }
    if (told->count > 0) {
        set(object, "count", json_integer(told->count));
    }
    set_use(object, told);
    set_times(object, told);
    set_ways(object, told);
    set_cylinder_and_place(object, told);
    if (told->impossible) {
        set(object, "impossible", json_true());
    }
    if (told->missing != 0) {
        set_missing(object, told->missing);
    }
    return object;
}

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

void
told_from_json(const json_t *json, struct told *told)
{
    const char *mode = json_string_value(json_object_get(json, "mode"));
    const char *activity = json_string_value(json_object_get(json, "activity"));
    const json_t *setting = json_object_get(json, "setting");
    json_int_t count = json_integer_value(json_object_get(json, "count"));

    memset(told, 0, sizeof(*told));
    read_charges(json_object_get(json, "charges"), told);
    read_lights(json_object_get(json, "lights"), told);
    told->count = count > 0 && count <= 1000 ? (int)count : 0;
    if (mode != NULL && mode_named(mode) != MODE_COUNT) {
        told->has_mode = true;
        told->mode = mode_named(mode);
    }
    if (json_is_number(setting)) {
        told->has_setting = true;
        told->setting_tenths = (int)(json_number_value(setting) * 10 + 0.5);
    }
    if (activity != NULL && activity_named(activity) != ACTIVITY_COUNT) {
        told->has_activity = true;
        told->activity = activity_named(activity);
    }
    told->on_power = read_power(json_object_get(json, "on_power"));
    told->impossible = json_is_true(json_object_get(json, "impossible"));
}
