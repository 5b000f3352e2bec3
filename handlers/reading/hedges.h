/* Small helps for reading charges: what leads to an item, and how far a hedge widens. Pure. */
#ifndef HEDGES_H
#define HEDGES_H

#include "interval.h"
#include "items.h"

/* The item before `at`, over words that carry nothing; past the end if there is none. */
size_t back_over_links(const struct items *items, size_t at);

/* "about 80", "80 or so": of what stands in items [at, after). */
bool is_hedged(const struct items *items, size_t at, size_t after);

/* Widened by 5 on either side if hedged (common practice, no source). */
/* "less than 20", "just under 50", "almost 80" of a number: what may be lacking. */
struct percent hedge_under(const struct items *items, size_t at, struct percent charge);

struct percent hedge(struct percent charge, bool hedged);

/* Thousandths to the next whole number up. */
int round_up(int thousandths);

#endif
