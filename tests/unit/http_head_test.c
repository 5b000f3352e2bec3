/* What two parsers could read in two ways is refused. RFC 9112 unless said otherwise. */
#include <check.h>
#include <stdlib.h>
#include <string.h>

#include "http_head.h"

enum { HEAD_MAX = 1024, BODY_MAX = 100 };

static const struct {
    const char *what;
    const char *bytes;
    int status; /* 0: whole */
    size_t body_bytes;
} heads[] = {
    {"a post", "POST /x HTTP/1.1\r\nHost: a\r\nContent-Length: 5\r\n\r\n", 0, 5},
    {"a get", "GET /x HTTP/1.1\r\nHost: a\r\n\r\n", 0, 0},
    {"HTTP/1.0 needs no Host", "GET /x HTTP/1.0\r\n\r\n", 0, 0},
    {"largest body", "POST /x HTTP/1.1\r\nHost: a\r\nContent-Length: 100\r\n\r\n", 0, 100},
    {"blanks around a value", "POST /x HTTP/1.1\r\nHost: a\r\nContent-Length:\t 5 \r\n\r\n", 0, 5},
    {"6.3, two lengths",
     "POST /x HTTP/1.1\r\nHost: a\r\nContent-Length: 5\r\nContent-Length: 5\r\n\r\n", 400, 0},
    {"6.3, a list of lengths", "POST /x HTTP/1.1\r\nHost: a\r\nContent-Length: 5, 5\r\n\r\n", 400,
     0},
    {"6.2, a sign", "POST /x HTTP/1.1\r\nHost: a\r\nContent-Length: +5\r\n\r\n", 400, 0},
    {"6.2, hex", "POST /x HTTP/1.1\r\nHost: a\r\nContent-Length: 0x5\r\n\r\n", 400, 0},
    {"6.2, empty", "POST /x HTTP/1.1\r\nHost: a\r\nContent-Length:\r\n\r\n", 400, 0},
    {"past 64 bits", "POST /x HTTP/1.1\r\nHost: a\r\nContent-Length: 18446744073709551621\r\n\r\n",
     413, 0},
    {"RFC 9110 15.5.14, too large", "POST /x HTTP/1.1\r\nHost: a\r\nContent-Length: 101\r\n\r\n",
     413, 0},
    {"RFC 9110 15.5.12, no length", "POST /x HTTP/1.1\r\nHost: a\r\n\r\n", 411, 0},
    {"5.1, a blank before the colon", "POST /x HTTP/1.1\r\nHost: a\r\nContent-Length : 5\r\n\r\n",
     400, 0},
    {"5.2, a folded line", "GET /x HTTP/1.1\r\nHost: a\r\nX: 1\r\n 2\r\n\r\n", 400, 0},
    {"a name of nothing", "GET /x HTTP/1.1\r\nHost: a\r\n: 1\r\n\r\n", 400, 0},
    {"3.2, no Host", "GET /x HTTP/1.1\r\n\r\n", 400, 0},
    {"3.2, two Hosts", "GET /x HTTP/1.1\r\nHost: a\r\nHost: b\r\n\r\n", 400, 0},
    {"6.1, length and chunks",
     "POST /x HTTP/1.1\r\nHost: a\r\nContent-Length: 5\r\nTransfer-Encoding: chunked\r\n\r\n", 400,
     0},
    {"6.1, another coding", "POST /x HTTP/1.1\r\nHost: a\r\nTransfer-Encoding: xchunked\r\n\r\n",
     501, 0},
    {"6.1, chunks in HTTP/1.0", "POST /x HTTP/1.0\r\nTransfer-Encoding: chunked\r\n\r\n", 400, 0},
    {"a body that nobody reads", "GET /x HTTP/1.1\r\nHost: a\r\nContent-Length: 5\r\n\r\n", 400, 0},
    {"2.2, a bare LF", "GET /x HTTP/1.1\nHost: a\n\n", 400, 0},
    {"2.2, a bare CR", "GET /x HTTP/1.1\r\nHost: a\rb\r\n\r\n", 400, 0},
    {"no version", "GET /x\r\n\r\n", 400, 0},
    {"a blank in the target", "GET /x y HTTP/1.1\r\nHost: a\r\n\r\n", 400, 0},
    {"absolute form", "GET http://b/x HTTP/1.1\r\nHost: a\r\n\r\n", 400, 0},
    {"2.3, HTTP/2.0", "GET /x HTTP/2.0\r\nHost: a\r\n\r\n", 505, 0},
    {"2.3, HTTP/1.7", "GET /x HTTP/1.7\r\nHost: a\r\n\r\n", 505, 0},
    {"9.1 of RFC 9110, an unknown method", "BREW /x HTTP/1.1\r\nHost: a\r\n\r\n", 501, 0},
    {"methods have their case", "get /x HTTP/1.1\r\nHost: a\r\n\r\n", 501, 0},
    {"RFC 9110 10.1.1, another expectation", "GET /x HTTP/1.1\r\nHost: a\r\nExpect: tea\r\n\r\n",
     417, 0},
};

