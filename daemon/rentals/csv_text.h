/*
 * The text of a CSV file as spreadsheets save it: UTF-8 with or without a byte order mark, or
 * Windows-1252, and commas, semicolons or tabs between the cells. Bytes in, no I/O.
 */
#ifndef CSV_TEXT_H
#define CSV_TEXT_H

#include <stdbool.h>
#include <stddef.h>

#include "fault.h"

struct csv_text {
    const char *bytes; /* UTF-8 without a byte order mark and without NUL */
    size_t length;
    char separator;        /* the one that the first line holds most of */
    bool was_windows_1252; /* it was none of UTF-8 and has been converted */
    char *converted;       /* private: csv_text_release() frees it */
};

/*
 * Points at `bytes`, which must stay, unless they have to be converted. -1 with a fault that names
 * `file` and line for what is neither: UTF-16, a NUL, UTF-8 that is broken in some places. A file
 * that holds whole UTF-8 characters beside broken ones is never taken for Windows-1252, which would
 * make other letters of all of them.
 */
int csv_text_read(const char *bytes, size_t length, const char *file, struct csv_text *text,
                  struct faults *faults);
void csv_text_release(struct csv_text *text);

/* Lines of `bytes` up to `place`, 1 for the first. */
int csv_text_line(const char *bytes, const char *place);

#endif
