/*
 * Reactions: a phone that taps a heart on our text may send "Liked "Call 911 now…"", a copy of our
 * own words in quotes. Nothing in the copy is news; what is added to it may be.
 */
#ifndef REACTION_H
#define REACTION_H

/*
 * The text with the quoted copy made blanks, byte for byte, in `arena`; the text itself if it does
 * not begin as a reaction or the quote does not end: in doubt everything is read.
 */
const char *reaction_without_copy(void *arena, const char *text);

#endif
