/*
 * Texts in: each becomes a job of the turn, and its sender's gateway hears of it after COMMIT.
 *
 * With a store that is full, locked or broken the text is still read for signs: the first line goes
 * back and staff are called, unrecorded, once a sender in 5 minutes unless it is graver than what
 * was answered; the gateway is told to send it again.
 */
#ifndef INTAKE_H
#define INTAKE_H

#include "gateway.h"
#include "loaded.h"
#include "message.h"
#include "outbox_rows.h"

struct clock;
struct intake;
struct turn;

enum intake_outcome {
    INTAKE_STORED,    /* written and decided; its replies are in the outbox */
    INTAKE_REPEAT,    /* we have this text already; nothing was done */
    INTAKE_NOT_STORED /* nothing was written: the gateway should send it again */
};

/* Borrowed, and outlive the intake. */
struct intake_parts {
    struct turn *turn;
    const struct clock *clock;
    const struct loaded *loaded;
    /* Sends something at once without any record; see outbox_send_unrecorded(). */
    bool (*send_unrecorded)(void *data, const struct outbox_row *row);
    void *data; /* of send_unrecorded */
};

struct intake *intake_new(const struct intake_parts *parts);
/* After turn_free(). NULL is fine. */
void intake_free(struct intake *intake);

/* Another configuration and content from now on; between two turns. */
void intake_use(struct intake *intake, const struct loaded *loaded);

/*
 * Takes a text in. The message stays the caller's and must live until `done`, which is called once,
 * never from inside this call.
 */
void intake_take(struct intake *intake, const struct message *message,
                 void (*done)(void *data, enum intake_outcome outcome), void *data);

/* outbox.h's work_out_again; `intake` is the struct intake. */
int intake_work_out_again(void *intake, struct store *store, void *arena,
                          const struct outbox_row *row, struct fault *fault);

#endif
