#include "battery_time.h"

#include <assert.h>

enum { RESERVE_MINUTES = 15, RESERVE_PERCENT = 20, SHARES = 100 * 100 };

static void
check_percent(struct percent percent)
{
    assert(0 <= percent.low && percent.low <= percent.high && percent.high <= 100);
    (void)percent;
}

struct minutes
battery_time(struct minutes full, struct percent health, struct percent charge)
{
    struct minutes left;

    assert(0 <= full.low && full.low <= full.high && full.high <= 100000);
    check_percent(health);
    check_percent(charge);
    left.low = full.low * health.low * charge.low / SHARES;
    left.high = (full.high * health.high * charge.high + SHARES - 1) / SHARES;
    return left;
}

struct minutes
minutes_sum(struct minutes a, struct minutes b)
{
    return (struct minutes){a.low + b.low, a.high + b.high};
}

struct minutes
minutes_after(struct minutes left, int elapsed, bool on_battery)
{
    assert(elapsed >= 0);
    left.low = left.low > elapsed ? left.low - elapsed : 0;
    if (on_battery) {
        left.high = left.high > elapsed ? left.high - elapsed : 0;
    }
    return left;
}

int
plug_reserve(int low_minutes)
{
    int share = (low_minutes * RESERVE_PERCENT + 99) / 100;
    int reserve = share > RESERVE_MINUTES ? share : RESERVE_MINUTES;

    return reserve < low_minutes ? reserve : low_minutes;
}
