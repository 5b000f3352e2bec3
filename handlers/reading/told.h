/*
 * What a text tells of batteries, their use, times and ways, read out of free text, English and
 * Spanish; what it does not tell is absent and never filled in. Pure.
 *
 * How it is read: tokens -> items (words and phrases with what they mean, numbers: items.h) ->
 * amounts with units and clock times (amounts.h, clocks.h) -> what only looks like a number of ours
 * is put aside and what is taken back falls (aside.h, corrections.h) -> charges, settings, times,
 * legs (a file each) -> what is asked, and what must be asked back for it (asks.h). Each reader
 * marks what it took. In doubt nothing is read, or the lower charge and the longer time.
 */
#ifndef TOLD_H
#define TOLD_H

#include <stdbool.h>
#include <stddef.h>

#include "equipment.h"
#include "kb.h"
#include "rental.h"

enum { TOLD_BATTERIES_MAX = 12, TOLD_LEGS_MAX = 12, TOLD_SIZE_MAX = 8 };

/* What is asked to be worked out. */
enum told_kind {
    TOLD_NOTHING,
    TOLD_HOURS_LEFT,   /* from now, with what is there */
    TOLD_BATTERY_LIFE, /* in general */
    TOLD_CHARGING,
    TOLD_TRIP,
    TOLD_FLIGHT,
    TOLD_CYLINDER,
    TOLD_WATCH /* a reminder */
};

enum told_day {
    DAY_TODAY,
    DAY_TOMORROW,
    DAY_MONDAY,
    DAY_TUESDAY,
    DAY_WEDNESDAY,
    DAY_THURSDAY,
    DAY_FRIDAY,
    DAY_SATURDAY,
    DAY_SUNDAY,
    DAY_COUNT
};

/* A span in one place or on one vehicle; drive is any ground vehicle, hike any walk. */
enum leg_kind { LEG_DRIVE, LEG_FLIGHT, LEG_WAIT, LEG_HIKE, LEG_OTHER };
enum power_source { POWER_SOURCE_NONE, POWER_SOURCE_BATTERY, POWER_SOURCE_WALL, POWER_SOURCE_CAR };

struct told_leg {
    int minutes;
    enum leg_kind kind;
    enum power_source power; /* never battery: a leg without power has none */
};

/* Must be asked back before anything is worked out; bits of told.missing. */
enum told_missing {
    MISSING_CHARGE = 1 << 0,
    MISSING_HOW_MANY = 1 << 1, /* batteries */
    MISSING_SETTING = 1 << 2,
    MISSING_MINUTES = 1 << 3,
    MISSING_READY_BY = 1 << 4,
    MISSING_AM_PM = 1 << 5,
    MISSING_FLIGHT_MINUTES = 1 << 6,
    MISSING_FLIGHT_IS = 1 << 7,
    MISSING_PRESSURE = 1 << 8,
    MISSING_SIZE = 1 << 9,
    MISSING_FLOW = 1 << 10,
    MISSING_COUNT = 11
};

/* Of the place, temperature of the air where unit or battery is. Tenths never matter here. */
struct told_measure {
    bool told;
    int value;
};

struct told {
    enum told_kind kind;
    struct percent charges[TOLD_BATTERIES_MAX]; /* one for each battery told in percent or words */
    size_t charge_count;
    int lights[TOLD_BATTERIES_MAX]; /* whole gauge lights of each such battery */
    size_t light_count;
    int count;           /* batteries spoken of whose charge is not told */
    bool may_be_of_body; /* a charge of these may as well be a reading of the oximeter */
    bool has_mode, has_setting, has_activity;
    enum mode mode;
    int setting_tenths;
    enum activity activity;
    bool drives;     /* the activity is driving: nothing is ordered for it, has_activity is false */
    int since_min;   /* minutes since the charges were so, if told; else 0 */
    bool is_earlier; /* the charges were so earlier, and how long ago is not read */
    enum power_source on_power; /* what the unit runs or charges from, if told */

    bool has_ready_by, has_remind_at;
    int ready_by, remind_at; /* minutes after midnight */
    int remind_before_min;   /* 0 if not told */
    bool has_day;
    enum told_day day; /* of ready_by or remind_at */

    struct told_leg legs[TOLD_LEGS_MAX]; /* in order */
    size_t leg_count;
    int flight_minutes; /* of one flight; 0 if not told. Several are legs. */
    bool flight_is_gate, flight_is_air;

    int psi, bar;             /* newest reading; 0 if not told */
    char size[TOLD_SIZE_MAX]; /* of the cylinder, "E"; "" if not told */
    int flow_tenths;          /* litres a minute of the cylinder; 0 if not told */
    struct told_measure celsius, fahrenheit, altitude_ft, altitude_m;

    bool impossible; /* the text itself cannot be so ("130 %"): only a question back is right */
    const char *impossible_what; /* the words that cannot be so, in the arena; NULL otherwise */
    unsigned missing;            /* told_missing */
};

/* True if the text tells anything of a battery's charge. */
bool told_has_charge(const struct told *told);
/* charges + lights + count */
int told_batteries(const struct told *told);
/* "one light on each": a charge is told of all of them, and nowhere how many there are. */
bool told_of_untold_number(const struct told *told);

/* Reads one question or whole text; `arena` holds what *told points at. Misspelt words are mended
 * by what the lexicon's kb knows to be right (mending.h). */
struct lexicon;
void told_read(void *arena, const struct lexicon *lexicon, const char *text, struct told *told);

/* Names as in an answer's `read`: "hours-left", "tomorrow", "drive", "wall", and of one bit of
 * told.missing "am-pm". told_kind_name() is NULL for TOLD_NOTHING. */
const char *told_kind_name(enum told_kind kind);
const char *told_day_name(enum told_day day);
const char *leg_kind_name(enum leg_kind kind);
const char *power_source_name(enum power_source power);
const char *told_missing_name(enum told_missing bit);

#endif
