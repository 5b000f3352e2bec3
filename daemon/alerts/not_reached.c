#include "not_reached.h"

#include <assert.h>
#include <string.h>

#include "alert_renters.h"
#include "alert_text.h"
#include "backoff.h"
#include "duty.h"
#include "log.h"
#include "notice.h"

/* ---- A renter ------------------------------------------------------------------------------- */

/* One of staff is told that the renter must be rung, which counts as a call about the alert. */
static int
tell(const struct caller *caller, const struct alert_row *alert, const char *phone,
     const char *text, struct fault *fault)
{
    const struct staff unknown = {.name = "staff", .phone = phone};
    const struct staff *staff = config_staff_by_phone(caller->config, phone);
    struct call call = {.alert = alert,
                        .staff = staff != NULL ? staff : &unknown,
                        .event = ALERT_CALLED,
                        .give_up_utc_s = caller->now_utc_s + caller->config->limits.give_up_s,
                        .text = text};

    call.roads = roads_for(caller->config, call.staff, alert->level, true);
    return calls_make(caller, &call, fault);
}

/* Whoever has the alert is told; if nobody has, everyone on call, of an office alert the first. */
static int
tell_holders(const struct caller *caller, const struct alert_row *alert, struct fault *fault)
{
    struct duty duty;
    const struct alert_times *times = &caller->config->alert_times[alert->level];
    const char *text =
        alert_text_not_reached(caller->arena, alert->level, alert->number, alert->phone);
    int64_t wait_s;
    size_t i;

    if (duty_now(caller->store, caller->arena, caller->config, caller->now_utc_s, &duty, fault) !=
        0) {
        return -1;
    }
    if (alert->taken_by != NULL && tell(caller, alert, alert->taken_by, text, fault) != 0) {
        return -1;
    }
    for (i = 0; alert->taken_by == NULL && i < (alert->level == ALERT_OFFICE ? 1 : duty.count);
         i++) {
        if (tell(caller, alert, duty.line[i]->phone, text, fault) != 0) {
            return -1;
        }
    }
    /* However often texts are lost, the calls that are due anyway come no later for it. */
    wait_s = alert->taken_by != NULL ? times->recheck_s : times->next_s;
    return wait_s > 0 ? alert_rows_bring_forward(caller->store, alert->number,
                                                 caller->now_utc_s + wait_s, fault)
                      : 0;
}

/* The open alert as it is told; *found false if it is closed. */
static int
load(const struct caller *caller, int64_t number, struct alert_row *alert, bool *found,
     struct fault *fault)
{
    if (alert_rows_find(caller->store, caller->arena, number, alert, found, fault) != 0) {
        return -1;
    }
    return *found ? alert_renters(caller->store, caller->arena, caller->config, alert, fault) : 0;
}

static int
renter_not_reached(const struct caller *caller, const struct outbox_row *row, struct fault *fault)
{
    /* A new one is called as any alert; the call about an open one would name its older reason. */
    const struct alert_row lost = {.level = calls_level(row->urgency),
                                   .phone = row->to,
                                   .reason = "not-reached",
                                   .brief = "not reached by text",
                                   .text_id = row->text_id,
                                   .next_utc_s = INT64_MAX,
                                   .ring = true};
    struct alert_row alert;
    bool is_first, is_new, found;
    int64_t number;

    /* The second text of one reply, lost like the first, is no news: staff are told once. */
    if (outbox_rows_failed_once(caller->store, row, &is_first, fault) != 0) {
        return -1;
    }
    if (!is_first) {
        return 0;
    }
    if (alert_rows_open(caller->store, &lost, caller->now_utc_s, &number, &is_new, fault) != 0) {
        return -1;
    }
    if (is_new) {
        return alert_rows_bring_forward(caller->store, number, caller->now_utc_s, fault);
    }
    if (load(caller, number, &alert, &found, fault) != 0) {
        return -1;
    }
    assert(found);         /* this transaction has just added to it */
    alert.phone = row->to; /* it may have begun by another phone of the rental */
    return tell_holders(caller, &alert, fault);
}

/* ---- Staff ---------------------------------------------------------------------------------- */

/* One road to one of staff that failed, and the alert that the call was about. */
struct failed {
    const struct outbox_row *row;
    const struct alert_row *alert;
    enum outbox_event event;
    bool is_final; /* it will not be tried again */
};

static bool
is_final(enum outbox_event event)
{
    return event == OUTBOX_REFUSED || event == OUTBOX_UNDELIVERED || event == OUTBOX_GIVEN_UP;
}

/* If no further call about the alert is to come by itself, one is made later. */
static int
call_later(const struct caller *caller, const struct outbox_row *row, struct fault *fault)
{
    return alert_rows_call_again(caller->store, row->alert_id,
                                 caller->now_utc_s + backoff_for(row->urgency).longest_s, fault);
}

