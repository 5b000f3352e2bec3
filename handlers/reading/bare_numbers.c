/*
 * A number above any setting is a charge where a battery is named before it, where a word leads to
 * one ("says", "at"), in a list of charges, or alone at the beginning of a clause. A small one
 * needs more: the battery right before it, or a list.
 */
#include "bare_numbers.h"

#include "beside_numbers.h"
#include "corrections.h"
#include "counted.h"
#include "hedges.h"
#include "setting_leads.h"
#include "subjects.h"
#include "tellings.h"
#include "told_of.h"

enum { IMPOSSIBLE_MAX = 500 };

/* "theres a battery at 5 in the bag" */
static bool
is_there(const struct items *items, size_t battery)
{
    size_t first = items->list[battery].from;

    return first > 1 && token_among(items->tokens, first - 1, " a one una ") &&
           token_among(items->tokens, first - 2, " theres have got has hay tengo traigo ");
}

/* "the battery is at 5": below any setting, or said of a battery that is. */
static bool
is_low(const struct items *items, size_t at, size_t before, size_t subject)
{
    return item_value(items, subject, ITEM_BATTERY) == 1 &&
           (items->list[at].value >= 7 * 1000 || is_there(items, subject) ||
            item_text(items, before - 1, "is") || item_text(items, before - 1, "was") ||
            item_text(items, before - 1, "esta"));
}

/* "it was on 85", "its on 40": no setting is so high. */
static bool
is_told_of_it(const struct items *items, size_t on)
{
    return on > 0 && items->list[on].to == items->list[on].from + 1 &&
           token_among(items->tokens, items->list[on].from - 1, " was were its is it still now ");
}

/* "the doctor said 3": a setting, or what others say */
static bool
is_told_by_another(const struct items *items, size_t at, size_t before, bool big)
{
    if (!big && tokens_phrase_at(items->tokens, tokens_back(items->list[at].from, 2),
                                 "always say|always said|i say|siempre digo") == 2) {
        return true; /* "I always say six" */
    }
    return !big && before > 0 && before < at &&
           token_among(items->tokens, items->list[before].from - 1,
                       " who que law son daughter sister brother nurse hijo hija esposo esposa "
                       "doctora friend neighbor vecina amiga guy lady doc doctor dr nurse "
                       "therapist he she they wife husband mom dad enfermera cousin primo prima "
                       "uncle aunt tio tia mother father grandma grandpa abuela abuelo brochure "
                       "website manual folleto pagina ");
}

/* "en la 17", "the lady in 22" */
static bool
is_in_a_place(const struct items *items, size_t before)
{
    return (item_text(items, before, "en") && item_value(items, before, ITEM_AT) == AT_IN &&
            token_is(items->tokens, items->list[before].to - 1, "la")) ||
           (item_text(items, before, "in") &&
            items->list[before].to == items->list[before].from + 1);
}

/* "by bedtime, say 10", "good till lunch? its 10", "fireworks at ten": no charge, but an hour. */
static bool
is_hour_led(const struct items *items, size_t at, size_t before, size_t subject)
{
    if (items->list[at].value > 12 * 1000 || before >= items->count) {
        return false;
    }
    if (token_is(items->tokens, items->list[before].to - 1, "say") && before > 0 &&
        items->list[before - 1].is == ITEM_PAUSE) {
        return true;
    }
    if (item_is(items, before, ITEM_NOW_IS) &&
        (items_any(items, ITEM_LIGHT) || items_any(items, ITEM_UNTIL))) {
        return true;
    }
    return item_value(items, before, ITEM_AT) == AT_AT && subject < items->count &&
           (item_is(items, subject, ITEM_EVENT) || item_is(items, subject, ITEM_DEPART) ||
            item_is(items, subject, ITEM_GOING) || item_is(items, subject, ITEM_ARRIVE) ||
            item_is(items, subject, ITEM_HOMEWARD) ||
            (item_is(items, subject, ITEM_WORD) && items->list[subject].meaning_count == 0 &&
             !items->spanish));
}

