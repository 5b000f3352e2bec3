/* Words and symbols on the unit's display, as the equipment file lists them. */
#ifndef DISPLAY_H
#define DISPLAY_H

#include "asked.h"

/*
 * The alarm of this unit whose words the text gives as read from the display: told as read ("it
 * says ..."), in capitals amid small letters, or alone. NULL if there is none; else *start and *end
 * (may be NULL) are the bytes of its words.
 */
const struct alarm *display_shown(const struct asked *asked, const struct equipment *equipment,
                                  size_t *start, size_t *end);

#endif
