/*
 * The configuration: one JSON file. Reading it is a table of keys (config.c), each with its JSON
 * Pointer, type, bounds and remedy; every fault is reported at once and nothing starts.
 * config/hutbell.example.json explains each line.
 */
#ifndef CONFIG_H
#define CONFIG_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>

#include "context.h"
#include "fault.h"
#include "log.h"
#include "road.h"
#include "rota.h"

enum authentication_kind {
    AUTHENTICATION_STANDARD_WEBHOOKS, /* Standard Webhooks 1.0.0 */
    AUTHENTICATION_HMAC_SHA256,       /* RFC 2104, over `signed_over` */
    AUTHENTICATION_BEARER,            /* RFC 6750 */
    AUTHENTICATION_BASIC,             /* RFC 7617 */
    AUTHENTICATION_NONE               /* only while listening on loopback, and said so in config */
};

enum { SECRETS_MAX = 4 };

struct authentication {
    enum authentication_kind kind;
    const char *secrets[SECRETS_MAX]; /* as configured: "whsec_…", a token, "user:password" */
    size_t secret_count;
    int tolerance_s;
    const char *header;      /* HMAC: where the signature is sent */
    const char *signed_over; /* HMAC: template of {header:X}, {url}, {body}, {sorted-form} */
    const char *prefix;      /* HMAC: "sha256=" or "" */
    bool base64;             /* HMAC: else hex */
};

/* Where a webhook's fields are: JSON Pointers (RFC 6901), or form field names. NULL: not sent. */
struct message_fields {
    bool form; /* application/x-www-form-urlencoded, else JSON */
    const char *sender, *text, *id, *sent, *recipient, *attachments;
};

enum delivery_status { DELIVERY_UNKNOWN, DELIVERY_SENT, DELIVERY_DELIVERED, DELIVERY_FAILED };

struct delivery_word {
    const char *word; /* as the gateway says it */
    enum delivery_status status;
};

struct delivery_fields {
    bool configured, form;
    const char *message_id, *status;
    const struct delivery_word *words;
    size_t word_count;
};

struct name_value {
    const char *name, *value;
};

/* The request that sends one text. URL and values may hold {to} {from} {text} {key}. */
struct send_shape {
    const char *method, *url;
    const struct name_value *headers;
    size_t header_count;
    bool form;
    const char *body_json; /* JSON template (text of the configured object), or NULL */
    const struct name_value *form_fields;
    size_t form_field_count;
    const char *message_id; /* JSON Pointer into the answer: the gateway's id, or NULL */
    const char *from;       /* our number, fills {from} */
    int timeout_ms;
    const char *secret; /* "whsec_…": sign what we send by Standard Webhooks, or NULL */
};

struct gateway {
    const char *name; /* last part of the path: /messages/NAME */
    struct authentication authentication;
    struct message_fields message;
    struct delivery_fields delivery;
    struct send_shape send;
};

/* What a telephone service's word for the end of a call means. */
enum ring_result { RING_UNKNOWN, RING_ANSWERED, RING_VOICEMAIL, RING_UNANSWERED, RING_FAILED };

struct ring_word {
    const char *word; /* as the service says it */
    enum ring_result result;
};

/* Where a report's fields are, as in struct message_fields. */
struct ring_fields {
    bool form;
    const char *ring;    /* our key of the call, or the service's id of it */
    const char *pressed; /* the key pressed */
    const char *result;  /* NULL: a key alone tells that someone answered */
    const struct ring_word *words;
    size_t word_count;
};

/* Whoever makes telephone calls for us: asked and proven as a gateway is. */
struct ring_service {
    struct gateway carrier; /* first: the gateway's keys fill it; no message, no delivery */
    struct ring_fields report;
};

/* The mail server. */
struct mail {
    const char *url; /* NULL: there is none */
    const char *user, *password, *from, *ca_file;
    int timeout_ms;
    int64_t link_s; /* how long a link in an e-mail is good for */
};

struct staff {
    const char *name, *phone;                 /* the phone says who they are, everywhere */
    enum alert_level road_from[ROAD_COUNT];   /* least level of an alert; ALERT_NONE: never */
    bool has_ring;                            /* the configuration speaks of it */
    const char *address;                      /* e-mail, or NULL */
    const char *webhook_url, *webhook_secret; /* or NULL */
};

/* A text a day through the gateway and back. */
struct line_test_times {
    bool is_on;
    int at_minutes; /* of the day, in the configuration's zone */
    const char *to; /* where it goes and whence it comes back */
    int64_t within_s;
};

/* Fetched at intervals, so that someone else notices our end. */
struct ping {
    const char *url; /* NULL: none */
    int64_t every_s;
};

/* Seconds; design.md, "Route, alert, times". Index: enum alert_level. */
struct alert_times {
    int64_t next_s; /* no one has taken it: the next in line is called too */
    int64_t everyone_s;
    int64_t recheck_s; /* taken but no outcome: called again */
    int64_t again_s;   /* called again anyway */
};

