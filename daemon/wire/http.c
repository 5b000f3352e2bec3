#include "http.h"

#include <stdbool.h>
#include <string.h>
#include <strings.h>
#include <sys/queue.h>

#include <event2/buffer.h>
#include <event2/http.h>
#include <event2/keyvalq_struct.h>

#include "http_front.h"
#include "memory.h"
#include "problem.h"

struct http {
    struct http_front *front;
    struct http_route *routes;
    size_t route_count;
};

struct field {
    const char *name, *value;
};

/* Holds copies, so that it outlives a client that goes away and takes evhttp's request with it. */
struct http_request {
    struct http_connection *connection;
    struct evhttp_request *evhttp; /* NULL: the client has gone */
    const char *method, *target, *path, *tail, *query;
    struct field *fields;
    size_t field_count;
    char *body;
    size_t body_length;
    bool has_retry_after;
};

static const char *
method_name(enum evhttp_cmd_type command)
{
    switch (command) {
    case EVHTTP_REQ_GET:
        return "GET";
    case EVHTTP_REQ_HEAD:
        return "HEAD";
    case EVHTTP_REQ_POST:
        return "POST";
    case EVHTTP_REQ_PUT:
        return "PUT";
    default:
        return "DELETE"; /* http_head.c lets no other pass */
    }
}

static void
on_client_gone(struct evhttp_connection *peer, void *data)
{
    struct http_request *request = data;

    (void)peer;
    request->evhttp = NULL;
}

static void
copy_fields(struct http_request *request)
{
    struct evkeyvalq *sent = evhttp_request_get_input_headers(request->evhttp);
    struct evkeyval *field;

    TAILQ_FOREACH(field, sent, next)
    {
        request->fields = memory_grow(request, struct field, request->fields, request->field_count);
        request->fields[request->field_count++] = (struct field){
            memory_copy(request, field->key),
            memory_copy(request, field->value),
        };
    }
}

static void
copy_body(struct http_request *request)
{
    struct evbuffer *sent = evhttp_request_get_input_buffer(request->evhttp);

    request->body_length = evbuffer_get_length(sent);
    request->body = memory_array(request, char, request->body_length + 1);
    (void)evbuffer_copyout(sent, request->body, request->body_length);
}

static struct http_request *
request_new(struct http_connection *connection, struct evhttp_request *evhttp)
{
    struct http_request *request = memory_new(NULL, struct http_request);
    const char *query;

    request->connection = connection;
    request->evhttp = evhttp;
    request->method = method_name(evhttp_request_get_command(evhttp));
    request->target = memory_copy(request, evhttp_request_get_uri(evhttp));
    query = strchr(request->target, '?');
    request->path =
        query == NULL ? request->target
                      : memory_copy_n(request, request->target, (size_t)(query - request->target));
    request->query = query == NULL ? "" : query + 1;
    request->tail = "";
    copy_fields(request);
    copy_body(request);
    evhttp_connection_set_closecb(evhttp_request_get_connection(evhttp), on_client_gone, request);
    return request;
}

static bool
path_matches(const struct http_route *route, const char *path, const char **tail)
{
    size_t length = strlen(route->path);

    if (route->path[length - 1] != '/') {
        *tail = "";
        return strcmp(path, route->path) == 0;
    }
    *tail = path + length;
    return strncmp(path, route->path, length) == 0 && path[length] != '\0';
}

static bool
method_matches(const struct http_route *route, const char *method)
{
    return strcmp(method, route->method) == 0 ||
           (strcmp(method, "HEAD") == 0 && strcmp(route->method, "GET") == 0);
}

static void
route_request(const struct http *http, struct http_request *request)
{
    char *allowed = NULL;
    size_t i;

    for (i = 0; i < http->route_count; i++) {
        const struct http_route *route = &http->routes[i];

        if (!path_matches(route, request->path, &request->tail)) {
            continue;
        }
        if (method_matches(route, request->method)) {
            route->on_request(request, route->data);
            return;
        }
        if (allowed == NULL) {
            allowed = memory_copy(request, route->method);
        } else {
            memory_append(&allowed, ", %s", route->method);
        }
    }
    if (allowed == NULL) {
        http_problem(request, 404, NULL, "There is nothing at this path.", NULL);
        return;
    }
    http_reply_header(request, "Allow", allowed);
    http_problem(request, 405, NULL, "This path is asked with another method.", NULL);
}