/* "the other two are at 0" */
static bool
are_the_other_few(const struct items *items, size_t subject)
{
    return subject > 0 && subject < items->count && items->list[subject].is == ITEM_NUMBER &&
           items->list[subject].value <= 4 * 1000 && item_is(items, subject - 1, ITEM_OTHER);
}

/* By what leads to it: a charge, if it is above any setting or a battery is named right before. */
static bool
led_as_charge(const struct items *items, size_t at, size_t before, bool big)
{
    int shows = item_value(items, before, ITEM_SHOWS), in = item_value(items, before, ITEM_AT);
    size_t subject;

    subject = back_over_links(items, before);
    if (is_told_by_another(items, at, before, big) || is_in_a_place(items, before) ||
        is_turned_by_person(items, at) ||
        (!big && tokens_phrase_at(items->tokens, tokens_back(items->list[at].from, 2),
                                  "to show|to say|to read") == 2)) { /* "get it to show 3" */
        return false;
    }
    if (begins_list(items, at) &&
        (item_is(items, before, ITEM_SHOWS) || in == AT_AT ||
         (item_is(items, before, ITEM_HAVE) && item_is(items, at - 1, ITEM_ARTICLE)))) {
        return true;
    }
    if ((item_is(items, before, ITEM_SHOWS) && is_ordered(items, at)) ||
        is_hour_led(items, at, before, subject)) {
        return false; /* "my order says 2" */
    }
    if (item_is(items, before, ITEM_SHOWS)) {
        return big || items->list[at].value == 0 ||
               (shows == 1 && !item_is(items, before, ITEM_SETTING)) ||
               (shows == 0 && lexicon_cue(items->tokens, CUE_CHARGING) &&
                token_among(items->tokens, items->list[before].from, " iba va estaba anda ") &&
                items->list[at].value % 5000 == 0) ||
               names_battery(items, subject);
    }
    if (item_is(items, before, ITEM_TO) && before > 0 && items->list[before - 1].spent) {
        return big; /* "from 100 to 60" */
    }
    if (item_is(items, before, ITEM_WAS) || item_is(items, before, ITEM_NOW_IS) ||
        item_is(items, before, ITEM_NOW) || item_is(items, before, ITEM_AGO)) {
        return big;
    }
    if (item_is(items, before, ITEM_FROM)) {
        return is_start_of_charging(items, at, before);
    }
    if (items->list[at].value >= 5 * 1000 &&
        tokens_phrase_at(items->tokens, tokens_back(items->list[at].from, 2),
                         "estan en|andan en|quedaron en|siguen en") == 2) {
        return true; /* "estan en 5 y en 65": several, and a unit has one setting */
    }
    if (item_is(items, before, ITEM_AT)) {
        return (big && (in != AT_ON || is_told_of_it(items, before))) ||
               (in == AT_AT && is_low(items, at, before, subject)) ||
               (big && (follows_battery(items, at) || is_few_batteries(items, subject))) ||
               (big && items->spanish) ||
               (items->spanish && in == AT_ON && names_battery(items, subject) &&
                item_text(items, before, "en") &&
                (big ||
                 items_find(items, clause_start(items, at), subject, ITEM_LASTS) == subject) &&
                /* "cuanto dura una en 3" */ (big || !tells_length_before(items, at)) &&
                !token_is(items->tokens, items->list[subject].to - 1, "mia")) ||
               (in == AT_AT && (names_battery(items, subject) || is_few_batteries(items, subject) ||
                                are_the_other_few(items, subject)));
    }
    return false;
}

/* A stop, a pause or the end: nothing follows that it could count. */
static bool
closes(const struct items *items, size_t at)
{
    return at >= items->count || items->list[at].is == ITEM_STOP ||
           items->list[at].is == ITEM_PAUSE || item_is(items, at, ITEM_UNIT);
}

