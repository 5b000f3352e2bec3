#include "slip.h"

#include <stdbool.h>
#include <string.h>

/* The longer word has one more letter where they part; `before` is the letter before that. */
static enum slip_kind
one_more(const char *longer, const char *shorter, char before, enum slip_kind otherwise)
{
    if (strcmp(longer + 1, shorter) != 0) {
        return SLIP_NONE;
    }
    return before == longer[0] ? SLIP_DOUBLE : otherwise;
}

enum slip_kind
slip_between(const char *typed, const char *known)
{
    size_t typed_length, known_length;
    char before = '\0';

    while (*typed != '\0' && *typed == *known) {
        before = *typed;
        typed++;
        known++;
    }
    typed_length = strlen(typed);
    known_length = strlen(known);
    if (typed_length + 1 == known_length) {
        return one_more(known, typed, before, SLIP_LETTER_LESS);
    }
    if (known_length + 1 == typed_length) {
        return one_more(typed, known, before, SLIP_LETTER_MORE);
    }
    if (typed_length != known_length || typed_length == 0) {
        return SLIP_NONE;
    }
    if (strcmp(typed + 1, known + 1) == 0) {
        return SLIP_WRONG_LETTER;
    }
    return typed[0] == known[1] && typed[1] == known[0] && strcmp(typed + 2, known + 2) == 0
               ? SLIP_SWAP
               : SLIP_NONE;
}
