#include "times.h"

#include "amounts.h"
#include "clocks.h"
#include "elapsed.h"
#include "this_moment.h"
#include "untimed.h"

enum { SINCE_MAX = 24 * 60, GUESSED_SINCE_MAX = 9 * 60, HALF_DAY = 12 * 60, REACH = 3 };

/* ---- since --------------------------------------------------------------------------------------
 */

/* "45 min ago", "hace 45 minutos", "for the last 2 hours" */
static bool
is_ago(const struct items *items, size_t at)
{
    size_t before = at, after = at + 1;
    int steps = 0;

    after += item_is(items, after, ITEM_HEDGE_AFTER) ? 1 : 0;
    if (item_is(items, after, ITEM_AGO) && !item_is(items, after, ITEM_BEHIND) &&
        !item_is(items, after, ITEM_AHEAD)) {
        return true;
    }
    if (item_text(items, after, "in") && items->list[after].to == items->list[after].from + 1 &&
        (after + 1 >= items->count || items->list[after + 1].is == ITEM_PAUSE ||
         items->list[after + 1].is == ITEM_STOP || item_is(items, after + 1, ITEM_AND))) {
        return true; /* "2 hours in, it was full" */
    }
    if (item_text(items, after, "back") &&
        (items_find(items, clause_start(items, at), at, ITEM_THEN_LEFT) < at ||
         items_find(items, clause_start(items, at), at, ITEM_WAS) < at)) {
        return true;
    }
    while (before > 0 && steps++ < REACH &&
           (item_is(items, before - 1, ITEM_HEDGE) || item_is(items, before - 1, ITEM_LINK) ||
            item_is(items, before - 1, ITEM_POWER) ||
            token_is(items->tokens, items->list[before - 1].from, "un")) && /* "un par de horas" */
           !item_is(items, before - 1, ITEM_AGO_LEAD)) {
        before--;
    }
    if (item_is(items, before - 1, ITEM_AGO_LEAD) &&
        (item_is(items, before - 2, ITEM_SHOWS) || item_is(items, before - 2, ITEM_TO))) {
        return false; /* "when its down to the last 15 min" */
    }
    if (item_is(items, before - 1, ITEM_AGO_LEAD)) {
        return !(item_text(items, before - 1, "on") && length_is_wished(items, at));
    }
    return elapsed_on_power(items, at) || elapsed_since(items, at);
}

static bool
has_any(const struct items *items, size_t from, size_t to, enum item_is is)
{
    return items_find(items, from, to, is) < to;
}

/* "an hour ago 4 lights and now 3": the charge that holds */
static bool
is_told_of_now(const struct items *items, size_t charge)
{
    size_t before = charge;

    while (before > 0 &&
           (item_is(items, before - 1, ITEM_LINK) || item_is(items, before - 1, ITEM_AT) ||
            item_is(items, before - 1, ITEM_SHOWS)) &&
           !item_is(items, before - 1, ITEM_NOW_IS)) {
        before--;
    }
    return before > 0 &&
           (item_is(items, before - 1, ITEM_NOW) || item_is(items, before - 1, ITEM_NOW_IS)) &&
           (has_any(items, sentence_start(items, charge), before, ITEM_WAS) ||
            items_have_word(items, sentence_start(items, charge), before,
                            " said showed read decia marcaba "));
}

/* "I switched 20 min ago. It shows 38 now": the charge is of now, and nothing began then. */
static bool
is_of_something_else(const struct items *items, size_t at, const struct charges_read *charges)
{
    size_t from = sentence_start(items, at), to = sentence_end(items, at), of_charge, end;

    if (charges->first_at >= items->count) {
        return false;
    }
    if (item_is(items, charges->first_at - 1, ITEM_TO) && charges->first_at > 1 &&
        items->list[charges->first_at - 2].spent) {
        return true; /* "from 90 to 65 in the last hour" */
    }
    if (is_told_of_now(items, charges->first_at)) {
        return true;
    }
    of_charge = sentence_start(items, charges->first_at);
    end = sentence_end(items, charges->first_at);
    if (of_charge == from || has_any(items, from, to, ITEM_THEN_LEFT) ||
        has_any(items, from, to, ITEM_POWER)) {
        return false;
    }
    return has_any(items, of_charge, end, ITEM_NOW) ||
           (has_any(items, of_charge, end, ITEM_SHOWS) &&
            !has_any(items, of_charge, end, ITEM_WAS));
}

