/* The rows of a CSV text, each with the line it begins on (RFC 4180, read with libcsv). */
#ifndef CSV_ROWS_H
#define CSV_ROWS_H

#include "csv_text.h"

struct csv_row {
    int line;
    char **cells;
    size_t count;
};

struct csv_listener {
    /* A row with something in it; it and its cells live in `arena`, which ends with the call. */
    void (*on_row)(void *data, const struct csv_row *row, void *arena);
    /* Now and then: so much of the text has been read. NULL: nobody asks. */
    void (*on_progress)(void *data, size_t done, size_t all);
    void *data;
};

/* -1 with a fault that names `file` and line: quotation marks. Rows before it were handed out. */
int csv_rows_read(const struct csv_text *text, const char *file,
                  const struct csv_listener *listener, struct faults *faults);

#endif
