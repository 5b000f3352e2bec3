/*
 * What lies between two words of which one is a misspelling of the other by one slip of the finger.
 * Pure.
 */
#ifndef SLIP_H
#define SLIP_H

/* The likelier ones first. */
enum slip_kind {
    SLIP_NONE,        /* the words are the same, or more than one slip apart */
    SLIP_SWAP,        /* two neighbouring letters changed places: "tehy" */
    SLIP_DOUBLE,      /* a letter written once instead of twice, or twice: "ful", "plugg" */
    SLIP_LETTER_LESS, /* "settin" */
    SLIP_LETTER_MORE, /* "settimng" */
    SLIP_WRONG_LETTER /* "setring" */
};

/* Which slip makes `typed` of `known`; cleaned words, as bytes. */
enum slip_kind slip_between(const char *typed, const char *known);

#endif
