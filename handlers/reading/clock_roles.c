/* What a clock time is of: the nearest word before it that leads to one, else one behind it. */
#include "clocks.h"
#include "told.h"

enum { ROLE_REACH = 7 };

static enum clock_role
role_of(const struct items *items, size_t at)
{
    static const struct {
        enum item_is is;
        enum clock_role role;
    } roles[] = {
        {ITEM_NOW_IS, CLOCK_NOW},     {ITEM_UNTIL, CLOCK_UNTIL}, {ITEM_BY, CLOCK_BY},
        {ITEM_SINCE, CLOCK_THEN},     {ITEM_EVENT, CLOCK_EVENT}, {ITEM_DEPART, CLOCK_DEPART},
        {ITEM_THEN_LEFT, CLOCK_THEN}, {ITEM_WAS, CLOCK_THEN},    {ITEM_REMIND, CLOCK_REMIND},
        {ITEM_ARRIVE, CLOCK_ARRIVE},  {ITEM_POWER, CLOCK_EVENT},
    };
    size_t i;

    if (item_is(items, at, ITEM_WAS) && item_is(items, at - 1, ITEM_EVENT)) {
        return CLOCK_EVENT; /* "dinner was at 5:30" */
    }
    if (item_text(items, at, "make") && !item_is(items, at, ITEM_CORRECT) &&
        at + 1 < items->count && items->list[at + 1].is == ITEM_CLOCK) {
        return CLOCK_UNTIL; /* "can we make 5:30 pm" */
    }
    for (i = 0; i < sizeof roles / sizeof roles[0]; i++) {
        if (item_is(items, at, roles[i].is)) {
            return roles[i].role;
        }
    }
    return CLOCK_OF_NOTHING;
}

/* Of a word that stands so many pauses before the clock time. */
static enum clock_role
role_before(const struct items *items, size_t at, int pauses)
{
    enum clock_role role = role_of(items, at);

    return role == CLOCK_BY && pauses > 0 && item_text(items, at, "for")
               ? CLOCK_OF_NOTHING /* "plan for mom: 9 am leave" */
               : role;
}

/* "was on the wall til 8:40" */
static bool
was_plugged_in(const struct items *items, size_t at)
{
    size_t from = clause_start(items, at);

    return items_find(items, from, at, ITEM_WAS) < at &&
           items_find(items, from, at, ITEM_POWER) < at;
}

/* "make it til supper at 6 pm" */
static bool
leads_up_to(const struct items *items, size_t at)
{
    while (at > 0 && item_is(items, at - 1, ITEM_LINK)) {
        at--;
    }
    return item_is(items, at - 1, ITEM_UNTIL);
}

/* "will it be full at 5 pm", "llenas a las 6?", but no "was full at 9". */
static bool
is_wished_for(const struct items *items, size_t at)
{
    size_t from = sentence_start(items, at);

    return items_find(items, from, at, ITEM_WAS) == at &&
           (lexicon_cue(items->tokens, CUE_CHARGING) || items_any(items, ITEM_POWER)) &&
           (items_find(items, from, at, ITEM_WILL_BE) < at ||
            item_text(items, sentence_end(items, at), "?"));
}

/* "a las 5 ya estan llenas?": what is behind the time, from `next` on */
static bool
is_full_then(const struct items *items, size_t at, size_t next)
{
    while (item_is(items, next, ITEM_LINK) || item_is(items, next, ITEM_NOW)) {
        next++;
    }
    return item_is(items, next, ITEM_FULL) && clause_start(items, at) + 3 > at &&
           is_wished_for(items, next);
}

/* "the ball game starts at 1" */
static bool
is_begin_of_event(const struct items *items, size_t at)
{
    size_t from = clause_start(items, at), i;

    if (!token_among(items->tokens, items->list[at].from, " start starts empieza ")) {
        return false;
    }
    for (i = from; i < at; i++) {
        if (item_is(items, i, ITEM_EVENT) || item_value(items, i, ITEM_GOING) == LEG_WAIT) {
            return true;
        }
    }
    return false;
}

/* "her ride comes at 5:30, will it hold until then" */
static bool
is_lasted_until(const struct items *items)
{
    return tokens_have(items->tokens,
                       "hold until then|hold til then|hold till then|last until then|last til then|"
                       "last till then|make it until then|make it til then|make it till then|"
                       "hasta entonces|hasta esa hora|will i still have air|will i still have|"
                       "still have air|still have oxygen|will she still have|will he still have");
}

/* "can we make 5:30 with that" */
static bool
is_made(const struct items *items, size_t at)
{
    size_t first = items->list[at].from;

    return first > 1 && token_is(items->tokens, first - 1, "make") &&
           token_among(items->tokens, first - 2, " we i he she it they can will could ");
}

