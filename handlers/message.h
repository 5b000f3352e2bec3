/*
 * One text as it reached us, whatever the gateway called its fields. Filled by
 * daemon/wire/gateway.c, read by the handlers. Strings are UTF-8 without NUL and live as long as
 * the turn.
 */
#ifndef MESSAGE_H
#define MESSAGE_H

#include <stdint.h>

struct message {
    const char *gateway;   /* the gateway's name in the configuration */
    const char *id;        /* the gateway's own id of this text, or NULL */
    const char *sender;    /* E.164 with +, or a short code without */
    const char *recipient; /* the same, or NULL if the gateway does not say */
    const char *text;
    int64_t sent_utc_s; /* when the renter sent it; equals received if the gateway is silent */
    int64_t received_utc_s;
    int attachments; /* pictures and the like: counted, never fetched */
};

#endif
