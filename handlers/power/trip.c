#include "trip.h"

#include <assert.h>
#include <string.h>

#include "battery_time.h"
#include "charging.h"

/* Charge is counted in parts of a percent, so that a minute's use is not rounded away. */
enum { FULL = 100 * PERCENT_PARTS, MINUTE_PARTS = 1000000, SHORTEST_SAMPLE = 15 };

struct playing {
    const struct trip *trip;
    int charge[TRIP_BATTERIES_MAX]; /* in PERCENT_PARTS */
    int in_unit;                    /* which battery, while they sleep; -1 for none */
};

/* What one minute takes of a battery. A part is so small that no trip gains a minute by rounding.
 */
static int
used_a_minute(int lasts, int health)
{
    long long hundredths = (long long)lasts * health; /* of minutes, from full */

    return hundredths <= 100 ? FULL : (int)(FULL * 100LL / hundredths);
}

/* The first battery with at least `least` and at most `most`; -1 if there is none. */
static int
first(const struct playing *playing, int least, int most)
{
    int i;

    for (i = 0; i < (int)playing->trip->battery_count; i++) {
        if (least <= playing->charge[i] && playing->charge[i] <= most) {
            return i;
        }
    }
    return -1;
}

/* What goes into the unit before sleep: the fullest, or at an outlet one that it can fill. */
static int
for_the_night(const struct playing *playing, const struct trip_leg *leg)
{
    int best = leg->power == TRIP_NO_POWER ? -1 : first(playing, 0, FULL - 1), i;

    for (i = 0; leg->power == TRIP_NO_POWER && i < (int)playing->trip->battery_count; i++) {
        if (best < 0 || playing->charge[i] > playing->charge[best]) {
            best = i;
        }
    }
    return best;
}

/* The battery in use; nobody changes it asleep. */
static int
choose(const struct playing *playing, const struct trip_leg *leg, int least, int most)
{
    return leg->asleep ? playing->in_unit : first(playing, least, most);
}

static const struct trip_outlet *
outlet_of(const struct trip *trip, const struct trip_leg *leg)
{
    const struct trip_outlet *outlet = leg->power == TRIP_WALL  ? &trip->wall
                                       : leg->power == TRIP_CAR ? &trip->car
                                                                : NULL;

    return outlet != NULL && outlet->runs ? outlet : NULL;
}

/* Charges the battery in the unit by what a minute gives. */
static void
charge_minute(struct playing *playing, const struct trip_leg *leg, const struct trip_outlet *outlet)
{
    int battery = outlet->charges ? choose(playing, leg, 0, FULL - 1) : -1;

    if (battery >= 0 && playing->charge[battery] < FULL) {
        int charge = playing->charge[battery];

        charge += charging_minute(&outlet->rate, charge);
        playing->charge[battery] = charge < FULL ? charge : FULL;
    }
}

/* Takes a minute out of one battery or, at its end, several; false if there is not so much. */
static bool
use_minute(struct playing *playing, const struct trip_leg *leg)
{
    long long owed = MINUTE_PARTS;

    while (owed > 0) {
        int battery = choose(playing, leg, 1, FULL);
        long long used, gives;

        if (battery < 0 || playing->charge[battery] == 0) {
            return false;
        }
        used = used_a_minute(leg->lasts, playing->trip->batteries[battery].health);
        gives = playing->charge[battery] * (long long)MINUTE_PARTS / used;
        if (gives > owed) {
            playing->charge[battery] -= (int)(used * owed / MINUTE_PARTS);
            return true;
        }
        owed -= gives;
        playing->charge[battery] = 0;
    }
    return true;
}

/* One minute of a leg; whether there was oxygen in it. */
static bool
play_minute(struct playing *playing, const struct trip_leg *leg)
{
    const struct trip_outlet *outlet = outlet_of(playing->trip, leg);

    if (outlet == NULL) {
        return use_minute(playing, leg);
    }
    charge_minute(playing, leg, outlet);
    return true;
}

