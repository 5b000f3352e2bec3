/* The part of the configuration that says who is on call and how they are reached; private to
 * config*.c. */
#ifndef CONFIG_STAFF_H
#define CONFIG_STAFF_H

#include "config_keys.h"

struct config;

/* Keys of one of staff; fills a struct staff. */
extern const struct key_table staff_keys;

/* For the key "staff" of struct config: a list of them. */
void staff_read(const struct reading *reading, json_t *value, const char *pointer, void *target);

/* What only shows once all keys are read. */
void staff_check(const struct reading *reading, struct config *config);

#endif
