/*
 * Oxygen that flows, and not as it should: "barely", "on and off", "sale poquito". Nobody can live
 * on that. Private to flowing.c. Pure.
 */
#ifndef HALF_FLOW_H
#define HALF_FLOW_H

#include "yes_no.h"

/* NO if half a flow is told, NEITHER if it may be; YES if none is, or half of something else. */
enum yes_no half_flow_told(const struct tokens *tokens);

#endif
