/*
 * When a send that failed is tried again. Arithmetic only: no clock, no random source.
 *
 * The wait doubles with each try up to a longest one; of it, at least half and at most all is
 * taken, as a random number says, so that texts that failed together do not come back together.
 */
#ifndef BACKOFF_H
#define BACKOFF_H

#include <stdint.h>

#include "verdict.h"

struct backoff {
    int64_t first_s;       /* before the second try, >= 1 */
    int64_t longest_s;     /* >= first_s */
    int64_t longest_ask_s; /* most that a gateway's Retry-After can make us wait */
};

/* The more urgent, the sooner; a gateway's wish to be left alone cannot hold up an emergency long.
 */
struct backoff backoff_for(enum urgency urgency);

/*
 * Seconds to wait after so many tries (>= 1). `random` is any number; retry_after_s is what the
 * gateway asked for (RFC 9110, 10.2.3), 0 for nothing. At least 1.
 */
int64_t backoff_wait_s(const struct backoff *backoff, int tries, uint32_t random,
                       int64_t retry_after_s);

#endif
