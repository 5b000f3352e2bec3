/*
 * Placeholders that content may use, in braces: `{due}`. One table for the reader, which refuses
 * unknown ones with file and line, for the filler, and for the office's manual.
 *
 * A HOUSE placeholder always has a value (configuration). A RECORD placeholder comes from the
 * renter's record or the unit's equipment file and may be missing, above all for a stranger, so it
 * must bring its own words for that case after a bar: `{due|the day on your rental slip}`. Words
 * after the bar may hold HOUSE placeholders but no others: `{place|call {phone}}`.
 */
#ifndef PLACEHOLDERS_H
#define PLACEHOLDERS_H

#include <stdbool.h>
#include <stddef.h>

#include "fault.h"

/* X(identifier, name in content, from the record, what it stands for) */
#define PLACEHOLDERS(X)                                                                            \
    X(COMPANY, "company", false, "the company's name")                                             \
    X(PHONE, "phone", false, "the office's phone number")                                          \
    X(ADDRESS, "address", false, "the office's address")                                           \
    X(HOURS, "hours", false, "office hours")                                                       \
    X(RETURN_HOW, "return-how", false, "sentence: how and where to give the unit back")            \
    X(EMERGENCY, "emergency", false, "the emergency number")                                       \
    X(NAME, "name", true, "the renter's first name")                                               \
    X(UNIT, "unit", true, "the unit's name, as on its case")                                       \
    X(PLACE, "place", true, "where the renter stays")                                              \
    X(DUE, "due", true, "day and time the rental is due")                                          \
    X(BATTERIES, "batteries", true, "\"3 batteries\", as many as the record has")                  \
    X(CHARGERS, "chargers", true, "\"1 charger\", as many as the record has")                      \
    X(ORDERS, "orders", true, "what is ordered: \"continuous 2 at rest, pulse 3 for walking\"")    \
    X(NIGHT, "night", true, "sentence: what is ordered for sleep on this unit")                    \
    X(BACKUP, "backup", true, "the backup source: \"your E cylinder\"")                            \
    X(PACKING, "packing", true, "list of what goes into the case, with the number of batteries")   \
    X(BATTERY_LIFE, "battery-life", true, "sentence: what one battery lasts as ordered")           \
    X(CAR_OUTLET, "car-outlet", true, "sentence: what the car outlet does for this unit")          \
    X(CAR_CHARGER, "car-charger", true, "sentence: whether a car cord is in the case")             \
    X(GAUGE_HOW, "gauge-how", true, "sentence: how to read the battery gauge of this unit")        \
    X(GAUGE_BANDS, "gauge-bands", true, "what each number of lights stands for")                   \
    X(SWAP_HOW, "swap-how", true, "sentence: how to change the battery of this unit")              \
    X(SWAP_OXYGEN, "swap-oxygen", true, "sentence: whether oxygen stops during a swap")            \
    X(CHARGE_TIME, "charge-time", true, "sentence: how long one battery takes to charge")          \
    X(MODES, "modes", true, "the modes that this unit has: \"continuous flow, pulse and night\"")  \
    X(TUBE, "tube", true, "longest tube allowed: \"7 feet in pulse, 50 feet in continuous flow\"") \
    X(NO_BREATH, "no-breath", true, "sentence: what the unit does when it feels no breath")        \
    X(NEEDS_WALL, "needs-wall", true, "sentence: what runs from the wall only")                    \
    X(SUPPLY, "supply", true, "\"100 to 240 volts\", what the power supply takes")                 \
    X(ALTITUDE_LIMIT, "altitude-limit", true, "\"10,000 feet\", the highest place it may run")     \
    X(RUN_TEMPERATURES, "run-temperatures", true, "\"41 to 104 F\", while running")                \
    X(CHARGE_TEMPERATURES, "charge-temperatures", true, "\"41 to 95 F\", while charging")          \
    X(WEIGHT, "weight", true, "\"5.1 pounds\", with one battery in")                               \
    X(SOUND, "sound", true, "\"41 decibels\"")                                                     \
    X(WATT_HOURS, "watt-hours", true, "\"92 watt-hours\", rated, of one battery")                  \
    X(AIRCRAFT, "aircraft", true, "sentence: whether the unit carries the aircraft label")

enum placeholder {
#define X(identifier, name, from_record, what) PLACEHOLDER_##identifier,
    PLACEHOLDERS(X)
#undef X
        PLACEHOLDER_COUNT
};

struct placeholder_entry {
    const char *name;
    bool from_record;
    const char *what;
};

/* The table's row. */
const struct placeholder_entry *placeholder_entry(enum placeholder placeholder);

/* The placeholder of this name (length bytes, not ended by NUL); PLACEHOLDER_COUNT if unknown. */
enum placeholder placeholder_named(const char *name, unsigned long length);

/* One placeholder as it stands in a text. */
struct placeholder_use {
    size_t start, end; /* bytes [start, end) of the text, with the braces */
    const char *name;  /* not ended by NUL, may be unknown */
    size_t name_length;
    const char *words; /* what stands after the bar, not ended by NUL; NULL if no bar */
    size_t words_length;
    bool closed; /* false: its brace has no partner; end is the text's end */
};

/* Finds the first placeholder at or after byte `from`; false, nothing set, if there is none. */
bool placeholder_next(const char *text, size_t from, struct placeholder_use *use);

/*
 * Adds a fault for everything in a text that the filler could not fill: unknown names, names that
 * are not in `allowed` (NULL: all are), missing words for strangers, braces without a partner.
 * `line` is the line of the file on which the text begins.
 */
void placeholders_check(const char *text, const bool allowed[PLACEHOLDER_COUNT], const char *file,
                        int line, struct faults *faults);

#endif
