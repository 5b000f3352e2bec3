#include "line_test.h"

#include <assert.h>
#include <string.h>

#include <event2/event.h>
#include <sodium.h>

#include "about_us.h"
#include "clock.h"
#include "line_test_rows.h"
#include "log.h"
#include "memory.h"
#include "turn.h"

enum {
    LOOK_EVERY_S = 15, /* also how soon a send that failed is tried again */
    TOKEN_BYTES = 6,
    TOKEN_SIZE = TOKEN_BYTES * 2 + 1
};

struct line_test {
    struct turn_job job; /* first: the turn's pointer is ours */
    struct line_test_parts parts;
    struct event *timer;
    int64_t began_utc_s; /* of this process: before it no test is due */
    bool job_waits, is_taken;
    char new_token[TOKEN_SIZE];
    /* The one that is being sent, or was sent; its strings. */
    void *strings;
    struct sending_parts sending_parts;
    struct outbox_row row;
    struct sending *sending;
};

static int64_t
now_of(const struct line_test *test)
{
    return clock_now_utc_s(test->parts.clock);
}

static const struct line_test_times *
times_of(const struct line_test *test)
{
    return &test->parts.loaded->config->line_test;
}

int64_t
line_test_next(int64_t last_utc_s, int at_minutes, const struct zone *zone)
{
    struct local_time local = zone_local(zone, last_utc_s);
    int64_t next_utc_s;

    local.hour = at_minutes / 60;
    local.minute = at_minutes % 60;
    local.second = 0;
    next_utc_s = zone_utc(zone, &local);
    while (next_utc_s <= last_utc_s) {
        local.day++; /* past the month's end it is the next month's first */
        next_utc_s = zone_utc(zone, &local);
    }
    return next_utc_s;
}

/* ---- Sending -------------------------------------------------------------------------------- */

static void
on_sent(const struct sending_result *result, void *cookie)
{
    struct line_test *test = cookie;

    test->sending = NULL;
    test->is_taken = result->event == OUTBOX_ACCEPTED;
    log_event(test->is_taken ? LOG_INFO : LOG_WARNING,
              test->is_taken ? "line-test-sent" : "line-test-not-sent", "to",
              log_phone(test->row.to), "detail", result->detail, NULL);
}

static void
send_it(struct line_test *test, const char *token, const char *to)
{
    const struct config *config = test->parts.loaded->config;
    struct fault fault;

    talloc_free(test->strings);
    test->strings = memory_must(talloc_new(test));
    test->is_taken = false;
    test->sending_parts = (struct sending_parts){
        .clock = test->parts.clock, .transfers = test->parts.transfers, .config = config};
    test->row = (struct outbox_row){
        .road = ROAD_TEXT,
        .gateway = memory_copy(test->strings, config->reply_gateway),
        .to = memory_copy(test->strings, to),
        .body = memory_format(test->strings, "Line test %s. No answer is needed.", token),
        .key = memory_copy(test->strings, token),
        .urgency = URGENCY_OFFICE};
    test->sending = sending_start(&test->sending_parts, &test->row, on_sent, test, &fault);
    if (test->sending == NULL) {
        log_event(LOG_WARNING, "line-test-not-sent", "detail", fault.text, NULL);
    }
}

/* ---- What is due ---------------------------------------------------------------------------- */

/* What the newest row asks for now. */
enum wish { WISH_NOTHING, WISH_NEW, WISH_AGAIN, WISH_TELL };

static enum wish
wish_of(const struct line_test *test, const struct line_test_row *row, bool found)
{
    const struct line_test_times *times = times_of(test);
    int64_t now_utc_s = now_of(test);
    int64_t last_utc_s = found ? row->sent_utc_s : test->began_utc_s;

    if (found && row->is_open && now_utc_s >= row->sent_utc_s + times->within_s) {
        return WISH_TELL;
    }
    if (line_test_next(last_utc_s, times->at_minutes, &test->parts.loaded->zone) <= now_utc_s) {
        return WISH_NEW;
    }
    if (found && row->is_open && test->sending == NULL &&
        (!test->is_taken || strcmp(row->token, test->row.key) != 0)) {
        return WISH_AGAIN;
    }
    return WISH_NOTHING;
}

