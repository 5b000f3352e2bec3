/*
 * evhttp 2.1.12 is lenient (two Content-Length, a blank before the colon, bare LF), restarts its
 * timeout with every byte, and answers errors in HTML before anyone is asked. So the input of each
 * connection is emptied into `held` as it comes, until http_head.c has passed all of a request;
 * then exactly that request is put back for evhttp to read. What is refused is swapped for a fixed
 * request, which evhttp parses without fault and whose answer is the problem; evhttp's own error
 * pages are thereby out of reach. (A bufferevent filter will not do: evhttp takes bytes that have
 * only reached the inner buffer for sent, closes, and loses the answer.)
 *
 * evhttp tells nobody when it drops a connection without a request, so each socket has a second
 * reference, given up by the sweep once evhttp has let go. In between the socket is drained, for
 * closing on a client that still sends would reset away the answer.
 */
#include "http_front.h"

#include <arpa/inet.h>
#include <errno.h>
#include <stdbool.h>
#include <string.h>
#include <sys/queue.h>
#include <sys/socket.h>

#include <event2/buffer.h>
#include <event2/bufferevent.h>
#include <event2/event.h>
#include <event2/http.h>
#include <event2/listener.h>

#include "http_held.h"
#include "memory.h"

enum {
    SPARE_CONNECTIONS = 16, /* over the limit, only to be told 503 */
    SWEEP_US = 100000,
    DRAIN_SWEEPS_MAX = 10
};

enum connection_state { STATE_READING, STATE_CALLED, STATE_REPLYING };

struct http_connection {
    LIST_ENTRY(http_connection) next;
    struct http_front *front;
    struct bufferevent *socket; /* own reference beside evhttp's */
    struct http_held held;      /* came, not yet shown to evhttp */
    struct event *deadline;
    struct event *kick; /* looks again at what is held */
    enum connection_state state;
    bool is_busy; /* inside on_bytes: it changes the buffer it watches */
    int drain_turns;
    bool was_continued; /* 100 Continue has been said */
    int refusal_status; /* 0: none */
    const char *refusal_detail;
};

struct http_front {
    struct event_base *base;
    struct evhttp *evhttp;
    struct evhttp_bound_socket *socket;
    struct evconnlistener *listener; /* of `socket`; NULL while not listening */
    struct http_limits limits;
    http_front_on_request *on_request;
    void *data;
    int connections; /* those being drained included */
    LIST_HEAD(connection_list, http_connection) open;
    struct event *sweep;
    bool is_stopping;
    void (*on_idle)(void *data);
    void *on_idle_data;
};

static const char refused_request[] =
    "GET / HTTP/1.1\r\nHost: refused\r\nConnection: close\r\n\r\n";

static void
arm(struct event *event, int seconds)
{
    struct timeval wait = {.tv_sec = seconds};

    (void)event_add(event, &wait);
}

/* Runs on while there are connections. */
static void
sweep_later(struct http_front *front)
{
    struct timeval wait = {.tv_usec = SWEEP_US};

    if (!evtimer_pending(front->sweep, NULL)) {
        (void)event_add(front->sweep, &wait);
    }
}

/* Evhttp sees the end and lets go; the sweep does the rest. */
static void
hang_up(struct http_connection *connection)
{
    (void)shutdown(bufferevent_getfd(connection->socket), SHUT_RDWR);
}

/* The one place where a connection ends, whoever ended it. */
static void
connection_free(struct http_connection *connection)
{
    struct http_front *front = connection->front;

    LIST_REMOVE(connection, next);
    event_free(connection->deadline);
    event_free(connection->kick);
    http_held_release(&connection->held);
    (void)bufferevent_decref(connection->socket); /* the last: closes */
    talloc_free(connection);
    front->connections--;
}

/* bufferevent_free() takes the callbacks off; evhttp never does so otherwise. */
static bool
is_let_go(const struct http_connection *connection)
{
    bufferevent_event_cb on_event = NULL;

    bufferevent_getcb(connection->socket, NULL, NULL, &on_event, NULL);
    return on_event == NULL;
}

