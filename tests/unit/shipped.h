/* For tests: the content of kb/ as the daemon loads it, and the gravest sign that a text shows. */
#ifndef SHIPPED_H
#define SHIPPED_H

#include <stdbool.h>

#include "kb.h"

/* Fixture: loads it once, or fails the test case with the first fault. */
void shipped_begin(void);
void shipped_end(void);

/* What was loaded. */
const struct kb *shipped_kb(void);

/* The gravest sign of a text; false if it shows none. */
bool shipped_look(const char *text, struct sign_match *match);

#endif
