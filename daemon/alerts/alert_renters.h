/*
 * Whom an alert is about: several renters who tell the same mains failure; or, when it names no
 * rental, any of those of the phone, for a phone may have several, and the text that began it may
 * come from before the record or not say which.
 */
#ifndef ALERT_RENTERS_H
#define ALERT_RENTERS_H

#include "alert_rows.h"
#include "config.h"

/*
 * Of a mains failure that several told, sets the renters. Of an alert without rental_id, sets what
 * staff are told from the phone's active rentals, in
 * `arena`: of one, first_name and place; of several, one_of and the places ("Cabin 4 or Aspen
 * House"); of none, nothing. Any other alert stays as it is.
 */
int alert_renters(struct store *store, void *arena, const struct config *config,
                  struct alert_row *alert, struct fault *fault);

#endif
