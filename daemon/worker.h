/*
 * The worker: one thread for what is slow (building a kb, searches, hashing a password), so that
 * no callback holds the loop for more than 20 ms. Jobs run one at a time, in order.
 */
#ifndef WORKER_H
#define WORKER_H

struct event_base;
struct worker;

struct worker_job {
    void (*work)(struct worker_job *job); /* in the thread; touches only what the job owns */
    void (*done)(struct worker_job *job); /* on the loop, once; may free the job */
    struct worker_job *next;              /* the worker's own */
};

struct worker *worker_new(struct event_base *base);

/*
 * Waits for the job that runs, if any, and ends the thread. Jobs that are not done yet are told so
 * by done() without work() having run, or after it. NULL is fine.
 */
void worker_free(struct worker *worker);

/* Adds a job, which stays the caller's memory until done(). done() never runs inside this call. */
void worker_add(struct worker *worker, struct worker_job *job);

#endif
