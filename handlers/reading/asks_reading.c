/* What is asked, by what was read: see asks.h. */
#include "asks.h"

#include "amounts.h"
#include "clocks.h"
#include "legs.h"
#include "power_denied.h"
#include "surroundings.h"
#include "untimed.h"

static bool
has_movement(const struct items *items)
{
    size_t at;

    for (at = 0; at < items->count; at++) {
        int going = item_value(items, at, ITEM_GOING);

        if (going == LEG_DRIVE || going == LEG_HIKE || going == LEG_FLIGHT ||
            (going == LEG_OTHER)) {
            return true;
        }
    }
    return false;
}

/* "It has to last 4 hours": a span that batteries must hold, wherever. */
static bool
must_last(const struct items *items, bool surely)
{
    size_t at;

    for (at = 0; at < items->count; at++) {
        if (item_is(items, at, ITEM_LASTS) && (!surely || item_value(items, at, ITEM_LASTS) == 0)) {
            return true;
        }
    }
    return false;
}

static bool
any_charge(const struct told *told)
{
    return told->charge_count + told->light_count > 0;
}

static bool
has_clock_pair(const struct items *items)
{
    size_t at, clocks = 0;

    for (at = 0; at < items->count; at++) {
        clocks += items->list[at].is == ITEM_CLOCK && !items->list[at].spent ? 1 : 0;
    }
    return clocks >= 2;
}

static bool
has_distance(const struct items *items)
{
    size_t at;

    for (at = 0; at < items->count; at++) {
        if (item_in(items, at, UNIT_MILE) || item_in(items, at, UNIT_KM)) {
            return true;
        }
    }
    return false;
}

static bool
speaks_of_trip(const struct items *items)
{
    return tokens_have(
        items->tokens,
        "with stops|con paradas|whole way|all the way|entire way|todo el "
        "camino|trip|outing|away|weekend|day out|night out|out for the day|viaje|excursion|paseo|"
        "errands|mandados|vamos al|vamos a la|nos vamos al|nos vamos a la|voy al|dia fuera|dia de "
        "campo");
}

static bool
is_plugged_in(const struct items *items)
{
    size_t at;

    for (at = 0; at < items->count; at++) {
        int power = item_value(items, at, ITEM_POWER);

        if ((power == POWER_WORD_WALL || power == POWER_WORD_CAR) &&
            !item_is(items, at - 1, ITEM_NOT) && !power_is_negated(items, at)) {
            return true;
        }
    }
    return false;
}

/* Something must be ready by then: what is not full, before one leaves. */
static bool
is_due(const struct items *items, const struct told *told)
{
    bool low = told->light_count > 0;
    size_t at;

    for (at = 0; at < told->charge_count; at++) {
        low = low || told->charges[at].high < 100;
    }

    for (at = 0; at < items->count; at++) {
        enum clock_role role =
            items->list[at].is == ITEM_CLOCK ? clock_role(items, at) : CLOCK_OF_NOTHING;

        if (role == CLOCK_BY || (role == CLOCK_DEPART && low)) {
            return true;
        }
    }
    return false;
}

static size_t
count_lengths(const struct items *items)
{
    size_t at, count = 0;

    for (at = 0; at < items->count; at++) {
        count += item_is_duration(items, at) && !items->list[at].spent ? 1 : 0;
    }
    return count;
}

static bool
all_full(const struct told *told)
{
    size_t i;

    for (i = 0; i < told->charge_count && told->charges[i].low == 100; i++) {
    }
    return told->charge_count > 0 && i == told->charge_count && told->light_count == 0 &&
           told->count == 0;
}

static enum told_kind
with_a_span(const struct items *items, const struct told *told)
{
    if (tokens_have(items->tokens, "how many batteries|how many batts|how many packs|how many bats|"
                                   "how many spares|cuantas baterias|cuantas pilas") &&
        !any_charge(told) && told->count == 0) {
        return TOLD_TRIP; /* "oxygen for 10 hours, how many batteries" */
    }
    if (has_movement(items) || has_clock_pair(items) || has_distance(items) ||
        count_lengths(items) > 1) {
        return TOLD_TRIP;
    }
    if (speaks_of_trip(items) || (items_any(items, ITEM_GOING) && !must_last(items, true))) {
        return TOLD_TRIP;
    }
    return is_plugged_in(items) && !all_full(told) ? TOLD_CHARGING : TOLD_HOURS_LEFT;
}

