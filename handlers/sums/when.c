#include "when.h"

enum { DAYS_A_WEEK = 7 };

/* So many days from today, at this time of day. */
static int64_t
at(const struct zone *zone, const struct local_time *today, int days, int minutes)
{
    const struct local_time local = {.year = today->year,
                                     .month = today->month,
                                     .day = today->day + days,
                                     .hour = minutes / 60,
                                     .minute = minutes % 60};

    return zone_utc(zone, &local);
}

int64_t
when_told(const struct zone *zone, int64_t now_utc_s, int minutes, bool has_day, enum told_day day)
{
    const struct local_time today = zone_local(zone, now_utc_s);
    int64_t utc_s;
    int days;

    if (has_day && day == DAY_TODAY) {
        return at(zone, &today, 0, minutes);
    }
    if (has_day && day == DAY_TOMORROW) {
        return at(zone, &today, 1, minutes);
    }
    if (!has_day) {
        utc_s = at(zone, &today, 0, minutes);
        return utc_s > now_utc_s ? utc_s : at(zone, &today, 1, minutes);
    }
    /* Monday is DAY_MONDAY in the one and 1 in the other. */
    days = ((int)day - (int)DAY_MONDAY + 1 - today.weekday + DAYS_A_WEEK) % DAYS_A_WEEK;
    utc_s = at(zone, &today, days, minutes);
    return utc_s > now_utc_s ? utc_s : at(zone, &today, days + DAYS_A_WEEK, minutes);
}
