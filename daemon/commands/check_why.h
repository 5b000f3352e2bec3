/* `hutbell check --why`: what the signs and the search make of a text, and from which line. */
#ifndef CHECK_WHY_H
#define CHECK_WHY_H

#include <stdio.h>

#include <jansson.h>

#include "kb.h"

void check_why_print(FILE *out, const struct kb *kb, struct workspace *workspace, const char *text);

/* The caller's, to be released with json_decref(). */
json_t *check_why_json(const struct kb *kb, struct workspace *workspace, const char *text);

#endif
