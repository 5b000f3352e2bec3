/* A leg of a trip as an option of the command line says it. */
#ifndef TRIP_LEG_H
#define TRIP_LEG_H

#include <stdbool.h>

#include "told.h"

/* A whole number from `least` to `most` at the start of `text`; *end is what follows it. */
bool trip_leg_number(const char *text, char **end, long least, long most, int *value);

/*
 * "drive 1:40 car", "stay 180 wall", "walk 45": kind, length in minutes or H:MM, power. `words` is
 * cut to pieces. False if it is no leg.
 */
bool trip_leg_read(char *words, struct told_leg *leg);

#endif