static bool
is_how_long(const struct items *items)
{
    return lexicon_cue(items->tokens, CUE_HOW_LONG);
}

/* "How long do 2 batteries last": in general, whatever else is told. */
static bool
asks_life(const struct items *items)
{
    return tokens_have(items->tokens,
                       "what would * batteries|what do * batteries|what will * batteries|"
                       "what would * battery|what does * battery|what will * battery|"
                       "cuanto * rinde|cuanto * rinden|what can * batteries|"
                       "how long do * batteries last|how long does * battery last|"
                       "how long do * batteries go|how long does * battery go|"
                       "how long do * batteries run|how long does * battery run|"
                       "before i rent|before we rent|havent rented|havent picked|just curious|"
                       "para saber|todavia no recojo|antes de rentar|por curiosidad|no he rentado|"
                       "cuanto duran * baterias|cuanto dura * bateria|cuanto dura una bateria|"
                       "how long does * battery usually|how long do * batteries usually") &&
           !lexicon_cue(items->tokens, CUE_LEFT);
}

/* A charge below full is told: of a battery that is there. */
static bool
tells_part(const struct told *told)
{
    size_t i;

    for (i = 0; i < told->charge_count && told->charges[i].low == 100; i++) {
    }
    return i < told->charge_count || told->light_count > 0;
}

/* "How long does one full battery go": nothing but full ones, and nobody has them. */
static bool
is_life_of_full(const struct items *items, const struct told *told)
{
    return told->charge_count > 0 && !tells_part(told) && told->count == 0 &&
           !items_any(items, ITEM_HAVE) && lexicon_cue(items->tokens, CUE_LIFE);
}

/* "some batteries in the bag, they are full": there, however many */
static bool
has_some(const struct items *items)
{
    return items_any(items, ITEM_HAVE) || items_any(items, ITEM_ALL) ||
           tokens_have(items->tokens, "some batteries|some packs|a few batteries|several batteries|"
                                      "unas baterias|algunas baterias|varias baterias|unas pilas");
}

/* A way or a place, and no clock time that tells how long it must last. */
static bool
goes_somewhere(const struct items *items)
{
    size_t at;

    for (at = 0; at < items->count; at++) {
        if (items->list[at].is == ITEM_CLOCK) {
            return false;
        }
    }
    return items_any(items, ITEM_GOING) && !lexicon_cue(items->tokens, CUE_LEFT);
}

/* "a few of the packs in the bag, never looked what they are at": there, and nothing is known */
static bool
has_unknown_lot(const struct items *items)
{
    return items_any(items, ITEM_BATTERY) && !legs_any(items) &&
           (items_any(items, ITEM_UNKNOWN) ||
            tokens_have(items->tokens, "never looked|never checked|didnt look|didnt check|"
                                       "nunca las revise|nunca las cheque|no las he revisado")) &&
           tokens_have(items->tokens,
                       "few of the|bunch of|some of the|several batteries|several packs|a few "
                       "batteries|a few packs|varias baterias|varias pilas|algunas baterias|"
                       "algunas pilas|unas baterias|unas pilas");
}

/* Of batteries whose charge is not told; TOLD_NOTHING if other things decide. */
static enum told_kind
asks_of_untold(const struct items *items, const struct told *told)
{
    if (told->missing == 0 && asks_life(items)) {
        return TOLD_BATTERY_LIFE;
    }
    if (told->count > 0 && items_any(items, ITEM_FULL) &&
        (is_plugged_in(items) || is_due(items, told))) {
        return TOLD_CHARGING; /* full is what they should become */
    }
    if (told->count == 0 && has_unknown_lot(items)) {
        return TOLD_HOURS_LEFT;
    }
    if (told->count > 0 && items_any(items, ITEM_UNKNOWN)) {
        return legs_any(items) ? with_a_span(items, told) : TOLD_HOURS_LEFT;
    }
    return TOLD_NOTHING;
}

static bool
is_outage(const struct items *items)
{
    size_t at;

    for (at = 0; at < items->count && item_value(items, at, ITEM_POWER) != POWER_WORD_OUT; at++) {
    }
    return at < items->count;
}

