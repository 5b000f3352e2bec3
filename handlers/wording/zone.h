/*
 * A time zone as plain data, so that the handlers can name clock times without reading zone files.
 * daemon/clock.c fills it from the system's zone data.
 */
#ifndef ZONE_H
#define ZONE_H

#include <stddef.h>
#include <stdint.h>

/* From this moment on the zone is this far east of UTC. */
struct zone_step {
    int64_t from_utc_s;
    int32_t offset_s;
};

/* Steps in order of time; the first one also holds for everything before it. At least one. */
struct zone {
    const struct zone_step *steps;
    size_t count;
};

struct local_time {
    int year, month, day; /* month 1 to 12 */
    int hour, minute, second;
    int weekday; /* 0 is Sunday */
};

/* Days since 1970-01-01. `day` may lie outside of its month: the 32nd of January is 1 February. */
int64_t zone_days(int year, int month, int day);

/* What a clock on the wall shows at a moment. Proleptic Gregorian calendar. */
struct local_time zone_local(const struct zone *zone, int64_t utc_s);

/*
 * The moment at which the wall shows this; of two (clocks go back) the earlier, and within a gap
 * (clocks go forward) the moment that the old offset gives. `weekday` is not read, and `day` may
 * lie outside of its month.
 */
int64_t zone_utc(const struct zone *zone, const struct local_time *local);

#endif
