/* What the unit runs or charges from: see times.h. */
#include "times.h"

#include "power_denied.h"

static enum power_source
source_of(int word)
{
    switch (word) {
    case POWER_WORD_BATTERY:
    case POWER_WORD_OUT:
        return POWER_SOURCE_BATTERY;
    case POWER_WORD_WALL:
    case POWER_WORD_BACK:
        return POWER_SOURCE_WALL;
    case POWER_WORD_CAR:
        return POWER_SOURCE_CAR;
    default:
        return POWER_SOURCE_NONE;
    }
}

/* "60 on battery B" */
static bool
is_named_battery(const struct items *items, size_t at)
{
    size_t after = items->list[at].to;

    if (item_text(items, at, "con") &&
        (item_is(items, at + 1, ITEM_AT) || (at + 1 < items->count && items->list[at + 1].spent))) {
        return true; /* "con la pila a dos tercios" */
    }
    return item_text(items, at, "on") && item_value(items, at, ITEM_POWER) == POWER_WORD_BATTERY &&
           (item_is(items, at - 1, ITEM_LIGHT) || item_in(items, at - 1, UNIT_PERCENT) ||
            token_among(items->tokens, after, " a b c ") || item_is(items, at + 1, ITEM_NAMED) ||
            (item_is(items, at + 1, ITEM_NUMBER) && items->list[at + 1].spent));
}

/* "to charge it off the wall": what it comes from; else "off the wall" is away from it. */
static bool
charges_off_wall(const struct items *items, size_t at)
{
    return item_text(items, at, "off") &&
           token_among(items->tokens, items->list[at].to - 1, " wall outlet mains plug socket ");
}

/* "outlet by the bed" */
static bool
is_house_outlet(const struct items *items, size_t at)
{
    static const char places[] = " bed bedside nightstand house home hotel motel room kitchen "
                                 "hallway garage porch counter couch desk sofa casa hotel cuarto "
                                 "cama sala cocina recamara buro mesita bathroom bath lobby den "
                                 "basement laundry bano pasillo lavanderia cabin condo living ";
    size_t to = sentence_end(items, at);

    return item_value(items, at, ITEM_POWER) == POWER_WORD_PLUG &&
           token_among(items->tokens, items->list[at].to - 1,
                       " outlet socket enchufe contacto toma ") &&
           (items_have_word(items, at, at + 5 < to ? at + 5 : to, places) ||
            token_among(items->tokens, tokens_back(items->list[at].to, 2), places));
}

static bool
has_power_word(const struct items *items, enum power_word word)
{
    size_t at;

    for (at = 0; at < items->count; at++) {
        if (item_value(items, at, ITEM_POWER) == (int)word) {
            return true;
        }
    }
    return false;
}

/* "not plugged in because the socket is broken": what it runs from, where no way is spoken of. */
static bool
is_not_plugged_in(const struct items *items, size_t at)
{
    return item_value(items, at, ITEM_POWER) == POWER_WORD_NONE &&
           items->list[at].to == items->list[at].from + 3 &&
           token_is(items->tokens, items->list[at].from, "not") &&
           token_is(items->tokens, items->list[at].from + 1, "plugged");
}

/* "3 hours (no power)": of the place, and no outage. */
static bool
is_place_without(const struct items *items, size_t at)
{
    return item_value(items, at, ITEM_POWER) == POWER_WORD_OUT &&
           token_among(items->tokens, items->list[at].from, " no without sin ");
}

void
power_read(const struct items *items, struct told *told)
{
    bool charging = told->kind == TOLD_CHARGING;
    size_t at;

    if (told->kind == TOLD_TRIP && told->since_min > 0) {
        told->on_power =
            has_power_word(items, POWER_WORD_BATTERY) ? POWER_SOURCE_BATTERY : POWER_SOURCE_NONE;
        return;
    }
    if (!charging && told->kind != TOLD_HOURS_LEFT && told->kind != TOLD_BATTERY_LIFE &&
        told->kind != TOLD_WATCH) {
        return;
    }
    for (at = 0; at < items->count; at++) {
        enum power_source source = source_of(item_value(items, at, ITEM_POWER));

        if (is_named_battery(items, at) ||
            (told->kind == TOLD_WATCH && item_text(items, at, "unplug"))) {
            continue; /* "remind me to unplug" */
        }
        if (charging && (charges_off_wall(items, at) || is_house_outlet(items, at))) {
            source = POWER_SOURCE_WALL;
        }
        if (told->kind == TOLD_HOURS_LEFT && is_not_plugged_in(items, at)) {
            source = POWER_SOURCE_BATTERY;
        }
        if (told->leg_count > 0 && is_place_without(items, at)) {
            continue;
        }
        if (source != POWER_SOURCE_NONE && charging == (source != POWER_SOURCE_BATTERY) &&
            !(source != POWER_SOURCE_BATTERY && power_is_denied(items, at))) {
            told->on_power = source; /* the last telling */
        }
    }
    if (charging && told->on_power == POWER_SOURCE_NONE && told->leg_count == 1 &&
        !lexicon_cue(items->tokens, CUE_ENOUGH)) {
        told->on_power = told->legs[0].power; /* "stopped 45 min, there is a plug on the wall" */
    }
    if (charging && told->on_power == POWER_SOURCE_NONE &&
        tokens_have(
            items->tokens,
            "on the car|off the car|in the car|in my car|in our car|in the truck|in the van|"
            "con el auto|con el carro|con el coche|con la camioneta|en el carro|en el coche|en el "
            "auto|en la camioneta|"
            "en mi carro|in the rv|en la troca|en la van|en el camper|"
            "en su carro|en nuestro carro|in his truck|in her car|in his car|"
            "in the suv|in the jeep|in the camper|in the minivan")) {
        told->on_power = POWER_SOURCE_CAR;
    }
}
