#include "activity.h"

#include "corrections.h"
#include "subjects.h"

static bool
is_now(const struct items *items, size_t at, const struct told *told)
{
    size_t from = clause_start(items, at), named;
    /* charging overnight is no sleep */
    static const char nights[] = " overnight all through thru the until till til toda ";

    if ((told->kind == TOLD_CHARGING || told->kind == TOLD_TRIP || told->kind == TOLD_FLIGHT) &&
        token_among(items->tokens, items->list[at].from, nights)) {
        return false;
    }
    if (token_among(items->tokens, items->list[at].from, " overnight all ") &&
        token_among(items->tokens, tokens_back(items->list[at].from, 1),
                    " charged charging charge charges plugged it them on ")) {
        return false; /* "the one he charged overnight" */
    }
    if (told->kind == TOLD_WATCH &&
        tokens_between_among(items->tokens, tokens_back(items->list[at].from, 2),
                             items->list[at].to,
                             " fall falls falling nod nods nodding quedo queda doze ")) {
        return false; /* "text me, I fall asleep with the tv on" */
    }
    named = items_find(items, from, at, ITEM_NAMED);
    if (tokens_between_among(items->tokens, tokens_back(items->list[at].from, 2),
                             items->list[at].from, " wont cant doesnt dont never didnt couldnt ")) {
        return false; /* "the kids wont sit still" */
    }
    if (item_text(items, at, "sleeps") && item_free_number(items, at + 1)) {
        return false; /* a house that "sleeps 8" */
    }
    if (token_among(items->tokens, items->list[at].to, " like como ")) {
        return false; /* "I sleep like a log" */
    }
    if (token_among(items->tokens, tokens_back(items->list[at].from, 1), " the a my his her ") &&
        token_among(items->tokens, tokens_back(items->list[at].from, 2),
                    " behind under beside by near ")) {
        return false; /* "the tank is behind the couch" */
    }
    if (item_text(items, at, "sitting") &&
        (item_is(items, at + 1, ITEM_POWER) || item_is(items, at + 2, ITEM_POWER))) {
        return false; /* batteries on the charger */
    }
    return !item_is(items, at - 1, ITEM_NOT) && !item_is(items, at + 1, ITEM_EARLIER) &&
           (named == at || at - named > 4 || items->list[named + 1].is != ITEM_NUMBER ||
            !token_among(
                items->tokens, items->list[named].to - 1,
                " room rm cuarto habitacion apt cabin suite bed cama unit ")); /* "room 9 is asleep"
                                                                                */
}

static void
take_activity(struct told *told, enum activity activity)
{
    told->drives = activity == ACTIVITY_COUNT;
    told->has_activity = !told->drives;
    told->activity = told->drives ? ACTIVITY_REST : activity;
}

/* "Sitting at the card table"; not "sitting at about 60", which a battery does. */
static bool
sits(const struct items *items, size_t at)
{
    size_t place = over_links(items, at + 1), first = items->list[at].from;

    if (token_among(items->tokens, first, " setting settin ") &&
        token_among(items->tokens, tokens_back(first, 1), " just im been hes shes am ") &&
        token_among(items->tokens, first + 1, " on in by at under ") &&
        token_among(items->tokens, first + 2, " the my our a here his her ")) {
        return true; /* "im just setting on the porch" */
    }
    return item_text(items, at, "sitting") && item_is(items, at, ITEM_SHOWS) &&
           (item_is(items, place, ITEM_WORD) || item_is(items, place, ITEM_GOING) ||
            item_is(items, place, ITEM_EVENT));
}

/* "At rest"; not "the rest of", nor a rest stop. */
static bool
rests(const struct items *items, size_t at)
{
    return item_text(items, at, "rest") && !item_text(items, at + 1, "of") &&
           !token_among(items->tokens, items->list[at].from + 1, " stop area ") &&
           !item_text(items, at - 1, "the");
}

/* "Descansando, dormidito", "nap in the recliner": who sleeps rests as well. */
static bool
rests_asleep(const struct items *items, size_t at, const struct told *told)
{
    return told->has_activity && told->activity == ACTIVITY_SLEEP &&
           token_among(items->tokens, items->list[at].from,
                       " resting rest relaxing descansando descansa reposando reposa chair "
                       "recliner couch sofa armchair sillon reclinable in on en ");
}

void
activity_read(const struct items *items, struct told *told)
{
    size_t at;

    for (at = 0; at < items->count; at++) {
        if (sits(items, at) || rests(items, at)) {
            take_activity(told, ACTIVITY_REST);
        } else if (item_is(items, at, ITEM_ACTIVITY) && !items->list[at].spent &&
                   is_now(items, at, told) && !rests_asleep(items, at, told)) {
            take_activity(told, (enum activity)item_value(items, at, ITEM_ACTIVITY));
        }
    }
}

bool
activity_drives_meanwhile(const struct items *items)
{
    return tokens_have(items->tokens, "im driving|were driving|we are driving|i am driving|while "
                                      "driving|while i drive|while we drive|hes driving|shes "
                                      "driving|voy manejando|vamos manejando|mientras manejo|"
                                      "mientras manejamos|voy conduciendo|vamos conduciendo|"
                                      "mientras conduzco|mientras conducimos|va manejando");
}

bool
activity_is_apart(const struct items *items)
{
    size_t at, i, to;

    for (at = 0; at < items->count; at++) {
        int activity = item_value(items, at, ITEM_ACTIVITY);

        if (activity != ACTIVITY_SLEEP && activity != ACTIVITY_REST) {
            continue;
        }
        to = clause_end(items, at);
        for (i = clause_start(items, at); i < to && !item_in(items, i, UNIT_MINUTE); i++) {
        }
        if (i == to) {
            return true;
        }
    }
    return false;
}
