/* Transfers against an HTTP server of libevent in the same loop, on loopback. */
#include <check.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/socket.h>
#include <netinet/in.h>
#include <arpa/inet.h>
#include <unistd.h>

#include <event2/buffer.h>
#include <event2/event.h>
#include <event2/http.h>

#include "transfer.h"

static struct event_base *base;
static struct evhttp *server;
static struct transfers *transfers;
static int port;

/* What the server saw and what the callback was told. */
static struct {
    int requests;
    char key[64], expect[64], content_type[64], body[64];
    size_t body_size;
} seen;

static struct {
    int calls;
    int status;
    char error[256], body[64], content_type[64];
    bool was_sent, is_cut;
    int64_t retry_after_s;
    size_t body_size;
} told;

static void
copy_header(struct evhttp_request *request, const char *name, char *value, size_t size)
{
    const char *found = evhttp_find_header(evhttp_request_get_input_headers(request), name);

    snprintf(value, size, "%s", found != NULL ? found : "(none)");
}

static void
on_request(struct evhttp_request *request, void *data)
{
    struct evbuffer *input = evhttp_request_get_input_buffer(request);
    struct evbuffer *output = evbuffer_new();
    const char *path = evhttp_request_get_uri(request);
    int i;

    (void)data;
    seen.requests++;
    copy_header(request, "Idempotency-Key", seen.key, sizeof(seen.key));
    copy_header(request, "Expect", seen.expect, sizeof(seen.expect));
    copy_header(request, "Content-Type", seen.content_type, sizeof(seen.content_type));
    seen.body_size = evbuffer_get_length(input);
    evbuffer_copyout(input, seen.body, sizeof(seen.body) - 1);
    evhttp_add_header(evhttp_request_get_output_headers(request), "Content-Type", "text/plain");
    if (strcmp(path, "/busy") == 0) {
        evhttp_add_header(evhttp_request_get_output_headers(request), "Retry-After", "120");
        evhttp_send_reply(request, 503, "Busy", output);
    } else if (strcmp(path, "/away") == 0) {
        evhttp_add_header(evhttp_request_get_output_headers(request), "Location", "/ok");
        evhttp_send_reply(request, 302, "Away", output);
    } else if (strcmp(path, "/long") == 0) {
        for (i = 0; i < 1000; i++) {
            evbuffer_add(output, "0123456789", 10);
        }
        evhttp_send_reply(request, 200, "OK", output);
    } else if (strcmp(path, "/silent") == 0) {
        evbuffer_free(output); /* never answered; evhttp frees the request with its connection */
        return;
    } else {
        evbuffer_add_printf(output, "{\"id\":\"m-1\"}");
        evhttp_send_reply(request, 200, "OK", output);
    }
    evbuffer_free(output);
}

static void
begin(void)
{
    const struct transfer_limits limits = {
        .running = 2, .waiting = 5, .body_bytes = 100, .header_bytes = 4096};
    struct evhttp_bound_socket *bound;
    struct sockaddr_in address;
    socklen_t length = sizeof(address);
    struct fault fault = {""};

    ck_assert_msg(transfers_prepare(&fault) == 0, "%s", fault.text);
    base = event_base_new();
    server = evhttp_new(base);
    evhttp_set_allowed_methods(server, EVHTTP_REQ_GET | EVHTTP_REQ_POST | EVHTTP_REQ_PUT);
    evhttp_set_gencb(server, on_request, NULL);
    bound = evhttp_bind_socket_with_handle(server, "127.0.0.1", 0);
    ck_assert_ptr_nonnull(bound);
    getsockname(evhttp_bound_socket_get_fd(bound), (struct sockaddr *)&address, &length);
    port = ntohs(address.sin_port);
    transfers = transfers_new(base, &limits);
}

static void
end(void)
{
    transfers_free(transfers);
    evhttp_free(server);
    event_base_free(base);
}

