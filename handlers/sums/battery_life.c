#include "estimate_parts.h"

#include "memory.h"

static const char battery_life[] = "battery-life";

static char *
battery_life_text(const struct asked *asked, const struct ground *ground, int batteries,
                  bool asked_otherwise)
{
    char *lasts = say_minutes(asked->arena, ground->time.low);
    bool full = ground->told.charge_count == 1 ? ground->told.charges[0].low == 100
                                               : ground->told.light_count == 0;
    char *text;

    if (batteries == 1) {
        text = estimate_say(asked, full ? SAY_ONE_BATTERY : SAY_THAT_BATTERY, lasts);
    } else {
        text = say(asked->arena, asked->context->house, asked->language, SAY_SO_MANY_BATTERIES,
                   memory_format(asked->arena, "%d", batteries), lasts, NULL);
    }
    if (told_has_charge(&ground->told)) {
        estimate_append_read(asked, &ground->told, &text);
    }
    estimate_append(&text,
                    estimate_say(asked, SAY_UP_TO, say_minutes(asked->arena, ground->time.high)));
    estimate_append(&text, estimate_counted_with(asked, &ground->running, ""));
    if (ground->cold_percent < 100) {
        estimate_append(
            &text,
            estimate_say(asked, SAY_COLD, memory_format(asked->arena, "%d", ground->cold_percent)));
    }
    if (ground->running.activity == ACTIVITY_SLEEP) {
        estimate_append(&text, estimate_say(asked, SAY_SLEEP_UNIT_ONLY, NULL));
    }
    if (asked_otherwise) {
        estimate_append(&text, estimate_record_says(asked, &ground->running));
        estimate_append(&text, estimate_say(asked, SAY_STAFF_WILL_CALL, NULL));
    }
    return text;
}

/*
 * Asked in general about what is not ordered, the time is that of the order: the other mode is
 * never offered as a way to last longer.
 */
static bool
as_ordered(const struct asked *asked, struct ground *ground)
{
    struct told only_activity = {0};

    if (ground->running.is != RUNNING_DIFFERS) {
        return false;
    }
    only_activity.has_activity = ground->told.has_activity;
    only_activity.activity = ground->told.activity;
    ground->running = running_now(asked->rental, asked->equipment, &only_activity);
    return true;
}

bool
estimate_battery_life(const struct asked *asked, struct verdict *verdict, const struct told *told)
{
    const struct percent full = {100, 100};
    struct ground ground = {.told = *told};
    struct charges charges;
    struct answer *answer;
    struct minutes lasts;
    const char *wall_only;
    bool otherwise;

    if (asked->rental == NULL || asked->equipment == NULL || told->impossible) {
        return false;
    }
    if (told_batteries(told) == 0) {
        ground.told.count = 1;
    }
    ground.running = running_now(asked->rental, asked->equipment, told);
    otherwise = as_ordered(asked, &ground);
    wall_only = estimate_wall_only(asked, &ground.running, told);
    if (wall_only != NULL) {
        estimate_add(asked, verdict, ANSWER_ESTIMATE, ROUTE_ANSWER, told, battery_life,
                     battery_life)
            ->text = wall_only;
        return true;
    }
    if (ground.running.figure == NULL ||
        !estimate_charges(&ground.told, asked->equipment, full, &charges) ||
        !estimate_take_cold(asked, &ground, &lasts) ||
        !battery_set_time(asked->rental, asked->equipment, lasts, charges.list, charges.count,
                          ground.running.activity == ACTIVITY_SLEEP
                              ? (size_t)asked->equipment->batteries_held
                              : 0,
                          asked->wrote_utc_s, &ground.time)) {
        return false;
    }
    answer = estimate_add(asked, verdict, ANSWER_ESTIMATE, otherwise ? ROUTE_STAFF : ROUTE_ANSWER,
                          told, battery_life, battery_life);
    estimate_attach(asked, answer, &ground, ESTIMATE_BATTERY_LIFE, (int)charges.count);
    answer->text = battery_life_text(asked, &ground, (int)charges.count, otherwise);
    if (otherwise) {
        verdict_alert(verdict, ALERT_OFFICE, false, "power:differs", "setting differs");
    }
    return true;
}
