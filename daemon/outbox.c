/*
 * What is due is read from the rows each time something may have changed. In memory is only what is
 * in hand: rows that are being sent, or whose outcome is not written yet.
 */
#include "outbox.h"

#include <assert.h>
#include <stdint.h>
#include <sys/queue.h>

#include <event2/event.h>
#include <sodium.h>

#include "backoff.h"
#include "clock.h"
#include "log.h"
#include "memory.h"
#include "not_reached.h"
#include "send_outcome.h"
#include "sending.h"
#include "turn.h"
#include "unrecorded.h"

enum {
    LOOK_AT_LEAST_EVERY_S = 10, /* emergencies without report are looked for this often */
    LOOK_IN_HAND_EVERY_S = 1,   /* while a row in hand hides when the next one is due */
    TRY_AGAIN_S = 5             /* after the store did not take an outcome or could not be read */
};

/* One row in hand: first its send, then the job that writes what became of it. */
struct in_hand {
    struct turn_job job; /* first: the turn's pointer is ours */
    struct outbox *outbox;
    struct outbox_row row; /* strings are copies */
    struct outbox_result result;
    struct sending *sending; /* NULL once it is told */
    bool job_waits, is_stale, is_not_reached;
    int64_t try_again_utc_s; /* when the store is asked again to take the outcome */
    TAILQ_ENTRY(in_hand) link;
};

TAILQ_HEAD(in_hand_list, in_hand);

struct outbox {
    struct outbox_parts parts;
    struct sending_parts sending;
    struct unrecorded *unrecorded;
    struct event *timer;
    struct in_hand_list in_hand;
    size_t in_hand_count, sending_count;
    bool is_closed;
};

static int64_t
now_of(const struct outbox *outbox)
{
    return clock_now_utc_s(outbox->parts.clock);
}

static bool
is_in_hand(const struct outbox *outbox, int64_t id)
{
    const struct in_hand *held;

    TAILQ_FOREACH(held, &outbox->in_hand, link)
    {
        /* cppcheck-suppress uninitvar ; TAILQ_FOREACH sets it */
        if (held->row.id == id) {
            return true;
        }
    }
    return false;
}

static const char *
copy_or_null(void *arena, const char *text)
{
    return text != NULL ? memory_copy(arena, text) : NULL;
}

/* ---- What became of a row ------------------------------------------------------------------- */

static int
on_write(struct turn_job *job, struct store *store, void *arena, struct fault *fault)
{
    struct in_hand *held = (struct in_hand *)job;
    const struct outbox_parts *parts = &held->outbox->parts;
    struct caller caller = {.store = store, .arena = arena};

    if (held->is_stale) {
        return parts->work_out_again(parts->data, store, arena, &held->row, fault);
    }
    if (outbox_rows_result(store, &held->result, fault) != 0) {
        return -1;
    }
    caller.config = parts->config;
    caller.now_utc_s = held->result.now_utc_s;
    return held->is_not_reached ? not_reached(&caller, &held->row, held->result.event, fault) : 0;
}

static void
drop(struct in_hand *held)
{
    struct outbox *outbox = held->outbox;

    TAILQ_REMOVE(&outbox->in_hand, held, link);
    outbox->in_hand_count--;
    talloc_free(held);
}

static void
log_outcome(const struct in_hand *held)
{
    const struct outbox_row *row = &held->row;

    bool is_lost = held->is_not_reached && held->result.event != OUTBOX_TRIED_AGAIN_LATER;

    log_event(is_lost ? LOG_ERROR_LEVEL : LOG_INFO,
              held->is_stale ? "text-worked-out-again" : send_outcome_event(held->result.event),
              "id", log_number(row->id), "about", row->about == OUTBOX_ALERT ? "alert" : "reply",
              "road", road_name(row->road), "to", log_phone(row->to), "gateway", row->gateway,
              "detail", held->result.detail, "try", log_number(row->attempts + 1), NULL);
}

static void
on_done(struct turn_job *job, enum turn_outcome outcome, const struct fault *fault)
{
    struct in_hand *held = (struct in_hand *)job;
    struct outbox *outbox = held->outbox;

    held->job_waits = false;
    if (outcome == TURN_WRITTEN) {
        log_outcome(held);
        drop(held);
    } else {
        log_event(LOG_ERROR_LEVEL, "outcome-not-written", "id", log_number(held->row.id), "why",
                  fault->text, NULL);
        held->try_again_utc_s = now_of(outbox) + TRY_AGAIN_S;
    }
    outbox_look(outbox);
}

static void
write_outcome(struct in_hand *held)
{
    held->job_waits = true;
    turn_add(held->outbox->parts.turn, &held->job);
}

