/* Degrees and speeds, which words behind their amount make whole. Part of amounts.c; each works on
 * the item at `at`. Pure. */
#ifndef AMOUNTS_AFTER_H
#define AMOUNTS_AFTER_H

#include "items.h"

void degrees_make(struct items *items, size_t at);
void degrees_below(struct items *items, size_t at);
/* Degrees of which no kind is told, once all others are made. */
void degrees_complete(struct items *items, size_t at);
void speed_unit(struct items *items, size_t at);
void speed_bare(struct items *items, size_t at);

#endif
