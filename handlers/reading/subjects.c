/* Whose charge a state is: see subjects.h. */
#include "subjects.h"

#include <string.h>

#include "bare_numbers.h"
#include "counted.h"

enum { SUBJECT_REACH = 9, MANY_BATTERIES = 6, EMPTY_MAX = 10 };

static bool
is_passed_over(const struct items *items, size_t at)
{
    static const enum item_is passed[] = {
        ITEM_LINK, ITEM_AT,   ITEM_SHOWS,   ITEM_HEDGE,     ITEM_HAVE,    ITEM_ARTICLE,
        ITEM_OF,   ITEM_LEFT, ITEM_BATTERY, ITEM_WAS,       ITEM_NOW,     ITEM_ACTIVITY,
        ITEM_WORD, ITEM_SIGN, ITEM_POWER,   ITEM_THEN_LEFT, ITEM_CLOCK,   ITEM_SINCE,
        ITEM_PM,   ITEM_AM,   ITEM_FROM,    ITEM_USE,       ITEM_CLAIM,   ITEM_MINUS,
        ITEM_SAME, ITEM_FULL, ITEM_LASTS,   ITEM_DEPART,    ITEM_WILL_BE, ITEM_HEDGE_AFTER};
    size_t i;

    for (i = 0; i < sizeof passed / sizeof passed[0]; i++) {
        if (item_is(items, at, passed[i])) {
            return true;
        }
    }
    return false;
}

/* "both batteries: 70 %" */
static bool
tells_all(const struct items *items, size_t pause)
{
    size_t from = clause_start(items, pause);

    return items_find(items, from, pause, ITEM_BOTH) < pause &&
           items_find(items, from, pause, ITEM_ACTIVITY) == pause;
}

/* "the other", "the others", "two spares"; "the other's at 50" is one. */
static int
others_at(struct items *items, size_t at)
{
    const struct token *word = &items->tokens->list[items->list[at].to - 1];

    if (item_value(items, at, ITEM_OTHER) != 2 || word->end - word->start > strlen(word->text)) {
        return 1;
    }
    if (at == 0 || !is_count(items, at - 1)) {
        return SEVERAL;
    }
    items_spend(items, at - 1, 1);
    return items->list[at - 1].value / 1000;
}

/* "two spares both full", "3 batteries, all full": counted right before. */
static void
take_count_before(struct items *items, size_t at, struct group *group)
{
    while (at > 0 && (item_is(items, at - 1, ITEM_LINK) || item_is(items, at - 1, ITEM_BATTERY) ||
                      item_is(items, at - 1, ITEM_OTHER))) {
        at--;
    }
    if (at > 0 && is_count(items, at - 1) && items->list[at - 1].value > 1000 &&
        !is_label(items, at - 1) && !is_setting_number(items, at - 1)) {
        group->times = items->list[at - 1].value / 1000;
        items_spend(items, at - 1, 1);
    }
}

/* "two of them", "two are", "the three in the bag both say" */
static bool
is_plural_behind(const struct items *items, size_t here)
{
    size_t from = items->list[here].to, i;

    for (i = from; i < from + 6 && i < items->tokens->count; i++) {
        if (token_among(items->tokens, i,
                        " are were read say show have them others both all each estan marcan dicen "
                        "muestran tienen traen andan van quedan quedaron ")) {
            return true;
        }
        if (items->tokens->list[i].kind != TOKEN_WORD) {
            return false;
        }
    }
    return false;
}

/* A verb of telling stands between a number and a charge, and no battery that it could count. */
static bool
is_told_by_another(const struct items *items, size_t here, size_t charge)
{
    size_t i;

    if (item_text(items, here - 1, "las") || item_text(items, here - 1, "mis")) {
        return false; /* "las 3 estan a la mitad": they are what is told of */
    }
    if (items->list[here].value <= MANY_BATTERIES * 1000 && is_plural_behind(items, here)) {
        return false; /* "two are down to 20" */
    }
    for (i = here + 1; i < charge; i++) {
        if (item_is(items, i, ITEM_BATTERY) || item_is(items, i, ITEM_EACH) ||
            item_is(items, i, ITEM_ALL) || item_is(items, i, ITEM_OTHER)) {
            return false;
        }
    }
    return items_find(items, here + 1, charge, ITEM_SHOWS) < charge ||
           items_find(items, here + 1, charge, ITEM_CLAIM) < charge;
}

