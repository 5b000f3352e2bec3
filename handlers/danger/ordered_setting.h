/*
 * What was ordered for this renter, and nothing else, is asked for: "whats my setting", "am i ok to
 * use 3 when i walk" where the record has 3 for walking. The record may tell its own order; to be
 * told not to change it, who walks on theirs, would have them walk on the setting for rest. Any
 * other number, higher or lower, stairs and mountains are the prescriber's. Pure.
 */
#ifndef ORDERED_SETTING_H
#define ORDERED_SETTING_H

#include "asked.h"

bool ordered_setting_is_asked(const struct asked *asked);

#endif