static void
since_of_lengths(struct items *items, const struct charges_read *charges, struct told *told)
{
    size_t at;

    for (at = 0; at < items->count; at++) {
        if (!item_is_duration(items, at) || items->list[at].spent || items->list[at].negative ||
            !is_ago(items, at)) {
            continue;
        }
        items_spend(items, at, 1);
        if (duration_minutes(items, at) <= SINCE_MAX && !is_of_something_else(items, at, charges) &&
            duration_minutes(items, at) > told->since_min) {
            told->since_min = duration_minutes(items, at);
        }
    }
}

static size_t
clock_of(const struct items *items, enum clock_role role)
{
    size_t at;

    for (at = 0; at < items->count; at++) {
        if (items->list[at].is == ITEM_CLOCK && !items->list[at].spent &&
            clock_role(items, at) == role) {
            return at;
        }
    }
    return items->count;
}

/* "plugged in at 6:15", "on the charger at noon" */
static bool
is_plugging_in(const struct items *items, size_t at)
{
    size_t from = clause_start(items, at);

    return items_find(items, from, at, ITEM_POWER) < at &&
           items_find(items, from, at, ITEM_EVENT) == at;
}

/* "will it charge by check out at 11, its 7 now": when one leaves is when it should be done. */
static bool
is_goal_of_charging(const struct items *items, enum clock_role role)
{
    return role == CLOCK_DEPART && lexicon_cue(items->tokens, CUE_CHARGING);
}

/* "it is half past one, bus home is at six": of two times not known apart the nearer side. */
static bool
is_to_come(const struct items *items, size_t at, size_t now)
{
    int minutes = items->list[now].value - items->list[at].value;
    int round = items->list[now].ampm && items->list[at].ampm ? MINUTES_OF_DAY : HALF_DAY;

    return (minutes % round + round) % round > round / 2;
}

/* The time that a charge was so: told as such, or the only other time beside that of now. */
static size_t
clock_of_then(const struct items *items, size_t now)
{
    size_t then = clock_of(items, CLOCK_THEN), at, other = items->count;

    for (at = 0; at < items->count && then >= items->count; at++) {
        enum clock_role role;

        if (items->list[at].is != ITEM_CLOCK || at == now || items->list[at].spent) {
            continue;
        }
        role = clock_role(items, at);
        if (is_goal_of_charging(items, role) || is_to_come(items, at, now)) {
            continue;
        }
        if (role == CLOCK_OF_NOTHING || (role == CLOCK_EVENT && is_plugging_in(items, at)) ||
            (role == CLOCK_EVENT && items_any(items, ITEM_WAS)) || role == CLOCK_DEPART ||
            role == CLOCK_ARRIVE) {
            then = other < items->count ? items->count : at;
            other = at;
        }
    }
    return then;
}

/* "My watch says 8:10 and it was 7:25 when we pulled the plug": the one other time beside that of a
 * charge, if it leads to nothing; items->count if there is none. */
static size_t
clock_beside_then(const struct items *items, const struct told *told)
{
    size_t then = clock_of(items, CLOCK_THEN), other = items->count, at;

    if (then >= items->count || told->kind == TOLD_CHARGING || told->kind == TOLD_WATCH ||
        !(items_any(items, ITEM_THEN_LEFT) || items_any(items, ITEM_WAS))) {
        return items->count;
    }
    for (at = 0; at < items->count; at++) {
        if (items->list[at].is != ITEM_CLOCK || at == then || items->list[at].spent) {
            continue;
        }
        if (other < items->count || clock_role(items, at) != CLOCK_OF_NOTHING) {
            return items->count;
        }
        other = at;
    }
    return other;
}

/* "9 to 4" */
static bool
is_span_of_clocks(const struct items *items, size_t at)
{
    return item_is(items, at + 1, ITEM_TO) && at + 2 < items->count &&
           items->list[at + 2].is == ITEM_CLOCK;
}

