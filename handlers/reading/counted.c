#include "counted.h"

#include "beside_numbers.h"
#include "corrections.h"
#include "setting_leads.h"
#include "told.h"

enum { MOST_SPELT = 8 }; /* above it, a number in words is an hour: "a las diez llena" */

bool
is_count(const struct items *items, size_t at)
{
    const struct item *item = &items->list[at];

    return item_free_number(items, at) && item->value >= 1000 &&
           item->value <= (item->digits ? TOLD_BATTERIES_MAX : MOST_SPELT) * 1000 &&
           item->value % 1000 == 0 && item->value == item->high && !item->ordinal &&
           !item->negative && !item->fraction;
}

bool
is_label(const struct items *items, size_t at)
{
    bool singular = items->list[at].value > 1000 &&
                    (token_among(items->tokens, items->list[at].to, " is has says esta tiene ") ||
                     (item_text(items, at - 1, "la") && items->spanish));

    if (singular && !item_is(items, at - 1, ITEM_EACH) && !item_text(items, at - 1, "las") &&
        !(item_is(items, at - 1, ITEM_OF) && at > 1 && !is_label(items, at - 2))) {
        return true; /* "3 is half", "la dos al 80" */
    }
    return (item_value(items, at - 1, ITEM_BATTERY) == 1 || item_text(items, at - 1, "#") ||
            item_text(items, at - 1, "number") || item_text(items, at - 1, "numero")) &&
           !item_is(items, at + 1, ITEM_BATTERY) && !items->list[at].times;
}

bool
is_whole_of_part(const struct items *items, size_t at)
{
    return at > 1 && is_count(items, at) && item_is(items, at - 1, ITEM_OF) &&
           items->list[at - 2].is == ITEM_NUMBER && !items->list[at - 2].fraction &&
           items->list[at - 2].value < items->list[at].value && !is_label(items, at - 2) &&
           items->list[at].value <= MOST_SPELT * 1000 && !item_is(items, at + 1, ITEM_LIGHT) &&
           !item_is(items, at + 1, ITEM_UNIT) &&
           (item_is(items, at + 1, ITEM_BATTERY) || item_is(items, at + 1, ITEM_FULL) ||
            token_among(items->tokens, items->list[at].to,
                        " are is were at have has read say show ones estan tienen marcan "));
}

bool
is_setting_number(const struct items *items, size_t at)
{
    if (item_is(items, at + 1, ITEM_FULL) || item_is(items, at + 1, ITEM_CHARGE) ||
        item_value(items, at + 1, ITEM_BATTERY) == 2 ||
        (items->list[at].one && item_is(items, at + 1, ITEM_AT)) ||
        (items->list[at].one && item_is(items, at + 1, ITEM_BATTERY) && at > 1 &&
         item_is(items, at - 1, ITEM_MODE) && items->list[at - 2].is == ITEM_NUMBER)) {
        return false;
    }
    if (items->list[at].from > 1 &&
        token_among(items->tokens, items->list[at].from - 1, " steady speed notch position ") &&
        token_among(items->tokens, items->list[at].from - 2, " on at a en ")) {
        return true; /* "on steady 2" */
    }
    return is_behind_activity(items, at) || is_turned_by_person(items, at) ||
           item_text(items, at - 1, "set") || item_is(items, at - 1, ITEM_SETTING) ||
           item_is(items, at - 1, ITEM_MODE) || item_is(items, at - 1, ITEM_USE) ||
           (item_value(items, at - 1, ITEM_AT) == AT_ON &&
            !(item_is(items, at + 1, ITEM_BATTERY) && items->list[at].value == 1000));
}

/* The noun that a number counts, over words like "spare", "fresh". */
static bool
counts_batteries(const struct items *items, size_t at)
{
    size_t next = at + 1;

    while (next < at + 4 &&
           (item_is(items, next, ITEM_LINK) || item_is(items, next, ITEM_OTHER) ||
            item_is(items, next, ITEM_OF) || item_is(items, next, ITEM_FULL)) &&
           !item_is(items, next, ITEM_BATTERY)) {
        next++;
    }
    next += item_text(items, next, "-") ? 1 : 0; /* "the two-battery kit" */
    return item_is(items, next, ITEM_BATTERY) || item_value(items, at + 1, ITEM_OTHER) == 2;
}

