#include "calls.h"

#include <string.h>

#include "alert_text.h"

enum urgency
calls_urgency(enum alert_level level)
{
    return level == ALERT_EMERGENCY ? URGENCY_EMERGENCY
           : level == ALERT_URGENT  ? URGENCY_URGENT
                                    : URGENCY_OFFICE;
}

enum alert_level
calls_level(enum urgency urgency)
{
    return urgency == URGENCY_EMERGENCY ? ALERT_EMERGENCY
           : urgency == URGENCY_URGENT  ? ALERT_URGENT
                                        : ALERT_OFFICE;
}

const char *
calls_carrier(const struct config *config, enum road road)
{
    switch (road) {
    case ROAD_TEXT:
        return config->reply_gateway;
    case ROAD_RING:
        return config->ring_service != NULL ? config->ring_service : road_name(road);
    default:
        return road_name(road);
    }
}

static const char *
taker_name(const struct config *config, const struct alert_row *alert)
{
    const struct staff *taker;

    if (alert->taken_by == NULL) {
        return NULL;
    }
    taker = config_staff_by_phone(config, alert->taken_by);
    return taker != NULL ? taker->name : "Someone"; /* who has left since */
}

const char *
calls_words(const struct caller *caller, const struct alert_row *alert, const struct staff *staff,
            enum road road)
{
    const char *taken_name = taker_name(caller->config, alert);
    bool is_holder = alert->taken_by != NULL && strcmp(alert->taken_by, staff->phone) == 0;

    switch (road) {
    case ROAD_RING:
        return alert_spoken(caller->arena, alert, taken_name, is_holder);
    case ROAD_MAIL:
        return alert_mail(caller->arena, alert, taken_name);
    case ROAD_WEBHOOK:
        return alert_json(caller->arena, alert, taken_name, staff->name, caller->now_utc_s);
    default:
        return alert_text(caller->arena, alert, taken_name);
    }
}

int
calls_add_roads(const struct caller *caller, const struct call *call, int64_t call_id,
                struct fault *fault)
{
    struct outbox_new row = {.about = OUTBOX_ALERT,
                             .text_id = call->alert->text_id,
                             .alert_id = call->alert->number,
                             .call_id = call_id,
                             .to = call->staff->phone,
                             .urgency = calls_urgency(call->alert->level),
                             .now_utc_s = caller->now_utc_s,
                             .give_up_utc_s = call->give_up_utc_s};
    int road;
    int64_t id;

    for (road = 0; road < ROAD_COUNT; road++) {
        if ((call->roads & 1U << road) == 0) {
            continue;
        }
        row.road = (enum road)road;
        row.gateway = calls_carrier(caller->config, row.road);
        row.body = row.road == ROAD_TEXT && call->text != NULL
                       ? call->text
                       : calls_words(caller, call->alert, call->staff, row.road);
        if (outbox_rows_add(caller->store, &row, &id, fault) != 0) {
            return -1;
        }
    }
    return 0;
}

int
calls_make(const struct caller *caller, const struct call *call, struct fault *fault)
{
    int64_t call_id;

    if (alert_rows_called(caller->store, call->alert->number, call->event, call->staff->phone,
                          caller->now_utc_s, &call_id, fault) != 0) {
        return -1;
    }
    return calls_add_roads(caller, call, call_id, fault);
}
