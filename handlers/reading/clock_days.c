/* The half of the day and the day of a clock time, by the words around it. */
#include "clock_parts.h"
#include "clocks.h"
#include "told.h"

bool
tells_half_of_day(const struct items *items, size_t at)
{
    return item_is(items, at, ITEM_AM) || item_is(items, at, ITEM_PM) ||
           item_is(items, at, ITEM_DAYPART) || item_is(items, at, ITEM_TONIGHT);
}

static void
set_half(struct item *clock, bool afternoon)
{
    int hour = clock->value / 60;

    if (hour < 13) {
        clock->value = clock->value % 60 + (hour % 12 + (afternoon ? 12 : 0)) * 60;
    }
    clock->ampm = true;
}

/* Night runs from five in the afternoon to four in the morning. */
static void
take_half(const struct items *items, struct item *clock, size_t at)
{
    int part = item_value(items, at, ITEM_DAYPART);
    int hour = clock->value / 60 % 12;

    if (item_is(items, at, ITEM_AM)) {
        set_half(clock, false);
    } else if (item_is(items, at, ITEM_PM)) {
        set_half(clock, true);
    } else if (item_is(items, at, ITEM_TONIGHT) || part == DAYPART_NIGHT) {
        set_half(clock, hour >= 5);
    } else if (part >= 0) {
        set_half(clock, part != DAYPART_MORNING);
    }
}

/* "this evening", "esta tarde", "this morning" */
static bool
is_of_today(const struct items *items, size_t at)
{
    return (item_is(items, at, ITEM_DAYPART) || item_is(items, at, ITEM_AM)) &&
           (item_text(items, at, "this") || item_text(items, at, "esta"));
}

static void
take_day(const struct items *items, struct item *clock, size_t at)
{
    if (clock->day != NO_DAY) {
        return;
    }
    if (item_is(items, at, ITEM_TONIGHT) || is_of_today(items, at)) {
        clock->day = DAY_TODAY;
    } else if (item_is(items, at, ITEM_DAY)) {
        clock->day = item_value(items, at, ITEM_DAY);
    }
}

void
clock_complete(struct items *items, size_t at)
{
    struct item *clock = &items->list[at];
    size_t from = clause_start(items, at), to = clause_end(items, at), i;

    for (i = at + 1; i < to && (tells_half_of_day(items, i) || item_is(items, i, ITEM_DAY) ||
                                item_is(items, i, ITEM_OCLOCK) || item_is(items, i, ITEM_AT) ||
                                item_is(items, i, ITEM_HEDGE_AFTER));
         i++) {
        if (!clock->ampm) {
            take_half(items, clock, i);
        }
        take_day(items, clock, i);
    }
    for (; i < to && items->list[i].is != ITEM_CLOCK; i++) {
        take_day(items, clock, i);
        if (!clock->ampm && (item_is(items, i, ITEM_TONIGHT) || item_is(items, i, ITEM_DAYPART))) {
            take_half(items, clock, i);
        }
    }
    for (i = at; i > from && items->list[i - 1].is != ITEM_CLOCK; i--) {
        take_day(items, clock, i - 1);
        if (!clock->ampm &&
            (item_is(items, i - 1, ITEM_TONIGHT) || item_is(items, i - 1, ITEM_DAYPART) ||
             (item_is(items, i - 1, ITEM_AM) &&
              (!item_is(items, i - 1, ITEM_EARLIER) || /* "manana en la manana a las 7" */
               items_find(items, from, i - 1, ITEM_DAY) < i - 1) &&
              !item_text(items, i - 1, "am")))) { /* "am I ok till 4" */
            take_half(items, clock, i - 1);
        }
    }
    if (clock->day == NO_DAY && from > 0 && items->list[from - 1].is == ITEM_PAUSE &&
        from - clause_start(items, from - 1) <= 8) { /* "tomorrow, at 6 am" */
        for (i = clause_start(items, from - 1); i + 1 < from; i++) {
            take_day(items, clock, i);
        }
    }
}
