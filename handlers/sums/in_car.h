/* Little time is left, and they are in a car. */
#ifndef IN_CAR_H
#define IN_CAR_H

#include "asked.h"

/*
 * "In the car: run the unit from the car's outlet ...", with the caution of exhaust, if the text
 * tells that they are in one, the unit's file that its outlet runs the unit, and the record of a
 * cord; else NULL.
 */
const char *in_car_words(const struct asked *asked);

#endif
