/* What was read out of a text, as words, for tests: "100 100 50 l2 +1 pulse s20 sleep". */
#ifndef TOLD_WORDS_H
#define TOLD_WORDS_H

#include "told.h"

/* Batteries, mode, setting (in tenths), activity, time since: of a charge -L-H its band. */
char *told_words_of_charges(void *arena, const struct told *told);
/* "charging by06:30 tomorrow ?charge": what is asked, times, ways, cylinder, place, what misses. */
char *told_words_of_times(void *arena, const struct told *told);
/* Both: the kind, then the charges, then the rest. */
char *told_words(void *arena, const char *text);

#endif
