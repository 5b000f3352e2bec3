/*
 * Each telling of a charge (states.h) is of one battery or of several, which the words before it
 * tell ("2 full", "both at 50", "3 batteries at 80 %"), or behind it ("20 each", "full x4"). A list
 * ("3 batteries at 20, 40 and 60") shares its number out. Batteries that are counted and of which
 * no charge is told remain: their number is a total ("I have 3, one is full") unless the words say
 * that they come on top ("and one I havent checked").
 */
#include "charges.h"

#include "bare_numbers.h"
#include "beside_numbers.h"
#include "charges_again.h"
#include "charges_left_over.h"
#include "charges_of_one.h"
#include "corrections.h"
#include "counted.h"
#include "gone.h"
#include "hedges.h"
#include "memory.h"
#include "states.h"
#include "subjects.h"
#include "whole_and_half.h"

char *
items_words(const struct items *items, size_t at, size_t count)
{
    char *words = memory_copy(items->arena, "");
    size_t from = items->list[at].from, to = items->list[at + count - 1].to, i;

    for (i = from; i < to; i++) {
        memory_append(&words, "%s%s", i > from && !items->tokens->list[i].glued ? " " : "",
                      items->tokens->list[i].text);
    }
    return words;
}

/* ---- finding them
 * ---------------------------------------------------------------------------------- */

static void
cannot_be(const struct items *items, const struct state *state, struct told *told)
{
    told->impossible = true;
    told->impossible_what = items_words(items, state->from, state->count);
    told->missing |= MISSING_CHARGE;
}

/* A charge, or a number that may be one. */
static bool
tells_charge(const struct items *items, size_t at)
{
    return item_is(items, at, ITEM_FULL) || item_is(items, at, ITEM_CHARGE) ||
           item_is(items, at, ITEM_HALF) || item_is(items, at, ITEM_QUARTER) ||
           item_is(items, at, ITEM_FRACTION) || item_in(items, at, UNIT_PERCENT) ||
           item_is(items, at + 1, ITEM_LIGHT) ||
           (item_free_number(items, at) && !item_is(items, at + 1, ITEM_UNIT));
}

/* "and the other too"; "and the other too, 80" tells its own */
static bool
same_again(const struct items *items, size_t at, const struct groups *groups)
{
    size_t next = over_links(items, at + 1);

    next += item_is(items, next, ITEM_AT) ? 1 : 0;
    if (groups->count > 0 && item_is(items, at, ITEM_SAME) && !items->list[at].spent &&
        tokens_phrase_at(items->tokens, items->list[at].from,
                         "la otra tambien|la otra igual|so is the other") > 0) {
        return !tells_charge(items, over_links(items, at + 1));
    }
    return groups->count > 0 &&
           (item_is(items, at, ITEM_OTHER) || item_is(items, at, ITEM_ORDINAL)) &&
           (item_is(items, next, ITEM_SAME) || item_is(items, at + 1, ITEM_SAME)) &&
           !tells_charge(items, over_links(items, next + 1));
}

/* True if the state before `at` ended right before a pause or "and". */
static bool
continues_list(const struct items *items, const struct groups *groups, size_t at)
{
    const struct state *last;
    bool corrected = false, stopped = false;
    size_t end, i;

    if (groups->count == 0) {
        return false;
    }
    last = &groups->list[groups->count - 1].state;
    end = last->from + last->count;
    for (i = end; i < at; i++) { /* a stop parts, unless a correction follows */
        corrected = corrected || item_is(items, i, ITEM_CORRECT);
        stopped = stopped || items->list[i].is == ITEM_STOP;
        if (!item_is(items, i, ITEM_AND) && items->list[i].is != ITEM_PAUSE &&
            !item_is(items, i, ITEM_HEDGE) && !item_is(items, i, ITEM_HEDGE_AFTER) &&
            !item_is(items, i, ITEM_ARTICLE) && !item_text(items, i, "la") &&
            !item_text(items, i, "a") && !item_is(items, i, ITEM_CORRECT) &&
            items->list[i].is != ITEM_STOP) {
            return false;
        }
    }
    return (end < at && (corrected || !stopped)) ||
           (end == at && !last->is_lights &&
            (items->list[at].is == ITEM_NUMBER || item_in(items, at, UNIT_PERCENT) ||
             item_is(items, at, ITEM_FULL) || item_is(items, at, ITEM_CHARGE) ||
             item_is(items, at, ITEM_HALF)));
}

