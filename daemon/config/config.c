#include "config.h"

#include <arpa/inet.h>
#include <string.h>

#include <glib.h>

#include "clock.h"
#include "config_gateway.h"
#include "config_keys.h"
#include "config_limits.h"
#include "config_notices.h"
#include "config_roads.h"
#include "config_rota.h"
#include "config_staff.h"
#include "memory.h"

#define COUNT(array) (sizeof(array) / sizeof((array)[0]))
#define DAY_S ((int64_t)86400)

enum { ZONE_YEARS = 5 };

static const char *const log_levels[] = {"error", "warning", "info", "debug", NULL};
static const char *const log_formats[] = {"logfmt", "json", NULL};

#define TEXT(key_name, field, is_required, fallback, what)                                         \
    {                                                                                              \
        .name = (key_name), .kind = KEY_TEXT, .required = (is_required),                           \
        .at = offsetof(struct config, field), .low = 1, .high = 500, .text = (fallback),           \
        .means = (what)                                                                            \
    }
#define PATH(key_name, field, is_required, fallback, what)                                         \
    {                                                                                              \
        .name = (key_name), .kind = KEY_PATH, .required = (is_required),                           \
        .at = offsetof(struct config, field), .low = 1, .high = 500, .text = (fallback),           \
        .means = (what)                                                                            \
    }
#define NUMBER(key_name, number_kind, field, least, most, fallback, what)                          \
    {                                                                                              \
        .name = (key_name), .kind = (number_kind), .at = offsetof(struct config, field),           \
        .low = (least), .high = (most), .number = (fallback), .means = (what)                      \
    }
#define SECTION(key_name, key_list)                                                                \
    {                                                                                              \
        .name = (key_name), .kind = KEY_SECTION, .table = &(key_list), .each = NULL, .means = ""   \
    }
#define PART(key_name, function, keys, what)                                                       \
    {                                                                                              \
        .name = (key_name), .kind = KEY_OWN, .read = (function), .table = &(keys), .means = (what) \
    }
#define TABLE(table_name, key_list)                                                                \
    static const struct key_table table_name = {key_list, COUNT(key_list)}

static const struct key listen_key_list[] = {
    TEXT("address", listen_address, false, "127.0.0.1",
         "IP address to listen on; a proxy with TLS stands in front of it"),
    NUMBER("port", KEY_INT, listen_port, 0, 65535, 8020, "0 takes any free one, told in the log"),
    TEXT("public_url", public_url, false, NULL,
         "how gateways reach us, https://texts.example, for {url} in signatures; without it from "
         "the Host header"),
};
TABLE(listen_keys, listen_key_list);

static const struct key country_key_list[] = {
    TEXT("code", country_code, true, NULL, "country code for numbers without +, such as 1"),
    {.name = "national_prefix",
     .kind = KEY_TEXT,
     .at = offsetof(struct config, national_prefix),
     .high = 4,
     .text = "",
     .means = "what is dialled before a national number, such as 1 or 0; it is dropped"},
    NUMBER("national_digits", KEY_INT, national_digits, 0, 14, 0,
           "digits of a national number, to tell it from a short code; 0 if they vary"),
};
TABLE(country_keys, country_key_list);

static const struct key house_key_list[] = {
    TEXT("company", house.company, true, NULL, "the company's name as texts say it"),
    TEXT("phone", house.phone, true, NULL, "the office's number as renters dial it"),
    TEXT("address", house.address, true, NULL, "the office's address"),
    TEXT("hours", house.hours[LANGUAGE_EN], true, NULL,
         "office hours in words: 8 am to 6 pm, every day"),
    TEXT("hours_es", house.hours[LANGUAGE_ES], false, NULL,
         "the same for replies in Spanish; without it the English"),
    TEXT("return_how", house.return_how[LANGUAGE_EN], true, NULL, "how to give the unit back"),
    TEXT("return_how_es", house.return_how[LANGUAGE_ES], false, NULL,
         "the same for replies in Spanish; without it the English"),
    TEXT("emergency_number", house.emergency_number, true, NULL, "such as 911 or 112"),
    NUMBER("emergency_reading", KEY_INT, house.emergency_reading, 50, 95, 85,
           "an oximeter value at or below this is an emergency; a clinician sets it"),
    NUMBER("late_s", KEY_INT, house.late_s, 60, 86400, 600,
           "seconds on the way after which the answer says when the text was written"),
    NUMBER("conversation_s", KEY_INT, house.conversation_s, 600, 604800, 43200,
           "seconds of silence after which a conversation begins anew"),
};
TABLE(house_keys, house_key_list);

