#include "reminders.h"

#include <assert.h>
#include <string.h>

#include <event2/event.h>

#include "alert_rows.h"
#include "clock.h"
#include "in_words.h"
#include "log.h"
#include "memory.h"
#include "outbox_rows.h"
#include "quiet.h"
#include "reminder_rows.h"
#include "reminder_text.h"
#include "rental_record.h"
#include "rental_rows.h"
#include "turn.h"

enum {
    LOOK_AT_LEAST_EVERY_S = 60, /* rows are looked at anew, whatever a timer was set to */
    TRY_AGAIN_S = 5,            /* after the store failed */
    SILENT_S = 300,             /* until it is looked whether a phone may be texted again */
    WORTH_SENDING_S = 3600      /* what no gateway took by then is handed to a person */
};

struct reminders {
    struct turn_job job; /* first: the turn's pointer is ours */
    struct reminders_parts parts;
    struct event *timer;
    bool job_waits, is_closed;
    int64_t not_before_utc_s; /* after a failure, so that it is not tried again each turn */
};

/* ---- What is due ----------------------------------------------------------------------------- */

/* The phone may have been given to somebody else since, or the rental be over. */
static int
find_rental(struct store *store, void *arena, const struct reminder_row *row, bool *is_theirs,
            struct rental *rental, struct fault *fault)
{
    struct rental_row *rows;
    size_t count, i;

    *is_theirs = false;
    if (rental_rows_of_phone(store, arena, row->phone, &rows, &count, fault) != 0) {
        return -1;
    }
    for (i = 0; i < count; i++) {
        if (strcmp(rows[i].rental_id, row->reminder.rental_id) == 0 &&
            rental_record_parse(arena, rows[i].json, rental)) {
            *is_theirs = rental_is_active(rental);
        }
    }
    return 0;
}

/* A battery that runs out must be told of before it is empty; then a person has to. */
static int
put_out(struct store *store, const struct reminder_row *row, const char *body, int64_t now_utc_s,
        struct fault *fault)
{
    bool is_watch = row->reminder.kind == REMINDER_RUNNING_OUT;
    bool is_in_time = is_watch && row->reminder.ends_utc_s > now_utc_s;
    const struct outbox_new text = {.about = OUTBOX_REPLY,
                                    .text_id = row->text_id,
                                    .gateway = row->gateway,
                                    .to = row->phone,
                                    .body = body,
                                    .urgency = is_watch ? URGENCY_URGENT : URGENCY_REPLY,
                                    .now_utc_s = now_utc_s,
                                    .give_up_utc_s = is_in_time ? row->reminder.ends_utc_s
                                                                : now_utc_s + WORTH_SENDING_S};
    int64_t id;

    return outbox_rows_add(store, &text, &id, fault);
}

static enum reminder_news
news_of(const struct reminder_row *row, int64_t quiet_until_utc_s, int64_t now_utc_s,
        int64_t *next_utc_s)
{
    switch (row->state) {
    case REMINDER_STATE_OFF_CHARGE:
        return REMINDER_OFF_CHARGE;
    case REMINDER_STATE_OFF_RECORD:
        return REMINDER_OFF_RECORD;
    default:
        return reminder_news(&row->reminder, quiet_until_utc_s, now_utc_s, next_utc_s);
    }
}

static enum reminder_state
state_after(enum reminder_news news)
{
    return news == REMINDER_DUE                             ? REMINDER_STATE_SENT
           : news == REMINDER_LATE || news == REMINDER_PAST ? REMINDER_STATE_LATE
                                                            : REMINDER_STATE_CANCELLED;
}

static int
send_one(struct store *store, void *arena, const struct loaded *loaded,
         const struct reminder_row *row, int64_t now_utc_s, struct fault *fault)
{
    int64_t next_utc_s = now_utc_s;
    enum reminder_news news;
    struct rental rental;
    bool is_theirs, wants_silence;

    if (find_rental(store, arena, row, &is_theirs, &rental, fault) != 0 ||
        alert_rows_open_because(store, arena, row->phone, NO_REPLY_REASON, &wants_silence, fault) !=
            0) {
        return -1;
    }
    if (!is_theirs) {
        return reminder_rows_settle(store, row->id, REMINDER_STATE_CANCELLED, "not-theirs",
                                    now_utc_s, fault);
    }
    if (wants_silence) { /* somebody else may read the phone: until staff have closed that alert */
        return reminder_rows_put_off(store, row->id, now_utc_s + SILENT_S, fault);
    }
    news =
        news_of(row, quiet_ends(loaded->config, rental.place, now_utc_s), now_utc_s, &next_utc_s);
    if (news == REMINDER_WAITS) { /* the clock was set back, or it is night */
        return reminder_rows_put_off(store, row->id, next_utc_s, fault);
    }
    if (news != REMINDER_PAST) {
        const char *body =
            reminder_text(arena, &loaded->config->house, &loaded->zone, row->language,
                          &row->reminder, news, row->words, now_utc_s);

        if (put_out(store, row, rental.in_words ? in_words(arena, row->language, body) : body,
                    now_utc_s, fault) != 0) {
            return -1;
        }
    }
    log_event(LOG_INFO,
              news == REMINDER_DUE                             ? "reminder-sent"
              : news == REMINDER_LATE || news == REMINDER_PAST ? "reminder-late"
                                                               : "reminder-off",
              "to", log_phone(row->phone), "rental", row->reminder.rental_id, NULL);
    return reminder_rows_settle(store, row->id, state_after(news),
                                news == REMINDER_OFF_CHARGE   ? "charge"
                                : news == REMINDER_OFF_RECORD ? "record"
                                                              : NULL,
                                now_utc_s, fault);
}

