/* A gateway's own field names to ours: incoming texts and delivery reports. */
#include "gateway.h"

#include <stdlib.h>
#include <string.h>
#include <strings.h>

#include <glib.h>
#include <jansson.h>

#include "clock.h"
#include "form.h"
#include "memory.h"
#include "pointer.h"

enum { QUOTED_MAX = 40, ATTACHMENTS_MAX = 100 };

/* The body of a request, whichever form it has. */
struct fields {
    void *arena;
    json_t *root; /* NULL for a form */
    struct form form;
};

bool
gateway_reads_type(bool form, const char *content_type)
{
    size_t length;

    if (content_type == NULL) {
        return true;
    }
    length = strcspn(content_type, "; \t");
    if (form) {
        static const char type[] = "application/x-www-form-urlencoded";

        return length == strlen(type) && strncasecmp(content_type, type, length) == 0;
    }
    return (length >= 5 && strncasecmp(content_type + length - 4, "json", 4) == 0) &&
           (content_type[length - 5] == '/' || content_type[length - 5] == '+');
}

static int
fields_read(void *arena, bool form, const struct incoming *incoming, struct fields *fields,
            struct fault *fault)
{
    json_error_t at;

    fields->arena = arena;
    fields->root = NULL;
    if (form) {
        return form_read(arena, incoming->body, incoming->body_length, &fields->form, fault);
    }
    fields->root = json_loadb(incoming->body, incoming->body_length, JSON_REJECT_DUPLICATES, &at);
    if (fields->root == NULL) {
        /* Jansson's words may quote the renter's, which must not reach a log. */
        fault_set(fault, "the body is not JSON: line %d, column %d", at.line, at.column);
        return -1;
    }
    return 0;
}

static void
fields_release(struct fields *fields)
{
    json_decref(fields->root);
}

/* The start of a stranger's text, for a fault. */
static const char *
quoted(void *arena, const char *text)
{
    char *valid = g_utf8_make_valid(text, (gssize)strnlen(text, QUOTED_MAX));
    char *copy = memory_format(arena, "\"%s\"%s", valid, strlen(text) > QUOTED_MAX ? "…" : "");

    g_free(valid);
    return copy;
}

static const char *
json_kind(const json_t *value)
{
    switch (json_typeof(value)) {
    case JSON_OBJECT:
        return "an object";
    case JSON_ARRAY:
        return "an array";
    case JSON_TRUE:
    case JSON_FALSE:
        return "true or false";
    default:
        return "something else";
    }
}

/* Numbers pass for ids, times and phone numbers, which gateways often send so. */
static int
json_as_text(void *arena, const char *what, const char *where, json_t *value, const char **text,
             struct fault *fault)
{
    if (value == NULL || json_is_null(value)) {
        *text = NULL;
    } else if (json_is_string(value)) {
        *text = memory_copy(arena, json_string_value(value));
    } else if (json_is_integer(value)) {
        *text = memory_format(arena, "%lld", (long long)json_integer_value(value));
    } else if (json_is_real(value)) {
        *text = memory_format(arena, "%.0f", json_real_value(value));
    } else {
        fault_set(fault, "%s (%s) is %s; expected text or a number", what, where, json_kind(value));
        return -1;
    }
    return 0;
}

/* The text at a place that the configuration names; *text is NULL if nothing was sent there. */
static int
field_text(const struct fields *fields, const char *what, const char *where, const char **text,
           struct fault *fault)
{
    *text = NULL;
    if (where == NULL) {
        return 0;
    }
    if (fields->root != NULL) {
        return json_as_text(fields->arena, what, where, pointer_get(fields->root, where), text,
                            fault);
    }
    *text = form_get(&fields->form, where);
    if (*text != NULL && !g_utf8_validate(*text, -1, NULL)) {
        fault_set(fault, "%s (%s) is not UTF-8", what, where);
        return -1;
    }
    return 0;
}

static int
field_required(const struct fields *fields, const char *what, const char *where, const char **text,
               struct fault *fault)
{
    if (field_text(fields, what, where, text, fault) != 0) {
        return -1;
    }
    if (*text == NULL || **text == '\0') {
        fault_set(fault, "%s (%s) is missing or empty", what, where);
        return -1;
    }
    return 0;
}

