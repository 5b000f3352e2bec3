/* What `hutbell notice` prints: a plan, the list of notices, how one of them stands. */
#ifndef NOTICE_PRINT_H
#define NOTICE_PRINT_H

#include "notice.h"

/* The texts with their parts, who gets them when, and whom to ring instead. */
void notice_print_plan(void *arena, const struct config *config, const struct notice *notice,
                       int64_t now_utc_s);

/* One line for each. */
int notice_print_all(struct store *store, void *arena, const struct config *config,
                     struct fault *fault);

/* Who answered, who has not yet, and whom to ring, with the numbers. A fault if there is none of
 * this number. */
int notice_print_one(struct store *store, void *arena, const struct config *config, int64_t number,
                     struct fault *fault);

#endif
