/* Alerts about hutbell itself: the line is dead, the disk is nearly full, the backup failed. */
#ifndef ABOUT_US_H
#define ABOUT_US_H

#include "alert_rows.h"
#include "config.h"

/*
 * Opens one, or adds to the one that is open, for the transaction that is open. `brief` is what
 * staff are told: a few words; one for the office waits until that is open. *number is the alert's.
 */
int about_us(const struct config *config, struct store *store, enum alert_level level,
             const char *reason, const char *brief, int64_t now_utc_s, int64_t *number,
             struct fault *fault);

#endif
