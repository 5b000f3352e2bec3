#include "unrecorded.h"

#include <sys/queue.h>

#include <event2/event.h>
#include <sodium.h>

#include "backoff.h"
#include "clock.h"
#include "log.h"
#include "memory.h"
#include "send_outcome.h"
#include "sending.h"

enum { TRIES_MAX = 5 };

struct item {
    struct unrecorded *owner;
    struct outbox_row row; /* strings are copies; the key is the same at each try */
    int tries;
    struct sending *sending; /* NULL while it waits for its next try */
    struct event *next_try;
    TAILQ_ENTRY(item) link;
};

TAILQ_HEAD(item_list, item);

struct unrecorded {
    struct event_base *base;
    struct sending_parts parts;
    struct item_list items;
    size_t count;
};

static void
drop(struct item *item)
{
    TAILQ_REMOVE(&item->owner->items, item, link);
    item->owner->count--;
    event_free(item->next_try);
    talloc_free(item);
}

static void
try_later_or_drop(struct item *item, int64_t retry_after_s)
{
    struct backoff backoff = backoff_for(item->row.urgency);
    struct timeval wait;

    if (item->tries >= TRIES_MAX) {
        log_event(LOG_ERROR_LEVEL, "unrecorded-text-given-up", "to", log_phone(item->row.to), NULL);
        drop(item);
        return;
    }
    wait = clock_wait(item->owner->parts.clock,
                      backoff_wait_s(&backoff, item->tries, randombytes_random(), retry_after_s));
    evtimer_add(item->next_try, &wait);
}

static void
on_sent(const struct sending_result *result, void *cookie)
{
    struct item *item = cookie;

    item->sending = NULL;
    log_event(result->event == OUTBOX_ACCEPTED ? LOG_WARNING : LOG_ERROR_LEVEL,
              send_outcome_event(result->event), "about", "unrecorded", "road",
              road_name(item->row.road), "to", log_phone(item->row.to), "detail", result->detail,
              NULL);
    if (result->event == OUTBOX_TRIED_AGAIN_LATER) {
        try_later_or_drop(item, result->retry_after_s);
    } else {
        drop(item);
    }
}

/* False if it cannot be started. */
static bool
try_now(struct item *item)
{
    struct fault fault;

    item->tries++;
    item->sending = sending_start(&item->owner->parts, &item->row, on_sent, item, &fault);
    if (item->sending == NULL) {
        log_event(LOG_ERROR_LEVEL, "unrecorded-text-not-started", "to", log_phone(item->row.to),
                  "why", fault.text, NULL);
    }
    return item->sending != NULL;
}

static void
on_next_try(evutil_socket_t fd, short what, void *data)
{
    (void)fd;
    (void)what;
    if (!try_now(data)) {
        try_later_or_drop(data, 0);
    }
}

struct unrecorded *
unrecorded_new(struct event_base *base, const struct sending_parts *parts)
{
    struct unrecorded *unrecorded = memory_new(NULL, struct unrecorded);

    unrecorded->base = base;
    unrecorded->parts = *parts;
    unrecorded->parts.turn = NULL;
    TAILQ_INIT(&unrecorded->items);
    return unrecorded;
}

void
unrecorded_free(struct unrecorded *unrecorded)
{
    struct item *item;

    if (unrecorded == NULL) {
        return;
    }
    while ((item = TAILQ_FIRST(&unrecorded->items)) != NULL) {
        if (item->sending != NULL) {
            sending_cancel(item->sending);
        }
        drop(item);
    }
    talloc_free(unrecorded);
}

/* 128 random bits in hexadecimal digits. */
static const char *
new_key(void *arena)
{
    unsigned char bytes[16];
    char text[sizeof(bytes) * 2 + 1];

    randombytes_buf(bytes, sizeof(bytes));
    return memory_copy(arena, sodium_bin2hex(text, sizeof(text), bytes, sizeof(bytes)));
}

void
unrecorded_use(struct unrecorded *unrecorded, const struct config *config)
{
    unrecorded->parts.config = config;
}

bool
unrecorded_send(struct unrecorded *unrecorded, const struct outbox_row *row)
{
    struct item *item = memory_new(NULL, struct item);

    item->owner = unrecorded;
    item->row = *row;
    item->row.gateway = memory_copy(item, row->gateway);
    item->row.to = memory_copy(item, row->to);
    item->row.body = memory_copy(item, row->body);
    item->row.key = new_key(item);
    item->next_try = memory_must(evtimer_new(unrecorded->base, on_next_try, item));
    TAILQ_INSERT_TAIL(&unrecorded->items, item, link);
    unrecorded->count++;
    if (!try_now(item)) {
        drop(item);
        return false;
    }
    return true;
}

size_t
unrecorded_count(const struct unrecorded *unrecorded)
{
    return unrecorded->count;
}
