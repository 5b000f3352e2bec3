/*
 * What did not get through, and what is done about it at once. For the transaction that is open.
 *
 * To a renter: staff are told to ring. To staff: the other roads to the same person go at once; if
 * none is left, the next in line is called; and an alert never just ends.
 */
#ifndef NOT_REACHED_H
#define NOT_REACHED_H

#include "calls.h"

/*
 * A send failed (see send_outcome_is_not_reached()), after its event is written.
 *
 * A reply: once a reply, opens the alert "not reached" or, if one is open for the renter already,
 * tells whoever has it to ring. A call to staff, on one road: for good (refused, undelivered, given
 * up) or for now, of which the first try counts; nothing is done for an alert that is closed or in
 * someone else's hands.
 */
int not_reached(const struct caller *caller, const struct outbox_row *row, enum outbox_event event,
                struct fault *fault);

#endif
