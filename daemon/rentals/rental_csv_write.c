#include "rental_csv_write.h"

#include <string.h>

#include <csv.h>
#include <jansson.h>

#include "memory.h"
#include "pointer.h"
#include "rental_cells.h"

/* Only what would be read otherwise stands in quotation marks, so that eyes can read it too. */
static void
write_cell(FILE *out, const char *text)
{
    size_t length = strlen(text);
    bool is_plain = strpbrk(text, ",;\t\"\r\n") == NULL && text[0] != ' ' &&
                    (length == 0 || text[length - 1] != ' ');

    if (is_plain) {
        fputs(text, out);
    } else {
        (void)csv_fwrite(out, text, length);
    }
}

static void
write_line(const struct rental_csv_writer *writer, const char *const *cells)
{
    size_t i;

    for (i = 0; i < writer->column_count; i++) {
        if (i > 0) {
            fputc(',', writer->out);
        }
        write_cell(writer->out, cells[i]);
    }
    fputs("\r\n", writer->out); /* RFC 4180, 2 */
}

struct rental_csv_writer
rental_csv_write_begin(void *arena, FILE *out, const struct zone *zone)
{
    struct rental_csv_writer writer = {.out = out, .zone = zone, .arena = arena};
    size_t count, i;
    struct rental_column *all = rental_columns(arena, &count);
    const char **names = memory_array(arena, const char *, count);

    /* What holds for all activities is written for each. */
    for (i = 0; i < count; i++) {
        if (!all[i].only_beside) {
            names[writer.column_count] = all[i].name;
            all[writer.column_count++] = all[i];
        }
    }
    writer.columns = all;
    write_line(&writer, names);
    return writer;
}

int
rental_csv_write_row(const struct rental_csv_writer *writer, const char *json)
{
    void *arena = memory_must(talloc_new(NULL));
    const char **cells = memory_array(arena, const char *, writer->column_count);
    json_t *record = json_loads(json, 0, NULL);
    size_t i;

    for (i = 0; record != NULL && i < writer->column_count; i++) {
        const struct rental_column *column = &writer->columns[i];

        cells[i] = rental_cell_write(arena, writer->zone, column->kind,
                                     pointer_get(record, column->pointer));
    }
    if (record != NULL) {
        write_line(writer, cells);
    }
    talloc_free(arena);
    if (record == NULL) {
        return -1;
    }
    json_decref(record);
    return 0;
}