START_TEST(each_head_is_judged_as_the_standard_says)
{
    struct http_head head;
    enum http_head_state state =
        http_head_judge(heads[_i].bytes, strlen(heads[_i].bytes), HEAD_MAX, BODY_MAX, &head);

    if (heads[_i].status == 0) {
        ck_assert_msg(state == HTTP_HEAD_WHOLE, "%s", heads[_i].what);
        ck_assert_uint_eq(head.head_bytes, strlen(heads[_i].bytes));
        ck_assert_uint_eq(head.body_bytes, heads[_i].body_bytes);
    } else {
        ck_assert_msg(state == HTTP_HEAD_REFUSED, "%s", heads[_i].what);
        ck_assert_msg(head.status == heads[_i].status, "%s: %d", heads[_i].what, head.status);
    }
}
END_TEST

START_TEST(a_good_head_is_unfinished_until_its_last_byte)
{
    const char *bytes = heads[0].bytes;
    struct http_head head;
    size_t length;

    for (length = 0; length < strlen(bytes); length++) {
        ck_assert_int_eq(http_head_judge(bytes, length, HEAD_MAX, BODY_MAX, &head),
                         HTTP_HEAD_UNFINISHED);
    }
}
END_TEST

START_TEST(a_nul_is_refused)
{
    static const char bytes[] = "GET /x HTTP/1.1\r\nHost: a\r\nX: a\0b\r\n\r\n";
    struct http_head head;

    ck_assert_int_eq(http_head_judge(bytes, sizeof(bytes) - 1, HEAD_MAX, BODY_MAX, &head),
                     HTTP_HEAD_REFUSED);
    ck_assert_int_eq(head.status, 400);
}
END_TEST

START_TEST(the_sixty_fifth_field_is_one_too_many)
{
    char bytes[HEAD_MAX] = "GET /x HTTP/1.1\r\nHost: a\r\n";
    struct http_head head;
    int i;

    for (i = 0; i < HTTP_FIELDS_MAX - 1; i++) {
        strcat(bytes, "X: y\r\n");
    }
    strcat(bytes, "\r\n");
    ck_assert_int_eq(http_head_judge(bytes, strlen(bytes), HEAD_MAX, BODY_MAX, &head),
                     HTTP_HEAD_WHOLE);
    bytes[strlen(bytes) - 2] = '\0';
    strcat(bytes, "X: y\r\n\r\n");
    ck_assert_int_eq(http_head_judge(bytes, strlen(bytes), HEAD_MAX, BODY_MAX, &head),
                     HTTP_HEAD_REFUSED);
    ck_assert_int_eq(head.status, 431); /* RFC 6585, section 5 */
}
END_TEST

START_TEST(a_head_or_target_that_does_not_end_is_refused_at_its_limit)
{
    char bytes[HEAD_MAX + 1];
    struct http_head head;

    memset(bytes, 'x', sizeof(bytes));
    memcpy(bytes, "GET /", 5);
    ck_assert_int_eq(http_head_judge(bytes, HEAD_MAX, HEAD_MAX, BODY_MAX, &head),
                     HTTP_HEAD_REFUSED);
    ck_assert_int_eq(head.status, 414); /* RFC 9110, 15.5.15 */
    memcpy(bytes, "GET / HTTP/1.1\r\nX:", 18);
    ck_assert_int_eq(http_head_judge(bytes, HEAD_MAX, HEAD_MAX, BODY_MAX, &head),
                     HTTP_HEAD_REFUSED);
    ck_assert_int_eq(head.status, 431);
}
END_TEST