static void
on_done(const struct transfer_result *result, void *cookie)
{
    const int *wanted = cookie;

    told.status = result->status;
    snprintf(told.error, sizeof(told.error), "%s", result->error);
    snprintf(told.body, sizeof(told.body), "%s", result->body);
    snprintf(told.content_type, sizeof(told.content_type), "%s", result->content_type);
    told.was_sent = result->was_sent;
    told.is_cut = result->is_cut;
    told.retry_after_s = result->retry_after_s;
    told.body_size = result->body_size;
    if (++told.calls == *wanted) {
        event_base_loopbreak(base);
    }
}

static int one = 1;

static struct transfer *
start(const char *method, const char *url, const char *body, size_t body_size, int *wanted)
{
    static const char *const headers[] = {"Idempotency-Key: k-1", "Content-Type: application/json",
                                          NULL};
    struct transfer_request request = {.method = method,
                                       .url = url,
                                       .headers = headers,
                                       .body = body,
                                       .body_size = body_size,
                                       .timeout_ms = 300};

    return transfer_start(transfers, &request, on_done, wanted);
}

static const char *
url(const char *path)
{
    static char text[64];

    snprintf(text, sizeof(text), "http://127.0.0.1:%d%s", port, path);
    return text;
}

static void
run_one(const char *method, const char *path, const char *body, size_t body_size)
{
    ck_assert_ptr_nonnull(start(method, url(path), body, body_size, &one));
    ck_assert_int_eq(told.calls, 0); /* never inside transfer_start() */
    event_base_dispatch(base);
    ck_assert_int_eq(told.calls, 1);
}

START_TEST(the_request_goes_out_as_told_and_the_answer_comes_back)
{
    run_one("POST", "/ok", "{\"a\":1}", 7);
    ck_assert_int_eq(told.status, 200);
    ck_assert_str_eq(told.error, "");
    ck_assert_str_eq(told.body, "{\"id\":\"m-1\"}");
    ck_assert_str_eq(told.content_type, "text/plain");
    ck_assert(told.was_sent);
    ck_assert_str_eq(seen.key, "k-1");
    ck_assert_str_eq(seen.content_type, "application/json");
    ck_assert_str_eq(seen.body, "{\"a\":1}");
}
END_TEST

START_TEST(a_large_body_is_sent_without_asking_first)
{
    size_t size = 2000000;
    char *body = calloc(1, size);

    run_one("PUT", "/ok", body, size);
    ck_assert_int_eq(told.status, 200);
    ck_assert_uint_eq(seen.body_size, size);
    ck_assert_str_eq(seen.expect, "(none)");
    free(body);
}
END_TEST

START_TEST(retry_after_is_told_in_seconds)
{
    run_one("POST", "/busy", "x", 1);
    ck_assert_int_eq(told.status, 503);
    ck_assert_int_eq(told.retry_after_s, 120);
}
END_TEST

START_TEST(a_redirect_is_not_followed)
{
    run_one("POST", "/away", "x", 1);
    ck_assert_int_eq(told.status, 302);
    ck_assert_int_eq(seen.requests, 1);
}
END_TEST

START_TEST(a_long_answer_is_cut_and_its_status_still_counts)
{
    run_one("POST", "/long", "x", 1);
    ck_assert_int_eq(told.status, 200);
    ck_assert(told.is_cut);
    ck_assert_uint_eq(told.body_size, 100);
}
END_TEST

START_TEST(a_silent_server_is_given_up_in_time_and_asked_once)
{
    run_one("POST", "/silent", "x", 1);
    ck_assert_int_eq(told.status, 0);
    ck_assert_str_ne(told.error, "");
    ck_assert(told.was_sent);
    ck_assert_int_eq(seen.requests, 1);
}
END_TEST

