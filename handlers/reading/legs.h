/*
 * Spans of a trip or a day, in order, with what one does and what power there is: "bus 45 min, walk
 * 2 hours", "5 miles at 2 mph", "salimos a las 8 y volvemos a la 1". Flights: one is its length,
 * several are legs with the waits between them. Pure.
 */
#ifndef LEGS_H
#define LEGS_H

#include "items.h"
#include "told.h"

/* Lengths and distances that since_read() and goals_read() left. Sets legs or flight_minutes, and
 * of a trip between two clock times also ready_by. */
void legs_read(struct items *items, struct told *told);

/* A length, a distance with a speed, or a way out and back by the clock is there. */
bool legs_any(const struct items *items);

/* Some span is told with what moves one: drive, flight, hike. */
bool legs_move(const struct told *told);

#endif
