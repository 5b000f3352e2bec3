/*
 * An alert in someone's hands: taking, passing on and closing it, by whatever road they say so. One
 * taking quiets all roads: calls that wait to be sent about it are dropped. What was written with
 * its renter goes with it. For the transaction that is open; the time is the hand's.
 *
 * A mains failure that several tell is taken and passed on whole, by the number of any of them;
 * closed by the number that it is called by for all of whom staff were told, and for one renter by
 * theirs.
 */
#ifndef ALERT_HANDS_H
#define ALERT_HANDS_H

#include "calls.h"

enum hands_result {
    HANDS_DONE,
    HANDS_ANOTHERS, /* someone else has it, and is not overdue with the outcome */
    HANDS_NOT_OPEN  /* it is closed, or there is none of this number */
};

/* On HANDS_ANOTHERS *holder, if not NULL, is their phone, in the arena. Whoever had it before hears
 * who has it now. Returns 0 or -1. */
int alert_take(const struct caller *caller, int64_t number, const struct alert_hand *hand,
               enum hands_result *result, const char **holder, struct fault *fault);

/*
 * Takes it and passes it on: the colleague `to` is called now and may take it. Until they do it is
 * in the hands of who passed it on; if they do not within the time for the next in line, both are
 * called again.
 */
int alert_pass(const struct caller *caller, int64_t number, const struct alert_hand *hand,
               const char *to, enum hands_result *result, struct fault *fault);

/* `note` is the outcome and never empty: no alert ends without one. Any of staff may close. */
int alert_close(const struct caller *caller, int64_t number, const struct alert_hand *hand,
                const char *note, enum hands_result *result, struct fault *fault);
/* The same for this renter alone, whoever is called with them. */
int alert_close_one(const struct caller *caller, int64_t number, const struct alert_hand *hand,
                    const char *note, enum hands_result *result, struct fault *fault);

/* How staff are told about it in a sentence, in `arena`: "Alert 12 is yours." */
const char *alert_hands_words(void *arena, const struct config *config, int64_t number,
                              bool is_closing, enum hands_result result, const char *holder);

#endif