static void
since_of_clocks(struct items *items, struct told *told)
{
    size_t now = clock_of(items, CLOCK_NOW), then;
    const struct item *from, *to;
    int minutes;

    if (now >= items->count) {
        now = clock_beside_then(items, told);
    }
    if (now >= items->count) {
        return;
    }
    then = clock_of_then(items, now);
    if (is_span_of_clocks(items, now < then ? now : then)) {
        return; /* "the bus tour 9 to 4" */
    }
    items_spend(items, now, 1);
    if (then >= items->count || then == now) {
        return;
    }
    items_spend(items, then, 1);
    from = &items->list[then];
    to = &items->list[now];
    minutes = to->value - from->value;
    if (!from->ampm || !to->ampm) {
        minutes = (minutes % HALF_DAY + HALF_DAY) % HALF_DAY;
        if (minutes > GUESSED_SINCE_MAX) {
            return; /* "power is back at 7, it is 5:30": still to come */
        }
    } else {
        minutes = (minutes + MINUTES_OF_DAY) % MINUTES_OF_DAY;
    }
    if (minutes > told->since_min) {
        told->since_min = minutes;
    }
}

/* "since we left", "a while ago"; no "since 2019", nor "2 days ago": of what nobody asks */
static bool
has_since_or_ago(const struct items *items)
{
    const struct tokens *tokens = items->tokens;
    size_t i;

    for (i = 0; i < tokens->count; i++) {
        const struct token *next = i + 1 < tokens->count ? &tokens->list[i + 1] : NULL;

        if (token_among(tokens, i, " since desde ") &&
            !(next != NULL && next->kind == TOKEN_NUMBER && next->thousandths >= 1900 * 1000) &&
            !token_among(tokens, i + 3, " anos meses semanas dias years ")) {
            return true;
        }
        if (token_is(tokens, i, "ago") &&
            !(i > 0 && token_among(tokens, i - 1, " days weeks months years week month year "))) {
            return true;
        }
    }
    return false;
}

void
since_read(struct items *items, const struct charges_read *charges, struct told *told)
{
    since_of_lengths(items, charges, told);
    if (told->kind == TOLD_CYLINDER) {
        told->since_min = 0;
        return;
    }
    since_of_clocks(items, told);
    if (told->charge_count + told->light_count == 0 && charges->first_at >= items->count &&
        told->count == 0) {
        told->since_min = 0; /* of no charge */
    }
    if (charges->first_at < items->count && is_of_this_moment(items, charges->first_at)) {
        told->since_min = 0;
        return;
    }
    told->is_earlier =
        told->since_min == 0 &&
        (clock_of(items, CLOCK_THEN) < items->count || has_since_or_ago(items) ||
         tokens_have(items->tokens,
                     "left the|left our|left home|left my|started with|when we left|"
                     "when i left|when he left|when she left|when we started|whole time|"
                     "this morning|cuando salimos|cuando sali|sali con|salimos con|"
                     "hace rato|esta manana"));
}

/* ---- goals --------------------------------------------------------------------------------------
 */

static void
set_time(const struct item *clock, bool remind, struct told *told)
{
    if (clock->day != NO_DAY) {
        told->has_day = true;
        told->day = (enum told_day)clock->day;
    }
    if (!clock->ampm) {
        told->missing |= MISSING_AM_PM;
        return;
    }
    if (remind) {
        told->has_remind_at = true;
        told->remind_at = clock->value;
    } else {
        told->has_ready_by = true;
        told->ready_by = clock->value;
    }
}

/* The first clock time of the best role in the list; items->count if there is none. */
static size_t
best_clock(const struct items *items, const enum clock_role *roles, size_t count)
{
    size_t i, at;

    for (i = 0; i < count; i++) {
        at = clock_of(items, roles[i]);
        if (at < items->count) {
            return at;
        }
    }
    return items->count;
}

/* "the party ends at 10:15, will he make it": it must last as long. */
static bool
is_event_to_last(const struct items *items)
{
    return lexicon_cue(items->tokens, CUE_ENOUGH) && !items_any(items, ITEM_WAS) &&
           tokens_have(items->tokens,
                       "ends|ends at|is over|over at|lets out|gets out|finishes|wraps up|"
                       "se acaba|termina|terminan|acaba|salen|sale");
}

static size_t
goal_clock(const struct items *items, const struct told *told)
{
    static const enum clock_role charging[] = {CLOCK_BY, CLOCK_DEPART, CLOCK_UNTIL,
                                               CLOCK_OF_NOTHING};
    static const enum clock_role trip[] = {CLOCK_DEPART, CLOCK_BY};
    static const enum clock_role hours[] = {CLOCK_UNTIL, CLOCK_BY};
    static const enum clock_role ending[] = {CLOCK_ARRIVE};
    size_t at;
    static const enum clock_role watch[] = {CLOCK_REMIND, CLOCK_OF_NOTHING, CLOCK_BY, CLOCK_DEPART};

    switch (told->kind) {
    case TOLD_CHARGING:
        return best_clock(items, charging, sizeof charging / sizeof charging[0]);
    case TOLD_TRIP:
        return best_clock(items, trip, sizeof trip / sizeof trip[0]);
    case TOLD_HOURS_LEFT:
        at = best_clock(items, hours, sizeof hours / sizeof hours[0]);
        return at == items->count && is_event_to_last(items) ? best_clock(items, ending, 1) : at;
    case TOLD_WATCH:
        return best_clock(items, watch, sizeof watch / sizeof watch[0]);
    default:
        return items->count;
    }
}