#define ALERT_TIMES(list, level, next, everyone, recheck)                                          \
    static const struct key list[] = {                                                             \
        NUMBER("next_s", KEY_SECONDS, alert_times[level].next_s, 0, DAY_S, next,                   \
               "seconds without anyone taking it until the next in line is called; 0 never"),      \
        NUMBER("everyone_s", KEY_SECONDS, alert_times[level].everyone_s, 0, DAY_S, everyone,       \
               "seconds without anyone taking it until everyone is called; 0 never"),              \
        NUMBER("recheck_s", KEY_SECONDS, alert_times[level].recheck_s, 0, DAY_S, recheck,          \
               "seconds from taking it to the next call if no outcome was told; 0 never"),         \
        NUMBER("again_s", KEY_SECONDS, alert_times[level].again_s, 3600, 7 * DAY_S, DAY_S,         \
               "seconds to the next call if the other times set none"),                            \
    }

ALERT_TIMES(emergency_key_list, ALERT_EMERGENCY, 120, 300, 300);
ALERT_TIMES(urgent_key_list, ALERT_URGENT, 600, 1200, 900);
ALERT_TIMES(office_key_list, ALERT_OFFICE, 0, 0, 0);
TABLE(emergency_keys, emergency_key_list);
TABLE(urgent_keys, urgent_key_list);
TABLE(office_keys, office_key_list);

static const struct key alert_key_list[] = {
    SECTION("emergency", emergency_keys),
    SECTION("urgent", urgent_keys),
    SECTION("office", office_keys),
};
TABLE(alert_keys, alert_key_list);

static const struct key log_key_list[] = {
    {.name = "level",
     .kind = KEY_WORD,
     .at = offsetof(struct config, log_level),
     .words = log_levels,
     .number = LOG_INFO,
     .means = "how much is logged; renters' texts never at info"},
    {.name = "format",
     .kind = KEY_WORD,
     .at = offsetof(struct config, log_format),
     .words = log_formats,
     .number = LOG_LOGFMT,
     .means = "how a line of the log is written"},
};
TABLE(log_keys, log_key_list);

static void
read_played_start(const struct reading *reading, json_t *value, const char *pointer, void *target)
{
    struct config *config = target;

    if (value == NULL) {
        return;
    }
    if (!json_is_string(value) ||
        clock_read(json_string_value(value), &config->played_start_utc_s) != 0) {
        keys_fault(reading, pointer,
                   "is %s; expected a time by RFC 3339 such as 2026-02-11T15:00:00-07:00",
                   json_is_string(value) ? "no time" : keys_kind(value));
    }
}

static const struct key played_key_list[] = {
    {.name = "start",
     .kind = KEY_OWN,
     .read = read_played_start,
     .means = "for a demo or a test: when the clock starts, RFC 3339; without it the real time"},
    NUMBER("speed", KEY_INT, played_speed, 1, 100000, 1,
           "for a demo or a test: how many times as fast as a real clock it runs"),
};
TABLE(played_keys, played_key_list);

