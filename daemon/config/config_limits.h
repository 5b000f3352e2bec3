/* The part of the configuration that limits what comes and goes; private to config*.c. */
#ifndef CONFIG_LIMITS_H
#define CONFIG_LIMITS_H

#include "config_keys.h"

/* Of struct config. */
extern const struct key_table limits_keys, flood_keys;

#endif
