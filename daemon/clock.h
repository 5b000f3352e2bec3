/*
 * Time: the only place that asks what time it is, and the only one that reads zone files (GLib's
 * GTimeZone; measured against libical, which reads the same files but offers no list of changes).
 *
 * For a demo or a test the configuration may start the clock elsewhere and let it run faster
 * ("played_clock"); then every duration that a timer waits is divided by the same factor.
 */
#ifndef CLOCK_H
#define CLOCK_H

#include <stdbool.h>
#include <stdint.h>
#include <sys/time.h>

#include "fault.h"
#include "zone.h"

struct clock;

/* Where real time comes from, in milliseconds: what the wall shows, which may be set, and what
 * passes whatever it shows, a sleep of the machine included (CLOCK_BOOTTIME). */
struct clock_source {
    int64_t (*wall_ms)(void *data);
    int64_t (*passed_ms)(void *data);
    void *data;
};

/* Real time: start_utc_s 0, speed 1. Both are read once. Free with clock_free(). */
struct clock *clock_new(int64_t start_utc_s, int speed);
/* Real time by another source, for tests. */
struct clock *clock_new_by(const struct clock_source *source);
void clock_free(struct clock *clock);

/* UTC as it was when the clock was made, plus what has passed: a wall clock that is set changes
 * nothing by itself. */
int64_t clock_now_utc_s(const struct clock *clock);

/*
 * By how many seconds the wall clock is ahead of this one (behind: negative); 0 if by less than
 * CLOCK_SLACK_S, which is taken over silently, and always for a played clock.
 */
enum { CLOCK_SLACK_S = 2 };
int64_t clock_step_s(struct clock *clock);
/* This clock goes on so many seconds later. */
void clock_move(struct clock *clock, int64_t seconds);

/* What a timer has to wait for so many seconds of this clock to pass; never below 1 ms. */
struct timeval clock_wait(const struct clock *clock, int64_t seconds);

/*
 * Reads a zone ("America/Denver") for `years` years around now into *zone, in `arena`. Returns 0,
 * or -1 with a fault that names the zone if the system has none of that name.
 */
int clock_zone(void *arena, const char *name, int64_t now_utc_s, int years, struct zone *zone,
               struct fault *fault);

/*
 * RFC 3339 ("2026-02-11T15:00:00-07:00", fractions dropped) or a whole number of Unix seconds, or
 * of milliseconds if above 10^11. Returns 0 and *utc_s, or -1.
 */
int clock_read(const char *text, int64_t *utc_s);

/*
 * What a clock on the wall shows: "2026-02-14 10:00", with T instead of the space, with seconds or
 * not, or the day alone. "2/14/2026" is not read: whether month or day comes first would be a
 * guess. Returns 0 with *local (its weekday too) and whether a time was told, or -1.
 */
int clock_read_wall(const char *text, struct local_time *local, bool *has_time);

/* RFC 3339 in UTC, in `arena`. */
char *clock_text(void *arena, int64_t utc_s);

/* Microseconds of CLOCK_MONOTONIC, as the service manager wants them. */
int64_t clock_monotonic_us(void);

/* The real time to the millisecond, for lines of the log whatever clock is played. */
enum { CLOCK_STAMP_SIZE = 32 };
void clock_stamp(char stamp[CLOCK_STAMP_SIZE]);

#endif
