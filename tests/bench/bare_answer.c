/*
 * The least that an HTTP server on evhttp can do: reads each request whole and answers it with a
 * fixed status and body. What hutbell costs is measured against it, and for hutbell's sends it
 * stands in as the gateway.
 *
 * usage: bare_answer STATUS BODY     prints its port; ends with SIGTERM
 */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <arpa/inet.h>
#include <signal.h>

#include <event2/buffer.h>
#include <event2/event.h>
#include <event2/http.h>

struct fixed {
    int status;
    const char *body;
};

static void
on_request(struct evhttp_request *request, void *data)
{
    const struct fixed *fixed = data;
    struct evbuffer *body = evbuffer_new();

    evhttp_add_header(evhttp_request_get_output_headers(request), "Content-Type",
                      "application/json");
    evbuffer_add(body, fixed->body, strlen(fixed->body));
    evhttp_send_reply(request, fixed->status, NULL, body);
    evbuffer_free(body);
}

static void
on_terminate(evutil_socket_t signal, short events, void *data)
{
    (void)signal;
    (void)events;
    event_base_loopexit(data, NULL);
}

int
main(int argc, char **argv)
{
    struct event_base *base = event_base_new();
    struct evhttp *http = evhttp_new(base);
    struct event *terminate = evsignal_new(base, SIGTERM, on_terminate, base);
    struct evhttp_bound_socket *socket;
    struct sockaddr_in address;
    socklen_t length = sizeof(address);
    struct fixed fixed;

    if (argc != 3) {
        fprintf(stderr, "usage: bare_answer STATUS BODY\n");
        return 2;
    }
    fixed.status = (int)strtol(argv[1], NULL, 10);
    fixed.body = argv[2];
    evhttp_set_gencb(http, on_request, &fixed);
    socket = evhttp_bind_socket_with_handle(http, "127.0.0.1", 0);
    if (socket == NULL || getsockname(evhttp_bound_socket_get_fd(socket),
                                      (struct sockaddr *)&address, &length) != 0) {
        perror("bare_answer: cannot listen");
        return 1;
    }
    printf("%d\n", ntohs(address.sin_port));
    fflush(stdout);
    evsignal_add(terminate, NULL);
    event_base_dispatch(base);
    event_free(terminate);
    evhttp_free(http);
    event_base_free(base);
    return 0;
}
