/* The sentences of say.h from SAY_SUMS on. Private to say.c. */
#ifndef SAY_SUMS_H
#define SAY_SUMS_H

#include "say.h"

extern const char *const say_sums[PHRASE_COUNT - SAY_SUMS][LANGUAGE_COUNT];

#endif
