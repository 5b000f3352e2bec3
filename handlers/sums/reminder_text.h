/*
 * What is said when a reminder's time has come, and whether it still is one. Pure.
 *
 * A reminder that comes late is none: what it would say is not so any more. The renter is told
 * honestly that it was missed. What nobody chose a time for waits until the quiet hours are over.
 */
#ifndef REMINDER_TEXT_H
#define REMINDER_TEXT_H

#include "context.h"

enum {
    REMINDER_LATE_S = 10 * 60,  /* later than this it is missed */
    REMINDER_OLD_S = 12 * 3600, /* and than this nobody wants to hear of it */
    REMINDER_QUOTE_LENGTH = 120 /* bytes of the renter's words that are said back at most */
};

enum reminder_news {
    REMINDER_WAITS,      /* not before *next_utc_s */
    REMINDER_DUE,        /* its time has come */
    REMINDER_LATE,       /* it was missed, and that is told */
    REMINDER_PAST,       /* it was missed long ago; nothing is told */
    REMINDER_OFF_CHARGE, /* another phone of the rental told a newer charge */
    REMINDER_OFF_RECORD  /* another unit, other batteries or a new order */
};

/* What is to be done now with one that waits; *next_utc_s is set for REMINDER_WAITS. The quiet
 * hours of the renter's place end at quiet_until_utc_s, which is now if it lies in none. */
enum reminder_news reminder_news(const struct reminder *reminder, int64_t quiet_until_utc_s,
                                 int64_t now_utc_s, int64_t *next_utc_s);

/* The text about it; `words` are what the renter wrote, or NULL. News to be told only. */
char *reminder_text(void *arena, const struct house *house, const struct zone *zone,
                    enum language language, const struct reminder *reminder,
                    enum reminder_news news, const char *words, int64_t now_utc_s);

#endif