/* "one of those is at 60", "una de ellas" */
static bool
is_of_them(const struct items *items, size_t at)
{
    return tokens_phrase_at(
               items->tokens, items->list[at].from + 1,
               "of those|of them|of em|of these|of the two|of the three|of the full "
               "ones|of the|of my|de ellas|de esas|de las dos|de las tres|de las llenas|de "
               "esas dos") > 0;
}

/* "4 full, two are dead", "3 full but one is dead": it may be of those, so it is. */
static bool
follows_those_full(const struct items *items, size_t at)
{
    size_t end = at - 1, from;
    bool but = item_text(items, at - 1, "but") || item_text(items, at - 1, "pero");

    if (at < 3 || !(but || (items->list[at - 1].is == ITEM_PAUSE &&
                            token_among(items->tokens, items->list[at].to, " are estan ")))) {
        return false;
    }
    end -= item_is(items, end - 1, ITEM_BATTERY) ? 1 : 0;
    from = clause_start(items, end - 1);
    return end > 0 && item_is(items, end - 1, ITEM_FULL) && items->list[end - 1].spent &&
           !items_have_word(items, from, end, " are is estan esta ");
}

/* "had 4 full, two are dead now": what became of those, and no others. */
static bool
has_become_of_them(const struct items *items, size_t at, const struct state *state)
{
    static const char past[] = " had started began teniamos tenia empezamos empece traiamos traia ";
    size_t from = clause_start(items, at);

    return !state->is_lights && state->charge.high <= EMPTY_MAX &&
           (follows_those_full(items, at) ||
            items_have_word(items, at, clause_end(items, at), " now ya ahora ahorita already ") ||
            items_have_word(items, sentence_start(items, at), from, past) ||
            (token_among(items->tokens, items->list[at].to, " is are got esta estan ya ") &&
             items_have_word(items, sentence_start(items, at), at,
                             " had started began left brought salimos sali traiamos ")));
}

/* A number before a charge: a label, how many of them, or none of ours. */
static void
take_count(struct items *items, size_t here, struct group *group)
{
    size_t counts = here;

    if (items->list[here].value > 1000 && !is_label(items, here) &&
        is_told_by_another(items, here, group->state.from)) {
        return; /* "mi hija de 12 dice que marca 97": no twelve batteries */
    }
    if (token_among(items->tokens, items->list[here].from - 1, " at a ") &&
        !items->list[here].one && here > 0 && !item_is(items, here + 1, ITEM_BATTERY) &&
        !token_among(items->tokens, items->list[here].from, " couple pair par ")) {
        return; /* "I left home at 8 with 100", "charging since 4 with it at 10 percent": an hour */
    }
    if (items->list[here].from > 1 && token_is(items->tokens, items->list[here].from - 1, "las") &&
        token_is(items->tokens, items->list[here].from - 2, "a")) {
        return; /* "la puse a las 9 vacia" */
    }
    if (is_label(items, here)) {
        group->ordinal = items->list[here].value / 1000;
        group->named = true;
        items_spend(items, here, 1);
        return;
    }
    if (here > 1 && item_is(items, here - 1, ITEM_OF) && is_count(items, here - 2)) {
        counts = here - 2; /* "2 of my 3 batteries are full" */
    } else if (is_setting_number(items, here)) {
        return;
    }
    group->times = items->list[counts].value / 1000;
    group->named = true;
    group->of_them = group->of_them || is_of_them(items, counts) ||
                     has_become_of_them(items, counts, &group->state);
    items_spend(items, counts, 1);
}

