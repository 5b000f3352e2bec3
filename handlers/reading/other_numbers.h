/* Numbers of days, hours, fuses and rules, which are no charge and no way. Part of aside.c. Pure.
 */
#ifndef OTHER_NUMBERS_H
#define OTHER_NUMBERS_H

#include "items.h"

/* "de 9 a 15", "every ten minutes", "del 3 al 17", "a fuse of 10", "48 hours in advance": what
 * stands at `at` is spent if it is one of these. */
void other_number_put_aside(struct items *items, size_t at);

#endif
