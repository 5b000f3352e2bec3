/*
 * "What happened?": staff close an alert and say no word of the outcome, without which none is
 * closed. What they text next is that outcome, if it reads like one. Private to staff*.c.
 */
#ifndef STAFF_OUTCOME_H
#define STAFF_OUTCOME_H

#include "staff_meant.h"

/* Asks for it, and keeps which alert is to be closed; `only_this`: not what is called with it. */
void staff_outcome_ask(const struct asked *whole, struct verdict *verdict,
                       const struct open_alert *alert, bool only_this);

/* The alert whose outcome was asked for not long ago, if it still is open; or NULL. *only_this as
 * it was asked. */
const struct open_alert *staff_outcome_awaited(const struct asked *whole, bool *only_this);

/* The text tells how something ended: no pleasantry, no question, no word for the renter, nothing
 * that is still to come. */
bool staff_outcome_is_told(const struct asked *whole);

/* It was asked for, and the signs in the text are of what is past or in others' hands: "he passed
 * out, ambulance took him". Not of whoever writes, nor of what is so now. */
bool staff_outcome_tells_signs(const struct asked *whole);

#endif
