/*
 * Reading a JSON object field by field, with every fault named by its JSON Pointer (RFC 6901),
 * what was expected and what was found. Nothing stops at the first fault.
 *
 * All readers leave *out untouched unless they return true.
 */
#ifndef JSON_FIELDS_H
#define JSON_FIELDS_H

#include <stdbool.h>
#include <stddef.h>

#include <jansson.h>

#include "fault.h"

/* Where in which file we are; value type, cheap to copy. */
struct json_place {
    void *arena; /* for pointers and strings that are handed out */
    const char *file;
    const char *pointer; /* "" is the root */
    struct faults *faults;
};

/* The place of a member or an element below this one. */
struct json_place json_place_key(struct json_place place, const char *key);
struct json_place json_place_index(struct json_place place, size_t index);

/* Adds "FILE: /pointer: found X; EXPECTED". */
void json_fault(struct json_place place, const char *format, ...)
    __attribute__((format(printf, 2, 3)));

/* True if the value is an object; adds a fault for it and for each member not in `known` (ended by
 * NULL). */
bool json_check_object(struct json_place place, json_t *value, const char *const *known);

/* True if the value is an array with at least `least` elements; else a fault. */
bool json_check_array(struct json_place place, json_t *value, size_t least);

enum json_need { JSON_OPTIONAL, JSON_REQUIRED };

/*
 * Members of an object by their key. A missing one is a fault only if it is required; a wrong type
 * or a value out of bounds always is.
 */
bool json_read_integer(struct json_place place, json_t *object, const char *key,
                       enum json_need need, int low, int high, int *out);
bool json_read_number(struct json_place place, json_t *object, const char *key, enum json_need need,
                      double low, double high, double *out);
bool json_read_boolean(struct json_place place, json_t *object, const char *key,
                       enum json_need need, bool *out);
/* A string of 1 to `longest` bytes, copied into the arena. */
bool json_read_text(struct json_place place, json_t *object, const char *key, enum json_need need,
                    size_t longest, const char **out);
/* An array of two integers, low <= high, both within bounds. */
bool json_read_interval(struct json_place place, json_t *object, const char *key,
                        enum json_need need, int low, int high, int *out_low, int *out_high);

#endif
