/*
 * The test text: once a day, at an hour of the office's choice, a text goes out through the reply
 * gateway to a number from which it comes back to us. If it does not in time, staff are called:
 * renters who text then get no answer either.
 */
#ifndef LINE_TEST_H
#define LINE_TEST_H

#include "loaded.h"
#include "sending.h"

struct event_base;
struct line_test;
struct store;

/* Borrowed, and outlive it. */
struct line_test_parts {
    struct event_base *base;
    const struct clock *clock;
    struct store *store;
    struct turn *turn;
    struct transfers *transfers;
    const struct loaded *loaded;
};

struct line_test *line_test_new(const struct line_test_parts *parts);
/* After turn_free(), before transfers_free(). NULL is fine. */
void line_test_free(struct line_test *test);

/* Another configuration from now on. */
void line_test_use(struct line_test *test, const struct loaded *loaded);

/* When the next test is due after one at `last_utc_s`: the next time that the wall shows
 * `at_minutes`. Arithmetic only. */
int64_t line_test_next(int64_t last_utc_s, int at_minutes, const struct zone *zone);

#endif
