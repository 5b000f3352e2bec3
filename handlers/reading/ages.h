/* How old somebody is: a number that is no charge. Part of aside.c. Pure. */
#ifndef AGES_H
#define AGES_H

#include "items.h"

/* Words for those who live with the one who writes: " mom dad .. ", for token_among(). */
extern const char ages_family[];

/* "he is 74", "my mom 82", "tiene 79": the number at `at`, if it is an age, is spent. */
void age_put_aside(struct items *items, size_t at);

#endif
