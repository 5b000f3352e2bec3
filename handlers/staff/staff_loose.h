/*
 * What staff text without a word of ours: nobody gets it, and half asleep they may believe that
 * somebody did. Private to staff*.c.
 */
#ifndef STAFF_LOOSE_H
#define STAFF_LOOSE_H

#include "asked.h"
#include "verdict.h"

/* "I take 5", "ill go to gwen", and nothing else: the alert that they take; or NULL. */
const struct open_alert *staff_loose_taken(const struct asked *whole);

/* From token `at` on whoever reads it is spoken to: "you" or "if", or it or a part of it begins as
 * what is bidden or asked does: "sit up", "is the pain gone". */
bool staff_loose_speaks_to_somebody(const struct tokens *tokens, size_t at);

/*
 * They write to a renter and have left TALK out: "1 stay calm help is coming", where *to is the
 * alert of the number, or without it by who has one in hand: "sit up, they are coming", *to is NULL
 * then. Nothing in it is of themselves.
 */
bool staff_loose_to_renter(const struct asked *whole, const struct open_alert **to);

/*
 * Says what to text: MINE and whose it is for "ok" or "on my way" while one waits for somebody;
 * that words were NOT sent to the renter; that an alert stays open without an outcome; else the
 * list of words.
 */
void staff_loose_decide(const struct asked *whole, struct verdict *verdict);

#endif