/* "el mio nomas 26", "mine 26" */
static bool
is_of_mine(const struct items *items, size_t at, size_t after)
{
    return ends_here(items, after) &&
           items_have_word(items, clause_start(items, at), at, " mine mines mio mia ");
}

/* "98 at 11:40." */
static bool
is_of_then(const struct items *items, size_t after)
{
    return item_value(items, after, ITEM_AT) == AT_AT && after + 1 < items->count &&
           items->list[after + 1].is == ITEM_CLOCK;
}

/* At the beginning of a clause: "70ish is what it said", "entre 40 y 50 dice", "60 and 60". */
static bool
is_told_alone(const struct items *items, size_t at, size_t after)
{
    const struct item *item = &items->list[at];
    bool on_one = item_value(items, after, ITEM_AT) == AT_ON &&
                  (names_battery(items, after + 1) || item_is(items, after + 1, ITEM_BATTERY) ||
                   token_among(items->tokens, items->list[after].to, " left right top bottom "));
    bool setting = item_text(items, after, "and") &&
                   (item_value(items, after + 1, ITEM_AT) == AT_ON ||
                    item_value(items, after + 2, ITEM_AT) == AT_ON); /* "57 and it's on 2" */
    bool pair = item_is(items, after, ITEM_AND) && item_free_number(items, after + 1) &&
                items->list[after + 1].value > BIG_MIN * 1000 && ends_here(items, after + 2);

    bool of_moment = item->value > 12 * 1000 &&
                     token_among(items->tokens, items->list[at].to, " when by after cuando ") &&
                     items_find(items, sentence_start(items, at), at, ITEM_WAS) < at;

    return (item->high > item->value && ends_here(items, after)) || pair || on_one || setting ||
           of_moment || is_of_mine(items, at, after) || is_of_then(items, after) ||
           (item_is(items, after, ITEM_NOT) && after + 1 < items->count &&
            items->list[after + 1].is == ITEM_NUMBER) ||
           item_is(items, after, ITEM_HEDGE_AFTER) || item_is(items, after, ITEM_SHOWS) ||
           (item_is(items, after, ITEM_AT) && item_value(items, after, ITEM_AT) != AT_AT) ||
           item_text(items, after, "on") || item_is(items, after, ITEM_NOW) ||
           item_is(items, after - 1, ITEM_SOMETHING) || begins_list(items, at);
}

/* "3 batteries: 13, 70 and full" */
static bool
opens_list(const struct items *items, size_t pause)
{
    return item_text(items, pause, ":") && pause > 0 &&
           (begins_list(items, pause + 1) || item_is(items, pause - 1, ITEM_BATTERY) ||
            names_battery(items, pause - 1) || items->list[pause - 1].is == ITEM_NUMBER ||
            item_is(items, pause - 1, ITEM_HAVE) || item_is(items, pause - 1, ITEM_SHOWS) ||
            item_value(items, pause - 1, ITEM_UNIT) == UNIT_PERCENT ||
            item_is(items, pause - 1, ITEM_LEFT) || item_text(items, pause - 1, "charge") ||
            item_text(items, pause - 1, "carga"));
}

/* "at 80, actually 60" */
static bool
follows_correction(const struct items *items, size_t at)
{
    return corrections_lead(items, at);
}

/* "charging in the car, 30 to 80": from where to where */
static bool
begins_way_up(const struct items *items, size_t at)
{
    return clause_start(items, at) == at && item_is(items, at + 1, ITEM_TO) &&
           item_free_number(items, at + 2) && items->list[at + 2].value > items->list[at].value &&
           items->list[at + 2].value >= 2 * BIG_MIN * 1000 &&
           items->list[at + 2].value <= 100 * 1000 && !item_is(items, at + 3, ITEM_UNIT) &&
           lexicon_cue(items->tokens, CUE_CHARGING);
}

/* "70 the other", "setenta y cinco una" */
static bool
is_named_behind(const struct items *items, size_t after)
{
    return item_is(items, after, ITEM_OTHER) || item_is(items, after, ITEM_ORDINAL) ||
           (after < items->count && items->list[after].one &&
            (item_is(items, after + 1, ITEM_AND) || clause_end(items, after) == after + 1));
}

