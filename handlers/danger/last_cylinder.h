/*
 * A cylinder that they breathe from, or are told to go to, and that is as good as empty: "unit wont
 * turn on, im on the tank, 200 left". The last 200 psi count as nothing (power/cylinder.h), so who
 * has no other source has no oxygen soon. Pure.
 *
 * What is neither told nor on record is counted low: the smallest size that is rented out, D, at
 * 2 L/min; and less than half an hour is too little for anybody to bring another (common practice,
 * no source).
 */
#ifndef LAST_CYLINDER_H
#define LAST_CYLINDER_H

#include "asked.h"

/* The text tells the gauge of one that ends so soon, and of no other. Whether the unit gives oxygen
 * is for the caller to know. */
bool last_cylinder_ends(const struct asked *whole);

#endif
