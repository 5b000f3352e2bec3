#include "deliveries.h"

#include <assert.h>
#include <sys/queue.h>

#include <event2/event.h>

#include "clock.h"
#include "log.h"
#include "memory.h"
#include "not_reached.h"
#include "outbox.h"
#include "send_outcome.h"
#include "turn.h"

enum {
    LOOK_AGAIN_S = 1, /* for a text that was not known yet */
    KEEP_S = 60       /* a report about a text that is not known */
};

struct report {
    struct turn_job job; /* first: the turn's pointer is ours */
    struct deliveries *owner;
    const char *gateway, *message_id, *word;
    enum delivery_status status;
    int64_t come_utc_s;
    bool is_found, is_news;
    void (*done)(void *data, bool is_written);
    void *data;
    struct event *again;

    TAILQ_ENTRY(report) link;
};

TAILQ_HEAD(report_list, report);

struct deliveries {
    struct deliveries_parts parts;
    struct report_list kept;
};

static void
finish(struct report *report, bool is_written)
{
    void (*done)(void *data, bool is_written) = report->done;
    void *data = report->data;

    event_free(report->again);
    talloc_free(report);
    done(data, is_written);
}

static int
on_write(struct turn_job *job, struct store *store, void *arena, struct fault *fault)
{
    struct report *report = (struct report *)job;
    struct caller caller = {.config = report->owner->parts.config, .store = store, .arena = arena};
    struct outbox_result result = {
        .event = report->status == DELIVERY_DELIVERED ? OUTBOX_DELIVERED : OUTBOX_UNDELIVERED,
        .now_utc_s = clock_now_utc_s(report->owner->parts.clock),
        .gateway_id = report->message_id,
        .detail = report->word};
    struct outbox_row row;

    if (outbox_rows_by_gateway_id(store, arena, ROAD_TEXT, report->gateway, report->message_id,
                                  &row, &report->is_found, fault) != 0) {
        return -1;
    }
    if (!report->is_found) {
        return 0;
    }
    result.id = row.id;
    if (outbox_rows_is_news(store, row.id, result.event, &report->is_news, fault) != 0) {
        return -1;
    }
    if (!report->is_news) {
        return 0;
    }
    if (outbox_rows_result(store, &result, fault) != 0) {
        return -1;
    }
    if (!send_outcome_is_not_reached(&row, result.event)) {
        return 0;
    }
    caller.now_utc_s = result.now_utc_s;
    return not_reached(&caller, &row, result.event, fault);
}

static void
on_done(struct turn_job *job, enum turn_outcome outcome, const struct fault *fault)
{
    struct report *report = (struct report *)job;
    struct deliveries *owner = report->owner;
    struct timeval wait = clock_wait(owner->parts.clock, LOOK_AGAIN_S);
    int64_t age_s = clock_now_utc_s(owner->parts.clock) - report->come_utc_s;

    if (outcome != TURN_WRITTEN) {
        log_event(LOG_ERROR_LEVEL, "delivery-not-written", "gateway", report->gateway, "why",
                  fault->text, NULL);
        finish(report, false);
    } else if (!report->is_found && age_s < KEEP_S && outbox_in_hand(owner->parts.outbox) > 0) {

        TAILQ_INSERT_TAIL(&owner->kept, report, link);
        evtimer_add(report->again, &wait);
    } else {
        log_event(report->status == DELIVERY_DELIVERED ? LOG_INFO : LOG_WARNING,
                  !report->is_found ? "delivery-of-unknown-text"
                  : report->is_news ? "delivery-reported"
                                    : "delivery-repeated",
                  "gateway", report->gateway, "gateway-id", report->message_id, "word",
                  report->word, NULL);
        finish(report, true);
    }
}

static void
on_again(evutil_socket_t fd, short what, void *data)
{
    struct report *report = data;

    (void)fd;
    (void)what;
    TAILQ_REMOVE(&report->owner->kept, report, link);

    turn_add(report->owner->parts.turn, &report->job);
}

struct deliveries *
deliveries_new(const struct deliveries_parts *parts)
{
    struct deliveries *deliveries = memory_new(NULL, struct deliveries);

    deliveries->parts = *parts;
    TAILQ_INIT(&deliveries->kept);
    return deliveries;
}

void
deliveries_free(struct deliveries *deliveries)
{
    struct report *report;

    if (deliveries == NULL) {
        return;
    }
    while ((report = TAILQ_FIRST(&deliveries->kept)) != NULL) {
        TAILQ_REMOVE(&deliveries->kept, report, link);
        finish(report, false);
    }
    talloc_free(deliveries);
}

void
deliveries_use(struct deliveries *deliveries, const struct config *config)
{
    deliveries->parts.config = config;
}

void
deliveries_take(struct deliveries *deliveries, const struct gateway *gateway,
                const struct delivery *delivery, void (*done)(void *data, bool is_written),
                void *data)
{
    struct report *report = memory_new(NULL, struct report);

    assert(delivery->status == DELIVERY_DELIVERED || delivery->status == DELIVERY_FAILED);
    report->job = (struct turn_job){.write = on_write, .done = on_done};
    report->owner = deliveries;
    report->gateway = memory_copy(report, gateway->name);
    report->message_id = memory_copy(report, delivery->message_id);
    report->word = delivery->word != NULL ? memory_copy(report, delivery->word) : NULL;
    report->status = delivery->status;
    report->come_utc_s = clock_now_utc_s(deliveries->parts.clock);
    report->done = done;
    report->data = data;
    report->again = memory_must(evtimer_new(deliveries->parts.base, on_again, report));
    turn_add(deliveries->parts.turn, &report->job);
}
