/*
 * The server over real sockets on loopback. Server and client share one thread: the test turns the
 * server's loop while it waits for bytes, up to PATIENCE_S.
 */
#include <arpa/inet.h>
#include <check.h>
#include <errno.h>
#include <jansson.h>
#include <signal.h>
#include <stdbool.h>
#include <stdlib.h>
#include <string.h>
#include <sys/socket.h>
#include <time.h>
#include <unistd.h>

#include <event2/event.h>

#include "http.h"
#include "memory.h"

enum { PATIENCE_S = 20, ANSWER_MAX = 4 << 20 };

static struct event_base *base;
static struct http *http;
static int port;
static struct http_request *pending; /* asked of /later, not answered yet */
static bool is_idle;
static char *answer; /* what the last client got */

static void
on_echo(struct http_request *request, void *data)
{
    size_t length;
    const char *body = http_request_body(request, &length);
    const char *x = http_request_header(request, "x-tail");
    char *text = memory_format(http_request_arena(request), "%s %s|%s|%s|%s|%zu|%s",
                               http_request_method(request), http_request_path(request),
                               http_request_tail(request), http_request_query(request),
                               x != NULL ? x : "-", length, body);

    (void)data;
    http_reply(request, 200, "text/plain", text, strlen(text));
}

static void
on_later(struct http_request *request, void *data)
{
    (void)data;
    ck_assert_ptr_null(pending);
    pending = request;
}

static void
on_large(struct http_request *request, void *data)
{
    static char bytes[2 << 20];

    (void)data;
    memset(bytes, 'z', sizeof(bytes));
    http_reply(request, 200, "text/plain", bytes, sizeof(bytes));
}

static const struct http_route routes[] = {
    {"GET", "/health", on_echo, NULL},    {"POST", "/messages/", on_echo, NULL},
    {"PUT", "/messages/", on_echo, NULL}, {"POST", "/later", on_later, NULL},
    {"GET", "/large", on_large, NULL},
};

static const struct http_limits limits = {
    .connections = 4, .request_s = 1, .reply_s = 1, .header_bytes = 1024, .body_bytes = 2048};

static void
set_up(void)
{
    struct fault fault = {""};

    (void)signal(SIGPIPE, SIG_IGN);
    base = event_base_new();
    http = http_new(base, &limits, routes, sizeof(routes) / sizeof(routes[0]));
    ck_assert_msg(http_listen(http, "127.0.0.1", 0, &port, &fault) == 0, "%s", fault.text);
    ck_assert_int_gt(port, 0);
    answer = malloc(ANSWER_MAX);
}

static void
tear_down(void)
{
    http_free(http);
    event_base_free(base);
    free(answer);
}

static bool
is_late(time_t began)
{
    return time(NULL) - began > PATIENCE_S;
}

static void
turn(void)
{
    struct timespec pause = {0, 1000000};

    (void)event_base_loop(base, EVLOOP_NONBLOCK);
    (void)nanosleep(&pause, NULL); /* the other end of the wire is the same thread */
}

static int
client(void)
{
    struct sockaddr_in to = {.sin_family = AF_INET, .sin_port = htons((uint16_t)port)};
    int fd = socket(AF_INET, SOCK_STREAM, 0);

    to.sin_addr.s_addr = htonl(INADDR_LOOPBACK);
    ck_assert_int_eq(connect(fd, (struct sockaddr *)&to, sizeof(to)), 0);
    return fd;
}

static void
send_all(int fd, const char *bytes, size_t length)
{
    while (length > 0) {
        ssize_t sent = send(fd, bytes, length, MSG_DONTWAIT | MSG_NOSIGNAL);

        if (sent > 0) {
            bytes += sent;
            length -= (size_t)sent;
        } else if (errno != EAGAIN) {
            return; /* refused before we were done */
        }
        turn();
    }
}

static size_t
content_length(const char *head)
{
    const char *field = strstr(head, "Content-Length: ");

    return field == NULL ? 0 : (size_t)strtoul(field + 16, NULL, 10);
}

