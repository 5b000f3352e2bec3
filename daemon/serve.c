/*
 * `hutbell serve`: puts the parts together, runs the loop, and takes them apart again. What happens
 * to a text is not here but in routes.c, intake.c, outbox.c and alerts.c.
 */
#include "serve.h"

#include <signal.h>
#include <stdio.h>

#include <event2/event.h>
#include <jansson.h>
#include <sodium.h>
#include <systemd/sd-daemon.h>

#include "alerts.h"
#include "bookings.h"
#include "clock.h"
#include "deliveries.h"
#include "exit_code.h"
#include "http.h"
#include "intake.h"
#include "line_test.h"
#include "loaded.h"
#include "log.h"
#include "mailer.h"
#include "memory.h"
#include "outbox.h"
#include "reminders.h"
#include "routes.h"
#include "self_watch.h"
#include "step_watch.h"
#include "store.h"
#include "transfer.h"
#include "turn.h"
#include "worker.h"

enum {
    REPLY_S = 30,            /* for a client to take our answer */
    TRANSFERS_WAITING = 200, /* unrecorded texts may come in any number; rows are never in line */
    ANSWER_BYTES = 16384,    /* of what a gateway says to a send */
    LEAVE_TICK_MS = 20,      /* while stopping: how often we look whether all is done */
    LEAVE_AFTER_S = 25       /* while stopping: then we leave whatever is in hand */
};

struct serve {
    const char *config_file;
    struct loaded *loaded;
    struct loaded *retired; /* the one before: what the last turns began may still point at it */
    struct clock *clock;
    struct store *store;
    struct event_base *base;
    struct turn *turn;
    struct worker *worker;
    struct transfers *transfers;
    struct mailer *mailer;
    struct outbox *outbox;
    struct alerts *alerts;
    struct reminders *reminders;
    struct line_test *line_test;
    struct self_watch *self_watch;
    struct step_watch *step_watch;
    struct intake *intake;
    struct bookings *bookings;
    struct deliveries *deliveries;
    struct routes *routes;
    struct http *http;
    struct event *on_hangup, *on_terminate, *on_interrupt, *on_leave_tick;
    bool is_reading, must_read_again, is_stopping, is_http_idle;
    int leave_ticks;
};

static struct http_limits
http_limits_of(const struct config *config)
{
    return (struct http_limits){.connections = config->limits.connections,
                                .request_s = config->limits.request_s,
                                .reply_s = REPLY_S,
                                .header_bytes = config->limits.header_bytes,
                                .body_bytes = config->limits.body_bytes};
}

/* ---- SIGHUP: configuration and content are read again --------------------------------------- */

struct reading_again {
    struct worker_job job; /* first: the worker's pointer is ours */
    struct serve *serve;
    struct loaded *loaded; /* NULL: refused, and faults say why */
    struct faults faults;
};

static void read_again(struct serve *serve);

static void
read_in_worker(struct worker_job *job)
{
    struct reading_again *reading = (struct reading_again *)job;

    if (loaded_read(reading->serve->config_file, &reading->loaded, &reading->faults) != 0) {
        reading->loaded = NULL;
    } else {
        loaded_keep(reading->loaded);
    }
}

/* Between two turns: all that has begun has been written, all that comes sees only the new one. */
static void
swap(struct serve *serve, struct loaded *loaded)
{
    const struct config *config = loaded->config;
    struct http_limits limits = http_limits_of(config);

    log_setup(config->log_level, config->log_format);
    http_set_limits(serve->http, &limits);
    intake_use(serve->intake, loaded);
    outbox_use(serve->outbox, config);
    alerts_use(serve->alerts, config);
    reminders_use(serve->reminders, loaded);
    line_test_use(serve->line_test, loaded);
    self_watch_use(serve->self_watch, config);
    step_watch_use(serve->step_watch, config);
    deliveries_use(serve->deliveries, config);
    routes_use(serve->routes, loaded);
    loaded_free(serve->retired);
    serve->retired = serve->loaded;
    serve->loaded = loaded;
}

