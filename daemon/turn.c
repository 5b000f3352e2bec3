#include "turn.h"

#include <stdbool.h>

#include <event2/event.h>

#include "memory.h"
#include "store.h"

/* While another process writes, an import say, the turn waits for it without holding the loop. */
enum { BUSY_WAIT_MS = 20, BUSY_TRIES_MAX = 100 };

struct turn_listener {
    void (*callback)(void *data);
    void *data;
};

struct turn {
    struct store *store;
    struct event *event;
    struct turn_job *first, **last; /* jobs that wait, in order of arrival */
    int busy_tries;
    bool is_broken; /* the last transaction failed */
    struct turn_listener *listeners;
    size_t listener_count;
};

/* What became of one job of the turn that is being written. */
struct turn_result {
    struct turn_job *job;
    bool is_written;
    struct fault fault;
};

struct turn_work {
    void *arena;
    struct turn_result *results;
    size_t count;
};

static void
forget_jobs(struct turn *turn)
{
    turn->first = NULL;
    turn->last = &turn->first;
}

/* The jobs that wait become the work of this turn; what is added from now on is of the next. */
static struct turn_work
take_jobs(struct turn *turn)
{
    struct turn_work work = {.arena = memory_must(talloc_new(NULL))};
    struct turn_job *job;

    for (job = turn->first; job != NULL; job = job->next) {
        work.results = memory_grow(work.arena, struct turn_result, work.results, work.count);
        work.results[work.count++] = (struct turn_result){.job = job};
    }
    forget_jobs(turn);
    return work;
}

/* 0 also for a job that rolled back alone; -1 if the transaction is lost. */
static int
write_job(struct store *store, void *arena, struct turn_result *result, struct fault *fault)
{
    struct fault ignored;

    if (store_save(store, fault) != 0) {
        return -1;
    }
    if (result->job->write(result->job, store, arena, &result->fault) == 0) {
        result->is_written = true;
        return store_release(store, fault);
    }
    *fault = result->fault; /* if the transaction went with it (a full disk), this is why */
    return store_back(store, &ignored);
}

/* Writes all jobs after BEGIN. */
static int
write_all(struct store *store, const struct turn_work *work, struct fault *fault)
{
    size_t i;

    for (i = 0; i < work->count; i++) {
        if (write_job(store, work->arena, &work->results[i], fault) != 0) {
            store_rollback(store);
            return -1;
        }
    }
    if (store_commit(store, fault) != 0) {
        store_rollback(store);
        return -1;
    }
    return 0;
}

static void
tell(struct turn *turn, struct turn_work *work, bool is_broken, const struct fault *fault)
{
    bool any = false;
    size_t i;

    for (i = 0; i < work->count; i++) {
        struct turn_result *result = &work->results[i];

        if (is_broken) {
            result->job->done(result->job, TURN_STORE_BROKEN, fault);
        } else if (result->is_written) {
            any = true;
            result->job->done(result->job, TURN_WRITTEN, NULL);
        } else {
            result->job->done(result->job, TURN_ROLLED_BACK, &result->fault);
        }
    }
    talloc_free(work->arena);
    for (i = 0; any && i < turn->listener_count; i++) {
        turn->listeners[i].callback(turn->listeners[i].data);
    }
}

static void
on_turn(evutil_socket_t unused, short what, void *cookie)
{
    const struct timeval soon = {.tv_usec = BUSY_WAIT_MS * 1000};
    struct turn *turn = cookie;
    struct turn_work work;
    struct fault fault = {""};
    bool is_broken;

    (void)unused;
    (void)what;
    is_broken = store_begin(turn->store, &fault) != 0;
    if (is_broken && store_is_busy(turn->store) && turn->busy_tries < BUSY_TRIES_MAX) {
        turn->busy_tries++;
        event_add(turn->event, &soon);
        return;
    }
    turn->busy_tries = 0;
    work = take_jobs(turn);
    if (!is_broken) {
        is_broken = write_all(turn->store, &work, &fault) != 0;
    }
    turn->is_broken = is_broken;
    tell(turn, &work, is_broken, &fault);
}

struct turn *
turn_new(struct event_base *base, struct store *store)
{
    struct turn *turn = memory_new(NULL, struct turn);

    turn->store = store;
    turn->event = memory_must(event_new(base, -1, 0, on_turn, turn));
    forget_jobs(turn);
    return turn;
}

void
turn_free(struct turn *turn)
{
    static const struct fault ended = {"the program ends"};

    if (turn == NULL) {
        return;
    }
    event_free(turn->event);
    turn->event = NULL;
    while (turn->first != NULL) {
        struct turn_work work = take_jobs(turn);

        tell(turn, &work, true, &ended);
    }
    talloc_free(turn);
}

void
turn_add(struct turn *turn, struct turn_job *job)
{
    bool is_first = turn->first == NULL;

    job->next = NULL;
    *turn->last = job;
    turn->last = &job->next;
    if (is_first && turn->event != NULL) {
        /* Goes behind the callbacks that are active already, so it runs once they all have. */
        event_active(turn->event, EV_TIMEOUT, 0);
    }
}

void
turn_on_written(struct turn *turn, void (*callback)(void *data), void *data)
{
    turn->listeners =
        memory_grow(turn, struct turn_listener, turn->listeners, turn->listener_count);
    turn->listeners[turn->listener_count++] = (struct turn_listener){callback, data};
}

bool
turn_store_is_broken(const struct turn *turn)
{
    return turn->is_broken;
}
