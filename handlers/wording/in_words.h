/*
 * For who is read to or reads by ear: signs and short forms as words. The last step of saying, so
 * that no text has to be written twice. Pure.
 */
#ifndef IN_WORDS_H
#define IN_WORDS_H

#include "words.h"

/* "Plan on 2 h 15 min, ~80%" as "Plan on 2 hours 15 minutes, about 80 percent", in `arena`; `text`
 * is plain (parts_plain()), and so is what comes back. Numbers, clock times, phones and addresses
 * stay as they are. */
char *in_words(void *arena, enum language language, const char *text);

#endif