START_TEST(nobody_listening_is_told_as_not_sent)
{
    int fd = socket(AF_INET, SOCK_STREAM, 0);
    struct sockaddr_in address = {.sin_family = AF_INET,
                                  .sin_addr = {.s_addr = htonl(INADDR_LOOPBACK)}};
    socklen_t length = sizeof(address);
    char closed[64];

    /* Bound but not listening: the port is nobody's and stays so. */
    ck_assert_int_eq(bind(fd, (struct sockaddr *)&address, sizeof(address)), 0);
    getsockname(fd, (struct sockaddr *)&address, &length);
    snprintf(closed, sizeof(closed), "http://127.0.0.1:%d/", ntohs(address.sin_port));
    ck_assert_ptr_nonnull(start("POST", closed, "x", 1, &one));
    event_base_dispatch(base);
    ck_assert_int_eq(told.status, 0);
    ck_assert(!told.was_sent);
    close(fd);
}
END_TEST

START_TEST(only_http_is_spoken)
{
    static const char *const urls[] = {"file:///etc/hostname", "ftp://127.0.0.1/x", "http://a b/"};
    size_t i;

    for (i = 0; i < sizeof(urls) / sizeof(urls[0]); i++) {
        told.calls = 0;
        ck_assert_ptr_nonnull(start("GET", urls[i], NULL, 0, &one));
        event_base_dispatch(base);
        ck_assert_int_eq(told.status, 0);
        ck_assert_str_ne(told.error, "");
    }
}
END_TEST

START_TEST(a_header_with_a_line_break_is_refused)
{
    const char *const evil[] = {"A: b\r\nC: d", NULL};
    struct transfer_request request = {
        .method = "POST", .url = url("/ok"), .headers = evil, .timeout_ms = 100};

    ck_assert_ptr_null(transfer_start(transfers, &request, on_done, &one));
}
END_TEST

START_TEST(those_that_wait_in_line_run_later_and_a_full_line_refuses)
{
    int all = 7;
    int i;

    for (i = 0; i < all; i++) {
        ck_assert_ptr_nonnull(start("POST", url("/ok"), "x", 1, &all));
    }
    ck_assert_ptr_null(start("POST", url("/ok"), "x", 1, &all)); /* 2 run, 5 wait */
    ck_assert_uint_eq(transfers_pending(transfers), 7);
    event_base_dispatch(base);
    ck_assert_int_eq(seen.requests, all);
    ck_assert_uint_eq(transfers_pending(transfers), 0);
}
END_TEST

START_TEST(a_cancelled_one_is_not_told_and_a_closed_set_refuses)
{
    struct transfer *victim = start("POST", url("/silent"), "x", 1, &one);

    ck_assert_ptr_nonnull(start("POST", url("/ok"), "x", 1, &one));
    transfer_cancel(victim);
    transfers_close(transfers);
    ck_assert_ptr_null(start("POST", url("/ok"), "x", 1, &one));
    event_base_dispatch(base);
    ck_assert_int_eq(told.calls, 1);
    ck_assert_int_eq(told.status, 200);
    ck_assert_uint_eq(transfers_pending(transfers), 0);
}
END_TEST

int
main(void)
{
    TCase *tests = tcase_create("transfer");
    Suite *suite = suite_create("transfer");
    SRunner *runner = srunner_create(suite);
    int failed;

    tcase_add_checked_fixture(tests, begin, end);
    tcase_add_test(tests, the_request_goes_out_as_told_and_the_answer_comes_back);
    tcase_add_test(tests, a_large_body_is_sent_without_asking_first);
    tcase_add_test(tests, retry_after_is_told_in_seconds);
    tcase_add_test(tests, a_redirect_is_not_followed);
    tcase_add_test(tests, a_long_answer_is_cut_and_its_status_still_counts);
    tcase_add_test(tests, a_silent_server_is_given_up_in_time_and_asked_once);
    tcase_add_test(tests, nobody_listening_is_told_as_not_sent);
    tcase_add_test(tests, only_http_is_spoken);
    tcase_add_test(tests, a_header_with_a_line_break_is_refused);
    tcase_add_test(tests, those_that_wait_in_line_run_later_and_a_full_line_refuses);
    tcase_add_test(tests, a_cancelled_one_is_not_told_and_a_closed_set_refuses);
    suite_add_tcase(suite, tests);
    srunner_run_all(runner, CK_NORMAL);
    failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
