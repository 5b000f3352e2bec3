#include "aside.h"

#include <string.h>

#include "ages.h"
#include "claims.h"
#include "corrections.h"
#include "other_numbers.h"
#include "setting_leads.h"
#include "settings.h"

static const char others[] =
    " moms hubbys wifeys mothers dads fathers husbands wifes grandmas grandpas sisters "
    "brothers neighbor neighbors neighbour roommate roommates friend "
    "friends buddy buddys hermana hermano vecina vecino amiga amigo "
    "comadre compadre mama papa madre padre guy lady fellow junto lado "
    "senor senora muchacho nextdoor ladys guys fellows hers theirs suya "
    "suyo suyas suyos cousin cousins primo prima uncles aunts nephews nieces sons daughters "
    "coworkers ";
static const char strangers[] = " neighbor neighbors neighbour roommate roommates guy lady buddy "
                                "vecina vecino amiga amigo senor senora compadre comadre ";
static const char not_of_charge[] = " off chance humidity tip discount grade tax humedad descuento "
                                    "propina probabilidad slope incline sure oxygen o2 oxigeno ";

static const char *
text_at(const struct items *items, size_t at)
{
    return at < items->count ? items->tokens->list[items->list[at].from].text : "";
}

static bool
is_number(const struct items *items, size_t at)
{
    return at < items->count && items->list[at].is == ITEM_NUMBER;
}

static bool
counts_ours(const struct items *items, size_t at)
{
    return item_is(items, at, ITEM_BATTERY) || item_is(items, at, ITEM_FULL) ||
           item_is(items, at, ITEM_CHARGE) || item_is(items, at, ITEM_LIGHT) ||
           item_is(items, at, ITEM_OTHER);
}

/* "number 2 reads 62" */
static bool
numbers_a_battery(const struct items *items, size_t at)
{
    return item_text(items, at, "number") && items->list[at].to == items->list[at].from + 1 &&
           is_number(items, at + 1) && items->list[at + 1].value <= 12 * 1000 &&
           (item_is(items, at + 2, ITEM_SHOWS) || item_is(items, at + 2, ITEM_LINK) ||
            item_is(items, at + 2, ITEM_FULL) || item_is(items, at + 2, ITEM_CHARGE) ||
            item_is(items, at + 2, ITEM_HAVE)) &&
           items_any(items, ITEM_BATTERY);
}

/* "room 9", "flight number 705", "deposit was 40" */
static void
named_or_priced(struct items *items, size_t at)
{
    bool named = item_is(items, at, ITEM_NAMED), priced = item_is(items, at, ITEM_PRICE);
    size_t number = at + 1;

    if ((!named && !priced) || is_lone_number(items, at) || is_number_used(items, at + 1) ||
        numbers_a_battery(items, at)) {
        return;
    }
    while (number < at + 3 &&
           (item_is(items, number, ITEM_LINK) || item_is(items, number, ITEM_NAMED) ||
            item_is(items, number, ITEM_PRICE) || item_is(items, number, ITEM_HEDGE))) {
        number++;
    }
    if (item_is(items, number + 1, ITEM_AM) || item_is(items, number + 1, ITEM_PM)) {
        return; /* "vuelo de 11 pm a 5 am" */
    }
    if ((is_number(items, number) && !items->list[number].one && !counts_ours(items, number + 1) &&
         !item_text(items, number + 1, "setting") && !item_is(items, number + 1, ITEM_HOMEWARD) &&
         !item_text(items, number + 1, "ida") && !item_text(items, number + 2, "ida")) ||
        item_in(items, number, UNIT_CELSIUS) || item_in(items, number, UNIT_FAHRENHEIT)) {
        items_spend(items, number, 1); /* "seat 14C" */
    }
}

static bool
has_dropped(const struct items *items, size_t at)
{
    return items_have_word(items, clause_start(items, at), at,
                           " dropped fell lost drained sank bajo perdio gasto cayo ");
}

/* "manejo tres horas por la 15": a road */
static void
road(struct items *items, size_t at)
{
    size_t first = items->list[at].from;

    if (is_number(items, at) && first > 1 && token_is(items->tokens, first - 1, "la") &&
        token_among(items->tokens, first - 2, " por sobre ") && items->list[at].digits &&
        items->list[at].value > 4 * 1000) {
        items_spend(items, at, 1);
    }
}