/* "ya van a ser las 9" */
static bool
may_be_clock(const struct items *items, size_t at)
{
    size_t from = items->list[at].from;

    if (token_is(items->tokens, items->list[at].to, "que")) {
        return false; /* "de las cuatro que traigo" */
    }
    return items->list[at].value > 6 * 1000 ||
           (from > 1 && token_among(items->tokens, from - 2,
                                    " a son ser hasta para desde tipo como de eran sobre "));
}

/* "las 3", "all four", "I have three:": batteries, where nothing else is counted. */
static bool
counts_unnamed(const struct items *items, size_t at)
{
    bool are = item_text(items, at - 1, "son") && items->list[at].value <= 6 * 1000 &&
               !item_text(items, at + 1, "con") && !tells_length_before(items, at);
    bool lasts = item_value(items, at + 1, ITEM_LASTS) == 0 && items->list[at].value <= 6 * 1000 &&
                 !token_among(items->tokens, items->list[at + 1].to,
                              " month week year yr night time visit monday friday summer winter ");
    bool there =
        items->list[at].value <= 6 * 1000 && clause_stops(items, at + 1) &&
        items->list[at].from > 0 &&
        (tokens_phrase_at(items->tokens, tokens_back(items->list[at].from, 1), "theres|hay") == 1 ||
         tokens_phrase_at(items->tokens, tokens_back(items->list[at].from, 2),
                          "there are|there is|ive got|we got") == 2);
    bool led = there || (item_text(items, at + 1, "total") && items->list[at].value <= 6 * 1000) ||
               (item_is(items, at - 1, ITEM_LINK) &&
                ((item_text(items, at - 1, "las") && !may_be_clock(items, at)) ||
                 item_text(items, at - 1, "the") || item_text(items, at - 1, "mis") ||
                 (item_text(items, at - 1, "my") && items->list[at].value <= 6 * 1000))) ||
               item_is(items, at - 1, ITEM_ALL) ||
               (item_is(items, at - 1, ITEM_HAVE) && !item_text(items, at - 1, "had"));
    size_t next = at + 1;

    bool of_them = item_is(items, at + 1, ITEM_OF) && !item_text(items, at - 1, "for") &&
                   token_among(items->tokens, items->list[at + 1].to, " them em ellas these ");

    if (items->list[at].from > 0 && items->list[at].value <= 6 * 1000 && !items->list[at].one &&
        token_among(items->tokens, items->list[at].from - 1, " will would are ") &&
        token_among(items->tokens, items->list[at].to, " do be cover enough last suffice ")) {
        return true; /* "will 3 do" */
    }
    return (led || lasts || of_them || are) && !items->list[at].one &&
           (lasts || of_them || next >= items->count || items->list[next].is == ITEM_STOP ||
            items->list[next].is == ITEM_PAUSE || item_is(items, next, ITEM_LINK) ||
            item_is(items, next, ITEM_HAVE) || item_is(items, next, ITEM_WILL_BE) ||
            item_is(items, next, ITEM_AT) || item_is(items, next, ITEM_POWER) ||
            token_among(items->tokens, items->list[next].from,
                        " but pero total in en estan estaban marcan dicen juntas juntos "
                        "together combined are "));
}

static bool
is_on_top(const struct items *items, size_t at, bool states_before)
{
    size_t from = clause_start(items, at), to = clause_end(items, at);

    return states_before && (item_is(items, at - 1, ITEM_AND) || item_text(items, at + 1, "more") ||
                             items_find(items, from, to, ITEM_UNKNOWN) < to ||
                             item_is(items, at + 1, ITEM_OTHER) || item_text(items, at + 1, "mas"));
}

/* "the third I havent checked" */
static bool
is_unknown(const struct items *items, size_t at)
{
    size_t to = clause_end(items, at), i;

    for (i = at + 1; i < to && i < at + 8 && !item_is(items, i, ITEM_AND); i++) {
        if (item_is(items, i, ITEM_UNKNOWN)) {
            return true;
        }
    }
    return i == to && i < items->count && items->list[i].is == ITEM_PAUSE &&
           (item_is(items, i + 1, ITEM_UNKNOWN) ||
            (item_is(items, i + 1, ITEM_LINK) && item_is(items, i + 2, ITEM_UNKNOWN)));
}

