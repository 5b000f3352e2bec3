#include "rental_record.h"

#include <assert.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include <glib.h>
#include <sodium.h>

#include "memory.h"
#include "rental_fields.h"

enum { QUOTED_MAX = 80 };

/* ---- Reading ------------------------------------------------------------------------------- */

struct reading {
    void *arena;
    const struct record_namer *namer;
    struct faults *faults;
};

void
rental_record_fault(void *arena, const struct record_namer *namer, const char *pointer,
                    const char *what, const char *remedy, struct faults *faults)
{
    const char *name = namer->name == NULL ? pointer : namer->name(namer->data, pointer);

    faults_add(faults, namer->file, namer->line, name, "%s; %s", what, remedy);
    if (namer->on_fault != NULL) {
        namer->on_fault(namer->listener, name, memory_format(arena, "%s; %s", what, remedy));
    }
}

static void
add_fault(const struct reading *reading, const char *pointer, const char *what, const char *remedy)
{
    rental_record_fault(reading->arena, reading->namer, pointer, what, remedy, reading->faults);
}

static bool
is_clean(const char *text)
{
    for (; *text != '\0'; text++) {
        if ((unsigned char)*text < ' ' || *text == 0x7f) {
            return false;
        }
    }
    return true;
}

/* ITU-T E.164: + and at most 15 digits, no leading zero; a short code is 3 to 8 digits. */
static bool
is_phone(const char *text)
{
    const char *digits = text[0] == '+' ? text + 1 : text;
    size_t count = strspn(digits, "0123456789");
    size_t least = text[0] == '+' ? 7 : 3, most = text[0] == '+' ? 15 : 8;

    return digits[count] == '\0' && digits[0] != '0' && count >= least && count <= most;
}

static bool
read_text(const struct reading *reading, const struct field *field, const json_t *value,
          const char **text)
{
    const char *given = json_string_value(value);
    size_t length = given == NULL ? 0 : strlen(given);
    bool is_good = given != NULL && is_clean(given);

    if (field->kind == FIELD_PHONE) {
        is_good = is_good && is_phone(given);
    } else {
        is_good = is_good && length >= (size_t)field->low && length <= (size_t)field->high;
    }
    if (field->kind == FIELD_ID) {
        is_good = is_good && strpbrk(given, " \t/") == NULL;
    }
    if (is_good) {
        *text = memory_copy(reading->arena, given);
    }
    return is_good;
}

static bool
read_number(const struct field *field, const json_t *value, int *number)
{
    json_int_t given = json_integer_value(value);

    if (!json_is_integer(value) || given < field->low || given > field->high) {
        return false;
    }
    *number = (int)given;
    return true;
}

static bool
read_moment(const json_t *value, int64_t *moment)
{
    json_int_t given = json_integer_value(value);

    /* 2000 to 2100: outside, a day and a month or a unit of time were mixed up. */
    if (!json_is_integer(value) || given < 946684800 || given > 4102444800) {
        return false;
    }
    *moment = given;
    return true;
}

static bool
read_feet(const struct field *field, const json_t *value, double *feet)
{
    if (!json_is_number(value) || json_number_value(value) < field->low ||
        json_number_value(value) > field->high) {
        return false;
    }
    *feet = json_number_value(value);
    return true;
}

static bool
read_named(const struct field *field, const json_t *value, void *place)
{
    const char *name = json_string_value(value);

    if (name == NULL) {
        return false;
    }
    switch (field->kind) {
    case FIELD_STATE: {
        int state = rental_state_named(name);

        if (state >= 0) {
            *(enum rental_state *)place = (enum rental_state)state;
        }
        return state >= 0;
    }
    case FIELD_LANGUAGE:
        *(enum language *)place = language_named(name);
        return language_named(name) != LANGUAGE_COUNT;
    case FIELD_MODE:
        *(enum mode *)place = mode_named(name);
        return mode_named(name) != MODE_COUNT;
    default:
        assert(field->kind == FIELD_REACH);
        return reach_named(name, place);
    }
}

static bool
read_value(const struct reading *reading, const struct field *field, const json_t *value,
           void *place)
{
    switch (field->kind) {
    case FIELD_TEXT:
    case FIELD_ID:
    case FIELD_PHONE:
        return read_text(reading, field, value, place);
    case FIELD_NUMBER:
        return read_number(field, value, place);
    case FIELD_MOMENT:
        return read_moment(value, place);
    case FIELD_FEET:
        return read_feet(field, value, place);
    case FIELD_YES_NO:
        *(bool *)place = json_is_true(value);
        return json_is_boolean(value);
    default:
        return read_named(field, value, place);
    }
}

/* A value as a fault shows it; a long one is cut, at the end of a character. */
static const char *
quoted(void *arena, const json_t *value)
{
    char *whole = memory_must(json_dumps(value, JSON_ENCODE_ANY | JSON_COMPACT));
    size_t length = strlen(whole);
    char *text;

    if (length > QUOTED_MAX) {
        length = (size_t)(g_utf8_find_prev_char(whole, whole + QUOTED_MAX + 1) - whole);
    }
    text = memory_copy_n(arena, whole, length);
    free(whole);
    return text;
}