/* "39 a day", "45 al dia" */
static void
rate(struct items *items, size_t at)
{
    bool a_day =
        items->list[at].is == ITEM_AMOUNT && items->list[at].days && !items->list[at].digits;

    if (is_number(items, at) && items->list[at].value <= 10 * 1000 && at > 0 &&
        item_is(items, at - 1, ITEM_AT) &&
        tokens_phrase_at(items->tokens, items->list[at].to,
                         "a minute|per minute|por minuto|al minuto") > 0) {
        items->list[at].is = ITEM_AMOUNT; /* "full bottle at 2 a minute" */
        items->list[at].unit = UNIT_FLOW;
        items_spend(items, at + 1, 1);
        return;
    }
    if (is_number(items, at) &&
        (item_text(items, at + 1, "per") || item_text(items, at + 1, "al") ||
         item_text(items, at + 1, "por") || item_text(items, at + 1, "a")) &&
        (item_is(items, at + 2, ITEM_UNIT) || item_text(items, at + 1, "a")) &&
        (token_among(items->tokens, items->list[at].to + 1,
                     " day dia week semana night noche minute minuto "))) {
        items_spend(items, at, 2);
    }
    if (items->list[at].is == ITEM_AMOUNT && items->list[at].unit == UNIT_MINUTE &&
        ((item_is(items, at + 1, ITEM_ARTICLE) && item_value(items, at + 2, ITEM_BATTERY) == 1) ||
         (item_is(items, at + 1, ITEM_EACH) &&
          token_among(items->tokens, items->list[at + 1].to - 1, " battery bateria ")))) {
        items_spend(items, at, 1); /* "they told us 5 hours a battery" */
    }
    if (items->list[at].is == ITEM_AMOUNT && items->list[at].unit == UNIT_MINUTE && at > 0 &&
        (item_text(items, at - 1, "in") || item_text(items, at - 1, "en")) &&
        (has_dropped(items, at) ||
         (at > 4 && item_is(items, at - 3, ITEM_TO) &&
          (is_number(items, at - 4) || item_in(items, at - 4, UNIT_PERCENT)) &&
          items->list[at - 4].value > items->list[at - 2].value))) {
        items_spend(items, at, 1); /* "dropped from 95 in 30 minutes" */
    }
    if (a_day && at > 0 && items->list[at - 1].is == ITEM_NUMBER) {
        items_spend(items, at - 1, 2);
    }
}

/* "the 22nd", "12 de enero"; "2nd one" is a battery. */
static void
date(struct items *items, size_t at)
{
    if (is_number(items, at) && items->list[at].ordinal) {
        items_spend(items, at, 1);
    }
}

/* "phone at 5", "mi cel anda en 12": another thing's charge */
static void
of_phone(struct items *items, size_t at)
{
    static const char things[] = " phone cell cellphone tablet laptop telefono celular cel "
                                 "watch reloj tableta computadora ";
    static const char leads[] = " is at says on s its esta en anda va al a trae marca dice with ";
    size_t before = items->list[at].from;

    if (!is_number(items, at) && !item_in(items, at, UNIT_PERCENT)) {
        return;
    }
    while (before > 0 && token_among(items->tokens, before - 1, leads)) {
        before--;
    }
    if (before < items->list[at].from && before > 0 &&
        token_among(items->tokens, before - 1, things)) {
        items_spend(items, at, 1);
    }
}

/* "one of the 40s is really 14", "the 70 one is now 52": a battery's name, by what it had */
static void
one_of_those(struct items *items, size_t at)
{
    if (is_number(items, at) && items->list[at].value > 12 * 1000 &&
        item_is(items, at - 1, ITEM_OF) && at > 1 && is_number(items, at - 2) &&
        items->list[at - 2].value <= 4 * 1000 &&
        (items->list[at].high > items->list[at].value ||
         token_among(items->tokens, items->list[at].to, " ones is "))) {
        items_replace(items, at - 2, 3, items->list[at - 2]);
    }
}

/* "it is not 60, it is 16", "perdon, no era 70, era 40": what is put right is a charge as well. */
static void
put_right(struct items *items, size_t at)
{
    static const char links[] = " , its it is es era sino rather but ; was esta en at ";
    size_t before = items->list[at].from, token = items->list[at].to, second = at + 1;

    if (!is_number(items, at) || !items->list[at].digits || items->list[at].value <= 12 * 1000) {
        return;
    }
    before -= before > 0 && token_among(items->tokens, before - 1, " es era is at en ");
    while (token_among(items->tokens, token, links)) {
        token++;
    }
    while (second < items->count && items->list[second].from < token) {
        second++;
    }
    if (before == 0 || !token_among(items->tokens, before - 1, " no not isnt wasnt ") ||
        token == items->list[at].to || !item_free_number(items, second) ||
        items->list[second].from != token || items->list[second].value > 100 * 1000 ||
        (items->list[second].value <= 6 * 1000 &&
         token_among(items->tokens, token - 1, " en at ")) ||
        item_is(items, second + 1, ITEM_UNIT)) {
        return;
    }
    items_spend(items, at, 1);
    items->list[second].is = ITEM_AMOUNT;
    items->list[second].unit = UNIT_PERCENT;
}

