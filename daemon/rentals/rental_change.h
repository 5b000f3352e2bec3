/*
 * What a new record of a rental changes for the person who breathes by it. Pure: two records in, a
 * judgement out.
 */
#ifndef RENTAL_CHANGE_H
#define RENTAL_CHANGE_H

#include "context.h"
#include "rental.h"

struct rental_change {
    bool is_swap;      /* another unit, or other batteries */
    bool is_new_order; /* what is ordered for some activity is another mode or setting */
    /*
     * Not ALERT_NONE: staff must ask the prescriber whether the pulse setting still holds, for
     * pulse settings are not comparable between models (ATS guideline 2020, table 2). Urgent if the
     * renter has the unit already. So for night mode, which counts in pulses too on some units
     * (common practice, no source). Not asked for where each such order of the new record says who
     * confirmed it and bears a later date than the old one.
     */
    enum alert_level confirm_pulse;
};

/* `before` is NULL for a rental that had no record. */
struct rental_change rental_change_of(const struct rental *before, const struct rental *after);

/* Whether what the renter told of the batteries is of another unit, or of another use of it. */
bool rental_change_voids_account(const struct rental_change *change);

#endif