static bool
take_whole_and_half(struct items *items, size_t at, struct groups *groups, size_t *taken)
{
    struct group whole = {.state = {.charge = {100, 100}, .adjacent = true, .from = at},
                          .named = true};
    struct group half = {.state = {.charge = {50, 50}, .from = at}, .named = true, .times = 1};

    *taken = items->list[at].spent ? 0 : whole_and_half_at(items, at);
    if (*taken == 0) {
        return false;
    }
    whole.times = items->list[at].is == ITEM_NUMBER ? items->list[at].value / 1000 : 1;
    whole.state.count = half.state.count = *taken;
    groups_add(groups, &whole);
    groups_add(groups, &half);
    items_spend(items, at, *taken);
    return true;
}

/* "3 full, and we went through one": an empty one of those */
static bool
take_emptied(struct items *items, size_t at, struct groups *groups)
{
    struct group group = {.state = {.from = at, .count = 1}, .named = true, .of_them = true};
    size_t number;

    group.times = items->list[at].spent ? 0 : gone_emptied(items, at, &number);
    if (group.times == 0 || groups->count == 0 ||
        groups->list[groups->count - 1].times <= group.times) {
        return false;
    }
    groups_add(groups, &group);
    items_spend(items, number, 1);
    return true;
}

static void
find_groups(struct items *items, struct told *told, struct groups *groups)
{
    size_t at = 0;

    while (at < items->count) {
        struct group group = {0};
        bool listed = continues_list(items, groups, at), found;
        size_t taken;

        if (take_whole_and_half(items, at, groups, &taken)) {
            at += taken;
            continue;
        }
        if (take_emptied(items, at, groups)) {
            at++;
            continue;
        }
        found = !items->list[at].spent && (charge_lights_again(items, at, groups, &group.state) ||
                                           state_at(items, at, listed, &group.state));

        if (!found) {
            if (same_again(items, at, groups)) {
                group = groups->list[groups->count - 1];
                group.times = 1;
                group.named = true;
                groups_add(groups, &group);
            }
            at++;
            continue;
        }
        items_spend(items, at, group.state.count);
        subject_before(items, at, &group);
        subject_behind(items, &group);
        if ((!listed && charge_is_said_again(items, groups, &group)) ||
            charge_is_spelt_again(items, groups, &group) ||
            charge_is_of_those_told(items, groups, &group) ||
            charge_is_doubled(items, groups, &group) || gone_is_left_out(items, groups, &group)) {
            at += group.state.count;
            continue;
        }
        if (charge_guess_again(items, groups, &group)) {
            at += group.state.count;
            continue;
        }
        if (group.state.cannot) {
            cannot_be(items, &group.state, told);
            told->count += group.times > 1 ? group.times : items_any(items, ITEM_BATTERY) ? 1 : 0;
        } else if (charge_are_lit(items, groups, &group) || charge_is_of_all(groups, &group) ||
                   (!listed && charge_is_same_again(items, groups, &group))) {
            groups->list[groups->count - 1] = group;
        } else {
            groups_add(groups, &group);
        }
        at += group.state.count;
    }
}

/* ---- lists, corrections ---------------------------------------------------------------------- */

/* "3 batteries at 20, 40 and 60": the number is that of the list. */
static void
share_out(const struct items *items, struct groups *groups)
{
    size_t i, last;

    for (i = 0; i < groups->count; i = last) {
        struct groups upto = *groups;
        bool counted = groups->list[i].times != 1;

        for (last = i + 1; last < groups->count && !groups->list[last].named; last++) {
            upto.count = last;
            if (groups->list[last].times == ALL_OF_THEM || /* "both at 40, sorry, 35 each" */
                !continues_list(items, &upto, groups->list[last].state.from)) {
                break;
            }
        }
        if (counted && last > i + 1 && !groups->list[i].state.adjacent &&
            (groups->list[i].times < 0 || (size_t)groups->list[i].times >= last - i)) {
            groups->list[i].times = 1;
        }
    }
}