/* "555-0123", "208 555 0123" */
static void
telephone(struct items *items, size_t at)
{
    size_t next = at + 1;

    next += item_text(items, next, "-") ? 1 : 0;
    if (is_number(items, at) && items->list[at].digits && items->list[at].value > 100 * 1000 &&
        is_number(items, next) && strlen(text_at(items, at)) == 3 &&
        strlen(text_at(items, next)) >= 3 && items->list[next].digits) {
        items_spend(items, at, next + 1 - at);
    }
    if (is_number(items, at) && items->list[at].value >= 100000 * 1000) {
        items_spend(items, at, 1);
    }
}

/* "the airline site says 3h20 gate to gate", "they say its a 2 hour drive": a figure of a way, and
 * none of what a battery does */
static bool
is_claim_of_way(const struct items *items, size_t claim, size_t length)
{
    size_t to = clause_end(items, length);

    return items_find(items, claim, to, ITEM_GATE) < to ||
           items_find(items, claim, to, ITEM_AIR) < to || item_is(items, length + 1, ITEM_GOING) ||
           token_among(items->tokens, items->list[claim].from - (claim > 0),
                       " airline airlines aerolinea ");
}

/* "my neighbour says 3", "she gets 5 hours": the next amount of that clause is theirs. */
static void
claim(struct items *items, size_t at)
{
    size_t to = sentence_end(items, at), i;

    if (!item_is(items, at, ITEM_CLAIM)) {
        return;
    }
    if (token_among(items->tokens, items->list[at].from, " supposedly supuestamente ")) {
        to = clause_end(items, at); /* "has outlets supposedly, 2 full" */
    }
    for (i = at + 1; i < to && i < at + 4; i++) {
        if (is_number(items, i) && items->list[i].value > 12 * 1000 &&
            token_among(items->tokens, items->list[at].from, " box machine ")) {
            return; /* "her box says 36": the unit */
        }
        if (item_in(items, i, UNIT_MINUTE) && is_claim_of_way(items, at, i)) {
            return;
        }
        if (is_number(items, i) || item_in(items, i, UNIT_MINUTE)) {
            items_spend(items, i, 1);
            return;
        }
    }
}

/* "is that an hour", "does 50 % mean 2 hours", "son como 2 horas?": asked, not told. */
static bool
is_length_asked(const struct items *items, size_t at)
{
    static const char leads[] = " is that this mean means like about around only eso es son "
                                "serian seria significa quiere decir como solo an a unas ";
    size_t from = items->list[clause_start(items, at)].from, i = items->list[at].from;
    size_t to = sentence_end(items, at);
    bool asks = false;

    if (!item_in(items, at, UNIT_MINUTE) || !items_have_word(items, to, to + 1, " ? ")) {
        return tokens_phrase_at(items->tokens, i > 1 ? i - 2 : 0, "is that|that mean") == 2;
    }
    for (; i > from && token_among(items->tokens, i - 1, leads); i--) {
        asks =
            asks || token_among(items->tokens, i - 1, " that this mean means eso significa decir ");
    }
    return asks;
}

static void
asked_length(struct items *items, size_t at)
{
    if (item_in(items, at, UNIT_MINUTE) && is_length_asked(items, at)) {
        items_spend(items, at, 1);
    }
}

static const char own[] = " mine mines mia mias mio mios ours nuestra nuestro ";

/* "la mia esta al 90 pero esa es aparte": one's own is put aside, and another's is asked about. */
static bool
own_is_put_aside(struct items *items, size_t at)
{
    static const char apart[] = " aparte separate separado separada ";
    size_t from = sentence_start(items, at), to = sentence_end(items, at), i;
    bool mine = false;

    if (!items_have_word(items, from, to, own) || !items_have_word(items, from, to, apart)) {
        return false;
    }
    for (i = items->list[from].from; i < items->list[at].from; i++) {
        mine =
            token_among(items->tokens, i, own) || (mine && !token_among(items->tokens, i, others) &&
                                                   !token_among(items->tokens, i, ages_family));
    }
    if (mine && items_have_word(items, at, to, apart)) {
        items_spend(items, at, 1);
    }
    return true;
}

