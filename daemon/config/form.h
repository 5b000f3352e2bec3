/*
 * application/x-www-form-urlencoded (WHATWG URL, section 5): "a=1&b=two+words&c=%C3%A9". Reading
 * takes any bytes: what is not a proper %XX stays as it is, and a NUL is refused.
 */
#ifndef FORM_H
#define FORM_H

#include <stddef.h>

#include "fault.h"

struct form_pair {
    const char *name, *value; /* decoded; not checked for UTF-8 */
};

struct form {
    struct form_pair *pairs; /* as sent, in order */
    size_t count;
};

enum { FORM_PAIRS_MAX = 200 };

/* Reads `length` bytes into *form, all in `arena`. Returns 0, or -1 with a fault. */
int form_read(void *arena, const char *bytes, size_t length, struct form *form,
              struct fault *fault);

/* The value of the first pair of this name, or NULL. */
const char *form_get(const struct form *form, const char *name);

/* Sorts by name, then by value, byte by byte; what {sorted-form} of a signature is made of. */
void form_sort(struct form *form);

/* Appends "&name=value" (without "&" at the start) to a talloc'd string, both encoded. */
void form_append(char **text, const char *name, const char *value);

#endif