/* "no idea what the 2nd one has" */
static bool
follows_unknown(const struct items *items, size_t at)
{
    size_t from = clause_start(items, at), i;

    for (i = at; i > from && at - i < 5; i--) {
        if (item_is(items, i - 1, ITEM_UNKNOWN)) {
            return true;
        }
    }
    return false;
}

/* "2 batteries, no wait, 3" */
static bool
corrects_total(const struct items *items, size_t at, const struct counted *counted)
{
    size_t i;

    if (counted->total == 0 || !is_count(items, at) || !corrections_lead(items, at) ||
        (at + 1 < items->count && items->list[at + 1].is != ITEM_STOP &&
         items->list[at + 1].is != ITEM_PAUSE)) {
        return false;
    }
    for (i = counted->at + 1; i < at; i++) {
        if (items->list[i].is == ITEM_NUMBER || items->list[i].is == ITEM_AMOUNT) {
            return false;
        }
    }
    return true;
}

/* "one spare": counted already */
static bool
is_number_of(const struct items *items, size_t at)
{
    return items->list[at].is == ITEM_NUMBER && items->list[at].spent && !items->list[at].ordinal &&
           items->list[at].value <= TOLD_BATTERIES_MAX * 1000;
}

/* "and theres a spare nobody checked", but no "do I need a spare" */
static bool
is_one_more(const struct items *items, size_t at)
{
    size_t to = clause_end(items, at), from = clause_start(items, at), before = at;

    if (!item_is(items, at, ITEM_OTHER) || items->list[at].spent ||
        item_value(items, at, ITEM_OTHER) != 0 || items_find(items, at, to, ITEM_UNKNOWN) == to) {
        return false;
    }
    before -= before > 0 && item_is(items, before - 1, ITEM_ARTICLE);
    return before < at && (items_find(items, from, at, ITEM_HAVE) < at ||
                           items_find(items, from, at, ITEM_AND) < at);
}

/* "do I need 2 or 3 batteries?": asked, and nobody has them; "I have 2 or 3", "3 or 2": the fewer,
 * which it returns; else 0. */
static int
take_either_of_two(struct items *items, size_t at)
{
    size_t from = items->list[clause_start(items, at)].from, i;

    if (!is_count(items, at) || !token_among(items->tokens, items->list[at].to, " or o u ") ||
        !is_count(items, at + 2) || !item_is(items, at + 3, ITEM_BATTERY)) {
        return 0;
    }
    for (i = from; i < items->list[at].from; i++) {
        if (token_among(items->tokens, i, " need needs should necesito ocupo necesitamos debo ")) {
            items_spend(items, at, 3);
            return 0;
        }
    }
    items_spend(items, at, 3);
    return (items->list[at].value < items->list[at + 2].value ? items->list[at].value
                                                              : items->list[at + 2].value) /
           1000;
}

/* "is that 3 batteries or 4?": asked, unless somebody has them, who may have the fewer. */
static bool
asks_which_of_two(struct items *items, size_t at)
{
    size_t to = at + 3;

    if (!is_count(items, at) || !item_is(items, at + 1, ITEM_BATTERY) ||
        !token_among(items->tokens, items->list[at + 1].to, " or o u ") || !is_count(items, to) ||
        items_find(items, clause_start(items, at), at, ITEM_HAVE) < at) {
        return false;
    }
    items_spend(items, at, 4);
    return true;
}

/* "3 batteries min", "the airline told me 3 batteries": asked for, and nobody need have them. */
static bool
is_asked_for(const struct items *items, size_t at)
{
    size_t from = clause_start(items, at), airline = items_find(items, from, at, ITEM_GATE), i;
    bool figure = false;

    for (i = from; i < airline; i++) { /* "3 hours says the airline with 2 batteries" */
        figure = figure || item_in(items, i, UNIT_MINUTE);
    }
    if (tokens_phrase_at(
            items->tokens, tokens_back(items->list[at].from, 2),
            "instead of|rather than|vez de|lugar de|de tener|de traer|have been|promised us|"
            "promised me|nos prometieron|me prometieron|guy promised|they promised") == 2) {
        return true; /* "instead of 3 full batteries" */
    }
    return item_is(items, at + 1, ITEM_BATTERY) &&
           ((item_value(items, airline, ITEM_GATE) == 1 && !figure) ||
            token_among(items->tokens, items->list[at + 1].to,
                        " min minimum required minimo minimas obligatorias ") ||
            items_have_word(items, from, at,
                            " require requires required wants demands pide piden exige exigen "));
}

