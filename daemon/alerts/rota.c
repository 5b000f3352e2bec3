#include "rota.h"

#include <assert.h>

static int64_t
floor_divide(int64_t a, int64_t b)
{
    return a / b - (a % b < 0);
}

static int64_t
moment(const struct zone *zone, int64_t day, int minute)
{
    struct local_time local = {.year = 1970, .month = 1, .day = (int)day + 1};

    local.hour = minute / 60;
    local.minute = minute % 60;
    return zone_utc(zone, &local);
}

static int64_t
day_of(const struct zone *zone, int64_t utc_s)
{
    struct local_time local = zone_local(zone, utc_s);

    return zone_days(local.year, local.month, local.day);
}

/* When a turn last started, at or before this moment, and when it starts next. */
static void
around(const struct rota *rota, const struct rota_turn *turn, const struct zone *zone,
       int64_t utc_s, int64_t *last, int64_t *next)
{
    int64_t cycle = 7 * (int64_t)rota->weeks;
    int64_t first = rota->first_day + 7 * (int64_t)turn->week + turn->weekday;
    int64_t day = first + floor_divide(day_of(zone, utc_s) - first, cycle) * cycle;

    if (moment(zone, day, turn->minute) > utc_s) {
        day -= cycle;
    }
    *last = moment(zone, day, turn->minute);
    *next = moment(zone, day + cycle, turn->minute);
}

struct rota_now
rota_at(const struct rota *rota, const struct zone *zone, int64_t utc_s)
{
    struct rota_now now = {.since_utc_s = INT64_MIN, .until_utc_s = INT64_MAX};
    size_t i;

    assert(rota->turn_count > 0 && rota->weeks > 0);
    for (i = 0; i < rota->turn_count; i++) {
        int64_t last, next;

        around(rota, &rota->turns[i], zone, utc_s, &last, &next);
        now.until_utc_s = next < now.until_utc_s ? next : now.until_utc_s;
        if (last > now.since_utc_s) {
            now.since_utc_s = last;
            now.line = rota->turns[i].line;
        }
    }
    for (i = 0; i < rota->swap_count; i++) {
        int64_t from = zone_utc(zone, &rota->swaps[i].from);
        int64_t until = zone_utc(zone, &rota->swaps[i].until);

        if (from <= utc_s && utc_s < until) {
            now.line = rota->swaps[i].line;
            now.since_utc_s = from;
            now.until_utc_s = until;
            now.is_swap = true;
        } else if (from > utc_s && from < now.until_utc_s) {
            now.until_utc_s = from;
        } else if (until <= utc_s && until > now.since_utc_s) {
            now.since_utc_s = until; /* back from a swap: their turn starts again */
        }
    }
    return now;
}

static bool
is_holiday(const struct office_hours *hours, int64_t day)
{
    size_t i;

    for (i = 0; i < hours->holiday_count; i++) {
        if (hours->holidays[i] == day) {
            return true;
        }
    }
    return false;
}

int64_t
office_opens(const struct office_hours *hours, const struct zone *zone, int64_t utc_s)
{
    int64_t today = day_of(zone, utc_s), day;

    for (day = today; day < today + OFFICE_DAYS_AHEAD; day++) {
        int weekday = (int)(((day + 4) % 7 + 7) % 7); /* 1970-01-01 was a Thursday */
        const struct office_day *times = &hours->days[weekday];
        int64_t open = moment(zone, day, times->open);

        if (times->open < times->close && !is_holiday(hours, day) &&
            utc_s < moment(zone, day, times->close)) {
            return open > utc_s ? open : utc_s;
        }
    }
    return INT64_MAX;
}
