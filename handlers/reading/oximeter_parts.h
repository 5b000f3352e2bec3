/*
 * Between oximeter.c, which reads values that a cue leads to ("o2 is 84"), and oximeter_bare.c, for
 * those that only their company tells ("she's at 84 and panting"). Private to the two.
 */
#ifndef OXIMETER_PARTS_H
#define OXIMETER_PARTS_H

#include "tokens.h"

/* Words for what else has a number; with a blank before and after each, as token_among() wants. */
extern const char oximeter_other_things[];
/* The same for whom a value is of. */
extern const char oximeter_persons[];

/* The lowest value so far; value 0: none. */
struct lowest {
    int value;
    size_t start, end;
};

void oximeter_keep(const struct tokens *tokens, size_t at, size_t taken, int value,
                   struct lowest *lowest);

/* The value of the number at `at`, which takes *taken tokens, or 0 if it can be none. */
int oximeter_value(const struct tokens *tokens, size_t at, size_t *taken);

/* Every value that no cue leads to. */
void oximeter_read_bare(const struct tokens *tokens, struct lowest *lowest);

#endif
