/*
 * What the office knows of one kind of unit (kb/equipment/ID.json). Figures are never made up: a
 * figure that the file does not give is absent here (count 0, or known == false), and whoever
 * needs it hands the question to a person.
 */
#ifndef EQUIPMENT_H
#define EQUIPMENT_H

#include <stdbool.h>
#include <stddef.h>

#include "interval.h"

enum mode { MODE_CONTINUOUS, MODE_PULSE, MODE_NIGHT, MODE_COUNT };

/* "continuous", "pulse", "night" and back; mode_named() gives MODE_COUNT for anything else. */
const char *mode_name(enum mode mode);
enum mode mode_named(const char *name);

/* Minutes that one battery lasts from full at a mode and setting. */
struct run_time {
    enum mode mode;
    int setting_tenths; /* 20 is "2"; L/min only in continuous flow */
    struct minutes lasts;
    bool of_new_battery; /* else a fleet average */
    bool makers_figure;  /* else measured by the office */
    int watts;           /* drawn at this mode and setting; 0 if not known */
};

/* One more light of the gauge: `lights` lit means a charge in this band. */
struct gauge_step {
    int lights;
    struct percent band;
};

struct alarm {
    const char *shows;      /* text or symbol on the display */
    const char *meaning;    /* plain words, what to do */
    const char *meaning_es; /* the same in Spanish; NULL if the file does not give it */
    bool oxygen_stops;
};

struct temperatures {
    bool known;
    int low_celsius, high_celsius;
};

/* What a unit does at the car's 12 volt outlet. */
struct car_outlet {
    bool known;
    bool runs, charges, both_at_once;
    int amps_limit; /* what it draws at most; 0 if not known */
};

struct charge_minutes {
    bool known;
    struct minutes to_80, to_full;
};

struct cold_step {
    int celsius; /* at this temperature and above (down to the next step) */
    int percent; /* share of the run time that is left */
};

/* All lists and strings belong to the kb. Order of run_times is the file's. */
struct equipment {
    const char *id;
    const char *name; /* as the renter reads it on the case */
    const char *file; /* path below the kb folder */
    const struct run_time *run_times;
    size_t run_time_count;
    const struct gauge_step *gauge;
    size_t gauge_count;
    const char *gauge_how; /* how to read the gauge, one sentence */
    const char *swap_how;  /* how to change the battery, one or two sentences */
    bool oxygen_stops_on_swap;
    double rated_wh, volts, amp_hours; /* 0 if not known; rated_wh as printed on the case */
    int retirement_health;             /* percent; unmeasured or old health counts as this */
    struct charge_minutes charging_off, charging_running; /* in the unit: off / giving oxygen */
    struct charge_minutes charging_apart; /* in a battery charger of its own, beside the unit */
    struct car_outlet car;
    const char *const *needs_wall; /* modes and settings that only the wall can feed, as words */
    size_t needs_wall_count;
    const char *no_breath; /* what it does when it feels no breath, one sentence; or NULL */
    const struct alarm *alarms;
    size_t alarm_count;
    double tube_feet[MODE_COUNT]; /* longest tube allowed for each mode; 0 if not known */
    int supply_volts_low, supply_volts_high;
    int altitude_ft; /* highest allowed; 0 if not known */
    struct temperatures running, charging, storage;
    const struct cold_step *cold;
    size_t cold_count;
    bool aircraft_label; /* carries the red-lettered acceptance label */
    int weight_grams;    /* with one battery in; 0 if not known */
    int sound_db;        /* at setting 2; 0 if not known */
    int batteries_held;  /* how many sit in the unit at once, at least 1 */
};

/* The file's row for a mode and setting, or NULL: no figure is made up between rows. */
const struct run_time *equipment_run_time(const struct equipment *equipment, enum mode mode,
                                          int setting_tenths);

/* True if `needs_wall` names this mode, or this mode and setting: no battery and no car feeds it.
 */
bool equipment_needs_wall(const struct equipment *equipment, enum mode mode, int setting_tenths);

/* The band that so many lights stand for; false (band untouched) if the gauge has no such step. */
bool equipment_gauge_band(const struct equipment *equipment, int lights, struct percent *band);

#endif
