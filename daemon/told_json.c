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
