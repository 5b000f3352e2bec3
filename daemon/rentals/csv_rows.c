#include "csv_rows.h"

#include <stdbool.h>
#include <string.h>

#include <csv.h>

#include "memory.h"

enum { PIECE_BYTES = 65536 };

/* libcsv counts no lines, so they are counted here: those that end rows and those inside quotes. */
struct csv_reading {
    const struct csv_listener *listener;
    void *arena; /* of the row that is being read */
    struct csv_row row;
    bool any; /* a cell of the row holds something */
    int line;
};

static void
on_cell(void *bytes, size_t length, void *cookie)
{
    struct csv_reading *reading = cookie;
    char *cell = memory_copy_n(reading->arena, bytes, length);
    const char *c;

    if (reading->row.count == 0) {
        reading->row.line = reading->line;
    }
    for (c = cell; *c != '\0'; c++) {
        reading->line += *c == '\n';
    }
    reading->any = reading->any || cell[0] != '\0';
    reading->row.cells =
        memory_grow(reading->arena, char *, reading->row.cells, reading->row.count);
    reading->row.cells[reading->row.count++] = cell;
}

/* `end` is the character that ended the row, -1 at the end of the file. */
static void
on_row(int end, void *cookie)
{
    struct csv_reading *reading = cookie;

    if (reading->any) {
        reading->listener->on_row(reading->listener->data, &reading->row, reading->arena);
    }
    talloc_free_children(reading->arena);
    reading->row = (struct csv_row){0};
    reading->any = false;
    reading->line += end == '\n';
}

/* In pieces, so that whoever waits sees how far it is. Returns how much could be read. */
static size_t
read_pieces(struct csv_parser *parser, const struct csv_text *text, struct csv_reading *reading)
{
    const struct csv_listener *listener = reading->listener;
    size_t at = 0;

    while (at < text->length) {
        size_t left = text->length - at;
        size_t piece = left < PIECE_BYTES ? left : PIECE_BYTES;
        size_t read = csv_parse(parser, text->bytes + at, piece, on_cell, on_row, reading);

        at += read;
        if (read != piece) {
            break;
        }
        if (listener->on_progress != NULL) {
            listener->on_progress(listener->data, at, text->length);
        }
    }
    return at;
}

int
csv_rows_read(const struct csv_text *text, const char *file, const struct csv_listener *listener,
              struct faults *faults)
{
    struct csv_reading reading = {
        .listener = listener, .arena = memory_must(talloc_new(NULL)), .line = 1};
    struct csv_parser parser;
    size_t read;
    int rc = 0;

    csv_init(&parser, CSV_STRICT | CSV_STRICT_FINI | CSV_REPALL_NL);
    csv_set_delim(&parser, (unsigned char)text->separator);
    read = read_pieces(&parser, text, &reading);
    if (read != text->length) {
        faults_add(faults, file, csv_text_line(text->bytes, text->bytes + read), NULL,
                   "has a quotation mark inside a cell; write it twice and put the cell in "
                   "quotation marks");
        rc = -1;
    } else if (csv_fini(&parser, on_cell, on_row, &reading) != 0) {
        faults_add(faults, file, reading.line, NULL,
                   "begins a cell with a quotation mark that never ends; close it");
        rc = -1;
    }
    csv_free(&parser);
    talloc_free(reading.arena);
    return rc;
}
