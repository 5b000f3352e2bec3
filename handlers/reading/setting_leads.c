#include "setting_leads.h"

#include <string.h>

#include "settings.h"
#include "told.h"

enum { LEAD_REACH = 3, ORDERED_MAX = 6 };

/* What behind the number says that it counts something. */
bool
counts_something(const struct items *items, size_t at, bool strong)
{
    static const enum item_is things[] = {ITEM_BATTERY, ITEM_FULL,  ITEM_CHARGE, ITEM_LIGHT,
                                          ITEM_UNIT,    ITEM_EVENT, ITEM_AM,     ITEM_PM};
    size_t i;

    if (items->list[at - 1].value % 1000 != 0) {
        return false;
    }
    for (i = 0; i < sizeof things / sizeof things[0]; i++) {
        if (item_is(items, at, things[i]) && !(item_value(items, at, ITEM_BATTERY) == 1 &&
                                               (strong || items->list[at - 1].value != 1000))) {
            return true; /* "setting 2 battery at 50" goes on with the battery */
        }
    }
    return item_value(items, at, ITEM_OTHER) == 2 ||
           (!strong && (item_text(items, at, "other") || item_text(items, at, "spare") ||
                        item_text(items, at, "extra"))) ||
           item_text(items, at, "flights") || item_text(items, at, "vuelos") ||
           item_text(items, at, "of") || (!strong && item_text(items, at, ":")) ||
           item_is(items, at, ITEM_OCLOCK) || item_is(items, at, ITEM_DAYPART) ||
           item_is(items, at, ITEM_TONIGHT) ||
           (at < items->count && items->list[at].is == ITEM_NUMBER && items->list[at].fraction);
}

static const char of_breathing[] = " oxygen o2 unit machine concentrator flow it him her me us dad "
                                   "mom wife husband breathing breathe long hours hrs last lasts "
                                   "run runs im hes shes time lpm set go give dialed sits resting "
                                   "walking sitting sleeping setup puffing device box ";

/* "plugged in at 6", "250 mg at 10" */
static bool
is_of_a_time(const struct items *items, size_t at)
{
    size_t from = clause_start(items, at);

    if (at < items->count && (item_is(items, at, ITEM_FULL) || item_is(items, at, ITEM_CHARGE)) &&
        items_find(items, from, at, ITEM_WAS) < at) {
        return true; /* "was full at 9" */
    }
    if (at < items->count &&
        token_among(items->tokens, items->list[at].to - 1, " him her me us ") &&
        token_among(items->tokens, items->list[at].to - 2,
                    " collect get meet see call grab fetch text tell wake ring remind join ")) {
        return true; /* "I collect her at 4" */
    }
    if (item_is(items, at, ITEM_HOMEWARD) || item_is(items, at, ITEM_ARRIVE) ||
        (item_is(items, at, ITEM_WORD) && items->list[at].meaning_count == 0 && !items->spanish &&
         !token_among(items->tokens, items->list[at].to - 1, of_breathing))) {
        return true; /* "fish fry at 6", "comes back at 5" */
    }
    while (at > from && at < items->count && item_is(items, at, ITEM_LINK) &&
           !item_is(items, at, ITEM_EVENT)) {
        at--; /* "dinner is at 6" */
    }
    return item_in(items, at, UNIT_OTHER) || item_is(items, at, ITEM_THEN_LEFT) ||
           item_is(items, at, ITEM_DEPART) || item_is(items, at, ITEM_EVENT) ||
           item_value(items, at, ITEM_GOING) == LEG_WAIT ||
           (item_is(items, at, ITEM_POWER) &&
            item_value(items, at, ITEM_POWER) != POWER_WORD_BATTERY);
}

/* "lasts at 2", "how long at 3", "im at 2": a battery or who breathes is spoken of before. */
static bool
is_of_running(const struct items *items, size_t at)
{
    static const char words[] = " long hours hrs last lasts run runs it im hes shes hours horas "
                                "dura duran rinde tiempo time lpm set go give ";
    size_t from = sentence_start(items, at), i;

    if (tokens_phrase_at(items->tokens, tokens_back(items->list[at].from, 3),
                         "we are at|i am at|he is at|she is at") == 3) {
        return true;
    }
    for (i = from; i < at; i++) {
        if (item_is(items, i, ITEM_BATTERY) || item_is(items, i, ITEM_LASTS) ||
            item_is(items, i, ITEM_FULL) || item_is(items, i, ITEM_CYLINDER) ||
            item_is(items, i, ITEM_USE) || token_among(items->tokens, items->list[i].from, words)) {
            return true;
        }
    }
    return items->list[at].value % 1000 != 0;
}

