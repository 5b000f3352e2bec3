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

/*
 * The text is nothing but a word of the display, however much it reads like a person in danger: all
 * of it in capitals ("NO BREATH"), or behind "display:", "it says:". By the table of the renter's
 * unit, of any of the house while that is not known. Not if the sender just wrote in capitals.
 */
bool display_is_word(const struct asked *whole, const char *text);

#endif