static void
settle(struct in_hand *held, enum outbox_event event, const char *detail)
{
    held->result.id = held->row.id;
    held->result.event = event;
    held->result.now_utc_s = now_of(held->outbox);
    held->result.detail = copy_or_null(held, detail);
    held->is_not_reached = send_outcome_is_not_reached(&held->row, event);
    write_outcome(held);
}

static void
settle_for_later(struct in_hand *held, int64_t retry_after_s, const char *detail)
{
    struct backoff backoff = backoff_for(held->row.urgency);

    held->result.next_utc_s =
        now_of(held->outbox) +
        backoff_wait_s(&backoff, held->row.attempts + 1, randombytes_random(), retry_after_s);
    settle(held, OUTBOX_TRIED_AGAIN_LATER, detail);
}

static void
on_sent(const struct sending_result *result, void *cookie)
{
    struct in_hand *held = cookie;

    held->sending = NULL;
    held->outbox->sending_count--;
    if (result->is_held_up) {
        log_event(LOG_ERROR_LEVEL, "link-not-written", "id", log_number(held->row.id), "why",
                  result->detail, NULL);
        drop(held); /* the row is due; the timer, which runs, takes it up again */
        return;
    }
    held->result.gateway_id = copy_or_null(held, result->gateway_id);
    if (result->event == OUTBOX_TRIED_AGAIN_LATER) {
        settle_for_later(held, result->retry_after_s, result->detail);
    } else {
        settle(held, result->event, result->detail);
    }
}

/* ---- What is due ---------------------------------------------------------------------------- */

static struct in_hand *
take_in_hand(struct outbox *outbox, const struct outbox_row *row)
{
    struct in_hand *held = memory_new(NULL, struct in_hand);

    held->job = (struct turn_job){.write = on_write, .done = on_done};
    held->outbox = outbox;
    held->row = *row;
    held->row.gateway = memory_copy(held, row->gateway);
    held->row.to = memory_copy(held, row->to);
    held->row.body = memory_copy(held, row->body);
    held->row.key = memory_copy(held, row->key);
    TAILQ_INSERT_TAIL(&outbox->in_hand, held, link);
    outbox->in_hand_count++;
    return held;
}

static void
start(struct in_hand *held)
{
    struct outbox *outbox = held->outbox;
    struct fault fault;

    held->sending = sending_start(&outbox->sending, &held->row, on_sent, held, &fault);
    if (held->sending == NULL) {
        settle_for_later(held, 0, fault.text);
        return;
    }
    outbox->sending_count++;
}

/* A quarter of the sends is kept free for emergencies: slow gateways must not hold them up. */
static bool
has_room(const struct outbox *outbox, enum urgency urgency)
{
    size_t room = (size_t)outbox->parts.config->limits.outbox_running;

    if (urgency != URGENCY_EMERGENCY && room > 1) {
        room -= room > 4 ? room / 4 : 1;
    }
    return outbox->sending_count < room;
}

static void
act_on(struct outbox *outbox, const struct outbox_row *row, int64_t now_utc_s)
{
    struct in_hand *held;

    if (row->give_up_utc_s <= now_utc_s) {
        settle(take_in_hand(outbox, row), OUTBOX_GIVEN_UP, "too old");
    } else if (row->body[0] == '\0') {
        settle(take_in_hand(outbox, row), OUTBOX_GIVEN_UP, "erased");
    } else if (row->expires_utc_s != 0 && row->expires_utc_s <= now_utc_s) {
        held = take_in_hand(outbox, row);
        held->is_stale = true;
        write_outcome(held);
    } else if (has_room(outbox, row->urgency)) {
        start(take_in_hand(outbox, row));
    }
}

static int
act_on_due(struct outbox *outbox, void *arena, int64_t now_utc_s, struct fault *fault)
{
    size_t room = outbox->in_hand_count + (size_t)outbox->parts.config->limits.outbox_running;
    struct outbox_row *rows;
    size_t count;
    size_t i;

    if (outbox_rows_due(outbox->parts.store, arena, now_utc_s, room, &rows, &count, fault) != 0) {
        return -1;
    }
    for (i = 0; i < count; i++) {
        if (!is_in_hand(outbox, rows[i].id)) {
            act_on(outbox, &rows[i], now_utc_s);
        }
    }
    return 0;
}

