/* How one goes, told apart from the span: by a plug of the car, by a pace, by the way back. Part of
 * span_kinds.c. Pure. */
#ifndef SPAN_WAYS_H
#define SPAN_WAYS_H

#include "spans.h"

enum { WALK_MPH = 6 }; /* nobody walks faster */

/* "el recorrido es de 5 km y camina a 2 km por hora" */
bool span_is_walked(const struct items *items, const struct span *span);
/* "out 5 hours, mostly walking" */
bool span_is_mostly_walked(const struct items *items, size_t at);
/* "50 min each way, no car plug": what one rides in is told by its plug. */
bool span_is_by_vehicle(const struct items *items, size_t at);
/* "80 min each way to the doctor": how one gets there is not told, by nothing that is no car. */
bool span_may_be_driven(const struct items *items, const struct span *span);
/* "the appointment is 2 hours": nothing else stands between. */
bool span_is_of_event(const struct items *items, size_t at);
/* "45 minutes to the doctor, an hour there, 45 back in the truck": as one comes back one went. */
void spans_as_one_comes_back(const struct items *items, struct spans *spans);

#endif
