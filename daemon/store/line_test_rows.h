/* Test texts that went out through the gateway; each must come back with its token. */
#ifndef LINE_TEST_ROWS_H
#define LINE_TEST_ROWS_H

#include "store.h"

struct line_test_row {
    int64_t id;
    const char *token, *recipient;
    int64_t sent_utc_s;
    bool is_open; /* it has not come back, and nobody was told so */
};

int line_test_rows_add(struct store *store, const char *token, const char *recipient,
                       int64_t now_utc_s, struct fault *fault);
/* The newest one; *found is false if there was never one. */
int line_test_rows_newest(struct store *store, void *arena, struct line_test_row *row, bool *found,
                          struct fault *fault);

/* A text of this sender, if it holds the token of a test sent to there: the test has come back.
 * *is_test tells, also of one that comes twice or too late. */
int line_test_rows_come(struct store *store, const char *sender, const char *text,
                        int64_t now_utc_s, bool *is_test, struct fault *fault);
/* Staff are told that it did not come. */
int line_test_rows_miss(struct store *store, int64_t id, int64_t now_utc_s, struct fault *fault);

#endif
