/*
 * Standard Webhooks 1.0.0 against its reference library (npm "standardwebhooks", pinned in
 * package.json): we verify what it signs, it verifies what we sign.
 */
#include <check.h>
#include <jansson.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <strings.h>
#include <time.h>
#include <unistd.h>

#include "gateway.h"
#include "memory.h"

enum { SIGNED_BY_LIBRARY = 27 };

static void *arena;

static void
set_up(void)
{
    arena = talloc_new(NULL);
}

static void
tear_down(void)
{
    talloc_free(arena);
}

static FILE *
library(const char *arguments)
{
    const char *top = getenv("SOURCE_ROOT");
    FILE *output;

    ck_assert_msg(top != NULL, "SOURCE_ROOT names the folder of the sources");
    output = popen(
        memory_format(arena, "node '%s/tests/outside/standard_webhooks.mjs' %s", top, arguments),
        "r");
    ck_assert_ptr_nonnull(output);
    return output;
}

static const char *
member(const json_t *request, const char *name)
{
    const char *text = json_string_value(json_object_get(request, name));

    ck_assert_msg(text != NULL, "%s", name);
    return text;
}

static const char *
header(const struct incoming *incoming, const char *name)
{
    const json_t *request = incoming->request;

    return strcasecmp(name, "webhook-id") == 0          ? member(request, "id")
           : strcasecmp(name, "webhook-timestamp") == 0 ? member(request, "timestamp")
           : strcasecmp(name, "webhook-signature") == 0 ? member(request, "signature")
                                                        : NULL;
}

static bool
we_accept(const json_t *request, const char *body, size_t length)
{
    struct gateway gateway = {.authentication = {.kind = AUTHENTICATION_STANDARD_WEBHOOKS,
                                                 .secrets = {member(request, "secret")},
                                                 .secret_count = 1,
                                                 .tolerance_s = 300}};
    struct incoming incoming = {
        .body = body, .body_length = length, .header = header, .request = request};
    struct fault fault;

    return gateway_authentic(&gateway, &incoming, (int64_t)time(NULL), &fault);
}

START_TEST(what_the_library_signs_we_verify_and_a_changed_byte_we_refuse)
{
    FILE *output = library("sign");
    char *line = NULL;
    size_t room = 0;
    int count = 0;

    while (getline(&line, &room, output) > 0) {
        json_t *request = json_loads(line, 0, NULL);
        char *body = memory_copy(arena, member(request, "body"));
        size_t length = strlen(body);

        ck_assert_msg(we_accept(request, body, length), "%s", line);
        if (length > 0) {
            body[length / 2] ^= 1;
            ck_assert_msg(!we_accept(request, body, length), "%s", line);
        }
        json_decref(request);
        count++;
    }
    free(line);
    ck_assert_int_eq(pclose(output), 0);
    ck_assert_int_eq(count, SIGNED_BY_LIBRARY);
}
END_TEST

static const char *
value_of(const struct shaped_request *request, const char *name)
{
    const char **one;

    for (one = request->headers; *one != NULL; one++) {
        if (strncmp(*one, name, strlen(name)) == 0) {
            return *one + strlen(name);
        }
    }
    ck_abort_msg("no header %s", name);
    return NULL;
}

/* One request as we send it, as a line for the library; `change` spoils what was signed. */
static void
write_ours(FILE *input, const char *text, const char *change)
{
    static const char secret[] = "whsec_MfKQ9r8GKYqrTwjUPD8ILPZIo2LaLaSw";
    struct gateway gateway = {.send = {.method = "POST",
                                       .url = "https://gateway.example/texts",
                                       .body_json = "{\"to\":\"{to}\",\"text\":\"{text}\"}",
                                       .from = "+12085550100",
                                       .secret = secret}};
    struct outgoing outgoing = {"+12085550123", text, "text-17-1", (int64_t)time(NULL)};
    struct shaped_request request;
    json_t *line;

    gateway_shape(arena, &gateway, &outgoing, &request);
    line = json_pack("{s:s, s:s, s:s, s:s, s:s+}", "secret", secret, "id",
                     value_of(&request, "webhook-id: "), "timestamp",
                     value_of(&request, "webhook-timestamp: "), "signature",
                     value_of(&request, "webhook-signature: "), "body", request.body, change);
    ck_assert_ptr_nonnull(line);
    ck_assert_int_eq(json_dumpf(line, input, JSON_COMPACT), 0);
    (void)fputc('\n', input);
    json_decref(line);
}

START_TEST(what_we_sign_the_library_verifies_and_a_changed_body_it_refuses)
{
    static const char *const texts[] = {"Plan on 2 h 15 min.", "",
                                        "\xc2\xbfhoras? \xf0\x9f\x99\x82",
                                        "line one\nline \"two\" {key}"};
    char path[] = "/tmp/hutbell-outside-XXXXXX";
    int fd = mkstemp(path);
    FILE *input = fdopen(fd, "w");
    FILE *output;
    char verdict[16];
    size_t i;

    for (i = 0; i < sizeof(texts) / sizeof(texts[0]); i++) {
        write_ours(input, texts[i], "");
        write_ours(input, texts[i], " ");
    }
    ck_assert_int_eq(fclose(input), 0);
    output = library(memory_format(arena, "verify < %s", path));
    for (i = 0; i < sizeof(texts) / sizeof(texts[0]); i++) {
        ck_assert_ptr_nonnull(fgets(verdict, sizeof(verdict), output));
        ck_assert_str_eq(verdict, "good\n");
        ck_assert_ptr_nonnull(fgets(verdict, sizeof(verdict), output));
        ck_assert_str_eq(verdict, "bad\n");
    }
    ck_assert_int_eq(pclose(output), 0);
    ck_assert_int_eq(unlink(path), 0);
}
END_TEST

int
main(void)
{
    Suite *suite = suite_create("standard webhooks");
    TCase *tests = tcase_create("reference library");
    SRunner *runner;
    int failed;

    tcase_add_checked_fixture(tests, set_up, tear_down);
    tcase_set_timeout(tests, 60);
    tcase_add_test(tests, what_the_library_signs_we_verify_and_a_changed_byte_we_refuse);
    tcase_add_test(tests, what_we_sign_the_library_verifies_and_a_changed_body_it_refuses);
    suite_add_tcase(suite, tests);
    runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
