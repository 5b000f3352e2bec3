#include "source.h"

#include <assert.h>

#include "outlet.h"

enum { USABLE_PERCENT = 90, ARRIVES_PERCENT = 85, MINUTES = 60, TENTHS = 10 };

struct watts
source_takes(int unit_watts, int charge_watts)
{
    assert(unit_watts > 0 && charge_watts >= 0);
    return (struct watts){unit_watts, unit_watts + charge_watts};
}

bool
source_is_enough(int watts, struct watts takes)
{
    return watts >= outlet_inverter_watts(takes.high);
}

static int
at_most(long long minutes)
{
    return minutes > SOURCE_MINUTES_MAX ? SOURCE_MINUTES_MAX : (int)minutes;
}

struct minutes
source_lasts(int tenths_wh, struct watts takes)
{
    long long all = (long long)tenths_wh * MINUTES;

    return (struct minutes){
        at_most(all * USABLE_PERCENT * ARRIVES_PERCENT / (TENTHS * 100LL * 100 * takes.high)),
        at_most((all + TENTHS * takes.low - 1) / (TENTHS * takes.low))};
}