void
subject_before(struct items *items, size_t at, struct group *group)
{
    size_t from = clause_start(items, at), i;
    bool plural = false, noun = false;

    if (from == at && item_text(items, at - 1, ":") && tells_all(items, at - 1)) {
        group->times = 2;
        group->named = true;
        return;
    }
    group->times = 1;
    group->of_them = item_text(items, at, "used"); /* "used up one" */
    for (i = at; i > from && at - i < SUBJECT_REACH; i--) {
        size_t here = i - 1;

        if (is_count(items, here)) {
            take_count(items, here, group);
            return;
        }
        if (items->list[here].spent && !item_is(items, here, ITEM_BATTERY)) {
            break;
        }
        if (group->state.is_lights && here + 1 == at && item_is(items, here, ITEM_ALL)) {
            continue; /* "all four lights" */
        }
        if (item_is(items, here, ITEM_BOTH) || item_is(items, here, ITEM_ALL) ||
            item_is(items, here, ITEM_EACH)) {
            group->times = item_is(items, here, ITEM_BOTH) ? 2 : ALL_OF_THEM;
            group->named = true;
            take_count_before(items, here, group);
            return;
        }
        if (item_text(items, here, "esta") && here > from &&
            (item_is(items, here - 1, ITEM_EACH) ||
             token_among(items->tokens, items->list[here].from - 1, " ellas esas "))) {
            continue; /* "cada bateria esta en 50": no "this one" */
        }
        if (item_is(items, here, ITEM_OTHER) || item_is(items, here, ITEM_ORDINAL)) {
            group->times = here > from && item_is(items, here - 1, ITEM_BOTH) &&
                                   item_is(items, here, ITEM_OTHER)
                               ? 2 /* "both spares" */
                               : others_at(items, here);
            group->subject = here;
            group->named = true;
            group->ordinal =
                item_is(items, here, ITEM_ORDINAL) ? item_value(items, here, ITEM_ORDINAL) : 0;
            return;
        }
        if (item_is(items, here, ITEM_ARTICLE) && here + 1 == at && !group->state.is_lights) {
            break; /* "left at 8 with a full battery" */
        }
        noun = noun || item_is(items, here, ITEM_BATTERY);
        plural = plural || item_value(items, here, ITEM_BATTERY) == 2;
        if (!is_passed_over(items, here)) {
            break;
        }
    }
    group->named = noun;
    group->times = plural ? SEVERAL : 1;
}

size_t
over_links(const struct items *items, size_t at)
{
    while (item_is(items, at, ITEM_LINK) || item_is(items, at, ITEM_ARTICLE)) {
        at++;
    }
    return at;
}

/* "80 and 50 both": told of each, and not of two more. */
static bool
follows_charge(const struct items *items, size_t at)
{
    size_t from = clause_start(items, at), i;

    for (i = from; i < at; i++) {
        if (item_in(items, i, UNIT_PERCENT) || item_is(items, i, ITEM_FULL) ||
            item_is(items, i, ITEM_HALF) || item_is(items, i, ITEM_CHARGE) ||
            (items->list[i].is == ITEM_NUMBER && items->list[i].value > BIG_MIN * 1000)) {
            return true;
        }
    }
    return false;
}

bool
is_told_of_all_together(const struct items *items, size_t at)
{
    return items_have_word(items, at, clause_end(items, at),
                           " between together total combined among entre juntas juntos ");
}

/* "on the other two", "on the two spares", "on two of them": how many; 0 if nothing tells. */
static int
others_behind(struct items *items, size_t at)
{
    size_t number = at + (item_is(items, at, ITEM_OTHER) ? 1 : 0);

    if (!is_count(items, number) || items->list[number].value == 1000 ||
        is_told_of_all_together(items, number) || item_is(items, number + 1, ITEM_LIGHT) ||
        item_is(items, number + 1, ITEM_UNIT) ||
        token_among(items->tokens, items->list[number].to,
                    " hours hour hrs hr minutes min mins horas hora minutos ") ||
        !(number > at || item_value(items, number + 1, ITEM_OTHER) == 2 ||
          (item_is(items, number + 1, ITEM_OF) &&
           token_among(items->tokens, items->list[number + 1].to, " them em those ellas esas ")))) {
        return 0;
    }
    items_spend(items, number, 1);
    return items->list[number].value / 1000;
}

