#include "config_staff.h"

#include <string.h>

#include "config.h"
#include "gateway.h"
#include "gateway_parts.h"
#include "memory.h"

#define COUNT(array) (sizeof(array) / sizeof((array)[0]))

/* In the order of enum alert_level. */
static const char *const levels[] = {"never", "office", "urgent", "emergency", NULL};

#define FROM(road, level, what)                                                                    \
    {                                                                                              \
        .name = "from", .kind = KEY_WORD, .at = offsetof(struct staff, road_from[road]),           \
        .words = levels, .number = (level),                                                        \
        .means = "least level of an alert for which they are " what                                \
    }
#define TEXT(key_name, field, most, what)                                                          \
    {                                                                                              \
        .name = (key_name), .kind = KEY_TEXT, .required = false,                                   \
        .at = offsetof(struct staff, field), .low = 1, .high = (most), .means = (what)             \
    }

static const struct key text_key_list[] = {FROM(ROAD_TEXT, ALERT_OFFICE, "called by text")};
static const struct key_table text_keys = {text_key_list, COUNT(text_key_list)};

static const struct key ring_key_list[] = {
    FROM(ROAD_RING, ALERT_URGENT, "rung; needs /rings"),
};
static const struct key_table ring_keys = {ring_key_list, COUNT(ring_key_list)};

static const struct key mail_key_list[] = {
    FROM(ROAD_MAIL, ALERT_OFFICE, "called by e-mail; needs /mail"),
    TEXT("address", address, 200, "the address, robin@larkspur.example"),
};
static const struct key_table mail_keys = {mail_key_list, COUNT(mail_key_list)};

static const struct key webhook_key_list[] = {
    FROM(ROAD_WEBHOOK, ALERT_OFFICE, "called by webhook"),
    TEXT("url", webhook_url, 1000, "where alerts are posted as JSON, https://…"),
    TEXT("secret", webhook_secret, 200,
         "\"whsec_…\": signs what we post, and what is posted to /alerts in their name, by "
         "Standard Webhooks 1.0.0"),
};
static const struct key_table webhook_keys = {webhook_key_list, COUNT(webhook_key_list)};

#define ROAD(road_key, key_list)                                                                   \
    {                                                                                              \
        .name = (road_key), .kind = KEY_SECTION, .table = &(key_list), .each = NULL, .means = ""   \
    }

static const struct key road_key_list[] = {ROAD("text", text_keys), ROAD("ring", ring_keys),
                                           ROAD("e-mail", mail_keys),
                                           ROAD("webhook", webhook_keys)};
static const struct key_table road_keys = {road_key_list, COUNT(road_key_list)};

static void
check_address(const struct reading *reading, const char *address, const char *pointer)
{
    if (!config_is_address(address)) {
        keys_fault(reading,
                   keys_pointer(reading, keys_pointer(reading, pointer, "e-mail"), "address"),
                   "is no e-mail address; expected one such as robin@larkspur.example");
    }
}

static void
check_webhook(const struct reading *reading, const struct staff *staff, const char *pointer)
{
    const char *at = keys_pointer(reading, pointer, "webhook");
    unsigned char key[GATEWAY_KEY_MAX];
    size_t length;

    if (staff->webhook_url == NULL) {
        keys_fault(reading, keys_pointer(reading, at, "url"),
                   "is missing: where alerts are posted as JSON");
    } else if (!config_is_url(staff->webhook_url)) {
        keys_fault(reading, keys_pointer(reading, at, "url"),
                   "does not start with https:// or http://");
    }
    if (staff->webhook_secret == NULL) {
        keys_fault(reading, keys_pointer(reading, at, "secret"),
                   "is missing: \"whsec_\" and base64 of 24 to 64 random bytes, which the other "
                   "side has too");
    } else if (gateway_webhook_key(staff->webhook_secret, key, &length) != 0) {
        keys_fault(reading, keys_pointer(reading, at, "secret"),
                   "is not \"whsec_\" and base64 of 24 to 64 bytes; copy it whole");
    }
}

