/*
 * What strangers send, before anyone knows who they are: heads and chunks of requests, bodies,
 * signatures, numbers. libFuzzer; the first byte says which reader is tried.
 *
 *   CC=clang meson setup build-fuzz && ninja -C build-fuzz tests/gateway_fuzz
 *   build-fuzz/tests/gateway_fuzz -max_total_time=60
 */
#include <assert.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#include "config.h"
#include "gateway.h"
#include "http_head.h"
#include "memory.h"

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

static const char *signature; /* what every header holds */

static const char *
header(const struct incoming *incoming, const char *name)
{
    (void)incoming;
    (void)name;
    return signature;
}

static void
try_gateway(void *arena, bool form, const char *bytes, size_t length)
{
    static const struct config config = {
        .country_code = "1", .national_prefix = "1", .national_digits = 10};
    const struct gateway gateway = {
        .name = "valley",
        .message = {form, "/from", "/text", "/id", "/sent", "/to", "/pictures"},
        .delivery = {true, form, "/id", "/state", NULL, 0},
        .send = {.message_id = "/id"}};
    struct incoming incoming = {.url = "u", .body = bytes, .body_length = length, .header = header};
    struct message message = {0};
    struct delivery delivery;
    struct fault fault;

    if (gateway_message(arena, &config, &gateway, &incoming, 1795617000, &message, &fault) == 0) {
        assert(message.sender != NULL && strlen(message.text) <= GATEWAY_TEXT_MAX);
        assert(message.sent_utc_s <= message.received_utc_s);
    }
    (void)gateway_delivery(arena, &gateway, &incoming, &delivery, &fault);
    (void)gateway_accepted_id(arena, &gateway, bytes, length);
}

static void
try_proof(enum authentication_kind kind, const char *bytes, size_t length)
{
    const struct gateway gateway = {
        .authentication = {.kind = kind,
                           .secrets = {"whsec_MfKQ9r8GKYqrTwjUPD8ILPZIo2LaLaSw"},
                           .secret_count = 1,
                           .tolerance_s = 300,
                           .header = "X",
                           .signed_over = "{url}{header:X}{sorted-form}{body}",
                           .prefix = ""}};
    struct incoming incoming = {.url = "u", .body = bytes, .body_length = length, .header = header};
    struct fault fault;

    signature = bytes;
    assert(!gateway_authentic(&gateway, &incoming, 1614265330, &fault));
}

static void
try_http(const char *bytes, size_t length)
{
    struct http_chunks chunks = {0};
    struct http_head head;

    if (http_head_judge(bytes, length, 8192, 65536, &head) == HTTP_HEAD_WHOLE) {
        assert(head.head_bytes <= length && head.body_bytes <= 65536);
    }
    if (http_chunks_judge(bytes, length, 65536, &chunks, &head) == HTTP_HEAD_WHOLE) {
        assert(chunks.at <= length && chunks.body_bytes <= chunks.at);
    }
}

int
LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    void *arena = talloc_new(NULL);
    char *bytes;
    struct config *config = NULL;
    struct faults faults = {0};

    if (size == 0) {
        talloc_free(arena);
        return 0;
    }
    bytes = memory_copy_n(arena, (const char *)data + 1, size - 1);
    switch (data[0] % 8) {
    case 0:
    case 1:
        try_gateway(arena, data[0] % 8 == 1, bytes, strlen(bytes));
        break;
    case 2:
        try_proof(AUTHENTICATION_STANDARD_WEBHOOKS, bytes, strlen(bytes));
        break;
    case 3:
        try_proof(AUTHENTICATION_HMAC_SHA256, bytes, strlen(bytes));
        break;
    case 4:
        try_proof(AUTHENTICATION_BASIC, bytes, strlen(bytes));
        break;
    case 5:
        try_http((const char *)data + 1, size - 1);
        break;
    default:
        if (config_read((const char *)data + 1, size - 1, "f", &config, &faults) == 0) {
            config_free(config);
        }
        faults_release(&faults);
    }
    talloc_free(arena);
    return 0;
}
