/* "Over half", "a hair under a quarter": how far from a part it may lie. Part of states.c. Pure. */
#ifndef BESIDE_PART_H
#define BESIDE_PART_H

#include "interval.h"
#include "items.h"

/* How far "over half", "a hair under a quarter" may lie from it; percent. */
enum { BESIDE = 15 };

/* The charge of a part that the words before item `at` put above or below it. */
struct percent beside_part(const struct items *items, size_t at, struct percent charge);
/* "a smidge": the word before this token makes what it tells small. */
bool is_slight(const struct items *items, size_t token);

#endif
