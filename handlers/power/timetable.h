/*
 * Who puts which battery on which charger when, so that nobody has to get up for it. Pure
 * arithmetic on what they have: charges low, minutes of charging high (charging.h).
 *
 * A change of batteries takes place when one is full, or just before the night even if it is not,
 * and never within the night, 8 hours long, by habit from 10 pm to 6 am (common practice, no
 * source). Of all orders of few batteries the one is taken that has most charge in the end; of many
 * the emptiest go first.
 */
#ifndef TIMETABLE_H
#define TIMETABLE_H

#include <stdbool.h>
#include <stddef.h>

#include "charging.h"

enum {
    NIGHT_FROM_HOUR = 22,
    NIGHT_MINUTES = 8 * 60,
    TIMETABLE_STEPS_MAX = 2 * CHARGING_BATTERIES_MAX,
    TIMETABLE_MINUTES_MAX = 7 * 24 * 60,
    TIMETABLE_NO_NIGHT = -1 - NIGHT_MINUTES
};

/* One battery is put on a charger. */
struct timetable_step {
    size_t battery; /* index into the charges given */
    size_t place;   /* index into the places */
    int at;         /* minutes from now */
};

struct timetable {
    struct timetable_step steps[TIMETABLE_STEPS_MAX]; /* by time */
    size_t count;
    int levels[CHARGING_BATTERIES_MAX]; /* what each surely has in the end, in percent */
    bool all_full;
};

/*
 * From now until `until` minutes from now (0 to TIMETABLE_MINUTES_MAX). `night_from` is when the
 * night begins that is now (then it is not above 0, and whoever asks is up: the first batteries are
 * put on at once) or comes next, and again each 24 hours; TIMETABLE_NO_NIGHT if somebody is always
 * up. Batteries and places as for charging_plan().
 */
void timetable_make(const struct percent *charges, size_t count,
                    const struct charge_minutes *places, size_t place_count, int night_from,
                    int until, struct timetable *timetable);

/* Within a night; its first and last minute are not, nor is now. */
bool timetable_is_night(int night_from, int at);

#endif
