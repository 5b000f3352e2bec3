#include "verdict_json.h"

#include <stdlib.h>
#include <string.h>

#include <jansson.h>

#include "memory.h"
#include "parts.h"
#include "told_json.h"

/* Words of a renter that are not UTF-8 after all are left out rather than making it fail. */
static json_t *
text_or_null(const char *text)
{
    json_t *string = text == NULL ? NULL : json_string(text);

    return string == NULL ? json_null() : string;
}

static json_t *
estimate_json(const struct estimate *estimate)
{
    json_t *object = memory_must(json_pack(
        "{s:s, s:i, s:i, s:i, s:I}", "kind", estimate_kind_name(estimate->kind), "low_minutes",
        estimate->minutes.low, "high_minutes", estimate->minutes.high, "batteries",
        estimate->batteries, "from_utc_s", (json_int_t)estimate->from_utc_s));
    int setting = estimate->setting_tenths;

    if (estimate->mode != MODE_COUNT) {
        json_object_set_new(object, "mode", json_string(mode_name(estimate->mode)));
        json_object_set_new(object, "activity", json_string(activity_name(estimate->activity)));
        json_object_set_new(object, "setting",
                            setting % 10 == 0 ? json_integer(setting / 10)
                                              : json_real(setting / 10.0));
    }
    json_object_set_new(object, "assumed", text_or_null(estimate->assumed));
    if (estimate->trip != NULL) {
        const struct trip_estimate *trip = estimate->trip;
        json_t *more = memory_must(
            json_pack("{s:i, s:b, s:i, s:i, s:o}", "total_minutes", trip->total_minutes, "lasts",
                      trip->lasts, "short_minutes", trip->short_minutes, "margin_minutes",
                      trip->margin_minutes, "mend", text_or_null(trip->mend)));

        json_object_update(object, more);
        json_decref(more);
    }
    return object;
}

static json_t *
answer_json(const struct answer *answer)
{
    return memory_must(json_pack(
        "{s:s, s:o, s:o, s:o, s:o, s:o, s:{s:i, s:o, s:o}}", "kind", answer_kind_name(answer->kind),
        "id", text_or_null(answer->id), "text", text_or_null(answer->text), "asks",
        text_or_null(answer->read == NULL ? NULL : told_kind_name(answer->read->kind)), "read",
        answer->read == NULL ? json_null() : told_json(answer->read), "estimate",
        answer->estimate == NULL ? json_null() : estimate_json(answer->estimate), "why", "score",
        answer->why.score, "nearest", text_or_null(answer->why.nearest), "runner_up",
        text_or_null(answer->why.runner_up)));
}

static bool
is_listed(const json_t *list, const char *text)
{
    json_t *entry;
    size_t i;

    json_array_foreach (list, i, entry) {
        if (strcmp(json_string_value(entry), text) == 0) {
            return true;
        }
    }
    return false;
}

/* Topics answered, first the one asked first, each once. */
static json_t *
topics_json(const struct verdict *verdict)
{
    json_t *list = memory_must(json_array());
    size_t i;

    for (i = 0; i < verdict->answer_count; i++) {
        const char *topic = verdict->answers[i].topic;

        if (topic != NULL && !is_listed(list, topic)) {
            json_array_append_new(list, memory_must(json_string(topic)));
        }
    }
    return list;
}

static json_t *
answers_json(const struct verdict *verdict)
{
    json_t *list = memory_must(json_array());
    size_t i;

    for (i = 0; i < verdict->answer_count; i++) {
        json_array_append_new(list, answer_json(&verdict->answers[i]));
    }
    return list;
}

static json_t *
replies_json(const struct verdict *verdict, json_int_t *parts)
{
    json_t *list = memory_must(json_array());
    size_t i;

    *parts = 0;
    for (i = 0; i < verdict->reply_count; i++) {
        json_array_append_new(list, text_or_null(verdict->replies[i].text));
        *parts += (json_int_t)parts_count(verdict->replies[i].text).parts;
    }
    return list;
}

static json_t *
alert_json(const struct alert_call *alert)
{
    if (alert->level == ALERT_NONE) {
        return json_null();
    }
    return memory_must(json_pack("{s:s, s:o}", "level", alert_level_name(alert->level), "reason",
                                 text_or_null(alert->reason)));
}

char *
verdict_json(void *arena, const char *id, const struct verdict *verdict)
{
    json_int_t parts;
    json_t *replies = replies_json(verdict, &parts);
    json_t *object = memory_must(
        json_pack("{s:o, s:s, s:o, s:s, s:o, s:o, s:I, s:o}", "id", text_or_null(id), "route",
                  route_name(verdict->route), "topics", topics_json(verdict), "language",
                  language_code(verdict->language), "answers", answers_json(verdict), "replies",
                  replies, "parts", parts, "alert", alert_json(&verdict->alert)));
    char *dumped = memory_must(json_dumps(object, JSON_COMPACT | JSON_REAL_PRECISION(6)));
    char *line = memory_copy(arena, dumped);

    free(dumped);
    json_decref(object);
    return line;
}