static const struct key config_key_list[] = {
    SECTION("listen", listen_keys),
    PATH("database", database, true, NULL,
         "file of the store; paths are relative to the configuration's folder"),
    PATH("kb_folder", kb_folder, true, NULL, "folder of topics, signs, equipment and words"),
    PATH("cache_folder", cache_folder, false, "cache",
         "folder for what can be made again at any time; believed only if no other may write it"),
    TEXT("zone", zone_name, true, NULL, "time zone of the valley, such as America/Denver"),
    SECTION("country", country_keys),
    SECTION("house", house_keys),
    {.name = "gateways",
     .kind = KEY_OWN,
     .required = true,
     .read = gateways_read,
     .table = &gateway_keys,
     .each = "NAME",
     .means = "whoever carries texts to and from us, by the name that stands in the path"},
    {.name = "booking",
     .kind = KEY_OWN,
     .read = booking_read,
     .table = &booking_keys,
     .means = "a booking system that may put rentals: PUT /rentals/ID; without it nobody may"},
    TEXT("reply_gateway", reply_gateway, false, NULL,
         "the gateway that carries alerts to staff; may be left out if there is only one"),
    {.name = "rings",
     .kind = KEY_OWN,
     .read = rings_read,
     .table = &ring_service_keys,
     .each = "NAME",
     .means = "telephone services that ring staff, by the name that stands in the path"},
    TEXT("ring_service", ring_service, false, NULL,
         "the telephone service that rings staff; may be left out if there is only one"),
    PART("mail", mail_read, mail_keys, "the mail server that carries alerts to staff"),
    {.name = "staff",
     .kind = KEY_OWN,
     .required = true,
     .read = staff_read,
     .table = &staff_keys,
     .each = "0",
     .means = "who is on call, first in line first; with /rota, whoever may be"},
    PART("rota", rota_read, rota_keys,
         "whose turn it is to be called; without it always /staff as listed"),
    PART("office_hours", office_hours_read, office_hours_keys,
         "when the office is open, in /zone; without it nothing waits for that"),
    SECTION("alert_times", alert_keys),
    SECTION("limits", limits_keys),
    SECTION("floods", flood_keys),
    PART("quiet_hours", quiet_hours_read, quiet_hours_keys,
         "when renters are texted nothing that they did not ask for, by the clock where they are"),
    SECTION("notices", notices_keys),
    PART("line_test", line_test_read, line_test_keys,
         "a text a day that goes out through the reply gateway and must come back"),
    PART("ping", ping_read, ping_keys, "an address that we fetch as a sign of life"),
    SECTION("disk", disk_keys),
    SECTION("log", log_keys),
    SECTION("played_clock", played_keys),
};
TABLE(config_keys, config_key_list);

void
config_explain(FILE *out)
{
    keys_explain(out, &config_keys, "");
}

/* ---- What only shows once all keys are read -------------------------------------------------- */

bool
config_listens_on_loopback(const struct config *config)
{
    struct in_addr four;
    struct in6_addr six;

    if (strcmp(config->listen_address, "localhost") == 0) {
        return true;
    }
    if (inet_pton(AF_INET, config->listen_address, &four) == 1) {
        return ntohl(four.s_addr) >> 24 == IN_LOOPBACKNET;
    }
    return inet_pton(AF_INET6, config->listen_address, &six) == 1 && IN6_IS_ADDR_LOOPBACK(&six);
}

bool
config_is_url(const char *text)
{
    return g_ascii_strncasecmp(text, "https://", 8) == 0 ||
           g_ascii_strncasecmp(text, "http://", 7) == 0;
}

static void
check_listen(const struct reading *reading, struct config *config)
{
    unsigned char address[sizeof(struct in6_addr)];
    size_t length;

    if (config->listen_address != NULL && strcmp(config->listen_address, "localhost") != 0 &&
        inet_pton(AF_INET, config->listen_address, address) != 1 &&
        inet_pton(AF_INET6, config->listen_address, address) != 1) {
        keys_fault(reading, "/listen/address",
                   "is no IP address; expected one of this machine's, such as 127.0.0.1 or ::1");
    }
    if (config->public_url == NULL) {
        return;
    }
    if (!config_is_url(config->public_url)) {
        keys_fault(reading, "/listen/public_url", "does not start with https:// or http://");
    }
    length = strlen(config->public_url);
    if (config->public_url[length - 1] == '/') {
        config->public_url = memory_copy_n(reading->arena, config->public_url, length - 1);
    }
}

