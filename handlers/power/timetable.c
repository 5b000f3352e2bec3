#include "timetable.h"

#include <assert.h>

enum { DAY_MINUTES = 24 * 60, ORDERS_TRIED_MAX = 5, NOBODY = -1 };

/* What is tried: batteries that wait, the next one first, and what each charger does. */
struct play {
    const struct charge_minutes *places;
    size_t place_count;
    int night_from, until;
    bool change_at_night_fall;
    int levels[CHARGING_BATTERIES_MAX];
    size_t waiting[2 * CHARGING_BATTERIES_MAX];
    size_t wait_from, wait_to;
    int on[CHARGING_PLACES_MAX];    /* battery, or NOBODY */
    int since[CHARGING_PLACES_MAX]; /* when it was put on */
    int ends[CHARGING_PLACES_MAX];  /* when it is full */
    struct timetable *table;
};

static int
time_of_night(int night_from, int at)
{
    int time = (at - night_from) % DAY_MINUTES;

    return time < 0 ? time + DAY_MINUTES : time;
}

bool
timetable_is_night(int night_from, int at)
{
    int time = time_of_night(night_from, at);

    return night_from != TIMETABLE_NO_NIGHT && at > 0 && at > night_from && 0 < time &&
           time < NIGHT_MINUTES;
}

static void
put_on(struct play *play, size_t place, int at)
{
    size_t battery = play->waiting[play->wait_from++];
    struct percent charge = {play->levels[battery], play->levels[battery]};

    play->on[place] = (int)battery;
    play->since[place] = at;
    play->ends[place] = at + charging_time(&play->places[place], charge, 100).high;
    play->table->steps[play->table->count++] = (struct timetable_step){battery, place, at};
}

static void
take_off(struct play *play, size_t place, int at)
{
    size_t battery = (size_t)play->on[place];
    struct percent charge = {play->levels[battery], play->levels[battery]};

    play->levels[battery] =
        at >= play->ends[place]
            ? 100
            : charging_level(&play->places[place], charge, at - play->since[place]).low;
    play->on[place] = NOBODY;
}

/* Everything that somebody who is up does at this moment. */
static void
change(struct play *play, int at)
{
    bool night_falls = play->change_at_night_fall && at > 0 && at == play->night_from;
    size_t last = play->wait_to, place;

    for (place = 0; place < play->place_count; place++) {
        bool full = play->on[place] != NOBODY && at >= play->ends[place];

        if (play->on[place] != NOBODY && (full || (night_falls && play->wait_from < last))) {
            size_t battery = (size_t)play->on[place];

            take_off(play, place, at);
            if (!full) {
                play->waiting[play->wait_to++] = battery; /* goes on in the morning */
            }
        }
        if (play->on[place] == NOBODY && play->wait_from < play->wait_to) {
            put_on(play, place, at);
        }
    }
}

/* The next moment after `at` at which there is something to do. */
static int
next_moment(const struct play *play, int at)
{
    int next = play->until;
    size_t place;

    for (place = 0; place < play->place_count; place++) {
        int end = play->ends[place];

        if (play->on[place] != NOBODY && timetable_is_night(play->night_from, end)) {
            end += NIGHT_MINUTES - time_of_night(play->night_from, end);
        }
        if (play->on[place] != NOBODY && end > at && end < next) {
            next = end;
        }
    }
    return at < play->night_from && play->night_from < next ? play->night_from : next;
}

static void
play_through(struct play *play)
{
    int at = 0;
    size_t place;

    while (at < play->until) {
        change(play, at);
        at = next_moment(play, at);
    }
    for (place = 0; place < play->place_count; place++) {
        if (play->on[place] != NOBODY) {
            take_off(play, place, play->until);
        }
    }
}

static int
total(const struct timetable *table, size_t count)
{
    int sum = 0;
    size_t i;

    for (i = 0; i < count; i++) {
        sum += table->levels[i];
    }
    return sum;
}

struct wanted {
    const struct percent *charges;
    size_t count;
    struct play start;
    size_t by_charge[CHARGING_BATTERIES_MAX]; /* those that are not full, the emptiest first */
    size_t order[CHARGING_BATTERIES_MAX];     /* indexes into by_charge */
    size_t order_count;
    struct timetable *best;
};

/* Plays this order; keeps it if more is charged in the end than by the best so far. */
static void
try_order(struct wanted *wanted, bool change_at_night_fall)
{
    struct timetable table = {.count = 0, .all_full = true};
    struct play play = wanted->start;
    size_t i;

    play.table = &table;
    play.change_at_night_fall = change_at_night_fall;
    for (i = 0; i < wanted->order_count; i++) {
        play.waiting[play.wait_to++] = wanted->by_charge[wanted->order[i]];
    }
    play_through(&play);
    for (i = 0; i < wanted->count; i++) {
        table.levels[i] = play.levels[i];
        table.all_full = table.all_full && play.levels[i] == 100;
    }
    if (wanted->best->count == 0 ||
        total(&table, wanted->count) > total(wanted->best, wanted->count)) {
        *wanted->best = table;
    }
}

/* The next order of indexes, as words in a dictionary follow each other; false after the last. */
static bool
next_order(size_t *order, size_t count)
{
    size_t i = count, j, left, right;

    while (i > 1 && order[i - 2] >= order[i - 1]) {
        i--;
    }
    if (i <= 1) {
        return false;
    }
    for (j = count; order[j - 1] <= order[i - 2]; j--) {
    }
    right = order[i - 2];
    order[i - 2] = order[j - 1];
    order[j - 1] = right;
    for (left = i - 1, right = count - 1; left < right; left++, right--) {
        size_t kept = order[left];

        order[left] = order[right];
        order[right] = kept;
    }
    return true;
}

/* Puts a battery into the list of those that are not full. */
static void
want(struct wanted *wanted, size_t battery)
{
    size_t at = wanted->order_count++;

    while (at > 0 &&
           wanted->charges[wanted->by_charge[at - 1]].low > wanted->charges[battery].low) {
        wanted->by_charge[at] = wanted->by_charge[at - 1];
        at--;
    }
    wanted->by_charge[at] = battery;
    wanted->order[wanted->order_count - 1] = wanted->order_count - 1;
}

void
timetable_make(const struct percent *charges, size_t count, const struct charge_minutes *places,
               size_t place_count, int night_from, int until, struct timetable *timetable)
{
    struct wanted wanted = {.charges = charges, .count = count, .best = timetable};
    size_t i;

    assert(count <= CHARGING_BATTERIES_MAX && 0 <= until && until <= TIMETABLE_MINUTES_MAX);
    assert(0 < place_count && place_count <= CHARGING_PLACES_MAX);
    wanted.start = (struct play){
        .places = places, .place_count = place_count, .night_from = night_from, .until = until};
    for (i = 0; i < CHARGING_PLACES_MAX; i++) {
        wanted.start.on[i] = NOBODY;
    }
    for (i = 0; i < count; i++) {
        wanted.start.levels[i] = charges[i].low;
        if (charges[i].low < 100) {
            want(&wanted, i);
        }
    }
    *timetable = (struct timetable){.count = 0};
    do {
        try_order(&wanted, false);
        try_order(&wanted, true);
    } while (wanted.order_count <= ORDERS_TRIED_MAX &&
             next_order(wanted.order, wanted.order_count));
}