/* "en 2 carros": a noun that is none of ours */
bool
counts_plural(const struct items *items, size_t at)
{
    const char *text;
    size_t length;

    if (!item_is(items, at, ITEM_WORD) || items->list[at - 1].value % 1000 != 0) {
        return false;
    }
    text = items->tokens->list[items->list[at].from].text;
    length = strlen(text);
    return length > 3 && text[length - 1] == 's' &&
           !token_among(items->tokens, items->list[at].from, " thanks cuantas cuantos pues ");
}

bool
is_lone_number(const struct items *items, size_t at)
{
    size_t from = clause_start(items, at);

    if (at > from &&
        (items->list[at - 1].is == ITEM_NUMBER || item_in(items, at - 1, UNIT_PERCENT))) {
        from = at; /* "battery 95 number 3" */
    }
    while (from < at && (item_is(items, from, ITEM_LINK) || item_is(items, from, ITEM_AT) ||
                         item_is(items, from, ITEM_HEDGE))) {
        from++;
    }
    return from == at && (item_text(items, at, "number") || item_text(items, at, "numero")) &&
           (at + 2 == clause_end(items, at) || item_is(items, at + 3, ITEM_SETTING)) &&
           items->list[at + 1].is == ITEM_NUMBER && items->list[at + 1].value <= TENTHS_MAX * 100;
}

/* "71 % / pulse / 3 / sitting" */
static bool
is_behind_mode(const struct items *items, size_t at)
{
    return at > 1 && item_is(items, at - 2, ITEM_MODE) && items->list[at - 1].is == ITEM_PAUSE &&
           (at + 1 >= items->count || items->list[at + 1].is == ITEM_PAUSE ||
            items->list[at + 1].is == ITEM_STOP);
}

/* "comes back at 5", "daughter back at 4"; but "now back at 2" */
static bool
is_coming_back(const struct items *items, size_t at)
{
    static const char set[] =
        " now its it is him her me set put turned dial im hes shes went go , . ";

    if (item_text(items, at, "back") && token_is(items->tokens, items->list[at].to - 1, "at") &&
        items->list[at].from > 0) {
        return !token_among(items->tokens, items->list[at].from - 1, set);
    }
    return item_text(items, at, "back") && items->list[at].from > 0 &&
           token_among(items->tokens, items->list[at].from - 1,
                       " come comes coming get gets getting be come go going head heading were "
                       "arrive arrives drive ride walk way ");
}

bool
is_ordered(const struct items *items, size_t at)
{
    static const char by[] = " order orders ordered prescription prescriptions script rx paper "
                             "papers sheet card slip label doctor doctors doc docs therapist "
                             "physician nurse letter receta papel hoja ficha tarjeta doctora "
                             "enfermera etiqueta md prescriber pulmonologist ";
    size_t from = clause_start(items, at), before = at;

    while (before > from &&
           (item_is(items, before - 1, ITEM_LINK) || item_is(items, before - 1, ITEM_AT))) {
        before--;
    }
    return before > from && items->list[at].value <= ORDERED_MAX * 1000 &&
           (item_is(items, before - 1, ITEM_SHOWS) || item_is(items, before - 1, ITEM_CLAIM) ||
            token_among(items->tokens, items->list[before].from - 1, " for is says say reads ")) &&
           items_have_word(items, from, before, by) &&
           items_find(items, from, at, ITEM_BATTERY) == at;
}

/* "anda en 2", "va en el 2" */
static bool
is_where_it_runs(const struct items *items, size_t at)
{
    return item_is(items, at - 1, ITEM_SHOWS) &&
           token_among(items->tokens, items->list[at - 1].to - 1, " on en ");
}

bool
is_behind_activity(const struct items *items, size_t at)
{
    return at > 1 && items->list[at].value <= ORDERED_MAX * 1000 &&
           token_among(items->tokens, items->list[at].from - 1, " con at en on ") &&
           item_is(items, at - 2, ITEM_ACTIVITY) &&
           item_value(items, at - 2, ITEM_ACTIVITY) != ACTIVITY_FLIGHT &&
           (clause_end(items, at) == at + 1 || item_is(items, at + 1, ITEM_AND)) &&
           !item_is(items, at + 2, ITEM_ALL) && !item_is(items, at + 2, ITEM_BOTH) &&
           !item_is(items, at + 2, ITEM_FULL);
}

bool
is_turned_by_person(const struct items *items, size_t at)
{
    size_t to = items->list[at].from;

    return to > 3 && items->list[at].value <= ORDERED_MAX * 1000 &&
           token_is(items->tokens, to - 1, "to") &&
           token_among(items->tokens, to - 2, " down up back ") &&
           token_among(items->tokens, to - 3, " go goes going went drop drops ") &&
           token_among(items->tokens, to - 4, " i he she we hes shes im were dad mom they you ");
}

