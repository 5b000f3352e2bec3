#include "self_watch.h"

#include <assert.h>
#include <errno.h>
#include <string.h>
#include <sys/statvfs.h>

#include <event2/event.h>
#include <glib.h>

#include "about_us.h"
#include "clock.h"
#include "config.h"
#include "log.h"
#include "memory.h"
#include "transfer.h"
#include "turn.h"

enum {
    DISK_LOOK_EVERY_S = 300,
    DISK_TELL_EVERY_S = 86400, /* while it stays low */
    PING_TIMEOUT_MS = 10000
};

struct self_watch {
    struct turn_job job; /* first: the turn's pointer is ours */
    struct self_watch_parts parts;
    struct event *disk_timer, *ping_timer;
    struct transfer *ping;
    int64_t told_utc_s; /* of the disk; 0: it was not low */
    bool job_waits;
};

static int64_t
now_of(const struct self_watch *watch)
{
    return clock_now_utc_s(watch->parts.clock);
}

/* ---- The disk ------------------------------------------------------------------------------- */

static bool
is_disk_low(const struct config *config)
{
    char *folder = g_path_get_dirname(config->database);
    struct statvfs disk;
    bool is_low = false;

    if (statvfs(folder, &disk) != 0) {
        log_event(LOG_ERROR_LEVEL, "disk-not-read", "why", g_strerror(errno), NULL);
    } else {
        is_low =
            (uint64_t)disk.f_bavail * disk.f_frsize < (uint64_t)config->disk_least_mb * 1000 * 1000;
    }
    g_free(folder);
    return is_low;
}

static int
on_write(struct turn_job *job, struct store *store, void *arena, struct fault *fault)
{
    struct self_watch *watch = (struct self_watch *)job;
    int64_t number;

    (void)arena;
    return about_us(watch->parts.config, store, ALERT_OFFICE, "us:disk", "disk nearly full",
                    now_of(watch), &number, fault);
}

static void
on_done(struct turn_job *job, enum turn_outcome outcome, const struct fault *fault)
{
    struct self_watch *watch = (struct self_watch *)job;

    watch->job_waits = false;
    if (outcome == TURN_WRITTEN) {
        watch->told_utc_s = now_of(watch);
    } else {
        log_event(LOG_ERROR_LEVEL, "disk-not-told", "why", fault->text, NULL);
    }
}

static void
on_disk_timer(evutil_socket_t fd, short what, void *data)
{
    struct self_watch *watch = data;
    struct timeval wait = clock_wait(watch->parts.clock, DISK_LOOK_EVERY_S);

    (void)fd;
    (void)what;
    evtimer_add(watch->disk_timer, &wait);
    if (watch->job_waits) {
        return;
    }
    if (!is_disk_low(watch->parts.config)) {
        watch->told_utc_s = 0;
    } else if (watch->told_utc_s == 0 || now_of(watch) >= watch->told_utc_s + DISK_TELL_EVERY_S) {
        log_event(LOG_ERROR_LEVEL, "disk-nearly-full", NULL);
        watch->job_waits = true;
        turn_add(watch->parts.turn, &watch->job);
    }
}

/* ---- The sign of life ----------------------------------------------------------------------- */

static void
on_ping_done(const struct transfer_result *result, void *cookie)
{
    struct self_watch *watch = cookie;

    watch->ping = NULL;
    if (result->status < 200 || result->status > 299) {
        log_event(LOG_WARNING, "ping-not-taken", "status", log_number(result->status), "why",
                  result->error, NULL);
    }
}

static void
on_ping_timer(evutil_socket_t fd, short what, void *data)
{
    struct self_watch *watch = data;
    const struct ping *ping = &watch->parts.config->ping;
    const struct transfer_request request = {
        .method = "GET", .url = ping->url, .timeout_ms = PING_TIMEOUT_MS};
    struct timeval wait =
        clock_wait(watch->parts.clock, ping->url != NULL ? ping->every_s : DISK_LOOK_EVERY_S);

    (void)fd;
    (void)what;
    evtimer_add(watch->ping_timer, &wait);
    if (ping->url != NULL && watch->ping == NULL && !turn_store_is_broken(watch->parts.turn)) {
        watch->ping = transfer_start(watch->parts.transfers, &request, on_ping_done, watch);
    }
}

/* ---- From outside --------------------------------------------------------------------------- */

struct self_watch *
self_watch_new(const struct self_watch_parts *parts)
{
    struct self_watch *watch = memory_new(NULL, struct self_watch);

    watch->job = (struct turn_job){.write = on_write, .done = on_done};
    watch->parts = *parts;
    watch->disk_timer = memory_must(evtimer_new(parts->base, on_disk_timer, watch));
    watch->ping_timer = memory_must(evtimer_new(parts->base, on_ping_timer, watch));
    event_active(watch->disk_timer, EV_TIMEOUT, 0);
    event_active(watch->ping_timer, EV_TIMEOUT, 0);
    return watch;
}

void
self_watch_free(struct self_watch *watch)
{
    if (watch == NULL) {
        return;
    }
    assert(!watch->job_waits);
    if (watch->ping != NULL) {
        transfer_cancel(watch->ping);
    }
    event_free(watch->disk_timer);
    event_free(watch->ping_timer);
    talloc_free(watch);
}

void
self_watch_use(struct self_watch *watch, const struct config *config)
{
    watch->parts.config = config;
    event_active(watch->ping_timer, EV_TIMEOUT, 0);
}