/* True once the client has closed too, or will not stop. */
static bool
is_drained(struct http_connection *connection)
{
    char rubbish[16384];
    ssize_t got = -1;
    int i;

    for (i = 0; i < 16; i++) { /* bounds the work of a turn */
        got = recv(bufferevent_getfd(connection->socket), rubbish, sizeof(rubbish), MSG_DONTWAIT);
        if (got <= 0) {
            break;
        }
    }
    return got == 0 || (got < 0 && errno != EAGAIN) || ++connection->drain_turns > DRAIN_SWEEPS_MAX;
}

/* Ends a connection that evhttp has freed, as soon as its client has closed as well. */
static void
end_if_let_go(struct http_connection *connection)
{
    if (!is_let_go(connection)) {
        return;
    }
    (void)event_del(connection->deadline);
    (void)bufferevent_disable(connection->socket, EV_READ | EV_WRITE);
    if (is_drained(connection)) {
        connection_free(connection);
    }
}

static void
on_sweep(evutil_socket_t fd, short what, void *data)
{
    struct http_front *front = data;
    struct http_connection *connection, *following;
    void (*on_idle)(void *) = front->on_idle;

    (void)fd;
    (void)what;
    for (connection = LIST_FIRST(&front->open); connection != NULL; connection = following) {
        following = LIST_NEXT(connection, next);
        end_if_let_go(connection);
    }
    if (front->listener != NULL &&
        front->connections < front->limits.connections + SPARE_CONNECTIONS) {
        (void)evconnlistener_enable(front->listener); /* no harm if it is */
    }
    if (!LIST_EMPTY(&front->open)) {
        sweep_later(front);
    } else if (front->is_stopping && on_idle != NULL) {
        front->on_idle = NULL;
        on_idle(front->on_idle_data); /* may free us */
    }
}

static void
connection_refuse(struct http_connection *connection, int status, const char *detail)
{
    connection->refusal_status = status;
    connection->refusal_detail = detail;
}

/* Shows evhttp one request. At the front: the end of a socket's input is closed to us. */
static void
hand_over(struct http_connection *connection, struct evbuffer *request)
{
    (void)evbuffer_prepend_buffer(bufferevent_get_input(connection->socket), request);
    connection->state = STATE_CALLED;
    (void)event_del(connection->deadline);
}

/* Puts the fixed request in place of what came. */
static void
hand_over_refusal(struct http_connection *connection)
{
    (void)evbuffer_drain(connection->held.bytes, evbuffer_get_length(connection->held.bytes));
    (void)evbuffer_add(connection->held.bytes, refused_request, sizeof(refused_request) - 1);
    hand_over(connection, connection->held.bytes);
}

static void
hand_over_whole(struct http_connection *connection, size_t length)
{
    struct evbuffer *request = memory_must(evbuffer_new());

    (void)evbuffer_remove_buffer(connection->held.bytes, request, length);
    hand_over(connection, request);
    evbuffer_free(request);
}

/* Past evhttp, which keeps writing off and would take the write for its own; nothing is queued. */
static void
say_continue(struct http_connection *connection)
{
    static const char text[] = "HTTP/1.1 100 Continue\r\n\r\n";

    connection->was_continued = true;
    (void)send(bufferevent_getfd(connection->socket), text, sizeof(text) - 1,
               MSG_DONTWAIT | MSG_NOSIGNAL);
}

/* Looks at what is held while a request is awaited, and hands over what is settled. */
static void
judge_held(struct http_connection *connection)
{
    enum http_head_state state;
    size_t length = 0;

    if (connection->refusal_status != 0) {
        hand_over_refusal(connection);
        return;
    }
    state = http_held_judge(&connection->held, &connection->front->limits, &length);
    if (state == HTTP_HEAD_WHOLE) {
        hand_over_whole(connection, length);
    } else if (state == HTTP_HEAD_REFUSED) {
        connection_refuse(connection, connection->held.head.status, connection->held.head.detail);
        hand_over_refusal(connection);
    } else if (connection->held.head.head_bytes > 0 && connection->held.head.expects &&
               !connection->was_continued) {
        say_continue(connection);
    }
}

