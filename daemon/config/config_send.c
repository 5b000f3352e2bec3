/* How a text is handed to a gateway. */
#include "config_gateway.h"

#include <stdlib.h>
#include <string.h>

#include "config.h"
#include "gateway_parts.h"
#include "memory.h"
#include "pointer.h"

#define COUNT(array) (sizeof(array) / sizeof((array)[0]))

enum { PAIRS_MAX = 32 };

static const char *const methods[] = {"POST", "PUT", "GET", NULL};

/* Reports unknown placeholders; returns which known ones there are. */
static unsigned
check_filled(const struct reading *reading, const char *text, const char *pointer)
{
    const char *unknown;
    unsigned found = gateway_placeholders(reading->arena, text, &unknown);

    if (unknown != NULL) {
        keys_fault(reading, pointer, "holds %s; expected {to}, {from}, {text} or {key}", unknown);
    }
    return found;
}

static const struct name_value *
read_pairs(const struct reading *reading, json_t *value, const char *pointer, size_t *count)
{
    struct name_value *pairs;
    const char *name;
    json_t *member;

    *count = 0;
    if (!json_is_object(value) || json_object_size(value) > PAIRS_MAX) {
        keys_fault(reading, pointer, "is %s; expected an object of at most %d names and texts",
                   keys_kind(value), PAIRS_MAX);
        return NULL;
    }
    pairs = memory_array(reading->arena, struct name_value, json_object_size(value));
    json_object_foreach (value, name, member) {
        if (*name == '#') {
            continue; /* a remark */
        }
        if (!json_is_string(member)) {
            keys_fault(reading, keys_pointer(reading, pointer, name),
                       "is %s; expected text in quotes", keys_kind(member));
            continue;
        }
        pairs[(*count)++] =
            (struct name_value){memory_copy(reading->arena, name),
                                memory_copy(reading->arena, json_string_value(member))};
    }
    return pairs;
}

static void
read_headers(const struct reading *reading, json_t *value, const char *pointer, void *target)
{
    struct send_shape *shape = &((struct gateway *)target)->send;
    size_t i;

    if (value == NULL) {
        return;
    }
    shape->headers = read_pairs(reading, value, pointer, &shape->header_count);
    for (i = 0; i < shape->header_count; i++) {
        const struct name_value *header = &shape->headers[i];
        const char *at = keys_pointer(reading, pointer, header->name);

        if (*header->name == '\0' || strpbrk(header->name, " \t\r\n:{}") != NULL ||
            strpbrk(header->value, "\r\n") != NULL) {
            keys_fault(reading, at, "is no header: a name without spaces, a value of one line");
        }
        if ((check_filled(reading, header->value, at) & FILL_TEXT) != 0) {
            keys_fault(reading, at,
                       "holds {text}, which may have several lines; put it in the body");
        }
    }
}

static void
read_form(const struct reading *reading, json_t *value, const char *pointer, void *target)
{
    struct send_shape *shape = &((struct gateway *)target)->send;
    size_t i;

    if (value == NULL) {
        return;
    }
    shape->form = true;
    shape->form_fields = read_pairs(reading, value, pointer, &shape->form_field_count);
    for (i = 0; i < shape->form_field_count; i++) {
        (void)check_filled(reading, shape->form_fields[i].value,
                           keys_pointer(reading, pointer, shape->form_fields[i].name));
    }
}

/* Takes remarks out, as everywhere in the configuration. */
static void
drop_remarks(json_t *value)
{
    const char *name;
    json_t *member;
    void *next;
    size_t i;

    json_object_foreach_safe(value, next, name, member)
    {
        if (*name == '#') {
            (void)json_object_del(value, name);
        } else {
            drop_remarks(member);
        }
    }
    json_array_foreach (value, i, member) {
        drop_remarks(member);
    }
}

static void
read_json(const struct reading *reading, json_t *value, const char *pointer, void *target)
{
    struct send_shape *shape = &((struct gateway *)target)->send;
    char *text;

    if (value == NULL) {
        return;
    }
    if (!json_is_object(value) && !json_is_array(value)) {
        keys_fault(reading, pointer, "is %s; expected an object or a list", keys_kind(value));
        return;
    }
    drop_remarks(value);
    text = memory_must(json_dumps(value, JSON_COMPACT));
    shape->body_json = memory_copy(reading->arena, text);
    free(text);
    (void)check_filled(reading, shape->body_json, pointer);
}

