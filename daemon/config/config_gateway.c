#include "config_gateway.h"

#include <string.h>

#include "config.h"
#include "gateway_parts.h"
#include "memory.h"
#include "pointer.h"

#define COUNT(array) (sizeof(array) / sizeof((array)[0]))

enum { NAME_MAX_BYTES = 32, BEARER_MIN = 12, HMAC_MIN = 16, PASSWORD_MIN = 8 };

static const char *const kinds[] = {
    "standard-webhooks", "hmac-sha256", "bearer", "basic", "none", NULL};
static const char *const encodings[] = {"hex", "base64", NULL};
static const char *const formats[] = {"json", "form", NULL};
static const char *const statuses[] = {"unknown", "sent", "delivered", "failed", NULL};

/* ---- Authentication ------------------------------------------------------------------------- */

static void
read_secrets(const struct reading *reading, json_t *value, const char *pointer, void *target)
{
    struct authentication *authentication = &((struct gateway *)target)->authentication;
    const char **secrets;
    size_t i;

    if (value == NULL) {
        return;
    }
    secrets = keys_texts(reading, value, pointer, SECRETS_MAX, &authentication->secret_count);
    for (i = 0; i < authentication->secret_count; i++) {
        authentication->secrets[i] = secrets[i];
    }
}

static const struct key authentication_key_list[] = {
    {.name = "kind",
     .kind = KEY_WORD,
     .required = true,
     .at = offsetof(struct gateway, authentication.kind),
     .words = kinds,
     .means = "how a request proves that it comes from this gateway; none only on loopback"},
    {.name = "secrets",
     .kind = KEY_OWN,
     .read = read_secrets,
     .means = "1 to 4, all good, so that they can be changed without a gap: \"whsec_…\" for "
              "standard-webhooks, the key for hmac-sha256, the token for bearer, "
              "\"user:password\" for basic"},
    {.name = "tolerance_s",
     .kind = KEY_INT,
     .at = offsetof(struct gateway, authentication.tolerance_s),
     .low = 1,
     .high = 3600,
     .number = 300,
     .means = "standard-webhooks: how many seconds a request's timestamp may be from our clock"},
    {.name = "header",
     .kind = KEY_TEXT,
     .at = offsetof(struct gateway, authentication.header),
     .low = 1,
     .high = 100,
     .means = "hmac-sha256: the header that holds the signature"},
    {.name = "signed_over",
     .kind = KEY_TEXT,
     .at = offsetof(struct gateway, authentication.signed_over),
     .low = 1,
     .high = 500,
     .text = "{body}",
     .means = "hmac-sha256: what is signed, from {body}, {url}, {header:NAME} and {sorted-form} "
              "(names and values of the form, sorted by name, nothing between them)"},
    {.name = "prefix",
     .kind = KEY_TEXT,
     .at = offsetof(struct gateway, authentication.prefix),
     .high = 100,
     .text = "",
     .means = "hmac-sha256: what stands before the signature, such as sha256="},
    {.name = "encoding",
     .kind = KEY_EITHER,
     .at = offsetof(struct gateway, authentication.base64),
     .words = encodings,
     .means = "hmac-sha256: how the signature is written"},
};

const struct key_table gateway_authentication_keys = {authentication_key_list,
                                                      COUNT(authentication_key_list)};

/* A secret is never repeated in a fault: faults end up in logs. */
static void
check_secret(const struct reading *reading, enum authentication_kind kind, const char *secret,
             const char *pointer)
{
    unsigned char key[GATEWAY_KEY_MAX];
    const char *colon = strchr(secret, ':');
    size_t length;

    switch (kind) {
    case AUTHENTICATION_STANDARD_WEBHOOKS:
        if (gateway_webhook_key(secret, key, &length) != 0) {
            keys_fault(reading, pointer,
                       "is not \"whsec_\" and base64 of 24 to 64 bytes; copy it whole");
        }
        break;
    case AUTHENTICATION_HMAC_SHA256:
        if (strlen(secret) < HMAC_MIN) {
            keys_fault(reading, pointer, "has fewer than %d bytes and can be guessed", HMAC_MIN);
        }
        break;
    case AUTHENTICATION_BEARER:
        if (strlen(secret) < BEARER_MIN || strpbrk(secret, " \t\r\n") != NULL) {
            keys_fault(reading, pointer, "is no token of at least %d bytes without spaces",
                       BEARER_MIN);
        }
        break;
    case AUTHENTICATION_BASIC:
        if (colon == NULL || colon == secret || strlen(colon + 1) < PASSWORD_MIN) {
            keys_fault(reading, pointer, "is not \"user:password\" with a password of %d bytes",
                       PASSWORD_MIN);
        }
        break;
    case AUTHENTICATION_NONE:
        keys_fault(reading, pointer, "is of no use with kind \"none\"; take one of them out");
        break;
    }
}

