#include "rental_json.h"

#include <math.h>
#include <string.h>

#include "memory.h"
#include "rental_input.h"

struct json_reading {
    void *arena;
    const struct rental_setting *setting;
    const struct rental_column *columns;
    size_t column_count;
    json_t *record; /* what is made of it */
    struct rental_errors *errors;
};

static void
add_error(void *listener, const char *pointer, const char *what)
{
    struct json_reading *reading = listener;
    struct rental_errors *errors = reading->errors;

    errors->list = memory_grow(reading->arena, struct problem_error, errors->list, errors->count);
    errors->list[errors->count++] = (struct problem_error){memory_copy(reading->arena, what),
                                                           memory_copy(reading->arena, pointer)};
}

/* ---- Names --------------------------------------------------------------------------------- */

static size_t
length_without(const char *text, const char *end)
{
    size_t length = strlen(text), end_length = strlen(end);

    return length > end_length && strcmp(text + length - end_length, end) == 0 ? length - end_length
                                                                               : length;
}

/* How many bytes of a record's pointer stand in what is sent: all but the unit of its last name. */
static size_t
sent_length(const char *pointer)
{
    size_t length = length_without(pointer, "_utc_s");

    return length < strlen(pointer) ? length : length_without(pointer, "_tenths");
}

static const struct rental_column *
column_of(const struct json_reading *reading, const char *pointer)
{
    size_t length = strlen(pointer);
    size_t i;

    for (i = 0; i < reading->column_count; i++) {
        const struct rental_column *column = &reading->columns[i];

        if (sent_length(column->pointer) == length &&
            strncmp(column->pointer, pointer, length) == 0) {
            return column;
        }
    }
    return NULL;
}

/* Something stands below this pointer. */
static bool
is_branch(const struct json_reading *reading, const char *pointer)
{
    size_t length = strlen(pointer);
    size_t i;

    for (i = 0; i < reading->column_count; i++) {
        const char *known = reading->columns[i].pointer;

        if (strncmp(known, pointer, length) == 0 && known[length] == '/') {
            return true;
        }
    }
    return false;
}

/* Whether its elements have numbers for names. */
static bool
is_list(const struct json_reading *reading, const char *pointer)
{
    return is_branch(reading, memory_format(reading->arena, "%s/0", pointer));
}

static const char *
name_sent(const void *data, const char *pointer)
{
    return memory_copy_n(((const struct json_reading *)data)->arena, pointer, sent_length(pointer));
}

/* A name as a token of a JSON Pointer (RFC 6901, 3). */
static const char *
below(void *arena, const char *pointer, const char *name)
{
    char *whole = memory_format(arena, "%s/", pointer);

    for (; *name != '\0'; name++) {
        if (*name == '~' || *name == '/') {
            memory_append(&whole, "~%d", *name == '/');
        } else {
            memory_append(&whole, "%c", *name);
        }
    }
    return whole;
}

/* ---- Values -------------------------------------------------------------------------------- */

/* 2.5 is 25; what is no tenth stays as it is, so that the record's check refuses it. */
static json_t *
tenths(const json_t *value)
{
    double tenfold = json_number_value(value) * 10;

    return fabs(tenfold) < 1e6 && fabs(tenfold - round(tenfold)) < 1e-6
               ? json_integer((json_int_t)round(tenfold))
               : json_deep_copy(value);
}

static void
take_value(struct json_reading *reading, const char *pointer, const json_t *value)
{
    const struct rental_column *column = column_of(reading, pointer);
    json_t *taken;

    if (column == NULL) {
        add_error(reading, pointer,
                  is_branch(reading, pointer)
                      ? (is_list(reading, pointer) ? "is no list; give a list of objects"
                                                   : "is no object; give an object")
                      : "is not a known field; leave it out or correct its name");
        return;
    }
    if (json_is_null(value)) {
        return;
    }
    if (json_is_string(value)) {
        taken = rental_cell_read(reading->arena, reading->setting, column->kind,
                                 json_string_value(value));
    } else if (json_is_number(value) && column->kind == CELL_TENTHS) {
        taken = tenths(value);
    } else {
        taken = json_deep_copy(value);
    }
    rental_cell_put(reading->record, column, memory_must(taken));
}

/* Goes no deeper than the columns do: what stands below an unknown name is not looked at. */
static void take_any(struct json_reading *reading, const char *pointer, const json_t *value);

static void
take_list(struct json_reading *reading, const char *pointer, const json_t *list)
{
    const json_t *element;
    size_t i;

    if (!is_list(reading, pointer)) {
        add_error(reading, pointer,
                  is_branch(reading, pointer) ? "is a list; give an object"
                                              : "is a list; give one value");
        return;
    }
    json_array_foreach ((json_t *)(uintptr_t)list, i, element) {
        const char *place = memory_format(reading->arena, "%s/%zu", pointer, i);

        if (!is_branch(reading, place)) {
            add_error(reading, place,
                      memory_format(reading->arena, "is one too many; give at most %zu", i));
            return;
        }
        take_any(reading, place, element);
    }
}

static void
take_object(struct json_reading *reading, const char *pointer, const json_t *object)
{
    const char *name;
    json_t *value;

    if (!is_branch(reading, pointer) || is_list(reading, pointer)) {
        add_error(reading, pointer,
                  is_branch(reading, pointer) ? "is an object; give a list of objects"
                                              : "is an object; give one value");
        return;
    }
    json_object_foreach ((json_t *)(uintptr_t)object, name, value) {
        take_any(reading, below(reading->arena, pointer, name), value);
    }
}

static void
take_any(struct json_reading *reading, const char *pointer, const json_t *value)
{
    if (json_is_null(value) && is_branch(reading, pointer)) {
        return;
    }
    if (json_is_array(value)) {
        take_list(reading, pointer, value);
    } else if (json_is_object(value)) {
        take_object(reading, pointer, value);
    } else {
        take_value(reading, pointer, value);
    }
}

const char *
rental_json_read(void *arena, const json_t *sent, const struct rental_setting *setting,
                 struct rental *rental, struct rental_errors *errors)
{
    struct json_reading reading = {
        .arena = arena, .setting = setting, .record = memory_must(json_object()), .errors = errors};
    const struct record_namer namer = {
        .name = name_sent, .data = &reading, .on_fault = add_error, .listener = &reading};
    struct faults faults = {0};
    const char *text;

    *errors = (struct rental_errors){0};
    reading.columns = rental_columns(arena, &reading.column_count);
    if (!json_is_object(sent)) {
        add_error(&reading, "", "is not an object; give one object for each rental");
        json_decref(reading.record);
        return NULL;
    }
    take_any(&reading, "", sent);
    text = rental_input_read(arena, reading.record, setting, &namer, rental, &faults);
    json_decref(reading.record);
    faults_release(&faults);
    return errors->count == 0 ? text : NULL;
}