static void
on_read_again(struct worker_job *job)
{
    struct reading_again *reading = (struct reading_again *)job;
    struct serve *serve = reading->serve;

    serve->is_reading = false;
    if (!serve->is_stopping) {
        if (reading->loaded != NULL &&
            loaded_can_replace(serve->loaded, reading->loaded, &reading->faults) == 0) {
            swap(serve, reading->loaded);
            reading->loaded = NULL;
            log_event(LOG_INFO, "reloaded", "kb", kb_digest(serve->loaded->kb), NULL);
        } else {
            log_faults("reload-fault", &reading->faults);
            log_event(LOG_ERROR_LEVEL, "reload-refused", "faults",
                      log_number((int64_t)reading->faults.count), NULL);
        }
        sd_notify(0, "READY=1");
    }
    loaded_free(reading->loaded);
    faults_release(&reading->faults);
    talloc_free(reading);
    if (serve->must_read_again && !serve->is_stopping) {
        read_again(serve);
    }
}

static void
read_again(struct serve *serve)
{
    struct reading_again *reading = memory_new(NULL, struct reading_again);

    serve->must_read_again = false;
    serve->is_reading = true;
    reading->job = (struct worker_job){.work = read_in_worker, .done = on_read_again};
    reading->serve = serve;
    worker_add(serve->worker, &reading->job);
}

static void
on_hangup(evutil_socket_t signal_number, short what, void *data)
{
    struct serve *serve = data;

    (void)signal_number;
    (void)what;
    if (serve->is_stopping) {
        return;
    }
    sd_notifyf(0, "RELOADING=1\nMONOTONIC_USEC=%lld", (long long)clock_monotonic_us());
    log_event(LOG_INFO, "reloading", NULL);
    if (serve->is_reading) {
        serve->must_read_again = true; /* files may have changed since */
    } else {
        read_again(serve);
    }
}

/* ---- SIGTERM, SIGINT: what is in hand is finished ------------------------------------------- */

static void
on_http_idle(void *data)
{
    struct serve *serve = data;

    serve->is_http_idle = true;
}

static void
on_leave_tick(evutil_socket_t fd, short what, void *data)
{
    struct serve *serve = data;
    size_t in_hand = outbox_in_hand(serve->outbox);

    (void)fd;
    (void)what;
    serve->leave_ticks++;
    if (serve->is_http_idle && in_hand == 0) {
        event_base_loopbreak(serve->base);
    } else if (serve->leave_ticks > LEAVE_AFTER_S * 1000 / LEAVE_TICK_MS) {
        log_event(LOG_WARNING, "left-unfinished", "sends", log_number((int64_t)in_hand),
                  "connections", log_number(http_connections(serve->http)), NULL);
        event_base_loopbreak(serve->base);
    }
}

static void
on_terminate(evutil_socket_t signal_number, short what, void *data)
{
    const struct timeval tick = {.tv_usec = LEAVE_TICK_MS * 1000};
    struct serve *serve = data;

    (void)what;
    if (serve->is_stopping) {
        return;
    }
    serve->is_stopping = true;
    sd_notify(0, "STOPPING=1");
    log_event(LOG_INFO, "stopping", "signal", log_number(signal_number), NULL);
    outbox_close(serve->outbox);
    alerts_close(serve->alerts);
    reminders_close(serve->reminders);
    http_stop(serve->http, on_http_idle, serve);
    event_add(serve->on_leave_tick, &tick);
}

/* ---- Putting together and taking apart ------------------------------------------------------ */

static void
on_written(void *data)
{
    struct serve *serve = data;

    outbox_look(serve->outbox);
    alerts_look(serve->alerts);
    reminders_look(serve->reminders);
}

static int
work_out_again(void *data, struct store *store, void *arena, const struct outbox_row *row,
               struct fault *fault)
{
    struct serve *serve = data;

    return intake_work_out_again(serve->intake, store, arena, row, fault);
}

static bool
send_unrecorded(void *data, const struct outbox_row *row)
{
    struct serve *serve = data;

    return outbox_send_unrecorded(serve->outbox, row);
}

