#include "alerts.h"

#include <assert.h>

#include <event2/event.h>

#include "alert_calls.h"
#include "clock.h"
#include "log.h"
#include "memory.h"
#include "turn.h"
#include "turns.h"

enum {
    LOOK_AT_LEAST_EVERY_S = 60, /* rows are looked at anew, whatever a timer was set to */
    TRY_AGAIN_S = 5             /* after the store failed */
};

struct alerts {
    struct turn_job job; /* first: the turn's pointer is ours */
    struct alerts_parts parts;
    struct event *timer;
    bool job_waits, is_closed;
    int64_t not_before_utc_s; /* after a failure, so that it is not tried again each turn */
    struct alert_calls calls; /* by the job that is being written, in its arena */
};

static void
log_calls(const struct alerts *alerts)
{
    size_t i;

    for (i = 0; i < alerts->calls.count; i++) {
        const struct called *called = &alerts->calls.list[i];

        log_event(LOG_INFO, called->is_recheck ? "alert-rechecked" : "alert-called", "alert",
                  log_number(called->alert), "level", alert_level_name(called->level), "who",
                  called->who, NULL);
    }
}

static int
on_write(struct turn_job *job, struct store *store, void *arena, struct fault *fault)
{
    struct alerts *alerts = (struct alerts *)job;
    const struct caller caller = {.config = alerts->parts.config,
                                  .store = store,
                                  .arena = arena,
                                  .now_utc_s = clock_now_utc_s(alerts->parts.clock)};
    struct alert_calls *calls = &alerts->calls;

    if (alert_calls_make(&caller, calls, fault) != 0) {
        return -1;
    }
    if (calls->failed > 0) {
        alerts->not_before_utc_s = caller.now_utc_s + TRY_AGAIN_S;
    }
    if (turns_step(&caller, fault) != 0) {
        log_event(LOG_ERROR_LEVEL, "turn-not-confirmed", "why", fault->text, NULL);
        alerts->not_before_utc_s = caller.now_utc_s + TRY_AGAIN_S;
    }
    return calls->failed > 0 && calls->failed == calls->due ? -1 : 0;
}

static void
wait_for(struct alerts *alerts, int64_t seconds)
{
    struct timeval wait = clock_wait(alerts->parts.clock, seconds);

    evtimer_add(alerts->timer, &wait);
}

static void
on_done(struct turn_job *job, enum turn_outcome outcome, const struct fault *fault)
{
    struct alerts *alerts = (struct alerts *)job;

    alerts->job_waits = false;
    if (outcome == TURN_WRITTEN) {
        log_calls(alerts);
    } else {
        log_event(LOG_ERROR_LEVEL, "alerts-not-called", "why", fault->text, NULL);
        alerts->not_before_utc_s = clock_now_utc_s(alerts->parts.clock) + TRY_AGAIN_S;
    }
    alerts->calls = (struct alert_calls){0};
    alerts_look(alerts);
}

static void
on_timer(evutil_socket_t fd, short what, void *data)
{
    (void)fd;
    (void)what;
    alerts_look(data);
}

struct alerts *
alerts_new(const struct alerts_parts *parts)
{
    struct alerts *alerts = memory_new(NULL, struct alerts);

    alerts->job = (struct turn_job){.write = on_write, .done = on_done};
    alerts->parts = *parts;
    alerts->timer = memory_must(evtimer_new(parts->base, on_timer, alerts));
    return alerts;
}

void
alerts_free(struct alerts *alerts)
{
    if (alerts == NULL) {
        return;
    }
    assert(!alerts->job_waits); /* the turn is freed first, which tells its jobs */
    event_free(alerts->timer);
    talloc_free(alerts);
}

void
alerts_use(struct alerts *alerts, const struct config *config)
{
    alerts->parts.config = config;
    alerts_look(alerts);
}

/* The next call, the time by which a question must be answered, or a turn that begins. */
static int
next_step(const struct alerts *alerts, int64_t now_utc_s, int64_t *next_utc_s, struct fault *fault)
{
    struct store *store = alerts->parts.store;
    int64_t turn_utc_s;

    if (alert_calls_next(store, next_utc_s, fault) != 0 ||
        turns_next(store, alerts->parts.config, now_utc_s, &turn_utc_s, fault) != 0) {
        return -1;
    }
    *next_utc_s = turn_utc_s < *next_utc_s ? turn_utc_s : *next_utc_s;
    return 0;
}

void
alerts_look(struct alerts *alerts)
{
    int64_t now_utc_s = clock_now_utc_s(alerts->parts.clock);
    struct fault fault = {""};
    int64_t next_utc_s;

    if (alerts->is_closed || alerts->job_waits) {
        return;
    }
    if (now_utc_s < alerts->not_before_utc_s &&
        alerts->not_before_utc_s - now_utc_s <= TRY_AGAIN_S) {
        wait_for(alerts, alerts->not_before_utc_s - now_utc_s);
    } else if (next_step(alerts, now_utc_s, &next_utc_s, &fault) != 0) {
        log_event(LOG_ERROR_LEVEL, "alerts-not-read", "why", fault.text, NULL);
        wait_for(alerts, TRY_AGAIN_S);
    } else if (next_utc_s <= now_utc_s) {
        alerts->job_waits = true;
        turn_add(alerts->parts.turn, &alerts->job);
    } else {
        int64_t wait_s = next_utc_s - now_utc_s;

        wait_for(alerts, wait_s < LOOK_AT_LEAST_EVERY_S ? wait_s : LOOK_AT_LEAST_EVERY_S);
    }
}

void
alerts_close(struct alerts *alerts)
{
    alerts->is_closed = true;
    evtimer_del(alerts->timer);
}
