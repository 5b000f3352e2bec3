/* The parts of the configuration that describe roads to staff and what is watched; private to
 * config*.c. */
#ifndef CONFIG_ROADS_H
#define CONFIG_ROADS_H

#include "config_keys.h"

struct config;

/* Keys of one telephone service; fills a struct ring_service. */
extern const struct key_table ring_service_keys;

/* For the key "rings" of struct config: an object of telephone services by name. */
void rings_read(const struct reading *reading, json_t *value, const char *pointer, void *target);

/* For the keys "mail", "line_test", "ping" and "disk" of struct config. */
extern const struct key_table mail_keys, line_test_keys, ping_keys, disk_keys;
void mail_read(const struct reading *reading, json_t *value, const char *pointer, void *target);
void line_test_read(const struct reading *reading, json_t *value, const char *pointer,
                    void *target);
void ping_read(const struct reading *reading, json_t *value, const char *pointer, void *target);

/* What only shows once all keys are read. */
void rings_check(const struct reading *reading, struct config *config);
void mail_check(const struct reading *reading, const struct config *config);
void line_test_check(const struct reading *reading, struct config *config);

#endif