/* "the other at 190": no battery is fuller than full, and nothing else is told so. */
static bool
is_too_high(const struct items *items, size_t at, size_t before)
{
    size_t subject = back_over_links(items, before);

    return (item_value(items, before, ITEM_AT) == AT_AT || item_is(items, before, ITEM_SHOWS)) &&
           (names_battery(items, subject) || item_is(items, subject, ITEM_BATTERY) ||
            items_have_word(items, clause_start(items, at), at,
                            " screen display readout pantalla ")) &&
           !items_any(items, ITEM_CYLINDER) && !item_is(items, at + 1, ITEM_UNIT) &&
           ends_here(items, at + 1);
}

/* "65. on 2. hrs left?": all that a sentence says, and nothing else is told of a charge. */
static bool
is_whole_sentence(const struct items *items, size_t at)
{
    size_t i;

    bool setting_next = clause_end(items, at) == at + 1 &&
                        (item_value(items, at + 2, ITEM_AT) == AT_ON ||
                         item_is(items, at + 2, ITEM_SETTING) || item_is(items, at + 2, ITEM_MODE));

    size_t begin = at;

    while (begin > 0 && item_is(items, begin - 1, ITEM_LINK)) {
        begin--; /* "display 58." */
    }
    if (sentence_start(items, at) != begin ||
        !(sentence_end(items, at) == at + 1 || setting_next) || items->list[at].high > 100 * 1000) {
        return false;
    }
    for (i = 0; i < items->count; i++) {
        if (item_in(items, i, UNIT_PERCENT) || item_is(items, i, ITEM_FULL) ||
            item_is(items, i, ITEM_LIGHT) || item_is(items, i, ITEM_CHARGE) ||
            item_is(items, i, ITEM_CYLINDER)) {
            return false;
        }
    }
    return true;
}

/* "bateria 44 nivl 2": a word that is not understood, with a number that may be a setting. */
static bool
is_setting_behind(const struct items *items, size_t at)
{
    return item_is(items, at, ITEM_WORD) && item_free_number(items, at + 1) &&
           items->list[at + 1].value < BIG_MIN * 1000 && clause_end(items, at) == at + 2;
}

/* By what stands around a number that nothing leads to. */
static bool
stands_as_charge(const struct items *items, size_t at, size_t before, size_t after, bool hedged)
{
    static const char sides[] = " left right top bottom ";
    bool big = items->list[at].value > BIG_MIN * 1000;
    bool alone = before + 1 <= clause_start(items, at) || names_battery(items, at - 1);

    if ((opens_list(items, before) && (big || begins_list(items, at))) ||
        (item_value(items, at - 1, ITEM_BATTERY) == 2 && begins_list(items, at)) ||
        (big && is_seen_now(items, at, after)) || is_told_of_battery(items, at, after) ||
        (big && is_joined_to_charge(items, at, after))) {
        return true;
    }
    if (big && items->spanish && ends_here(items, after) && items->list[at].from > 1 &&
        token_is(items->tokens, items->list[at].from - 1, "de") &&
        token_is(items->tokens, items->list[at].from - 2, "la")) {
        return true; /* "la de 40" */
    }
    if (big && items->spanish && item_text(items, at - 1, "el") &&
        tokens_phrase_at(items->tokens, items->list[at].to,
                         "que tengo|que tiene|que me queda|que le queda|que traigo|que trae") > 0) {
        return true; /* "el 35 que tengo" */
    }
    if (big && clause_start(items, at) == at && clause_end(items, at) == after &&
        items->list[at].value > 12 * 1000 && !items->list[at].negative && at > 0 &&
        items->list[at].digits && is_of_battery_told(items, at)) {
        return true; /* "what's in it, 60, plus a full one" */
    }
    if (!big && !begins_way_up(items, at)) {
        if (alone && begins_list(items, at) && items->list[at].value % 5000 == 0 &&
            items->list[at].digits &&
            (items->list[at].value != 5000 ||
             (item_text(items, at + 1, ",") && begins_list(items, at + 2)))) {
            return true; /* "0, 0, 40, 100" */
        }
        return item_is(items, after, ITEM_AT) && item_is(items, after + 1, ITEM_OTHER);
    }
    if ((alone && is_told_alone(items, at, after)) || begins_way_up(items, at) ||
        is_whole_sentence(items, at) || is_clause_before_setting(items, at) ||
        is_asked_of(items, at, after) ||
        (item_is(items, after, ITEM_AT) &&
         (item_is(items, after + 1, ITEM_OTHER) ||
          token_among(items->tokens, items->list[after].to, sides))) ||
        (item_value(items, at - 1, ITEM_BATTERY) == 1 && is_setting_behind(items, after))) {
        return true;
    }
    return ends_here(items, after) &&
           ((hedged && before + 1 == clause_start(items, at)) || names_battery(items, before) ||
            token_among(items->tokens, items->list[at].from - (at > 0), " charge carga juice = ") ||
            item_is(items, before, ITEM_BATTERY) || item_is(items, before, ITEM_HAVE) ||
            token_among(items->tokens, tokens_back(items->list[at].from, 1), " bateria pila ") ||
            follows_battery(items, at) || follows_correction(items, at) ||
            (item_is(items, after, ITEM_LEFT) && clause_start(items, at) == at) ||
            (item_value(items, after, ITEM_AT) == AT_IN && item_is(items, after + 1, ITEM_LINK)));
}

