/*
 * One try to send a row of the outbox by its road. Of an e-mail about an alert first the hash of
 * its link is written, in a job of the turn, and only then the e-mail goes out.
 */
#ifndef SENDING_H
#define SENDING_H

#include "outbox_rows.h"

struct clock;
struct config;
struct mailer;
struct sending;
struct transfers;
struct turn;

/* All borrowed, and outlive the sendings. The configuration may be another one for each step. */
struct sending_parts {
    const struct clock *clock;
    struct turn *turn;
    struct transfers *transfers;
    struct mailer *mailer;
    const struct config *config;
};

/* What came of it, valid until the callback returns. */
struct sending_result {
    enum outbox_event event; /* accepted, refused or tried again later */
    int64_t retry_after_s;   /* what the far side asked to wait, or 0 */
    const char *detail;      /* "HTTP 503" */
    const char *gateway_id;  /* the far side's id, or NULL */
    bool is_held_up;         /* nothing was tried: our own store does not take the link */
};

typedef void sending_done(const struct sending_result *result, void *cookie);

/*
 * Starts a try; `parts` and `row` must live until it is done. `done` is called once, from the loop,
 * never from inside this call. NULL with a fault if it cannot be started. Without a turn
 * (parts->turn NULL) nothing is written and an e-mail has no link.
 */
struct sending *sending_start(const struct sending_parts *parts, const struct outbox_row *row,
                              sending_done *done, void *cookie, struct fault *fault);

/* Gives it up without callback. Only once turn and mailer are freed, which give up theirs. */
void sending_cancel(struct sending *sending);

#endif
