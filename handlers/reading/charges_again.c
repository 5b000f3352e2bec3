/* Charges told twice: see charges_again.h. */
#include "charges_again.h"

#include "beside_numbers.h"
#include "counted.h"
#include "hedges.h"

void
groups_add(struct groups *groups, const struct group *group)
{
    if (groups->count < GROUPS_MAX) {
        groups->list[groups->count++] = *group;
    }
}

void
groups_drop(struct groups *groups, size_t from, size_t count)
{
    size_t i;

    for (i = from; i + count < groups->count && i + count < GROUPS_MAX; i++) {
        groups->list[i] = groups->list[i + count];
    }
    groups->count -= count;
}

/* "it says 75", "now its 60": a charge of a battery that is not named. */
static bool
is_of_it(const struct items *items, const struct group *group)
{
    size_t before = back_over_links(items, group->state.from);

    while (before < items->count &&
           (item_is(items, before, ITEM_AT) || item_is(items, before, ITEM_HEDGE))) {
        before = back_over_links(items, before);
    }
    if (items_have_word(items, clause_start(items, group->state.from), group->state.from,
                        " extra xtra spare second ")) {
        return false; /* "unit says 50, extra says 95" */
    }
    return !group->named && group->times == 1 && !group->state.adjacent &&
           !group->state.is_lights &&
           (item_is(items, before, ITEM_SHOWS) || item_is(items, before, ITEM_NOW_IS) ||
            token_among(items->tokens, items->list[group->state.from].from - 1, " its it "));
}

/* "has 5 lights and 4 are lit": the gauge, then its lights. */
bool
charge_are_lit(const struct items *items, const struct groups *groups, const struct group *group)
{
    const struct group *last = &groups->list[groups->count > 0 ? groups->count - 1 : 0];
    size_t lit = items->list[group->state.from + group->state.count - 1].to - 1;

    return groups->count > 0 && last->state.is_lights && group->state.is_lights && !group->named &&
           group->state.lights <= last->state.lights &&
           sentence_start(items, last->state.from) == sentence_start(items, group->state.from) &&
           token_among(items->tokens, lit, " lit prendidas encendidas prendidos encendidos ");
}

/* Told again of the same one, which no other was told since: the last telling holds. */
bool
charge_is_same_again(const struct items *items, const struct groups *groups,
                     const struct group *group)
{
    const struct state *last = &groups->list[groups->count > 0 ? groups->count - 1 : 0].state;
    size_t end = last->from + last->count;

    return groups->count > 0 && is_of_it(items, group) &&
           items_find(items, end, group->state.from, ITEM_OTHER) == group->state.from &&
           is_of_it(items, &groups->list[groups->count - 1]);
}

bool
charge_is_of_all(const struct groups *groups, const struct group *group)
{
    const struct group *last = &groups->list[groups->count > 0 ? groups->count - 1 : 0];

    return groups->count > 0 && !last->named && last->times == 1 && !last->state.is_lights &&
           !group->state.is_lights && group->named && group->times > 1 &&
           last->state.charge.low == group->state.charge.low &&
           last->state.charge.high == group->state.charge.high;
}

/* "It says 9. nine percent.": the same battery, unless another one is named. */
bool
charge_is_said_again(const struct items *items, const struct groups *groups,
                     const struct group *group)
{
    size_t after = group->state.from + group->state.count,
           first = items->list[group->state.from].from;
    bool asks = item_is(items, back_over_links(items, group->state.from), ITEM_FROM);
    size_t i;

    if (group->named || group->times != 1 || group->state.adjacent || group->state.is_lights ||
        item_is(items, after, ITEM_OTHER) || item_is(items, after, ITEM_BATTERY) ||
        item_is(items, after, ITEM_AT) ||
        items_have_word(items, clause_start(items, group->state.from), group->state.from,
                        " also too tambien igual another otra ")) {
        return false; /* "theres a second one, also full" */
    }
    for (i = first > 3 ? first - 3 : 0; i < first; i++) { /* "12 percent, how long is 12 percent" */
        asks = asks || token_among(items->tokens, i, " long cuanto much ");
    }
    for (i = 0; i < groups->count; i++) {
        const struct state *before = &groups->list[i].state;

        if (!asks && sentence_start(items, group->state.from) <= before->from) {
            continue; /* "90 in one and 90 in the other" */
        }
        if (!before->is_lights && before->charge.low == group->state.charge.low &&
            before->charge.high == group->state.charge.high) {
            return true;
        }
    }
    return false;
}

/* "nineteen, 19": in words and once more in digits, with nothing but a pause between. */
bool
charge_is_spelt_again(const struct items *items, const struct groups *groups,
                      const struct group *group)
{
    const struct state *last = &groups->list[groups->count > 0 ? groups->count - 1 : 0].state;
    size_t end = last->from + last->count, at = group->state.from;

    return groups->count > 0 && end + 1 == at && items->list[end].is == ITEM_PAUSE &&
           !last->is_lights && !group->state.is_lights &&
           last->charge.low == group->state.charge.low &&
           last->charge.high == group->state.charge.high &&
           items->list[last->from].value == items->list[at].value &&
           items->list[last->from].value % 10000 != 0 &&
           items->list[last->from].digits != items->list[at].digits;
}

