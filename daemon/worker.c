/*
 * The thread tells the loop through an eventfd, so libevent itself needs no locks and stays in one
 * thread.
 */
#include "worker.h"

#include <assert.h>
#include <pthread.h>
#include <signal.h>
#include <stdbool.h>
#include <stdint.h>
#include <stdlib.h>
#include <sys/eventfd.h>
#include <unistd.h>

#include <event2/event.h>

#include "memory.h"

struct job_line {
    struct worker_job *first, **end;
};

struct worker {
    pthread_t thread;
    pthread_mutex_t lock; /* guards what follows, down to is_ending */
    pthread_cond_t added;
    struct job_line waiting, finished;
    bool is_ending;
    int bell;
    struct event *on_bell;
};

static void
line_init(struct job_line *line)
{
    line->first = NULL;
    line->end = &line->first;
}

static void
line_put(struct job_line *line, struct worker_job *job)
{
    job->next = NULL;
    *line->end = job;
    line->end = &job->next;
}

static struct worker_job *
line_take(struct job_line *line)
{
    struct worker_job *job = line->first;

    if (job != NULL) {
        line->first = job->next;
        if (line->first == NULL) {
            line->end = &line->first;
        }
    }
    return job;
}

static void
ring(struct worker *worker)
{
    const uint64_t one = 1;
    ssize_t written = write(worker->bell, &one, sizeof(one));

    assert(written == sizeof(one));
    (void)written;
}

static void *
run_thread(void *data)
{
    struct worker *worker = data;
    struct worker_job *job;

    pthread_mutex_lock(&worker->lock);
    while (!worker->is_ending) {
        job = line_take(&worker->waiting);
        if (job == NULL) {
            pthread_cond_wait(&worker->added, &worker->lock);
            continue;
        }
        pthread_mutex_unlock(&worker->lock);
        job->work(job);
        pthread_mutex_lock(&worker->lock);
        line_put(&worker->finished, job);
        ring(worker);
    }
    pthread_mutex_unlock(&worker->lock);
    return NULL;
}

static struct worker_job *
take_finished(struct worker *worker)
{
    struct worker_job *job;

    pthread_mutex_lock(&worker->lock);
    job = line_take(&worker->finished);
    pthread_mutex_unlock(&worker->lock);
    return job;
}

static void
tell_finished(struct worker *worker)
{
    struct worker_job *job;

    while ((job = take_finished(worker)) != NULL) {
        job->done(job);
    }
}

static void
on_bell(evutil_socket_t fd, short what, void *data)
{
    struct worker *worker = data;
    uint64_t rings;
    ssize_t got = read(fd, &rings, sizeof(rings));

    (void)what;
    (void)got; /* how often it rang does not matter */
    tell_finished(worker);
}

struct worker *
worker_new(struct event_base *base)
{
    struct worker *worker = memory_new(NULL, struct worker);
    sigset_t all, before;
    int rc;

    line_init(&worker->waiting);
    line_init(&worker->finished);
    pthread_mutex_init(&worker->lock, NULL);
    pthread_cond_init(&worker->added, NULL);
    worker->bell = eventfd(0, EFD_CLOEXEC | EFD_NONBLOCK);
    if (worker->bell < 0) {
        memory_must(NULL); /* fails only when the system has no room, as a thread does */
    }
    worker->on_bell =
        memory_must(event_new(base, worker->bell, EV_READ | EV_PERSIST, on_bell, worker));
    event_add(worker->on_bell, NULL);
    /* Signals are for the loop's thread. */
    sigfillset(&all);
    pthread_sigmask(SIG_SETMASK, &all, &before);
    rc = pthread_create(&worker->thread, NULL, run_thread, worker);
    pthread_sigmask(SIG_SETMASK, &before, NULL);
    if (rc != 0) {
        memory_must(NULL);
    }
    return worker;
}

void
worker_free(struct worker *worker)
{
    struct worker_job *job;

    if (worker == NULL) {
        return;
    }
    pthread_mutex_lock(&worker->lock);
    worker->is_ending = true;
    pthread_cond_signal(&worker->added);
    pthread_mutex_unlock(&worker->lock);
    pthread_join(worker->thread, NULL);
    tell_finished(worker);
    while ((job = line_take(&worker->waiting)) != NULL) {
        job->done(job);
    }
    event_free(worker->on_bell);
    close(worker->bell);
    pthread_cond_destroy(&worker->added);
    pthread_mutex_destroy(&worker->lock);
    talloc_free(worker);
}

void
worker_add(struct worker *worker, struct worker_job *job)
{
    pthread_mutex_lock(&worker->lock);
    line_put(&worker->waiting, job);
    pthread_cond_signal(&worker->added);
    pthread_mutex_unlock(&worker->lock);
}
