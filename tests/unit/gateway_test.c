/* Gateways: who may send, what a field map makes of a request, what we send. */
#include <check.h>
#include <jansson.h>
#include <stdlib.h>
#include <string.h>
#include <strings.h>

#include "gateway.h"
#include "memory.h"

static const int64_t now = 1795617000; /* 2026-11-25T14:30:00Z */

static const struct config config = {
    .country_code = "1", .national_prefix = "1", .national_digits = 10};

static void *arena;
static struct fault fault;
static struct gateway gateway;
static struct name_value sent_headers[4];

static void
set_up(void)
{
    arena = talloc_new(NULL);
    gateway = (struct gateway){
        .name = "valley",
        .message = {.sender = "/from",
                    .text = "/text",
                    .id = "/id",
                    .sent = "/sent",
                    .recipient = "/to",
                    .attachments = "/pictures"},
        .delivery = {.configured = true, .message_id = "/id", .status = "/state"},
        .send = {.method = "POST", .url = "https://gateway.example/texts", .from = "+12085550100"}};
    memset(sent_headers, 0, sizeof(sent_headers));
    fault.text[0] = '\0';
}

static void
tear_down(void)
{
    talloc_free(arena);
}

static const char *
header(const struct incoming *incoming, const char *name)
{
    const struct name_value *headers = incoming->request;
    size_t i;

    for (i = 0; i < 4 && headers[i].name != NULL; i++) {
        if (strcasecmp(headers[i].name, name) == 0) {
            return headers[i].value;
        }
    }
    return NULL;
}

static struct incoming
incoming_of(const char *body)
{
    return (struct incoming){.url = "https://texts.example/messages/valley?x=1",
                             .body = body,
                             .body_length = strlen(body),
                             .header = header,
                             .request = sent_headers};
}

static bool
is_authentic(const char *body)
{
    struct incoming incoming = incoming_of(body);

    fault.text[0] = '\0';
    return gateway_authentic(&gateway, &incoming, now, &fault);
}

/* ---- Authentication: what is published stands in tests/outside ------------------------------ */

static void
bearer_with(const char *value)
{
    gateway.authentication = (struct authentication){.kind = AUTHENTICATION_BEARER,
                                                     .secrets = {"old token 1", "mF_9.B5f-4.1JqM"},
                                                     .secret_count = 2};
    sent_headers[0] = (struct name_value){"Authorization", value};
}

START_TEST(a_bearer_token_is_good_only_whole)
{
    static const struct {
        const char *value;
        bool good;
    } offered[] = {
        {"Bearer mF_9.B5f-4.1JqM", true}, /* RFC 6750, 2.1 */
        {"bearer mF_9.B5f-4.1JqM", true}, /* RFC 9110, 11.1: schemes have no case */
        {"Bearer  mF_9.B5f-4.1JqM", true},
        {"Bearer mF_9.B5f-4.1JqN", false},
        {"Bearer mF_9.B5f-4.1Jq", false},
        {"Bearer mF_9.B5f-4.1JqMM", false},
        {"Bearer MF_9.B5f-4.1JqM", false},
        {"Bearer ", false},
        {"Bearer", false},
        {"BearermF_9.B5f-4.1JqM", false},
        {"Basic mF_9.B5f-4.1JqM", false},
        {NULL, false},
    };

    bearer_with(offered[_i].value);
    ck_assert_int_eq(is_authentic("{}"), offered[_i].good);
    ck_assert_int_eq(fault.text[0] == '\0', offered[_i].good);
    ck_assert_ptr_null(strstr(fault.text, "mF_9"));
}
END_TEST

START_TEST(a_challenge_names_the_scheme)
{
    bearer_with(NULL);
    ck_assert_int_eq(strncmp(gateway_challenge(&gateway), "Bearer ", 7), 0);
    gateway.authentication.kind = AUTHENTICATION_BASIC;
    ck_assert_int_eq(strncmp(gateway_challenge(&gateway), "Basic ", 6), 0);
}
END_TEST

