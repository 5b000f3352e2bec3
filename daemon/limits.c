#include "limits.h"

#include "about_us.h"
#include "limit_rows.h"

enum { DAY_S = 86400, ECHO_S = 86400 };

/* Staff on a busy night write much, but never the same again and again: only a machine does. */
static int
is_over_own(struct store *store, const struct config *config, const struct limit_texts *texts,
            bool is_staff, bool *is_over, struct fault *fault)
{
    const struct flood_limits *floods = &config->floods;
    struct limit_texts asked = *texts;
    int sender = floods->sender_texts, same_most = floods->same_texts;
    int count, same;

    asked.since_utc_s = texts->since_utc_s - floods->window_s;
    asked.most = (sender > same_most ? sender : same_most) + 1;
    if (limit_rows_texts(store, &asked, &count, &same, fault) != 0) {
        return -1;
    }
    *is_over = (same_most > 0 && same >= same_most) || (!is_staff && sender > 0 && count >= sender);
    if (*is_over || is_staff || floods->day_texts == 0) {
        return 0;
    }
    asked.since_utc_s = texts->since_utc_s - DAY_S;
    asked.most = floods->day_texts;
    if (limit_rows_texts(store, &asked, &count, &same, fault) != 0) {
        return -1;
    }
    *is_over = count >= floods->day_texts;
    return 0;
}

static int
is_over_all(struct store *store, const struct config *config, int64_t now_utc_s, bool *is_over,
            struct fault *fault)
{
    const struct flood_limits *floods = &config->floods;
    int count = 0;

    if (floods->replies > 0 && limit_rows_replies(store, now_utc_s - floods->window_s,
                                                  floods->replies, &count, fault) != 0) {
        return -1;
    }
    *is_over = floods->replies > 0 && count >= floods->replies;
    return 0;
}

int
limits_gather(struct store *store, const struct config *config, const struct message *message,
              int64_t text_id, struct context *context, struct fault *fault)
{
    const struct limit_texts texts = {.sender = message->sender,
                                      .body = message->text,
                                      .text_id = text_id,
                                      .since_utc_s = message->received_utc_s};
    int64_t window_s = config->floods.window_s;
    bool is_staff = context->role == SENDER_STAFF, is_over, is_over_for_all = false;

    if (limit_rows_is_ours(store, message->sender, message->text, context->now_utc_s - ECHO_S,
                           &context->is_echo, fault) != 0 ||
        is_over_own(store, config, &texts, is_staff, &is_over, fault) != 0 ||
        (!is_over && !is_staff &&
         is_over_all(store, config, context->now_utc_s, &is_over_for_all, fault) != 0)) {
        return -1;
    }
    context->limit = is_over ? LIMIT_SENDER : is_over_for_all ? LIMIT_ALL : LIMIT_NONE;
    return context->limit == LIMIT_NONE
               ? 0
               : limit_rows_was_over(store, message->sender, context->now_utc_s - window_s,
                                     &context->limit_told, fault);
}

/* Everybody together: whoever is on call must know that only signs are answered. */
static int
note_all(struct store *store, const struct config *config, int64_t now_utc_s, struct fault *fault)
{
    bool was_over;
    int64_t number;

    if (limit_rows_was_over(store, ALERT_ABOUT_US, now_utc_s - config->floods.window_s, &was_over,
                            fault) != 0 ||
        limit_rows_over(store, ALERT_ABOUT_US, now_utc_s, !was_over, fault) != 0) {
        return -1;
    }
    return was_over ? 0
                    : about_us(config, store, ALERT_URGENT, "us:flood",
                               "flood of texts, answers held back", now_utc_s, &number, fault);
}

int
limits_note(struct store *store, const struct config *config, const struct message *message,
            const struct context *context, struct fault *fault)
{
    if (context->limit == LIMIT_NONE) {
        return 0;
    }
    if (context->limit == LIMIT_ALL && note_all(store, config, context->now_utc_s, fault) != 0) {
        return -1;
    }
    return limit_rows_over(store, message->sender, context->now_utc_s, !context->limit_told, fault);
}
