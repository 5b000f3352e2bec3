/*
 * Sends the texts that renters asked for, when their time has come. What is due stands in rows, so
 * that a restart goes on where it was; they are looked at once a minute at the latest, so that a
 * clock that is set holds nothing up. What is said, and whether it is still worth saying, is
 * reminder_text.h's; each text goes through the outbox, put in with the row's new state. While an
 * alert holds that asks for no texts, for somebody else may read the phone, it waits.
 */
#ifndef REMINDERS_H
#define REMINDERS_H

#include "loaded.h"

struct clock;
struct event_base;
struct reminders;
struct store;
struct turn;

/* Borrowed, and outlive it. */
struct reminders_parts {
    struct event_base *base;
    const struct clock *clock;
    struct store *store;
    struct turn *turn;
    const struct loaded *loaded;
};

struct reminders *reminders_new(const struct reminders_parts *parts);
/* After turn_free(). NULL is fine. */
void reminders_free(struct reminders *reminders);

/* Another configuration from now on. */
void reminders_use(struct reminders *reminders, const struct loaded *loaded);

/* Something may be due: after each COMMIT, and at the start. */
void reminders_look(struct reminders *reminders);

/* Begins nothing new. */
void reminders_close(struct reminders *reminders);

/* Does what is due, for the transaction that is open. */
int reminders_send(struct store *store, void *arena, const struct loaded *loaded, int64_t now_utc_s,
                   struct fault *fault);

#endif
