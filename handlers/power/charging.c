#include "charging.h"

#include <assert.h>
#include <stdint.h>

enum { SLOW_FROM = 80, SHARES = 1000 };

/* Thousandths of the slow part that are over at 80, 81 … 100 percent, by the header's formula. */
static const short slow_share[] = {0,   20,  41,  63,  86,  111, 137, 164, 194, 225, 260,
                                   297, 337, 382, 432, 488, 553, 629, 721, 839, 1000};

/* Thousandths of a minute from empty to this charge. */
static int64_t
from_empty(int percent, int to_80, int to_full)
{
    if (percent <= SLOW_FROM) {
        return (int64_t)to_80 * SHARES * percent / SLOW_FROM;
    }
    return (int64_t)to_80 * SHARES + (int64_t)(to_full - to_80) * slow_share[percent - SLOW_FROM];
}

struct minutes
charging_time(const struct charge_minutes *rate, struct percent from, int to)
{
    int64_t low, high;

    assert(rate->known && 0 <= from.low && from.low <= from.high && from.high <= 100);
    assert(0 <= to && to <= 100);
    low = from_empty(to, rate->to_80.low, rate->to_full.low) -
          from_empty(from.high, rate->to_80.low, rate->to_full.low);
    high = from_empty(to, rate->to_80.high, rate->to_full.high) -
           from_empty(from.low, rate->to_80.high, rate->to_full.high);
    return (struct minutes){low <= 0 ? 0 : (int)(low / SHARES),
                            high <= 0 ? 0 : (int)((high + SHARES - 1) / SHARES)};
}

/* The highest charge that is surely reached when charging takes so long. */
static int
level(int from, int minutes, int to_80, int to_full)
{
    int64_t spent = from_empty(from, to_80, to_full) + (int64_t)minutes * SHARES;
    int percent = from;

    while (percent < 100 && from_empty(percent + 1, to_80, to_full) <= spent) {
        percent++;
    }
    return percent;
}

struct percent
charging_level(const struct charge_minutes *rate, struct percent from, int minutes)
{
    int high = level(from.high, minutes, rate->to_80.low, rate->to_full.low);

    assert(rate->known && minutes >= 0);
    return (struct percent){level(from.low, minutes, rate->to_80.high, rate->to_full.high),
                            high < 100 && minutes > 0 ? high + 1 : high};
}

int
charging_minute(const struct charge_minutes *rate, int charge)
{
    int percent = charge / PERCENT_PARTS;
    int64_t thousandths; /* of a minute, for one percent */

    assert(rate->known && 0 <= charge && percent <= 100);
    if (percent == 100) {
        return 0;
    }
    thousandths = from_empty(percent + 1, rate->to_80.high, rate->to_full.high) -
                  from_empty(percent, rate->to_80.high, rate->to_full.high);
    return thousandths == 0 ? PERCENT_PARTS : (int)((int64_t)PERCENT_PARTS * SHARES / thousandths);
}

/* The emptiest that has no turn yet and needs one; `count` if there is none. */
static size_t
next_battery(const struct percent *charges, size_t count, int to, const bool *done)
{
    size_t best = count, i;

    for (i = 0; i < count; i++) {
        if (!done[i] && charges[i].low < to &&
            (best == count || charges[i].low < charges[best].low)) {
            best = i;
        }
    }
    return best;
}

void
charging_plan(const struct percent *charges, size_t count, const struct charge_minutes *places,
              size_t place_count, int to, struct charging_plan *plan)
{
    struct minutes busy[CHARGING_PLACES_MAX] = {{0, 0}};
    bool done[CHARGING_BATTERIES_MAX] = {false};
    size_t battery;

    assert(count <= CHARGING_BATTERIES_MAX);
    assert(0 < place_count && place_count <= CHARGING_PLACES_MAX);
    *plan = (struct charging_plan){.count = 0};
    while ((battery = next_battery(charges, count, to, done)) < count) {
        struct charging_step *step = &plan->steps[plan->count++];
        size_t place;

        *step = (struct charging_step){.battery = battery};
        for (place = 0; place < place_count; place++) {
            struct minutes takes = charging_time(&places[place], charges[battery], to);
            struct minutes end = {busy[place].low + takes.low, busy[place].high + takes.high};

            if (place == 0 || end.high < step->end.high) {
                step->place = place;
                step->start = busy[place];
                step->end = end;
            }
        }
        busy[step->place] = step->end;
        done[battery] = true;
        plan->all_done.low =
            step->end.low > plan->all_done.low ? step->end.low : plan->all_done.low;
        plan->all_done.high =
            step->end.high > plan->all_done.high ? step->end.high : plan->all_done.high;
    }
}

void
charging_levels_after(const struct charging_plan *plan, const struct percent *charges, size_t count,
                      const struct charge_minutes *places, int minutes, struct percent *after)
{
    size_t i;

    for (i = 0; i < count; i++) {
        after[i] = charges[i];
    }
    for (i = 0; i < plan->count; i++) {
        const struct charging_step *step = &plan->steps[i];
        int low = minutes - step->start.high, high = minutes - step->start.low;
        struct percent from = charges[step->battery];

        if (high > 0) {
            after[step->battery].high = charging_level(&places[step->place], from, high).high;
        }
        if (low > 0) {
            after[step->battery].low = charging_level(&places[step->place], from, low).low;
        }
    }
}