/* "two hops, both air time", "both of us", "both ways" */
static bool
is_both_of_other(const struct items *items, size_t at)
{
    size_t next = at + 1;

    while (item_is(items, next, ITEM_LINK) || item_is(items, next, ITEM_AT)) {
        next++;
    }
    if (item_value(items, at + 1, ITEM_OTHER) == 2) {
        return true; /* "both spares": not all there are */
    }
    return item_is(items, next, ITEM_AIR) || item_is(items, next, ITEM_GATE) ||
           item_is(items, next, ITEM_GOING) || item_is(items, next, ITEM_DAY) ||
           token_among(items->tokens, items->list[at].to,
                       " of ways us legs hops times days sides vuelos tramos de ");
}

/* "3 or 2 batteries", "both" */
static bool
take_pair(struct items *items, size_t at, struct counted *counted)
{
    int fewer = take_either_of_two(items, at);

    if (fewer > 0) {
        counted->total = fewer;
        counted->at = at;
        return true;
    }
    if (item_is(items, at, ITEM_BOTH)) {
        if (!is_both_of_other(items, at)) {
            counted->total = 2;
            counted->both_at = at;
        }
        return true;
    }
    return false;
}

/* "the other 2 I dunno", "the third I havent checked", behind charges that are told */
static bool
is_other_unknown(const struct items *items, size_t at, size_t first_charge)
{
    bool ordinal = items->list[at].ordinal;

    if (first_charge < at && is_count(items, at) &&
        ((items->spanish && item_text(items, at - 1, "la") &&
          item_is(items, at + 1, ITEM_UNKNOWN)) ||
         (item_value(items, at - 1, ITEM_BATTERY) == 1 && is_unknown(items, at)))) {
        return true; /* "la tres ni idea", "battery 3 I didnt check" */
    }
    return (item_is(items, at, ITEM_OTHER) || item_is(items, at, ITEM_ORDINAL) || ordinal) &&
           first_charge < at && (!items->list[at].spent || ordinal) &&
           item_value(items, at, ITEM_OTHER) < 1 && is_unknown(items, at) &&
           !(at > 0 && is_number_of(items, at - 1));
}

/* Batteries beside those whose charges are told, of which nobody knows the charge. */
static bool
take_unknown(struct items *items, size_t at, size_t first_charge, struct counted *counted)
{
    bool tells_charge = first_charge < items->count;

    if (tells_charge && (item_is(items, at, ITEM_ORDINAL) || items->list[at].ordinal) &&
        follows_unknown(items, at)) {
        counted->on_top++;
        return true;
    }
    if (is_other_unknown(items, at, first_charge)) {
        bool several = item_is(items, at, ITEM_OTHER) && is_count(items, at + 1);

        counted->on_top += several ? items->list[at + 1].value / 1000 : 1;
        items_spend(items, at, several ? 2 : 0);
        return true;
    }
    if (tells_charge && is_one_more(items, at)) {
        counted->on_top++;
        return true;
    }
    return false;
}

/* "3 batteries", "las 3", "batteries: 3x", "one I forgot to check": no label, setting or article */
static bool
is_number_of_batteries(const struct items *items, size_t at, size_t first_charge)
{
    const struct item *item = &items->list[at];
    size_t to = clause_end(items, at);

    if (!is_count(items, at) || is_label(items, at) || is_setting_number(items, at) ||
        (item_text(items, at - 1, "at") && token_is(items->tokens, item->to, "the")) ||
        (item->one && token_among(items->tokens, item->from, " un a "))) {
        return false;
    }
    return counts_batteries(items, at) || counts_unnamed(items, at) ||
           (is_whole_of_part(items, at) && items->list[at - 2].spent) ||
           (item->times && item_is(items, at - 1, ITEM_BATTERY)) ||
           (item->one && first_charge < at && items_find(items, at, to, ITEM_UNKNOWN) < to);
}