static void
build_senders(struct serve *serve)
{
    const struct config *config = serve->loaded->config;
    const struct transfer_limits limits = {.running = (size_t)config->limits.outbox_running + 4,
                                           .waiting = TRANSFERS_WAITING,
                                           .body_bytes = ANSWER_BYTES,
                                           .header_bytes = ANSWER_BYTES};
    struct outbox_parts outbox = {.base = serve->base,
                                  .clock = serve->clock,
                                  .store = serve->store,
                                  .turn = serve->turn,
                                  .config = config,
                                  .work_out_again = work_out_again,
                                  .data = serve};
    struct alerts_parts alerts = {.base = serve->base,
                                  .clock = serve->clock,
                                  .store = serve->store,
                                  .turn = serve->turn,
                                  .config = config};
    struct reminders_parts reminders = {.base = serve->base,
                                        .clock = serve->clock,
                                        .store = serve->store,
                                        .turn = serve->turn,
                                        .loaded = serve->loaded};

    serve->transfers = transfers_new(serve->base, &limits);
    serve->mailer = mailer_new(serve->base);
    outbox.transfers = serve->transfers;
    outbox.mailer = serve->mailer;
    serve->outbox = outbox_new(&outbox);
    serve->alerts = alerts_new(&alerts);
    serve->reminders = reminders_new(&reminders);
    turn_on_written(serve->turn, on_written, serve);
}

static void
build_watchers(struct serve *serve)
{
    const struct line_test_parts line_test = {.base = serve->base,
                                              .clock = serve->clock,
                                              .store = serve->store,
                                              .turn = serve->turn,
                                              .transfers = serve->transfers,
                                              .loaded = serve->loaded};
    const struct self_watch_parts self_watch = {.base = serve->base,
                                                .clock = serve->clock,
                                                .turn = serve->turn,
                                                .transfers = serve->transfers,
                                                .config = serve->loaded->config};

    const struct step_watch_parts step_watch = {.base = serve->base,
                                                .clock = serve->clock,
                                                .turn = serve->turn,
                                                .config = serve->loaded->config};

    serve->step_watch = step_watch_new(&step_watch);
    serve->line_test = line_test_new(&line_test);
    serve->self_watch = self_watch_new(&self_watch);
}

static void
build_takers(struct serve *serve)
{
    struct http_limits limits = http_limits_of(serve->loaded->config);
    struct intake_parts intake = {.turn = serve->turn,
                                  .clock = serve->clock,
                                  .loaded = serve->loaded,
                                  .send_unrecorded = send_unrecorded,
                                  .data = serve};
    struct deliveries_parts deliveries = {.base = serve->base,
                                          .clock = serve->clock,
                                          .turn = serve->turn,
                                          .outbox = serve->outbox,
                                          .config = serve->loaded->config};
    struct routes_parts routes = {
        .clock = serve->clock, .store = serve->store, .turn = serve->turn, .loaded = serve->loaded};
    const struct http_route *table;
    size_t count;

    serve->intake = intake_new(&intake);
    serve->deliveries = deliveries_new(&deliveries);
    routes.intake = serve->intake;
    routes.deliveries = serve->deliveries;
    serve->bookings = bookings_new(serve->turn, serve->clock);
    routes.bookings = serve->bookings;
    serve->routes = routes_new(&routes);
    table = routes_table(serve->routes, &count);
    serve->http = http_new(serve->base, &limits, table, count);
}

static struct event *
signal_event(struct serve *serve, int number, event_callback_fn callback)
{
    struct event *event = memory_must(evsignal_new(serve->base, number, callback, serve));

    event_add(event, NULL);
    return event;
}

