/*
 * Rentals of a checked file into the store, beside a daemon that writes too: in short transactions
 * with pauses between them. Private to import.c.
 */
#ifndef IMPORT_WRITE_H
#define IMPORT_WRITE_H

#include "store.h"

/* A record that has passed every check. */
struct import_rental {
    const char *digest;
    const char *json;
};

/* What was done, or would be. */
struct import_sums {
    size_t seen, added, changed; /* changed: not the new ones */
    size_t swaps, new_orders;    /* among the changed ones */
    size_t to_confirm;           /* staff are called about the pulse setting */
    int64_t longest_hold_ms;     /* for so long nobody else could write */
};

struct import_write {
    struct store *store;
    const struct import_rental *rentals;
    size_t count;
    const char *file; /* for the audit trail */
    int64_t now_utc_s;
    void (*on_progress)(void *data, size_t done, size_t all);
    void *data;
};

/*
 * Writes them. On failure *sums says how far it came; what is written stays, and doing all of it
 * again finishes it, for a rental that has not changed is left as it is.
 */
int import_write(const struct import_write *job, struct import_sums *sums, struct fault *fault);

/* What writing would do; reads only. */
int import_judge(const struct import_write *job, struct import_sums *sums, struct fault *fault);

#endif
