/* The part of the configuration that describes one gateway; private to config*.c. */
#ifndef CONFIG_GATEWAY_H
#define CONFIG_GATEWAY_H

#include "config_keys.h"

struct config;
struct gateway;

/* Keys of one gateway; fills a struct gateway. */
extern const struct key_table gateway_keys;

/* Its key "send", how a text is handed to it (config_send.c). */
extern const struct key_table gateway_send_keys;
void gateway_send_read(const struct reading *reading, json_t *value, const char *pointer,
                       void *target);

/* Its key "authentication", which telephone services have too. */
extern const struct key_table gateway_authentication_keys;
void gateway_authentication_read(const struct reading *reading, json_t *value, const char *pointer,
                                 void *target);

/* A name that stands in a URL; adds a fault at `pointer` if it cannot. */
void gateway_name_check(const struct reading *reading, const char *name, const char *pointer);
/* Requests that prove nothing are taken on loopback only. `pointer` is where `gateway` stands. */
void gateway_none_check(const struct reading *reading, const struct config *config,
                        const struct gateway *gateway, const char *pointer);

/* For the key "gateways" of struct config: an object of them by name. */
void gateways_read(const struct reading *reading, json_t *value, const char *pointer, void *target);

/* For the key "booking" of struct config: who may put rentals. */
extern const struct key_table booking_keys;
void booking_read(const struct reading *reading, json_t *value, const char *pointer, void *target);

#endif
