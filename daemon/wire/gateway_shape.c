/* The request that carries one text to a gateway, filled in from its template. */
#include "gateway.h"

#include <assert.h>
#include <stdlib.h>
#include <string.h>
#include <strings.h>

#include <event2/http.h>
#include <jansson.h>

#include "form.h"
#include "gateway_parts.h"
#include "memory.h"

struct filling {
    void *arena;
    const char *values[4]; /* in the order of `names` */
};

static const char *const names[] = {"to", "from", "text", "key"};

enum { NAME_COUNT = sizeof(names) / sizeof(names[0]) };

/*
 * What stands at `text` if it is "{word}" with a word of lower-case letters: its length with braces
 * and which of `names` it is (NAME_COUNT: another). 0 if it is something else: other braces are
 * ordinary characters.
 */
static size_t
placeholder_at(const char *text, size_t *name)
{
    size_t length = *text == '{' ? strspn(text + 1, "abcdefghijklmnopqrstuvwxyz_-") : 0;

    if (length == 0 || text[1 + length] != '}') {
        return 0;
    }
    for (*name = 0; *name < NAME_COUNT; (*name)++) {
        if (strlen(names[*name]) == length && strncmp(names[*name], text + 1, length) == 0) {
            break;
        }
    }
    return length + 2;
}

unsigned
gateway_placeholders(void *arena, const char *text, const char **unknown)
{
    unsigned found = 0;
    size_t name, length;

    *unknown = NULL;
    for (; *text != '\0'; text++) {
        length = placeholder_at(text, &name);
        if (length > 0 && name < NAME_COUNT) {
            found |= 1U << name;
        } else if (length > 0) {
            *unknown = memory_copy_n(arena, text, length);
        }
    }
    return found;
}

/* Values go in once: braces in a renter's text are not looked at again. */
static char *
fill(const struct filling *filling, const char *text, bool for_url)
{
    char *filled = memory_copy(filling->arena, "");

    while (*text != '\0') {
        size_t name = NAME_COUNT;
        size_t length = placeholder_at(text, &name);

        if (name == NAME_COUNT) {
            length = 1 + strcspn(text + 1, "{");
            memory_append(&filled, "%.*s", (int)length, text);
        } else if (for_url) {
            char *encoded = memory_must(evhttp_uriencode(filling->values[name], -1, 0));

            memory_append(&filled, "%s", encoded);
            free(encoded);
        } else {
            memory_append(&filled, "%s", filling->values[name]);
        }
        text += length;
    }
    return filled;
}

/* A copy of a JSON value in which each string is filled in. */
static json_t *
fill_json(const struct filling *filling, json_t *value)
{
    const char *name;
    json_t *member, *copy;
    size_t i;

    if (json_is_string(value)) {
        return memory_must(json_string(fill(filling, json_string_value(value), false)));
    }
    if (json_is_object(value)) {
        copy = memory_must(json_object());
        json_object_foreach (value, name, member) {
            (void)json_object_set_new(copy, name, fill_json(filling, member));
        }
        return copy;
    }
    if (json_is_array(value)) {
        copy = memory_must(json_array());
        json_array_foreach (value, i, member) {
            (void)json_array_append_new(copy, fill_json(filling, member));
        }
        return copy;
    }
    return json_incref(value);
}

static const char *
body_of(const struct filling *filling, const struct send_shape *shape)
{
    json_t *template, *filled;
    char *text, *body;
    size_t i;

    body = memory_copy(filling->arena, "");
    if (shape->form) {
        for (i = 0; i < shape->form_field_count; i++) {
            form_append(&body, shape->form_fields[i].name,
                        fill(filling, shape->form_fields[i].value, false));
        }
        return body;
    }
    if (shape->body_json == NULL) {
        return body;
    }
    template = json_loads(shape->body_json, 0, NULL);
    assert(template != NULL); /* config.c wrote it */
    filled = fill_json(filling, template);
    text = memory_must(json_dumps(filled, JSON_COMPACT));
    memory_append(&body, "%s", text);
    free(text);
    json_decref(filled);
    json_decref(template);
    return body;
}

struct headers {
    void *arena;
    const char **list;
    size_t count;
};

static void
headers_add(struct headers *headers, const char *name, const char *value)
{
    headers->list = memory_grow(headers->arena, const char *, headers->list, headers->count + 1);
    headers->list[headers->count++] = memory_format(headers->arena, "%s: %s", name, value);
    headers->list[headers->count] = NULL;
}

/* Adds one unless the configuration has its own. */
static void
headers_add_default(struct headers *headers, const struct send_shape *shape, const char *name,
                    const char *value)
{
    size_t i;

    for (i = 0; i < shape->header_count; i++) {
        if (strcasecmp(shape->headers[i].name, name) == 0) {
            return;
        }
    }
    headers_add(headers, name, value);
}

static void
headers_sign(struct headers *headers, const struct send_shape *shape,
             const struct outgoing *outgoing, const char *body)
{
    const char *signature = gateway_webhook_signature(headers->arena, shape->secret, outgoing->key,
                                                      outgoing->now_utc_s, body, strlen(body));

    assert(signature != NULL); /* config.c has tried the secret */
    headers_add(headers, "webhook-id", outgoing->key);
    headers_add(headers, "webhook-timestamp",
                memory_format(headers->arena, "%lld", (long long)outgoing->now_utc_s));
    headers_add(headers, "webhook-signature", signature);
}

void
gateway_shape(void *arena, const struct gateway *gateway, const struct outgoing *outgoing,
              struct shaped_request *request)
{
    const struct send_shape *shape = &gateway->send;
    struct filling filling = {
        arena,
        {outgoing->to, shape->from != NULL ? shape->from : "", outgoing->text, outgoing->key}};
    struct headers headers = {.arena = arena};
    const char *body = body_of(&filling, shape);
    size_t i;

    for (i = 0; i < shape->header_count; i++) {
        headers_add(&headers, shape->headers[i].name,
                    fill(&filling, shape->headers[i].value, false));
    }
    if (*body != '\0') {
        headers_add_default(&headers, shape, "Content-Type",
                            shape->form ? "application/x-www-form-urlencoded" : "application/json");
    }
    /* A quoted string, as the IETF draft "The Idempotency-Key HTTP Header Field" has it. */
    headers_add_default(&headers, shape, "Idempotency-Key",
                        memory_format(arena, "\"%s\"", outgoing->key));
    if (shape->secret != NULL) {
        headers_sign(&headers, shape, outgoing, body);
    }
    *request = (struct shaped_request){.method = shape->method,
                                       .url = fill(&filling, shape->url, true),
                                       .headers = headers.list,
                                       .body = body,
                                       .body_length = strlen(body)};
}
