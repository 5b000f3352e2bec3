/*
 * How far a command is, for whoever waits at a terminal: "writing  [#######.............]  35 %" on
 * one line that is drawn anew. Where the output is no terminal nothing is printed.
 */
#ifndef PROGRESS_H
#define PROGRESS_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>

struct progress {
    FILE *out;
    const char *what; /* one word: "checking" */
    int shown;        /* percent; -1 for nothing yet */
};

/* `what` must stay. */
struct progress progress_begin(FILE *out, const char *what);
void progress_show(struct progress *progress, size_t done, size_t all);
/* Ends the line. */
void progress_end(struct progress *progress);

#endif