static int
build(struct serve *serve, struct fault *fault)
{
    const struct config *config = serve->loaded->config;

    if (transfers_prepare(fault) != 0 ||
        store_open(config->database, STORE_WRITE, &serve->store, fault) != 0) {
        return -1;
    }
    serve->clock = clock_new(config->played_start_utc_s, config->played_speed);
    serve->base = memory_must(event_base_new());
    serve->turn = turn_new(serve->base, serve->store);
    serve->worker = worker_new(serve->base);
    build_senders(serve);
    build_watchers(serve);
    build_takers(serve);
    serve->on_hangup = signal_event(serve, SIGHUP, on_hangup);
    serve->on_terminate = signal_event(serve, SIGTERM, on_terminate);
    serve->on_interrupt = signal_event(serve, SIGINT, on_terminate);
    serve->on_leave_tick =
        memory_must(event_new(serve->base, -1, EV_PERSIST, on_leave_tick, serve));
    return 0;
}

static void
free_event(struct event *event)
{
    if (event != NULL) {
        event_free(event);
    }
}

/* In reverse; also of what was built only in part. */
static void
release(struct serve *serve)
{
    serve->is_stopping = true; /* a reading that ends now changes nothing any more */
    worker_free(serve->worker);
    http_free(serve->http);
    turn_free(serve->turn);
    mailer_free(serve->mailer);
    routes_free(serve->routes);
    bookings_free(serve->bookings);
    deliveries_free(serve->deliveries);
    intake_free(serve->intake);
    line_test_free(serve->line_test);
    self_watch_free(serve->self_watch);
    step_watch_free(serve->step_watch);
    reminders_free(serve->reminders);
    alerts_free(serve->alerts);
    outbox_free(serve->outbox);
    transfers_free(serve->transfers);
    free_event(serve->on_hangup);
    free_event(serve->on_terminate);
    free_event(serve->on_interrupt);
    free_event(serve->on_leave_tick);
    if (serve->base != NULL) {
        event_base_free(serve->base);
    }
    store_close(serve->store);
    clock_free(serve->clock);
    loaded_free(serve->retired);
    loaded_free(serve->loaded);
}

/* ---- The story ------------------------------------------------------------------------------ */

static int
load(struct serve *serve)
{
    struct faults faults = {0};
    int rc = loaded_read(serve->config_file, &serve->loaded, &faults);

    log_faults("start-fault", &faults);
    faults_release(&faults);
    if (rc == 0) {
        log_setup(serve->loaded->config->log_level, serve->loaded->config->log_format);
        loaded_keep(serve->loaded);
    }
    return rc;
}

/* Content that no clinician has approved may be tried out, but nobody shall do so unawares. */
static void
warn_of_unapproved(const struct loaded *loaded)
{
    int64_t unapproved = loaded_unapproved(loaded);

    if (unapproved > 0) {
        log_event(LOG_WARNING, "content-not-approved", "files", log_number(unapproved), "remedy",
                  "have them approved before real renters text; hutbell check lists them", NULL);
    }
}

static int
listen_and_run(struct serve *serve, struct fault *fault)
{
    const struct config *config = serve->loaded->config;
    int port;

    if (http_listen(serve->http, config->listen_address, config->listen_port, &port, fault) != 0) {
        return -1;
    }
    warn_of_unapproved(serve->loaded);
    log_event(LOG_INFO, "listening", "address", config->listen_address, "port", log_number(port),
              "version", HUTBELL_VERSION, "kb", kb_digest(serve->loaded->kb), NULL);
    on_written(serve); /* what was due when the last run ended */
    sd_notify(0, "READY=1");
    event_base_dispatch(serve->base);
    log_event(LOG_INFO, "stopped", NULL);
    return 0;
}

int
serve_run(const char *config_file)
{
    struct serve serve = {.config_file = config_file};
    struct fault fault = {""};
    int rc = -1;

    if (sodium_init() < 0) {
        memory_must(NULL);
    }
    json_object_seed(0); /* before there is a second thread */
    if (load(&serve) != 0) {
        goto out;
    }
    if (build(&serve, &fault) != 0 || listen_and_run(&serve, &fault) != 0) {
        log_event(LOG_ERROR_LEVEL, "start-fault", "what", fault.text, NULL);
        goto out;
    }
    rc = 0;
out:
    release(&serve);
    return rc == 0 ? EXIT_CODE_DONE : EXIT_CODE_FAILED;
}
