/*
 * What has come of a request and has not been shown to evhttp; private to http_front.c. Judges it
 * no more often than it must: a client that sends byte by byte costs no more than any other.
 */
#ifndef HTTP_HELD_H
#define HTTP_HELD_H

#include "http.h"
#include "http_head.h"

struct evbuffer;

struct http_held {
    struct evbuffer *bytes;
    struct http_head head; /* once the head is whole: head_bytes above 0 */
    struct http_chunks chunks;
};

void http_held_init(struct http_held *held);
void http_held_release(struct http_held *held);
/* The request has been taken out; what is left is the start of the next. */
void http_held_next(struct http_held *held);

/* Judges what there is; *length is what the whole request measures. */
enum http_head_state http_held_judge(struct http_held *held, const struct http_limits *limits,
                                     size_t *length);

/* False if what came after `before` bytes cannot change the judgement: no line has ended. */
bool http_held_may_settle(const struct http_held *held, const struct http_limits *limits,
                          size_t before);

/* Most bytes that one request can measure. */
size_t http_held_max(const struct http_limits *limits);

#endif
