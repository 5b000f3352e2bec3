/*
 * The rental: the office's record of who has which unit, ordered how, until when. Plain data,
 * loaded by daemon/rental.c from the row that the office imported. Optional strings are NULL and
 * optional numbers 0 (or as said) when the record does not tell.
 */
#ifndef RENTAL_H
#define RENTAL_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "equipment.h"
#include "words.h"

enum rental_state { RENTAL_BOOKED, RENTAL_OUT, RENTAL_OVERDUE, RENTAL_RETURNED, RENTAL_CLOSED };

enum activity { ACTIVITY_REST, ACTIVITY_WALKING, ACTIVITY_SLEEP, ACTIVITY_FLIGHT, ACTIVITY_COUNT };

/* What the prescriber ordered for one activity. */
struct order {
    bool known;
    enum mode mode;
    int setting_tenths;
    int64_t dated_utc_s; /* 0 if not known */
    const char *confirmed_by;
};

struct battery {
    const char *serial;
    int health_percent; /* measured; 0 if never measured */
    int64_t measured_utc_s;
};

enum reach { REACH_ANY, REACH_TEXTS_ONLY, REACH_NEVER_RING, REACH_LANDLINE };

struct phone {
    const char *number; /* E.164 */
    const char *whose;  /* "renter", "daughter" */
    enum reach reach;
};

/* The backup source exactly as the record has it. */
struct backup {
    bool known;
    const char *kind; /* "cylinder" */
    const char *size; /* "E" */
    int psi;          /* 0 if not known */
    int64_t checked_utc_s;
    int flow_tenths; /* ordered flow in L/min; 0 if not known */
};

enum { RENTAL_PHONES_MAX = 4, RENTAL_BATTERIES_MAX = 8 };

struct rental {
    const char *rental_id;
    enum rental_state state;
    const char *name; /* full name; texts by phone use first_name */
    const char *first_name;
    enum language language;
    bool in_words; /* blind, or read to: words instead of signs and short forms */
    struct phone phones[RENTAL_PHONES_MAX];
    size_t phone_count;
    const char *unit; /* id of an equipment file */
    const char *serial;
    struct order orders[ACTIVITY_COUNT];
    struct battery batteries[RENTAL_BATTERIES_MAX];
    size_t battery_count;
    int chargers; /* battery chargers, beside the unit */
    bool car_charger;
    struct backup backup;
    double tube_feet;
    int64_t start_utc_s, due_utc_s;
    const char *emergency_address; /* the 911 address */
    const char *access;
    const char *place; /* "Cabin 4, Upper Lodge" */
    int altitude_ft;
    const char *desk_phone, *emergency_contact, *prescriber_phone, *dispatch_number;
    int call_below_reading; /* oximeter value below which to call; 0 if none; can only raise */
    const char *digest;     /* SHA-256 of the row, which replays name */
};

/* Served fully: booked, out or overdue (an overdue renter is still on oxygen). */
bool rental_is_active(const struct rental *rental);
/* On oxygen of ours now: out or overdue. */
bool rental_is_out(const struct rental *rental);

/* "rest", "walking", "sleep", "flight"; activity_named() gives ACTIVITY_COUNT for others. */
const char *activity_name(enum activity activity);
enum activity activity_named(const char *name);
/* "booked", "out", "overdue", "returned", "closed"; -1 for others. */
const char *rental_state_name(enum rental_state state);
int rental_state_named(const char *name);

#endif
