/*
 * A row becomes a JSON record by the table of columns and is then checked as any record is. A cell
 * that cannot be read goes through as its text, so that the record's check words the fault, with
 * the column's name instead of the JSON Pointer.
 */
#include "rental_csv.h"

#include <string.h>

#include <glib.h>
#include <jansson.h>

#include "csv_rows.h"
#include "memory.h"
#include "rental_columns.h"
#include "rental_input.h"

struct columns {
    const struct rental_column *list;
    size_t count;
    size_t *place; /* of each in the file, 1 for the first; 0 if it is not there */
    size_t width;  /* cells in the first line */
};

/* One file on its way through. */
struct reading {
    const struct rental_csv *csv;
    struct faults *faults;
    void *arena; /* of the whole file */
    bool has_header, is_refused;
    struct columns columns;
    GHashTable *lines; /* rental_id -> its line */
    bool is_given_up;
    char separator;
};

/* ---- The first line ------------------------------------------------------------------------ */

static bool
is_column(const struct columns *columns, const char *name)
{
    size_t i;

    for (i = 0; i < columns->count; i++) {
        if (strcmp(columns->list[i].name, name) == 0) {
            return true;
        }
    }
    return false;
}

static size_t
place_of(const struct csv_row *header, const char *name)
{
    size_t i;

    for (i = 0; i < header->count; i++) {
        if (strcmp(header->cells[i], name) == 0) {
            return i + 1;
        }
    }
    return 0;
}

static void
check_names(const struct columns *columns, const struct csv_row *header, const char *file,
            struct faults *faults)
{
    size_t i;

    for (i = 0; i < header->count; i++) {
        const char *name = header->cells[i];

        if (!is_column(columns, name)) {
            faults_add(faults, file, header->line, name,
                       "is not a known column; correct its name or take it out");
        } else if (place_of(header, name) != i + 1) {
            faults_add(faults, file, header->line, name, "is there twice; take one out");
        }
    }
    for (i = 0; i < columns->count; i++) {
        if (columns->list[i].is_required && columns->place[i] == 0) {
            faults_add(faults, file, header->line, NULL, "has no column %s; add it",
                       columns->list[i].name);
        }
    }
}

static void
read_header(struct reading *reading, const struct csv_row *header)
{
    struct columns *columns = &reading->columns;
    size_t before = reading->faults->count;
    size_t i;

    reading->has_header = true;
    columns->list = rental_columns(reading->arena, &columns->count);
    columns->place = memory_array(reading->arena, size_t, columns->count);
    columns->width = header->count;
    for (i = 0; i < columns->count; i++) {
        columns->place[i] = place_of(header, columns->list[i].name);
    }
    check_names(columns, header, reading->csv->file, reading->faults);
    reading->is_refused = reading->faults->count > before;
}

/* ---- Rows ---------------------------------------------------------------------------------- */

static const char *
separator_name(char separator)
{
    return separator == ';' ? "semicolon" : separator == '\t' ? "tab" : "comma";
}

struct row_reading {
    const struct columns *columns;
    const struct csv_row *row;
};

static bool
is_filled(const struct row_reading *row, size_t column)
{
    size_t place = row->columns->place[column];

    return place > 0 && row->row->cells[place - 1][0] != '\0';
}

/* What faults of the record call a value: the column that it came from, or would come from. */
static const char *
name_of_pointer(const void *data, const char *pointer)
{
    const struct row_reading *row = data;
    const char *name = NULL;
    size_t i;

    for (i = 0; i < row->columns->count; i++) {
        if (strcmp(row->columns->list[i].pointer, pointer) == 0 &&
            (name == NULL || is_filled(row, i))) {
            name = row->columns->list[i].name;
        }
    }
    return name != NULL ? name : pointer;
}