START_TEST(a_signature_over_url_header_and_sorted_form)
{
    /* printf '%s' 'https://texts.example/messages/valley?x=1|7|bodyhi therefrom+12085550123' |
     * openssl dgst -sha256 -hmac 'a secret of the valley' (OpenSSL 3.0) */
    gateway.authentication =
        (struct authentication){.kind = AUTHENTICATION_HMAC_SHA256,
                                .secrets = {"a secret of the valley"},
                                .secret_count = 1,
                                .header = "X-Signature",
                                .signed_over = "{url}|{header:X-Count}|{sorted-form}",
                                .prefix = "sha256="};
    sent_headers[0] = (struct name_value){
        "x-signature", "sha256=5dbeebe01354aba3a1240a854a1e4b1d5b912defb3bab3aacaad1c4792a7e56b"};
    sent_headers[1] = (struct name_value){"X-Count", "7"};
    ck_assert_msg(is_authentic("from=%2B12085550123&body=hi+there"), "%s", fault.text);
    ck_assert(is_authentic("body=hi%20there&from=%2B12085550123"));
    ck_assert(!is_authentic("from=%2B12085550123&body=hi+there!"));
    sent_headers[1].value = "8";
    ck_assert(!is_authentic("from=%2B12085550123&body=hi+there"));
    sent_headers[1].name = NULL;
    ck_assert(!is_authentic("from=%2B12085550123&body=hi+there"));
    ck_assert_ptr_nonnull(strstr(fault.text, "X-Count"));
}
END_TEST

START_TEST(a_signature_that_is_none_is_refused)
{
    static const char *const bad[] = {
        "",
        "sha256=",
        "sha256=00",
        "sha256=zz",
        "0000000000000000000000000000000000000000000000000000000000000000",
        "sha256=00000000000000000000000000000000000000000000000000000000000000000000"};

    gateway.authentication = (struct authentication){.kind = AUTHENTICATION_HMAC_SHA256,
                                                     .secrets = {"a secret of the valley"},
                                                     .secret_count = 1,
                                                     .header = "X-Signature",
                                                     .signed_over = "{body}",
                                                     .prefix = "sha256="};
    sent_headers[0] = (struct name_value){"X-Signature", bad[_i]};
    ck_assert(!is_authentic("{}"));
}
END_TEST

START_TEST(without_authentication_anyone_is_let_in)
{
    gateway.authentication.kind = AUTHENTICATION_NONE;
    ck_assert(is_authentic("{}"));
}
END_TEST

/* ---- Field maps ----------------------------------------------------------------------------- */

static int
map(const char *body, struct message *message)
{
    struct incoming incoming = incoming_of(body);

    return gateway_message(arena, &config, &gateway, &incoming, now, message, &fault);
}

static struct message
mapped(const char *body)
{
    struct message message;

    ck_assert_msg(map(body, &message) == 0, "%s", fault.text);
    return message;
}

static void
refused(const char *body, const char *holds)
{
    struct message message = {.text = "untouched"};

    ck_assert_int_eq(map(body, &message), -1);
    ck_assert_msg(strstr(fault.text, holds) != NULL, "%s", fault.text);
    ck_assert_str_eq(message.text, "untouched");
}

START_TEST(every_field_goes_to_its_place)
{
    struct message message = mapped(
        "{\"from\":\"(208) 555-0123\",\"text\":\"how long\",\"id\":17,\"to\":\"+12085550100\","
        "\"sent\":\"2026-11-25T07:00:00-07:00\",\"pictures\":[{},{}]}");

    ck_assert_str_eq(message.gateway, "valley");
    ck_assert_str_eq(message.sender, "+12085550123");
    ck_assert_str_eq(message.recipient, "+12085550100");
    ck_assert_str_eq(message.text, "how long");
    ck_assert_str_eq(message.id, "17");
    ck_assert_int_eq(message.sent_utc_s, now - 1800);
    ck_assert_int_eq(message.received_utc_s, now);
    ck_assert_int_eq(message.attachments, 2);
}
END_TEST

