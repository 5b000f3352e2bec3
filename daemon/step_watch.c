#include "step_watch.h"

#include <event2/event.h>

#include "backoff.h"
#include "clock.h"
#include "duty.h"
#include "log.h"
#include "memory.h"
#include "step_rows.h"
#include "turn.h"

enum { LOOK_EVERY_S = 10 };

struct step_watch {
    struct turn_job job; /* first: the turn's pointer is ours */
    struct step_watch_parts parts;
    struct event *timer;
    int64_t step_s; /* of the job that waits */
    bool job_waits, has_clamped;
};

static int64_t
larger(int64_t one, int64_t other)
{
    return one > other ? one : other;
}

static int64_t
longest_call_s(const struct alert_times *times)
{
    int64_t longest = larger(times->next_s, larger(times->everyone_s, times->recheck_s));

    return longest > 0 ? longest : times->again_s;
}

int
step_write(struct store *store, const struct config *config, int64_t step_s, int64_t now_utc_s,
           struct fault *fault)
{
    const struct limits *limits = &config->limits;
    const struct step_limits most = {
        .call_s = {[ALERT_URGENT] = longest_call_s(&config->alert_times[ALERT_URGENT]),
                   [ALERT_EMERGENCY] = longest_call_s(&config->alert_times[ALERT_EMERGENCY])},
        .office_call_utc_s =
            duty_office_opens(config, now_utc_s + config->alert_times[ALERT_OFFICE].again_s),
        .answer_s = larger(limits->flowing_s, limits->plug_s),
        .talk_s = larger(limits->talk_s, limits->talk_urgent_s),
        .send_s = backoff_for(URGENCY_OFFICE).longest_ask_s};

    if (step_s != 0 && step_rows_shift(store, step_s, fault) != 0) {
        return -1;
    }
    return step_rows_clamp(store, &most, now_utc_s, fault);
}

/* The clock shows the new time from here on, so that what the turn still writes goes by it. */
static int
on_write(struct turn_job *job, struct store *store, void *arena, struct fault *fault)
{
    struct step_watch *watch = (struct step_watch *)job;
    int64_t now_utc_s;

    (void)arena;
    watch->step_s = clock_step_s(watch->parts.clock);
    clock_move(watch->parts.clock, watch->step_s);
    now_utc_s = clock_now_utc_s(watch->parts.clock);
    return step_write(store, watch->parts.config, watch->step_s, now_utc_s, fault);
}

static void
on_done(struct turn_job *job, enum turn_outcome outcome, const struct fault *fault)
{
    struct step_watch *watch = (struct step_watch *)job;

    watch->job_waits = false;
    if (outcome != TURN_WRITTEN) {
        clock_move(watch->parts.clock, -watch->step_s);
        log_event(LOG_ERROR_LEVEL, "clock-step-not-written", "why", fault->text, NULL);
    } else {
        watch->has_clamped = true;
        if (watch->step_s != 0) {
            log_event(LOG_WARNING, "clock-stepped", "seconds", log_number(watch->step_s), NULL);
        }
    }
    watch->step_s = 0;
}

static void
on_timer(evutil_socket_t fd, short what, void *data)
{
    struct step_watch *watch = data;
    struct timeval wait = {.tv_sec = LOOK_EVERY_S};

    (void)fd;
    (void)what;
    evtimer_add(watch->timer, &wait);
    if (!watch->job_waits && (!watch->has_clamped || clock_step_s(watch->parts.clock) != 0)) {
        watch->job_waits = true;
        turn_add(watch->parts.turn, &watch->job);
    }
}

struct step_watch *
step_watch_new(const struct step_watch_parts *parts)
{
    struct step_watch *watch = memory_new(NULL, struct step_watch);

    watch->job = (struct turn_job){.write = on_write, .done = on_done};
    watch->parts = *parts;
    watch->timer = memory_must(evtimer_new(parts->base, on_timer, watch));
    on_timer(-1, 0, watch);
    return watch;
}

void
step_watch_free(struct step_watch *watch)
{
    if (watch == NULL) {
        return;
    }
    event_free(watch->timer);
    talloc_free(watch);
}

void
step_watch_use(struct step_watch *watch, const struct config *config)
{
    watch->parts.config = config;
}
