/* Rentals whose renter has died, as staff say; append-only, the newest entry of a rental counts. */
#ifndef REST_ROWS_H
#define REST_ROWS_H

#include "store.h"

int rest_rows_add(struct store *store, const char *rental_id, bool rests, const char *who,
                  int64_t now_utc_s, struct fault *fault);
/* Whether nothing is to be started for this rental. */
int rest_rows_is(struct store *store, const char *rental_id, bool *rests, struct fault *fault);

#endif
