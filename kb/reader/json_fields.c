#include "json_fields.h"

#include <stdarg.h>
#include <stdio.h>
#include <string.h>

#include "memory.h"

struct json_place
json_place_key(struct json_place place, const char *key)
{
    char *pointer = memory_format(place.arena, "%s/", place.pointer);

    for (; *key != '\0'; key++) { /* RFC 6901, section 3: ~ and / are escaped */
        if (*key == '~' || *key == '/') {
            memory_append(&pointer, *key == '~' ? "~0" : "~1");
        } else {
            memory_append(&pointer, "%c", *key);
        }
    }
    place.pointer = pointer;
    return place;
}

struct json_place
json_place_index(struct json_place place, size_t index)
{
    place.pointer = memory_format(place.arena, "%s/%zu", place.pointer, index);
    return place;
}

void
json_fault(struct json_place place, const char *format, ...)
{
    struct fault message;
    va_list arguments;

    va_start(arguments, format);
    vsnprintf(message.text, sizeof(message.text), format, arguments);
    va_end(arguments);
    faults_add(place.faults, place.file, 0,
               place.pointer[0] == '\0' ? "the whole file" : place.pointer, "%s", message.text);
}

/* What a value is, for "found ...". */
static const char *
found(json_t *value)
{
    switch (json_typeof(value)) {
    case JSON_OBJECT:
        return "an object";
    case JSON_ARRAY:
        return "an array";
    case JSON_STRING:
        return "a string";
    case JSON_INTEGER:
        return "an integer";
    case JSON_REAL:
        return "a number with a fraction";
    case JSON_TRUE:
        return "true";
    case JSON_FALSE:
        return "false";
    default:
        return "null";
    }
}

static bool
is_known(const char *key, const char *const *known)
{
    for (; *known != NULL; known++) {
        if (strcmp(*known, key) == 0) {
            return true;
        }
    }
    return false;
}

bool
json_check_object(struct json_place place, json_t *value, const char *const *known)
{
    const char *key;
    json_t *member;
    char *list;
    size_t i;

    if (!json_is_object(value)) {
        json_fault(place, "found %s; expected an object { ... }", found(value));
        return false;
    }
    list = memory_copy(place.arena, "");
    for (i = 0; known[i] != NULL; i++) {
        memory_append(&list, "%s%s", i == 0 ? "" : ", ", known[i]);
    }
    json_object_foreach (value, key, member) {
        if (!is_known(key, known)) {
            json_fault(json_place_key(place, key), "unknown key; take it out or use one of: %s",
                       list);
        }
    }
    return true;
}

bool
json_check_array(struct json_place place, json_t *value, size_t least)
{
    if (!json_is_array(value)) {
        json_fault(place, "found %s; expected an array [ ... ]", found(value));
        return false;
    }
    if (json_array_size(value) < least) {
        json_fault(place, "found %zu elements; expected at least %zu", json_array_size(value),
                   least);
        return false;
    }
    return true;
}

/* The member, or NULL if it is missing (a fault if it is required). */
static json_t *
member(struct json_place place, json_t *object, const char *key, enum json_need need,
       const char *expected)
{
    json_t *value = json_object_get(object, key);

    if (value == NULL && need == JSON_REQUIRED) {
        json_fault(json_place_key(place, key), "missing; expected %s", expected);
    }
    return value;
}

bool
json_read_integer(struct json_place place, json_t *object, const char *key, enum json_need need,
                  int low, int high, int *out)
{
    json_t *value = member(place, object, key, need, "an integer");

    if (value == NULL) {
        return false;
    }
    if (!json_is_integer(value)) {
        json_fault(json_place_key(place, key), "found %s; expected an integer %d to %d",
                   found(value), low, high);
        return false;
    }
    if (json_integer_value(value) < low || json_integer_value(value) > high) {
        json_fault(json_place_key(place, key),
                   "found %" JSON_INTEGER_FORMAT "; expected an integer %d to %d",
                   json_integer_value(value), low, high);
        return false;
    }
    *out = (int)json_integer_value(value);
    return true;
}

bool
json_read_number(struct json_place place, json_t *object, const char *key, enum json_need need,
                 double low, double high, double *out)
{
    json_t *value = member(place, object, key, need, "a number");
    double number;

    if (value == NULL) {
        return false;
    }
    if (!json_is_number(value)) {
        json_fault(json_place_key(place, key), "found %s; expected a number %g to %g", found(value),
                   low, high);
        return false;
    }
    number = json_number_value(value);
    if (!(number >= low && number <= high)) {
        json_fault(json_place_key(place, key), "found %g; expected a number %g to %g", number, low,
                   high);
        return false;
    }
    *out = number;
    return true;
}

bool
json_read_boolean(struct json_place place, json_t *object, const char *key, enum json_need need,
                  bool *out)
{
    json_t *value = member(place, object, key, need, "true or false");

    if (value == NULL) {
        return false;
    }
    if (!json_is_boolean(value)) {
        json_fault(json_place_key(place, key), "found %s; expected true or false", found(value));
        return false;
    }
    *out = json_is_true(value);
    return true;
}

bool
json_read_text(struct json_place place, json_t *object, const char *key, enum json_need need,
               size_t longest, const char **out)
{
    json_t *value = member(place, object, key, need, "a string");
    size_t length;

    if (value == NULL) {
        return false;
    }
    if (!json_is_string(value)) {
        json_fault(json_place_key(place, key), "found %s; expected a string", found(value));
        return false;
    }
    length = json_string_length(value);
    if (length == 0 || length > longest) {
        json_fault(json_place_key(place, key), "found %zu bytes; expected 1 to %zu", length,
                   longest);
        return false;
    }
    *out = memory_copy(place.arena, json_string_value(value));
    return true;
}

bool
json_read_interval(struct json_place place, json_t *object, const char *key, enum json_need need,
                   int low, int high, int *out_low, int *out_high)
{
    json_t *value = member(place, object, key, need, "[low, high]"), *first, *second;

    if (value == NULL) {
        return false;
    }
    first = json_array_get(value, 0); /* NULL if it is no array */
    second = json_array_get(value, 1);
    if (json_array_size(value) != 2 || !json_is_integer(first) || !json_is_integer(second)) {
        json_fault(json_place_key(place, key),
                   "found %s; expected [low, high], two integers %d to %d",
                   json_is_array(value) ? "another kind of array" : found(value), low, high);
        return false;
    }
    if (json_integer_value(first) < low || json_integer_value(second) > high ||
        json_integer_value(first) > json_integer_value(second)) {
        json_fault(json_place_key(place, key),
                   "found [%" JSON_INTEGER_FORMAT ", %" JSON_INTEGER_FORMAT
                   "]; expected [low, high] with %d <= low <= high <= %d",
                   json_integer_value(first), json_integer_value(second), low, high);
        return false;
    }
    *out_low = (int)json_integer_value(first);
    *out_high = (int)json_integer_value(second);
    return true;
}
