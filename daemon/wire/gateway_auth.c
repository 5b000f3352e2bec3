/* Who sent a request: the four ways in which a gateway proves itself. */
#include "gateway.h"

#include <stdlib.h>
#include <string.h>
#include <strings.h>

#include <sodium.h>

#include "clock.h"
#include "form.h"
#include "gateway_parts.h"
#include "memory.h"

enum { SIGNATURE_BYTES = crypto_auth_hmacsha256_BYTES, SIGNATURES_MAX = 32 };

void
gateway_hmac(const void *key, size_t key_length, const void *data, size_t length,
             unsigned char signature[32])
{
    crypto_auth_hmacsha256_state state;

    (void)crypto_auth_hmacsha256_init(&state, key, key_length);
    (void)crypto_auth_hmacsha256_update(&state, data, length);
    (void)crypto_auth_hmacsha256_final(&state, signature);
    sodium_memzero(&state, sizeof(state));
}

/* Base64 with or without padding. Returns 0 and the length, or -1. */
static int
from_base64(const char *text, size_t text_length, unsigned char *bytes, size_t room, size_t *length)
{
    if (sodium_base642bin(bytes, room, text, text_length, NULL, length, NULL,
                          sodium_base64_VARIANT_ORIGINAL) == 0) {
        return 0;
    }
    return sodium_base642bin(bytes, room, text, text_length, NULL, length, NULL,
                             sodium_base64_VARIANT_ORIGINAL_NO_PADDING);
}

int
gateway_webhook_key(const char *secret, unsigned char key[GATEWAY_KEY_MAX], size_t *length)
{
    static const char prefix[] = "whsec_";

    if (strncmp(secret, prefix, strlen(prefix)) == 0) {
        secret += strlen(prefix);
    }
    if (from_base64(secret, strlen(secret), key, GATEWAY_KEY_MAX, length) != 0) {
        return -1;
    }
    return *length >= GATEWAY_KEY_MIN ? 0 : -1;
}

char *
gateway_webhook_signature(void *arena, const char *secret, const char *id, int64_t timestamp,
                          const char *body, size_t body_length)
{
    unsigned char key[GATEWAY_KEY_MAX];
    unsigned char signature[SIGNATURE_BYTES];
    char text[sodium_base64_ENCODED_LEN(SIGNATURE_BYTES, sodium_base64_VARIANT_ORIGINAL)];
    size_t key_length;
    char *head = memory_format(arena, "%s.%lld.", id, (long long)timestamp);
    size_t head_length = strlen(head);
    char *content = memory_array(arena, char, head_length + body_length + 1);

    if (gateway_webhook_key(secret, key, &key_length) != 0) {
        return NULL;
    }
    memcpy(content, head, head_length + 1);
    memcpy(content + head_length, body, body_length);
    gateway_hmac(key, key_length, content, head_length + body_length, signature);
    sodium_memzero(key, sizeof(key));
    (void)sodium_bin2base64(text, sizeof(text), signature, sizeof(signature),
                            sodium_base64_VARIANT_ORIGINAL);
    return memory_format(arena, "v1,%s", text);
}

/* True for equal texts; the time it takes tells nothing of what they share. */
static bool
is_same(const char *one, const char *other)
{
    unsigned char a[crypto_hash_sha256_BYTES], b[crypto_hash_sha256_BYTES];

    (void)crypto_hash_sha256(a, (const unsigned char *)one, strlen(one));
    (void)crypto_hash_sha256(b, (const unsigned char *)other, strlen(other));
    return sodium_memcmp(a, b, sizeof(a)) == 0;
}

/* Tries all secrets, whichever fits. */
static bool
is_any_secret(const struct authentication *authentication, const char *offered)
{
    unsigned matches = 0;
    size_t i;

    for (i = 0; i < authentication->secret_count; i++) {
        matches |= is_same(authentication->secrets[i], offered) ? 1U : 0U;
    }
    return matches != 0;
}

/* Whole Unix seconds and nothing else; -1 otherwise. */
static int64_t
read_timestamp(const char *text)
{
    int64_t seconds = 0;

    if (*text == '\0' || strlen(text) > 12) {
        return -1;
    }
    for (; *text != '\0'; text++) {
        if (*text < '0' || *text > '9') {
            return -1;
        }
        seconds = seconds * 10 + (*text - '0');
    }
    return seconds;
}

