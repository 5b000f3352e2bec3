/*
 * Turns and swaps from a CSV file, as a spreadsheet saves it: each row becomes the object that it
 * would be in the configuration, so both are checked by the same table of keys.
 */
#include "config_turns_file.h"

#include <string.h>

#include <glib.h>

#include "csv_rows.h"
#include "memory.h"

enum { COLUMNS_MAX = 20 };

enum column { WEEK, DAY, AT, FROM, UNTIL, FIRST, SECOND, THIRD, COLUMN_COUNT };

static const char *const column_names[COLUMN_COUNT] = {
    [WEEK] = "week",   [DAY] = "day",     [AT] = "at",         [FROM] = "from",
    [UNTIL] = "until", [FIRST] = "first", [SECOND] = "second", [THIRD] = "third"};

/* The file as it is read. */
struct turns_file {
    struct reading reading; /* of the row at hand */
    struct rota_reading *rota;
    bool has_header;
    int columns[COLUMNS_MAX]; /* what each column of the file is; COLUMN_COUNT: nothing of ours */
    size_t column_count;
};

/* How a fault names its place in a row: "/at" stands in the column "at". */
static const char *
column_of(const char *pointer)
{
    static const char *const people[] = {"/line/0", "/line/1", "/line/2"};
    size_t i;

    for (i = 0; i < sizeof(people) / sizeof(people[0]); i++) {
        if (strcmp(pointer, people[i]) == 0) {
            return column_names[FIRST + (int)i];
        }
    }
    if (strcmp(pointer, "/line") == 0) {
        return column_names[FIRST];
    }
    return *pointer == '/' ? pointer + 1 : NULL;
}

/* ---- The header ----------------------------------------------------------------------------- */

static void
read_header(struct turns_file *file, const struct csv_row *row)
{
    size_t i;

    file->has_header = true;
    for (i = 0; i < row->count && i < COLUMNS_MAX; i++) {
        char *name = g_ascii_strdown(g_strstrip(row->cells[i]), -1);
        int column = 0;

        while (column < COLUMN_COUNT && strcmp(name, column_names[column]) != 0) {
            column++;
        }
        if (column == COLUMN_COUNT && *name != '\0') {
            const char *nearest = keys_nearest(name, column_names, COLUMN_COUNT);

            faults_add(file->reading.faults, file->reading.file, row->line, name,
                       "is no column; %s%s%s",
                       nearest != NULL ? "did you mean \""
                                       : "take it out, or name it one of week, "
                                         "day, at, from, until, first, second, "
                                         "third",
                       nearest != NULL ? nearest : "", nearest != NULL ? "\"?" : "");
        }
        file->columns[file->column_count++] = column;
        g_free(name);
    }
}

/* ---- A row ---------------------------------------------------------------------------------- */

/* The cells by what they are; NULL where there is nothing. */
static void
sort_cells(const struct turns_file *file, const struct csv_row *row,
           const char *cells[COLUMN_COUNT])
{
    size_t i;

    memset(cells, 0, COLUMN_COUNT * sizeof(cells[0]));
    for (i = 0; i < row->count && i < file->column_count; i++) {
        char *cell = g_strstrip(row->cells[i]);

        if (file->columns[i] != COLUMN_COUNT && *cell != '\0') {
            cells[file->columns[i]] = cell;
        }
    }
}

/* A number as such, so that the table of keys sees what it expects. */
static void
set_week(json_t *object, const char *cell)
{
    gint64 week;

    if (cell == NULL) {
        return;
    }
    if (g_ascii_string_to_signed(cell, 10, 0, 1000, &week, NULL)) {
        json_object_set_new(object, "week", memory_must(json_integer(week)));
    } else {
        json_object_set_new(object, "week", memory_must(json_string(cell)));
    }
}

static void
set_text(json_t *object, const char *name, const char *text)
{
    if (text != NULL) {
        json_object_set_new(object, name, memory_must(json_string(text)));
    }
}

/* Spreadsheets drop the zero in front: "9:00". */
static void
set_time(void *arena, json_t *object, const char *cell)
{
    bool is_short = cell != NULL && strlen(cell) == 4 && cell[1] == ':';

    set_text(object, "at", is_short ? memory_format(arena, "0%s", cell) : cell);
}

static void
set_line(json_t *object, const char *const cells[COLUMN_COUNT])
{
    json_t *line = memory_must(json_array());
    int column;

    for (column = FIRST; column <= THIRD; column++) {
        if (cells[column] != NULL) {
            json_array_append_new(line, memory_must(json_string(cells[column])));
        }
    }
    if (cells[FIRST] != NULL) {
        json_object_set(object, "line", line);
    }
    json_decref(line);
}

static void
read_row(struct turns_file *file, const struct csv_row *row, void *arena)
{
    const char *cells[COLUMN_COUNT];
    json_t *object = memory_must(json_object());
    bool is_swap, is_turn;

    sort_cells(file, row, cells);
    file->reading.line = row->line;
    is_swap = cells[FROM] != NULL || cells[UNTIL] != NULL;
    is_turn = cells[WEEK] != NULL || cells[DAY] != NULL || cells[AT] != NULL;
    set_line(object, cells);
    if (is_swap && is_turn) {
        keys_fault(&file->reading, "/from",
                   "stands beside a weekly turn; a row is either a turn (week, day, at) or a swap "
                   "(from, until): make two rows of it");
    } else if (is_swap) {
        set_text(object, "from", cells[FROM]);
        set_text(object, "until", cells[UNTIL]);
        rota_swap_read(&file->reading, object, "", file->rota);
    } else {
        char *day = cells[DAY] != NULL ? g_ascii_strdown(cells[DAY], -1) : NULL;

        set_week(object, cells[WEEK]);
        set_text(object, "day", day);
        set_time(arena, object, cells[AT]);
        rota_turn_read(&file->reading, object, "", file->rota);
        g_free(day);
    }
    json_decref(object);
}

static void
on_row(void *data, const struct csv_row *row, void *arena)
{
    struct turns_file *file = data;

    if (file->has_header) {
        read_row(file, row, arena);
    } else {
        read_header(file, row);
    }
}

/* ---- The file ------------------------------------------------------------------------------- */

void
turns_file_read(const struct reading *reading, const char *path, struct rota_reading *rota)
{
    struct turns_file file = {.reading = *reading, .rota = rota};
    const struct csv_listener listener = {.on_row = on_row, .data = &file};
    struct csv_text text;
    GError *error = NULL;
    char *bytes;
    size_t length;

    if (!g_file_get_contents(path, &bytes, &length, &error)) {
        keys_fault(reading, "/rota/turns_file", "cannot be read: %s", error->message);
        g_error_free(error);
        return;
    }
    file.reading.file = path;
    file.reading.place = column_of;
    if (csv_text_read(bytes, length, path, &text, reading->faults) == 0) {
        (void)csv_rows_read(&text, path, &listener, reading->faults);
        csv_text_release(&text);
    }
    g_free(bytes);
}
