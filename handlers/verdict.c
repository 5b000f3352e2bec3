#include "verdict.h"

#include <assert.h>
#include <string.h>

#include "memory.h"

static const char *const route_names[] = {
    [ROUTE_EMERGENCY] = "emergency",   [ROUTE_CLINICAL] = "clinical",
    [ROUTE_EQUIPMENT] = "equipment",   [ROUTE_STAFF] = "staff",
    [ROUTE_UNANSWERED] = "unanswered", [ROUTE_ANSWER] = "answer",
    [ROUTE_CONSENT] = "consent",       [ROUTE_SMALLTALK] = "smalltalk",
};

static const char *const answer_kind_names[] = {
    [ANSWER_SIGN] = "sign",       [ANSWER_TOPIC] = "topic",       [ANSWER_ESTIMATE] = "estimate",
    [ANSWER_ASK] = "ask",         [ANSWER_OFFICE] = "office",     [ANSWER_GAP] = "gap",
    [ANSWER_CONSENT] = "consent", [ANSWER_COURTESY] = "courtesy",
};

static const char *const estimate_kind_names[] = {
    [ESTIMATE_HOURS_LEFT] = "hours-left", [ESTIMATE_BATTERY_LIFE] = "battery-life",
    [ESTIMATE_CHARGING] = "charging",     [ESTIMATE_TRIP] = "trip",
    [ESTIMATE_FLIGHT] = "flight",         [ESTIMATE_CYLINDER] = "cylinder",
};

static const char *const alert_level_names[] = {
    [ALERT_NONE] = "none",
    [ALERT_OFFICE] = "office",
    [ALERT_URGENT] = "urgent",
    [ALERT_EMERGENCY] = "emergency",
};

const char *
route_name(enum route route)
{
    return route_names[route];
}

const char *
answer_kind_name(enum answer_kind kind)
{
    return answer_kind_names[kind];
}

const char *
estimate_kind_name(enum estimate_kind kind)
{
    return estimate_kind_names[kind];
}

const char *
alert_level_name(enum alert_level level)
{
    return alert_level_names[level];
}

static const char overflow[] = "too-many-questions";

bool
verdict_overflowed(const struct verdict *verdict)
{
    return verdict->answer_count == VERDICT_ANSWERS_MAX &&
           strcmp(verdict->answers[VERDICT_ANSWERS_MAX - 1].id, overflow) == 0;
}

struct answer *
verdict_add(struct verdict *verdict, enum answer_kind kind, enum route route, const char *id)
{
    struct answer *answer;

    assert(id != NULL);
    if (verdict->answer_count < VERDICT_ANSWERS_MAX) {
        answer = &verdict->answers[verdict->answer_count++];
    } else {
        answer = &verdict->answers[VERDICT_ANSWERS_MAX - 1];
        kind = ANSWER_GAP;
        route = ROUTE_UNANSWERED;
        id = overflow;
    }
    *answer = (struct answer){.kind = kind, .route = route, .id = id, .text = ""};
    if (verdict->answer_count == 1 || route < verdict->route) {
        verdict->route = route;
    }
    return answer;
}

/* Staff hear of each thing, as long as it fits a text. */
static void
say_too(struct verdict *verdict, const char *brief)
{
    enum { LONGEST = 60 };
    const char *before = verdict->alert.brief;

    if (strstr(before, brief) == NULL && strlen(before) + strlen(brief) < LONGEST) {
        verdict->alert.brief = memory_format(verdict->arena, "%s + %s", before, brief);
    }
}

void
verdict_alert(struct verdict *verdict, enum alert_level level, bool ring, const char *reason,
              const char *brief)
{
    if (level > verdict->alert.level) {
        verdict->alert.level = level;
        verdict->alert.reason = reason;
        verdict->alert.brief = brief;
    } else if (level == verdict->alert.level) {
        say_too(verdict, brief);
    }
    verdict->alert.ring = verdict->alert.ring || ring;
}
