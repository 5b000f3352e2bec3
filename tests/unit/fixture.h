/*
 * A stage for tests of the handlers: an invented company, knowledge base and renter, all in
 * memory, and a conversation that goes on from text to text as the daemon would keep it.
 *
 * The clock starts on Tuesday, 10 February 2026, 11:15 am; the zone is 7 hours behind UTC. The
 * renter Ana has a Finch (continuous 2 at rest, pulse 3 for walking, pulse 2 for sleep) with two
 * batteries of measured health 100 and 90 %. One new battery lasts: continuous 2 60 to 72 min,
 * pulse 2 200 to 240, pulse 3 150 to 180. It charges in the unit while that is off: 105 to 125 min
 * to 80 %, 170 to 205 to full. A Wagtail charges while it runs too (240 and 390), in the car as
 * well, and in a charger of its own (130 and 215); its batteries have 120 Wh, and of their time 85
 * % is left at 0 C, 70 % at -10 C.
 */
#ifndef FIXTURE_H
#define FIXTURE_H

#include <check.h>

#include "handlers.h"

struct fixture {
    void *arena;
    struct kb *kb;
    struct house house;
    struct zone_step step;
    struct zone zone;
    struct rental rentals[3];
    struct battery_account accounts[3];
    struct reminder reminders[12];
    struct recent_text recent[4];
    struct open_alert alerts[4];
    bool keeps_alerts; /* false at first: an alert is forgotten with its text, as if closed at once
                        */
    struct context context; /* points at the above; rental_count starts at 1 */
    struct message message;
    struct verdict verdict; /* of the last text */
};

extern const int64_t fixture_start_utc_s; /* 2026-02-10 11:15 on the wall */

/* Each test has its own. */
struct fixture *fixture_new(void);
void fixture_free(struct fixture *fixture);

/* One more rental of the same phone: Tom, out, with a Wagtail, continuous 1 at rest. */
struct rental *fixture_second_rental(struct fixture *fixture);
/* Nobody whom we know writes. */
void fixture_stranger(struct fixture *fixture);
/* Staff write; alerts are added to fixture->alerts by fixture_alert(). */
void fixture_staff(struct fixture *fixture);
struct open_alert *fixture_alert(struct fixture *fixture, int64_t number, const char *reason);

/*
 * A text comes in now: decided, and what it changed in conversation, account and consent is kept
 * for the next, and with keeps_alerts the alert, one for all. Returns the verdict, which lives
 * until the next text.
 */
const struct verdict *fixture_text(struct fixture *fixture, const char *text);
/* The clock goes on. */
void fixture_wait_minutes(struct fixture *fixture, int minutes);

/* All replies, a line each; "" if there is none. */
const char *fixture_replies(struct fixture *fixture);

/* The answer of this id, or NULL. */
const struct answer *fixture_answer(const struct fixture *fixture, const char *id);

/* Fails the test unless the replies have this in them. */
void fixture_says(struct fixture *fixture, const char *words);
void fixture_says_not(struct fixture *fixture, const char *words);
void fixture_alerts(const struct fixture *fixture, enum alert_level level, const char *reason);

/* Runs the tests of one file; what main() returns. */
int fixture_run(TCase *tests);

#endif
