/* Charges told in a text that says nothing else. */
#ifndef BARE_CHARGE_H
#define BARE_CHARGE_H

#include "asked.h"

/* It reports charges of batteries, and nothing else: "both full", "2 lights". */
bool bare_charge_is_told(const struct asked *asked);
/* It tells numbers and nothing of what they are: "60 %", "at 88". */
bool bare_percent_is_told(const struct asked *asked);
/* It says of a percentage told before, when we asked what it is, that it is an oximeter's
 * ("oxygen", "the finger one"): that, the lowest; else 0. */
int bare_percent_as_reading(const struct asked *whole);
/* It says of a percentage told before that it is a battery's: "battery", "its the charge". */
bool bare_charge_is_of_battery(const struct asked *asked);

#endif