/* Receives one answer, or what there is until the connection closes. True if it closed. */
static bool
receive(int fd, bool until_closed)
{
    time_t began = time(NULL);
    size_t used = 0;

    answer[0] = '\0';
    while (!is_late(began)) {
        ssize_t got = recv(fd, answer + used, ANSWER_MAX - 1 - used, MSG_DONTWAIT);
        const char *body;

        if (got == 0 || (got < 0 && errno != EAGAIN)) {
            return true;
        }
        used += got > 0 ? (size_t)got : 0;
        answer[used] = '\0';
        body = strstr(answer, "\r\n\r\n");
        if (!until_closed && body != NULL &&
            used >= (size_t)(body + 4 - answer) + content_length(answer)) {
            return false;
        }
        turn();
    }
    ck_abort_msg("no whole answer in %d s: %s", PATIENCE_S, answer);
    return false;
}

static int
status(void)
{
    return strncmp(answer, "HTTP/1.1 ", 9) == 0 ? atoi(answer + 9) : 0;
}

static const char *
body(void)
{
    return strstr(answer, "\r\n\r\n") + 4;
}

/* One exchange on a connection of its own. */
static void
ask(const char *bytes)
{
    int fd = client();

    send_all(fd, bytes, strlen(bytes));
    (void)receive(fd, false);
    (void)close(fd);
}

/* RFC 9457, section 3: the members, and the type of the document. */
static void
is_problem(int expected)
{
    json_t *problem;

    ck_assert_msg(status() == expected, "%s", answer);
    ck_assert_ptr_nonnull(strstr(answer, "Content-Type: application/problem+json\r\n"));
    problem = json_loads(body(), 0, NULL);
    ck_assert_str_eq(json_string_value(json_object_get(problem, "type")), "about:blank");
    ck_assert_int_eq(json_integer_value(json_object_get(problem, "status")), expected);
    ck_assert_ptr_nonnull(json_string_value(json_object_get(problem, "title")));
    ck_assert_ptr_nonnull(json_string_value(json_object_get(problem, "detail")));
    json_decref(problem);
}

START_TEST(a_request_comes_whole_to_its_route)
{
    ask("POST /messages/valley?x=1 HTTP/1.1\r\nHost: a\r\nX-Tail: t\r\nContent-Length: "
        "5\r\n\r\nhello");
    ck_assert_int_eq(status(), 200);
    ck_assert_str_eq(body(), "POST /messages/valley|valley|x=1|t|5|hello");
}
END_TEST

START_TEST(a_chunked_body_arrives_as_one)
{
    ask("POST /messages/valley HTTP/1.1\r\nHost: a\r\nTransfer-Encoding: chunked\r\n\r\n"
        "3\r\nhel\r\n2\r\nlo\r\n0\r\n\r\n");
    ck_assert_str_eq(body(), "POST /messages/valley|valley||-|5|hello");
}
END_TEST

START_TEST(requests_on_one_connection_are_answered_in_order)
{
    static const char three[] =
        "GET /health?1 HTTP/1.1\r\nHost: a\r\n\r\n"
        "\r\nPOST /messages/b HTTP/1.1\r\nHost: a\r\nContent-Length: 1\r\n\r\nx"
        "GET /health?3 HTTP/1.1\r\nHost: a\r\nConnection: close\r\n\r\n";
    int fd = client();
    const char *first, *second, *third;

    send_all(fd, three, sizeof(three) - 1);
    ck_assert(receive(fd, true));
    first = strstr(answer, "|1|");
    second = strstr(answer, "|b|");
    third = strstr(answer, "|3|");
    ck_assert(first != NULL && second != NULL && third != NULL);
    ck_assert(first < second && second < third);
    (void)close(fd);
}
END_TEST

START_TEST(an_unknown_path_is_404)
{
    ask("GET /elsewhere HTTP/1.1\r\nHost: a\r\n\r\n");
    is_problem(404);
    ask("POST /messages/ HTTP/1.1\r\nHost: a\r\nContent-Length: 0\r\n\r\n");
    is_problem(404);
}
END_TEST

