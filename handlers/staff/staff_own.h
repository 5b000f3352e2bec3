/*
 * Whose trouble staff write of. What they have in hand are other people's emergencies, and their
 * orders, their words for a renter and how something ended are full of the words of signs: a sign
 * is news where they are the one of whom it is told, or somebody new. Private to staff*.c.
 */
#ifndef STAFF_OWN_H
#define STAFF_OWN_H

#include "asked.h"

/*
 * From token `at` on they tell trouble of themselves, or of somebody whom no alert is about: a sign
 * stands behind "I", "my" or "we" before anybody else is spoken of ("i fell and cant get up", but
 * not "i found her on the floor"), or behind "a guest", "someone", "my wife". That they called for
 * help, or will, is none.
 */
bool staff_tells_own(const struct asked *whole, size_t at);

/* Their words from token `at` on show a sign, whoever it is of; not if only help is spoken of that
 * was called or comes. */
bool staff_shows_sign(const struct asked *whole, size_t at);

#endif