static void
sample(const struct playing *playing, struct trip_outcome *outcome)
{
    size_t count = playing->trip->battery_count, i;
    long long sum = 0;

    for (i = 0; i < count; i++) {
        sum += playing->charge[i];
    }
    assert(outcome->sample_count < TRIP_SAMPLES_MAX);
    outcome->samples[outcome->sample_count++] =
        count == 0 ? 0 : (int)(sum / (long long)count / PERCENT_PARTS);
}

static void
begin(struct playing *playing, const struct trip *trip, struct trip_outcome *outcome)
{
    size_t i;

    assert(trip->leg_count <= TRIP_LEGS_MAX && trip->battery_count <= TRIP_BATTERIES_MAX);
    *playing = (struct playing){.trip = trip, .in_unit = -1};
    *outcome = (struct trip_outcome){.lasts = true, .sample_minutes = SHORTEST_SAMPLE};
    for (i = 0; i < trip->battery_count; i++) {
        assert(0 <= trip->batteries[i].charge && trip->batteries[i].charge <= 100);
        playing->charge[i] = trip->batteries[i].charge * PERCENT_PARTS;
    }
    for (i = 0; i < trip->leg_count; i++) {
        outcome->total_minutes += trip->legs[i].minutes;
    }
    while (outcome->total_minutes / outcome->sample_minutes + 2 > TRIP_SAMPLES_MAX) {
        outcome->sample_minutes *= 2;
    }
    outcome->runs_out_at = outcome->total_minutes;
}

/* Battery time that is left, at what a battery `lasts`; asleep, only of the one in the unit. */
static int
left(const struct playing *playing, int lasts, bool asleep)
{
    const struct trip *trip = playing->trip;
    int minutes = 0;
    size_t i;

    for (i = 0; i < trip->battery_count && lasts > 0; i++) {
        if (!asleep || (int)i == playing->in_unit) {
            minutes += playing->charge[i] / used_a_minute(lasts, trip->batteries[i].health);
        }
    }
    return minutes;
}

/* The night does not end with the trip if it ends asleep without power. */
static int
left_once_there(const struct playing *playing)
{
    const struct trip *trip = playing->trip;
    const struct trip_leg *last = trip->leg_count > 0 ? &trip->legs[trip->leg_count - 1] : NULL;

    return last == NULL
               ? 0
               : left(playing, trip->lasts_after, last->asleep && outlet_of(trip, last) == NULL);
}

/* What must be left after so long without power so that they may be at a plug in time: the least
 * that is its own reserve. */
static int
reserve_of(int on_battery)
{
    int reserve = 0;

    while (on_battery > 0 && reserve < plug_reserve(on_battery + reserve)) {
        reserve++;
    }
    return reserve;
}

/* Who sleeps on a leg without power may oversleep; else it is the next outlet that may be late. */
static bool
ends_stretch(const struct trip *trip, size_t leg)
{
    return trip->legs[leg].asleep || leg + 1 == trip->leg_count ||
           outlet_of(trip, &trip->legs[leg + 1]) != NULL;
}

/* Where a stretch without power ends, keeps the one that leaves least above its reserve: a delay
 * ends the trip there, however much is charged later. */
static void
note_stretch(const struct playing *playing, size_t leg, int *on_battery,
             struct trip_outcome *outcome)
{
    const struct trip *trip = playing->trip;
    const struct trip_leg *ending = &trip->legs[leg];
    bool is_last = leg + 1 == trip->leg_count;
    int reserve, minutes;

    if (outlet_of(trip, ending) != NULL) {
        *on_battery = 0;
        return;
    }
    *on_battery += ending->minutes;
    if (*on_battery == 0 || !ends_stretch(trip, leg)) {
        return;
    }
    reserve = reserve_of(*on_battery);
    minutes = left(playing, is_last ? trip->lasts_after : ending->lasts, ending->asleep);
    if (!outcome->has_stretch ||
        minutes - reserve < outcome->least_minutes - outcome->reserve_minutes) {
        outcome->has_stretch = true;
        outcome->least_minutes = minutes;
        outcome->reserve_minutes = reserve;
        outcome->least_at_end = is_last;
    }
}

