#include "asked_states.h"

#include "clocks.h"

enum { PHRASE_REACH = 7 };

/* "goes dead", "runs empty": what will be */
static bool
is_to_come(const struct items *items, size_t at)
{
    size_t first = items->list[at].from;

    return item_is(items, at, ITEM_CHARGE) && first > 0 &&
           token_among(items->tokens, first - 1, " goes go going gets runs turns becomes ");
}

/* "a dead car", "an empty bus" */
static bool
is_of_vehicle(const struct items *items, size_t at, size_t after)
{
    return item_is(items, at, ITEM_CHARGE) && item_is(items, after, ITEM_GOING) &&
           token_among(items->tokens, items->list[after].from,
                       " car van truck bus jeep suv scooter ");
}

/* "how many hours till an empty one's full": "full" is said of the empty one, and is to come. */
static bool
is_of_empty_one(const struct items *items, size_t at)
{
    size_t before = at;

    while (before > 0 && item_is(items, before - 1, ITEM_LINK)) {
        before--;
    }
    return item_is(items, at, ITEM_FULL) && before > 0 && item_is(items, before - 1, ITEM_CHARGE) &&
           clause_start(items, before - 1) == clause_start(items, at) &&
           items_have_word(items, clause_start(items, at), before, " till til until before when ");
}

/* "which one is full", "how do I know if it is full", "saber si esta llena", "cual esta vacia" */
static bool
is_which_or_whether(const struct items *items, size_t at)
{
    static const char knowing[] = " know tell see check sure say saber ver se sabe sabes checar "
                                  "checo reviso revisar distingo digo decir noto idea ve ven nota ";
    size_t from = items->list[sentence_start(items, at)].from, first = items->list[at].from, i;

    for (i = first; i > from && first - i < PHRASE_REACH; i--) {
        size_t word = i - 1;

        if (token_among(items->tokens, word, " , : and y , but pero ") &&
            !token_among(items->tokens, word + 1, " cual cuales which ")) {
            return false;
        }
        if (token_among(items->tokens, word, " cual cuales ") &&
            !token_among(items->tokens, tokens_back(word, 1), " la las lo el ")) {
            return true;
        }
        if (token_is(items->tokens, word, "which") &&
            (word == from || token_among(items->tokens, word - 1, knowing) ||
             token_is(items->tokens, word - 1, "and"))) {
            return true;
        }
        if (token_is(items->tokens, word, "whether") ||
            (token_among(items->tokens, word, " if si ") && word > from &&
             !item_is(items, at + 1, ITEM_BATTERY) &&
             (at == 0 || items->list[at - 1].is != ITEM_NUMBER) && /* "know if 2 full will do" */
             token_among(items->tokens, word - 1, knowing)) ||
            tokens_phrase_at(items->tokens, tokens_back(word, 2), "para saber que") == 3) {
            return true;
        }
    }
    return false;
}

/* "full or empty?", "llena o no" */
static bool
is_one_of_two(const struct items *items, size_t at, size_t after)
{
    bool word = item_is(items, at, ITEM_FULL) || item_is(items, at, ITEM_CHARGE);
    size_t before = items->list[at].from;

    return word &&
           ((token_among(items->tokens, items->list[after - 1].to, " or o ") &&
             (item_is(items, after + 1, ITEM_FULL) || item_is(items, after + 1, ITEM_CHARGE) ||
              token_among(items->tokens, items->list[after - 1].to + 1, " no not "))) ||
            (before > 1 && token_among(items->tokens, before - 1, " or o ") && at > 1 &&
             (item_is(items, at - 2, ITEM_FULL) || item_is(items, at - 2, ITEM_CHARGE))));
}

/* "is that 40 %?", "eso es la mitad?": what a gauge means */
static bool
is_meaning(const struct items *items, size_t at)
{
    size_t from = clause_start(items, at), to = sentence_end(items, at), i;

    if (!items_have_word(items, to, to + 1, " ? ")) {
        return false;
    }
    for (i = items->list[from].from; i < items->list[at].from; i++) {
        if (tokens_phrase_at(items->tokens, i,
                             "eso es|es eso|is that|does that mean|that means|is it like|"
                             "quiere decir|significa|seria eso|eso seria|ya es|means its") > 0) {
            return true;
        }
    }
    return false;
}

/* "from 55 to 80, just 80", "de 50 a 85, nada mas 85": the goal once more */
static bool
is_goal_again(const struct items *items, size_t at)
{
    size_t first = items->list[at].from, i;

    first -= first > 0 && token_among(items->tokens, first - 1, " to a hasta al ") ? 1 : 0;
    if (first == 0 || !token_among(items->tokens, first - 1, " just only nomas solo mas no ") ||
        !(lexicon_cue(items->tokens, CUE_CHARGING) || tokens_have(items->tokens, "cuanto falta"))) {
        return false;
    }
    for (i = at; i > 1; i--) {
        if (items->list[i - 1].spent && items->list[i - 1].value == items->list[at].value &&
            (item_is(items, i - 2, ITEM_TO) || item_text(items, i - 2, "al") ||
             item_text(items, i - 2, "a"))) {
            return true;
        }
    }
    return false;
}

