/*
 * A stage for the tests of what is sent: outbox, alerts and delivery reports on a real store in
 * memory, with a gateway on loopback in the same loop. The clock is played fast, so that waits of
 * minutes pass in milliseconds; a test runs the loop until what it waits for is in the store.
 */
#ifndef OUTBOX_STAGE_H
#define OUTBOX_STAGE_H

#include <check.h>
#include <event2/event.h>

#include "alerts.h"
#include "clock.h"
#include "deliveries.h"
#include "outbox.h"
#include "outbox_rows.h"
#include "store.h"

enum { START_UTC_S = 1780272000, SENT_MAX = 64 };

#define RENTER "+12085550111"
#define ROBIN "+12085550190"
#define KIM "+12085550191"

extern struct event_base *base;
extern struct config config;
extern struct gateway gateway;
extern struct clock *played;
extern struct store *store;
extern struct outbox *outbox;
extern struct alerts *alerts;
extern struct deliveries *deliveries;

/* What the gateway was asked to send, and what it answers. */
struct sent {
    char body[512];
    char key[64];
};
extern struct sent sent[SENT_MAX];
extern size_t sent_count;
extern int answer_status;
extern int refuse_first; /* that many get answer_status, the rest 200 */

/* A checked fixture. */
void stage_begin(void);
void stage_end(void);

/* Puts a text into the outbox; what `row` leaves open is filled in. Returns its id. */
int64_t add(struct outbox_new row);

/* A reply to the renter. */
int64_t add_reply(const char *text, enum urgency urgency);

/* How many texts wait. */
int64_t waiting(void);

/* Whether a text with this piece was sent to this phone. */
bool was_sent(const char *to, const char *piece);

/* Nothing waits and nothing is under way. */
bool is_settled(void);

/* Runs the loop until a condition holds. Meson's time-out ends a test for which it never does. */
#define run_until(condition)                                                                       \
    while (!(condition)) {                                                                         \
        event_base_loop(base, EVLOOP_ONCE);                                                        \
    }

#endif