/* "my 2 batteries are 90 and 3 on 2" */
static bool
is_before_setting_number(const struct items *items, size_t at, size_t after)
{
    return at > 1 && items->list[at - 2].is == ITEM_NUMBER && items->list[at - 2].spent &&
           item_value(items, after, ITEM_AT) == AT_ON && item_free_number(items, after + 1) &&
           !items->list[after + 1].one && items->list[after + 1].value <= 6 * 1000;
}

/* As one of several: "full and 60", "60 one and 70 the other". */
static bool
goes_on_as_charge(const struct items *items, size_t at, size_t before, size_t after,
                  bool after_state)
{
    bool big = items->list[at].value > BIG_MIN * 1000;
    bool and = item_is(items, at - 1, ITEM_AND);
    bool joined =
        after_state && (item_is(items, before, ITEM_AND) || (big && ends_here(items, after)) ||
                        follows_correction(items, at) ||
                        (before < items->count && items->list[before].is == ITEM_PAUSE));

    if (and&&big && ends_here(items, after) && tells_other_before(items, at) &&
        token_among(items->tokens, items->list[at - 1].from, " + plus & mas ")) {
        return true; /* "10 in the machine + 55" */
    }
    return (joined && (big || items->list[at].value / 1000 % 5 == 0)) ||
           (joined && and&&(closes(items, after) || is_in_machine(items, after) ||
                            is_before_setting_number(items, at, after))) ||
           (big && is_named_behind(items, after) &&
            (joined || and || clause_start(items, at) == at));
}

/* "battery 2", "la dos", "number 3" */
static bool
is_labelled(const struct items *items, size_t at)
{
    return items->list[at].value <= BIG_MIN * 1000 &&
           (item_value(items, at - 1, ITEM_BATTERY) == 1 || item_text(items, at - 1, "number") ||
            item_text(items, at - 1, "numero") ||
            (items->spanish && item_text(items, at - 1, "la") &&
             items->list[at - 1].to == items->list[at - 1].from + 1));
}

static bool
is_verb_behind(const struct items *items, size_t at)
{
    return item_is(items, at, ITEM_SHOWS) || item_is(items, at, ITEM_HAVE) ||
           item_is(items, at, ITEM_WAS) ||
           (item_is(items, at, ITEM_LINK) && !item_is(items, at, ITEM_LEFT));
}

