/*
 * A turn: everything that became ready together in one turn of the loop is written in one
 * transaction, and only then are answers let out.
 *
 * Whoever has something to write adds a job. The first job of a turn activates one event, which
 * runs after the turn's other callbacks: BEGIN, each job in a SAVEPOINT in order of arrival,
 * COMMIT, then each job is told. A job that fails rolls back alone. If BEGIN or COMMIT fails, every
 * job hears it and nothing in memory may have changed.
 */
#ifndef TURN_H
#define TURN_H

#include <stdbool.h>

#include "fault.h"

struct event_base;
struct store;
struct turn;

enum turn_outcome { TURN_WRITTEN, TURN_ROLLED_BACK, TURN_STORE_BROKEN };

struct turn_job {
    /* Reads and writes the store; `arena` is dropped after done(). 0, or -1 to roll back. */
    int (*write)(struct turn_job *job, struct store *store, void *arena, struct fault *fault);
    /* Told once, after COMMIT or its failure; may free the job and add new ones. */
    void (*done)(struct turn_job *job, enum turn_outcome outcome, const struct fault *fault);
    struct turn_job *next; /* the turn's own */
};

struct turn *turn_new(struct event_base *base, struct store *store);
/* Jobs that still wait are told TURN_STORE_BROKEN. NULL is fine. */
void turn_free(struct turn *turn);

/* Adds a job, the caller's memory until done() is called; done() never runs inside turn_add(). */
void turn_add(struct turn *turn, struct turn_job *job);

/* Whether the last transaction failed; false before the first. */
bool turn_store_is_broken(const struct turn *turn);

/* Called after each COMMIT that wrote something; outbox and alerts look at what is due. */
void turn_on_written(struct turn *turn, void (*callback)(void *data), void *data);

#endif
