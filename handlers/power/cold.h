/*
 * What cold leaves of a battery's run time, as the unit's file has it (planning factors of facts
 * A4: +20 C 1.00, 0 C 0.85, -10 C 0.70, -20 C 0.50, common practice). Between two temperatures of
 * the table the colder one's share counts. Pure.
 */
#ifndef COLD_H
#define COLD_H

#include <stdbool.h>

#include "equipment.h"
#include "told.h"

/* The air's temperature, rounded to the colder; false if none is told. */
bool cold_told(const struct told *told, int *celsius);

/* Share of the run time that is left; false, nothing set, if the unit's file does not tell. */
bool cold_share(const struct equipment *equipment, int celsius, int *percent);

#endif