/* "2 batteries in the bag and one on the unit": one on top, for no parts were told before. */
static bool
is_one_placed_on_top(const struct items *items, size_t at, const struct counted *counted)
{
    size_t i;

    if (!is_count(items, at) || counted->total == 0 || counted->on_top > 0 || counted->at >= at ||
        !item_is(items, at - 1, ITEM_AND) || !is_placed(items, at) ||
        clause_start(items, counted->at) != clause_start(items, at)) {
        return false;
    }
    for (i = counted->at + 1; i < at; i++) {
        if (items->list[i].is == ITEM_NUMBER) {
            return false;
        }
    }
    return true;
}

/* "one battery plus a spare", "1 in the machine 1 spare": one more than those counted. */
static bool
is_spare_beside(struct items *items, size_t at, size_t first_charge, const struct counted *counted)
{
    bool spare = item_is(items, at, ITEM_OTHER) &&
                 token_among(items->tokens, items->list[at].to - 1, " spare backup repuesto ");
    size_t before = at;

    before -=
        before > 0 && (item_is(items, before - 1, ITEM_ARTICLE) ||
                       (items->list[before - 1].one && !items->list[before - 1].spent) ||
                       (is_count(items, before - 1) && items->list[before - 1].value == 1000));
    if (!spare || counted->total == 0 || first_charge < items->count || before == 0 ||
        counted->at >= before) {
        return false;
    }
    return item_is(items, before - 1, ITEM_AND) ? counted->total == 1 || counted->parts
                                                : counted->parts && before < at;
}

static void
take_number(struct items *items, size_t at, size_t first_charge, struct counted *counted)
{
    int number = items->list[at].value / 1000;

    items_spend(items, at, 1);
    if (is_asked_for(items, at)) {
        return;
    } else if (is_on_top(items, at, first_charge < at)) {
        counted->on_top += number;
    } else {
        counted->total = number;
        counted->at = at;
    }
}

/* "the only battery I have", "la unica pila que trae", of which no charge is told */
static bool
is_only_one(const struct items *items, size_t at, size_t first_charge)
{
    return first_charge == items->count && item_value(items, at, ITEM_BATTERY) == 1 &&
           token_among(items->tokens, tokens_back(items->list[at].from, 1),
                       " only single unica ") &&
           token_among(items->tokens, tokens_back(items->list[at].from, 2), " the my la mi ");
}

static void
count_one(struct items *items, size_t at, size_t first_charge, struct counted *counted)
{
    if (take_pair(items, at, counted) || take_unknown(items, at, first_charge, counted)) {
        return;
    }
    if (counted->total == 0 && is_count(items, at) && is_placed(items, at) &&
        !is_setting_number(items, at) && first_charge == items->count) {
        counted->total = items->list[at].value / 1000; /* "1 in the machine, 1 spare" */
        counted->at = at;
        counted->parts = true;
        items_spend(items, at, 1);
    } else if (is_spare_beside(items, at, first_charge, counted)) {
        counted->total++;
    } else if (is_one_placed_on_top(items, at, counted)) {
        counted->total += items->list[at].value / 1000;
        items_spend(items, at, 1);
    } else if (corrects_total(items, at, counted)) {
        counted->total = items->list[at].value / 1000;
        counted->at = at;
        items_spend(items, at, 1);
    } else if (counted->total == 0 && is_only_one(items, at, first_charge)) {
        counted->total = 1;
        counted->at = at;
    } else if (is_number_of_batteries(items, at, first_charge)) {
        take_number(items, at, first_charge, counted);
    }
}

struct counted
counted_read(struct items *items, size_t first_charge)
{
    struct counted counted = {0};
    size_t at;

    for (at = 0; at < items->count; at++) {
        if (!asks_which_of_two(items, at)) {
            count_one(items, at, first_charge, &counted);
        }
    }
    if (counted.total > 0 && counted.at < corrections_from(items) &&
        first_charge > corrections_from(items) && first_charge < items->count) {
        counted.total = 0; /* "I said 2 batteries but it is 1 and it is full" */
    }
    return counted;
}