/* "how long till my 2 are charged up", "para que mis 2 esten llenas" */
static bool
is_how_long_till(const struct items *items, size_t at)
{
    size_t from = clause_start(items, at), first = items->list[at].from, i;

    if (!item_is(items, at, ITEM_FULL) || first == 0 ||
        !(token_among(items->tokens, first, " are is be get gets ") ||
          token_among(items->tokens, first - 1,
                      " are is be get gets both all esten este queden quede ")) ||
        !items_have_word(items, from, at, " long cuanto time when hours falta ")) {
        return false;
    }
    for (i = first; i > items->list[from].from + 1 && first - i < PHRASE_REACH; i--) {
        if (token_among(items->tokens, i - 1, " till til until hasta ") ||
            tokens_phrase_at(items->tokens, i - 2, "para que|a que") == 2) {
            return true;
        }
    }
    return false;
}

/* "instead of 3 full ones we have 1", "should have been 2 full": nobody has them */
static bool
is_instead(const struct items *items, size_t at)
{
    static const char had[] = "instead of|rather than|should have been|shouldve been|should have|"
                              "was supposed to be|were supposed to be|supposed to have|en vez de|"
                              "en lugar de|en vez de tener|en lugar de tener|en vez de traer|"
                              "deberian ser|debian ser|tenian que ser|if i had|if we had|if he "
                              "had|if she had|si tuviera|si tuvieramos|promised|promised us|"
                              "promised me|prometieron|nos prometieron|me prometieron|wish i had|"
                              "wish we had|ojala tuviera";
    size_t from = items->list[clause_start(items, at)].from, first = items->list[at].from, i;

    for (i = first; i > from && first - i < PHRASE_REACH; i--) {
        size_t taken = tokens_phrase_at(items->tokens, i - 1, had);

        if (taken > 0 && i - 1 + taken <= first && first - (i - 1 + taken) <= 2) {
            return true;
        }
        if (token_among(items->tokens, i - 1, " but pero and y its ")) {
            return false;
        }
    }
    return false;
}

/* "at 20 it beeps", "it beeps at 10", "stop at 20", "parar en 20", "happy with 80": a bound that is
 * watched for or would do */
static bool
is_mark(const struct items *items, size_t at, size_t after)
{
    static const char before[] =
        "beeps at|beep at|chirps at|alarms at|warns at|warns me at|pita a|pita al|pita en|pita al "
        "llegar a|suena a|suena al|suena en|stop at|quit at|swap at|swap it at|switch at|change it "
        "at|happy with|be fine with|settle for|parar en|paro en|cambiar en|la cambio en|cambio a "
        "los|conformo con|con tal de llegar a";
    static const char behind[] =
        "it beeps|it chirps|it warns|it alarms|it starts beeping|pita|suena|"
        "empieza a pitar|me conformo|me basta|me es suficiente";
    size_t first = items->list[at].from, i;

    if (item_is(items, at, ITEM_CHARGE) || item_is(items, at, ITEM_FULL)) {
        return false;
    }
    for (i = 1; i <= 5 && i <= first; i++) {
        if (tokens_phrase_at(items->tokens, first - i, before) == i) {
            return true;
        }
    }
    return tokens_phrase_at(items->tokens, items->list[after - 1].to, behind) > 0;
}

/* "will i wake up to a dead machine" */
static bool
is_feared(const struct items *items, size_t at)
{
    static const char comes[] =
        "wake up to a|wake up to an|wake to a|waking up to a|wake up with a|"
        "end up with a|ending up with a|be left with a|be stuck with a|"
        "despertar con la|despertarme con la|amanecer con la|"
        "quedarme con la|quedarnos con la";
    size_t first = items->list[at].from, back;

    for (back = 3; item_is(items, at, ITEM_CHARGE) && back <= 5 && back <= first; back++) {
        if (tokens_phrase_at(items->tokens, first - back, comes) == back ||
            tokens_phrase_at(items->tokens, first - back, comes) + 1 == back) {
            return true;
        }
    }
    return false;
}

/* "for 6 am all 3 full: one is at 10 ..", "para manana a las 6 las 3 llenas": what all should be */
static bool
is_due_for_all(const struct items *items, size_t at)
{
    size_t from = sentence_start(items, at), before = at;
    bool all = false;

    while (before > from &&
           (item_is(items, before - 1, ITEM_LINK) || item_is(items, before - 1, ITEM_BATTERY) ||
            item_is(items, before - 1, ITEM_BOTH) || item_is(items, before - 1, ITEM_ALL) ||
            items->list[before - 1].is == ITEM_NUMBER)) {
        before--;
        all = all || item_is(items, before, ITEM_BOTH) || item_is(items, before, ITEM_ALL) ||
              (items->list[before].is == ITEM_NUMBER &&
               token_among(items->tokens, tokens_back(items->list[before].from, 1),
                           " las all the mis my "));
    }
    while (all && before > from && tells_half_of_day(items, before - 1)) {
        before--;
    }
    return all && item_is(items, at, ITEM_FULL) && before > from &&
           items->list[before - 1].is == ITEM_CLOCK &&
           items_have_word(items, from, before, " para pa for by ");
}

bool
state_is_asked(const struct items *items, size_t at, size_t after)
{
    return is_to_come(items, at) || is_of_vehicle(items, at, after) || is_of_empty_one(items, at) ||
           is_which_or_whether(items, at) || is_one_of_two(items, at, after) ||
           is_meaning(items, at) || is_goal_again(items, at) || is_how_long_till(items, at) ||
           is_instead(items, at) || is_feared(items, at) || is_due_for_all(items, at) ||
           is_mark(items, at, after);
}