static int
count_text(const char *text)
{
    char *end;
    long count = strtol(text, &end, 10);

    if (*text == '\0' || *end != '\0') {
        return *text == '\0' ? 0 : 1; /* an address of one picture */
    }
    return count < 0 ? 0 : count > ATTACHMENTS_MAX ? ATTACHMENTS_MAX : (int)count;
}

/* A list counts its elements, a number itself, any other text is one. */
static int
field_attachments(const struct fields *fields, const char *where, int *count, struct fault *fault)
{
    const char *text;
    json_t *value = fields->root == NULL || where == NULL ? NULL : pointer_get(fields->root, where);

    *count = 0;
    if (json_is_array(value)) {
        size_t size = json_array_size(value);

        *count = size > ATTACHMENTS_MAX ? ATTACHMENTS_MAX : (int)size;
        return 0;
    }
    if (field_text(fields, "attachments", where, &text, fault) != 0) {
        return -1;
    }
    *count = text == NULL ? 0 : count_text(text);
    return 0;
}

static int
map_numbers(const struct config *config, const struct fields *fields,
            const struct message_fields *map, struct message *message, struct fault *fault)
{
    const char *sender, *recipient;

    if (field_required(fields, "sender", map->sender, &sender, fault) != 0 ||
        field_text(fields, "recipient", map->recipient, &recipient, fault) != 0) {
        return -1;
    }
    message->sender = gateway_phone(fields->arena, config, sender);
    if (message->sender == NULL) {
        fault_set(fault,
                  "sender (%s) is %s; expected a phone number such as +12085550123, or a short "
                  "code: what has no number cannot be answered",
                  map->sender, quoted(fields->arena, sender));
        return -1;
    }
    message->recipient = recipient == NULL ? NULL : gateway_phone(fields->arena, config, recipient);
    return 0;
}

/* "17" may be a renter's text, 17 may not: it shows that the map points at something else. */
static bool
is_number(const struct fields *fields, const char *where)
{
    return fields->root != NULL && json_is_number(pointer_get(fields->root, where));
}

static int
map_text(const struct fields *fields, const struct message_fields *map, struct message *message,
         struct fault *fault)
{
    const char *text;

    if (field_attachments(fields, map->attachments, &message->attachments, fault) != 0 ||
        field_text(fields, "text", map->text, &text, fault) != 0) {
        return -1;
    }
    if (is_number(fields, map->text)) {
        fault_set(fault, "text (%s) is a number; expected text", map->text);
        return -1;
    }
    if ((text == NULL || *text == '\0') && message->attachments == 0) {
        fault_set(fault, "text (%s) is %s; expected what the renter wrote", map->text,
                  text == NULL ? "missing" : "empty");
        return -1;
    }
    message->text = text == NULL ? "" : text;
    if (strlen(message->text) > GATEWAY_TEXT_MAX) {
        const char *end = g_utf8_find_prev_char(message->text, text + GATEWAY_TEXT_MAX + 1);

        message->text = memory_copy_n(fields->arena, text, (size_t)(end - text));
    }
    return 0;
}

static int
map_time(const struct fields *fields, const struct message_fields *map, int64_t now_utc_s,
         struct message *message, struct fault *fault)
{
    const char *text;
    int64_t sent;

    message->received_utc_s = now_utc_s;
    message->sent_utc_s = now_utc_s;
    if (field_text(fields, "sent", map->sent, &text, fault) != 0) {
        return -1;
    }
    if (text == NULL || *text == '\0') {
        return 0;
    }
    if (clock_read(text, &sent) != 0) {
        fault_set(fault,
                  "sent (%s) is %s; expected a time by RFC 3339 such as 2026-11-25T14:30:00Z, or "
                  "Unix seconds or milliseconds",
                  map->sent, quoted(fields->arena, text));
        return -1;
    }
    if (sent <= now_utc_s && sent >= now_utc_s - GATEWAY_SENT_OLDEST_S) {
        message->sent_utc_s = sent;
    }
    return 0;
}

