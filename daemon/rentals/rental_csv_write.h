/* Rentals as CSV with every column that rental_csv.h reads; reading it again changes no record. */
#ifndef RENTAL_CSV_WRITE_H
#define RENTAL_CSV_WRITE_H

#include <stdio.h>

#include "rental_columns.h"
#include "zone.h"

struct rental_csv_writer {
    FILE *out;
    const struct zone *zone;
    const struct rental_column *columns;
    size_t column_count;
    void *arena; /* of the writer's own, ended by the caller */
};

/* Writes the first line. Whether all went well is the stream's to tell, at the end. */
struct rental_csv_writer rental_csv_write_begin(void *arena, FILE *out, const struct zone *zone);

/* Writes one record, given as rental_record.h's text. Returns 0, or -1 if that is no JSON. */
int rental_csv_write_row(const struct rental_csv_writer *writer, const char *json);

#endif
