/*
 * The values of a rental as others write them: the columns of the office's CSV, and where each
 * stands in the rental record.
 */
#ifndef RENTAL_COLUMNS_H
#define RENTAL_COLUMNS_H

#include <stdbool.h>
#include <stddef.h>

enum cell_kind {
    CELL_TEXT,
    CELL_NAME, /* one of ours: small letters, "texts only" is texts-only */
    CELL_PHONE,
    CELL_NUMBER,
    CELL_FEET,
    CELL_TENTHS, /* "2" is 20, "2.5" is 25 */
    CELL_DAY,    /* a day, or day and time */
    CELL_MOMENT, /* day and time */
    CELL_YES_NO
};

struct rental_column {
    const char *name;
    const char *pointer; /* JSON Pointer into the record */
    enum cell_kind kind;
    bool is_required; /* the file must have the column */
    bool only_beside; /* set only where the object holds something else already */
};

/*
 * All of them, in `arena`; a name that fills several places comes several times. Of two for the
 * same place the later one, which is of that place alone, counts.
 */
struct rental_column *rental_columns(void *arena, size_t *count);

#endif
