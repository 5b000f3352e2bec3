/*
 * The outbox: sends what is stored, most urgent first, each row by its road.
 *
 * A text is sent only once its row is committed, and each outcome is a job of the turn. While a
 * send or its outcome is in hand the row is not sent again, also if the outcome cannot be written:
 * it is kept and written later. After a crash a row that was being sent is sent again, with the
 * same idempotency key.
 *
 * What cannot be sent ends in front of a person: see not_reached.h.
 */
#ifndef OUTBOX_H
#define OUTBOX_H

#include <stdbool.h>
#include <stddef.h>

#include "config.h"
#include "outbox_rows.h"

struct clock;
struct event_base;
struct mailer;
struct outbox;
struct transfers;
struct turn;

/* Borrowed, and outlive the outbox. */
struct outbox_parts {
    struct event_base *base;
    const struct clock *clock;
    struct store *store;
    struct turn *turn;
    struct transfers *transfers;
    struct mailer *mailer;
    const struct config *config;
    /* A reply has gone stale unsent: works it out again, in the transaction that is open. */
    int (*work_out_again)(void *data, struct store *store, void *arena,
                          const struct outbox_row *row, struct fault *fault);
    void *data;
};

struct outbox *outbox_new(const struct outbox_parts *parts);
/* Abandons what is in hand; rows stay due. After turn_free() and mailer_free(), before
 * transfers_free(). NULL is fine. */
void outbox_free(struct outbox *outbox);

/* Another configuration from now on; the old one is no longer looked at. */
void outbox_use(struct outbox *outbox, const struct config *config);

/* Something may be due: after each COMMIT, and at the start. It is looked at once a turn. */
void outbox_look(struct outbox *outbox);

/*
 * For a store that is broken: sends this at once by its road, though it is no row (road, gateway,
 * to, body and urgency are read), and a few times more if it fails. What becomes of it is only
 * logged. False if it cannot even be tried.
 */
bool outbox_send_unrecorded(struct outbox *outbox, const struct outbox_row *row);

/* Begins nothing new; what is in hand goes on. */
void outbox_close(struct outbox *outbox);
/* Sends and outcomes in hand. After outbox_close(), 0 means that one may leave. */
size_t outbox_in_hand(const struct outbox *outbox);

#endif
