/*
 * Questions that nobody answered in time: what then is called is decided by the handlers
 * (open_question_unanswered()), and when by the rows of store/answer_rows.h.
 */
#ifndef UNANSWERED_H
#define UNANSWERED_H

#include "store.h"

/* Opens or raises the alert of each question whose time has come; inside a transaction. */
int unanswered_call(struct store *store, void *arena, int64_t now_utc_s, struct fault *fault);

#endif
