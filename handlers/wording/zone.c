#include "zone.h"

#include <assert.h>

enum { SECONDS_A_DAY = 86400, DAYS_IN_ERA = 146097, DAYS_TO_1970 = 719468 };

/*
 * Days since 1970-01-01 and back, in the proleptic Gregorian calendar. Years are counted from 1
 * March, so that the leap day is the last of its year and a month's start is linear arithmetic.
 */
int64_t
zone_days(int year, int month, int day)
{
    int64_t shifted = month > 2 ? year : (int64_t)year - 1;
    int64_t era = (shifted >= 0 ? shifted : shifted - 399) / 400;
    int64_t year_of_era = shifted - era * 400;
    int64_t day_of_year = (153 * (month + (month > 2 ? -3 : 9)) + 2) / 5 + day - 1;

    return era * DAYS_IN_ERA + year_of_era * 365 + year_of_era / 4 - year_of_era / 100 +
           day_of_year - DAYS_TO_1970;
}

static void
date_of(int64_t days, struct local_time *local)
{
    int64_t from_era = days + DAYS_TO_1970;
    int64_t era = (from_era >= 0 ? from_era : from_era - DAYS_IN_ERA + 1) / DAYS_IN_ERA;
    int64_t day = from_era - era * DAYS_IN_ERA;
    int64_t year = (day - day / 1460 + day / 36524 - day / (DAYS_IN_ERA - 1)) / 365;
    int64_t day_of_year = day - (365 * year + year / 4 - year / 100);
    int64_t month = (5 * day_of_year + 2) / 153;

    local->day = (int)(day_of_year - (153 * month + 2) / 5 + 1);
    local->month = (int)(month < 10 ? month + 3 : month - 9);
    local->year = (int)(year + era * 400 + (local->month <= 2 ? 1 : 0));
    local->weekday = (int)(((days + 4) % 7 + 7) % 7); /* 1970-01-01 was a Thursday */
}

static int32_t
offset_at(const struct zone *zone, int64_t utc_s)
{
    int32_t offset_s = zone->steps[0].offset_s;
    size_t i;

    for (i = 1; i < zone->count && zone->steps[i].from_utc_s <= utc_s; i++) {
        offset_s = zone->steps[i].offset_s;
    }
    return offset_s;
}

struct local_time
zone_local(const struct zone *zone, int64_t utc_s)
{
    struct local_time local = {0};
    int64_t wall_s, days, rest;

    assert(zone->count > 0);
    wall_s = utc_s + offset_at(zone, utc_s);
    days = wall_s / SECONDS_A_DAY;
    rest = wall_s % SECONDS_A_DAY;
    if (rest < 0) {
        days--;
        rest += SECONDS_A_DAY;
    }
    date_of(days, &local);
    local.hour = (int)(rest / 3600);
    local.minute = (int)(rest / 60 % 60);
    local.second = (int)(rest % 60);
    return local;
}

int64_t
zone_utc(const struct zone *zone, const struct local_time *local)
{
    int64_t wall_s = zone_days(local->year, local->month, local->day) * SECONDS_A_DAY +
                     local->hour * 3600 + local->minute * 60 + local->second;
    int32_t before_s;
    size_t i;

    assert(zone->count > 0);
    before_s = zone->steps[0].offset_s;
    /* The first stretch whose offset leads to a moment before its end: of two, the earlier; in a
     * gap, where no stretch fits, the old offset's. */
    for (i = 1; i < zone->count; i++) {
        int64_t utc_s = wall_s - before_s;
        int64_t new_utc_s = wall_s - zone->steps[i].offset_s;

        if (utc_s < zone->steps[i].from_utc_s || new_utc_s < zone->steps[i].from_utc_s) {
            return utc_s;
        }
        before_s = zone->steps[i].offset_s;
    }
    return wall_s - before_s;
}
