/* Problem details for HTTP, RFC 9457. */
#ifndef PROBLEM_H
#define PROBLEM_H

#include <stddef.h>

#define PROBLEM_CONTENT_TYPE "application/problem+json"

/*
 * {"type":"about:blank","title":…,"status":…,"detail":…} as JSON text in `arena`. `title` NULL: the
 * status's own phrase, as section 4.2.1 asks for "about:blank". With `pointer` (a JSON Pointer into
 * what was sent) there is also "errors":[{"detail":…,"pointer":"#…"}], as in section 3. Bytes that
 * are not UTF-8 are replaced.
 */
char *problem_json(void *arena, int status, const char *title, const char *detail,
                   const char *pointer);

/* One of several things that are wrong; `pointer` NULL: of nothing in particular. */
struct problem_error {
    const char *detail, *pointer;
};

/* The same with all of them in "errors". */
char *problem_json_of_all(void *arena, int status, const char *detail,
                          const struct problem_error *errors, size_t count);

/* The status's own phrase: "Bad Request"; "Error" for one that we never send. */
const char *problem_title(int status);

#endif
