/*
 * What others say or what was once so: "my friend gets 6 hours out of hers", "the box says up to 8
 * hours", "last time a full one gave me 3 hours". Nothing in such a clause is told of now. After
 * amounts_make(); marks it as spent. Part of aside.c. Pure.
 */
#ifndef CLAIMS_H
#define CLAIMS_H

#include "items.h"

void claim_of_length(struct items *items, size_t at);

#endif
