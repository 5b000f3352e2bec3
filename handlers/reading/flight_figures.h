/*
 * What the length of a flight is a figure of: gate to gate, or the airline's, or the time in the
 * air. Told neither way it must be asked, for a plane that taxis uses up the same battery. Pure.
 */
#ifndef FLIGHT_FIGURES_H
#define FLIGHT_FIGURES_H

#include "spans.h"

/* "3:40 gate to gate, 2:50 in the air" are one flight: the first holds. One figure beside another
 * that is not understood is none. After spans_kind(). */
void flight_figures_settle(const struct items *items, struct told *told, struct spans *spans);

/* Sets flight_is_gate or flight_is_air; after legs_read(). */
void flight_is_read(const struct items *items, struct told *told);

#endif
