/*
 * The last step of every road by which a rental comes in from outside: the record's own check, the
 * unit it names, and what the store keeps of it.
 */
#ifndef RENTAL_INPUT_H
#define RENTAL_INPUT_H

#include "rental_cells.h"
#include "rental_record.h"

/*
 * Reads and checks a record; *rental, with its digest, and the canonical text that is returned live
 * in `arena`. NULL with every fault if it has any; then only rental->rental_id may be looked at,
 * which is NULL if it has a fault itself.
 */
const char *rental_input_read(void *arena, const json_t *record,
                              const struct rental_setting *setting,
                              const struct record_namer *namer, struct rental *rental,
                              struct faults *faults);

#endif
