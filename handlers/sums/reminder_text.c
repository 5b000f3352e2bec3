#include "reminder_text.h"

#include <assert.h>
#include <string.h>

#include "memory.h"
#include "parts.h"
#include "say.h"

enum reminder_news
reminder_news(const struct reminder *reminder, int64_t quiet_until_utc_s, int64_t now_utc_s,
              int64_t *next_utc_s)
{
    int64_t late_s = now_utc_s - reminder->due_utc_s;

    *next_utc_s = reminder->due_utc_s;
    if (late_s < 0) {
        return REMINDER_WAITS;
    }
    if (late_s <= REMINDER_LATE_S) {
        return REMINDER_DUE;
    }
    if (late_s > REMINDER_OLD_S) {
        return REMINDER_PAST;
    }
    /* A battery that may be empty is told of at any hour. */
    *next_utc_s = reminder->kind == REMINDER_AT ? quiet_until_utc_s : now_utc_s;
    return *next_utc_s > now_utc_s ? REMINDER_WAITS : REMINDER_LATE;
}

static char *
due_text(void *arena, const struct house *house, const struct zone *zone, enum language language,
         const struct reminder *reminder, const char *words)
{
    char *due = say_clock(arena, zone, reminder->due_utc_s);

    if (reminder->kind == REMINDER_RUNNING_OUT) {
        return memory_format(arena, "%s %s",
                             say(arena, house, language, SAY_REMIND_DUE_OUT,
                                 say_clock(arena, zone, reminder->ends_utc_s),
                                 say_clock(arena, zone, reminder->as_of_utc_s), NULL),
                             say(arena, house, language, SAY_NOT_AN_ALARM, NULL));
    }
    if (words != NULL && strlen(words) <= REMINDER_QUOTE_LENGTH) {
        return say(arena, house, language, SAY_REMIND_DUE_AT, words, NULL);
    }
    return say(arena, house, language, SAY_REMIND_DUE_AT_NOW, due, NULL);
}

char *
reminder_text(void *arena, const struct house *house, const struct zone *zone,
              enum language language, const struct reminder *reminder, enum reminder_news news,
              const char *words, int64_t now_utc_s)
{
    char *due = say_clock(arena, zone, reminder->due_utc_s), *text;

    switch (news) {
    case REMINDER_DUE:
        text = due_text(arena, house, zone, language, reminder, words);
        break;
    case REMINDER_LATE:
        text = say(arena, house, language, SAY_REMIND_LATE, due, say_clock(arena, zone, now_utc_s),
                   NULL);
        if (reminder->kind == REMINDER_RUNNING_OUT) {
            memory_append(&text, " %s", say(arena, house, language, SAY_REMIND_LATE_OUT, NULL));
        }
        break;
    case REMINDER_OFF_CHARGE:
        text = say(arena, house, language, SAY_REMIND_OFF_CHARGE, due, NULL);
        break;
    case REMINDER_OFF_RECORD:
        text = say(arena, house, language, SAY_REMIND_OFF_RECORD, due, NULL);
        break;
    default:
        assert(false && "nothing is told of it");
        text = memory_copy(arena, "");
        break;
    }
    return parts_plain(arena, text);
}
