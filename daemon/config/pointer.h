/* JSON Pointer, RFC 6901. */
#ifndef POINTER_H
#define POINTER_H

#include <stdbool.h>
#include <jansson.h>

/* Whether `pointer` is well formed ("" or "/…", ~ only as ~0 and ~1). */
bool pointer_is_valid(const char *pointer);

/* The value it names, borrowed from `root`, or NULL. */
json_t *pointer_get(json_t *root, const char *pointer);

#endif
