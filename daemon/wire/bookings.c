#include "bookings.h"

#include "audit_rows.h"
#include "clock.h"
#include "log.h"
#include "memory.h"
#include "rental_put.h"
#include "rental_rows.h"
#include "turn.h"

struct bookings {
    struct turn *turn;
    const struct clock *clock;
};

struct booking_job {
    struct turn_job job; /* first: the turn knows it by this */
    struct bookings *bookings;
    struct booking booking;
    bool is_repeat;
    struct rental_put put;
    void (*done)(void *data, enum booking_outcome outcome);
    void *data;
};

static int
write_audit(const struct booking_job *job, struct store *store, int64_t now_utc_s,
            struct fault *fault)
{
    const struct audit_row audit = {.who = "booking system",
                                    .what = job->put.is_new ? "new-rental" : "change-rental",
                                    .subject = job->booking.rental->rental_id,
                                    .detail = job->booking.id};

    return job->put.is_changed ? audit_rows_add(store, &audit, now_utc_s, fault) : 0;
}

static int
on_write(struct turn_job *turn_job, struct store *store, void *arena, struct fault *fault)
{
    struct booking_job *job = (struct booking_job *)turn_job;
    const struct booking *booking = &job->booking;
    const char *source =
        booking->id == NULL ? "booking" : memory_format(arena, "booking %s", booking->id);
    int64_t now_utc_s = clock_now_utc_s(job->bookings->clock);

    if (booking->id != NULL && rental_rows_has_source(store, booking->rental->rental_id, source,
                                                      &job->is_repeat, fault) != 0) {
        return -1;
    }
    if (job->is_repeat) {
        return 0;
    }
    if (rental_put(store, arena, booking->rental, booking->json, source, now_utc_s, &job->put,
                   fault) != 0) {
        return -1;
    }
    return write_audit(job, store, now_utc_s, fault);
}

static enum booking_outcome
outcome_of(const struct booking_job *job)
{
    return job->is_repeat || !job->put.is_changed ? BOOKING_UNCHANGED
           : job->put.is_new                      ? BOOKING_NEW
                                                  : BOOKING_CHANGED;
}

static void
on_done(struct turn_job *turn_job, enum turn_outcome turn_outcome, const struct fault *fault)
{
    struct booking_job *job = (struct booking_job *)turn_job;
    enum booking_outcome outcome = BOOKING_NOT_STORED;
    const char *rental_id = job->booking.rental->rental_id;

    if (turn_outcome == TURN_WRITTEN) {
        outcome = outcome_of(job);
        log_event(LOG_INFO, outcome == BOOKING_UNCHANGED ? "rental-unchanged" : "rental-put",
                  "rental", rental_id, NULL);
    } else {
        log_event(LOG_ERROR_LEVEL, "rental-not-stored", "rental", rental_id, "why", fault->text,
                  NULL);
    }
    job->done(job->data, outcome);
    talloc_free(job);
}

struct bookings *
bookings_new(struct turn *turn, const struct clock *clock)
{
    struct bookings *bookings = memory_new(NULL, struct bookings);

    bookings->turn = turn;
    bookings->clock = clock;
    return bookings;
}

void
bookings_free(struct bookings *bookings)
{
    talloc_free(bookings);
}

void
bookings_take(struct bookings *bookings, const struct booking *booking,
              void (*done)(void *data, enum booking_outcome outcome), void *data)
{
    struct booking_job *job = memory_new(NULL, struct booking_job);

    *job = (struct booking_job){.job = {.write = on_write, .done = on_done},
                                .bookings = bookings,
                                .booking = *booking,
                                .done = done,
                                .data = data};
    turn_add(bookings->turn, &job->job);
}