/* True if one entry of the list "v1,… v1,… v2,…" is the signature that one of our secrets gives. */
static bool
is_listed(const char *list, char *const *expected, size_t expected_count)
{
    unsigned matches = 0;
    int entries;

    for (entries = 0; *list != '\0' && entries < SIGNATURES_MAX; entries++) {
        size_t length = strcspn(list, " ");
        char entry[128];
        size_t i;

        if (length < sizeof(entry)) { /* longer than any signature of ours */
            memcpy(entry, list, length);
            entry[length] = '\0';
            for (i = 0; i < expected_count; i++) {
                matches |= is_same(entry, expected[i]) ? 1U : 0U;
            }
        }
        list += length;
        list += strspn(list, " ");
    }
    return matches != 0;
}

static bool
is_standard_webhook(void *arena, const struct authentication *authentication,
                    const struct incoming *incoming, int64_t now_utc_s, struct fault *fault)
{
    const char *id = incoming->header(incoming, "webhook-id");
    const char *timestamp = incoming->header(incoming, "webhook-timestamp");
    const char *list = incoming->header(incoming, "webhook-signature");
    char *expected[SECRETS_MAX];
    int64_t sent;
    size_t i;

    if (id == NULL || timestamp == NULL || list == NULL) {
        fault_set(fault, "the header %s is missing",
                  id == NULL          ? "webhook-id"
                  : timestamp == NULL ? "webhook-timestamp"
                                      : "webhook-signature");
        return false;
    }
    sent = read_timestamp(timestamp);
    if (sent < 0) {
        fault_set(fault, "webhook-timestamp is not a whole number of Unix seconds");
        return false;
    }
    if (sent < now_utc_s - authentication->tolerance_s ||
        sent > now_utc_s + authentication->tolerance_s) {
        fault_set(fault, "webhook-timestamp is more than %d seconds away from our clock",
                  authentication->tolerance_s);
        return false;
    }
    for (i = 0; i < authentication->secret_count; i++) {
        expected[i] = gateway_webhook_signature(arena, authentication->secrets[i], id, sent,
                                                incoming->body, incoming->body_length);
    }
    if (!is_listed(list, expected, authentication->secret_count)) {
        fault_set(fault, "no signature in webhook-signature fits the body and a secret of ours");
        return false;
    }
    return true;
}

/* ---- HMAC over a template ------------------------------------------------------------------- */

struct signed_input {
    void *arena;
    const struct incoming *incoming;
    char *bytes;
    size_t length;
};

static void
input_add(struct signed_input *input, const char *bytes, size_t length)
{
    input->bytes = memory_must(
        talloc_realloc(input->arena, input->bytes, char, (unsigned)(input->length + length + 1)));
    memcpy(input->bytes + input->length, bytes, length);
    input->length += length;
}

static int
input_add_sorted_form(struct signed_input *input, struct fault *fault)
{
    struct form form;
    size_t i;

    if (form_read(input->arena, input->incoming->body, input->incoming->body_length, &form,
                  fault) != 0) {
        return -1;
    }
    form_sort(&form);
    for (i = 0; i < form.count; i++) {
        input_add(input, form.pairs[i].name, strlen(form.pairs[i].name));
        input_add(input, form.pairs[i].value, strlen(form.pairs[i].value));
    }
    return 0;
}

static int
input_add_header(struct signed_input *input, const char *name, struct fault *fault)
{
    const char *value = input->incoming->header(input->incoming, name);

    if (value == NULL) {
        fault_set(fault, "the header %s, which is part of what is signed, is missing", name);
        return -1;
    }
    input_add(input, value, strlen(value));
    return 0;
}

static int
input_add_part(struct signed_input *input, const struct template_part *part, struct fault *fault)
{
    switch (part->kind) {
    case TEMPLATE_LITERAL:
        input_add(input, part->text, strlen(part->text));
        return 0;
    case TEMPLATE_HEADER:
        return input_add_header(input, part->text, fault);
    case TEMPLATE_URL:
        input_add(input, input->incoming->url, strlen(input->incoming->url));
        return 0;
    case TEMPLATE_BODY:
        input_add(input, input->incoming->body, input->incoming->body_length);
        return 0;
    default:
        return input_add_sorted_form(input, fault);
    }
}

/* The signature that was sent, as bytes. Returns 0 or -1. */
static int
read_signature(const struct authentication *authentication, const char *sent,
               unsigned char signature[SIGNATURE_BYTES])
{
    size_t prefix_length = strlen(authentication->prefix);
    size_t length = 0;
    int rc;

    if (strncmp(sent, authentication->prefix, prefix_length) != 0) {
        return -1;
    }
    sent += prefix_length;
    rc = authentication->base64
             ? from_base64(sent, strlen(sent), signature, SIGNATURE_BYTES, &length)
             : sodium_hex2bin(signature, SIGNATURE_BYTES, sent, strlen(sent), NULL, &length, NULL);
    return rc == 0 && length == SIGNATURE_BYTES ? 0 : -1;
}