bool
is_number_used(const struct items *items, size_t at)
{
    size_t word = at < items->count ? tokens_back(items->list[at].from, 2) : 0;

    if (!item_free_number(items, at)) {
        return false;
    }
    word -= word > 0 && token_among(items->tokens, word, " el the ") ? 1 : 0;
    return token_among(items->tokens, tokens_back(items->list[at].from, 1), " number numero ") &&
           token_among(items->tokens, word,
                       " using use uses run runs running uso usa usamos usando ") &&
           items->list[at].value <= ORDERED_MAX * 1000 &&
           (clause_stops(items, at + 1) || item_is(items, at + 1, ITEM_AND));
}

/* What leads to the number: a word for setting or mode, or a bare "on 2", "en 2". */
bool
is_led(const struct items *items, size_t at, bool *strong)
{
    size_t i;

    if (at > 0 && is_lone_number(items, at - 1)) {
        *strong = true;
        return true;
    }
    if (tokens_phrase_at(items->tokens, tokens_back(items->list[at].from, 3),
                         "en el numero|en el nivel|on the number|at flow number") == 3 ||
        tokens_phrase_at(items->tokens, tokens_back(items->list[at].from, 2),
                         "at number|on number|flow number|en numero|en nivel") == 2) {
        *strong = true;
        return true;
    }
    if (is_number_used(items, at) || is_turned_by_person(items, at)) {
        *strong = true;
        return true;
    }
    for (i = at; i > 0 && at - i < LEAD_REACH; i--) {
        if (item_is(items, i - 1, ITEM_SETTING) || item_is(items, i - 1, ITEM_MODE) ||
            item_is(items, i - 1, ITEM_USE) || item_text(items, i - 1, "set")) {
            *strong = true;
            return true;
        }
        if (!item_is(items, i - 1, ITEM_LINK) && !item_is(items, i - 1, ITEM_AT) &&
            !item_is(items, i - 1, ITEM_HEDGE) && !item_is(items, i - 1, ITEM_OF) &&
            !item_is(items, i - 1, ITEM_NOW) && items->list[i - 1].is != ITEM_SIGN &&
            !item_is(items, i - 1, ITEM_TO) && !item_text(items, i - 1, ":")) {
            break;
        }
    }
    if (is_behind_mode(items, at) || is_ordered(items, at) || is_behind_activity(items, at)) {
        *strong = true;
        return true;
    }
    *strong = false;
    return (item_value(items, at - 1, ITEM_AT) == AT_ON && !is_coming_back(items, at - 1)) ||
           (item_text(items, at - 1, "el") && item_value(items, at - 2, ITEM_AT) == AT_ON) ||
           is_where_it_runs(items, item_text(items, at - 1, "el") ? at - 1 : at) ||
           (item_value(items, at - 1, ITEM_AT) == AT_AT && !items->list[at].negative &&
            items->list[at].value <= ORDERED_MAX * 1000 && !is_of_a_time(items, at - 2) &&
            is_of_running(items, at)) ||
           (item_is(items, at - 1, ITEM_HEDGE) && item_is(items, at - 2, ITEM_AT));
}

bool
leads_mode(const struct items *items, size_t at)
{
    size_t next = at + 1;

    next += item_is(items, next, ITEM_AT) || item_is(items, next, ITEM_OF) ? 1 : 0;
    return item_is(items, next, ITEM_MODE);
}

/* "3 on the dial", "a 2 setting"; but "battery 2 setting 3" */
bool
is_before_setting(const struct items *items, size_t at)
{
    size_t next = at + 1;

    if (tokens_phrase_at(items->tokens, items->list[at].to,
                         "is my number|is his number|is her number|is my usual|is the number|"
                         "is my setting|is what im on|es mi numero|es mi nivel|es mi ajuste") > 0) {
        return items->list[at].value <= TENTHS_MAX * 100; /* "2 is my number" */
    }
    next += item_value(items, next, ITEM_AT) == AT_ON ? 1 : 0;
    while (item_is(items, next, ITEM_LINK) && !item_is(items, next, ITEM_SETTING)) {
        next++; /* "3 is the dial" */
    }
    return item_is(items, next, ITEM_SETTING) &&
           token_among(items->tokens, items->list[next].from, " dial setting knob ") &&
           (next + 1 >= items->count || items->list[next + 1].is == ITEM_STOP ||
            item_is(items, next + 1, ITEM_AND) || items->list[next + 1].is == ITEM_PAUSE);
}
