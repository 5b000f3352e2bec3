/* Private to the gateway_*.c files and to what checks a gateway's configuration. */
#ifndef GATEWAY_PARTS_H
#define GATEWAY_PARTS_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "fault.h"

/* ---- Signatures ----------------------------------------------------------------------------- */

/* Bytes of a Standard Webhooks secret once decoded (Standard Webhooks 1.0.0). */
enum { GATEWAY_KEY_MIN = 24, GATEWAY_KEY_MAX = 64 };

/* HMAC-SHA-256, RFC 2104; a key of any length. */
void gateway_hmac(const void *key, size_t key_length, const void *data, size_t length,
                  unsigned char signature[32]);

/* Decodes "whsec_BASE64". Returns 0, or -1 if it is not base64 of 24 to 64 bytes. */
int gateway_webhook_key(const char *secret, unsigned char key[GATEWAY_KEY_MAX], size_t *length);

/* "v1,BASE64" over "id.timestamp.body" in `arena`; NULL if the secret is none. */
char *gateway_webhook_signature(void *arena, const char *secret, const char *id, int64_t timestamp,
                                const char *body, size_t body_length);

/* ---- What an HMAC is made over -------------------------------------------------------------- */

enum template_kind {
    TEMPLATE_LITERAL,
    TEMPLATE_HEADER,     /* {header:X} */
    TEMPLATE_URL,        /* {url} */
    TEMPLATE_BODY,       /* {body} */
    TEMPLATE_SORTED_FORM /* {sorted-form}: names and values without anything between, by name */
};

struct template_part {
    enum template_kind kind;
    const char *text; /* of a literal, or the header's name */
};

/* Cuts "{url}{sorted-form}" into parts, in `arena`. Returns 0, or -1 with a fault. */
int gateway_template_read(void *arena, const char *text, struct template_part **parts,
                          size_t *count, struct fault *fault);

/* ---- What we send --------------------------------------------------------------------------- */

/* Bits for what a text of the request that we send holds. */
enum { FILL_TO = 1, FILL_FROM = 2, FILL_TEXT = 4, FILL_KEY = 8 };

/* Which of {to} {from} {text} {key} stand in `text`; *unknown gets another {word} or NULL. */
unsigned gateway_placeholders(void *arena, const char *text, const char **unknown);

#endif