/* "on 3" with its number at `at` + 1 */
static bool
is_on_so_many(const struct items *items, size_t at)
{
    return item_text(items, at, "on") && item_value(items, at, ITEM_AT) == AT_ON &&
           at + 1 < items->count && items->list[at + 1].is == ITEM_NUMBER &&
           items->list[at + 1].value <= MANY_BATTERIES * 1000 &&
           (clause_stops(items, at + 2) || item_is(items, at + 2, ITEM_AND));
}

/* "4 lights on 3, 2 on 1": on how many batteries; of "on 2, 3 on 1" the numbers may be labels, and
 * then it is one. 0 if `at`, behind the lights, tells no such thing: a lone "on 2" is a setting. */
static int
lights_on_so_many(struct items *items, size_t at)
{
    size_t other = at + 4;
    int here, there;

    if (!is_on_so_many(items, at)) {
        return 0;
    }
    if (!is_on_so_many(items, other) || items->list[at + 3].is != ITEM_NUMBER) {
        other = at > 3 ? at - 4 : at;
        if (other == at || !is_on_so_many(items, other) || items->list[at - 1].is != ITEM_NUMBER) {
            return 0;
        }
    }
    here = items->list[at + 1].value / 1000;
    there = items->list[other + 1].value / 1000;
    items_spend(items, at + 1, 1);
    return here + there == 3 ? 1 : here;
}

void
subject_behind(struct items *items, struct group *group)
{
    size_t after = group->state.from + group->state.count, next, las;
    bool noun = item_is(items, after, ITEM_BATTERY);
    int others;

    if (noun && item_value(items, after, ITEM_BATTERY) == 2 && group->times == 1 && !group->named) {
        group->times = SEVERAL;
    }
    after += noun ? 1 : 0;
    next = over_links(items, after);
    next += item_is(items, next, ITEM_AT) && item_value(items, next, ITEM_AT) != AT_AT ? 1 : 0;
    las = over_links(items, next);
    others = las > after && group->times == 1 ? others_behind(items, las) : 0;
    others = others == 0 && group->state.is_lights ? lights_on_so_many(items, after) : others;
    if (others > 0) {
        group->times = others;
        group->named = true;
    } else if (item_is(items, after, ITEM_EACH) || item_is(items, next, ITEM_EACH)) {
        size_t each = item_is(items, next, ITEM_EACH) ? next : after;
        size_t all = over_links(items, each + (item_is(items, each + 1, ITEM_OF) ? 2U : 1U));

        group->times = group->times > 1 ? group->times : ALL_OF_THEM;
        items_spend(items, each, 1);
        if (all > each + 1 && is_count(items, all)) { /* "half on each of the two" */
            group->times = items->list[all].value / 1000;
            items_spend(items, all, 1);
        }
    } else if (item_free_number(items, after) && items->list[after].times) {
        group->times = items->list[after].value / 1000;
        items_spend(items, after, 1);
    } else if (!group->named && las > after && is_count(items, las) &&
               token_is(items->tokens, items->list[las].from - 1, "las") &&
               (las + 1 >= items->count || clause_stops(items, las + 1))) {
        group->times = items->list[las].value / 1000; /* "al 100 las dos", "una luz en las dos" */
        items_spend(items, las, 1);
    } else if (item_is(items, next, ITEM_BOTH) && !follows_charge(items, group->state.from) &&
               (next > after || next + 1 >= items->count ||
                items->list[next + 1].is == ITEM_PAUSE || items->list[next + 1].is == ITEM_STOP)) {
        group->times = 2;
    } else if (group->state.is_lights && !group->named && next > after &&
               is_count(items, over_links(items, next)) &&
               item_value(items, over_links(items, next) + 1, ITEM_BATTERY) == 2) {
        next = over_links(items, next);
        group->times = items->list[next].value / 1000; /* "4 luces en las dos baterias" */
        items_spend(items, next, 1);
    } else if (next > after && item_is(items, next, ITEM_ALL) && is_count(items, next + 1)) {
        group->times = items->list[next + 1].value / 1000;
        items_spend(items, next + 1, 1);
    }
}