/* A reload may free the configuration while a text waits for a busy store. */
START_TEST(a_text_holds_nothing_of_the_configuration)
{
    struct message message = mapped("{\"from\":\"+12085550123\",\"text\":\"hi\"}");

    ck_assert_ptr_ne(message.gateway, gateway.name);
    ck_assert_str_eq(message.gateway, gateway.name);
}
END_TEST

START_TEST(what_is_optional_may_be_missing)
{
    struct message message =
        mapped("{\"from\":12085550123,\"text\":\"hi\",\"id\":null,\"sent\":\"\"}");

    ck_assert_str_eq(message.sender, "+12085550123");
    ck_assert_ptr_null(message.id);
    ck_assert_ptr_null(message.recipient);
    ck_assert_int_eq(message.sent_utc_s, now);
    ck_assert_int_eq(message.attachments, 0);
}
END_TEST

START_TEST(a_bad_request_is_told_what_is_wrong)
{
    static const struct {
        const char *body, *holds;
    } bad[] = {
        {"{\"from\":", "not JSON: line 1"},
        {"{\"from\":\"1\",\"from\":\"2\"}", "not JSON"},
        {"[]", "/from"},
        {"{\"text\":\"hi\"}", "/from"},
        {"{\"from\":{},\"text\":\"hi\"}", "an object"},
        {"{\"from\":\"INFO\",\"text\":\"hi\"}", "\"INFO\""},
        {"{\"from\":\"+12085550123\"}", "/text"},
        {"{\"from\":\"+12085550123\",\"text\":\"\"}", "empty"},
        {"{\"from\":\"+12085550123\",\"text\":17}", "/text"},
        {"{\"from\":\"+12085550123\",\"text\":true}", "true or false"},
        {"{\"from\":\"+12085550123\",\"text\":\"hi\",\"sent\":\"noon\"}", "RFC 3339"},
        {"{\"from\":\"+12085550123\",\"text\":\"d\xff"
         "ue\"}",
         "not JSON"},
        {"{\"from\":\"+12085550123\",\"text\":\"d\\u0000ue\"}", "not JSON"},
    };

    refused(bad[_i].body, bad[_i].holds);
}
END_TEST

START_TEST(a_refusal_of_bad_json_does_not_repeat_the_text)
{
    refused("{\"from\":\"+12085550123\",\"text\":\"my chest hurts", "not JSON");
    ck_assert_ptr_null(strstr(fault.text, "chest"));
}
END_TEST

START_TEST(a_picture_alone_is_a_text)
{
    struct message message = mapped("{\"from\":\"+12085550123\",\"pictures\":1}");

    ck_assert_str_eq(message.text, "");
    ck_assert_int_eq(message.attachments, 1);
}
END_TEST

START_TEST(attachments_are_counted_however_they_are_told)
{
    static const struct {
        const char *told;
        int count;
    } ways[] = {{"[]", 0},       {"[1,2,3]", 3},
                {"2", 2},        {"\"2\"", 2},
                {"\"0\"", 0},    {"\"\"", 0},
                {"null", 0},     {"-3", 0},
                {"100000", 100}, {"\"https://gateway.example/p\"", 1}};
    char *body = memory_format(
        arena, "{\"from\":\"+12085550123\",\"text\":\"look\",\"pictures\":%s}", ways[_i].told);

    ck_assert_int_eq(mapped(body).attachments, ways[_i].count);
}
END_TEST