static int
map_id(const struct fields *fields, const struct message_fields *map, struct message *message,
       struct fault *fault)
{
    if (field_text(fields, "id", map->id, &message->id, fault) != 0) {
        return -1;
    }
    if (message->id != NULL && strlen(message->id) > GATEWAY_ID_MAX) {
        fault_set(fault, "id (%s) has more than %d bytes", map->id, GATEWAY_ID_MAX);
        return -1;
    }
    if (message->id != NULL && *message->id == '\0') {
        message->id = NULL;
    }
    return 0;
}

int
gateway_message(void *arena, const struct config *config, const struct gateway *gateway,
                const struct incoming *incoming, int64_t now_utc_s, struct message *message,
                struct fault *fault)
{
    const struct message_fields *map = &gateway->message;
    /* A copy: the text may wait for a busy store while a reload drops the configuration. */
    struct message found = {.gateway = memory_copy(arena, gateway->name)};
    struct fields fields;
    int rc = -1;

    if (fields_read(arena, map->form, incoming, &fields, fault) != 0) {
        return -1;
    }
    if (map_numbers(config, &fields, map, &found, fault) == 0 &&
        map_text(&fields, map, &found, fault) == 0 &&
        map_time(&fields, map, now_utc_s, &found, fault) == 0 &&
        map_id(&fields, map, &found, fault) == 0) {
        *message = found;
        rc = 0;
    }
    fields_release(&fields);
    return rc;
}

static enum delivery_status
status_of(const struct delivery_fields *map, const char *word)
{
    size_t i;

    for (i = 0; i < map->word_count; i++) {
        if (strcasecmp(map->words[i].word, word) == 0) {
            return map->words[i].status;
        }
    }
    return DELIVERY_UNKNOWN;
}

int
gateway_delivery(void *arena, const struct gateway *gateway, const struct incoming *incoming,
                 struct delivery *delivery, struct fault *fault)
{
    const struct delivery_fields *map = &gateway->delivery;
    struct delivery found = {0};
    struct fields fields;
    int rc = -1;

    if (!map->configured) {
        fault_set(fault, "no delivery reports are configured for this gateway");
        return -1;
    }
    if (fields_read(arena, map->form, incoming, &fields, fault) != 0) {
        return -1;
    }
    if (field_required(&fields, "message_id", map->message_id, &found.message_id, fault) == 0 &&
        field_required(&fields, "status", map->status, &found.word, fault) == 0) {
        found.status = status_of(map, found.word);
        *delivery = found;
        rc = 0;
    }
    fields_release(&fields);
    return rc;
}

static enum ring_result
result_of(const struct ring_fields *map, const struct ring_report *report)
{
    size_t i;

    if (map->result == NULL) {
        return *report->pressed != '\0' ? RING_ANSWERED : RING_UNANSWERED;
    }
    for (i = 0; i < map->word_count; i++) {
        if (strcasecmp(map->words[i].word, report->word) == 0) {
            return map->words[i].result;
        }
    }
    return RING_UNKNOWN;
}

int
gateway_ring(void *arena, const struct ring_service *service, const struct incoming *incoming,
             struct ring_report *report, struct fault *fault)
{
    const struct ring_fields *map = &service->report;
    struct ring_report found = {0};
    struct fields fields;
    int rc = -1;

    if (fields_read(arena, map->form, incoming, &fields, fault) != 0) {
        return -1;
    }
    if (field_required(&fields, "ring", map->ring, &found.ring, fault) == 0 &&
        field_text(&fields, "pressed", map->pressed, &found.pressed, fault) == 0 &&
        field_text(&fields, "result", map->result, &found.word, fault) == 0) {
        found.pressed = found.pressed != NULL ? found.pressed : "";
        found.word = found.word != NULL ? found.word : "";
        found.result = result_of(map, &found);
        if (found.result != RING_ANSWERED) {
            found.pressed = "";
        }
        *report = found;
        rc = 0;
    }
    fields_release(&fields);
    return rc;
}

const char *
gateway_accepted_id(void *arena, const struct gateway *gateway, const char *body, size_t length)
{
    const char *id = NULL;
    struct fault fault;
    json_t *root;

    if (gateway->send.message_id == NULL) {
        return NULL;
    }
    root = json_loadb(body, length, 0, NULL);
    if (root == NULL ||
        json_as_text(arena, "id", gateway->send.message_id,
                     pointer_get(root, gateway->send.message_id), &id, &fault) != 0) {
        id = NULL;
    }
    json_decref(root);
    return id;
}
