#include "alert_hands.h"

#include <assert.h>
#include <string.h>

#include "alert_group_rows.h"
#include "alert_renters.h"
#include "alert_text.h"
#include "duty.h"
#include "memory.h"
#include "nobody_yet.h"
#include "talk.h"

static const char *
name_of(const struct config *config, const char *phone)
{
    const struct staff *staff = config_staff_by_phone(config, phone);

    return staff != NULL ? staff->name : "someone else"; /* who has left since */
}

/* When to ask whoever takes it now for the outcome. */
static int64_t
recheck_utc_s(const struct config *config, enum alert_level level, int64_t now_utc_s)
{
    const struct alert_times *times = &config->alert_times[level];

    return times->recheck_s > 0 ? now_utc_s + times->recheck_s
           : times->again_s > 0 ? duty_office_opens(config, now_utc_s + times->again_s)
                                : INT64_MAX;
}

static int
tell_former(const struct caller *caller, const struct alert_row *alert,
            const struct alert_hand *hand, struct fault *fault)
{
    const struct outbox_new row = {
        .about = OUTBOX_ALERT,
        .alert_id = alert->number,
        .road = ROAD_TEXT,
        .gateway = calls_carrier(caller->config, ROAD_TEXT),
        .to = alert->taken_by,
        .body = alert_text_gone(caller->arena, alert->number, name_of(caller->config, hand->who)),
        .urgency = URGENCY_REPLY,
        .now_utc_s = hand->now_utc_s,
        .give_up_utc_s = hand->now_utc_s + caller->config->limits.give_up_s};
    int64_t id;

    return outbox_rows_add(caller->store, &row, &id, fault);
}

/* Calls that wait to be sent about it, and all that are called with it, are dropped; what is
 * written with their renters goes to who has them now, and who was told that nobody has it hears.
 */
static int
follow(const struct caller *caller, const struct alert_row *head, const struct alert_hand *hand,
       struct fault *fault)
{
    struct alert_renter *renters;
    size_t count, i;

    if (alert_group_renters(caller->store, caller->arena, head->number, &renters, &count, fault) !=
        0) {
        return -1;
    }
    for (i = 0; i < count; i++) {
        if (outbox_rows_quiet(caller->store, renters[i].number, hand->now_utc_s, fault) != 0 ||
            talk_follow(caller, renters[i].number, hand->who, fault) != 0 ||
            nobody_yet_taken(caller, &renters[i], head->level, name_of(caller->config, hand->who),
                             fault) != 0) {
            return -1;
        }
    }
    return 0;
}

int
alert_take(const struct caller *caller, int64_t number, const struct alert_hand *hand,
           enum hands_result *result, const char **holder, struct fault *fault)
{
    struct alert_row alert;
    bool is_open, is_taken, was_anothers;

    *result = HANDS_NOT_OPEN;
    if (alert_group_head(caller->store, number, &number, fault) != 0 ||
        alert_rows_find(caller->store, caller->arena, number, &alert, &is_open, fault) != 0) {
        return -1;
    }
    if (!is_open) {
        return 0;
    }
    if (alert_rows_take(caller->store, number, hand,
                        recheck_utc_s(caller->config, alert.level, hand->now_utc_s), &is_taken,
                        fault) != 0) {
        return -1;
    }
    *result = is_taken ? HANDS_DONE : HANDS_ANOTHERS;
    if (holder != NULL) {
        *holder = alert.taken_by;
    }
    if (!is_taken) {
        return 0;
    }
    was_anothers = alert.taken_by != NULL && strcmp(alert.taken_by, hand->who) != 0;
    if (follow(caller, &alert, hand, fault) != 0 ||
        alert_group_call_new(caller->store, number, hand->now_utc_s, fault) != 0) {
        return -1;
    }
    return was_anothers ? tell_former(caller, &alert, hand, fault) : 0;
}

int
alert_pass(const struct caller *caller, int64_t number, const struct alert_hand *hand,
           const char *to, enum hands_result *result, struct fault *fault)
{
    const struct staff *colleague = config_staff_by_phone(caller->config, to);
    struct call call = {.staff = colleague, .event = ALERT_CALLED};
    struct alert_row alert;
    const struct alert_times *times;
    bool is_open;

    assert(colleague != NULL);
    if (alert_group_head(caller->store, number, &number, fault) != 0 ||
        alert_take(caller, number, hand, result, NULL, fault) != 0) {
        return -1;
    }
    if (*result != HANDS_DONE) {
        return 0;
    }
    if (alert_rows_find(caller->store, caller->arena, number, &alert, &is_open, fault) != 0 ||
        alert_renters(caller->store, caller->arena, caller->config, &alert, fault) != 0) {
        return -1;
    }
    times = &caller->config->alert_times[alert.level];
    call.alert = &alert;
    call.roads = roads_for(caller->config, colleague, alert.level, alert.level != ALERT_OFFICE);
    call.give_up_utc_s =
        hand->now_utc_s + (times->next_s > 0 ? times->next_s : caller->config->limits.talk_s);
    call.text = alert_text_passed_on(caller->arena, name_of(caller->config, hand->who),
                                     alert_text(caller->arena, &alert, NULL));
    return alert_rows_offer(caller->store, number, hand, to, call.give_up_utc_s, fault) != 0
               ? -1
               : calls_make(caller, &call, fault);
}

int
alert_close_one(const struct caller *caller, int64_t number, const struct alert_hand *hand,
                const char *note, enum hands_result *result, struct fault *fault)
{
    bool is_closed;

    assert(note != NULL && note[0] != '\0');
    *result = HANDS_NOT_OPEN;
    if (alert_rows_close(caller->store, number, hand, note, &is_closed, fault) != 0) {
        return -1;
    }
    if (!is_closed) {
        return 0;
    }
    *result = HANDS_DONE;
    return outbox_rows_quiet(caller->store, number, hand->now_utc_s, fault) != 0
               ? -1
               : talk_close(caller, number, fault);
}

int
alert_close(const struct caller *caller, int64_t number, const struct alert_hand *hand,
            const char *note, enum hands_result *result, struct fault *fault)
{
    struct alert_renter *renters;
    enum hands_result other;
    size_t count, i;

    if (alert_group_renters(caller->store, caller->arena, number, &renters, &count, fault) != 0 ||
        alert_close_one(caller, number, hand, note, result, fault) != 0) {
        return -1;
    }
    for (i = 0; i < count; i++) {
        if (renters[i].number != number && !renters[i].is_new &&
            alert_close_one(caller, renters[i].number, hand, note, &other, fault) != 0) {
            return -1;
        }
    }
    return 0;
}

const char *
alert_hands_words(void *arena, const struct config *config, int64_t number, bool is_closing,
                  enum hands_result result, const char *holder)
{
    const struct staff *staff = holder != NULL ? config_staff_by_phone(config, holder) : NULL;

    switch (result) {
    case HANDS_DONE:
        return memory_format(arena, "Alert %lld is %s.", (long long)number,
                             is_closing ? "closed" : "yours");
    case HANDS_ANOTHERS:
        return memory_format(arena, "Alert %lld is with %s.", (long long)number,
                             staff != NULL ? staff->name : "someone else");
    default:
        return memory_format(arena, "Alert %lld is closed.", (long long)number);
    }
}
