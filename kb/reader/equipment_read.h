/* Reads one equipment file. Private to the library; struct equipment is in equipment.h. */
#ifndef EQUIPMENT_READ_H
#define EQUIPMENT_READ_H

#include "content.h"
#include "equipment.h"
#include "fault.h"

/*
 * Fills *equipment from a file; everything it points at lives in `arena`. Adds a fault with JSON
 * Pointer, what was found and what was expected for everything that is wrong. Returns 0 or -1.
 */
int equipment_read(void *arena, const struct content_file *file, const char *id,
                   struct equipment *equipment, struct faults *faults);

#endif