static void
read_method(const struct reading *reading, json_t *value, const char *pointer, void *target)
{
    const struct key method = {.words = methods, .means = "how a text is handed to the gateway"};
    int index = value == NULL ? 0 : keys_word(reading, &method, value, pointer);

    ((struct gateway *)target)->send.method = methods[index];
}

static const struct key send_key_list[] = {
    {.name = "method",
     .kind = KEY_OWN,
     .read = read_method,
     .means = "\"POST\", \"PUT\" or \"GET\"; without it POST"},
    {.name = "url",
     .kind = KEY_TEXT,
     .required = true,
     .at = offsetof(struct gateway, send.url),
     .low = 8,
     .high = 1000,
     .means =
         "where a text is handed to the gateway, https://…; may hold {to} {from} {text} {key}"},
    {.name = "headers",
     .kind = KEY_OWN,
     .read = read_headers,
     .means = "an object of more headers, such as Authorization; may hold {to} {from} {key}"},
    {.name = "json",
     .kind = KEY_OWN,
     .read = read_json,
     .means = "the body as JSON; its texts may hold {to} {from} {text} {key}. This or form"},
    {.name = "form",
     .kind = KEY_OWN,
     .read = read_form,
     .means = "the body as form fields; values may hold {to} {from} {text} {key}. This or json"},
    {.name = "message_id",
     .kind = KEY_TEXT,
     .at = offsetof(struct gateway, send.message_id),
     .low = 1,
     .high = 200,
     .means = "JSON Pointer into the gateway's answer: its id of the text, which delivery reports "
              "name"},
    {.name = "from",
     .kind = KEY_TEXT,
     .required = true,
     .at = offsetof(struct gateway, send.from),
     .low = 1,
     .high = 40,
     .means = "our own number, fills {from}"},
    {.name = "timeout_ms",
     .kind = KEY_INT,
     .at = offsetof(struct gateway, send.timeout_ms),
     .low = 100,
     .high = 120000,
     .number = 15000,
     .means = "milliseconds that one send may take"},
    {.name = "secret",
     .kind = KEY_TEXT,
     .at = offsetof(struct gateway, send.secret),
     .low = 1,
     .high = 200,
     .means = "\"whsec_…\": signs what we send by Standard Webhooks 1.0.0"},
};

const struct key_table gateway_send_keys = {send_key_list, COUNT(send_key_list)};

static void
check_text_is_sent(const struct reading *reading, const struct send_shape *shape,
                   const char *pointer)
{
    const char *unknown;
    unsigned found = gateway_placeholders(reading->arena, shape->url, &unknown);
    size_t i;

    if (shape->body_json != NULL) {
        found |= gateway_placeholders(reading->arena, shape->body_json, &unknown);
    }
    for (i = 0; i < shape->form_field_count; i++) {
        found |= gateway_placeholders(reading->arena, shape->form_fields[i].value, &unknown);
    }
    if ((found & FILL_TO) == 0 || (found & FILL_TEXT) == 0) {
        keys_fault(reading, pointer,
                   "%s stands in neither url, json nor form; the gateway would not get it",
                   (found & FILL_TO) == 0 ? "{to}" : "{text}");
    }
}

void
gateway_send_read(const struct reading *reading, json_t *value, const char *pointer, void *target)
{
    struct send_shape *shape = &((struct gateway *)target)->send;
    unsigned char key[GATEWAY_KEY_MAX];
    size_t faults = reading->faults->count;
    size_t length;

    keys_read(reading, &gateway_send_keys, value, pointer, target);
    if (shape->message_id != NULL && !pointer_is_valid(shape->message_id)) {
        keys_fault(reading, keys_pointer(reading, pointer, "message_id"),
                   "is no JSON Pointer (RFC 6901); expected \"/name\" or \"/name/name\"");
    }
    if (shape->url != NULL) {
        (void)check_filled(reading, shape->url, keys_pointer(reading, pointer, "url"));
        if (!config_is_url(shape->url)) {
            keys_fault(reading, keys_pointer(reading, pointer, "url"),
                       "does not start with https:// or http://");
        }
    }
    if (shape->body_json != NULL && shape->form) {
        keys_fault(reading, pointer, "has both json and form; take one of them out");
    }
    if (shape->secret != NULL && gateway_webhook_key(shape->secret, key, &length) != 0) {
        keys_fault(reading, keys_pointer(reading, pointer, "secret"),
                   "is not \"whsec_\" and base64 of 24 to 64 bytes; copy it whole");
    }
    if (reading->faults->count == faults) {
        check_text_is_sent(reading, shape, pointer);
    }
}
