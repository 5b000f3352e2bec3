/* The part of the configuration that says whose turn it is and when the office is open; private to
 * config*.c. */
#ifndef CONFIG_ROTA_H
#define CONFIG_ROTA_H

#include "config_keys.h"

extern const struct key_table rota_keys, office_hours_keys;

/* For the keys "rota" and "office_hours" of struct config, after "staff", whose names it uses. */
void rota_read(const struct reading *reading, json_t *value, const char *pointer, void *target);
void office_hours_read(const struct reading *reading, json_t *value, const char *pointer,
                       void *target);

#endif
