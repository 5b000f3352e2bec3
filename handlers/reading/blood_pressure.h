/*
 * A blood pressure in free text: "bp 80/40", "210 over 120", "su presion esta en 90/50"; without
 * its name only where it can be nothing else ("210/120"). Its upper value alone ("bp 210") is read
 * where it is extreme. It is no oximeter value and no charge. Pure.
 */
#ifndef BLOOD_PRESSURE_H
#define BLOOD_PRESSURE_H

#include <stdbool.h>
#include <stddef.h>

#include "tokens.h"

struct blood_pressure {
    int upper, lower;     /* mm Hg; lower 0 if not told */
    size_t first, behind; /* tokens [first, behind) tell it */
};

/* The first one of the text; false if there is none. */
bool blood_pressure_read(const struct tokens *tokens, struct blood_pressure *pressure);

/* So high or low that somebody should look now (common practice, no source). */
bool blood_pressure_is_extreme(const struct blood_pressure *pressure);

/* So far out that it is an emergency (common practice, no source). */
bool blood_pressure_is_grave(const struct blood_pressure *pressure);

#endif
