/*
 * A supply that is told to be empty: "my battery died", "se me acabo el tanque", read out of free
 * text, English and Spanish. It is told now, and of ours: what is supposed, asked or denied, the
 * battery of a phone or a car, and one of several are none. What speaks against it counts only
 * where it stands: "if" before it, a phone that owns it, "charging" that is not denied. Pure.
 */
#ifndef EMPTIED_H
#define EMPTIED_H

#include "tokens.h"

struct emptied {
    bool battery, tank;
    bool nothing_else; /* there is no other, or they are where none can be had */
    bool somebody_too; /* "... and so did my dad" */
};

/* Told in a piece of the message; what stands elsewhere in the message speaks for it or against. */
struct emptied emptied_read(const struct tokens *piece, const struct tokens *message);

/* Of these words nothing tells more than that: its fillers and its names. */
bool emptied_is_all(const struct tokens *without_empty);

/* What is said of an empty supply, behind its name. */
extern const char emptied_words[];

#endif