int
reminders_send(struct store *store, void *arena, const struct loaded *loaded, int64_t now_utc_s,
               struct fault *fault)
{
    struct reminder_row *rows;
    size_t count, i;

    if (reminder_rows_due(store, arena, now_utc_s, &rows, &count, fault) != 0) {
        return -1;
    }
    for (i = 0; i < count; i++) {
        if (send_one(store, arena, loaded, &rows[i], now_utc_s, fault) != 0) {
            return -1;
        }
    }
    return 0;
}

/* ---- In the loop ----------------------------------------------------------------------------- */

static int
on_write(struct turn_job *job, struct store *store, void *arena, struct fault *fault)
{
    const struct reminders *reminders = (struct reminders *)job;

    return reminders_send(store, arena, reminders->parts.loaded,
                          clock_now_utc_s(reminders->parts.clock), fault);
}

static void
wait_for(struct reminders *reminders, int64_t seconds)
{
    struct timeval wait = clock_wait(reminders->parts.clock, seconds);

    evtimer_add(reminders->timer, &wait);
}

static void
on_done(struct turn_job *job, enum turn_outcome outcome, const struct fault *fault)
{
    struct reminders *reminders = (struct reminders *)job;

    reminders->job_waits = false;
    if (outcome != TURN_WRITTEN) {
        log_event(LOG_ERROR_LEVEL, "reminders-not-sent", "why", fault->text, NULL);
        reminders->not_before_utc_s = clock_now_utc_s(reminders->parts.clock) + TRY_AGAIN_S;
    }
    reminders_look(reminders);
}

static void
on_timer(evutil_socket_t fd, short what, void *data)
{
    (void)fd;
    (void)what;
    reminders_look(data);
}

struct reminders *
reminders_new(const struct reminders_parts *parts)
{
    struct reminders *reminders = memory_new(NULL, struct reminders);

    reminders->job = (struct turn_job){.write = on_write, .done = on_done};
    reminders->parts = *parts;
    reminders->timer = memory_must(evtimer_new(parts->base, on_timer, reminders));
    return reminders;
}

void
reminders_free(struct reminders *reminders)
{
    if (reminders == NULL) {
        return;
    }
    assert(!reminders->job_waits); /* the turn is freed first, which tells its jobs */
    event_free(reminders->timer);
    talloc_free(reminders);
}

void
reminders_use(struct reminders *reminders, const struct loaded *loaded)
{
    reminders->parts.loaded = loaded;
    reminders_look(reminders);
}

void
reminders_look(struct reminders *reminders)
{
    int64_t now_utc_s = clock_now_utc_s(reminders->parts.clock), next_utc_s;
    struct fault fault = {""};

    if (reminders->is_closed || reminders->job_waits) {
        return;
    }
    if (now_utc_s < reminders->not_before_utc_s) {
        wait_for(reminders, reminders->not_before_utc_s - now_utc_s);
    } else if (reminder_rows_next(reminders->parts.store, &next_utc_s, &fault) != 0) {
        log_event(LOG_ERROR_LEVEL, "reminders-not-read", "why", fault.text, NULL);
        wait_for(reminders, TRY_AGAIN_S);
    } else if (next_utc_s <= now_utc_s) {
        reminders->job_waits = true;
        turn_add(reminders->parts.turn, &reminders->job);
    } else {
        int64_t wait_s = next_utc_s - now_utc_s;

        wait_for(reminders, wait_s < LOOK_AT_LEAST_EVERY_S ? wait_s : LOOK_AT_LEAST_EVERY_S);
    }
}

void
reminders_close(struct reminders *reminders)
{
    reminders->is_closed = true;
    evtimer_del(reminders->timer);
}
