/*
 * Values of a rental record as the office and other programs write them: settings as 2.5, times as
 * the wall clock shows them, phones in any usual spelling. Shared by the CSV, by what a booking
 * system sends, and by the export, so that what one writes the others read.
 */
#ifndef RENTAL_CELLS_H
#define RENTAL_CELLS_H

#include <jansson.h>

#include "config.h"
#include "rental_columns.h"

/* What values are read with: the country of phones, the office's zone, the units that exist. */
struct rental_setting {
    const struct config *config;
    const struct zone *zone;
    const struct kb *kb;
};

/*
 * A new value of the record. Text that cannot be read as what the cell holds becomes that text, so
 * that the record's own check words the fault.
 */
json_t *rental_cell_read(void *arena, const struct rental_setting *setting, enum cell_kind kind,
                         const char *text);

/* The reverse, in `arena`: what rental_cell_read() makes the same value of. "" for NULL. */
char *rental_cell_write(void *arena, const struct zone *zone, enum cell_kind kind,
                        const json_t *value);

/* Puts a value (taken over) into a record where the column says. */
void rental_cell_put(json_t *record, const struct rental_column *column, json_t *value);

#endif
