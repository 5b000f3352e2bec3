/* Temperature of the air and height of the place; pressure, size of a cylinder. Pure. */
#ifndef SURROUNDINGS_H
#define SURROUNDINGS_H

#include "items.h"
#include "told.h"

void surroundings_read(struct items *items, struct told *told);

/* Pressure by its newest reading, and size; if the text speaks of a cylinder at all. */
void cylinder_read(struct items *items, struct told *told);

/* "size E" begins at item `at`. */
bool cylinder_size_at(const struct items *items, size_t at);

#endif