/* "both", "las dos", "all": the words before the charge mean those that are known. */
static bool
means_all_of_them(const struct items *items, size_t at)
{
    size_t from = clause_start(items, at), i;

    for (i = at; i > from && at - i < 5; i--) {
        if (item_is(items, i - 1, ITEM_BOTH) || item_is(items, i - 1, ITEM_ALL) ||
            (items->list[i - 1].is == ITEM_NUMBER &&
             token_among(items->tokens, tokens_back(items->list[i - 1].from, 1),
                         " las los the mis my "))) {
            return true;
        }
    }
    return false;
}

/* "is one full battery enough", "how long does a full battery last", "I repeat, one full", "yes" */
static bool
is_spoken_of_again(const struct items *items, size_t at)
{
    size_t from = clause_start(items, at), i;
    bool counted =
        item_is(items, at - 1, ITEM_ARTICLE) || (at > 0 && items->list[at - 1].is == ITEM_NUMBER);

    for (i = at; item_is(items, at, ITEM_FULL) && i > from && at - i < 5; i--) {
        if (token_among(items->tokens, items->list[i - 1].from,
                        " repeat repito yes si yeah yep ") ||
            (counted && token_among(items->tokens, items->list[i - 1].from,
                                    " is does do will dura aguanta alcanza "))) {
            return true;
        }
    }
    return false;
}

bool
charge_is_of_those_told(const struct items *items, const struct groups *groups,
                        const struct group *group)
{
    size_t at = group->state.from, i;
    int told = 0;

    if (groups->count == 0 || group->state.is_lights || group->state.cannot || group->times < 1 ||
        item_is(items, at, ITEM_OTHER) ||
        items_have_word(items, clause_start(items, at), at,
                        " another other otra otro also tambien plus mas second spare ")) {
        return false;
    }
    for (i = 0; i < groups->count; i++) {
        const struct group *before = &groups->list[i];

        if (before->state.is_lights || before->state.charge.low != group->state.charge.low ||
            before->state.charge.high != group->state.charge.high || before->times < 1 ||
            clause_start(items, before->state.from) == clause_start(items, at)) {
            return false;
        }
        told += before->times;
    }
    return told == group->times &&
           (group->times == 1 ? is_spoken_of_again(items, at) : means_all_of_them(items, at));
}

/* "a fresh full one", "totally topped off full": said twice of one; "full full half" are three. */
bool
charge_is_doubled(const struct items *items, const struct groups *groups, const struct group *group)
{
    const struct state *last = &groups->list[groups->count > 0 ? groups->count - 1 : 0].state;

    if (groups->count > 0 && last->is_lights && item_is(items, group->state.from, ITEM_FULL) &&
        last->from + last->count + 1 == group->state.from &&
        item_value(items, group->state.from - 1, ITEM_AT) == AT_ON) {
        return true; /* "4 lights on the fresh one" */
    }
    return groups->count > 0 && !last->is_lights && !group->state.is_lights &&
           last->from + last->count == group->state.from && item_is(items, last->from, ITEM_FULL) &&
           item_is(items, group->state.from, ITEM_FULL) &&
           !item_text(items, group->state.from,
                      items->tokens->list[items->list[last->from].from].text);
}

/* "almost full, i think 95 or so", "less than half, more than a quarter": of the one battery that
 * is spoken of. */
static bool
is_nearer_guess(const struct items *items, const struct group *last, const struct group *group)
{
    size_t end = last->state.from + last->state.count, at = group->state.from, i;
    bool word = item_is(items, last->state.from, ITEM_CHARGE) ||
                item_is(items, last->state.from, ITEM_HALF);
    bool guessed = token_among(items->tokens, items->list[at].from,
                               " more less over under mas "
                               "menos almost nearly ");

    if (end == at && item_is(items, last->state.from, ITEM_CHARGE) &&
        item_in(items, at, UNIT_PERCENT)) {
        guessed = true; /* "almost dead 4 percent" */
    } else if (!word || end >= at || items->list[end].is != ITEM_PAUSE) {
        return false;
    }
    for (i = end + 1; i < at; i++) {
        if (!item_is(items, i, ITEM_HEDGE) && !item_is(items, i, ITEM_LINK) &&
            !item_is(items, i, ITEM_NOW_IS)) {
            return false;
        }
        guessed = guessed || item_is(items, i, ITEM_HEDGE);
    }
    for (i = 0; i < items->count; i++) {
        if (item_value(items, i, ITEM_BATTERY) == 2 || item_is(items, i, ITEM_BOTH) ||
            item_is(items, i, ITEM_OTHER) || item_is(items, i, ITEM_EACH)) {
            return false;
        }
    }
    return guessed;
}