static const struct {
    const char *bytes;
    int status; /* 0: whole; -1: unfinished */
    size_t body_bytes;
} chunked[] = {
    {"3\r\nabc\r\n0\r\n\r\n", 0, 3}, /* RFC 9112, section 7.1 */
    {"3\r\nabc\r\n00A\r\n0123456789\r\n0\r\n\r\nrest", 0, 13},
    {"0\r\n\r\n", 0, 0},
    {"3\r\nabc\r\n0\r\n\r", -1, 0},
    {"3\r\nab", -1, 0},
    {"3\r\nabcd\r\n", 400, 0},
    {"0x3\r\nabc\r\n0\r\n\r\n", 400, 0},
    {"-1\r\nabc\r\n0\r\n\r\n", 400, 0},
    {"\r\nabc\r\n0\r\n\r\n", 400, 0},
    {"3\nabc\n0\n\n", 400, 0},
    {"3;a=b\r\nabc\r\n0\r\n\r\n", 400, 0},
    {"000000003\r\nabc\r\n0\r\n\r\n", 400, 0},
    {"0\r\nTrailer: x\r\n\r\n", 400, 0},
    {"65\r\n", 413, 0}, /* 101 bytes */
    {"ffffffff\r\n", 413, 0},
};

/* Judges `bytes` as they come, one more at each call, like a slow client sends them. */
static enum http_head_state
judge_byte_by_byte(const char *bytes, struct http_chunks *chunks, struct http_head *head)
{
    enum http_head_state state = HTTP_HEAD_UNFINISHED;
    size_t length;

    for (length = 0; length <= strlen(bytes) && state == HTTP_HEAD_UNFINISHED; length++) {
        state = http_chunks_judge(bytes, length, BODY_MAX, chunks, head);
    }
    return state;
}

START_TEST(chunks_are_judged_the_same_at_once_and_byte_by_byte)
{
    struct http_chunks at_once = {0}, slowly = {0};
    struct http_head head = {0}, slow_head = {0};
    enum http_head_state state =
        http_chunks_judge(chunked[_i].bytes, strlen(chunked[_i].bytes), BODY_MAX, &at_once, &head);

    ck_assert_int_eq(judge_byte_by_byte(chunked[_i].bytes, &slowly, &slow_head), state);
    ck_assert_int_eq(slow_head.status, head.status);
    if (chunked[_i].status == 0) {
        ck_assert_int_eq(state, HTTP_HEAD_WHOLE);
        ck_assert_uint_eq(at_once.body_bytes, chunked[_i].body_bytes);
        ck_assert_uint_eq(slowly.at, at_once.at);
    } else if (chunked[_i].status < 0) {
        ck_assert_int_eq(state, HTTP_HEAD_UNFINISHED);
    } else {
        ck_assert_int_eq(state, HTTP_HEAD_REFUSED);
        ck_assert_int_eq(head.status, chunked[_i].status);
    }
}
END_TEST

int
main(void)
{
    Suite *suite = suite_create("http_head");
    TCase *tests = tcase_create("http_head");
    SRunner *runner;
    int failed;

    tcase_add_loop_test(tests, each_head_is_judged_as_the_standard_says, 0,
                        (int)(sizeof(heads) / sizeof(heads[0])));
    tcase_add_test(tests, a_good_head_is_unfinished_until_its_last_byte);
    tcase_add_test(tests, a_nul_is_refused);
    tcase_add_test(tests, the_sixty_fifth_field_is_one_too_many);
    tcase_add_test(tests, a_head_or_target_that_does_not_end_is_refused_at_its_limit);
    tcase_add_loop_test(tests, chunks_are_judged_the_same_at_once_and_byte_by_byte, 0,
                        (int)(sizeof(chunked) / sizeof(chunked[0])));
    suite_add_tcase(suite, tests);
    runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
