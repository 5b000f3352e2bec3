/*
 * Whether the batteries last a trip of several legs, with and without power. Pure arithmetic, on
 * the low end throughout: what they have is counted short, how long a leg takes is given long.
 *
 * Without power the batteries are used up in their order, the first one first. With power the unit
 * runs from the outlet, if it can, and charges the battery in it, if it does both at once: again in
 * their order, changed when full (charging.h has the formula). An order that hung on the charges
 * would let more charge end in less time. Nobody changes batteries asleep: then the fullest is in,
 * or at an outlet the first that is not full. Power that only charges while the unit is off counts
 * as nothing: oxygen goes first.
 */
#ifndef TRIP_H
#define TRIP_H

#include <stdbool.h>
#include <stddef.h>

#include "equipment.h"

enum { TRIP_LEGS_MAX = 12, TRIP_BATTERIES_MAX = 12, TRIP_SAMPLES_MAX = 97 };

enum trip_power { TRIP_NO_POWER, TRIP_WALL, TRIP_CAR };

struct trip_leg {
    int minutes; /* the longest it may take; 0 to 2880 */
    enum trip_power power;
    int lasts;   /* minutes of a new, full battery on this leg: low end, after the cold */
    bool asleep; /* nobody changes batteries */
    bool drives; /* a car's outlet could be had */
    bool stays;  /* in one place: a wall outlet might be had */
};

struct trip_battery {
    int charge; /* percent, low end */
    int health; /* percent of a new one's capacity */
};

/* What the unit does at an outlet. */
struct trip_outlet {
    bool runs;
    bool charges;               /* while it runs */
    struct charge_minutes rate; /* while it runs; known if it charges */
};

struct trip {
    const struct trip_leg *legs;
    size_t leg_count; /* at most TRIP_LEGS_MAX */
    const struct trip_battery *batteries;
    size_t battery_count; /* at most TRIP_BATTERIES_MAX */
    int lasts_after;      /* minutes of a new, full battery once there; 0: no battery can run it */
    struct trip_outlet wall, car;
};

struct trip_outcome {
    int total_minutes;
    bool lasts;
    int runs_out_at; /* minutes from the start; total_minutes if it lasts */
    size_t runs_out_leg;
    int short_minutes;  /* without power and without battery, in all */
    int margin_minutes; /* battery time left once there, asleep in the unit; 0 if it fails */
    bool has_stretch;   /* some of it is without power; else the three next are 0 */
    int least_minutes; /* left where the tightest stretch without power ends; asleep, in the unit */
    int reserve_minutes; /* of that to be kept in hand (plug_reserve()) */
    bool least_at_end;   /* that stretch ends the trip */
    /* Mean charge of the batteries at start, at each `sample_minutes` and at the end. */
    int samples[TRIP_SAMPLES_MAX];
    size_t sample_count;
    int sample_minutes;
};

void trip_play(const struct trip *trip, struct trip_outcome *outcome);

/* It lasts, and after no stretch without power less is left than its reserve. */
bool trip_is_safe(const struct trip_outcome *outcome);

/* What may be told as left of a trip that lasts: at its tightest, or once there if that is less and
 * a battery can run the unit there. */
int trip_left(const struct trip *trip, const struct trip_outcome *outcome);

/* What would mend a trip that is not safe; each is tried alone, by playing it. Where no battery can
 * run the unit once there, no reserve is asked of a mend. */
enum trip_mend {
    TRIP_MEND_NONE,        /* nothing of these does */
    TRIP_MEND_CAR_CORD,    /* run from the car's outlet on every leg that drives */
    TRIP_MEND_WALL_STOPS,  /* plug in on every leg that stays in one place */
    TRIP_MEND_ONE_BATTERY, /* one more full battery at the health given */
    TRIP_MEND_TWO_BATTERIES
};

/* The first of the mends, in the order above, that makes it safe; `health` of added batteries. */
enum trip_mend trip_mend(const struct trip *trip, int health);

#endif
