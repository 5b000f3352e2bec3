/*
 * "Not fine", "im not ok", "ayudeme no estoy bien": that somebody is not well, and no word of how.
 * Every word of it stands in most texts, so it counts only as what it says of a person: "im not ok
 * with the price", "the unit is not ok" are none. Pure.
 */
#ifndef NOT_WELL_H
#define NOT_WELL_H

#include "tokens.h"

bool not_well_told(const struct tokens *tokens);

#endif
