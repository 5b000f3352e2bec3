#include "settings_each.h"

#include "beside_numbers.h"

enum { PAIRS_MAX = 6, REACH = 4, TENTHS_MAX = 100 };

/* A setting and the activity that it is for. */
struct pair {
    size_t number, activity; /* items */
};

struct pairs {
    struct pair list[PAIRS_MAX];
    size_t count;
};

static bool
may_be_setting(const struct items *items, size_t at)
{
    const struct item *item = &items->list[at];

    return item_free_number(items, at) && item->value > 0 && item->value <= TENTHS_MAX * 100 &&
           item->value % 100 == 0 && !item->negative && !item->ordinal && !item->times &&
           !item->fraction && !item_is(items, at + 1, ITEM_HOMEWARD) &&
           !(item_is(items, at - 1, ITEM_GOING) &&
             tells_length_before(items, at)); /* "drive 2 hours, hike 3" */
}

/* What may stand between the two: "when I", "while", "for", "at", "cuando". */
static bool
is_between(const struct items *items, size_t at)
{
    return item_is(items, at, ITEM_LINK) || item_is(items, at, ITEM_AT) ||
           item_is(items, at, ITEM_USE) || item_is(items, at, ITEM_WILL_BE) ||
           item_is(items, at, ITEM_SETTING) || item_is(items, at, ITEM_BY) ||
           token_among(
               items->tokens, items->list[at].from,
               " during durante when if while cuando si al para mientras = : - ( i he she ");
}

/* "at home", "en casa", "during the day": where or when one rests, if another setting is told for
 * walking */
static bool
is_home(const struct items *items, size_t at)
{
    return token_among(items->tokens, items->list[at].to - 1,
                       " home house casa indoors inside day daytime dia ");
}

/* What one does there; -1 if nothing is told. */
static int
activity_at(const struct items *items, size_t at)
{
    if (item_value(items, at, ITEM_DAYPART) == DAYPART_NIGHT) {
        return ACTIVITY_SLEEP; /* "3 at night" */
    }
    return is_home(items, at) && !item_is(items, at, ITEM_ACTIVITY)
               ? (int)ACTIVITY_REST
               : item_value(items, at, ITEM_ACTIVITY);
}

/* The activity that a number is told with behind it; items->count if there is none. */
static size_t
activity_behind(const struct items *items, size_t at)
{
    size_t i;

    for (i = at + 1; i < items->count && i <= at + REACH; i++) {
        if (activity_at(items, i) >= 0) {
            return i;
        }
        if (!is_between(items, i)) {
            break;
        }
    }
    return items->count;
}

/* The same, before it. */
static size_t
activity_before(const struct items *items, size_t at)
{
    size_t i;

    for (i = at; i > 0 && at - i < REACH; i--) {
        if (activity_at(items, i - 1) >= 0) {
            return i - 1;
        }
        if (!is_between(items, i - 1)) {
            break;
        }
    }
    return items->count;
}

/* All pairs, each read the same way: "3 walking, 2 sitting" or "walking 3, sitting 2". */
static struct pairs
find_pairs(const struct items *items, size_t (*find)(const struct items *, size_t))
{
    struct pairs pairs = {0};
    size_t at;

    for (at = 0; at < items->count && pairs.count < PAIRS_MAX; at++) {
        size_t activity = may_be_setting(items, at) ? find(items, at) : items->count;

        if (activity < items->count) {
            pairs.list[pairs.count++] = (struct pair){at, activity};
        }
    }
    return pairs;
}

static bool
is_paired(const struct pairs *pairs, size_t at)
{
    size_t i;

    for (i = 0; i < pairs->count; i++) {
        if (pairs->list[i].activity == at) {
            return true;
        }
    }
    return false;
}

/* True if some other words of the text tell the activity of the pair. */
static bool
is_asked(const struct items *items, const struct pairs *pairs, const struct pair *pair)
{
    int activity = activity_at(items, pair->activity);
    size_t at;

    for (at = 0; at < items->count; at++) {
        if (activity_at(items, at) == activity && !is_paired(pairs, at)) {
            return true;
        }
    }
    return false;
}

static bool
differ(const struct items *items, const struct pairs *pairs)
{
    return pairs->count >= 2 && activity_at(items, pairs->list[0].activity) !=
                                    activity_at(items, pairs->list[1].activity);
}

static void
take(struct items *items, const struct pairs *pairs, struct told *told)
{
    bool asked = false;
    size_t i;

    for (i = 0; i < pairs->count; i++) {
        asked = asked || is_asked(items, pairs, &pairs->list[i]);
    }
    for (i = 0; i < pairs->count; i++) {
        int tenths = items->list[pairs->list[i].number].value / 100;

        if ((!asked || is_asked(items, pairs, &pairs->list[i])) &&
            (!told->has_setting || tenths > told->setting_tenths)) {
            told->has_setting = true;
            told->setting_tenths = tenths;
        }
    }
    for (i = 0; i < pairs->count; i++) {
        items_spend(items, pairs->list[i].number, 1);
        items_spend(items, pairs->list[i].activity, 1);
    }
}

void
settings_of_each(struct items *items, struct told *told)
{
    struct pairs behind = find_pairs(items, activity_behind);
    struct pairs before = find_pairs(items, activity_before);

    if (differ(items, &before) && before.count >= behind.count) {
        take(items, &before, told);
    } else if (differ(items, &behind)) {
        take(items, &behind, told);
    }
}

void
setting_of_one(struct items *items, struct told *told)
{
    struct pairs pairs = find_pairs(items, activity_behind);
    size_t number;

    if (pairs.count == 0) {
        pairs = find_pairs(items, activity_before); /* "pero para la caminata 3" */
    }
    if (pairs.count != 1 || !is_asked(items, &pairs, &pairs.list[0])) {
        return;
    }
    number = pairs.list[0].number;
    if (told->has_setting ||
        token_among(items->tokens, items->list[number].to, " when while if cuando si mientras ")) {
        told->has_setting = true;
        told->setting_tenths = items->list[number].value / 100;
        items_spend(items, number, 1);
    }
}
