/*
 * Connections, in front of evhttp; private to the HTTP server (http.h). Hands over whole,
 * well-formed requests only, keeps the deadlines and the cap, and ends connections.
 */
#ifndef HTTP_FRONT_H
#define HTTP_FRONT_H

#include "fault.h"
#include "http.h"

struct evbuffer;
struct evhttp_connection;
struct evhttp_request;
struct http_connection;
struct http_front;

/* A request is there. If `status` is not 0 it is a stand-in for one that was refused. */
typedef void http_front_on_request(struct http_connection *connection,
                                   struct evhttp_request *request, int status, const char *detail,
                                   void *data);

struct http_front *http_front_new(struct event_base *base, const struct http_limits *limits,
                                  http_front_on_request *on_request, void *data);
int http_front_listen(struct http_front *front, const char *address, int port, int *actual_port,
                      struct fault *fault);
void http_front_set_limits(struct http_front *front, const struct http_limits *limits);
void http_front_stop(struct http_front *front, void (*on_idle)(void *data), void *data);
void http_front_free(struct http_front *front);
int http_front_connections(const struct http_front *front);

/* Sends the answer to a request whose client is still there. */
void http_front_answer(struct http_connection *connection, struct evhttp_request *request,
                       int status, struct evbuffer *body);

#endif
