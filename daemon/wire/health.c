#include "health.h"

#include <stdlib.h>

#include <jansson.h>

#include "alert_rows.h"
#include "kb.h"
#include "memory.h"
#include "outbox_rows.h"
#include "turn.h"

char *
health_json(void *arena, const struct health_parts *parts, bool *is_well)
{
    struct open_alert *alerts;
    struct fault fault = {""};
    size_t alert_count = 0;
    int64_t waiting = 0;
    int64_t oldest_utc_s = INT64_MAX;
    bool is_readable =
        outbox_rows_waiting(parts->store, &waiting, &oldest_utc_s, &fault) == 0 &&
        alert_rows_open_of(parts->store, arena, NULL, &alerts, &alert_count, &fault) == 0;
    bool is_writable = is_readable && !turn_store_is_broken(parts->turn);
    json_t *health;
    char *dumped;
    char *text;

    *is_well = is_writable;
    health = memory_must(json_pack(
        "{s:s, s:{s:b, s:b}, s:{s:I, s:I}, s:{s:I}, s:s, s:s}", "status",
        *is_well ? "well" : "store-broken", "store", "readable", is_readable, "writable",
        is_writable, "outbox", "due", (json_int_t)waiting, "oldest_s",
        (json_int_t)(oldest_utc_s < parts->now_utc_s ? parts->now_utc_s - oldest_utc_s : 0),
        "alerts", "open", (json_int_t)alert_count, "kb", kb_digest(parts->kb), "version",
        HUTBELL_VERSION));
    dumped = memory_must(json_dumps(health, JSON_COMPACT));
    text = memory_format(arena, "%s\n", dumped);
    free(dumped);
    json_decref(health);
    return text;
}