static json_t *
row_json(const struct row_reading *row, const struct rental_setting *setting, void *arena)
{
    const struct columns *columns = row->columns;
    json_t *root = memory_must(json_object());
    size_t i;

    for (i = 0; i < columns->count; i++) {
        if (is_filled(row, i)) {
            const struct rental_column *column = &columns->list[i];

            rental_cell_put(root, column,
                            rental_cell_read(arena, setting, column->kind,
                                             row->row->cells[columns->place[i] - 1]));
        }
    }
    return root;
}

/* A column that fills several places is told once. */
static void
drop_repeated(struct faults *faults, size_t from)
{
    size_t kept = from;
    size_t i, j;

    for (i = from; i < faults->count; i++) {
        for (j = from; j < kept && strcmp(faults->list[j].text, faults->list[i].text) != 0; j++) {
        }
        if (j == kept) {
            faults->list[kept++] = faults->list[i];
        }
    }
    faults->count = kept;
}

static void
check_id(struct reading *reading, const struct csv_row *row, const char *rental_id)
{
    int other = GPOINTER_TO_INT(g_hash_table_lookup(reading->lines, rental_id));

    if (other != 0) {
        faults_add(reading->faults, reading->csv->file, row->line, "rental_id",
                   "\"%s\" stands on line %d already; give each rental one line", rental_id, other);
    } else {
        g_hash_table_insert(reading->lines, g_strdup(rental_id), GINT_TO_POINTER(row->line));
    }
}

static void
read_row(struct reading *reading, const struct csv_row *row, void *arena)
{
    const struct rental_csv *csv = reading->csv;
    const struct row_reading reading_row = {&reading->columns, row};
    const struct record_namer namer = {
        .file = csv->file, .line = row->line, .name = name_of_pointer, .data = &reading_row};
    size_t before = reading->faults->count;
    struct rental rental;
    const char *text;
    json_t *json;

    if (row->count != reading->columns.width) {
        faults_add(reading->faults, csv->file, row->line, NULL,
                   "has %zu cells and the first line %zu; put a cell that holds a %s in "
                   "quotation marks",
                   row->count, reading->columns.width, separator_name(reading->separator));
        return;
    }
    json = row_json(&reading_row, &csv->setting, arena);
    text = rental_input_read(arena, json, &csv->setting, &namer, &rental, reading->faults);
    json_decref(json);
    drop_repeated(reading->faults, before);
    if (rental.rental_id != NULL) {
        check_id(reading, row, rental.rental_id);
    }
    if (reading->faults->count == before) {
        csv->on_rental(csv->data, &rental, text);
    }
}

static void
on_row(void *data, const struct csv_row *row, void *arena)
{
    struct reading *reading = data;

    if (!reading->has_header) {
        read_header(reading, row);
    } else if (!reading->is_refused && !reading->is_given_up) {
        read_row(reading, row, arena);
        if (reading->faults->count >= RENTAL_CSV_FAULTS_MAX) {
            reading->is_given_up = true;
            faults_add(reading->faults, reading->csv->file, row->line, NULL,
                       "is where checking stopped, after %d faults; correct these first",
                       RENTAL_CSV_FAULTS_MAX);
        }
    }
}

static void
on_progress(void *data, size_t done, size_t all)
{
    const struct reading *reading = data;

    if (reading->csv->on_progress != NULL) {
        reading->csv->on_progress(reading->csv->data, done, all);
    }
}

int
rental_csv_read(const struct csv_text *text, const struct rental_csv *csv, struct faults *faults)
{
    struct reading reading = {.csv = csv,
                              .faults = faults,
                              .separator = text->separator,
                              .arena = memory_must(talloc_new(NULL)),
                              .lines =
                                  g_hash_table_new_full(g_str_hash, g_str_equal, g_free, NULL)};
    const struct csv_listener listener = {on_row, on_progress, &reading};
    size_t before = faults->count;

    if (csv_rows_read(text, csv->file, &listener, faults) == 0 && !reading.has_header) {
        faults_add(faults, csv->file, 0, NULL, "is empty; give a first line of column names");
    }
    g_hash_table_destroy(reading.lines);
    talloc_free(reading.arena);
    return faults->count == before ? 0 : -1;
}
