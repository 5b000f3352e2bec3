/* The telephone services that ring staff: /rings. */
#include "config_roads.h"

#include <string.h>

#include "config.h"
#include "config_gateway.h"
#include "memory.h"
#include "pointer.h"

#define COUNT(array) (sizeof(array) / sizeof((array)[0]))

static const char *const formats[] = {"json", "form", NULL};
/* In the order of enum ring_result. */
static const char *const results[] = {"unknown",    "answered", "voicemail",
                                      "unanswered", "failed",   NULL};

#define FIELD(key_name, field, is_required, what)                                                  \
    {                                                                                              \
        .name = (key_name), .kind = KEY_TEXT, .required = (is_required),                           \
        .at = offsetof(struct ring_service, report.field), .low = 1, .high = 200,                  \
        .means = what ": a JSON Pointer such as /call/id, or the name of a form field"             \
    }

static void
read_words(const struct reading *reading, json_t *value, const char *pointer, void *target)
{
    struct ring_fields *map = &((struct ring_service *)target)->report;
    const struct key meaning = {.words = results, .means = "what the service's word stands for"};
    struct ring_word *words;
    const char *name;
    json_t *member;

    if (value == NULL) {
        return;
    }
    if (!json_is_object(value)) {
        keys_fault(reading, pointer, "is %s; expected {\"the service's word\": \"answered\"}",
                   keys_kind(value));
        return;
    }
    words = memory_array(reading->arena, struct ring_word, json_object_size(value));
    json_object_foreach (value, name, member) {
        if (*name == '#') {
            continue; /* a remark */
        }
        words[map->word_count++] =
            (struct ring_word){memory_copy(reading->arena, name),
                               (enum ring_result)keys_word(reading, &meaning, member,
                                                           keys_pointer(reading, pointer, name))};
    }
    map->words = words;
}

static const struct key report_key_list[] = {
    {.name = "format",
     .kind = KEY_EITHER,
     .at = offsetof(struct ring_service, report.form),
     .words = formats,
     .means = "how the body is written: JSON or application/x-www-form-urlencoded"},
    FIELD("ring", ring, true,
          "which call it is: our {key}, or the service's id as send/message_id finds it"),
    FIELD("pressed", pressed, true, "the key that was pressed, missing or empty for none"),
    FIELD("result", result, false, "the service's word for what became of the call"),
    {.name = "words",
     .kind = KEY_OWN,
     .read = read_words,
     .means = "what those words mean: an object of them to \"answered\", \"voicemail\", "
              "\"unanswered\", \"failed\" or \"unknown\" (more is to come); a key counts only in a "
              "call that was answered"},
};
static const struct key_table report_keys = {report_key_list, COUNT(report_key_list)};

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
read_report(const struct reading *reading, json_t *value, const char *pointer, void *target)
{
    const struct ring_fields *map = &((struct ring_service *)target)->report;

    keys_read(reading, &report_keys, value, pointer, target);
    check_field(reading, map->form, map->ring, pointer, "ring");
    check_field(reading, map->form, map->pressed, pointer, "pressed");
    check_field(reading, map->form, map->result, pointer, "result");
    if ((map->result != NULL) != (map->words != NULL)) {
        keys_fault(reading,
                   keys_pointer(reading, pointer, map->result != NULL ? "words" : "result"),
                   "is missing: \"result\" says where the word stands and \"words\" what it means; "
                   "give both or neither");
    }
}

static const struct key ring_service_key_list[] = {
    {.name = "authentication",
     .kind = KEY_OWN,
     .required = true,
     .read = gateway_authentication_read,
     .table = &gateway_authentication_keys,
     .means = "how reports of this service prove where they come from, as a gateway's texts do"},
    {.name = "send",
     .kind = KEY_OWN,
     .required = true,
     .read = gateway_send_read,
     .table = &gateway_send_keys,
     .means = "the request that makes a call, as a gateway's for a text; {text} is read aloud"},
    {.name = "report",
     .kind = KEY_OWN,
     .required = true,
     .read = read_report,
     .table = &report_keys,
     .means = "where the fields of a report stand that comes to /rings/NAME"},
};
const struct key_table ring_service_keys = {ring_service_key_list, COUNT(ring_service_key_list)};

void
rings_read(const struct reading *reading, json_t *value, const char *pointer, void *target)
{
    struct config *config = target;
    struct ring_service *services;
    const char *name;
    json_t *member;

    if (value == NULL) {
        return;
    }
    if (!json_is_object(value)) {
        keys_fault(reading, pointer, "is %s; expected an object of telephone services by name",
                   keys_kind(value));
        return;
    }
    services = memory_array(reading->arena, struct ring_service, json_object_size(value) + 1);
    json_object_foreach (value, name, member) {
        const char *at = keys_pointer(reading, pointer, name);
        struct ring_service *service = &services[config->ring_count];

        if (*name == '#') {
            continue;
        }
        gateway_name_check(reading, name, at);
        service->carrier.name = memory_copy(reading->arena, name);
        keys_read(reading, &ring_service_keys, member, at, service);
        config->ring_count++;
    }
    config->rings = services;
}

void
rings_check(const struct reading *reading, struct config *config)
{
    size_t i;

    for (i = 0; i < config->ring_count; i++) {
        gateway_none_check(
            reading, config, &config->rings[i].carrier,
            memory_format(reading->arena, "/rings/%s", config->rings[i].carrier.name));
    }
    if (config->ring_service == NULL && config->ring_count == 1) {
        config->ring_service = config->rings[0].carrier.name;
    }
    if (config->ring_count > 0 && config->ring_service == NULL) {
        keys_fault(reading, "/ring_service",
                   "is missing: which of the telephone services rings staff");
    } else if (config->ring_service != NULL && config_ring(config, config->ring_service) == NULL) {
        keys_fault(reading, "/ring_service", "is \"%s\", which is none of /rings",
                   config->ring_service);
    }
}
