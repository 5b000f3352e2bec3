/* Duty: who is on call at a moment, by the rota of the configuration, or its staff as listed; and
 * by who confirmed the turn, and who was asked in vain. */
#ifndef DUTY_H
#define DUTY_H

#include "config.h"
#include "turn_rows.h"

struct duty {
    /* First in line first: those of the turn, then the rest of staff as listed, so that an alert
     * that nobody of the turn takes still reaches somebody. The configuration's. */
    const struct staff *const *line;
    size_t count;                     /* at least 1 */
    size_t on_turn;                   /* how many of them the turn names; without a rota all */
    int64_t since_utc_s, until_utc_s; /* the turn; INT64_MIN and INT64_MAX without a rota */
    bool is_swap;
    const struct staff *confirmed_by; /* who has said that they are there, first in line; or NULL */
    int64_t asked_utc_s;              /* when the first in line was asked that; 0 for never */
    size_t passed;                    /* how many were asked in vain */
};

/* By the rota alone. In `arena`. */
struct duty duty_at(void *arena, const struct config *config, int64_t utc_s);

/*
 * The same by what was said of this turn so far: who confirmed it is first, and who was asked in
 * vain stands at the end, unless all were. In `arena`.
 */
void duty_apply(void *arena, struct duty *duty, const struct turn_row *rows, size_t count);
/* Both, by the store. */
int duty_now(struct store *store, void *arena, const struct config *config, int64_t now_utc_s,
             struct duty *duty, struct fault *fault);

/* Without this person, if someone else is in the line: an alert about one of staff is a
 * colleague's. In `arena`. */
void duty_leave_out(void *arena, struct duty *duty, const char *phone);

/* When the office is open: this moment, if it is or if no hours are told, or the next. */
int64_t duty_office_opens(const struct config *config, int64_t utc_s);

/* Where in the line this phone stands; duty->count if it is nobody's there. */
size_t duty_place(const struct duty *duty, const char *phone);

#endif