static void
read_roads(const struct reading *reading, json_t *value, const char *pointer, void *target)
{
    struct staff *staff = target;
    int off = 0;
    int road;

    keys_read(reading, &road_keys, value, pointer, staff);
    staff->has_ring = json_object_get(value, "ring") != NULL;
    if (staff->address != NULL) {
        check_address(reading, staff->address, pointer);
    } else if (json_object_get(value, "e-mail") != NULL) {
        keys_fault(reading,
                   keys_pointer(reading, keys_pointer(reading, pointer, "e-mail"), "address"),
                   "is missing: the address, robin@larkspur.example");
    }
    if (json_object_get(value, "webhook") != NULL) {
        check_webhook(reading, staff, pointer);
    }
    for (road = 0; road < ROAD_COUNT; road++) {
        bool is_there = road == ROAD_TEXT || (road == ROAD_RING && staff->has_ring) ||
                        (road == ROAD_MAIL && staff->address != NULL) ||
                        (road == ROAD_WEBHOOK && staff->webhook_url != NULL);

        off += !is_there || staff->road_from[road] == ALERT_NONE;
    }
    if (off == ROAD_COUNT) {
        keys_fault(reading, pointer,
                   "are all switched off; expected at least one road with \"from\": \"office\"");
    }
}

static const struct key staff_key_list[] = {
    {.name = "name",
     .kind = KEY_TEXT,
     .required = true,
     .at = offsetof(struct staff, name),
     .low = 1,
     .high = 60,
     .means = "as alerts and the log say it"},
    {.name = "phone",
     .kind = KEY_TEXT,
     .required = true,
     .at = offsetof(struct staff, phone),
     .low = 3,
     .high = 40,
     .means = "the number that is called by text and rung, and from which they answer"},
    {.name = "roads",
     .kind = KEY_OWN,
     .read = read_roads,
     .table = &road_keys,
     .means = "how this person is reached; without it by text, and rung if there is /rings"},
};
const struct key_table staff_keys = {staff_key_list, COUNT(staff_key_list)};

void
staff_read(const struct reading *reading, json_t *value, const char *pointer, void *target)
{
    struct config *config = target;
    struct staff *staff;
    json_t *member;
    size_t i;

    if (!json_is_array(value) || json_array_size(value) == 0) {
        keys_fault(reading, pointer, "is %s; expected a list of at least one person",
                   json_is_array(value) ? "empty" : keys_kind(value));
        return;
    }
    staff = memory_array(reading->arena, struct staff, json_array_size(value));
    json_array_foreach (value, i, member) {
        keys_read(reading, &staff_keys, member, memory_format(reading->arena, "%s/%zu", pointer, i),
                  &staff[i]);
    }
    config->staff = staff;
    config->staff_count = json_array_size(value);
}

/* ---- What only shows once all keys are read -------------------------------------------------- */

static void
check_same(const struct reading *reading, const struct staff *staff, size_t i)
{
    size_t j;

    for (j = 0; j < i; j++) {
        if (staff[j].phone != NULL && staff[i].phone != NULL &&
            strcmp(staff[j].phone, staff[i].phone) == 0) {
            keys_fault(reading, memory_format(reading->arena, "/staff/%zu/phone", i),
                       "is also the number of /staff/%zu", j);
        }
        if (staff[j].name != NULL && staff[i].name != NULL &&
            strcasecmp(staff[j].name, staff[i].name) == 0) {
            keys_fault(reading, memory_format(reading->arena, "/staff/%zu/name", i),
                       "is also the name of /staff/%zu; tell them apart", j);
        }
    }
}

static void
check_roads(const struct reading *reading, const struct config *config, const struct staff *staff,
            size_t i)
{
    const char *roads = memory_format(reading->arena, "/staff/%zu/roads", i);

    if (staff->has_ring && staff->road_from[ROAD_RING] != ALERT_NONE &&
        config->ring_service == NULL) {
        keys_fault(reading, keys_pointer(reading, roads, "ring"),
                   "needs a telephone service; describe it under /rings, or take this out");
    }
    if (staff->address != NULL && config->mail.url == NULL) {
        keys_fault(reading, keys_pointer(reading, roads, "e-mail"),
                   "needs a mail server; describe it under /mail, or take this out");
    }
}

/* Numbers of staff are compared with senders, so they are kept in the same spelling. */
void
staff_check(const struct reading *reading, struct config *config)
{
    struct staff *staff = memory_array(reading->arena, struct staff, config->staff_count);
    size_t i;

    memcpy(staff, config->staff, config->staff_count * sizeof(*staff));
    for (i = 0; i < config->staff_count; i++) {
        check_roads(reading, config, &staff[i], i);
        if (staff[i].phone != NULL) {
            const char *number = gateway_phone(reading->arena, config, staff[i].phone);

            if (number == NULL || *number != '+') {
                keys_fault(reading, memory_format(reading->arena, "/staff/%zu/phone", i),
                           "is no phone number; expected one such as +12085550190");
                continue;
            }
            staff[i].phone = number;
        }
        check_same(reading, staff, i);
    }
    config->staff = staff;
}
