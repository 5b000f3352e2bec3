/* The part of the configuration that says when renters may be texted unasked, and how many at once;
 * private to config*.c. */
#ifndef CONFIG_NOTICES_H
#define CONFIG_NOTICES_H

#include "config.h"
#include "config_keys.h"

extern const struct key_table quiet_hours_keys, notices_keys; /* notices: of struct config */

/* For the key "quiet_hours" of struct config. */
void quiet_hours_read(const struct reading *reading, json_t *value, const char *pointer,
                      void *target);

/* Reads the zones of its places; once the played clock is known. */
void quiet_hours_check(const struct reading *reading, struct config *config);

#endif
