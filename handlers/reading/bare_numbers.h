/* Charges told as a bare number: "the spare is at 80", "60 and 45", "says 9". Pure. */
#ifndef BARE_NUMBERS_H
#define BARE_NUMBERS_H

#include "items.h"
#include "states.h"

/* Percent above any setting. */
enum { BIG_MIN = 9 };

/* Fills *state if the number at `at` can only be a charge; see state_at() for `after_state`. */
bool bare_number_at(const struct items *items, size_t at, bool after_state, struct state *state);

#endif
