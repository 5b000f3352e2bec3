#include "lately.h"

#include "found.h"

static int64_t
later(int64_t one, int64_t other)
{
    return one > other ? one : other;
}

int64_t
lately_alerted_utc_s(const struct context *context, const char *const *ids, size_t count)
{
    int64_t newest = 0;
    size_t i, j;

    for (i = 0; i < context->alert_count && context->role != SENDER_STAFF; i++) {
        const struct open_alert *alert = &context->alerts[i];
        int64_t told_utc_s = later(alert->opened_utc_s, alert->grave_utc_s);

        if (context->now_utc_s - told_utc_s > context->house->conversation_s ||
            context->now_utc_s - later(told_utc_s, context->conversation.last_utc_s) > LATELY_S) {
            continue;
        }
        for (j = 0; j < count; j++) {
            if (found_alert_tells(alert, ids[j])) {
                newest = later(newest, told_utc_s);
            }
        }
    }
    return newest;
}

int64_t
lately_reading_utc_s(const struct context *context)
{
    static const char *const ids[] = {"reading", "low-reading", "low-oxygen",
                                      "reading-and-symptom"};

    return lately_alerted_utc_s(context, ids, sizeof ids / sizeof ids[0]);
}
