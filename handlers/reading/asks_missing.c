/* What must be asked back: see asks.h. */
#include "asks.h"

/* "how long will these batteries go": without them it is the one in the unit. */
static bool
speaks_of_several(const struct items *items)
{
    size_t at;

    if (tokens_have(items->tokens, "several of|got several|have several|a few of|bunch of|"
                                   "got a few|have a few|tengo varias|tengo algunas|hay varias")) {
        return true;
    }
    for (at = 0; at < items->count; at++) {
        if (item_value(items, at, ITEM_BATTERY) == 2 || item_value(items, at, ITEM_OTHER) == 2 ||
            item_is(items, at, ITEM_ALL)) {
            return true;
        }
    }
    return false;
}

static void
missing_batteries(const struct items *items, const struct charges_read *charges, struct told *told)
{
    bool how_many_asked =
        lexicon_cue(items->tokens, CUE_HOW_MANY) && told->kind == TOLD_TRIP &&
        !tokens_have(items->tokens, "no se cuantas|no se cuantos|dont know how many|not sure how "
                                    "many|no idea how many|forgot how many");

    if (charges->several) {
        told->missing |= MISSING_HOW_MANY;
        return;
    }
    if (told->count > 0) {
        told->missing |= MISSING_CHARGE;
    } else if (!told_has_charge(told) && !how_many_asked && (told->missing & MISSING_CHARGE) == 0) {
        told->missing |= MISSING_CHARGE;
        told->missing |= speaks_of_several(items) ? (unsigned)MISSING_HOW_MANY : 0U;
    }
}

static void
missing_of_flight(struct told *told)
{
    bool told_minutes = told->flight_minutes > 0;
    size_t i;

    for (i = 0; i < told->leg_count; i++) {
        told_minutes = told_minutes || told->legs[i].kind == LEG_FLIGHT;
    }

    if (!told_minutes) {
        told->missing |= MISSING_FLIGHT_MINUTES;
    } else if (!told->flight_is_gate && !told->flight_is_air) {
        told->missing |= MISSING_FLIGHT_IS;
    }
}

static void
missing_of_cylinder(struct told *told)
{
    if (told->psi == 0 && told->bar == 0) {
        told->missing |= MISSING_PRESSURE;
    }
    if (told->size[0] == '\0') {
        told->missing |= MISSING_SIZE;
    }
    if (told->flow_tenths == 0 && (!told->has_mode || told->mode == MODE_CONTINUOUS)) {
        told->missing |= MISSING_FLOW;
    }
}

void
asks_missing(const struct items *items, const struct charges_read *charges, struct told *told)
{
    switch (told->kind) {
    case TOLD_HOURS_LEFT:
    case TOLD_CHARGING:
        missing_batteries(items, charges, told);
        break;
    case TOLD_TRIP:
        missing_batteries(items, charges, told);
        if (told->leg_count == 0) {
            told->missing |= MISSING_MINUTES;
        }
        break;
    case TOLD_FLIGHT:
        missing_of_flight(told);
        told->missing |=
            charges->several && items_any(items, ITEM_FULL) ? (unsigned)MISSING_HOW_MANY : 0U;
        break;
    case TOLD_CYLINDER:
        missing_of_cylinder(told);
        break;
    case TOLD_BATTERY_LIFE:
    case TOLD_WATCH:
        told->missing &= ~(unsigned)MISSING_CHARGE;
        break;
    case TOLD_NOTHING:
        told->missing = 0;
        break;
    }
}
