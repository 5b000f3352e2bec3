#include "battery_set.h"

#include <assert.h>

int
battery_health(const struct battery *battery, int retirement_health, int64_t now_utc_s)
{
    bool measured = battery->health_percent > 0;
    bool old = measured && now_utc_s - battery->measured_utc_s > HEALTH_OLD_S;

    if (measured && !old) {
        return battery->health_percent;
    }
    return measured && battery->health_percent < retirement_health ? battery->health_percent
                                                                   : retirement_health;
}

/* Insertion sort, upwards: sets are tiny, and qsort() would want a file-level comparison. */
static void
sort_upwards(int *values, size_t count)
{
    size_t i, j;

    for (i = 1; i < count; i++) {
        int value = values[i];

        for (j = i; j > 0 && values[j - 1] > value; j--) {
            values[j] = values[j - 1];
        }
        values[j] = value;
    }
}

struct sorted_set {
    int health[BATTERY_SET_MAX + RENTAL_BATTERIES_MAX];
    size_t health_count; /* at least `count` */
    int low[BATTERY_SET_MAX], high[BATTERY_SET_MAX];
    size_t count;
};

static bool
fill_set(const struct rental *rental, const struct equipment *equipment,
         const struct percent *charges, size_t count, int64_t now_utc_s, struct sorted_set *set)
{
    size_t i;

    assert(count <= BATTERY_SET_MAX && rental->battery_count <= RENTAL_BATTERIES_MAX);
    set->count = count;
    for (i = 0; i < count; i++) {
        set->low[i] = charges[i].low;
        set->high[i] = charges[i].high;
    }
    set->health_count = 0;
    for (i = 0; i < rental->battery_count; i++) {
        set->health[set->health_count++] =
            battery_health(&rental->batteries[i], equipment->retirement_health, now_utc_s);
    }
    while (set->health_count < count) {
        set->health[set->health_count++] = equipment->retirement_health;
    }
    sort_upwards(set->low, count);
    sort_upwards(set->high, count);
    sort_upwards(set->health, set->health_count);
    return set->health_count > 0 && set->health[0] > 0;
}

bool
battery_set_time(const struct rental *rental, const struct equipment *equipment,
                 struct minutes full, const struct percent *charges, size_t count, size_t at_most,
                 int64_t now_utc_s, struct minutes *time)
{
    struct sorted_set set;
    struct minutes total = {0, 0};
    size_t counted = at_most > 0 && at_most < count ? at_most : count;
    size_t i;

    if (count == 0 || !fill_set(rental, equipment, charges, count, now_utc_s, &set)) {
        return false;
    }
    for (i = 0; i < counted; i++) {
        int worst = set.health[i], best = set.health[set.health_count - 1 - i];
        /* A sum of products is least when the largest of one meets the smallest of the other. */
        int low = set.low[counted - 1 - i], high = set.high[count - 1 - i];

        total.low +=
            battery_time(full, (struct percent){worst, worst}, (struct percent){low, low}).low;
        total.high +=
            battery_time(full, (struct percent){best, best}, (struct percent){high, high}).high;
    }
    *time = total;
    return true;
}

bool
battery_set_lasts(const struct rental *rental, const struct equipment *equipment,
                  struct minutes full, const struct percent *charges, size_t count,
                  int64_t now_utc_s, int *lasts)
{
    struct sorted_set set;
    size_t i;

    if (count == 0 || !fill_set(rental, equipment, charges, count, now_utc_s, &set)) {
        return false;
    }
    for (i = 0; i < count; i++) {
        int charge = set.low[count - 1 - i];

        lasts[i] = battery_time(full, (struct percent){set.health[i], set.health[i]},
                                (struct percent){charge, charge})
                       .low;
    }
    sort_upwards(lasts, count);
    for (i = 0; i < count / 2; i++) {
        int kept = lasts[i];

        lasts[i] = lasts[count - 1 - i];
        lasts[count - 1 - i] = kept;
    }
    return true;
}
