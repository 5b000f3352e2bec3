/* Rentals against the units that they name. */
#ifndef CHECK_RENTALS_H
#define CHECK_RENTALS_H

#include <stdint.h>

#include "kb.h"
#include "remark.h"
#include "rental.h"
#include "store.h"

/*
 * One rental; those that are returned or closed are passed over. Errors: a unit that has no
 * equipment file, an order for which that has no row (unless the wall feeds it and the renter is
 * where a wall is). Warnings: no orders, no batteries, batteries without a measured health or with
 * one over a year old. `database` is named as the file. Pure.
 */
void check_rental(const struct kb *kb, const struct rental *rental, const char *database,
                  int64_t now_utc_s, struct remarks *remarks);

/*
 * All current rentals of a store. *checked is how many were active. Records that cannot be read are
 * remarks too. Returns 0, or -1 with a fault of the store.
 */
int check_rentals(struct store *store, const struct kb *kb, const char *database, int64_t now_utc_s,
                  struct remarks *remarks, size_t *checked, struct fault *fault);

#endif
