/*
 * Faults: what went wrong, where, and what to do about it, worded once where the cause is seen and
 * passed up unchanged. Shared by all three libraries, so it lives in the lowest.
 *
 * A function that can fail takes a last `struct fault *` and returns 0 or -1. A reader of files or
 * rows that should report everything at once takes a `struct faults *` instead and goes on after
 * each. Out of memory is no fault: it ends the program (see memory.h).
 */
#ifndef FAULT_H
#define FAULT_H

#include <stddef.h>

struct fault {
    char text[1024]; /* one line, UTF-8, no line end; "" means none */
};

/* Words *fault; a text that is too long is cut at a character border. */
void fault_set(struct fault *fault, const char *format, ...) __attribute__((format(printf, 2, 3)));

/* A growing list of faults; starts as {0}, released with faults_release(). */
struct faults {
    struct fault *list;
    size_t count, capacity;
    size_t warnings; /* how many things were wrong but do not stop us; not in list */
};

/*
 * Adds one fault as "file:line: field: message". file and field may be NULL, line 0 is left out.
 * The message says what was found, what was expected and the remedy.
 */
void faults_add(struct faults *faults, const char *file, int line, const char *field,
                const char *format, ...) __attribute__((format(printf, 5, 6)));

/* Frees the list; *faults may be used again. */
void faults_release(struct faults *faults);

#endif
