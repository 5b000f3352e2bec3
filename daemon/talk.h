/*
 * A person's conversation with a renter through the line: who has it, what is passed on to them, by
 * when they must have answered, and how it comes back to the program. For the transaction that is
 * open.
 *
 * The renter waits from the first of their texts that is not answered, and who asked for the
 * conversation has as long for a first word.
 */
#ifndef TALK_H
#define TALK_H

#include "calls.h"

/* Who has taken an alert has its conversation. `wrote` is whether the renter gets words now. */
int talk_begin(const struct caller *caller, const struct alert_row *alert, const char *who,
               bool wrote, int64_t text_id, struct fault *fault);

/* The renter has texted while a person has the conversation; `words` reach that person. */
int talk_pass_on(const struct caller *caller, const char *phone, const char *words, int64_t text_id,
                 struct fault *fault);

/* An alert is in other hands, and so is what was written about it. */
int talk_follow(const struct caller *caller, int64_t alert_number, const char *who,
                struct fault *fault);
/* Another phone of the rental has texted, which the program answers; `words` reach who has the
 * alert. */
int talk_show(const struct caller *caller, int64_t alert_number, const char *to, const char *words,
              int64_t text_id, struct fault *fault);
/* An alert is closed: the program has the conversation, and the renter is told so. */
int talk_close(const struct caller *caller, int64_t alert_number, struct fault *fault);

/* Whoever waited too long is told, nobody has their alert any more, it is called now, and the
 * program answers again. */
int talk_lapse(const struct caller *caller, struct fault *fault);

/* The gateway that the renter of this phone texts by, in the caller's arena. */
int talk_gateway(const struct caller *caller, const char *phone, const char **gateway,
                 struct fault *fault);

#endif
