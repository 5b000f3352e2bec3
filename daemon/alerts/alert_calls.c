#include "alert_calls.h"

#include <string.h>

#include "alert_renters.h"
#include "alert_rows.h"
#include "alert_steps.h"
#include "alert_text.h"
#include "answer_rows.h"
#include "duty.h"
#include "log.h"
#include "memory.h"
#include "nobody_yet.h"
#include "talk.h"
#include "talk_rows.h"
#include "unanswered.h"

static struct alert_call_step
step_of(const struct config *config, const struct duty *duty, const struct alert_row *alert,
        int64_t now_utc_s)
{
    const struct alert_times *times = &config->alert_times[alert->level];
    const struct alert_policy policy = {.next_s = times->next_s,
                                        .everyone_s = times->everyone_s,
                                        .recheck_s = times->recheck_s,
                                        .again_s = times->again_s};
    bool is_office = alert->level == ALERT_OFFICE;
    struct alert_state state = {.level_utc_s = is_office
                                                   ? duty_office_opens(config, alert->level_utc_s)
                                                   : alert->level_utc_s,
                                .people_called = alert->people_called};
    struct alert_call_step step;

    if (alert->taken_by != NULL) {
        state.is_taken = true;
        state.taken_utc_s = alert->taken_utc_s;
        state.taken_place = duty_place(duty, alert->taken_by);
    }
    step = alert_steps_due(&state, &policy, now_utc_s, duty->count);
    if (is_office && step.next_utc_s != INT64_MAX) {
        step.next_utc_s = duty_office_opens(config, step.next_utc_s);
    }
    return step;
}

/* Whom one step of an alert calls, and how. */
struct calling {
    const struct caller *caller;
    const struct alert_row *alert;
    struct alert_call_step step;
    struct duty duty;
    bool is_recheck;
    bool is_offer_over; /* it was passed on, and nobody took it in time */
};

static struct call
call_of(const struct calling *calling, const struct staff *staff)
{
    const struct caller *caller = calling->caller;
    const struct alert_row *alert = calling->alert;
    bool may_ring = alert->ring || (alert->level != ALERT_OFFICE && alert->calls > 0);
    struct call call = {.alert = alert,
                        .staff = staff,
                        .event = calling->is_recheck ? ALERT_RECHECKED : ALERT_CALLED,
                        .roads = roads_for(caller->config, staff, alert->level, may_ring)};
    int64_t give_up_s = caller->config->limits.give_up_s;

    call.give_up_utc_s = calling->step.next_utc_s < caller->now_utc_s + give_up_s
                             ? calling->step.next_utc_s
                             : caller->now_utc_s + give_up_s;
    if (calling->is_offer_over && strcmp(staff->phone, alert->taken_by) == 0) {
        const struct staff *asked = config_staff_by_phone(caller->config, alert->offered_to);

        call.text = alert_text_not_passed_on(caller->arena, asked != NULL ? asked->name : "Nobody",
                                             alert_text(caller->arena, alert, NULL));
    } else if (!calling->is_recheck && alert->taken_by != NULL &&
               strcmp(staff->phone, alert->taken_by) == 0) {
        call.text = alert_text_joined(caller->arena, alert);
    }
    return call;
}

static void
note(const struct caller *caller, struct alert_calls *calls, const struct calling *calling,
     const struct staff *staff)
{
    calls->list = memory_grow(caller->arena, struct called, calls->list, calls->count);
    calls->list[calls->count++] = (struct called){calling->alert->number, calling->alert->level,
                                                  calling->is_recheck, staff->name};
}

/*
 * Calls whoever this step of an alert calls. What is still unsent when the next call is due is
 * dropped for that one: after an hour without gateway staff get the newest call, not thirty. One
 * that is not to ring at first rings once nobody took it in time.
 */
static int
call(const struct caller *caller, const struct alert_row *alert, struct alert_calls *calls,
     struct fault *fault)
{
    int64_t recheck_s = caller->config->alert_times[alert->level].recheck_s;
    int64_t now_utc_s = caller->now_utc_s;
    bool is_offered = alert->offered_to != NULL && alert->taken_by != NULL;
    struct calling calling = {.caller = caller, .alert = alert};
    int64_t next_utc_s;
    size_t i;

    if (duty_now(caller->store, caller->arena, caller->config, now_utc_s, &calling.duty, fault) !=
        0) {
        return -1;
    }
    duty_leave_out(caller->arena, &calling.duty, alert->phone);
    calling.is_offer_over = is_offered && now_utc_s >= alert->offer_ends_utc_s;
    calling.is_recheck = calling.is_offer_over || (alert->taken_by != NULL && recheck_s > 0 &&
                                                   now_utc_s - alert->taken_utc_s >= recheck_s);
    calling.step = step_of(caller->config, &calling.duty, alert, now_utc_s);
    for (i = 0; i < calling.step.count; i++) {
        const struct staff *staff = calling.duty.line[(calling.step.from + i) % calling.duty.count];
        const struct call one = call_of(&calling, staff);

        if (calls_make(caller, &one, fault) != 0) {
            return -1;
        }
        note(caller, calls, &calling, staff);
    }
    next_utc_s = calling.step.next_utc_s;
    if (calling.is_offer_over && alert_rows_offer_over(caller->store, alert->number, fault) != 0) {
        return -1;
    }
    if (is_offered && !calling.is_offer_over && alert->offer_ends_utc_s < next_utc_s) {
        next_utc_s = alert->offer_ends_utc_s;
    }
    return alert_rows_next_call(caller->store, alert->number, next_utc_s, fault);
}

int
alert_calls_make(const struct caller *caller, struct alert_calls *calls, struct fault *fault)
{
    struct alert_row *rows;
    size_t i;

    *calls = (struct alert_calls){0};
    if (unanswered_call(caller->store, caller->arena, caller->now_utc_s, fault) != 0 ||
        talk_lapse(caller, fault) != 0 ||
        alert_rows_due(caller->store, caller->arena, caller->now_utc_s, &rows, &calls->due,
                       fault) != 0) {
        return -1;
    }
    for (i = 0; i < calls->due; i++) {
        if (alert_renters(caller->store, caller->arena, caller->config, &rows[i], fault) != 0 ||
            call(caller, &rows[i], calls, fault) != 0 ||
            nobody_yet_tell(caller, &rows[i], fault) != 0) {
            log_event(LOG_ERROR_LEVEL, "alert-not-called", "alert", log_number(rows[i].number),
                      "why", fault->text, NULL);
            calls->failed++;
        }
    }
    return 0;
}

int
alert_calls_next(struct store *store, int64_t *next_utc_s, struct fault *fault)
{
    int64_t answer_utc_s, talk_utc_s;

    if (alert_rows_next(store, next_utc_s, fault) != 0 ||
        answer_rows_next(store, &answer_utc_s, fault) != 0 ||
        talk_rows_next(store, &talk_utc_s, fault) != 0) {
        return -1;
    }
    *next_utc_s = answer_utc_s < *next_utc_s ? answer_utc_s : *next_utc_s;
    *next_utc_s = talk_utc_s < *next_utc_s ? talk_utc_s : *next_utc_s;
    return 0;
}
