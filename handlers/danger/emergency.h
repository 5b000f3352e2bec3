/* What makes an emergency of a value, and the second part of its reply. */
#ifndef EMERGENCY_H
#define EMERGENCY_H

#include "asked.h"
#include "verdict.h"

/* Something burns or may: more oxygen, or a battery, is the last thing to reach for. */
bool emergency_is_fire(const struct verdict *verdict);

/* At or below this an oximeter's value is one; numbers in the records can only raise it. */
int emergency_reading(const struct context *context);

/* The address on record, if all rentals that this phone may speak of have the same; or NULL. */
const char *emergency_address(const struct asked *whole);

/* A sign with a lower one goes first: it is the first one's first part that goes out. */
size_t emergency_order(const char *id);

/*
 * "Sit up. If it stopped, use your E cylinder ...": what helps until help is there, of what the
 * verdict tells and of what is open. "" if it does not help in any, or may harm in one: beside a
 * fire, or who does not wake.
 */
const char *emergency_steps(const struct asked *whole, const struct verdict *verdict);

/*
 * Who speaks, the signs that the first part does not name, the address on record, what may be done
 * until help is there, and that staff do not replace the call. The first part has gone before and
 * stands alone.
 */
char *emergency_second_part(const struct asked *whole, const struct verdict *verdict);

#endif