static void
on_front_request(struct http_connection *connection, struct evhttp_request *evhttp, int status,
                 const char *detail, void *data)
{
    struct http_request *request = request_new(connection, evhttp);

    if (status != 0) {
        http_problem(request, status, NULL, detail, NULL);
        return;
    }
    route_request(data, request);
}

struct http *
http_new(struct event_base *base, const struct http_limits *limits, const struct http_route *routes,
         size_t route_count)
{
    struct http *http = memory_new(NULL, struct http);

    http->routes = memory_array(http, struct http_route, route_count);
    memcpy(http->routes, routes, route_count * sizeof(*routes));
    http->route_count = route_count;
    http->front = http_front_new(base, limits, on_front_request, http);
    return http;
}

int
http_listen(struct http *http, const char *address, int port, int *actual_port, struct fault *fault)
{
    return http_front_listen(http->front, address, port, actual_port, fault);
}

void
http_set_limits(struct http *http, const struct http_limits *limits)
{
    http_front_set_limits(http->front, limits);
}

void
http_stop(struct http *http, void (*on_idle)(void *data), void *data)
{
    http_front_stop(http->front, on_idle, data);
}

void
http_free(struct http *http)
{
    if (http == NULL) {
        return;
    }
    http_front_free(http->front);
    talloc_free(http);
}

int
http_connections(const struct http *http)
{
    return http_front_connections(http->front);
}

const char *
http_request_method(const struct http_request *request)
{
    return request->method;
}

const char *
http_request_target(const struct http_request *request)
{
    return request->target;
}

const char *
http_request_path(const struct http_request *request)
{
    return request->path;
}

const char *
http_request_tail(const struct http_request *request)
{
    return request->tail;
}

const char *
http_request_query(const struct http_request *request)
{
    return request->query;
}

const char *
http_request_header(const struct http_request *request, const char *name)
{
    size_t i;

    for (i = 0; i < request->field_count; i++) {
        if (strcasecmp(request->fields[i].name, name) == 0) {
            return request->fields[i].value;
        }
    }
    return NULL;
}

const char *
http_request_body(const struct http_request *request, size_t *length)
{
    *length = request->body_length;
    return request->body;
}

const char *
http_request_url(struct http_request *request, const char *public_url)
{
    const char *host = http_request_header(request, "Host");

    if (public_url == NULL) {
        return memory_format(request, "http://%s%s", host != NULL ? host : "", request->target);
    }
    return memory_format(request, "%s%s", public_url, request->target);
}

void *
http_request_arena(struct http_request *request)
{
    return request;
}

void
http_reply_header(struct http_request *request, const char *name, const char *value)
{
    if (request->evhttp != NULL) {
        (void)evhttp_add_header(evhttp_request_get_output_headers(request->evhttp), name, value);
    }
    request->has_retry_after |= strcasecmp(name, "Retry-After") == 0;
}

void
http_reply(struct http_request *request, int status, const char *content_type, const char *bytes,
           size_t length)
{
    struct evbuffer *body;

    if (request->evhttp == NULL) {
        talloc_free(request);
        return;
    }
    if (content_type != NULL) {
        http_reply_header(request, "Content-Type", content_type);
    }
    http_reply_header(request, "Cache-Control", "no-store");
    http_reply_header(request, "Content-Length", memory_format(request, "%zu", length));
    body = memory_must(evbuffer_new());
    if (strcmp(request->method, "HEAD") !=
        0) { /* evhttp would send a body, RFC 9110 9.3.2 forbids */
        (void)evbuffer_add(body, bytes, length);
    }
    evhttp_connection_set_closecb(evhttp_request_get_connection(request->evhttp), NULL, NULL);
    http_front_answer(request->connection, request->evhttp, status, body);
    evbuffer_free(body);
    talloc_free(request);
}

void
http_problem(struct http_request *request, int status, const char *title, const char *detail,
             const char *pointer)
{
    const char *text = problem_json(request, status, title, detail, pointer);

    if (status == 503 && !request->has_retry_after) {
        http_reply_header(request, "Retry-After", "5");
    }
    http_reply(request, status, PROBLEM_CONTENT_TYPE, text, strlen(text));
}

void
http_problem_of_all(struct http_request *request, int status, const char *detail,
                    const struct problem_error *errors, size_t count)
{
    const char *text = problem_json_of_all(request, status, detail, errors, count);

    http_reply(request, status, PROBLEM_CONTENT_TYPE, text, strlen(text));
}
