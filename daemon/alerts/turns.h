/*
 * At the start of a turn whoever has it is asked by text to confirm it with HERE. No answer in
 * time: the next in line takes the turn, is asked in turn, and the office hears of it. If the whole
 * line was asked in vain, an urgent alert says so and calls go down the line of the rota. All is
 * derived from rows, so a restart goes on where it was; a turn that began more than
 * TURN_ASK_WITHIN_S ago and of which nobody was asked is not asked about any more.
 */
#ifndef TURNS_H
#define TURNS_H

#include "calls.h"
#include "duty.h"

enum { TURN_ASK_WITHIN_S = 3600 };

enum turn_step { TURN_WAIT, TURN_ASK, TURN_PASS };

/* What is to be done now, and, for TURN_WAIT, when to look again; > now. Arithmetic only. */
enum turn_step turn_step_due(const struct duty *duty, int64_t confirm_s, int64_t now_utc_s,
                             int64_t *next_utc_s);

/* When turns_step() has something to do. */
int turns_next(struct store *store, const struct config *config, int64_t now_utc_s,
               int64_t *next_utc_s, struct fault *fault);
/* Does what is due, for the transaction that is open. */
int turns_step(const struct caller *caller, struct fault *fault);

/* One of staff confirms the turn. */
int turns_confirm(struct store *store, void *arena, const struct config *config, const char *phone,
                  int64_t now_utc_s, struct fault *fault);

/* Fills context->turn and turn_name for this one of staff. */
int turns_of(struct store *store, void *arena, const struct config *config, const char *phone,
             int64_t now_utc_s, struct context *context, struct fault *fault);

#endif