START_TEST(times_are_read_and_those_that_cannot_be_are_not_believed)
{
    static const struct {
        const char *sent;
        int64_t utc_s;
    } times[] = {
        {"\"2026-11-25T14:20:00Z\"", 1795616400}, /* RFC 3339 */
        {"\"2026-11-25T07:20:00.123-07:00\"", 1795616400},
        {"1795616400", 1795616400},
        {"\"1795616400\"", 1795616400},
        {"1795616400000", 1795616400}, /* milliseconds */
        {"1795617060", 1795617000},    /* a minute ahead: their clock is wrong */
        {"0", 1795617000},             /* 1970 */
    };
    char *body = memory_format(arena, "{\"from\":\"+12085550123\",\"text\":\"hi\",\"sent\":%s}",
                               times[_i].sent);

    ck_assert_int_eq(mapped(body).sent_utc_s, times[_i].utc_s);
}
END_TEST

START_TEST(a_form_is_mapped_by_names)
{
    struct message message;

    gateway.message = (struct message_fields){
        .form = true, .sender = "From", .text = "Body", .attachments = "Count"};
    message = mapped("From=%2B12085550123&Body=two+lights%0Aleft&Count=0");
    ck_assert_str_eq(message.sender, "+12085550123");
    ck_assert_str_eq(message.text, "two lights\nleft");
    ck_assert_int_eq(message.attachments, 0);
    refused("From=%2B12085550123&Body=d%FFue", "not UTF-8");
    refused("Body=hi", "From");
}
END_TEST

START_TEST(a_text_that_is_too_long_is_cut_at_a_character)
{
    char *text = memory_copy(arena, "x");
    struct message message;
    int i;

    for (i = 0; i < GATEWAY_TEXT_MAX / 2; i++) {
        memory_append(&text, "\xc3\xb1");
    }
    message = mapped(memory_format(arena, "{\"from\":\"+12085550123\",\"text\":\"%s\"}", text));
    ck_assert_uint_eq(strlen(message.text), GATEWAY_TEXT_MAX - 1);
    ck_assert_int_eq(strncmp(message.text, text, GATEWAY_TEXT_MAX - 1), 0);
    message = mapped(memory_format(arena, "{\"from\":\"+12085550123\",\"text\":\"%s\"}", text + 1));
    ck_assert_uint_eq(strlen(message.text), GATEWAY_TEXT_MAX);
}
END_TEST

START_TEST(an_id_beyond_all_measure_is_refused)
{
    char id[GATEWAY_ID_MAX + 2];

    memset(id, 'i', sizeof(id));
    id[sizeof(id) - 1] = '\0';
    refused(memory_format(arena, "{\"from\":\"+12085550123\",\"text\":\"hi\",\"id\":\"%s\"}", id),
            "/id");
    ck_assert_uint_eq(
        strlen(
            mapped(memory_format(arena, "{\"from\":\"+12085550123\",\"text\":\"hi\",\"id\":\"%s\"}",
                                 id + 1))
                .id),
        GATEWAY_ID_MAX);
}
END_TEST

START_TEST(types_of_content_are_told_apart)
{
    ck_assert(gateway_reads_type(false, NULL));
    ck_assert(gateway_reads_type(true, NULL));
    ck_assert(gateway_reads_type(false, "application/json"));
    ck_assert(gateway_reads_type(false, "Application/JSON; charset=utf-8"));
    ck_assert(gateway_reads_type(false, "application/cloudevents+json"));
    ck_assert(!gateway_reads_type(false, "application/x-www-form-urlencoded"));
    ck_assert(!gateway_reads_type(false, "application/jsonp"));
    ck_assert(!gateway_reads_type(false, "json"));
    ck_assert(!gateway_reads_type(false, ""));
    ck_assert(gateway_reads_type(true, "application/x-www-form-urlencoded;charset=UTF-8"));
    ck_assert(!gateway_reads_type(true, "application/json"));
}
END_TEST

