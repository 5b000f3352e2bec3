/* Answers that begin or end alike, put into one reply. Pure. */
#ifndef SAID_ONCE_H
#define SAID_ONCE_H

/*
 * `text` without the sentences that stand in `said`, or begin or go on one that does ("A person was
 * alerted." after "A person was alerted and will call you."). A question stays with its answer
 * ("Worse? Call 911 now."): the two are one sentence here. Lives in `arena`.
 */
char *said_once(void *arena, const char *said, const char *text);

#endif
