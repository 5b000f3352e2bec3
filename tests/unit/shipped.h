/* For tests: the content of kb/ as the daemon loads it, and the gravest sign that a text shows. */
#ifndef SHIPPED_H
#define SHIPPED_H

#include <stdbool.h>

#include "kb.h"

/*
 * Loads it, or fails the test with the first fault. Of all tests of one build the first makes it
 * and keeps it beside the tests, the others take what it kept: there a sanitizer sees one block
 * only, so the tests whose subject is the reading of the content itself call kb_load().
 */
struct kb *shipped_load(void);

/* Fixture: the same, once for a test case. */
void shipped_begin(void);
void shipped_end(void);

/* What was loaded. */
const struct kb *shipped_kb(void);

/* The gravest sign of a text; false if it shows none. */
bool shipped_look(const char *text, struct sign_match *match);

#endif