START_TEST(a_delivery_report_is_mapped_by_the_gateway_s_words)
{
    static const struct delivery_word words[] = {{"arrived", DELIVERY_DELIVERED},
                                                 {"lost", DELIVERY_FAILED}};
    struct delivery delivery;
    struct incoming incoming = incoming_of("{\"id\":\"m-1\",\"state\":\"Arrived\"}");

    gateway.delivery.words = words;
    gateway.delivery.word_count = 2;
    ck_assert_int_eq(gateway_delivery(arena, &gateway, &incoming, &delivery, &fault), 0);
    ck_assert_str_eq(delivery.message_id, "m-1");
    ck_assert_int_eq(delivery.status, DELIVERY_DELIVERED);
    incoming = incoming_of("{\"id\":\"m-1\",\"state\":\"queued\"}");
    ck_assert_int_eq(gateway_delivery(arena, &gateway, &incoming, &delivery, &fault), 0);
    ck_assert_int_eq(delivery.status, DELIVERY_UNKNOWN);
    ck_assert_str_eq(delivery.word, "queued");
    incoming = incoming_of("{\"state\":\"lost\"}");
    ck_assert_int_eq(gateway_delivery(arena, &gateway, &incoming, &delivery, &fault), -1);
    ck_assert_ptr_nonnull(strstr(fault.text, "/id"));
}
END_TEST

/* ---- What we send --------------------------------------------------------------------------- */

static const struct outgoing outgoing = {.to = "+12085550123",
                                         .text = "It's \"on\" {key}\nsecond line & \xc3\xb1 100%",
                                         .key = "text-17-1",
                                         .now_utc_s = 1795617000};

static struct shaped_request
shaped(void)
{
    struct shaped_request request;

    gateway_shape(arena, &gateway, &outgoing, &request);
    ck_assert_uint_eq(request.body_length, strlen(request.body));
    return request;
}

static const char *
header_of(const struct shaped_request *request, const char *name)
{
    size_t length = strlen(name);
    const char **one;

    for (one = request->headers; *one != NULL; one++) {
        if (strncasecmp(*one, name, length) == 0 && (*one)[length] == ':') {
            return *one + length + 2;
        }
    }
    return NULL;
}

START_TEST(json_is_filled_in_wherever_its_texts_stand)
{
    struct shaped_request request;
    json_t *body, *inner;

    gateway.send.body_json = "{\"messages\":[{\"to\":\"{to}\",\"text\":\"{text}\",\"n\":1}],"
                             "\"{to}\":\"{from}/{key}/{other}/{\"}";
    request = shaped();
    body = json_loads(request.body, 0, NULL);
    ck_assert_ptr_nonnull(body);
    inner = json_array_get(json_object_get(body, "messages"), 0);
    ck_assert_str_eq(json_string_value(json_object_get(inner, "to")), outgoing.to);
    /* filled in once: the renter's own braces stay as they are */
    ck_assert_str_eq(json_string_value(json_object_get(inner, "text")), outgoing.text);
    ck_assert_int_eq(json_integer_value(json_object_get(inner, "n")), 1);
    ck_assert_str_eq(json_string_value(json_object_get(body, "{to}")),
                     "+12085550100/text-17-1/{other}/{");
    json_decref(body);
    ck_assert_str_eq(request.method, "POST");
    ck_assert_str_eq(request.url, "https://gateway.example/texts");
    ck_assert_str_eq(header_of(&request, "Content-Type"), "application/json");
    ck_assert_str_eq(header_of(&request, "Idempotency-Key"), "\"text-17-1\"");
    ck_assert_ptr_null(header_of(&request, "webhook-signature"));
}
END_TEST

START_TEST(a_form_and_a_url_are_filled_in_encoded)
{
    static const struct name_value fields[] = {{"to", "{to}"}, {"body", "{text}"}};
    struct shaped_request request;

    gateway.send.form = true;
    gateway.send.form_fields = fields;
    gateway.send.form_field_count = 2;
    gateway.send.url = "https://gateway.example/{to}?key={key}";
    request = shaped();
    ck_assert_str_eq(request.url, "https://gateway.example/%2B12085550123?key=text-17-1");
    ck_assert_str_eq(request.body, "to=%2B12085550123&body=It%27s+%22on%22+%7Bkey%7D%0A"
                                   "second+line+%26+%C3%B1+100%25");
    ck_assert_str_eq(header_of(&request, "Content-Type"), "application/x-www-form-urlencoded");
}
END_TEST

