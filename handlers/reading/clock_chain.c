#include "clock_chain.h"

#include "amounts.h"
#include "clocks.h"

enum { CHAIN_MIN = 3, CHAIN_MAX = 8, HALF_DAY = 12 * 60 };

struct chain {
    size_t list[CHAIN_MAX]; /* items */
    size_t count;
};

static bool
may_be_link(enum clock_role role)
{
    return role == CLOCK_OF_NOTHING || role == CLOCK_DEPART || role == CLOCK_ARRIVE ||
           role == CLOCK_UNTIL || role == CLOCK_BY || role == CLOCK_EVENT;
}

/* All free clock times, which begin with a departure; none beside a length or a time of now. */
static struct chain
find_chain(const struct items *items)
{
    struct chain chain = {0};
    size_t at;

    for (at = 0; at < items->count; at++) {
        if (item_is_duration(items, at) && !items->list[at].spent) {
            return (struct chain){0};
        }
        if (items->list[at].is != ITEM_CLOCK || items->list[at].spent) {
            continue;
        }
        if (chain.count == CHAIN_MAX || !may_be_link(clock_role(items, at)) ||
            (chain.count == 0 && clock_role(items, at) != CLOCK_DEPART)) {
            return (struct chain){0};
        }
        chain.list[chain.count++] = at;
    }
    return chain;
}

static int
minutes_to(const struct item *from, const struct item *to)
{
    int round = from->ampm && to->ampm ? MINUTES_OF_DAY : HALF_DAY;

    return ((to->value - from->value) % round + round) % round;
}

/* Words for a way within [from, to) */
static bool
way_within(const struct items *items, size_t from, size_t to, enum leg_kind *kind)
{
    size_t at;

    for (at = from; at < to; at++) {
        int going = item_value(items, at, ITEM_GOING);

        if (going == LEG_DRIVE || going == LEG_HIKE) {
            *kind = (enum leg_kind)going;
            return true;
        }
    }
    return false;
}

/* One stays until then or leaves then; else one gets somewhere. */
static bool
is_stay(const struct items *items, size_t to)
{
    return clock_role(items, to) == CLOCK_DEPART ||
           token_among(items->tokens, items->list[to].from - 1,
                       " till til until thru through hasta ") ||
           token_among(items->tokens, items->list[to].from - 2, " hasta until till ");
}

bool
clock_chain_read(struct items *items, struct told *told, struct spans *spans)
{
    struct chain chain = find_chain(items);
    enum leg_kind way = LEG_OTHER;
    const struct item *first;
    size_t i;

    if (chain.count < CHAIN_MIN) {
        return false;
    }
    for (i = 0; i + 1 < chain.count; i++) {
        size_t from = chain.list[i], to = chain.list[i + 1];
        struct span span = {.at = to, .has_kind = true, .settled = true, .kind = LEG_WAIT};

        span.minutes = minutes_to(&items->list[from], &items->list[to]);
        if (!is_stay(items, to)) {
            (void)(way_within(items, i == 0 ? 0 : from, to, &way) ||
                   way_within(items, 0, items->count, &way));
            span.kind = way;
        }
        if (span.minutes > 0 && spans->count < TOLD_LEGS_MAX) {
            spans->list[spans->count++] = span;
        }
    }
    first = &items->list[chain.list[0]];
    if (first->ampm) {
        told->has_ready_by = true;
        told->ready_by = first->value;
        told->has_day = first->day != NO_DAY;
        told->day = told->has_day ? (enum told_day)first->day : DAY_TODAY;
    }
    for (i = 0; i < chain.count; i++) {
        items_spend(items, chain.list[i], 1);
    }
    return true;
}