static void
check_zone(const struct reading *reading, struct config *config)
{
    struct clock *clock = clock_new(config->played_start_utc_s, config->played_speed);
    struct fault fault;

    if (config->zone_name != NULL &&
        clock_zone(reading->arena, config->zone_name, clock_now_utc_s(clock), ZONE_YEARS,
                   &config->zone, &fault) != 0) {
        keys_fault(reading, "/zone", "%s", fault.text);
    }
    clock_free(clock);
}

static bool
is_digits(const char *text)
{
    return strspn(text, "0123456789") == strlen(text);
}

static void
check_country(const struct reading *reading, const struct config *config)
{
    if (config->country_code != NULL &&
        (!is_digits(config->country_code) || *config->country_code == '0' ||
         strlen(config->country_code) > 3)) {
        keys_fault(reading, "/country/code",
                   "is \"%s\"; expected 1 to 3 digits without + or zeros in front (ITU-T E.164)",
                   config->country_code);
    }
    if (config->national_prefix != NULL && !is_digits(config->national_prefix)) {
        keys_fault(reading, "/country/national_prefix", "is \"%s\"; expected digits or \"\"",
                   config->national_prefix);
    }
}

/* Both are dialled by people who are told to: a word in their place would send nobody anywhere. */
static void
check_house(const struct reading *reading, const struct house *house)
{
    const char *emergency = house->emergency_number, *phone = house->phone;

    if (emergency != NULL && !is_digits(emergency)) {
        keys_fault(reading, "/house/emergency_number", "is \"%s\"; expected digits only: 911, 112",
                   emergency);
    }
    if (phone != NULL && (strspn(phone, "+0123456789 ()-./") != strlen(phone) ||
                          strcspn(phone, "0123456789") == strlen(phone))) {
        keys_fault(reading, "/house/phone", "is \"%s\"; expected a number to dial: 208-555-0100",
                   phone);
    }
}

static void
check_gateways(const struct reading *reading, struct config *config)
{
    size_t i;

    for (i = 0; i < config->gateway_count; i++) {
        gateway_none_check(reading, config, &config->gateways[i],
                           memory_format(reading->arena, "/gateways/%s", config->gateways[i].name));
    }
    if (config->booking != NULL) {
        gateway_none_check(reading, config, config->booking, "/booking");
    }
    if (config->reply_gateway == NULL && config->gateway_count == 1) {
        config->reply_gateway = config->gateways[0].name;
    }
    if (config->gateway_count > 0 && config->reply_gateway == NULL) {
        keys_fault(reading, "/reply_gateway",
                   "is missing: which of the gateways carries alerts to staff");
    } else if (config->gateway_count > 0 && config_gateway(config, config->reply_gateway) == NULL) {
        keys_fault(reading, "/reply_gateway", "is \"%s\", which is none of /gateways",
                   config->reply_gateway);
    }
}

static void
check_alert_times(const struct reading *reading, const struct config *config)
{
    static const struct {
        const char *pointer;
        enum alert_level level;
    } levels[] = {{"/alert_times/emergency/everyone_s", ALERT_EMERGENCY},
                  {"/alert_times/urgent/everyone_s", ALERT_URGENT}};
    size_t i;

    for (i = 0; i < COUNT(levels); i++) {
        const struct alert_times *times = &config->alert_times[levels[i].level];

        if (times->next_s == 0 || times->everyone_s < times->next_s) {
            keys_fault(reading, levels[i].pointer,
                       "is %lld and next_s %lld; expected next_s above 0 and everyone_s not below "
                       "it: such an alert must reach somebody",
                       (long long)times->everyone_s, (long long)times->next_s);
        }
    }
}