/* "la de mi hermana en 4, la mia en 2": of somebody else's, where one's own is told apart. */
static void
of_another(struct items *items, size_t at)
{
    size_t from = clause_start(items, at), i;
    bool theirs = false;

    if (item_in(items, at, UNIT_MINUTE) && items_find(items, from, at, ITEM_LASTS) < at &&
        items_find(items, from, at, ITEM_GOING) == at &&
        items_find(items, from, at, ITEM_EVENT) == at &&
        !items_have_word(items, from, at, " trip ride viaje camino visit visita ") &&
        items_have_word(items, from, at, others)) {
        items_spend(items, at, 1); /* "la de mi vecina dura 5 horas", no "drive to my friends" */
        return;
    }
    if (!is_number(items, at) && !item_in(items, at, UNIT_PERCENT) &&
        !item_is(items, at, ITEM_FULL) && !item_is(items, at, ITEM_HALF) &&
        !item_is(items, at, ITEM_QUARTER) && !item_is(items, at, ITEM_FRACTION) &&
        !item_is(items, at, ITEM_CHARGE)) {
        return;
    }
    if (own_is_put_aside(items, at)) {
        return;
    }
    if (!items_have_word(items, 0, items->count, own) &&
        !(items_have_word(items, from, at, strangers) &&
          tokens_have(items->tokens,
                      "i have|i only have|i got|ive got|i just have|yo tengo|yo traigo|"
                      "yo nomas tengo|yo solo tengo"))) {
        return;
    }
    for (i = items->list[from].from; i < items->list[at].from; i++) {
        if (token_among(items->tokens, i, own)) {
            theirs = false;
        } else if (token_among(items->tokens, i, ages_family) ||
                   token_among(items->tokens, i, others)) {
            theirs = !token_among(items->tokens, i, " im ");
        }
    }
    if (theirs) {
        items_spend(items, at, 1);
    }
}

/* "las 2 de mi vecino", "the 2 of my neighbor": theirs, whatever one has oneself. */
static void
of_stranger(struct items *items, size_t at)
{
    size_t after = at < items->count ? items->list[at].to : 0;

    if (is_number(items, at) && token_among(items->tokens, after, " de del of ") &&
        (token_among(items->tokens, after + 1, strangers) ||
         (token_among(items->tokens, after + 1, " mi my la el the our nuestro nuestra ") &&
          token_among(items->tokens, after + 2, strangers)))) {
        items_spend(items, at, 1);
    }
}

/* "38 y medio de fiebre", "her temp is 101" */
static void
fever(struct items *items, size_t at)
{
    size_t to = clause_end(items, at), next;
    int value = at < items->count ? items->list[at].value / 1000 : 0;

    if (!is_number(items, at) || !((value >= 35 && value <= 42) || (value >= 95 && value <= 107)) ||
        item_is(items, at + 1, ITEM_UNIT) ||
        !items_have_word(items, clause_start(items, at), to,
                         " fever fiebre calentura temperatura temp temperature ")) {
        return;
    }
    next = item_is(items, at + 1, ITEM_AND) && item_is(items, at + 2, ITEM_HALF) ? 3 : 1;
    items_spend(items, at, next);
}

/* "150 % of the flight", "20 % chance" */
static void
other_percent(struct items *items, size_t at)
{
    size_t after;

    if (!item_in(items, at, UNIT_PERCENT)) {
        return;
    }
    after = items->list[at].to;
    if ((items->list[at].value == 150 * 1000 && lexicon_cue(items->tokens, CUE_FLIGHT)) ||
        (token_among(items->tokens, after, not_of_charge) && !item_is(items, at + 1, ITEM_POWER)) ||
        (token_among(items->tokens, after, " de of ") &&
         token_among(items->tokens, after + 1, not_of_charge))) {
        items_spend(items, at, 1);
    }
}

/* "not 3", "no es de 6 horas", "not full" */
static void
denied(struct items *items, size_t at)
{
    size_t next = at + 1;

    if (!item_is(items, at, ITEM_NOT) || item_is(items, at, ITEM_CORRECT) ||
        corrections_no_between(items, at) ||
        (item_text(items, at, "no") && items->list[at].to == items->list[at].from + 1 &&
         (at == 0 || items->list[at - 1].is == ITEM_STOP || items->list[at - 1].is == ITEM_PAUSE) &&
         !(at > 1 && is_number(items, at - 2) && is_number(items, at + 1) &&
           item_is(items, at + 2, ITEM_BATTERY)))) {
        return; /* a no of its own corrects */
    }
    while (next < at + 3 && (item_is(items, next, ITEM_LINK) || item_is(items, next, ITEM_AT) ||
                             item_is(items, next, ITEM_ALL) || item_is(items, next, ITEM_HEDGE))) {
        next++;
    }
    if (is_number(items, next) || item_is(items, next, ITEM_FULL) ||
        (next < items->count && items->list[next].is == ITEM_AMOUNT)) {
        items_spend(items, next, 1);
    }
}

void
aside_put(struct items *items)
{
    static void (*const kinds[])(struct items *, size_t) = {
        named_or_priced,        road,       rate,        date,
        age_put_aside,          telephone,  claim,       asked_length,
        claim_of_length,        of_another, of_stranger, fever,
        other_percent,          denied,     of_phone,    one_of_those,
        other_number_put_aside, put_right};
    size_t at, i;

    for (at = 0; at < items->count; at++) {
        for (i = 0; i < sizeof kinds / sizeof kinds[0]; i++) {
            kinds[i](items, at);
        }
    }
}
