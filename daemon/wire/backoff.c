#include "backoff.h"

#include <assert.h>

struct backoff
backoff_for(enum urgency urgency)
{
    static const struct backoff by_urgency[] = {
        [URGENCY_EMERGENCY] = {.first_s = 1, .longest_s = 15, .longest_ask_s = 30},
        [URGENCY_URGENT] = {.first_s = 2, .longest_s = 30, .longest_ask_s = 60},
        [URGENCY_REPLY] = {.first_s = 2, .longest_s = 120, .longest_ask_s = 600},
        [URGENCY_OFFICE] = {.first_s = 5, .longest_s = 600, .longest_ask_s = 3600},
    };

    return by_urgency[urgency];
}

int64_t
backoff_wait_s(const struct backoff *backoff, int tries, uint32_t random, int64_t retry_after_s)
{
    int64_t whole = backoff->first_s;
    int64_t half;
    int64_t wait;
    int i;

    assert(tries >= 1 && backoff->first_s >= 1 && backoff->longest_s >= backoff->first_s);
    for (i = 1; i < tries && whole < backoff->longest_s; i++) {
        whole *= 2;
    }
    if (whole > backoff->longest_s) {
        whole = backoff->longest_s;
    }
    half = (whole + 1) / 2;
    wait = half + random % (whole - half + 1);
    if (retry_after_s > backoff->longest_ask_s) {
        retry_after_s = backoff->longest_ask_s;
    }
    return retry_after_s > wait ? retry_after_s : wait;
}
