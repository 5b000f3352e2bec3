/* A played trip drawn: the charge by hours as a strip of characters, and as SVG. Pure. */
#ifndef TRIP_STRIP_H
#define TRIP_STRIP_H

#include "told.h"
#include "trip.h"

enum { TRIP_STRIP_WIDTH = 80 };

/* What is drawn. `kinds` has one for each leg. */
struct trip_drawing {
    const struct trip *trip;
    const struct trip_outcome *outcome;
    const enum leg_kind *kinds;
};

/*
 * Lines of at most TRIP_STRIP_WIDTH characters of ASCII, readable without colour: a row for each
 * 10 % of the mean charge, the hours, the power of each moment, the legs, and where it is empty.
 */
char *trip_strip(void *arena, const struct trip_drawing *drawing);

/* The same as one SVG 1.1 document, in black, white and grey, with the numbers as text too. */
char *trip_svg(void *arena, const struct trip_drawing *drawing);

#endif