/* "its 60 maybe 50", "60 or 50": of one battery, which has as little as may be. */
bool
charge_guess_again(const struct items *items, struct groups *groups, const struct group *group)
{
    struct group *last = &groups->list[groups->count > 0 ? groups->count - 1 : 0];
    size_t end = last->state.from + last->state.count, at = group->state.from;

    if (groups->count == 0 || group->named || group->times != 1 || last->times != 1 ||
        group->state.is_lights || last->state.is_lights || group->state.cannot ||
        item_is(items, at + group->state.count, ITEM_OTHER)) {
        return false;
    }
    if (is_nearer_guess(items, last, group)) {
        struct percent charge = group->state.charge;

        if (charge.high > last->state.charge.high && charge.low <= last->state.charge.high) {
            charge.high = last->state.charge.high;
        }
        if (charge.low < last->state.charge.low && charge.high > last->state.charge.low) {
            charge.low = last->state.charge.low;
        }
        last->state.charge = charge;
        return true;
    }
    end += end < at && items->list[end].is == ITEM_PAUSE ? 1 : 0;
    if (end >= at || at - end > 2 ||
        !token_among(items->tokens, items->list[end].from,
                     " maybe perhaps possibly or o quiza quizas ")) {
        return false;
    }
    if (group->state.charge.low < last->state.charge.low) {
        last->state.charge.low = group->state.charge.low;
    }
    return true;
}

/* "2 lights, and its buddy in the bag has 4", "the other battery in the pouch has all four" */
static bool
is_told_of_another(const struct items *items, size_t at, size_t last)
{
    size_t verb = at, from = clause_start(items, at);

    while (verb > from &&
           (item_is(items, verb - 1, ITEM_ALL) ||
            (item_is(items, verb - 1, ITEM_LINK) && !item_is(items, verb - 1, ITEM_SHOWS)))) {
        verb--;
    }
    if (items->list[at].value > 4 * 1000 || !clause_stops(items, at + 1) || verb <= from) {
        return false;
    }
    if (item_is(items, verb - 1, ITEM_HAVE) &&
        token_among(items->tokens, items->list[verb - 1].to - 1, " has tiene trae ") &&
        sentence_start(items, last) == sentence_start(items, at)) {
        return true;
    }
    return (item_is(items, verb - 1, ITEM_HAVE) || item_is(items, verb - 1, ITEM_SHOWS)) &&
           follows_battery(items, verb - 1);
}

/* From the number of "the other two", "las otras dos" to its others; `at` if it is of none. */
static size_t
others_of(const struct items *items, size_t at)
{
    return at > 0 && is_count(items, at) && item_is(items, at - 1, ITEM_OTHER) ? at - 1 : at;
}

/* "4 lights on 2, 3 on 1": what is told of lights on so many batteries, at the number of lights. */
static bool
is_next_on_so_many(const struct items *items, size_t at)
{
    return at > 3 && item_value(items, at + 1, ITEM_AT) == AT_ON &&
           item_text(items, at + 1, "on") && is_count(items, at + 2) &&
           (clause_stops(items, at + 3) || item_is(items, at + 3, ITEM_AND)) &&
           (items->list[at - 1].is == ITEM_PAUSE || item_is(items, at - 1, ITEM_AND)) &&
           items->list[at - 2].is == ITEM_NUMBER && item_value(items, at - 3, ITEM_AT) == AT_ON &&
           item_is(items, at - 4, ITEM_LIGHT);
}

bool
charge_lights_again(const struct items *items, size_t at, const struct groups *groups,
                    struct state *state)
{
    size_t next = at + 1, whose = others_of(items, at > 1 ? at - 2 : 0);

    if (groups->count == 0 || !groups->list[groups->count - 1].state.is_lights ||
        !is_count(items, at) || is_told_of_all_together(items, at)) {
        return false;
    }
    if (is_told_of_another(items, at, groups->list[groups->count - 1].state.from)) {
        *state = (struct state){
            .is_lights = true, .lights = items->list[at].value / 1000, .from = at, .count = 1};
        return true;
    }
    if (is_next_on_so_many(items, at)) {
        *state = (struct state){
            .is_lights = true, .lights = items->list[at].value / 1000, .from = at, .count = 1};
        return true;
    }
    next += item_is(items, next, ITEM_AT) ? 1 : 0;
    next = next > at + 1 ? over_links(items, next) : next;
    if ((item_is(items, at - 1, ITEM_HAVE) || item_is(items, at - 1, ITEM_AT)) && at > 1 &&
        ((item_is(items, whose, ITEM_OTHER) && !item_text(items, whose, "esta")) ||
         items->list[whose].one) &&
        !item_is(items, at + 1, ITEM_BATTERY) && !item_is(items, at + 1, ITEM_UNIT)) {
        next = whose; /* "the other has 4" */
    } else if (next == at + 1 && clause_stops(items, at + 1)) {
        next = others_of(items, back_over_links(items, at)); /* "and the second only 1" */
        next = item_is(items, next, ITEM_ALL) ? back_over_links(items, next) : next;
    }
    if (next == at + 1 ||
        !(item_is(items, next, ITEM_OTHER) || item_is(items, next, ITEM_ORDINAL) ||
          (next < items->count && items->list[next].one))) {
        return false;
    }
    *state = (struct state){
        .is_lights = true, .lights = items->list[at].value / 1000, .from = at, .count = 1};
    return true;
}
