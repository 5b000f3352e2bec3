/*
 * One text settled in the store: kept, decided, and all that the verdict asks for written down. The
 * caller has the transaction; the verdict is obeyed, never changed.
 */
#ifndef SETTLE_H
#define SETTLE_H

#include "gather.h"
#include "outbox_rows.h"
#include "verdict.h"

/* *verdict, in `arena`, says what was decided; *text_id names the text. Returns 0 or -1. */
int settle(struct store *store, void *arena, const struct surroundings *surroundings,
           const struct message *message, struct verdict **verdict, int64_t *text_id,
           struct fault *fault);

/*
 * A reply that holds minutes or a clock time was not sent in time: the text is decided anew as of
 * now, from the state that its verdict started from, and what is still unsent of the old times is
 * replaced. Nothing but the replies, what we ask with them and, if staff must be called louder, the
 * alert changes. A row that is settled already is left alone.
 */
int settle_again(struct store *store, void *arena, const struct surroundings *surroundings,
                 const struct outbox_row *row, struct fault *fault);

#endif