/* Reads an object's fields into the struct at `base`. */
static void
read_fields(const struct reading *reading, const json_t *object, const char *pointer,
            const struct field_list *list, void *base)
{
    size_t i;

    for (i = 0; i < list->count; i++) {
        const struct field *field = &list->fields[i];
        const json_t *value = json_object_get(object, field->key);

        if (value == NULL || json_is_null(value)) {
            if (field->is_required) {
                add_fault(reading, memory_format(reading->arena, "%s/%s", pointer, field->key),
                          "is missing", field->remedy);
            }
        } else if (!read_value(reading, field, value, (char *)base + field->offset)) {
            add_fault(reading, memory_format(reading->arena, "%s/%s", pointer, field->key),
                      memory_format(reading->arena, "%s is not possible here",
                                    quoted(reading->arena, value)),
                      field->remedy);
        }
    }
}

static bool
is_known_key(const char *key, const struct field_list *list, const char *const *more)
{
    size_t i;

    for (i = 0; i < list->count; i++) {
        if (strcmp(list->fields[i].key, key) == 0) {
            return true;
        }
    }
    for (; *more != NULL; more++) {
        if (strcmp(*more, key) == 0) {
            return true;
        }
    }
    return false;
}

static void
refuse_unknown(const struct reading *reading, const json_t *json)
{
    static const char *const lists[] = {"phones", "orders", "batteries", "backup", NULL};
    const char *key;
    json_t *value;

    json_object_foreach ((json_t *)(uintptr_t)json, key, value) {
        if (!is_known_key(key, &rental_fields, lists)) {
            add_fault(reading, memory_format(reading->arena, "/%s", key), "is not a known field",
                      "leave it out or correct its name");
        }
    }
}

static void
read_phones(const struct reading *reading, const json_t *list, struct rental *rental)
{
    const json_t *entry;
    size_t i, other;

    for (i = 0; i < json_array_size(list); i++) {
        char *pointer = memory_format(reading->arena, "/phones/%zu", i);

        entry = json_array_get(list, i);
        if (json_is_null(entry)) {
            continue;
        }
        if (rental->phone_count == RENTAL_PHONES_MAX) {
            add_fault(reading, pointer, "is one phone too many", "give at most 4");
            return;
        }
        read_fields(reading, entry, pointer, &phone_fields, &rental->phones[rental->phone_count]);
        for (other = 0; other < rental->phone_count; other++) {
            const char *a = rental->phones[other].number;
            const char *b = rental->phones[rental->phone_count].number;

            if (a != NULL && b != NULL && strcmp(a, b) == 0) {
                add_fault(reading, memory_format(reading->arena, "%s/number", pointer),
                          "is there twice", "give each phone once");
            }
        }
        rental->phone_count++;
    }
    if (rental->phone_count == 0) {
        add_fault(reading, "/phones/0/number", "is missing",
                  "give at least one phone; without it no text can be told to be of this rental");
    }
}

static void
read_batteries(const struct reading *reading, const json_t *list, struct rental *rental)
{
    const json_t *entry;
    size_t i;

    for (i = 0; i < json_array_size(list); i++) {
        char *pointer = memory_format(reading->arena, "/batteries/%zu", i);

        entry = json_array_get(list, i);
        if (json_is_null(entry)) {
            continue;
        }
        if (rental->battery_count == RENTAL_BATTERIES_MAX) {
            add_fault(reading, pointer, "is one battery too many", "give at most 8");
            return;
        }
        read_fields(reading, entry, pointer, &battery_fields,
                    &rental->batteries[rental->battery_count++]);
    }
}

static void
read_orders(const struct reading *reading, const json_t *orders, struct rental *rental)
{
    int activity;

    for (activity = 0; activity < ACTIVITY_COUNT; activity++) {
        const char *name = activity_name((enum activity)activity);
        const json_t *order = json_object_get(orders, name);

        if (order != NULL && !json_is_null(order)) {
            rental->orders[activity].known = true;
            read_fields(reading, order, memory_format(reading->arena, "/orders/%s", name),
                        &order_fields, &rental->orders[activity]);
        }
    }
}

/* Texts by phone use the first name only. */
static void
fill_first_name(void *arena, struct rental *rental)
{
    if (rental->first_name == NULL && rental->name != NULL) {
        rental->first_name = memory_copy_n(arena, rental->name, strcspn(rental->name, " "));
    }
}

int
rental_record_read(void *arena, const json_t *json, const struct record_namer *namer,
                   struct rental *rental, struct faults *faults)
{
    struct reading reading = {arena, namer, faults};
    size_t before = faults->count;
    const json_t *backup = json_object_get(json, "backup");

