/*
 * Gateways: whoever carries texts to and from us. Checks who sent a request, maps the gateway's
 * own field names to ours, and shapes what we send. No I/O. Names of a gateway's fields stand only
 * here and in the configuration.
 */
#ifndef GATEWAY_H
#define GATEWAY_H

#include "config.h"
#include "message.h"

/* A request as the gateway sees it; http.c fills it. `header` returns NULL for one not sent. */
struct incoming {
    const char *url;          /* the whole URL that the sender signed */
    const char *content_type; /* or NULL */
    const char *body;
    size_t body_length;
    const char *(*header)(const struct incoming *incoming, const char *name);
    const void *request; /* for `header` */
};

/*
 * True if the request proves that it comes from this gateway, in constant time for all secrets.
 * Otherwise *fault says what was missing, without any secret.
 */
bool gateway_authentic(const struct gateway *gateway, const struct incoming *incoming,
                       int64_t now_utc_s, struct fault *fault);

/* What a 401 says in WWW-Authenticate (RFC 9110, 15.5.2, wants it in each). */
const char *gateway_challenge(const struct gateway *gateway);

/*
 * Whether a body of this Content-Type can be read by a field map for forms, or for JSON
 * ("application/json", "application/cloudevents+json"). One that was not sent can. Else answer 415.
 */
bool gateway_reads_type(bool form, const char *content_type);

/* How far from our clock the time of a text may be before it is not believed. */
enum { GATEWAY_SENT_OLDEST_S = 14 * 24 * 3600 };
/* Bytes of a text that are kept; a longer one is cut at a character border. */
enum { GATEWAY_TEXT_MAX = 4096, GATEWAY_ID_MAX = 255 };

/*
 * Maps a request to a message in `arena`. Returns 0, or -1 with a fault that names the field, what
 * was found and what was expected (answered with 400).
 *
 * A text may be empty only if there are attachments. The time sent is RFC 3339, or Unix seconds or
 * milliseconds; one later than our clock, or older than 14 days, counts as received now. A sender
 * that is no phone number ("INFO") cannot be answered and is refused.
 */
int gateway_message(void *arena, const struct config *config, const struct gateway *gateway,
                    const struct incoming *incoming, int64_t now_utc_s, struct message *message,
                    struct fault *fault);

struct delivery {
    const char *message_id; /* the gateway's id of what we sent */
    enum delivery_status status;
    const char *word; /* as told */
};

int gateway_delivery(void *arena, const struct gateway *gateway, const struct incoming *incoming,
                     struct delivery *delivery, struct fault *fault);

/* What a telephone service tells of a call that it made for us. */
struct ring_report {
    const char *ring;    /* our key of the call, or the service's id of it */
    const char *pressed; /* the key that a person pressed; "" for none */
    enum ring_result result;
    const char *word; /* as told, or "" */
};

/*
 * As gateway_delivery(). A key counts only in a call that a person answered: pressed into voicemail
 * it comes out as none. Without a word for the result the key alone tells.
 */
int gateway_ring(void *arena, const struct ring_service *service, const struct incoming *incoming,
                 struct ring_report *report, struct fault *fault);

/* One text to be sent. */
struct outgoing {
    const char *to, *text;
    const char *key; /* idempotency key, the same at each try */
    int64_t now_utc_s;
};

/* A request ready for the wire, all in `arena`. */
struct shaped_request {
    const char *method, *url;
    const char **headers; /* "Name: value", ended by NULL */
    const char *body;
    size_t body_length;
};

void gateway_shape(void *arena, const struct gateway *gateway, const struct outgoing *outgoing,
                   struct shaped_request *request);

/* The gateway's id for a text it accepted, from its answer's body; NULL if it tells none. */
const char *gateway_accepted_id(void *arena, const struct gateway *gateway, const char *body,
                                size_t length);

/*
 * A phone number as E.164 ("+12085550123") in `arena`, from any usual spelling ("(208) 555-0123",
 * "tel:+1…", "0012085550123"); a short code of 3 to 8 digits stays as it is. NULL if neither.
 * ITU-T E.164: at most 15 digits, no leading zero.
 */
char *gateway_phone(void *arena, const struct config *config, const char *text);

#endif
