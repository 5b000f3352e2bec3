/*
 * Whose trouble staff write of. What they have in hand are other people's emergencies, and their
 * orders, their words for a renter and how something ended are full of the words of signs: a sign
 * is theirs where they are the one of whom it is told. Private to staff*.c.
 */
#ifndef STAFF_OWN_H
#define STAFF_OWN_H

#include "asked.h"

/*
 * From token `at` on they tell trouble of themselves: a sign stands behind "I", "my" or "we" before
 * anybody else is spoken of: "i fell and cant get up", but not "i found her on the floor". That
 * they called for help, or will, is none.
 */
bool staff_tells_own(const struct asked *whole, size_t at);

#endif
