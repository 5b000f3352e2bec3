/*
 * One run of the fault tests: a store is opened, texts are taken through the intake and the turn as
 * the daemon does it, sends are settled, the store is closed. What the outside was told meanwhile
 * is written into a ledger.
 */
#ifndef FAULT_RUN_H
#define FAULT_RUN_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

struct loaded;

enum { TEXTS = 4, A_TURN = 2, SENT_MAX = 64 };

/* What they say; the gateway's ids are t-0, t-1, … */
extern const char *const fault_words[TEXTS];

struct ledger {
    bool answered[TEXTS];   /* the gateway got its 200 */
    int64_t sent[SENT_MAX]; /* outbox rows that were settled as accepted */
    size_t sent_count;
    bool broke; /* the run met its fault and went on */
};

/* The first `texts` texts, A_TURN of them to a turn. False if the store could not be opened. */
bool fault_run(const char *database, const struct loaded *loaded, int texts, struct ledger *ledger);

#endif
