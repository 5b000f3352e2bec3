/*
 * The rota: whose turn it is to be called, and when the office is open. Arithmetic only; clock
 * times are of the office's zone, so a turn that starts at 18:00 does so on either side of a change
 * of summer time.
 */
#ifndef ROTA_H
#define ROTA_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "zone.h"

/* Who is called, first in line first: places in the configuration's list of staff. */
struct rota_line {
    const size_t *staff;
    size_t count; /* at least 1 */
};

/* A turn that comes back every `weeks` weeks and lasts until the next one starts. */
struct rota_turn {
    int week;    /* 0 is the first week of the cycle */
    int weekday; /* 0 is Sunday */
    int minute;  /* of the day, when it starts */
    struct rota_line line;
};

/* Someone else for once: takes the place of whatever turn it is. Of two at a time the later in the
 * list counts. */
struct rota_swap {
    struct local_time from, until;
    struct rota_line line;
};

struct rota {
    int weeks;         /* length of the cycle, at least 1 */
    int64_t first_day; /* a Sunday that begins a first week; days since 1970-01-01 */
    const struct rota_turn *turns;
    size_t turn_count; /* at least 1 */
    const struct rota_swap *swaps;
    size_t swap_count;
};

struct rota_now {
    struct rota_line line;
    int64_t since_utc_s;
    int64_t until_utc_s; /* the next turn or swap starts, or this one's swap ends */
    bool is_swap;
};

struct rota_now rota_at(const struct rota *rota, const struct zone *zone, int64_t utc_s);

enum { OFFICE_DAYS_AHEAD = 400 };

/* Minutes of the day; open == close: closed all day. */
struct office_day {
    int open, close;
};

struct office_hours {
    struct office_day days[7]; /* 0 is Sunday */
    const int64_t *holidays;   /* days since 1970-01-01 on which it is closed */
    size_t holiday_count;
};

/* The moment from which on it is open: now if it is, INT64_MAX if it does not open within
 * OFFICE_DAYS_AHEAD days. */
int64_t office_opens(const struct office_hours *hours, const struct zone *zone, int64_t utc_s);

#endif
