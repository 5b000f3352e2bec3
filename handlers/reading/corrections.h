/*
 * What the writer takes back: "3 hours, sorry, 4", "no es de 6 horas, es de 7". The last telling
 * holds: earlier amounts and clock times of the same kind are marked as spent. Charges and counts
 * of batteries are settled in charges.c, with corrections_from(). Pure.
 */
#ifndef CORRECTIONS_H
#define CORRECTIONS_H

#include "items.h"

/* Bare numbers that take the place of an amount get its unit. Before clocks_make(). */
void corrections_of_amounts(struct items *items);
/* After clocks_make(). */
void corrections_of_clocks(struct items *items);

/* Where the telling begins that holds; 0 if nothing is taken back. */
size_t corrections_from(const struct items *items);

/* True if what corrects stands right before the item, over words that carry nothing. */
bool corrections_lead(const struct items *items, size_t at);

/* "at 45 no 35", "2 lights no 1": such a no between a number and another corrects; in Spanish,
 * where it may be a "not", only if less is told behind it. */
bool corrections_no_between(const struct items *items, size_t at);

#endif
