/* Placeholders whose value is the unit's equipment file alone; see fill_values.h. */
#ifndef FILL_UNIT_H
#define FILL_UNIT_H

#include "equipment.h"
#include "placeholders.h"
#include "words.h"

const char *fill_unit_value(void *arena, enum placeholder placeholder, const struct equipment *unit,
                            enum language language);

#endif
