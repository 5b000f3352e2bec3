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

/*
 * Says what to text: MINE and whose it is for "ok" or "on my way" while one waits for somebody;
 * that words were NOT sent to the renter; that an alert stays open without an outcome; else the
 * list of words.
 */
void staff_loose_decide(const struct asked *whole, struct verdict *verdict);

#endif