static int
act_on_unconfirmed(struct outbox *outbox, void *arena, int64_t now_utc_s, struct fault *fault)
{
    int64_t before_utc_s = now_utc_s - outbox->parts.config->limits.unconfirmed_s;
    struct outbox_row *rows;
    size_t count;
    size_t i;

    if (outbox_rows_unconfirmed(outbox->parts.store, arena, before_utc_s, &rows, &count, fault) !=
        0) {
        return -1;
    }
    for (i = 0; i < count; i++) {
        if (!is_in_hand(outbox, rows[i].id)) {
            settle(take_in_hand(outbox, &rows[i]), OUTBOX_NOT_CONFIRMED, "not delivered in time");
        }
    }
    return 0;
}

static void
write_kept_outcomes(struct outbox *outbox, int64_t now_utc_s)
{
    struct in_hand *held;

    TAILQ_FOREACH(held, &outbox->in_hand, link)
    {
        /* cppcheck-suppress uninitvar ; TAILQ_FOREACH sets it */
        bool is_due = held->try_again_utc_s <= now_utc_s ||
                      held->try_again_utc_s - now_utc_s > TRY_AGAIN_S; /* the clock was stepped */

        if (held->sending == NULL && !held->job_waits && is_due) {
            write_outcome(held);
        }
    }
}

/* Looks again when the next row is due, and now and then whatever the rows say. */
static void
wait_for_next(struct outbox *outbox, int64_t now_utc_s, bool is_readable)
{
    int64_t wait_s = !is_readable                ? TRY_AGAIN_S
                     : outbox->in_hand_count > 0 ? LOOK_IN_HAND_EVERY_S
                                                 : LOOK_AT_LEAST_EVERY_S;
    struct fault fault;
    struct timeval wait;
    int64_t next_utc_s;

    if (is_readable && outbox_rows_next(outbox->parts.store, &next_utc_s, &fault) == 0 &&
        next_utc_s > now_utc_s && next_utc_s - now_utc_s < wait_s) {
        wait_s = next_utc_s - now_utc_s;
    }
    wait = clock_wait(outbox->parts.clock, wait_s);
    evtimer_add(outbox->timer, &wait);
}

static void
on_timer(evutil_socket_t fd, short what, void *data)
{
    struct outbox *outbox = data;
    void *arena = talloc_new(NULL);
    int64_t now_utc_s = now_of(outbox);
    struct fault fault = {""};
    bool is_readable = true;

    (void)fd;
    (void)what;
    write_kept_outcomes(outbox, now_utc_s);
    if (!outbox->is_closed && (act_on_due(outbox, arena, now_utc_s, &fault) != 0 ||
                               act_on_unconfirmed(outbox, arena, now_utc_s, &fault) != 0)) {
        log_event(LOG_ERROR_LEVEL, "outbox-not-read", "why", fault.text, NULL);
        is_readable = false;
    }
    talloc_free(arena);
    wait_for_next(outbox, now_utc_s, is_readable);
}

/* ---- From outside --------------------------------------------------------------------------- */

struct outbox *
outbox_new(const struct outbox_parts *parts)
{
    struct outbox *outbox = memory_new(NULL, struct outbox);

    outbox->parts = *parts;
    TAILQ_INIT(&outbox->in_hand);
    outbox->sending = (struct sending_parts){.clock = parts->clock,
                                             .turn = parts->turn,
                                             .transfers = parts->transfers,
                                             .mailer = parts->mailer,
                                             .config = parts->config};
    outbox->unrecorded = unrecorded_new(parts->base, &outbox->sending);
    outbox->timer = memory_must(evtimer_new(parts->base, on_timer, outbox));
    return outbox;
}

void
outbox_free(struct outbox *outbox)
{
    struct in_hand *held;

    if (outbox == NULL) {
        return;
    }
    while ((held = TAILQ_FIRST(&outbox->in_hand)) != NULL) {
        assert(!held->job_waits);
        if (held->sending != NULL) {
            sending_cancel(held->sending);
        }
        drop(held);
    }
    unrecorded_free(outbox->unrecorded);
    event_free(outbox->timer);
    talloc_free(outbox);
}

void
outbox_use(struct outbox *outbox, const struct config *config)
{
    outbox->parts.config = config;
    outbox->sending.config = config;
    unrecorded_use(outbox->unrecorded, config);
    outbox_look(outbox);
}

void
outbox_look(struct outbox *outbox)
{
    event_active(outbox->timer, EV_TIMEOUT, 0);
}

bool
outbox_send_unrecorded(struct outbox *outbox, const struct outbox_row *row)
{
    return unrecorded_send(outbox->unrecorded, row);
}

void
outbox_close(struct outbox *outbox)
{
    outbox->is_closed = true;
}

size_t
outbox_in_hand(const struct outbox *outbox)
{
    return outbox->in_hand_count + unrecorded_count(outbox->unrecorded);
}
