/* How one goes, where no word of a way is near: see span_ways.h. */
#include "span_ways.h"

#include "amounts.h"
#include "span_cues.h"

/* "el recorrido es de 5 km y camina a 2 km por hora" */
bool
span_is_walked(const struct items *items, const struct span *span)
{
    size_t to = sentence_end(items, span->at), i;

    if (span->pace == 0 || span->pace > WALK_MPH * 1000) {
        return false;
    }
    for (i = sentence_start(items, span->at); i < to; i++) {
        if (item_value(items, i, ITEM_ACTIVITY) == ACTIVITY_WALKING) {
            return true;
        }
    }
    return false;
}

/* "out 5 hours, mostly walking" */
bool
span_is_mostly_walked(const struct items *items, size_t at)
{
    size_t to = sentence_end(items, at), i;

    for (i = at + 1; i < to && !item_is_duration(items, i); i++) {
        if (item_value(items, i, ITEM_GOING) == LEG_HIKE &&
            token_among(items->tokens, items->list[i].from - 1, " mostly all mainly casi puro ")) {
            return true;
        }
    }
    return false;
}

/* "50 min each way, no car plug": what one rides in is told by its plug. */
bool
span_is_by_vehicle(const struct items *items, size_t at)
{
    static const char vehicles[] =
        " car truck van pickup suv jeep rv carro coche auto camioneta troca taxi ";
    bool both = item_is(items, at + 1, ITEM_EACH_WAY) || item_is(items, at + 1, ITEM_HOMEWARD) ||
                span_is_way_out(items, at);

    if (both && items_have_word(items, 0, items->count, vehicles)) {
        return true; /* "45 back. hooked to the truck both ways" */
    }
    return (item_is(items, at + 1, ITEM_EACH_WAY) || span_is_way_out(items, at) ||
            token_among(items->tokens, items->list[at].to, " to al hasta ")) &&
           items_have_word(items, sentence_start(items, at), sentence_end(items, at), vehicles);
}

/* "80 min each way to the doctor": how one gets there is not told, by nothing that is no car. */
bool
span_may_be_driven(const struct items *items, const struct span *span)
{
    size_t i;

    for (i = 0; i < items->count && item_value(items, i, ITEM_GOING) != LEG_OTHER &&
                item_value(items, i, ITEM_GOING) != LEG_HIKE;
         i++) {
    }
    return span->has_kind && span->kind == LEG_OTHER && i == items->count;
}

/* "the appointment is 2 hours": nothing else stands between */
bool
span_is_of_event(const struct items *items, size_t at)
{
    size_t before = span_first(items, at);

    while (before > 0 &&
           (item_is(items, before - 1, ITEM_LINK) || item_is(items, before - 1, ITEM_OF))) {
        before--;
    }
    return item_is(items, before - 1, ITEM_EVENT);
}

/* "45 minutes to the doctor, an hour there, 45 back in the truck": as one comes back one went. */
void
spans_as_one_comes_back(const struct items *items, struct spans *spans)
{
    size_t out, back;

    for (out = 0; out < spans->count; out++) {
        for (back = out + 1; span_may_be_driven(items, &spans->list[out]) && back < spans->count;
             back++) {
            if (spans->list[back].homeward && spans->list[back].kind == LEG_DRIVE &&
                spans->list[back].minutes == spans->list[out].minutes) {
                spans->list[out].kind = LEG_DRIVE;
            }
        }
    }
}