/* "2 full ones, the second is at 40 now": one of those that were counted. */
static void
tell_one_of_them(struct groups *groups)
{
    size_t i, j;

    for (i = 1; i < groups->count; i++) {
        const struct group *used = &groups->list[i];

        for (j = i; j > 0 && used->of_them && used->times > 0; j--) {
            if (groups->list[j - 1].times > used->times && groups->list[j - 1].ordinal == 0) {
                groups->list[j - 1].times -= used->times; /* "3 full, used up one" */
                break;
            }
        }
        for (j = 0; j < i && groups->list[i].ordinal > 0; j++) {
            if (groups->list[j].times > 1 && groups->list[j].ordinal == 0 &&
                groups->list[i].ordinal <= groups->list[j].times) {
                groups->list[j].times--;
                break;
            }
        }
    }
}

/* "2 full, I mean 3", "4 lights, no wait 3": a bare number takes the place of the last one. */
static void
correct_number(struct items *items, size_t from, struct group *last)
{
    size_t at = over_links(items, from + 1), other;

    for (other = last->state.from + last->state.count; other < from; other++) {
        if (items->list[other].is == ITEM_NUMBER || items->list[other].is == ITEM_AMOUNT) {
            return; /* "one full, on 2, no wait 3" corrects what stands nearer */
        }
    }
    at += item_is(items, at, ITEM_NOW_IS) || item_is(items, at, ITEM_AT) ? 1 : 0;
    at += at < items->count && items->list[at].is == ITEM_PAUSE ? 1 : 0;
    if (!item_free_number(items, at) || !corrections_lead(items, at) ||
        !(clause_stops(items, at + 1) || item_is(items, at + 1, ITEM_AND) ||
          token_among(items->tokens, items->list[at].to, " how cuanto cuanta cuantas "))) {
        return;
    }
    if (last->state.is_lights && is_count(items, at)) {
        last->state.lights = items->list[at].value / 1000;
    } else if (last->state.adjacent && is_count(items, at)) {
        last->times = items->list[at].value / 1000;
    } else if (!last->state.is_lights && !last->state.adjacent && !items->list[at].fraction &&
               items->list[at].value > BIG_MIN * 1000 && items->list[at].high <= 100 * 1000) {
        last->state.charge = (struct percent){items->list[at].value / 1000,
                                              items->list[at].high / 1000}; /* "at 45, no 35" */
    } else {
        return;
    }
    items_spend(items, at, 1);
}

/* The group before `holds` that has the same subject by its word ("the spare"); `holds` if none. */
static size_t
told_before_of(const struct items *items, const struct groups *groups, size_t holds)
{
    const struct group *group = &groups->list[holds];
    size_t i;

    for (i = holds; i > 0 && group->subject > 0 && group->times == 1; i--) {
        const struct group *before = &groups->list[i - 1];

        if (before->subject > 0 && before->times == 1 &&
            token_is(items->tokens, items->list[before->subject].to - 1,
                     items->tokens->list[items->list[group->subject].to - 1].text)) {
            return i - 1;
        }
    }
    return holds;
}

/* Of how many batteries the first so many groups tell. */
static int
told_before(const struct groups *groups, size_t count)
{
    int told = 0;
    size_t i;

    for (i = 0; i < count; i++) {
        told += groups->list[i].times > 0 ? groups->list[i].times : 0;
    }
    return told;
}

/* A correction replaces all that was told before; one charge without a battery of its own, or of
 * the second one, only the one that it is of. */
static void
take_back(struct items *items, struct groups *groups)
{
    size_t from = corrections_from(items), before = 0, replaced;
    struct group *holds;

    while (before < groups->count && groups->list[before].state.from < from) {
        before++;
    }
    if (from == 0 || before == 0) {
        return;
    }
    if (before == groups->count) {
        correct_number(items, from, &groups->list[before - 1]);
        return;
    }
    holds = &groups->list[before];
    if (holds->of_them) {
        return; /* "actually one of those is at 14" */
    }
    replaced = told_before_of(items, groups, before);
    if (replaced < before) {
        groups_drop(groups, replaced, 1);
        return; /* "I mean the spare is at 30" */
    }
    if ((holds->named && holds->ordinal == 0) || holds->times != 1) {
        int told = told_before(groups, before);

        if (holds->times == ALL_OF_THEM && told > 1) {
            holds->times = told; /* "both at 40, no, 45 each" */
        }
        groups_drop(groups, 0, before);
        return;
    }
    replaced = holds->ordinal > 0 && (size_t)holds->ordinal <= before ? (size_t)holds->ordinal - 1
                                                                      : before - 1;
    if (groups->list[replaced].times != 1) {
        holds->times = groups->list[replaced].times;
    }
    groups_drop(groups, replaced, 1);
}

