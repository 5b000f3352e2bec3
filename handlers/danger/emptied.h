/*
 * A supply that is told to be empty: "my battery died", "se me acabo el tanque", "it was full, now
 * its empty", read out of free text, English and Spanish, misspelt words mended (mending.h). It is
 * told now, and of ours: what is supposed, asked or denied, the battery of a phone or a car, and
 * one of several are none. What speaks for it or against (emptied_beside.h) counts only where it
 * stands. Pure.
 */
#ifndef EMPTIED_H
#define EMPTIED_H

#include "tokens.h"

struct emptied {
    bool battery, tank;
    bool nothing_else; /* there is no other, or they are where none can be had */
    bool somebody_too; /* "... and so did my dad" */
    bool own;          /* the writer's: "my tank", "se me acabo" */
    size_t start, end; /* bytes [start, end) of the piece: the clause that tells it */
};

/* Told in a piece of the message; what stands elsewhere in the message speaks for it or against. */
struct emptied emptied_read(const struct tokens *piece, const struct tokens *message);

/* Of these words nothing tells more than that: its fillers and its names. */
bool emptied_is_all(const struct tokens *without_empty);

/* A supply, or what is said of an empty one. */
bool emptied_is_word(const char *word);

/* What is said of an empty supply, behind its name. */
extern const char emptied_words[];

#endif