START_TEST(configured_headers_stand_before_ours)
{
    static const struct name_value headers[] = {{"idempotency-key", "{key}"},
                                                {"Authorization", "Bearer t"},
                                                {"content-type", "application/vnd.valley+json"}};
    struct shaped_request request;

    gateway.send.headers = headers;
    gateway.send.header_count = 3;
    gateway.send.body_json = "{\"a\":\"{text}\"}";
    request = shaped();
    ck_assert_str_eq(request.headers[0], "idempotency-key: text-17-1");
    ck_assert_str_eq(request.headers[1], "Authorization: Bearer t");
    ck_assert_str_eq(request.headers[2], "content-type: application/vnd.valley+json");
    ck_assert_ptr_null(request.headers[3]);
}
END_TEST

START_TEST(the_gateway_s_id_is_read_from_its_answer)
{
    static const char body[] = "{\"messages\":[{\"id\":4711}]}";

    ck_assert_ptr_null(gateway_accepted_id(arena, &gateway, body, strlen(body)));
    gateway.send.message_id = "/messages/0/id";
    ck_assert_str_eq(gateway_accepted_id(arena, &gateway, body, strlen(body)), "4711");
    ck_assert_ptr_null(gateway_accepted_id(arena, &gateway, "<html>", 6));
    ck_assert_ptr_null(gateway_accepted_id(arena, &gateway, "{}", 2));
    gateway.send.message_id = "/messages";
    ck_assert_ptr_null(gateway_accepted_id(arena, &gateway, body, strlen(body)));
}
END_TEST

int
main(void)
{
    Suite *suite = suite_create("gateway");
    TCase *tests = tcase_create("gateway");
    SRunner *runner;
    int failed;

    tcase_add_checked_fixture(tests, set_up, tear_down);
    tcase_add_loop_test(tests, a_bearer_token_is_good_only_whole, 0, 12);
    tcase_add_test(tests, a_challenge_names_the_scheme);
    tcase_add_test(tests, a_signature_over_url_header_and_sorted_form);
    tcase_add_loop_test(tests, a_signature_that_is_none_is_refused, 0, 6);
    tcase_add_test(tests, without_authentication_anyone_is_let_in);
    tcase_add_test(tests, every_field_goes_to_its_place);
    tcase_add_test(tests, a_text_holds_nothing_of_the_configuration);
    tcase_add_test(tests, what_is_optional_may_be_missing);
    tcase_add_loop_test(tests, a_bad_request_is_told_what_is_wrong, 0, 13);
    tcase_add_test(tests, a_refusal_of_bad_json_does_not_repeat_the_text);
    tcase_add_test(tests, a_picture_alone_is_a_text);
    tcase_add_loop_test(tests, attachments_are_counted_however_they_are_told, 0, 10);
    tcase_add_loop_test(tests, times_are_read_and_those_that_cannot_be_are_not_believed, 0, 7);
    tcase_add_test(tests, a_form_is_mapped_by_names);
    tcase_add_test(tests, a_text_that_is_too_long_is_cut_at_a_character);
    tcase_add_test(tests, an_id_beyond_all_measure_is_refused);
    tcase_add_test(tests, types_of_content_are_told_apart);
    tcase_add_test(tests, a_delivery_report_is_mapped_by_the_gateway_s_words);
    tcase_add_test(tests, json_is_filled_in_wherever_its_texts_stand);
    tcase_add_test(tests, a_form_and_a_url_are_filled_in_encoded);
    tcase_add_test(tests, configured_headers_stand_before_ours);
    tcase_add_test(tests, the_gateway_s_id_is_read_from_its_answer);
    suite_add_tcase(suite, tests);
    runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