/* "30 min are left", "an hour before", "45 minutes warning", "cuando falten 45 minutos" */
static bool
is_before(const struct items *items, size_t at)
{
    size_t to = clause_end(items, at), i;

    for (i = at + 1; i < to && i < at + 5; i++) {
        if (item_is(items, i, ITEM_LEFT) || item_is(items, i, ITEM_BEFORE)) {
            return true;
        }
    }
    for (i = at; i > 0 && at - i < 5; i--) {
        if (item_is(items, i - 1, ITEM_LEFT) || item_is(items, i - 1, ITEM_HAVE) ||
            item_text(items, i - 1, "down") || item_text(items, i - 1, "under")) {
            return true;
        }
    }
    return false;
}

/* "in 2 hours", "an alarm for 2 hours from now", "cada 2 horas": no time before the end. */
static bool
is_from_now(const struct items *items, size_t at)
{
    size_t first = items->list[at].from, after = items->list[at].to;

    return (first > 0 && (token_among(items->tokens, first - 1, " in en for every each cada ") ||
                          (first > 1 && token_is(items->tokens, first - 1, "de") &&
                           token_is(items->tokens, first - 2, "dentro")))) ||
           token_among(items->tokens, after, " from later desde despues ");
}

static void
read_before(struct items *items, struct told *told)
{
    size_t at;

    for (at = 0; at < items->count; at++) {
        bool later = is_from_now(items, at);

        if (item_is_duration(items, at) && !items->list[at].spent &&
            (is_before(items, at) || (!later && told->remind_before_min == 0))) {
            told->remind_before_min = duration_minutes(items, at);
            items_spend(items, at, 1);
        }
    }
}

void
goals_read(struct items *items, struct told *told)
{
    size_t at = goal_clock(items, told);

    if (told->kind == TOLD_WATCH) {
        read_before(items, told);
    }
    if (at < items->count) {
        items_spend(items, at, 1);
        set_time(&items->list[at], told->kind == TOLD_WATCH, told);
    } else if (told->leg_count == 0 && !told->impossible &&
               ((told->kind == TOLD_CHARGING && is_ready_untimed(items)) ||
                (told->kind == TOLD_HOURS_LEFT && lasts_until_untimed(items)))) {
        told->missing |= MISSING_READY_BY;
    }
}

/* ---- what cannot be
 * ------------------------------------------------------------------------------- */

/* "8 miles at 0 mph": nobody gets anywhere. */
static bool
is_no_speed(const struct items *items, size_t at)
{
    return (item_in(items, at, UNIT_MPH) || item_in(items, at, UNIT_KMH)) &&
           (items->list[at].value == 0 || items->list[at].negative) && !items->list[at].spent;
}

void
impossible_times(struct items *items, struct told *told)
{
    size_t at;

    for (at = 0; at < items->count; at++) {
        const struct item *item = &items->list[at];
        bool clock = item->is == ITEM_CLOCK && item->cannot;

        if (is_no_speed(items, at)) {
            told->impossible = true;
            told->impossible_what = items_words(items, at, 1);
            told->missing |= MISSING_MINUTES;
            continue;
        }
        if (item->spent || !(clock || (item_is_duration(items, at) && item->negative))) {
            continue;
        }
        told->impossible = true;
        told->impossible_what = items_words(items, at, 1);
        if (clock) {
            told->missing |= told->kind == TOLD_WATCH    ? 0U
                             : told->kind == TOLD_FLIGHT ? (unsigned)MISSING_FLIGHT_MINUTES
                                                         : (unsigned)MISSING_READY_BY;
        } else {
            told->missing |= told->kind == TOLD_FLIGHT ? (unsigned)MISSING_FLIGHT_MINUTES
                                                       : (unsigned)MISSING_MINUTES;
        }
        items_spend(items, at, 1);
    }
}
