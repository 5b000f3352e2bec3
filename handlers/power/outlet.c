#include "outlet.h"

#include <assert.h>
#include <math.h>

enum { CAR_VOLTS = 12, ARRIVES_PERCENT = 85, FOR_LONG_PERCENT = 80, FAST_PERCENT = 80 };

static int
divided_up(int dividend, int divisor)
{
    return (dividend + divisor - 1) / divisor;
}

int
outlet_charge_watts(const struct equipment *equipment, const struct charge_minutes *rate)
{
    double wh =
        equipment->rated_wh > 0 ? equipment->rated_wh : equipment->volts * equipment->amp_hours;
    int tenths_wh = (int)ceil(wh * 10 - 0.001); /* whole tenths, so that 92.0 W stay 92 */

    assert(rate->known && rate->to_80.low > 0);
    return divided_up(tenths_wh * FAST_PERCENT * 60, rate->to_80.low * 10 * 100);
}

int
outlet_fuse_amps(int watts)
{
    return divided_up(watts * 100 * 100, ARRIVES_PERCENT * FOR_LONG_PERCENT * CAR_VOLTS);
}

bool
outlet_feeds(int amps, int watts)
{
    return watts * 100 <= amps * CAR_VOLTS * ARRIVES_PERCENT;
}

int
outlet_inverter_watts(int watts)
{
    return divided_up(watts * 5, 4);
}