/* ---- together
 * ---------------------------------------------------------------------------------------- */

static void
tell(struct told *told, const struct state *state, int times)
{
    while (times-- > 0 && told_batteries(told) < TOLD_BATTERIES_MAX) {
        if (state->is_lights) {
            told->lights[told->light_count++] = state->lights;
        } else {
            told->charges[told->charge_count++] = state->charge;
        }
    }
}

/* Said of all of them: as many as were counted and are not told otherwise. */
static int
all_of_them(const struct groups *groups, int total)
{
    return total - told_before(groups, groups->count);
}

/* "2 batteries, 100, 80 and 60": no more charges than batteries, the fullest goes first; true if
 * any went, for then nobody knows how many there are. */
static bool
drop_surplus(struct told *told, int total)
{
    bool surplus = told->charge_count > 0 && told_batteries(told) > total;
    size_t i, fullest;

    while (told->charge_count > 0 && told_batteries(told) > total) {
        for (fullest = 0, i = 1; i < told->charge_count; i++) {
            fullest = told->charges[i].low > told->charges[fullest].low ? i : fullest;
        }
        told->charge_count--;
        for (i = fullest; i < told->charge_count; i++) {
            told->charges[i] = told->charges[i + 1];
        }
    }
    return surplus;
}

/* "three batteries: 1 at 20, 2 at 45, 3 full": as many tellings as batteries, so that the numbers
 * before them are labels, though they would count more than there are. */
static void
numbers_are_labels(struct groups *groups, int total)
{
    size_t i;

    for (i = 0; i < groups->count && groups->list[i].times == (int)i + 1; i++) {
    }
    if (i < groups->count || (int)groups->count != total) {
        return;
    }
    for (i = 0; i < groups->count; i++) {
        groups->list[i].times = 1;
    }
}

struct charges_read
charges_read(struct items *items, struct told *told)
{
    struct charges_read read = {.first_at = items->count};
    struct groups groups = {0};
    struct counted counted;
    struct gone gone = gone_read(items);
    int untold, cannot;
    size_t i;

    find_groups(items, told, &groups);
    cannot = told->count;
    told->count = 0;
    share_out(items, &groups);
    if (told->kind == TOLD_CHARGING || told->kind == TOLD_NOTHING) {
        charges_drop_goal(items, &groups);
    }
    take_back(items, &groups);
    tell_one_of_them(&groups);
    counted = counted_read(items, groups.count > 0 ? groups.list[0].state.from : items->count);
    gone_take(&gone, &counted, &groups);
    if (counted.total < 2 && counted.on_top == 0) {
        charges_join(items, &groups);
    }
    if (counted.total > 1 && counted.on_top == 0 && !items_any(items, ITEM_BOTH)) {
        numbers_are_labels(&groups, counted.total);
    }
    for (i = 0; i < groups.count; i++) {
        int times = groups.list[i].times;
        bool several =
            times < 0 || (times == 1 && groups.list[i].state.plural && !groups.list[i].named);

        if (several) {
            times = counted.total == 0 && charges_of_any(items, &groups.list[i].state)
                        ? 1
                        : all_of_them(&groups, counted.total) + (times == 1 ? 1 : 0);
            read.several = read.several || times <= 0;
            read.part = read.part || (times <= 0 && (groups.list[i].state.is_lights ||
                                                     groups.list[i].state.charge.low < 100));
        }
        tell(told, &groups.list[i].state, times);
    }
    if (groups.count > 0) {
        read.first_at = groups.list[0].state.from;
    }
    if (counted.total > 0 && counted.on_top == 0 && item_is(items, counted.at + 1, ITEM_BATTERY)) {
        read.several = drop_surplus(told, counted.total) || read.several;
    }
    read.a_battery = speaks_of_one(items);
    untold = counted.total - (int)(told->charge_count + told->light_count);
    untold = untold > counted.on_top ? untold : counted.on_top;
    untold = untold > cannot ? untold : cannot;
    told->count = untold > 0 ? untold : 0;
    if (told_batteries(told) > TOLD_BATTERIES_MAX) {
        told->count = TOLD_BATTERIES_MAX - (int)(told->charge_count + told->light_count);
    }
    if (groups.count == 0 && cannot == 0) {
        read.first_at = charges_left_over(items, told);
    }
    return read;
}