/* "power back on at 6 pm they say, will it hold", "la luz regresa a las 8. aguanto?" */
static bool
is_power_back(const struct items *items, size_t at)
{
    size_t first = items->list[at].from, from = items->list[sentence_start(items, at)].from, back;
    bool is_back = false;

    for (back = 1; back <= 5 && first >= from + back; back++) {
        is_back = is_back || token_among(items->tokens, first - back,
                                         " back regresa regrese vuelve vuelva viene ");
    }
    return is_back &&
           tokens_between_among(items->tokens, from, first,
                                " power electricity electric lights luz corriente ") &&
           (lexicon_cue(items->tokens, CUE_ENOUGH) ||
            tokens_have(items->tokens, "will it hold|it hold|will it last|ill last|aguanto|aguanta|"
                                       "alcanza|me dura|llego"));
}

/* "sleeping on 2, alarm goes at 6 am, will it last": it must until then; "2 dead ones, up at 6 am,
 * will both be full": they should be by then. */
static enum clock_role
role_of_waking(const struct items *items, size_t at)
{
    static const char wakes[] =
        "up at|alarm goes|alarm is|alarm is set|i get up|he gets up|she gets up|we get up|im up|"
        "i wake|he wakes|she wakes|me levanto|se levanta|nos levantamos|me despierto|se despierta|"
        "alarma suena|despertador suena";
    size_t first = items->list[at].from, back, i;

    for (back = 1;
         back <= 6 && back <= first && tokens_phrase_at(items->tokens, first - back, wakes) == 0;
         back++) {
    }
    if (back > 6 || back > first || lexicon_cue(items->tokens, CUE_WATCH)) {
        return CLOCK_OF_NOTHING;
    }
    for (i = 0; i < items->count && item_value(items, i, ITEM_ACTIVITY) != ACTIVITY_SLEEP; i++) {
    }
    return lexicon_cue(items->tokens, CUE_CHARGING) ? CLOCK_BY
           : i < items->count                       ? CLOCK_UNTIL
                                                    : CLOCK_OF_NOTHING;
}

/* By a word that stands behind the time. */
static enum clock_role
role_behind(const struct items *items, size_t at)
{
    size_t to = clause_end(items, at), i;

    for (i = at + 1; i < to && i < at + 5 && items->list[i].is != ITEM_CLOCK; i++) {
        if (item_is(items, i, ITEM_DEPART)) {
            return CLOCK_DEPART;
        }
        if (item_is(items, i, ITEM_WAS) || item_is(items, i, ITEM_THEN_LEFT)) {
            return CLOCK_THEN;
        }
        if (item_is(items, i, ITEM_NOW) && !item_text(items, i, "ya")) {
            return CLOCK_NOW;
        }
    }
    return is_lasted_until(items) ? CLOCK_UNTIL : CLOCK_OF_NOTHING;
}

enum clock_role
clock_role(const struct items *items, size_t at)
{
    size_t from = sentence_start(items, at), i;
    enum clock_role role = (enum clock_role)items->list[at].role;
    int pauses = 0;

    if (role != CLOCK_OF_NOTHING) {
        return role;
    }
    for (i = at + 1; tells_half_of_day(items, i) || item_is(items, i, ITEM_OCLOCK); i++) {
    }
    if (item_is(items, i, ITEM_NOW) && !item_text(items, i, "ya")) {
        return CLOCK_NOW;
    }
    if (is_made(items, at) || is_power_back(items, at)) {
        return CLOCK_UNTIL;
    }
    role = role_of_waking(items, at);
    if (role != CLOCK_OF_NOTHING) {
        return role;
    }
    if (is_full_then(items, at, i)) {
        return CLOCK_BY;
    }
    for (i = at; i > from && at - i < ROLE_REACH; i--) {
        if (items->list[i - 1].is == ITEM_CLOCK ||
            (items->list[i - 1].is == ITEM_PAUSE && pauses++ > 0)) {
            break;
        }
        if (item_is(items, i - 1, ITEM_POWER) && items_find(items, from, i, ITEM_REMIND) < i) {
            continue; /* "remind me to plug in at 10" */
        }
        if ((item_is(items, i - 1, ITEM_FULL) && is_wished_for(items, i - 1)) ||
            (item_is(items, i - 1, ITEM_WILL_BE) && lexicon_cue(items->tokens, CUE_CHARGING) &&
             !item_is(items, i - 1, ITEM_UNTIL) && i < at)) {
            return CLOCK_BY; /* "tiene que estar al cien a las 6" */
        }
        role = role_before(items, i - 1, pauses);
        if ((role == CLOCK_DEPART || role == CLOCK_EVENT) && is_lasted_until(items)) {
            return CLOCK_UNTIL;
        }
        if (role == CLOCK_DEPART && is_begin_of_event(items, i - 1)) {
            return CLOCK_EVENT;
        }
        if ((role == CLOCK_EVENT || role == CLOCK_DEPART) && leads_up_to(items, i - 1)) {
            return CLOCK_UNTIL;
        }
        if (role == CLOCK_UNTIL && was_plugged_in(items, i - 1)) {
            return CLOCK_THEN;
        }
        if (role != CLOCK_OF_NOTHING) {
            return role;
        }
    }
    return role_behind(items, at);
}
