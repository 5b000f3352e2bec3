/*
 * A shock from a defibrillator in the chest or a vest: "my icd went off twice", "el desfibrilador
 * me dio una descarga". One is for a person to ring about; more than one, or one with anything that
 * they feel, is an emergency (common practice, no source). Pure.
 */
#ifndef HEART_DEVICE_H
#define HEART_DEVICE_H

#include "tokens.h"

enum heart_shock { HEART_SHOCK_NONE, HEART_SHOCK_ONE, HEART_SHOCK_SEVERAL };

/* As it is now; not of one on a wall, of what if, or of years ago. */
enum heart_shock heart_shock_told(const struct tokens *tokens);

#endif
