/*
 * One transaction over 100,000 rows would keep the daemon from storing a text for many seconds. A
 * transaction here ends after HOLD_MS, and how many rows fit is learnt from the last one; that is
 * far below what a text may wait, for on a busy machine some take ten times as long as all others.
 * A turn of the daemon that found the store busy tries again every 20 ms (turn.c), so PAUSE_MS
 * always lets it in.
 */
#include "import_write.h"

#include <assert.h>

#include <glib.h>

#include "audit_rows.h"
#include "clock.h"
#include "memory.h"
#include "rental_put.h"
#include "rental_record.h"

enum { HOLD_MS = 30, PAUSE_MS = 25, ROWS_FIRST = 20, ROWS_MAX = 1000 };

static const char audit_what[] = "import-rentals";

static void
add_up(struct import_sums *sums, const struct rental_put *put)
{
    sums->seen++;
    sums->added += put->is_new;
    sums->changed += put->is_changed && !put->is_new;
    sums->swaps += put->change.is_swap;
    sums->new_orders += put->change.is_new_order;
    sums->to_confirm += put->change.confirm_pulse != ALERT_NONE;
}

static void
parse(void *arena, const struct import_rental *pending, struct rental *rental)
{
    bool is_read = rental_record_parse(arena, pending->json, rental);

    assert(is_read); /* it was checked and written by ourselves */
    (void)is_read;
    rental->digest = pending->digest;
}

/* The rows from *at to `to`, or as many as HOLD_MS takes, in one transaction. */
static int
write_rows(const struct import_write *job, size_t *at, size_t to, int64_t began_us,
           struct import_sums *sums, struct fault *fault)
{
    void *arena = memory_must(talloc_new(NULL));
    struct import_sums after = *sums;
    size_t i = *at;
    int rc;

    do {
        struct rental rental;
        struct rental_put put;

        parse(arena, &job->rentals[i], &rental);
        rc = rental_put(job->store, arena, &rental, job->rentals[i].json, "import", job->now_utc_s,
                        &put, fault);
        add_up(&after, &put);
        talloc_free_children(arena);
        i++;
    } while (rc == 0 && i < to && clock_monotonic_us() - began_us < HOLD_MS * 1000);
    if (rc == 0) {
        rc = store_commit(job->store, fault);
    }
    talloc_free(arena);
    if (rc != 0) {
        store_rollback(job->store);
        return -1;
    }
    *sums = after;
    *at = i;
    return 0;
}

/* How many rows the next transaction takes, from how long the last one took. */
static size_t
rows_next(size_t rows, int64_t took_us)
{
    int64_t fitting = took_us > 0 ? (int64_t)rows * HOLD_MS * 1000 / took_us : ROWS_MAX;

    if (fitting > (int64_t)rows * 2) {
        fitting = (int64_t)rows * 2; /* one that was quick by chance proves little */
    }
    return fitting < 1 ? 1 : fitting > ROWS_MAX ? ROWS_MAX : (size_t)fitting;
}

/* Passes over what has not changed: looking takes no lock, and of most files that is nearly all. */
static int
skip_unchanged(const struct import_write *job, size_t *at, struct import_sums *sums,
               struct fault *fault)
{
    void *arena = memory_must(talloc_new(NULL));
    struct rental_put put = {0};
    int rc = 0;

    while (rc == 0 && !put.is_changed && *at < job->count) {
        struct rental rental;

        parse(arena, &job->rentals[*at], &rental);
        rc = rental_put_judge(job->store, arena, &rental, &put, fault);
        if (rc == 0 && !put.is_changed) {
            add_up(sums, &put);
            ++*at;
        }
        talloc_free_children(arena);
    }
    talloc_free(arena);
    job->on_progress(job->data, *at, job->count);
    return rc;
}

static int
write_all(const struct import_write *job, struct import_sums *sums, struct fault *fault)
{
    size_t rows = ROWS_FIRST;
    size_t at = 0;

    if (skip_unchanged(job, &at, sums, fault) != 0) {
        return -1;
    }
    while (at < job->count) {
        size_t from = at, to = job->count - at < rows ? job->count : at + rows;
        int64_t began_us, took_us;

        if (store_begin_patiently(job->store, fault) != 0) {
            return -1;
        }
        began_us = clock_monotonic_us();
        if (write_rows(job, &at, to, began_us, sums, fault) != 0) {
            return -1;
        }
        took_us = clock_monotonic_us() - began_us;
        if (took_us / 1000 > sums->longest_hold_ms) {
            sums->longest_hold_ms = took_us / 1000;
        }
        rows = rows_next(at - from, took_us);
        store_tidy(job->store);
        g_usleep(PAUSE_MS * 1000);
        if (skip_unchanged(job, &at, sums, fault) != 0) {
            return -1;
        }
    }
    return 0;
}

static int
write_audit(const struct import_write *job, const char *detail, struct fault *fault)
{
    const struct audit_row audit = {
        .who = "hutbell import", .what = audit_what, .subject = job->file, .detail = detail};

    if (store_begin_patiently(job->store, fault) != 0) {
        return -1;
    }
    if (audit_rows_add(job->store, &audit, job->now_utc_s, fault) != 0 ||
        store_commit(job->store, fault) != 0) {
        store_rollback(job->store);
        return -1;
    }
    return 0;
}

int
import_write(const struct import_write *job, struct import_sums *sums, struct fault *fault)
{
    void *arena = memory_must(talloc_new(NULL));
    int rc = -1;

    *sums = (struct import_sums){0};
    if (write_audit(job, memory_format(arena, "%zu rows, begun", job->count), fault) == 0 &&
        store_write_much(job->store, true, fault) == 0 && write_all(job, sums, fault) == 0 &&
        store_write_much(job->store, false, fault) == 0) {
        rc = write_audit(job,
                         memory_format(arena, "%zu rows, %zu new, %zu changed", job->count,
                                       sums->added, sums->changed),
                         fault);
    }
    talloc_free(arena);
    return rc;
}

int
import_judge(const struct import_write *job, struct import_sums *sums, struct fault *fault)
{
    void *arena = memory_must(talloc_new(NULL));
    int rc = 0;
    size_t i;

    *sums = (struct import_sums){0};
    for (i = 0; rc == 0 && i < job->count; i++) {
        struct rental rental;
        struct rental_put put;

        parse(arena, &job->rentals[i], &rental);
        rc = rental_put_judge(job->store, arena, &rental, &put, fault);
        add_up(sums, &put);
        talloc_free_children(arena);
        job->on_progress(job->data, i + 1, job->count);
    }
    talloc_free(arena);
    return rc;
}
