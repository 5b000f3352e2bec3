/*
 * HTTP transfers on a libevent loop: the one place that speaks to libcurl.
 *
 * Every callback of libcurl runs inside the loop of the base handed to transfers_new(); nothing
 * here blocks. A transfer that is over its time is abandoned, and a name look-up that still hangs
 * is left to its own thread (see transfers_free()).
 *
 * Before the first transfers_new() and while the process has one thread, the program calls
 * transfers_prepare() once, which also makes it ignore SIGPIPE. Redirects are not followed, no
 * proxy of the environment is used, and only http and https are spoken. Nothing is ever sent again
 * unasked: each transfer has a connection of its own.
 */
#ifndef TRANSFER_H
#define TRANSFER_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "fault.h"

struct event_base;
struct transfer;
struct transfers;

/* Bounds of one set of transfers; all of them at least 1. */
struct transfer_limits {
    size_t running;      /* transfers at the same time; further ones wait in line */
    size_t waiting;      /* length of that line; transfer_start() refuses past it */
    size_t body_bytes;   /* of an answer's body; what is longer is cut off, not an error */
    size_t header_bytes; /* of an answer's headers in all; past it the transfer fails */
};

/* What is to be sent. All of it is copied by transfer_start(). */
struct transfer_request {
    const char *method; /* "POST"; sent as it stands, with the body below, however long */
    const char *url;
    const char *const
        *headers;     /* lines "Name: value", ended by NULL; NULL for none. No CR, no LF */
    const void *body; /* may be NULL if body_size is 0 */
    size_t body_size;
    long timeout_ms; /* >= 1; from the moment it leaves the line to the last byte of the answer */
};

/*
 * What came of it. Pointers are valid until the callback returns; none of the strings is NULL.
 *
 * status is 0 if no complete answer came, and then error says why. It never says whether the
 * far side acted on the request: after the bytes left, only an idempotency key can tell.
 */
struct transfer_result {
    int status;               /* 100 to 999, or 0 */
    const char *error;        /* "" if status is not 0 */
    bool was_sent;            /* some of the request left this machine: it may have been acted on */
    bool is_cut;              /* the body was longer than body_bytes; status still counts */
    int64_t retry_after_s;    /* what the far side asked to wait (RFC 9110, 10.2.3), or 0 */
    const char *content_type; /* field value, or "" */
    const char *body;         /* body_size bytes, and a 0 behind them */
    size_t body_size;
};

/*
 * Called once for each started transfer, from the loop and never from inside transfer_start(),
 * transfer_cancel() or transfers_free(). The handle is gone when it is called. It may start and
 * cancel transfers, but must not free the set.
 */
typedef void transfer_done(const struct transfer_result *result, void *cookie);

/* Returns 0, or -1 with a fault if libcurl cannot start up or lacks a resolver off the loop. */
int transfers_prepare(struct fault *fault);

/* The set is the caller's, to be freed with transfers_free() before the base. Cannot fail. */
struct transfers *transfers_new(struct event_base *base, const struct transfer_limits *limits);

/*
 * Sends a request, or puts it in line. Returns the transfer, good for transfer_cancel() until its
 * callback is called; or NULL if the line is full, the set is closed or a header line holds a
 * line break. A bad URL is told to the callback.
 */
struct transfer *transfer_start(struct transfers *transfers, const struct transfer_request *request,
                                transfer_done *done, void *cookie);

/* Gives a transfer up; its callback is not called. */
void transfer_cancel(struct transfer *transfer);

/* Refuses further transfers. Those that run or wait go on; the callbacks come as ever. */
void transfers_close(struct transfers *transfers);

/* Those that run and those that wait. After transfers_close(), 0 means that one may leave. */
size_t transfers_pending(const struct transfers *transfers);

/*
 * Abandons what still runs or waits, without callbacks, and frees the set; NULL is fine. Does not
 * wait for resolver threads: these touch nothing of ours and end with the process.
 */
void transfers_free(struct transfers *transfers);

#endif