void
trip_play(const struct trip *trip, struct trip_outcome *outcome)
{
    struct playing playing;
    int minute = 0, on_battery = 0, of_leg;
    size_t i;

    begin(&playing, trip, outcome);
    for (i = 0; i < trip->leg_count; i++) {
        playing.in_unit = for_the_night(&playing, &trip->legs[i]);
        for (of_leg = 0; of_leg < trip->legs[i].minutes; of_leg++, minute++) {
            if (minute % outcome->sample_minutes == 0) {
                sample(&playing, outcome);
            }
            if (!play_minute(&playing, &trip->legs[i])) {
                outcome->short_minutes++;
                if (outcome->lasts) {
                    outcome->lasts = false;
                    outcome->runs_out_at = minute;
                    outcome->runs_out_leg = i;
                }
            }
        }
        note_stretch(&playing, i, &on_battery, outcome);
    }
    sample(&playing, outcome);
    outcome->margin_minutes = outcome->lasts ? left_once_there(&playing) : 0;
}

bool
trip_is_safe(const struct trip_outcome *outcome)
{
    return outcome->lasts && outcome->least_minutes >= outcome->reserve_minutes;
}

int
trip_left(const struct trip *trip, const struct trip_outcome *outcome)
{
    bool at_end = !outcome->has_stretch || (trip->lasts_after > 0 && trip_is_safe(outcome) &&
                                            outcome->margin_minutes <= outcome->least_minutes);

    return at_end ? outcome->margin_minutes : outcome->least_minutes;
}

static bool
safe_with(const struct trip *trip, const struct trip_leg *legs,
          const struct trip_battery *batteries, size_t battery_count)
{
    struct trip mended = *trip;
    struct trip_outcome outcome;

    mended.legs = legs;
    mended.batteries = batteries;
    mended.battery_count = battery_count;
    trip_play(&mended, &outcome);
    return trip->lasts_after > 0 ? trip_is_safe(&outcome) : outcome.lasts;
}

static bool
safe_powered(const struct trip *trip, enum trip_power power)
{
    struct trip_leg legs[TRIP_LEGS_MAX] = {0};
    size_t i;

    memcpy(legs, trip->legs, trip->leg_count * sizeof(legs[0]));
    for (i = 0; i < trip->leg_count; i++) {
        if (legs[i].power == TRIP_NO_POWER &&
            (power == TRIP_CAR ? legs[i].drives : legs[i].stays)) {
            legs[i].power = power;
        }
    }
    return safe_with(trip, legs, trip->batteries, trip->battery_count);
}

static bool
safe_with_more(const struct trip *trip, size_t more, int health)
{
    struct trip_battery batteries[TRIP_BATTERIES_MAX];
    size_t count = trip->battery_count, i;

    if (count + more > TRIP_BATTERIES_MAX) {
        return false;
    }
    memcpy(batteries, trip->batteries, count * sizeof(batteries[0]));
    for (i = 0; i < more; i++) {
        batteries[count + i] = (struct trip_battery){100, health};
    }
    return safe_with(trip, trip->legs, batteries, count + more);
}

enum trip_mend
trip_mend(const struct trip *trip, int health)
{
    return safe_powered(trip, TRIP_CAR)      ? TRIP_MEND_CAR_CORD
           : safe_powered(trip, TRIP_WALL)   ? TRIP_MEND_WALL_STOPS
           : safe_with_more(trip, 1, health) ? TRIP_MEND_ONE_BATTERY
           : safe_with_more(trip, 2, health) ? TRIP_MEND_TWO_BATTERIES
                                             : TRIP_MEND_NONE;
}
