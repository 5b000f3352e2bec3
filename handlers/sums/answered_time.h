/*
 * A time told by itself, as an answer to a question of ours: "at 9", "in 2 hours", "mañana a las
 * 7". Read against the clock of the question; what is taken is said back with the answer.
 */
#ifndef ANSWERED_TIME_H
#define ANSWERED_TIME_H

#include "asked.h"

/*
 * The moment that the text tells, later than now. Where it leaves open which half of the day is
 * meant the sooner one is taken: what is charged till then is the less. False if it tells none.
 */
bool answered_time(const struct asked *asked, int64_t *utc_s);

/* "pm", "in the evening": the half of the day that `before` left open. *minutes after midnight. */
bool answered_half_of_day(const struct asked *asked, const char *before, int *minutes);

/* "tomorrow", "on friday": the day of a time that was told without one. */
bool answered_day(const struct asked *asked, int minutes, enum told_day *day);

/* "in 2 hours", "dentro de media hora": minutes from now; 0 if that is not told. */
int minutes_from_now(const struct tokens *tokens);

/* The moment as the clock and the day of a text. */
void answered_as_told(const struct asked *asked, int64_t utc_s, int *minutes, enum told_day *day);

#endif