START_TEST(another_method_is_405_and_told_which_are_allowed)
{
    ask("DELETE /messages/valley HTTP/1.1\r\nHost: a\r\n\r\n");
    is_problem(405); /* RFC 9110, 15.5.6: Allow is a must */
    ck_assert_ptr_nonnull(strstr(answer, "\r\nAllow: POST, PUT\r\n"));
}
END_TEST

START_TEST(head_is_get_without_a_body)
{
    int fd = client();
    static const char bytes[] = "HEAD /health HTTP/1.1\r\nHost: a\r\nConnection: close\r\n\r\n";

    send_all(fd, bytes, sizeof(bytes) - 1);
    ck_assert(receive(fd, true));
    ck_assert_int_eq(status(), 200);
    ck_assert_uint_gt(content_length(answer), 0); /* RFC 9110, 9.3.2 */
    ck_assert_str_eq(body(), "");
    (void)close(fd);
}
END_TEST

START_TEST(what_evhttp_would_let_through_is_a_problem)
{
    static const struct {
        int status;
        const char *bytes;
    } bad[] = {
        {400,
         "POST /later HTTP/1.1\r\nHost: a\r\nContent-Length: 5\r\nContent-Length: 3\r\n\r\nhello"},
        {400, "POST /later HTTP/1.1\r\nHost: a\r\nContent-Length : 5\r\n\r\nhello"},
        {400, "GET /health HTTP/1.1\r\n\r\n"},
        {400, "POST /later HTTP/1.1\r\nHost: a\r\nContent-Length: 5\r\n"
              "Transfer-Encoding: chunked\r\n\r\n0\r\n\r\n"},
        {413, "POST /later HTTP/1.1\r\nHost: a\r\nContent-Length: 2049\r\n\r\n"},
        {501, "BREW /health HTTP/1.1\r\nHost: a\r\n\r\n"},
        {400, "nonsense\r\n\r\n"},
    };

    ask(bad[_i].bytes);
    is_problem(bad[_i].status);
    ck_assert_ptr_null(pending);
}
END_TEST

START_TEST(fifteen_hundred_fields_are_a_problem)
{
    char *bytes = memory_copy(NULL, "GET /health HTTP/1.1\r\nHost: a\r\n");
    int i;

    for (i = 0; i < 1500; i++) {
        memory_append(&bytes, "a%d: b\r\n", i);
    }
    memory_append(&bytes, "\r\n");
    ask(bytes);
    is_problem(431);
    talloc_free(bytes);
}
END_TEST

START_TEST(a_sender_of_a_byte_now_and_then_meets_the_deadline_of_the_whole_request)
{
    static const char bytes[] = "POST /later HTTP/1.1\r\nHost: a\r\nContent-Length: 900\r\n\r\n";
    struct timespec pause = {0, 20000000};
    time_t began = time(NULL);
    int fd = client();
    char c;

    send_all(fd, bytes, sizeof(bytes) - 1);
    while (recv(fd, &c, 1, MSG_DONTWAIT | MSG_PEEK) < 0 && !is_late(began)) {
        send_all(fd, "z", 1); /* far below 900 by then: a turn takes at least a millisecond */
        (void)nanosleep(&pause, NULL);
    }
    ck_assert(receive(fd, true));
    is_problem(408); /* RFC 9110, 15.5.9 */
    (void)close(fd);
}
END_TEST

START_TEST(a_silent_client_is_hung_up_on)
{
    int fd = client();

    ck_assert(receive(fd, true));
    ck_assert_str_eq(answer, "");
    (void)close(fd);
}
END_TEST

START_TEST(a_head_that_comes_byte_by_byte_is_read)
{
    static const char bytes[] = "GET /health HTTP/1.1\r\nHost: a\r\n\r\n";
    int fd = client();
    size_t i;

    for (i = 0; i < sizeof(bytes) - 1; i++) {
        send_all(fd, bytes + i, 1);
    }
    (void)receive(fd, false);
    ck_assert_int_eq(status(), 200);
    (void)close(fd);
}
END_TEST

