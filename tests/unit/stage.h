/* One stage (fixture.h) for each test of a file, and what tests of worked out answers look at. */
#ifndef STAGE_H
#define STAGE_H

#include "fixture.h"

extern struct fixture *stage;

/* For tcase_add_checked_fixture(). */
void stage_set_up(void);
void stage_tear_down(void);
/* The same with one of staff as the sender. */
void stage_staff_set_up(void);

/* This text does that to the alert of the number, and calls nobody. */
void stage_changes(const char *text, enum alert_step step, int64_t number);

/* What was worked out in the answer of this id; fails the test unless it is there. */
const struct estimate *stage_estimate(const char *id, enum estimate_kind kind);

#endif
