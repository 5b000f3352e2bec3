#include "told.h"

#include <string.h>

#include "activity.h"
#include "amounts.h"
#include "aside.h"
#include "asks.h"
#include "blood_pressure.h"
#include "charges.h"
#include "clocks.h"
#include "corrections.h"
#include "flight_figures.h"
#include "heard.h"
#include "items.h"
#include "legs.h"
#include "mending.h"
#include "oximeter.h"
#include "settings.h"
#include "surroundings.h"
#include "times.h"
#include "unclaimed.h"

bool
told_has_charge(const struct told *told)
{
    return told->charge_count + told->light_count > 0;
}

int
told_batteries(const struct told *told)
{
    return (int)(told->charge_count + told->light_count) + told->count;
}

bool
told_of_untold_number(const struct told *told)
{
    return (told->missing & (MISSING_HOW_MANY | MISSING_CHARGE)) == MISSING_HOW_MANY;
}

/* An oximeter value is no charge, nor is a blood pressure. The value that was taken though nothing
 * but its company tells it to be one; else 0. */
static int
take_values_of_body(const char *text, struct tokens *tokens, bool all)
{
    struct blood_pressure pressure;
    size_t start, end, i;
    int percent;
    bool sure;

    if (blood_pressure_read(tokens, &pressure)) {
        for (i = pressure.first; i < pressure.behind; i++) {
            tokens->list[i].used = true;
        }
    }

    if (!oximeter_read_how(text, &percent, &start, &end, &sure) || !(all || sure)) {
        return 0;
    }
    for (i = 0; i < tokens->count; i++) {
        if (tokens->list[i].start < end && tokens->list[i].end > start) {
            tokens->list[i].used = true;
        }
    }
    return sure ? 0 : percent;
}

/* What kind or legs tell is not told twice as an activity. */
static void
drop_activity(const struct items *items, struct told *told)
{
    bool moves =
        told->drives || (told->activity != ACTIVITY_REST && told->activity != ACTIVITY_SLEEP);
    bool told_otherwise = told->kind == TOLD_FLIGHT || told->kind == TOLD_TRIP ||
                          told->kind == TOLD_CYLINDER || told->kind == TOLD_CHARGING ||
                          told->leg_count > 0;

    if (told->kind == TOLD_CHARGING && told->leg_count == 0 && told->drives &&
        activity_drives_meanwhile(items)) {
        return;
    }
    if (!moves && told->kind == TOLD_HOURS_LEFT && !legs_move(told) && activity_is_apart(items)) {
        return; /* "I'm sleeping with it on 1. do I get 9 hours" */
    }
    if ((moves && told_otherwise) || told->leg_count > 0 || told->kind == TOLD_FLIGHT) {
        told->has_activity = false;
        told->drives = false;
    }
}

/* A life in general has no spans; what is said of them is talk. */
static bool
wants_legs(const struct told *told)
{
    return told->kind != TOLD_BATTERY_LIFE && told->kind != TOLD_WATCH &&
           told->kind != TOLD_NOTHING;
}

static void
read_items(struct items *items, struct told *told)
{
    struct charges_read charges;

    amounts_make(items);
    aside_put(items);
    corrections_of_amounts(items);
    clocks_make(items);
    corrections_of_clocks(items);
    told->kind = asks_by_words(items);
    impossible_times(items, told);
    settings_changed(items);
    charges = charges_read(items, told);
    if (told->kind == TOLD_CYLINDER && !items_any(items, ITEM_BATTERY)) {
        told->charge_count = 0; /* "the D is full": no battery */
        told->light_count = 0;
        told->count = 0;
    }
    cylinder_read(items, told);
    settings_read(items, told);
    surroundings_read(items, told);
    since_read(items, &charges, told);
    if (told->kind == TOLD_NOTHING) {
        told->kind = asks_by_reading(items, &charges, told);
    }
    activity_read(items, told);
    if (wants_legs(told)) {
        legs_read(items, told);
    }
    if (told->kind == TOLD_TRIP && told->leg_count == 1 && told->legs[0].kind == LEG_WAIT &&
        told->legs[0].power == POWER_SOURCE_WALL && told_has_charge(told) &&
        !lexicon_cue(items->tokens, CUE_ENOUGH)) {
        told->kind = TOLD_CHARGING; /* "3 hours here on the wall": it is not to last, but to fill */
    }
    power_read(items, told);
    goals_read(items, told);
    drop_activity(items, told);
    if (told->kind == TOLD_BATTERY_LIFE && told_batteries(told) == 0 && !charges.several) {
        told->count = charges.a_battery ? 1 : 0;
    }
    flight_is_read(items, told);
    unclaimed_charges(items, told);
    if (!charges.several) {
        unclaimed_battery(items, told);
    }
    asks_missing(items, &charges, told);
}