START_TEST(one_connection_too_many_is_told_503_and_a_free_place_is_used_again)
{
    time_t began = time(NULL);
    int held[4];
    int i;

    for (i = 0; i < 4; i++) {
        held[i] = client();
        turn();
    }
    ask("GET /health HTTP/1.1\r\nHost: a\r\n\r\n");
    is_problem(503);
    ck_assert_ptr_nonnull(strstr(answer, "Retry-After: "));
    for (i = 0; i < 4; i++) {
        (void)close(held[i]);
    }
    while (http_connections(http) > 0 && !is_late(began)) {
        turn();
    }
    ask("GET /health HTTP/1.1\r\nHost: a\r\n\r\n");
    ck_assert_int_eq(status(), 200);
}
END_TEST

static void
ask_later(int fd)
{
    static const char bytes[] = "POST /later HTTP/1.1\r\nHost: a\r\nContent-Length: 4\r\n\r\nwait";
    time_t began = time(NULL);

    send_all(fd, bytes, sizeof(bytes) - 1);
    while (pending == NULL && !is_late(began)) {
        turn();
    }
    ck_assert_ptr_nonnull(pending);
}

START_TEST(an_answer_may_leave_many_turns_later)
{
    int fd = client();
    int i;

    ask_later(fd);
    for (i = 0; i < 50; i++) {
        turn();
    }
    http_reply(pending, 200, "text/plain", "done", 4);
    (void)receive(fd, false);
    ck_assert_str_eq(body(), "done");
    (void)close(fd);
}
END_TEST

START_TEST(an_answer_to_a_client_that_has_gone_is_harmless)
{
    struct linger reset = {1, 0};
    time_t began = time(NULL);
    int fd = client();
    size_t length;

    ask_later(fd);
    if (_i == 1) {
        (void)setsockopt(fd, SOL_SOCKET, SO_LINGER, &reset, sizeof(reset));
    }
    (void)close(fd);
    turn();
    ck_assert_str_eq(http_request_body(pending, &length), "wait"); /* still there to be read */
    http_problem(pending, 503, NULL, "The store is not to be had.", NULL);
    while (http_connections(http) > 0 && !is_late(began)) {
        turn();
    }
    ck_assert_int_eq(http_connections(http), 0);
    ask("GET /health HTTP/1.1\r\nHost: a\r\n\r\n");
    ck_assert_int_eq(status(), 200);
}
END_TEST

START_TEST(an_answer_after_the_server_has_gone_is_harmless)
{
    int fd = client();

    ask_later(fd);
    http_free(http);
    http = NULL;
    http_reply(pending, 200, "text/plain", "done", 4);
    (void)close(fd);
}
END_TEST

START_TEST(a_client_that_does_not_take_its_answer_is_hung_up_on)
{
    static const char bytes[] = "GET /large HTTP/1.1\r\nHost: a\r\n\r\n";
    int small = 4096;
    struct sockaddr_in to = {.sin_family = AF_INET, .sin_port = htons((uint16_t)port)};
    int fd = socket(AF_INET, SOCK_STREAM, 0);
    time_t began = time(NULL);

    to.sin_addr.s_addr = htonl(INADDR_LOOPBACK);
    (void)setsockopt(fd, SOL_SOCKET, SO_RCVBUF, &small, sizeof(small));
    ck_assert_int_eq(connect(fd, (struct sockaddr *)&to, sizeof(to)), 0);
    send_all(fd, bytes, sizeof(bytes) - 1);
    do {
        turn();
    } while (http_connections(http) > 0 && !is_late(began));
    ck_assert_int_eq(http_connections(http), 0);
    (void)close(fd);
}
END_TEST

static void
on_idle(void *data)
{
    (void)data;
    is_idle = true;
}

