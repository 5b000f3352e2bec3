/* "Two and a half batteries": full ones, and one that is half full. Part of charges.c. Pure. */
#ifndef WHOLE_AND_HALF_H
#define WHOLE_AND_HALF_H

#include "items.h"

/* The items that tell it from `at` on; 0 if it is not told there. */
size_t whole_and_half_at(const struct items *items, size_t at);

#endif