static bool
is_signed(void *arena, const struct authentication *authentication, const struct incoming *incoming,
          struct fault *fault)
{
    struct signed_input input = {.arena = arena, .incoming = incoming};
    const char *sent = incoming->header(incoming, authentication->header);
    unsigned char signature[SIGNATURE_BYTES], expected[SIGNATURE_BYTES];
    struct template_part *parts;
    size_t count, i;
    unsigned matches = 0;

    if (sent == NULL) {
        fault_set(fault, "the header %s is missing", authentication->header);
        return false;
    }
    if (read_signature(authentication, sent, signature) != 0) {
        fault_set(fault, "the header %s does not hold \"%s\" and 32 bytes in %s",
                  authentication->header, authentication->prefix,
                  authentication->base64 ? "base64" : "hex");
        return false;
    }
    if (gateway_template_read(arena, authentication->signed_over, &parts, &count, fault) != 0) {
        return false;
    }
    for (i = 0; i < count; i++) {
        if (input_add_part(&input, &parts[i], fault) != 0) {
            return false;
        }
    }
    for (i = 0; i < authentication->secret_count; i++) {
        const char *secret = authentication->secrets[i];

        gateway_hmac(secret, strlen(secret), input.bytes, input.length, expected);
        matches |= sodium_memcmp(expected, signature, SIGNATURE_BYTES) == 0 ? 1U : 0U;
    }
    if (matches == 0) {
        fault_set(fault, "the signature in %s fits no secret of ours", authentication->header);
    }
    return matches != 0;
}

/* ---- Authorization -------------------------------------------------------------------------- */

/* What follows the scheme in the Authorization header, or NULL with a fault. */
static const char *
credentials(const struct incoming *incoming, const char *scheme, struct fault *fault)
{
    const char *value = incoming->header(incoming, "Authorization");
    size_t length = strlen(scheme);

    if (value == NULL || strncasecmp(value, scheme, length) != 0 || value[length] != ' ') {
        fault_set(fault, "the header Authorization with the scheme %s is missing", scheme);
        return NULL;
    }
    value += length;
    return value + strspn(value, " ");
}

static bool
is_bearer(const struct authentication *authentication, const struct incoming *incoming,
          struct fault *fault)
{
    const char *token = credentials(incoming, "Bearer", fault);

    if (token == NULL) {
        return false;
    }
    if (!is_any_secret(authentication, token)) {
        fault_set(fault, "the bearer token is not one of ours");
        return false;
    }
    return true;
}

static bool
is_basic(void *arena, const struct authentication *authentication, const struct incoming *incoming,
         struct fault *fault)
{
    const char *encoded = credentials(incoming, "Basic", fault);
    char *decoded;
    size_t length = 0;

    if (encoded == NULL) {
        return false;
    }
    decoded = memory_array(arena, char, strlen(encoded) + 1);
    if (from_base64(encoded, strlen(encoded), (unsigned char *)decoded, strlen(encoded), &length) !=
        0) {
        fault_set(fault, "the credentials of the scheme Basic are not base64");
        return false;
    }
    decoded[length] = '\0';
    if (strlen(decoded) != length || !is_any_secret(authentication, decoded)) {
        fault_set(fault, "user and password are not ours");
        return false;
    }
    return true;
}

bool
gateway_authentic(const struct gateway *gateway, const struct incoming *incoming, int64_t now_utc_s,
                  struct fault *fault)
{
    const struct authentication *authentication = &gateway->authentication;
    void *arena = memory_must(talloc_new(NULL));
    bool authentic = false;

    switch (authentication->kind) {
    case AUTHENTICATION_STANDARD_WEBHOOKS:
        authentic = is_standard_webhook(arena, authentication, incoming, now_utc_s, fault);
        break;
    case AUTHENTICATION_HMAC_SHA256:
        authentic = is_signed(arena, authentication, incoming, fault);
        break;
    case AUTHENTICATION_BEARER:
        authentic = is_bearer(authentication, incoming, fault);
        break;
    case AUTHENTICATION_BASIC:
        authentic = is_basic(arena, authentication, incoming, fault);
        break;
    case AUTHENTICATION_NONE:
        authentic = true; /* config.c lets it pass on loopback only */
        break;
    }
    talloc_free(arena);
    return authentic;
}

const char *
gateway_challenge(const struct gateway *gateway)
{
    switch (gateway->authentication.kind) {
    case AUTHENTICATION_BASIC:
        return "Basic realm=\"texts\", charset=\"UTF-8\"";
    case AUTHENTICATION_BEARER:
        return "Bearer realm=\"texts\"";
    default:
        return "Signature realm=\"texts\"";
    }
}