START_TEST(stopping_answers_what_is_in_hand_and_takes_nothing_new)
{
    struct sockaddr_in to = {.sin_family = AF_INET, .sin_port = htons((uint16_t)port)};
    time_t began = time(NULL);
    int fd = client();
    int quiet = client();
    int late = socket(AF_INET, SOCK_STREAM, 0);

    ask_later(fd);
    http_stop(http, on_idle, NULL);
    to.sin_addr.s_addr = htonl(INADDR_LOOPBACK);
    ck_assert_int_ne(connect(late, (struct sockaddr *)&to, sizeof(to)), 0);
    ck_assert(receive(quiet, true));
    ck_assert(!is_idle);
    http_reply(pending, 200, "text/plain", "done", 4);
    ck_assert(receive(fd, true)); /* and it is closed after that */
    ck_assert_str_eq(body(), "done");
    (void)close(fd);
    (void)close(quiet);
    while (!is_idle && !is_late(began)) {
        turn();
    }
    ck_assert(is_idle);
    (void)close(late);
}
END_TEST

START_TEST(a_port_that_is_taken_is_a_fault_with_its_number)
{
    struct http *second = http_new(base, &limits, routes, 1);
    struct fault fault = {""};
    char number[16];

    (void)snprintf(number, sizeof(number), "%d", port);
    ck_assert_int_eq(http_listen(second, "127.0.0.1", port, NULL, &fault), -1);
    ck_assert_ptr_nonnull(strstr(fault.text, number));
    http_free(second);
}
END_TEST

START_TEST(the_signed_url_is_public_or_from_host)
{
    int fd = client();

    ask_later(fd);
    ck_assert_str_eq(http_request_url(pending, NULL), "http://a/later");
    ck_assert_str_eq(http_request_url(pending, "https://texts.example"),
                     "https://texts.example/later");
    http_reply(pending, 204, NULL, "", 0);
    (void)receive(fd, false);
    ck_assert_int_eq(status(), 204);
    (void)close(fd);
}
END_TEST

int
main(void)
{
    Suite *suite = suite_create("http");
    TCase *tests = tcase_create("http");
    SRunner *runner;
    int failed;

    tcase_add_checked_fixture(tests, set_up, tear_down);
    tcase_set_timeout(tests, 60);
    tcase_add_test(tests, a_request_comes_whole_to_its_route);
    tcase_add_test(tests, a_chunked_body_arrives_as_one);
    tcase_add_test(tests, requests_on_one_connection_are_answered_in_order);
    tcase_add_test(tests, an_unknown_path_is_404);
    tcase_add_test(tests, another_method_is_405_and_told_which_are_allowed);
    tcase_add_test(tests, head_is_get_without_a_body);
    tcase_add_loop_test(tests, what_evhttp_would_let_through_is_a_problem, 0, 7);
    tcase_add_test(tests, fifteen_hundred_fields_are_a_problem);
    tcase_add_test(tests, a_sender_of_a_byte_now_and_then_meets_the_deadline_of_the_whole_request);
    tcase_add_test(tests, a_silent_client_is_hung_up_on);
    tcase_add_test(tests, a_head_that_comes_byte_by_byte_is_read);
    tcase_add_test(tests, one_connection_too_many_is_told_503_and_a_free_place_is_used_again);
    tcase_add_test(tests, an_answer_may_leave_many_turns_later);
    tcase_add_loop_test(tests, an_answer_to_a_client_that_has_gone_is_harmless, 0, 2);
    tcase_add_test(tests, an_answer_after_the_server_has_gone_is_harmless);
    tcase_add_test(tests, a_client_that_does_not_take_its_answer_is_hung_up_on);
    tcase_add_test(tests, stopping_answers_what_is_in_hand_and_takes_nothing_new);
    tcase_add_test(tests, a_port_that_is_taken_is_a_fault_with_its_number);
    tcase_add_test(tests, the_signed_url_is_public_or_from_host);
    suite_add_tcase(suite, tests);
    runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