/* Bytes have come in, and evhttp has not seen them yet. */
static void
on_bytes(struct evbuffer *input, const struct evbuffer_cb_info *info, void *data)
{
    struct http_connection *connection = data;
    size_t before = evbuffer_get_length(connection->held.bytes);

    if (info->n_added == 0 || connection->is_busy) {
        return; /* evhttp reading, or our own doing */
    }
    connection->is_busy = true;
    (void)evbuffer_add_buffer(connection->held.bytes, input);
    if (connection->state == STATE_READING) {
        if (connection->refusal_status != 0 ||
            http_held_may_settle(&connection->held, &connection->front->limits, before)) {
            judge_held(connection);
        }
    } else if (before > http_held_max(&connection->front->limits)) {
        (void)evbuffer_drain(connection->held.bytes, evbuffer_get_length(connection->held.bytes));
        hang_up(connection);
    }
    connection->is_busy = false;
}

static void
await_next_request(struct http_connection *connection)
{
    connection->state = STATE_READING;
    connection->was_continued = false;
    http_held_next(&connection->held);
    arm(connection->deadline, connection->front->limits.request_s);
    if (connection->front->is_stopping && evbuffer_get_length(connection->held.bytes) == 0) {
        hang_up(connection);
    }
}

/* Runs in a turn of its own, when evhttp is waiting for a request again. */
static void
on_kick(evutil_socket_t fd, short what, void *data)
{
    struct http_connection *connection = data;

    (void)fd;
    (void)what;
    if (is_let_go(connection)) {
        end_if_let_go(connection);
        return;
    }
    if (connection->state == STATE_REPLYING) {
        await_next_request(connection);
    }
    if (connection->state != STATE_READING) {
        return;
    }
    connection->is_busy = true;
    judge_held(connection);
    connection->is_busy = false;
    if (connection->state == STATE_CALLED) {
        bufferevent_trigger(connection->socket, EV_READ, 0);
    }
}

static void
on_deadline(evutil_socket_t fd, short what, void *data)
{
    struct http_connection *connection = data;

    (void)fd;
    (void)what;
    if (connection->state == STATE_READING && evbuffer_get_length(connection->held.bytes) > 0) {
        connection_refuse(connection, 408, "The request took too long to arrive.");
        event_active(connection->kick, EV_TIMEOUT, 0);
        return;
    }
    hang_up(connection); /* nothing was asked, or the answer is not being taken */
}

static struct bufferevent *
on_accept(struct event_base *base, void *data)
{
    struct http_front *front = data;
    struct http_connection *connection = memory_new(front, struct http_connection);

    connection->front = front;
    connection->deadline = memory_must(evtimer_new(base, on_deadline, connection));
    connection->kick = memory_must(event_new(base, -1, 0, on_kick, connection));
    connection->socket = memory_must(bufferevent_socket_new(base, -1, BEV_OPT_CLOSE_ON_FREE));
    bufferevent_incref(connection->socket);
    http_held_init(&connection->held);
    (void)memory_must(
        evbuffer_add_cb(bufferevent_get_input(connection->socket), on_bytes, connection));
    LIST_INSERT_HEAD(&front->open, connection, next);
    arm(connection->deadline, front->limits.request_s);
    front->connections++;
    if (front->connections > front->limits.connections) {
        connection_refuse(connection, 503, "Too many connections are open.");
        event_active(connection->kick, EV_TIMEOUT, 0);
    }
    if (front->connections >= front->limits.connections + SPARE_CONNECTIONS) {
        (void)evconnlistener_disable(front->listener);
    }
    sweep_later(front);
    return connection->socket;
}

/* No descriptor is left: without a pause the loop would try again and again. */
static void
on_accept_failed(struct evconnlistener *listener, void *data)
{
    (void)evconnlistener_disable(listener);
    sweep_later(data);
}

static void
on_evhttp_request(struct evhttp_request *request, void *data)
{
    struct http_front *front = data;
    struct bufferevent *socket =
        evhttp_connection_get_bufferevent(evhttp_request_get_connection(request));
    struct http_connection *connection;

    for (connection = LIST_FIRST(&front->open); connection != NULL;
         connection = LIST_NEXT(connection, next)) {
        if (connection->socket == socket) {
            break;
        }
    }
    front->on_request(memory_must(connection), request, connection->refusal_status,
                      connection->refusal_detail, front->data);
}

