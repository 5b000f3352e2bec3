/* From answers to the texts that go out. */
#ifndef REPLY_H
#define REPLY_H

#include "asked.h"
#include "verdict.h"

/*
 * Composes verdict->replies from the answers and sets where the conversation stands after them:
 * joins what fits into 3 parts, with an answer's extras as far as that takes no more than 2, says
 * in a conversation's first reply that it is automatic, says when a late text was written, ends
 * what is clinical with when to call the emergency number. An emergency is two replies, and of
 * other answers nothing. Numbers that opted out get emergency lines only.
 */
void reply_compose(const struct asked *whole, struct verdict *verdict);

#endif
