/*
 * What a text that goes on with a sum tells anew, put in the place of what was told of the same
 * kind; everything else stays. Pure.
 */
#ifndef FOLLOW_TAKE_H
#define FOLLOW_TAKE_H

#include "asked.h"
#include "follow_words.h"

enum taken {
    TAKEN_NOTHING, /* it tells nothing that this sum is worked out with */
    TAKEN,
    TAKEN_UNSURE /* it tells something, and of what is not clear: to be asked */
};

/*
 * A number with nothing beside it takes the place of the one that was told last, or is a setting
 * behind "at". *newest is set to what it is.
 */
enum taken follow_take_number(const struct follow_words *words, enum told_thing last,
                              struct told *told, enum told_thing *newest);

/* What `answer` tells of batteries, settings, what they do and the cold, and of a trip's or
 * flight's lengths. Cylinders and clock times are sum_parts.h's. */
enum taken follow_take_told(const struct follow_words *words, const struct told *answer,
                            struct told *told);

#endif