/*
 * The next in line, unless they were called since. What stutters may still come right, so for that
 * alone they are called only if there is another road to them.
 */
static int
call_next(const struct caller *caller, const struct failed *failed, unsigned failed_roads,
          struct fault *fault)
{
    const struct outbox_row *row = failed->row;
    struct duty duty;
    size_t place;
    struct call call = {.alert = failed->alert,
                        .event = ALERT_CALLED,
                        .give_up_utc_s = caller->now_utc_s + caller->config->limits.give_up_s};
    bool is_called;

    if (duty_now(caller->store, caller->arena, caller->config, caller->now_utc_s, &duty, fault) !=
        0) {
        return -1;
    }
    place = duty_place(&duty, row->to);
    if (place + 1 >= duty.count) { /* there is nobody further down the line */
        return failed->is_final ? call_later(caller, row, fault) : 0;
    }
    call.staff = duty.line[place + 1];
    call.roads = roads_for(caller->config, call.staff, failed->alert->level,
                           failed->alert->level != ALERT_OFFICE);
    if (!failed->is_final && (call.roads & ~failed_roads) == 0) {
        return 0;
    }
    if (alert_rows_is_called_since(caller->store, row->alert_id, call.staff->phone, row->call_id,
                                   &is_called, fault) != 0) {
        return -1;
    }
    if (is_called) {
        return 0;
    }
    log_event(LOG_ERROR_LEVEL, "staff-not-reached", "alert", log_number(row->alert_id), "to",
              log_phone(row->to), "next", call.staff->name, NULL);
    return calls_make(caller, &call, fault);
}

static int
use_other_roads(const struct caller *caller, const struct failed *failed, const struct staff *staff,
                struct fault *fault)
{
    const struct outbox_row *row = failed->row;
    struct call call = {.alert = failed->alert,
                        .staff = staff,
                        .give_up_utc_s =
                            row->give_up_utc_s > caller->now_utc_s
                                ? row->give_up_utc_s
                                : caller->now_utc_s + caller->config->limits.give_up_s};
    struct outbox_call so_far;

    if (outbox_rows_call(caller->store, row->call_id, row->to, &so_far, fault) != 0) {
        return -1;
    }
    if (staff != NULL) {
        call.roads = roads_instead(caller->config, staff, failed->alert->level, so_far.used,
                                   failed->is_final);
    }
    if (call.roads != 0) {
        log_event(LOG_WARNING, "other-roads", "alert", log_number(row->alert_id), "to",
                  log_phone(row->to), "failed", road_name(row->road), NULL);
        return calls_add_roads(caller, &call, row->call_id, fault);
    }
    if ((so_far.used & ~so_far.failed) != 0) {
        return 0; /* another road to this person has not failed */
    }
    return failed->event == OUTBOX_GIVEN_UP ? call_later(caller, row, fault)
                                            : call_next(caller, failed, so_far.failed, fault);
}

static int
staff_not_reached(const struct caller *caller, const struct outbox_row *row,
                  enum outbox_event event, struct fault *fault)
{
    struct failed failed = {.row = row, .event = event, .is_final = is_final(event)};
    struct alert_row alert;
    bool is_dropped, is_open;

    if (!failed.is_final && row->attempts > 0 && event != OUTBOX_NOT_CONFIRMED) {
        return 0; /* the first try has said so */
    }
    if (outbox_rows_is_dropped(caller->store, row->id, &is_dropped, fault) != 0 ||
        load(caller, row->alert_id, &alert, &is_open, fault) != 0) {
        return -1;
    }
    if (is_dropped || !is_open ||
        (alert.taken_by != NULL && strcmp(alert.taken_by, row->to) != 0)) {
        return 0;
    }
    failed.alert = &alert;
    return use_other_roads(caller, &failed, config_staff_by_phone(caller->config, row->to), fault);
}

/* A text that answers none: of a notice, the office hears once for all of it. */
static int
notice_or_renter(const struct caller *caller, const struct outbox_row *row, struct fault *fault)
{
    bool is_urgent = row->urgency < URGENCY_OFFICE;
    int64_t notice = 0;

    if (row->text_id == 0 && notice_rows_of_outbox(caller->store, row->id, &notice, fault) != 0) {
        return -1;
    }
    return notice != 0 ? notice_not_reached(caller->store, caller->config, notice, is_urgent,
                                            caller->now_utc_s, fault)
                       : renter_not_reached(caller, row, fault);
}

int
not_reached(const struct caller *caller, const struct outbox_row *row, enum outbox_event event,
            struct fault *fault)
{
    return row->about == OUTBOX_ALERT ? staff_not_reached(caller, row, event, fault)
                                      : notice_or_renter(caller, row, fault);
}