/* By what stands right before or behind it: a count, a setting, a name, an hour. */
static bool
is_of_another_kind(const struct items *items, size_t at, size_t before, size_t after)
{
    const struct item *item = &items->list[at];
    bool big = item->value > BIG_MIN * 1000;

    if (!big && is_whole_of_part(items, at)) {
        return true;
    }
    if (!big && item->value > 0 && !item_is(items, before, ITEM_FROM) &&
        item_value(items, after, ITEM_AT) == AT_AT && after + 1 < items->count &&
        (item_in(items, after + 1, UNIT_PERCENT) ||
         (item_free_number(items, after + 1) && items->list[after + 1].value > BIG_MIN * 1000))) {
        return true; /* "down to 1 at 100" */
    }
    if (item->value <= 12 * 1000 && names_battery(items, after) &&
        tokens_phrase_at(items->tokens, tokens_back(item->from, 2), "now at") == 2) {
        return true; /* "now at 11 the other one says 60" */
    }
    if (!big && item_value(items, at + 1, ITEM_OTHER) == 2) {
        return true; /* "35 % + two others" */
    }
    if (is_labelled(items, at) && is_verb_behind(items, after)) {
        return true; /* "battery 2 is on 100" */
    }
    return is_of_something(items, after, big) || (!big && item_is(items, after, ITEM_MODE)) ||
           item_is(items, before, ITEM_MODE) ||
           (item_is(items, before, ITEM_SETTING) && !item_is(items, before, ITEM_SHOWS)) ||
           item_is(items, before, ITEM_NAMED) || item_is(items, before, ITEM_PRICE) ||
           item_is(items, before, ITEM_CLOCK_LEAD);
}

bool
bare_number_at(const struct items *items, size_t at, bool after_state, struct state *state)
{
    const struct item *item = &items->list[at];
    size_t before = at, after = at + 1;
    int steps = 0, value = item->value / 1000;
    bool big = item->value > BIG_MIN * 1000;

    if (!item_free_number(items, at) || item->one || item->times || item->ordinal ||
        item->fraction || item->high > IMPOSSIBLE_MAX * 1000) {
        return false;
    }
    do {
        before = back_over_links(items, before);
    } while (item_is(items, before, ITEM_HEDGE) && steps++ < 3);
    if (item_is(items, after, ITEM_OF) && item_free_number(items, after + 1) &&
        items->list[after + 1].value == 100 * 1000 && item->high <= 100 * 1000) {
        state->count = 3; /* "37 out of 100" */
        state->charge = (struct percent){value, round_up(item->high)};
        return true;
    }
    if (item->high > 100 * 1000) {
        *state = (struct state){.from = at, .count = 1, .cannot = true};
        return is_too_high(items, at, before);
    }
    if (items->spanish && item_text(items, at - 1, "con") && at > 1 &&
        items->list[at - 2].is == ITEM_NUMBER && items->list[at - 2].value <= 12 * 1000 &&
        !items->list[at - 2].one && !item_is(items, after, ITEM_UNIT)) {
        return false; /* "son tres con cuarenta" */
    }
    after += item_is(items, after, ITEM_SOMETHING) ? 1 : 0;
    after += after > at + 1 && item_is(items, after, ITEM_UNIT) ? 1 : 0;
    if (is_of_another_kind(items, at, before, after)) {
        return false;
    }
    if (!(after > at + 2 || led_as_charge(items, at, before, big) ||
          stands_as_charge(items, at, before, after, steps > 0) ||
          (big && (is_taken_along(items, at, after) || is_so_now(items, at, after))) ||
          ((big || tells_other_before(items, at)) && is_of_placed_one(items, at, after)) ||
          telling_number(items, at, after) ||
          goes_on_as_charge(items, at, before, after, after_state))) {
        return false;
    }
    state->count = 1;
    state->cannot = item->negative;
    state->charge = (struct percent){value, round_up(item->high)};
    if (value == state->charge.high) {
        state->charge = hedge(state->charge, item->hedged || is_hedged(items, at, at + 1));
    }
    return true;
}
