/* E-mail to staff, and what is watched: the line, the disk, and who watches us. */
#include "config_roads.h"

#include <string.h>

#include <glib.h>

#include "config.h"
#include "gateway.h"
#include "memory.h"

#define COUNT(array) (sizeof(array) / sizeof((array)[0]))
#define DAY_S ((int64_t)86400)

#define TEXT(key_name, field, is_required, most, what)                                             \
    {                                                                                              \
        .name = (key_name), .kind = KEY_TEXT, .required = (is_required),                           \
        .at = offsetof(struct config, field), .low = 1, .high = (most), .means = (what)            \
    }
#define NUMBER(key_name, number_kind, field, least, most, fallback, what)                          \
    {                                                                                              \
        .name = (key_name), .kind = (number_kind), .at = offsetof(struct config, field),           \
        .low = (least), .high = (most), .number = (fallback), .means = (what)                      \
    }

/* ---- E-mail --------------------------------------------------------------------------------- */

static const struct key mail_key_list[] = {
    TEXT(
        "url", mail.url, true, 500,
        "the mail server: smtps://mail.example:465 for TLS from the start, smtp://mail.example:587 "
        "for STARTTLS; never without TLS"),
    TEXT("user", mail.user, false, 200, "who signs in there; without it nobody does"),
    TEXT("password", mail.password, false, 200, "the user's password"),
    TEXT("from", mail.from, true, 200, "the sender's address, hutbell@larkspur.example"),
    {.name = "ca_file",
     .kind = KEY_PATH,
     .at = offsetof(struct config, mail.ca_file),
     .low = 1,
     .high = 500,
     .means = "certificates to trust (PEM) instead of the system's, for a server of one's own"},
    NUMBER("timeout_ms", KEY_INT, mail.timeout_ms, 1000, 120000, 20000,
           "milliseconds that handing over one e-mail may take"),
    NUMBER("link_s", KEY_SECONDS, mail.link_s, 300, 30 * DAY_S, DAY_S,
           "seconds for which the link in an e-mail can be used, once"),
};
const struct key_table mail_keys = {mail_key_list, COUNT(mail_key_list)};

bool
config_is_address(const char *address)
{
    const char *at = strchr(address, '@');
    const char *c;

    for (c = address; *c != '\0'; c++) {
        if (*c <= ' ' || *c > '~' || strchr("<>(),;:\\\"[]", *c) != NULL) {
            return false;
        }
    }
    return at != NULL && at != address && at[1] != '\0' && strchr(at + 1, '@') == NULL;
}

void
mail_read(const struct reading *reading, json_t *value, const char *pointer, void *target)
{
    struct mail *mail = &((struct config *)target)->mail;

    if (value == NULL) {
        return;
    }
    keys_read(reading, &mail_keys, value, pointer, target);
    if (mail->url != NULL && g_ascii_strncasecmp(mail->url, "smtps://", 8) != 0 &&
        g_ascii_strncasecmp(mail->url, "smtp://", 7) != 0) {
        keys_fault(reading, keys_pointer(reading, pointer, "url"),
                   "does not start with smtps:// or smtp://");
    }
    if (mail->from != NULL && !config_is_address(mail->from)) {
        keys_fault(reading, keys_pointer(reading, pointer, "from"),
                   "is no e-mail address; expected one such as hutbell@larkspur.example");
    }
    if ((mail->user == NULL) != (mail->password == NULL)) {
        keys_fault(reading,
                   keys_pointer(reading, pointer, mail->user == NULL ? "user" : "password"),
                   "is missing: give user and password, or neither");
    }
}

void
mail_check(const struct reading *reading, const struct config *config)
{
    if (config->mail.url != NULL && config->public_url == NULL) {
        keys_fault(reading, "/listen/public_url",
                   "is missing: e-mails to staff hold a link that begins with it; give the address "
                   "under which the proxy is reached, https://texts.example");
    }
}

/* ---- The test text -------------------------------------------------------------------------- */

static void
read_at(const struct reading *reading, json_t *value, const char *pointer, void *target)
{
    struct line_test_times *test = &((struct config *)target)->line_test;
    const char *text = json_is_string(value) ? json_string_value(value) : "";
    int minutes = keys_minutes(text, strlen(text));

    if (minutes < 0 || minutes >= 24 * 60) {
        keys_fault(reading, pointer, "is %s; expected a time of day from 00:00 to 23:59",
                   json_is_string(value) ? "none" : keys_kind(value));
        return;
    }
    test->at_minutes = minutes;
    test->is_on = true;
}

static const struct key line_test_key_list[] = {
    {.name = "at",
     .kind = KEY_OWN,
     .required = true,
     .read = read_at,
     .means = "when the test text is sent each day, in /zone: \"10:00\""},
    TEXT("to", line_test.to, false, 40,
         "the number it is sent to and comes back from; without it our own, of the reply gateway"),
    NUMBER("within_s", KEY_SECONDS, line_test.within_s, 30, 7200, 600,
           "seconds in which it must come back, else staff are called"),
};
const struct key_table line_test_keys = {line_test_key_list, COUNT(line_test_key_list)};

void
line_test_read(const struct reading *reading, json_t *value, const char *pointer, void *target)
{
    if (value != NULL) {
        keys_read(reading, &line_test_keys, value, pointer, target);
    }
}

/* It is compared with senders, so it is kept in the same spelling. */
void
line_test_check(const struct reading *reading, struct config *config)
{
    const struct gateway *gateway =
        config->reply_gateway != NULL ? config_gateway(config, config->reply_gateway) : NULL;
    const char *to = config->line_test.to;

    if (!config->line_test.is_on || gateway == NULL) {
        return;
    }
    to = to != NULL ? to : gateway->send.from;
    config->line_test.to = to != NULL ? gateway_phone(reading->arena, config, to) : NULL;
    if (config->line_test.to == NULL) {
        keys_fault(reading, "/line_test/to",
                   "is no phone number; expected one such as +12085550100, from which the test "
                   "text comes back");
    }
}

/* ---- Who watches us, and the disk ----------------------------------------------------------- */

static const struct key ping_key_list[] = {
    TEXT("url", ping.url, true, 1000,
         "is fetched as long as all is well, https://…; whoever is behind it raises an alarm when "
         "that ends"),
    NUMBER("every_s", KEY_SECONDS, ping.every_s, 10, DAY_S, 300, "seconds from one to the next"),
};
const struct key_table ping_keys = {ping_key_list, COUNT(ping_key_list)};

void
ping_read(const struct reading *reading, json_t *value, const char *pointer, void *target)
{
    const struct config *config = target;

    if (value == NULL) {
        return;
    }
    keys_read(reading, &ping_keys, value, pointer, target);
    if (config->ping.url != NULL && !config_is_url(config->ping.url)) {
        keys_fault(reading, keys_pointer(reading, pointer, "url"),
                   "does not start with https:// or http://");
    }
}

static const struct key disk_key_list[] = {
    NUMBER("least_mb", KEY_INT, disk_least_mb, 0, 1000000, 500,
           "megabytes free on the database's disk, below which the office is told; 0 never"),
};
const struct key_table disk_keys = {disk_key_list, COUNT(disk_key_list)};