    memset(rental, 0, sizeof(*rental));
    if (!json_is_object(json)) {
        add_fault(&reading, "", "is not an object", "give one object for each rental");
        return -1;
    }
    refuse_unknown(&reading, json);
    read_fields(&reading, json, "", &rental_fields, rental);
    read_phones(&reading, json_object_get(json, "phones"), rental);
    read_orders(&reading, json_object_get(json, "orders"), rental);
    read_batteries(&reading, json_object_get(json, "batteries"), rental);
    if (backup != NULL && !json_is_null(backup)) {
        rental->backup.known = true;
        read_fields(&reading, backup, "/backup", &backup_fields, &rental->backup);
    }
    if (rental->due_utc_s != 0 && rental->due_utc_s <= rental->start_utc_s) {
        add_fault(&reading, "/due_utc_s", "is not after the start",
                  "correct the one that is wrong");
    }
    fill_first_name(arena, rental);
    return faults->count == before ? 0 : -1;
}

bool
rental_record_parse(void *arena, const char *text, struct rental *rental)
{
    const struct record_namer namer = {0};
    struct faults faults = {0};
    json_t *json = json_loads(text, 0, NULL);
    bool is_read = rental_record_read(arena, json, &namer, rental, &faults) == 0;

    faults_release(&faults);
    json_decref(json);
    return is_read;
}

/* ---- Writing ------------------------------------------------------------------------------- */

static json_t *
value_json(const struct field *field, const void *place)
{
    double feet;

    switch (field->kind) {
    case FIELD_TEXT:
    case FIELD_ID:
    case FIELD_PHONE:
        return *(const char *const *)place == NULL ? NULL
                                                   : json_string(*(const char *const *)place);
    case FIELD_NUMBER:
        return *(const int *)place == 0 ? NULL : json_integer(*(const int *)place);
    case FIELD_MOMENT:
        return *(const int64_t *)place == 0 ? NULL : json_integer(*(const int64_t *)place);
    case FIELD_FEET:
        feet = *(const double *)place;
        return feet == 0             ? NULL
               : feet == floor(feet) ? json_integer((json_int_t)feet)
                                     : json_real(feet);
    case FIELD_YES_NO:
        return *(const bool *)place ? json_true() : NULL;
    case FIELD_STATE:
        return json_string(rental_state_name(*(const enum rental_state *)place));
    case FIELD_LANGUAGE:
        return json_string(language_code(*(const enum language *)place));
    case FIELD_MODE:
        return json_string(mode_name(*(const enum mode *)place));
    case FIELD_REACH:
        return json_string(reach_name(*(const enum reach *)place));
    }
    return NULL;
}

static json_t *
fields_json(const struct field_list *list, const void *base)
{
    json_t *object = memory_must(json_object());
    size_t i;

    for (i = 0; i < list->count; i++) {
        const struct field *field = &list->fields[i];
        json_t *value = value_json(field, (const char *)base + field->offset);

        if (value != NULL) {
            json_object_set_new(object, field->key, value);
        }
    }
    return object;
}

static json_t *
list_json(const struct field_list *list, const void *first, size_t each, size_t count)
{
    json_t *array = memory_must(json_array());
    size_t i;

    for (i = 0; i < count; i++) {
        json_array_append_new(array, fields_json(list, (const char *)first + i * each));
    }
    return array;
}

static json_t *
orders_json(const struct rental *rental)
{
    json_t *orders = memory_must(json_object());
    int activity;

    for (activity = 0; activity < ACTIVITY_COUNT; activity++) {
        if (rental->orders[activity].known) {
            json_object_set_new(orders, activity_name((enum activity)activity),
                                fields_json(&order_fields, &rental->orders[activity]));
        }
    }
    return orders;
}

char *
rental_record_text(void *arena, const struct rental *rental)
{
    json_t *json = fields_json(&rental_fields, rental);
    char *dumped, *text;

    json_object_set_new(
        json, "phones",
        list_json(&phone_fields, rental->phones, sizeof(rental->phones[0]), rental->phone_count));
    json_object_set_new(json, "batteries",
                        list_json(&battery_fields, rental->batteries, sizeof(rental->batteries[0]),
                                  rental->battery_count));
    json_object_set_new(json, "orders", orders_json(rental));
    if (rental->backup.known) {
        json_object_set_new(json, "backup", fields_json(&backup_fields, &rental->backup));
    }
    dumped = memory_must(json_dumps(json, JSON_COMPACT | JSON_SORT_KEYS | JSON_REAL_PRECISION(6)));
    text = memory_copy(arena, dumped);
    free(dumped);
    json_decref(json);
    return text;
}

char *
rental_record_digest(void *arena, const char *text)
{
    unsigned char digest[crypto_hash_sha256_BYTES];
    char hex[2 * sizeof(digest) + 1];

    crypto_hash_sha256(digest, (const unsigned char *)text, strlen(text));
    return memory_copy(arena, sodium_bin2hex(hex, sizeof(hex), digest, sizeof(digest)));
}