static int
on_write(struct turn_job *job, struct store *store, void *arena, struct fault *fault)
{
    struct line_test *test = (struct line_test *)job;
    unsigned char random[TOKEN_BYTES];
    struct line_test_row row;
    int64_t number;
    bool found;

    test->new_token[0] = '\0';
    if (line_test_rows_newest(store, arena, &row, &found, fault) != 0) {
        return -1;
    }
    switch (wish_of(test, &row, found)) {
    case WISH_TELL:
        return line_test_rows_miss(store, row.id, now_of(test), fault) == 0
                   ? about_us(test->parts.loaded->config, store, ALERT_URGENT, "us:line",
                              "test text did not come back", now_of(test), &number, fault)
                   : -1;
    case WISH_NEW:
        randombytes_buf(random, sizeof(random));
        (void)sodium_bin2hex(test->new_token, sizeof(test->new_token), random, sizeof(random));
        return line_test_rows_add(store, test->new_token, times_of(test)->to, now_of(test), fault);
    default:
        return 0;
    }
}

static void
on_done(struct turn_job *job, enum turn_outcome outcome, const struct fault *fault)
{
    struct line_test *test = (struct line_test *)job;

    test->job_waits = false;
    if (outcome != TURN_WRITTEN) {
        log_event(LOG_ERROR_LEVEL, "line-test-not-written", "why", fault->text, NULL);
    } else if (test->new_token[0] != '\0' && test->sending == NULL) {
        send_it(test, test->new_token, times_of(test)->to);
    }
}

static void
look(struct line_test *test)
{
    void *arena = memory_must(talloc_new(NULL));
    struct line_test_row row;
    struct fault fault;
    bool found;
    enum wish wish;

    if (line_test_rows_newest(test->parts.store, arena, &row, &found, &fault) != 0) {
        log_event(LOG_ERROR_LEVEL, "line-test-not-read", "why", fault.text, NULL);
        talloc_free(arena);
        return;
    }
    wish = wish_of(test, &row, found);
    if (wish == WISH_AGAIN) {
        send_it(test, row.token, row.recipient);
    } else if (wish != WISH_NOTHING) {
        test->job_waits = true;
        turn_add(test->parts.turn, &test->job);
    }
    talloc_free(arena);
}

static void
on_timer(evutil_socket_t fd, short what, void *data)
{
    struct line_test *test = data;
    struct timeval wait = clock_wait(test->parts.clock, LOOK_EVERY_S);

    (void)fd;
    (void)what;
    evtimer_add(test->timer, &wait);
    if (times_of(test)->is_on && !test->job_waits) {
        look(test);
    }
}

/* ---- From outside --------------------------------------------------------------------------- */

struct line_test *
line_test_new(const struct line_test_parts *parts)
{
    struct line_test *test = memory_new(NULL, struct line_test);
    struct timeval wait = clock_wait(parts->clock, LOOK_EVERY_S);

    test->job = (struct turn_job){.write = on_write, .done = on_done};
    test->parts = *parts;
    test->began_utc_s = now_of(test);
    test->timer = memory_must(evtimer_new(parts->base, on_timer, test));
    evtimer_add(test->timer, &wait);
    return test;
}

void
line_test_free(struct line_test *test)
{
    if (test == NULL) {
        return;
    }
    assert(!test->job_waits);
    if (test->sending != NULL) {
        sending_cancel(test->sending);
    }
    event_free(test->timer);
    talloc_free(test);
}

void
line_test_use(struct line_test *test, const struct loaded *loaded)
{
    test->parts.loaded = loaded;
    test->sending_parts.config = loaded->config;
}
