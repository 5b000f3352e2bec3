/* The value of each placeholder: the table behind fill(). */
#ifndef FILL_VALUES_H
#define FILL_VALUES_H

#include "fill.h"
#include "placeholders.h"

/*
 * The value in `arena`, or NULL if house, record and equipment file do not give it. Sentences are
 * English; in another language they are NULL, so that the content's own words stand.
 */
const char *fill_value(void *arena, enum placeholder placeholder, const struct filling *with);

#endif