/* Reads the text; the number that was taken out of it though it need not be of the body, or 0. */
static int
read_text(void *arena, const struct lexicon *lexicon, const char *text, bool all, struct told *told)
{
    struct tokens tokens = tokens_read(arena, text);
    enum language language;
    struct items items;
    int taken;

    *told = (struct told){0};
    taken = take_values_of_body(text, &tokens, all);
    language = lexicon_language(lexicon, arena, text, &tokens);
    heard_put_right(language, &tokens);
    if (mend_words(arena, lexicon, language, &tokens)) {
        heard_put_right(language, &tokens); /* "seting too" */
        language = lexicon_language(lexicon, arena, text, &tokens);
    }
    items = items_read(arena, lexicon, &tokens, language);
    read_items(&items, told);
    return taken;
}

static bool
tells_charge_of(const struct told *told, int percent)
{
    size_t i;

    for (i = 0; i < told->charge_count; i++) {
        if (told->charges[i].low == percent) {
            return true;
        }
    }
    return false;
}

/* "it says 88. how long will it last on 2": what may be of the body is a charge where batteries are
 * asked about, unless oxygen or a person is named. Whether somebody must be called is not decided
 * here. */
void
told_read(void *arena, const struct lexicon *lexicon, const char *text, struct told *told)
{
    int taken = read_text(arena, lexicon, text, true, told);
    struct told again;

    if (taken == 0 || told->kind == TOLD_NOTHING || told->kind == TOLD_CYLINDER ||
        tells_charge_of(told, taken)) {
        return;
    }
    (void)read_text(arena, lexicon, text, false, &again);
    if ((again.kind == told->kind ||
         (told->kind == TOLD_BATTERY_LIFE && again.kind == TOLD_HOURS_LEFT)) &&
        !again.impossible &&
        (again.charge_count > told->charge_count ||
         (again.charge_count == 1 && told->charge_count == 1 && /* "no trae 100, trae 70" */
          again.charges[0].low < told->charges[0].low))) {
        *told = again;
        told->may_be_of_body = true;
    }
}

/* ---- names
 * ------------------------------------------------------------------------------------------- */

const char *
told_kind_name(enum told_kind kind)
{
    static const char *const names[] = {[TOLD_NOTHING] = NULL,
                                        [TOLD_HOURS_LEFT] = "hours-left",
                                        [TOLD_BATTERY_LIFE] = "battery-life",
                                        [TOLD_CHARGING] = "charging",
                                        [TOLD_TRIP] = "trip",
                                        [TOLD_FLIGHT] = "flight",
                                        [TOLD_CYLINDER] = "cylinder",
                                        [TOLD_WATCH] = "watch"};

    return names[kind];
}

const char *
told_day_name(enum told_day day)
{
    static const char *const names[DAY_COUNT] = {
        [DAY_TODAY] = "today",     [DAY_TOMORROW] = "tomorrow",   [DAY_MONDAY] = "monday",
        [DAY_TUESDAY] = "tuesday", [DAY_WEDNESDAY] = "wednesday", [DAY_THURSDAY] = "thursday",
        [DAY_FRIDAY] = "friday",   [DAY_SATURDAY] = "saturday",   [DAY_SUNDAY] = "sunday",
    };

    return names[day];
}

const char *
leg_kind_name(enum leg_kind kind)
{
    static const char *const names[] = {[LEG_DRIVE] = "drive",
                                        [LEG_FLIGHT] = "flight",
                                        [LEG_WAIT] = "wait",
                                        [LEG_HIKE] = "hike",
                                        [LEG_OTHER] = "other"};

    return names[kind];
}

const char *
power_source_name(enum power_source power)
{
    static const char *const names[] = {[POWER_SOURCE_NONE] = "none",
                                        [POWER_SOURCE_BATTERY] = "battery",
                                        [POWER_SOURCE_WALL] = "wall",
                                        [POWER_SOURCE_CAR] = "car"};

    return names[power];
}

const char *
told_missing_name(enum told_missing bit)
{
    static const struct {
        enum told_missing bit;
        const char *name;
    } names[MISSING_COUNT] = {
        {MISSING_CHARGE, "charge"},
        {MISSING_HOW_MANY, "how-many"},
        {MISSING_SETTING, "setting"},
        {MISSING_MINUTES, "minutes"},
        {MISSING_READY_BY, "ready_by"},
        {MISSING_AM_PM, "am-pm"},
        {MISSING_FLIGHT_MINUTES, "flight_minutes"},
        {MISSING_FLIGHT_IS, "flight_is"},
        {MISSING_PRESSURE, "pressure"},
        {MISSING_SIZE, "size"},
        {MISSING_FLOW, "flow"},
    };
    size_t i;

    for (i = 0; i < MISSING_COUNT; i++) {
        if (names[i].bit == bit) {
            return names[i].name;
        }
    }
    return NULL;
}