static void
check_hmac(const struct reading *reading, const struct authentication *authentication,
           const char *pointer)
{
    struct template_part *parts;
    struct fault fault;
    size_t count, i;
    bool covers_body = false;

    if (authentication->header == NULL) {
        keys_fault(reading, keys_pointer(reading, pointer, "header"),
                   "is missing: the header that holds the signature");
    }
    if (authentication->signed_over == NULL) {
        return;
    }
    if (gateway_template_read(reading->arena, authentication->signed_over, &parts, &count,
                              &fault) != 0) {
        keys_fault(reading, keys_pointer(reading, pointer, "signed_over"), "%s", fault.text);
        return;
    }
    for (i = 0; i < count; i++) {
        covers_body |= parts[i].kind == TEMPLATE_BODY || parts[i].kind == TEMPLATE_SORTED_FORM;
    }
    if (!covers_body) {
        keys_fault(reading, keys_pointer(reading, pointer, "signed_over"),
                   "holds neither {body} nor {sorted-form}: the text itself would not be signed");
    }
}

void
gateway_authentication_read(const struct reading *reading, json_t *value, const char *pointer,
                            void *target)
{
    struct authentication *authentication = &((struct gateway *)target)->authentication;
    const char *secrets = keys_pointer(reading, pointer, "secrets");
    size_t faults = reading->faults->count;
    size_t i;

    keys_read(reading, &gateway_authentication_keys, value, pointer, target);
    if (reading->faults->count > faults) {
        return; /* the kind may not be known */
    }
    if (authentication->secret_count == 0 && authentication->kind != AUTHENTICATION_NONE) {
        keys_fault(reading, secrets, "is missing: what the gateway signs or sends");
    }
    for (i = 0; i < authentication->secret_count; i++) {
        check_secret(reading, authentication->kind, authentication->secrets[i],
                     memory_format(reading->arena, "%s/%zu", secrets, i));
    }
    if (authentication->kind == AUTHENTICATION_HMAC_SHA256) {
        check_hmac(reading, authentication, pointer);
    }
}

/* ---- Where fields are ----------------------------------------------------------------------- */

#define FIELD(key_name, field, is_required, what)                                                  \
    {                                                                                              \
        .name = (key_name), .kind = KEY_TEXT, .required = (is_required),                           \
        .at = offsetof(struct gateway, field), .low = 1, .high = 200,                              \
        .means = what ": a JSON Pointer such as /data/from, or the name of a form field"           \
    }

#define FORMAT(field)                                                                              \
    {                                                                                              \
        .name = "format", .kind = KEY_EITHER, .at = offsetof(struct gateway, field),               \
        .words = formats,                                                                          \
        .means = "how the body is written: JSON or application/x-www-form-urlencoded"              \
    }

static const struct key message_key_list[] = {
    FORMAT(message.form),
    FIELD("sender", message.sender, true, "the renter's number"),
    FIELD("text", message.text, true, "what the renter wrote"),
    FIELD("id", message.id, false, "the gateway's id of the text, by which repeats are known"),
    FIELD("sent", message.sent, false, "when it was sent, RFC 3339 or Unix time"),
    FIELD("recipient", message.recipient, false, "the number it was sent to"),
    FIELD("attachments", message.attachments, false, "pictures: a list or how many"),
};

static const struct key_table message_keys = {message_key_list, COUNT(message_key_list)};

static void
check_field(const struct reading *reading, bool form, const char *where, const char *pointer,
            const char *name)
{
    if (where != NULL && !form && !pointer_is_valid(where)) {
        keys_fault(reading, keys_pointer(reading, pointer, name),
                   "is no JSON Pointer (RFC 6901); expected \"/name\" or \"/name/name\"");
    }
}

static void
read_message(const struct reading *reading, json_t *value, const char *pointer, void *target)
{
    const struct message_fields *map = &((struct gateway *)target)->message;

    keys_read(reading, &message_keys, value, pointer, target);
    check_field(reading, map->form, map->sender, pointer, "sender");
    check_field(reading, map->form, map->text, pointer, "text");
    check_field(reading, map->form, map->id, pointer, "id");
    check_field(reading, map->form, map->sent, pointer, "sent");
    check_field(reading, map->form, map->recipient, pointer, "recipient");
    check_field(reading, map->form, map->attachments, pointer, "attachments");
}

static void
read_words(const struct reading *reading, json_t *value, const char *pointer, void *target)
{
    struct delivery_fields *map = &((struct gateway *)target)->delivery;
    const struct key meaning = {.words = statuses, .means = "what the gateway's word stands for"};
    struct delivery_word *words;
    const char *name;
    json_t *member;

    if (!json_is_object(value)) {
        keys_fault(reading, pointer, "is %s; expected {\"the gateway's word\": \"delivered\"}",
                   keys_kind(value));
        return;
    }
    words = memory_array(reading->arena, struct delivery_word, json_object_size(value));
    json_object_foreach (value, name, member) {
        if (*name == '#') {
            continue; /* a remark */
        }
        words[map->word_count++] = (struct delivery_word){
            memory_copy(reading->arena, name),
            (enum delivery_status)keys_word(reading, &meaning, member,
                                            keys_pointer(reading, pointer, name))};
    }
    map->words = words;
}

