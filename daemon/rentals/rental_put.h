/*
 * A record of a rental into the store with all that follows from it: what the renter told of the
 * batteries counts no longer after a swap or a new order, reminders end, and staff are called about
 * a pulse setting on another model. Whatever road a record comes by, this is the only way in.
 */
#ifndef RENTAL_PUT_H
#define RENTAL_PUT_H

#include "rental_change.h"
#include "store.h"

struct rental_put {
    bool is_new;     /* had no record before */
    bool is_changed; /* a row is written, or would be; true for a new one */
    struct rental_change change;
};

/* What putting this record would do. Reads only; `arena` may end after it. */
int rental_put_judge(struct store *store, void *arena, const struct rental *rental,
                     struct rental_put *put, struct fault *fault);

/* The caller has the transaction. `json` is rental_record.h's text of the rental. */
int rental_put(struct store *store, void *arena, const struct rental *rental, const char *json,
               const char *source, int64_t now_utc_s, struct rental_put *put, struct fault *fault);

#endif
