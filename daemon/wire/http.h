/*
 * The HTTP server: HTTP/1.1 on the event loop, in front of evhttp.
 *
 * What may be read in two ways is refused before evhttp sees a byte (http_head.h), a request must
 * be whole within one deadline, connections are capped, and every error is a problem document
 * (RFC 9457), never a page in HTML. A proxy is expected in front for TLS; absolute-form targets and
 * trailer fields are not accepted.
 *
 * A request is answered exactly once, now or any number of turns later. A client that has gone in
 * between, or a server that has been freed, makes the answer harmless, not wrong. The process must
 * ignore SIGPIPE.
 */
#ifndef HTTP_H
#define HTTP_H

#include <stddef.h>

#include "fault.h"

struct event_base;
struct http;
struct http_request;

/* What the limits themselves may be at most. */
enum { HTTP_HEADER_BYTES_MAX = 65536, HTTP_BODY_BYTES_MAX = 1048576 };

struct http_limits {
    int connections;  /* served at a time; a few more are told 503 */
    int request_s;    /* from the wait for a request to its last byte */
    int reply_s;      /* from our answer to its last byte taken by the client */
    int header_bytes; /* request line and fields with their line ends */
    int body_bytes;
};

/*
 * Who answers what. A path that ends in '/' also takes what stands below it: "/messages/" takes
 * "/messages/valley", whose tail is "valley" (never empty). Other paths match as they are. The
 * first route that matches wins; a known path asked by another method gets 405 with Allow, an
 * unknown one 404. GET answers HEAD too.
 */
struct http_route {
    const char *method; /* "GET", "POST", "PUT" or "DELETE" */
    const char *path;
    void (*on_request)(struct http_request *request, void *data);
    void *data;
};

/* `routes` is copied, what it points at is not. Free with http_free(). */
struct http *http_new(struct event_base *base, const struct http_limits *limits,
                      const struct http_route *routes, size_t route_count);

/* Listens; port 0 takes any free one. *actual_port may be NULL. Returns 0, or -1 with a fault. */
int http_listen(struct http *http, const char *address, int port, int *actual_port,
                struct fault *fault);

/* New limits from the next connection or request on; for a configuration that was read again. */
void http_set_limits(struct http *http, const struct http_limits *limits);

/*
 * No new connections; requests in hand are still read and answered. `on_idle` is called once, from
 * the loop, when the last of them has its answer.
 */
void http_stop(struct http *http, void (*on_idle)(void *data), void *data);

/* Drops all connections. Requests not answered yet may still be answered, to nobody. NULL is fine.
 */
void http_free(struct http *http);

/* How many connections are open. */
int http_connections(const struct http *http);

/*
 * What was asked. Valid, whatever happens to the client, until the request is answered; after that
 * the request is gone.
 */
const char *http_request_method(const struct http_request *request);
const char *http_request_target(const struct http_request *request); /* "/messages/valley?x=1" */
const char *http_request_path(const struct http_request *request);   /* "/messages/valley" */
const char *http_request_tail(const struct http_request *request);   /* "valley"; "" if none */
const char *http_request_query(const struct http_request *request);  /* "x=1"; "" if none */
/* The value of the first field of this name, in any case; NULL if it was not sent. */
const char *http_request_header(const struct http_request *request, const char *name);
/* Raw bytes, a NUL behind them. */
const char *http_request_body(const struct http_request *request, size_t *length);
/* "http://HOST/TARGET" from the Host field, or PUBLIC/TARGET; in the request's own memory. */
const char *http_request_url(struct http_request *request, const char *public_url);
/* A talloc context that lives as long as the request. */
void *http_request_arena(struct http_request *request);

/* A field for the answer that is still to come ("Retry-After", "WWW-Authenticate"). */
void http_reply_header(struct http_request *request, const char *name, const char *value);

/* Answers; `content_type` NULL for none. */
void http_reply(struct http_request *request, int status, const char *content_type,
                const char *bytes, size_t length);

/*
 * Answers with a problem (see problem.h). `title` NULL: the status's own; `pointer` NULL or the
 * JSON Pointer of what is wrong in the body. 503 gets a Retry-After if none was set.
 */
void http_problem(struct http_request *request, int status, const char *title, const char *detail,
                  const char *pointer);
/* The same for several things that are wrong at once. */
struct problem_error;
void http_problem_of_all(struct http_request *request, int status, const char *detail,
                         const struct problem_error *errors, size_t count);

#endif