static const struct key delivery_key_list[] = {
    FORMAT(delivery.form),
    FIELD("message_id", delivery.message_id, true, "the id of the text that we sent"),
    FIELD("status", delivery.status, true, "the gateway's word for what became of it"),
    {.name = "words",
     .kind = KEY_OWN,
     .required = true,
     .read = read_words,
     .means = "what the gateway's words mean: an object of its words to \"sent\", \"delivered\", "
              "\"failed\" or \"unknown\""},
};

static const struct key_table delivery_keys = {delivery_key_list, COUNT(delivery_key_list)};

static void
read_delivery(const struct reading *reading, json_t *value, const char *pointer, void *target)
{
    struct delivery_fields *map = &((struct gateway *)target)->delivery;

    if (value == NULL) {
        return; /* this gateway reports none */
    }
    map->configured = true;
    keys_read(reading, &delivery_keys, value, pointer, target);
    check_field(reading, map->form, map->message_id, pointer, "message_id");
    check_field(reading, map->form, map->status, pointer, "status");
}

/* ---- One gateway, and all of them ----------------------------------------------------------- */

#define PART(key_name, is_required, function, keys, what)                                          \
    {                                                                                              \
        .name = (key_name), .kind = KEY_OWN, .required = (is_required), .read = (function),        \
        .table = &(keys), .means = (what)                                                          \
    }

static const struct key gateway_key_list[] = {
    PART("authentication", true, gateway_authentication_read, gateway_authentication_keys,
         "how requests of this gateway prove where they come from"),
    PART("message", true, read_message, message_keys,
         "where the fields of a text stand that comes to /messages/NAME"),
    PART("delivery", false, read_delivery, delivery_keys,
         "the same of a delivery report that comes to /deliveries/NAME"),
    PART("send", true, gateway_send_read, gateway_send_keys,
         "the request by which we hand over a text"),
};

const struct key_table gateway_keys = {gateway_key_list, COUNT(gateway_key_list)};

void
gateway_name_check(const struct reading *reading, const char *name, const char *pointer)
{
    size_t length = strlen(name);

    if (length == 0 || length > NAME_MAX_BYTES ||
        strspn(name, "abcdefghijklmnopqrstuvwxyz0123456789-") != length) {
        keys_fault(reading, pointer,
                   "is no name for it; expected up to %d of a-z, 0-9 and -, for it stands in a URL",
                   NAME_MAX_BYTES);
    }
}

void
gateway_none_check(const struct reading *reading, const struct config *config,
                   const struct gateway *gateway, const char *pointer)
{
    if (gateway->authentication.kind == AUTHENTICATION_NONE && config->listen_address != NULL &&
        !config_listens_on_loopback(config)) {
        keys_fault(reading, memory_format(reading->arena, "%s/authentication/kind", pointer),
                   "is \"none\" while we listen on %s: anyone could write as anyone; give it "
                   "an authentication, or listen on 127.0.0.1",
                   config->listen_address);
    }
}

void
gateways_read(const struct reading *reading, json_t *value, const char *pointer, void *target)
{
    struct config *config = target;
    struct gateway *gateways;
    const char *name;
    json_t *member;

    if (!json_is_object(value) || json_object_size(value) == 0) {
        keys_fault(reading, pointer, "is %s; expected an object with at least one gateway by name",
                   json_is_object(value) ? "empty" : keys_kind(value));
        return;
    }
    gateways = memory_array(reading->arena, struct gateway, json_object_size(value));
    json_object_foreach (value, name, member) {
        const char *at = keys_pointer(reading, pointer, name);
        struct gateway *gateway = &gateways[config->gateway_count];

        if (*name == '#') {
            continue;
        }
        gateway_name_check(reading, name, at);
        gateway->name = memory_copy(reading->arena, name);
        keys_read(reading, &gateway_keys, member, at, gateway);
        config->gateway_count++;
    }
    config->gateways = gateways;
}

/* ---- The booking system --------------------------------------------------------------------- */

static const struct key booking_key_list[] = {
    PART("authentication", true, gateway_authentication_read, gateway_authentication_keys,
         "how its requests prove where they come from; as of a gateway"),
};

const struct key_table booking_keys = {booking_key_list, COUNT(booking_key_list)};

void
booking_read(const struct reading *reading, json_t *value, const char *pointer, void *target)
{
    struct config *config = target;
    struct gateway *booking;

    if (value == NULL) {
        return; /* the office has none */
    }
    booking = memory_new(reading->arena, struct gateway);
    booking->name = "booking";
    keys_read(reading, &booking_keys, value, pointer, booking);
    config->booking = booking;
}
