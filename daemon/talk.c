#include "talk.h"

#include "answer_rows.h"
#include "handlers.h"
#include "log.h"
#include "talk_rows.h"

static int64_t
patience_s(const struct config *config, enum alert_level level)
{
    return level >= ALERT_URGENT ? config->limits.talk_urgent_s : config->limits.talk_s;
}

int
talk_begin(const struct caller *caller, const struct alert_row *alert, const char *who, bool wrote,
           int64_t text_id, struct fault *fault)
{
    const struct talk_row row = {.phone = alert->phone,
                                 .who = who,
                                 .alert_number = alert->number,
                                 .due_utc_s = wrote ? INT64_MAX
                                                    : caller->now_utc_s +
                                                          patience_s(caller->config, alert->level)};

    return talk_rows_begin(caller->store, &row, text_id, fault);
}

int
talk_show(const struct caller *caller, int64_t alert_number, const char *to, const char *words,
          int64_t text_id, struct fault *fault)
{
    struct outbox_new row = {.about = OUTBOX_ALERT,
                             .text_id = text_id,
                             .alert_id = alert_number,
                             .road = ROAD_TEXT,
                             .gateway = calls_carrier(caller->config, ROAD_TEXT),
                             .to = to,
                             .body = words,
                             .now_utc_s = caller->now_utc_s,
                             .give_up_utc_s = caller->now_utc_s + caller->config->limits.give_up_s};
    struct alert_row alert;
    bool is_open;
    int64_t id;

    if (alert_rows_find(caller->store, caller->arena, alert_number, &alert, &is_open, fault) != 0) {
        return -1;
    }
    if (!is_open) {
        return 0;
    }
    row.urgency = calls_urgency(alert.level);
    return outbox_rows_add(caller->store, &row, &id, fault);
}

int
talk_pass_on(const struct caller *caller, const char *phone, const char *words, int64_t text_id,
             struct fault *fault)
{
    struct alert_row alert;
    struct talk_row talk;
    bool found, is_open;

    if (talk_rows_find(caller->store, caller->arena, phone, &talk, &found, fault) != 0 ||
        (found && alert_rows_find(caller->store, caller->arena, talk.alert_number, &alert, &is_open,
                                  fault) != 0)) {
        return -1;
    }
    if (!found || !is_open) {
        return 0; /* a text that is worked out again, and the talk has ended since */
    }
    if (talk_show(caller, talk.alert_number, talk.who, words, text_id, fault) != 0 ||
        answer_rows_rest(caller->store, phone, text_id, fault) != 0) { /* they are not silent */
        return -1;
    }
    return talk_rows_wait(caller->store, phone,
                          caller->now_utc_s + patience_s(caller->config, alert.level), fault);
}

int
talk_follow(const struct caller *caller, int64_t alert_number, const char *who, struct fault *fault)
{
    struct talk_row *rows;
    size_t count, i;

    if (talk_rows_of_alert(caller->store, caller->arena, alert_number, &rows, &count, fault) != 0) {
        return -1;
    }
    for (i = 0; i < count; i++) {
        rows[i].who = who;
        if (talk_rows_begin(caller->store, &rows[i], 0, fault) != 0) {
            return -1;
        }
    }
    return 0;
}

int
talk_gateway(const struct caller *caller, const char *phone, const char **gateway,
             struct fault *fault)
{
    struct talk_renter renter;

    if (talk_rows_renter(caller->store, caller->arena, phone, &renter, fault) != 0) {
        return -1;
    }
    *gateway = renter.gateway != NULL && config_gateway(caller->config, renter.gateway) != NULL
                   ? renter.gateway
                   : caller->config->reply_gateway;
    return 0;
}

/* The program has the conversation again, and says so. */
static int
hand_back(const struct caller *caller, const struct talk_row *talk, enum talk_end end,
          enum urgency urgency, struct fault *fault)
{
    struct outbox_new row = {.about = OUTBOX_REPLY,
                             .road = ROAD_TEXT,
                             .to = talk->phone,
                             .urgency = urgency,
                             .now_utc_s = caller->now_utc_s,
                             .give_up_utc_s = caller->now_utc_s + caller->config->limits.give_up_s};
    struct talk_renter renter;
    bool wants_silence;
    int64_t id;

    if (talk_rows_end(caller->store, talk->phone, fault) != 0 ||
        talk_rows_renter(caller->store, caller->arena, talk->phone, &renter, fault) != 0 ||
        alert_rows_open_because(caller->store, caller->arena, talk->phone, NO_REPLY_REASON,
                                &wants_silence, fault) != 0) {
        return -1;
    }
    if (renter.opted_out || wants_silence) {
        return 0;
    }
    row.body = handlers_talk_ends(caller->arena, &caller->config->house, renter.language, end);
    return talk_gateway(caller, talk->phone, &row.gateway, fault) != 0
               ? -1
               : outbox_rows_add(caller->store, &row, &id, fault);
}

int
talk_close(const struct caller *caller, int64_t alert_number, struct fault *fault)
{
    struct talk_row *rows;
    size_t count, i;

    if (talk_rows_of_alert(caller->store, caller->arena, alert_number, &rows, &count, fault) != 0) {
        return -1;
    }
    for (i = 0; i < count; i++) {
        if (hand_back(caller, &rows[i], TALK_CLOSED, URGENCY_REPLY, fault) != 0) {
            return -1;
        }
    }
    return 0;
}

static int
lapse(const struct caller *caller, const struct talk_row *talk, struct fault *fault)
{
    struct alert_row alert;
    bool is_open;
    int64_t number;
    bool is_new;

    if (hand_back(caller, talk, TALK_NO_WORD, URGENCY_URGENT, fault) != 0 ||
        alert_rows_find(caller->store, caller->arena, talk->alert_number, &alert, &is_open,
                        fault) != 0) {
        return -1;
    }
    if (!is_open) {
        return 0;
    }
    log_event(LOG_WARNING, "talk-without-word", "alert", log_number(talk->alert_number), "who",
              log_phone(talk->who), NULL);
    alert.reason = "no-word";
    alert.brief = "waits for an answer";
    alert.next_utc_s = caller->now_utc_s;
    return alert_rows_open(caller->store, &alert, caller->now_utc_s, &number, &is_new, fault) != 0
               ? -1
               : alert_rows_release(caller->store, talk->alert_number, caller->now_utc_s, fault);
}

int
talk_lapse(const struct caller *caller, struct fault *fault)
{
    struct talk_row *rows;
    size_t count, i;

    if (talk_rows_due(caller->store, caller->arena, caller->now_utc_s, &rows, &count, fault) != 0) {
        return -1;
    }
    for (i = 0; i < count; i++) {
        if (lapse(caller, &rows[i], fault) != 0) {
            return -1;
        }
    }
    return 0;
}
