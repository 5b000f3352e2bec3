/* How `hutbell check` shows remarks: to a person at 80 columns, or as one JSON object. */
#ifndef CHECK_PRINT_H
#define CHECK_PRINT_H

#include <stdio.h>

#include <jansson.h>

#include "remark.h"

/* What was looked at, and what could not be. */
struct check_scope {
    const char *content; /* folder */
    const char *digest;  /* of the content; NULL if it did not load */
    size_t topics, signs, units, rentals;
    const char *notes[2]; /* what was not checked and why */
    size_t note_count;
};

/* Of each kind of error in the content so many lines, and files that the rest is most in, unless
 * all are wanted; of other kinds with one remedy the files' names alone from so many on. */
enum { CHECK_ERRORS_SHOWN = 20, CHECK_FILES_SHOWN = 3, CHECK_NAMED_FROM = 20 };

/* How many errors and warnings there are. */
void check_count(const struct remarks *remarks, size_t *errors, size_t *warnings);

/*
 * Prints text from column `indent` on, broken at blanks so that no line is longer than 80
 * characters (a longer word stands alone); following lines are two further in.
 */
void check_print_text(FILE *out, int indent, const char *text);

/* Sorted remarks, grouped by kind with counts: errors and what the office can act on whole,
 * warnings for who writes the content as numbers (check_content.h) unless all are wanted. Then the
 * scope and the sum.
 */
void check_print(FILE *out, const struct remarks *remarks, const struct check_scope *scope,
                 bool is_all);

/* The same for programs; the caller's, to be released with json_decref(). */
json_t *check_json(const struct remarks *remarks, const struct check_scope *scope);

#endif
