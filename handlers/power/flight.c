#include "flight.h"

#include <assert.h>
#include <math.h>

enum { FREE_MWH = 100000, APPROVAL_MWH = 160000 };

int
flight_need(const int *gate_to_gate, size_t count, int ground_minutes)
{
    int need = ground_minutes;
    size_t i;

    assert(ground_minutes >= 0);
    for (i = 0; i < count; i++) {
        assert(0 <= gate_to_gate[i] && gate_to_gate[i] <= FLIGHT_MINUTES_MAX);
        need += (gate_to_gate[i] * 3 + 1) / 2;
    }
    return need;
}

int
flight_batteries(int need, const int *lasts, size_t count, int another)
{
    size_t used = 0;

    assert(another > 0);
    while (need > 0 && used < count) {
        need -= lasts[used++];
    }
    return (int)used + (need > 0 ? (need + another - 1) / another : 0);
}

enum watt_hours
flight_watt_hours(double rated_wh, double volts, double amp_hours)
{
    /* In whole milliwatt-hours, so that 99.99 is not rounded to a hundred. */
    double mwh = ceil((rated_wh > 0 ? rated_wh : volts * amp_hours) * 1000 - 0.5);

    if (mwh <= 0) {
        return WATT_HOURS_UNKNOWN;
    }
    return mwh <= FREE_MWH       ? WATT_HOURS_FREE
           : mwh <= APPROVAL_MWH ? WATT_HOURS_APPROVAL
                                 : WATT_HOURS_REFUSED;
}

int
flight_batteries_allowed(enum watt_hours class, int held)
{
    switch (class) {
    case WATT_HOURS_FREE:
        return -1;
    case WATT_HOURS_APPROVAL:
        return held + SPARES_WITH_APPROVAL;
    default: /* what is not known is not promised */
        return 0;
    }
}
