/*
 * A shock from a defibrillator in the chest or a vest: "my icd went off twice", "el desfibrilador
 * me dio una descarga". One is for a person to ring about; more than one, or one with anything that
 * they feel, is an emergency (common practice, no source). Pure.
 */
#ifndef HEART_DEVICE_H
#define HEART_DEVICE_H

#include "clause.h"
#include "tokens.h"

struct heart_shock {
    enum { NOT_SHOCKED, SHOCKED_ONCE, SHOCKED_SEVERAL_TIMES } often;
    struct clause clause; /* that tells of it */
    size_t at, end;       /* its own word or words, tokens [at, end) */
};

/* As it is now; not of one on a wall, of what if, or of years ago, each as its own clause tells. */
struct heart_shock heart_shock_told(const struct tokens *tokens);

#endif
