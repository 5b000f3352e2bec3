/*
 * Roads: the ways to reach one of staff. Which are used when is decided here, from the
 * configuration alone; no I/O, no clock. A set of roads is a number with the bit 1 << road for each
 * that is in it.
 */
#ifndef ROAD_H
#define ROAD_H

#include <stdbool.h>

#include "context.h"

struct config;
struct staff;

enum road { ROAD_TEXT, ROAD_RING, ROAD_MAIL, ROAD_WEBHOOK };

enum { ROAD_COUNT = 4 };

/* "text", "ring", "e-mail", "webhook", as the configuration and the store have it. */
const char *road_name(enum road road);
/* The reverse; ROAD_TEXT for anything else. */
enum road road_named(const char *name);

/* The roads that can reach this person and are not switched off; at least the text. */
unsigned roads_of(const struct config *config, const struct staff *staff);

/*
 * The roads of a call: those whose level the alert has reached, or all if that is none. `ring` is
 * whether an alert that is no emergency may ring yet.
 */
unsigned roads_for(const struct config *config, const struct staff *staff, enum alert_level level,
                   bool ring);

/*
 * A road failed: those to use at once instead, `used` being those that the call has used. An office
 * alert does not ring because a gateway stutters, only when nothing else is left (`is_final`).
 */
unsigned roads_instead(const struct config *config, const struct staff *staff,
                       enum alert_level level, unsigned used, bool is_final);

#endif
