/*
 * What stands beside a supply that is told to be empty, each in the clause in which it stands: that
 * there is no other or one at hand, that it is seen to, that they are far from any. Between
 * emptied.c and emptied_beside.c; private to the two.
 */
#ifndef EMPTIED_BESIDE_H
#define EMPTIED_BESIDE_H

#include "tokens.h"

/* For token_among(). */
extern const char emptied_batteries[], emptied_tanks[], emptied_between[], emptied_owners[];
/* For tokens_have(): "too". */
extern const char emptied_as_well[];

/* "No spare", "i have none", "the other one wont charge", "the charger isnt working". */
bool tells_no_other(const struct tokens *message);
/* One that is neither empty nor where they are not. */
bool tells_other_at_hand(const struct tokens *message);
/* It charges, works or is full, as it is now. */
bool tells_seen_to(const struct tokens *message);
/* They breathe from the cylinder, and it is not what ran out; or it is. */
bool tells_from_backup(const struct tokens *message);
bool tells_backup_used_up(const struct tokens *message);
/* Nothing can be had where they are, or they say that life hangs on it. */
bool tells_pressing(const struct tokens *message);
/* It may be empty, but they speak of something else, or have what they need. */
bool tells_no_need(const struct tokens *message);

#endif