struct limits {
    int connections; /* at once */
    int request_s;   /* from the first byte of a request to its last */
    int body_bytes, header_bytes;
    int outbox_running;    /* sends at once */
    int64_t give_up_s;     /* a reply unsent for so long goes to a person instead */
    int64_t stale_s;       /* a reply that holds minutes is worked out again after this */
    int64_t unconfirmed_s; /* an emergency not confirmed delivered by then: staff are told */
    int64_t outage_s;      /* mains failures told there within it are one alert */
    int64_t flowing_s;     /* "Is oxygen flowing again?" unanswered by then is an emergency */
    int64_t plug_s;        /* the same of a plug, and of "reading or age?": someone is called */
    int64_t talk_s;        /* a renter who has a person waits so long for an answer at most */
    int64_t talk_urgent_s; /* the same, of an alert that is urgent or an emergency */
    int64_t repeat_keep_s; /* how long a gateway's ids are remembered */
};

/* More texts than a person writes, or than we want to answer. 0: no limit. */
struct flood_limits {
    int64_t window_s;
    int sender_texts; /* of one sender in a window */
    int same_texts;   /* of one sender in a window, word for word the same */
    int day_texts;    /* of one sender in 24 hours */
    int replies;      /* to everybody in a window */
};

/* A place that lies in another zone. */
struct place_zone {
    const char *words, *zone_name;
    struct zone zone;
};

/* When renters are texted nothing that they did not ask for; minutes of the day. */
struct quiet_hours {
    const char *from_text, *until_text;
    int from, until; /* equal: never */
    struct place_zone *places;
    size_t place_count;
};

/* Texts to many. */
struct notice_limits {
    int per_minute;
    int per_day; /* notices to one phone */
};

struct config {
    void *arena; /* everything lives here; config_free() drops it */
    const char *file;
    const char *listen_address;
    int listen_port;        /* 0: any free port, told in the log */
    const char *public_url; /* as gateways reach us, for {url} in signatures; NULL: from Host */
    const char *database, *kb_folder, *cache_folder; /* relative to the file's folder */
    const char *zone_name;
    struct zone zone;            /* for some years around the time at which it was read */
    const char *country_code;    /* "1": for numbers without + */
    const char *national_prefix; /* "0" or "": dropped before the country code is put on */
    int national_digits;         /* length of a national number, to tell it from a short code */
    struct house house;
    const struct gateway *gateways;
    size_t gateway_count;
    const struct gateway *booking; /* may put rentals; only its authentication is set; or NULL */
    const char *reply_gateway;     /* which one carries alerts to staff */
    const struct ring_service *rings;
    size_t ring_count;
    const char *ring_service; /* which one rings staff, or NULL */
    struct mail mail;
    const struct staff *staff; /* on call, first in line first; at least one */
    size_t staff_count;
    const struct rota *rota;                 /* NULL: staff as listed, always */
    int64_t turn_confirm_s;                  /* 0: nobody is asked to confirm a turn */
    const struct office_hours *office_hours; /* NULL: not told, so nothing waits for them */
    struct alert_times alert_times[ALERT_EMERGENCY + 1];
    struct limits limits;
    struct flood_limits floods;
    struct quiet_hours quiet_hours;
    struct notice_limits notices;
    struct line_test_times line_test;
    struct ping ping;
    int disk_least_mb; /* 0: the disk is not watched */
    enum log_level log_level;
    enum log_format log_format;
    int64_t played_start_utc_s; /* 0: the real clock */
    int played_speed;
};

/*
 * Reads a configuration from bytes; `file` names it in faults and its folder is where relative
 * paths start. On success *config is the caller's; on failure it is untouched and each fault has
 * a JSON Pointer, what was expected and the remedy. Returns 0 or -1.
 */
int config_read(const char *bytes, size_t length, const char *file, struct config **config,
                struct faults *faults);
/* The same from the file. */
int config_load(const char *file, struct config **config, struct faults *faults);
void config_free(struct config *config);

/* NULL if there is none of this name. */
const struct gateway *config_gateway(const struct config *config, const char *name);
const struct ring_service *config_ring(const struct config *config, const char *name);
/* Who of staff has this phone, or this name in any case; NULL if nobody. */
const struct staff *config_staff_by_phone(const struct config *config, const char *phone);
const struct staff *config_staff_by_name(const struct config *config, const char *name);
bool config_listens_on_loopback(const struct config *config);

/* "https://…" or "http://…"; "robin@larkspur.example" in the plain form, without any space. */
bool config_is_url(const char *text);
bool config_is_address(const char *address);

/* Prints every key: its JSON Pointer, bounds, what holds without it, what it means. */
void config_explain(FILE *out);

#endif
