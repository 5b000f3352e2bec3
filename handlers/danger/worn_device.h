/*
 * What a device that somebody wears tells: a watch, a ring, a clip on the finger. Low oxygen there
 * is the person's; on the unit's display it is the unit's. Pure.
 */
#ifndef WORN_DEVICE_H
#define WORN_DEVICE_H

#include "tokens.h"

/* Such a device says or shows what stands at `at`. */
bool worn_device_tells(const struct tokens *tokens, size_t at);

/* One tells low oxygen, as it is now. */
bool worn_device_tells_low(const struct tokens *tokens);

#endif
