/*
 * A stage for the tests of texts that come in: real content, one renter on record, a store in a
 * file of its own, and an intake whose turns are run one by one.
 */
#ifndef INTAKE_STAGE_H
#define INTAKE_STAGE_H

#include <check.h>

#include "clock.h"
#include "intake.h"
#include "store.h"

/* 2026-02-13 19:00 in Denver: date -u -d '2026-02-14 02:00' +%s */
enum { EVENING = 1771034400 };

extern const char ada[];     /* the renter's phone: on continuous flow 2, two batteries */
extern struct loaded loaded; /* of all tests: content takes a while to read */
extern void *arena;
extern struct clock *evening;
extern struct store *store;
extern struct intake *intake;
extern char *sent; /* unrecorded texts: "TO: text" a line */
extern char *told; /* outcomes in order */

/* An unchecked fixture, and a checked one. */
void stage_load(void);
void stage_free(void);
void stage_set_up(void);
void stage_tear_down(void);

/* Closes the store and opens a fresh one. */
void stage_afresh(void);

struct message text_of(const char *sender, const char *id, const char *text);

/* Hands a text in; run() lets the turn happen. */
void take(const struct message *message);
void run(void);

/* All rows of a query, a line each. */
char *asked(const char *sql);

#endif