/* The last byte of an answer has gone to the socket. */
static void
on_replied(struct evhttp_request *request, void *data)
{
    struct http_connection *connection = data;

    (void)request;
    (void)event_del(connection->deadline);
    event_active(connection->kick, EV_TIMEOUT, 0);
}

void
http_front_answer(struct http_connection *connection, struct evhttp_request *request, int status,
                  struct evbuffer *body)
{
    if (connection->front->is_stopping) {
        (void)evhttp_add_header(evhttp_request_get_output_headers(request), "Connection", "close");
    }
    evhttp_request_set_on_complete_cb(request, on_replied, connection);
    connection->state = STATE_REPLYING;
    arm(connection->deadline, connection->front->limits.reply_s);
    evhttp_send_reply(request, status, NULL, body);
}

struct http_front *
http_front_new(struct event_base *base, const struct http_limits *limits,
               http_front_on_request *on_request, void *data)
{
    struct http_front *front = memory_new(NULL, struct http_front);

    front->base = base;
    front->on_request = on_request;
    front->data = data;
    front->evhttp = memory_must(evhttp_new(base));
    /* Wider than what is let through: should they ever bite, that is a bug of ours. */
    evhttp_set_max_headers_size(front->evhttp, (ssize_t)2 * HTTP_HEADER_BYTES_MAX);
    evhttp_set_max_body_size(front->evhttp, (ssize_t)2 * HTTP_BODY_BYTES_MAX);
    evhttp_set_default_content_type(front->evhttp, NULL);
    evhttp_set_bevcb(front->evhttp, on_accept, front);
    evhttp_set_gencb(front->evhttp, on_evhttp_request, front);
    front->sweep = memory_must(evtimer_new(base, on_sweep, front));
    http_front_set_limits(front, limits);
    return front;
}

void
http_front_set_limits(struct http_front *front, const struct http_limits *limits)
{
    front->limits = *limits;
    evhttp_set_timeout(front->evhttp, limits->request_s + limits->reply_s);
}

static int
bound_port(struct evhttp_bound_socket *socket)
{
    union {
        struct sockaddr any;
        struct sockaddr_in four;
        struct sockaddr_in6 six;
    } bound = {.six = {0}};
    socklen_t length = sizeof(bound);

    (void)getsockname(evhttp_bound_socket_get_fd(socket), &bound.any, &length);
    return ntohs(bound.any.sa_family == AF_INET6 ? bound.six.sin6_port : bound.four.sin_port);
}

int
http_front_listen(struct http_front *front, const char *address, int port, int *actual_port,
                  struct fault *fault)
{
    front->socket = evhttp_bind_socket_with_handle(front->evhttp, address, (ev_uint16_t)port);
    if (front->socket == NULL) {
        fault_set(fault, "cannot listen on %s port %d: %s; take another port or stop what holds it",
                  address, port, strerror(errno));
        return -1;
    }
    front->listener = evhttp_bound_socket_get_listener(front->socket);
    evconnlistener_set_error_cb(front->listener, on_accept_failed);
    if (actual_port != NULL) {
        *actual_port = bound_port(front->socket);
    }
    return 0;
}

void
http_front_stop(struct http_front *front, void (*on_idle)(void *data), void *data)
{
    struct http_connection *connection;

    front->is_stopping = true;
    front->on_idle = on_idle;
    front->on_idle_data = data;
    if (front->listener != NULL) {
        evhttp_del_accept_socket(front->evhttp, front->socket);
        front->listener = NULL;
    }
    for (connection = LIST_FIRST(&front->open); connection != NULL;
         connection = LIST_NEXT(connection, next)) {
        if (connection->state == STATE_READING &&
            evbuffer_get_length(connection->held.bytes) == 0) {
            hang_up(connection);
        }
    }
    sweep_later(front);
}

void
http_front_free(struct http_front *front)
{
    struct event_base *base = front->base;

    front->listener = NULL; /* evhttp frees it */
    evhttp_free(front->evhttp);
    while (!LIST_EMPTY(&front->open)) {
        connection_free(LIST_FIRST(&front->open));
    }
    event_free(front->sweep);
    talloc_free(front);
    /* The loop finishes what bufferevent_decref() began. */
    (void)event_base_loop(base, EVLOOP_NONBLOCK);
}

int
http_front_connections(const struct http_front *front)
{
    return front->connections;
}