/* ---- Reading -------------------------------------------------------------------------------- */

static void
check_all(const struct reading *reading, struct config *config)
{
    check_listen(reading, config);
    check_zone(reading, config);
    quiet_hours_check(reading, config);
    check_country(reading, config);
    check_house(reading, &config->house);
    check_gateways(reading, config);
    rings_check(reading, config);
    mail_check(reading, config);
    if (config->country_code != NULL && config->national_prefix != NULL &&
        config->staff_count > 0) {
        staff_check(reading, config);
        line_test_check(reading, config);
    }
    check_alert_times(reading, config);
}

/* Jansson quotes what stands near a fault; that may be a secret, unless it is a key's name. */
static void
report_syntax(const char *file, const json_error_t *at, struct faults *faults)
{
    bool is_name = json_error_code(at) == json_error_duplicate_key;
    const char *near = strstr(at->text, " near ");
    size_t length = near == NULL || is_name ? strlen(at->text) : (size_t)(near - at->text);

    faults_add(faults, file, at->line, NULL, "is not JSON, column %d: %.*s", at->column,
               (int)length, at->text);
}

int
config_read(const char *bytes, size_t length, const char *file, struct config **config,
            struct faults *faults)
{
    void *arena = memory_must(talloc_new(NULL));
    struct config *found = memory_new(arena, struct config);
    const char *slash = strrchr(file, '/');
    struct reading reading = {
        .arena = arena,
        .file = file,
        .folder = slash == NULL ? "" : memory_copy_n(arena, file, (size_t)(slash - file)),
        .faults = faults};
    size_t before = faults->count;
    json_error_t at;
    json_t *root = json_loadb(bytes, length, JSON_REJECT_DUPLICATES, &at);

    if (root == NULL) {
        report_syntax(file, &at, faults);
    } else {
        found->arena = arena;
        found->file = memory_copy(arena, file);
        keys_read(&reading, &config_keys, root, "", found);
        check_all(&reading, found);
    }
    json_decref(root);
    if (faults->count > before) {
        talloc_free(arena);
        return -1;
    }
    *config = found;
    return 0;
}

int
config_load(const char *file, struct config **config, struct faults *faults)
{
    GError *error = NULL;
    char *bytes;
    size_t length;
    int rc;

    if (!g_file_get_contents(file, &bytes, &length, &error)) {
        faults_add(faults, NULL, 0, NULL, "%s", error->message);
        g_error_free(error);
        return -1;
    }
    rc = config_read(bytes, length, file, config, faults);
    g_free(bytes);
    return rc;
}

void
config_free(struct config *config)
{
    if (config != NULL) {
        talloc_free(config->arena);
    }
}

const struct gateway *
config_gateway(const struct config *config, const char *name)
{
    size_t i;

    for (i = 0; i < config->gateway_count; i++) {
        if (strcmp(config->gateways[i].name, name) == 0) {
            return &config->gateways[i];
        }
    }
    return NULL;
}

const struct ring_service *
config_ring(const struct config *config, const char *name)
{
    size_t i;

    for (i = 0; i < config->ring_count; i++) {
        if (strcmp(config->rings[i].carrier.name, name) == 0) {
            return &config->rings[i];
        }
    }
    return NULL;
}

const struct staff *
config_staff_by_phone(const struct config *config, const char *phone)
{
    size_t i;

    for (i = 0; i < config->staff_count; i++) {
        if (strcmp(config->staff[i].phone, phone) == 0) {
            return &config->staff[i];
        }
    }
    return NULL;
}

const struct staff *
config_staff_by_name(const struct config *config, const char *name)
{
    size_t i;

    for (i = 0; i < config->staff_count; i++) {
        if (strcasecmp(config->staff[i].name, name) == 0) {
            return &config->staff[i];
        }
    }
    return NULL;
}