/* A way or a place that batteries must do for, and no length of it. */
static bool
is_untimed_trip(const struct items *items, const struct told *told)
{
    if (is_how_long(items)) {
        return false;
    }
    return (lexicon_cue(items->tokens, CUE_TRIP) &&
            (lexicon_cue(items->tokens, CUE_ENOUGH) || lexicon_cue(items->tokens, CUE_HOW_MANY) ||
             speaks_of_trip(items))) ||
           (told_batteries(told) > 0 && spends_part_of_day(items));
}

/* A flight is spoken of, and nothing else is asked. */
static bool
flies(const struct items *items)
{
    size_t at;

    for (at = 0; at < items->count; at++) {
        if (item_value(items, at, ITEM_GOING) == LEG_FLIGHT ||
            item_value(items, at, ITEM_ACTIVITY) == ACTIVITY_FLIGHT) {
            return true;
        }
    }
    return false;
}

/* "how many batteries should I bring for a day at the lake" */
static bool
wants_number_for_day(const struct items *items, const struct told *told)
{
    return told_batteries(told) == 0 && lexicon_cue(items->tokens, CUE_HOW_MANY) &&
           items_any(items, ITEM_BATTERY) && spends_part_of_day(items);
}

static enum told_kind
kind_by_reading(const struct items *items, const struct charges_read *charges,
                const struct told *told)
{
    enum told_kind untold = any_charge(told) ? TOLD_NOTHING : asks_of_untold(items, told);
    bool left = lexicon_cue(items->tokens, CUE_LEFT) || told->since_min > 0 || told->is_earlier;
    bool out = is_outage(items);

    if (untold != TOLD_NOTHING) {
        return untold;
    }
    if ((told->missing & MISSING_MINUTES) != 0 && lexicon_cue(items->tokens, CUE_TRIP)) {
        return TOLD_TRIP;
    }
    if (legs_any(items)) {
        return with_a_span(items, told);
    }
    if (lexicon_cue(items->tokens, CUE_GENERAL) &&
        !(tells_part(told) && /* "run time left at 66" */
          tokens_have(items->tokens, "is left|time left|hours left|remaining|me queda|le queda")) &&
        !(told->impossible && (told->missing & MISSING_CHARGE) != 0)) {
        return TOLD_BATTERY_LIFE;
    }
    if ((!left && is_untimed_trip(items, told)) || wants_number_for_day(items, told)) {
        return TOLD_TRIP;
    }
    if (any_charge(told) && !out && is_plugged_in(items) && !lexicon_cue(items->tokens, CUE_LEFT)) {
        return TOLD_CHARGING;
    }
    if (any_charge(told) && !out && is_plugged_in(items) && is_due(items, told) &&
        !is_how_long(items)) {
        return TOLD_CHARGING; /* "both on the wall charger. by 1 pm?" */
    }
    if (left || out) {
        return TOLD_HOURS_LEFT;
    }
    if (any_charge(told) && (is_plugged_in(items) || (is_due(items, told) && !is_how_long(items) &&
                                                      !must_last(items, true)))) {
        return TOLD_CHARGING;
    }
    if (told->impossible && (told->missing & MISSING_CHARGE) != 0) {
        return TOLD_HOURS_LEFT;
    }
    if (is_life_of_full(items, told)) {
        return TOLD_BATTERY_LIFE;
    }
    if (charges->several && has_some(items)) {
        return TOLD_HOURS_LEFT;
    }
    if (!any_charge(told) && (is_how_long(items) || lexicon_cue(items->tokens, CUE_LIFE))) {
        return TOLD_BATTERY_LIFE;
    }
    if (any_charge(told) || told->impossible || charges->several) {
        return (lexicon_cue(items->tokens, CUE_TRIP) || goes_somewhere(items)) &&
                       lexicon_cue(items->tokens, CUE_ENOUGH) && !is_how_long(items)
                   ? TOLD_TRIP
                   : TOLD_HOURS_LEFT;
    }
    if (told->count > 0 && (told->has_mode || told->has_setting)) {
        return flies(items) ? TOLD_FLIGHT : TOLD_BATTERY_LIFE;
    }
    return flies(items) ? TOLD_FLIGHT : TOLD_NOTHING;
}

enum told_kind
asks_by_reading(const struct items *items, const struct charges_read *charges,
                const struct told *told)
{
    enum told_kind kind = kind_by_reading(items, charges, told);

    /* "one light on each, how long do they last": theirs, and not that of full ones in general */
    return kind == TOLD_BATTERY_LIFE && charges->part ? TOLD_HOURS_LEFT : kind;
}
