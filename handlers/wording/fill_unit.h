/* Placeholders whose value is the unit's equipment file alone; see fill_values.h. */
#ifndef FILL_UNIT_H
#define FILL_UNIT_H

#include "equipment.h"
#include "placeholders.h"
#include "words.h"

/*
 * The value in words of the language; NULL if the file does not tell it, and in another language
 * than English if it is a sentence that the office wrote in the file.
 */
const char *fill_unit_value(void *arena, enum placeholder placeholder, const struct equipment *unit,
                            enum language language);

#endif
