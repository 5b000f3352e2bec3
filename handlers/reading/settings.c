#include "settings.h"

#include <string.h>

#include "charges.h"
#include "corrections.h"
#include "settings_each.h"
#include "subjects.h"

enum { TENTHS_MIN = 1, TENTHS_MAX = 100, LEAD_REACH = 3 };

/* "pulse or continuous" tells neither. */
static bool
is_compared(const struct items *items, size_t at)
{
    size_t next = at + 1;

    next += item_is(items, next, ITEM_LINK) ? 1 : 0;
    return (item_text(items, next, "or") || item_text(items, next, "vs") ||
            item_text(items, next, "versus") || item_text(items, next, "o") ||
            item_text(items, next, "than") || item_text(items, next, "que") ||
            item_is(items, next, ITEM_AND)) &&
           (item_is(items, next + 1, ITEM_MODE) || item_is(items, next + 2, ITEM_MODE)) &&
           !item_text(items, next, "but");
}

static void
read_mode(const struct items *items, struct told *told)
{
    size_t at;

    for (at = 0; at < items->count; at++) {
        if (!item_is(items, at, ITEM_MODE)) {
            continue;
        }
        if (is_compared(items, at)) {
            told->has_mode = false;
            return;
        }
        if (item_is(items, at - 1, ITEM_NOT)) {
            continue;
        }
        told->has_mode = true;
        told->mode = (enum mode)item_value(items, at, ITEM_MODE);
    }
}

/* What behind the number says that it counts something. */
static bool
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
static bool
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

/* "comes back at 5" */
static bool
is_coming_back(const struct items *items, size_t at)
{
    return item_text(items, at, "back") && items->list[at].from > 0 &&
           token_among(items->tokens, items->list[at].from - 1,
                       " come comes coming get gets getting be come go going head heading were "
                       "arrive arrives drive ride walk way ");
}

/* What leads to the number: a word for setting or mode, or a bare "on 2", "en 2". */
static bool
is_led(const struct items *items, size_t at, bool *strong)
{
    size_t i;

    if (at > 0 && is_lone_number(items, at - 1)) {
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
    if (is_behind_mode(items, at)) {
        *strong = true;
        return true;
    }
    *strong = false;
    return (item_value(items, at - 1, ITEM_AT) == AT_ON && !is_coming_back(items, at - 1)) ||
           (item_is(items, at - 1, ITEM_SHOWS) && /* "anda en 2" */
            token_among(items->tokens, items->list[at - 1].to - 1, " on en ")) ||
           (item_value(items, at - 1, ITEM_AT) == AT_AT && !items->list[at].negative &&
            !is_of_a_time(items, at - 2) && is_of_running(items, at)) ||
           (item_is(items, at - 1, ITEM_HEDGE) && item_is(items, at - 2, ITEM_AT));
}

static bool
leads_mode(const struct items *items, size_t at)
{
    size_t next = at + 1;

    next += item_is(items, next, ITEM_AT) || item_is(items, next, ITEM_OF) ? 1 : 0;
    return item_is(items, next, ITEM_MODE);
}

/* "3 on the dial", "a 2 setting"; but "battery 2 setting 3" */
static bool
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

/* Half steps up to ten, of which nothing else is counted. */
static bool
may_be_setting(const struct items *items, size_t at)
{
    const struct item *item = &items->list[at];

    return at < items->count && item_free_number(items, at) && item->value > 0 &&
           item->value <= TENTHS_MAX * 100 && item->value % 500 == 0 && item->value == item->high &&
           !item->negative && !item->ordinal && !item->times && !item->fraction &&
           !counts_something(items, at + 1, false);
}

static size_t
over_turning(const struct items *items, size_t at)
{
    while (item_is(items, at, ITEM_TO) || item_text(items, at, "al") ||
           item_text(items, at, "back") || item_text(items, at, "up") ||
           item_text(items, at, "down") || item_text(items, at, "a") ||
           item_is(items, at, ITEM_LINK)) {
        at++;
    }
    return at;
}

/* "from 2 to 3", "del 3 al 2": where it leads to; items->count if it is none. */
static size_t
changed_to(const struct items *items, size_t at)
{
    size_t to = over_turning(items, at + 1);

    bool from = item_is(items, at - 1, ITEM_FROM) || item_text(items, at - 1, "from") ||
                item_text(items, at - 1, "del") || item_text(items, at - 1, "de");
    bool way = to > at + 1 && !item_text(items, to - 1, "or") && !item_text(items, to - 1, "o") &&
               !item_text(items, to - 1, "-");

    if (to >= items->count) {
        return items->count;
    }
    if (from && way && may_be_setting(items, to)) {
        return to;
    }
    return items->count;
}

/* "on 2 but went to 3": what moved is the setting spoken of before. */
static size_t
went_to(const struct items *items, size_t at)
{
    size_t to = sentence_end(items, at), i;
    bool but = false;

    if (item_value(items, at - 1, ITEM_AT) != AT_ON && !item_is(items, at - 1, ITEM_SETTING) &&
        !item_is(items, at - 1, ITEM_MODE)) {
        return items->count;
    }
    for (i = at + 1; i < to && i < at + LEAD_REACH + 7; i++) {
        if (item_is(items, i, ITEM_BATTERY) || item_is(items, i, ITEM_LIGHT) ||
            items->list[i].is == ITEM_AMOUNT || items->list[i].is == ITEM_CLOCK) {
            break;
        }
        but = but || item_text(items, i, "but") || item_text(items, i, "pero") ||
              item_is(items, i, ITEM_NOW);
        if (may_be_setting(items, i) && !items->list[i].one &&
            token_among(items->tokens, items->list[i - 1].to - 1, " to a al ") &&
            (but || item_is(items, i - 1, ITEM_SHOWS))) {
            return i;
        }
    }
    return items->count;
}

void
settings_changed(struct items *items)
{
    size_t at, to;

    for (at = 1; at < items->count; at++) {
        if (!may_be_setting(items, at)) {
            continue;
        }
        to = changed_to(items, at);
        to = to < items->count ? to : went_to(items, at);
        if (to < items->count) {
            items_spend(items, at, 1);
            items->list[to].is = ITEM_AMOUNT;
            items->list[to].unit = UNIT_FLOW;
        }
    }
}

/* "it is on 3, no wait, 2" */
static bool
corrects_setting(const struct items *items, size_t at, const struct told *told)
{
    bool now = (item_is(items, at - 1, ITEM_NOW) || item_is(items, at - 1, ITEM_NOW_IS)) &&
               (items_find(items, sentence_start(items, at), at, ITEM_WAS) < at ||
                items_have_word(items, sentence_start(items, at), at, " had ")) &&
               at + 1 == clause_end(items, at); /* "was at 3, now 2" */

    return told->has_setting && (now || corrections_lead(items, at)) &&
           items->list[at].value <= 10 * 1000 && !items->list[at].one;
}

static bool
is_setting(const struct items *items, size_t at, const struct told *told)
{
    const struct item *item = &items->list[at];
    bool led, strong = false;

    if (item_in(items, at, UNIT_FLOW)) {
        return !item->spent;
    }
    if (!item_free_number(items, at) || item->ordinal || item->times || item->fraction ||
        item->value % 100 != 0) {
        return false;
    }
    led = is_led(items, at, &strong);
    if (item->one && item_value(items, at - 1, ITEM_AT) == AT_ON &&
        at + 1 == clause_end(items, at) &&
        token_among(items->tokens, items->list[at - 1].from - 1,
                    " , im its hes shes is running set it he she estoy esta ando anda voy ")) {
        return true; /* "im on one" */
    }
    if (item->one && !item->negative &&
        (!strong || item_is(items, at + 1, ITEM_AT) || item_is(items, at + 1, ITEM_LINK) ||
         item_is(items, at + 1, ITEM_HAVE))) {
        return false; /* "full on one", "one at 60": a battery */
    }
    led = led && (strong || !counts_plural(items, at + 1));
    led = led || corrects_setting(items, at, told) || is_before_setting(items, at);
    return (led && !counts_something(items, at + 1, strong)) ||
           (leads_mode(items, at) && !item->one);
}

/* "It was on 3" does not hold any more. */
static bool
is_past(const struct items *items, size_t at)
{
    size_t from = clause_start(items, at), i;

    for (i = at > from + 4 ? at - 4 : from; i < at; i++) {
        if (item_is(items, i, ITEM_WAS) && item_text(items, i, "was")) {
            return true;
        }
    }
    return false;
}

/* "2 or 3", "between 2 and 3": the higher, for it uses more; tenths. The other one is spent. */
static int
higher_tenths(struct items *items, size_t at)
{
    const struct item *item = &items->list[at];
    int value = item->high > item->value ? item->high : item->value;
    bool between = item_is(items, at - 1, ITEM_BETWEEN) && item_is(items, at + 1, ITEM_AND);

    if ((between || token_among(items->tokens, item->to, " or o ")) &&
        may_be_setting(items, at + 2) && !items->list[at + 2].one) {
        value = items->list[at + 2].value > value ? items->list[at + 2].value : value;
        items_spend(items, at + 2, 1);
    }
    return value / 100;
}

/* "if I turn it down to 1", "what if I walk on 3": the case that is asked about */
static bool
is_supposed(const struct items *items, size_t at)
{
    return items_have_word(items, clause_start(items, at), at,
                           " if si suppose supposing suponiendo ") &&
           !items_have_word(items, clause_start(items, at), at, " not sure know wonder ");
}

static void
read_setting(struct items *items, struct told *told)
{
    bool past = false, supposed = false;
    size_t at;

    for (at = 0; at < items->count; at++) {
        int tenths;

        if (!is_setting(items, at, told)) {
            continue;
        }
        tenths = higher_tenths(items, at);
        items_spend(items, at, 1);
        if (items->list[at].negative) {
            told->impossible = true;
            told->impossible_what = items_words(items, at, 1);
            told->missing |= MISSING_SETTING;
        } else if (tenths >= TENTHS_MIN && tenths <= TENTHS_MAX &&
                   (!told->has_setting || past || !is_past(items, at)) &&
                   (!supposed || is_supposed(items, at))) {
            past = is_past(items, at);
            supposed = is_supposed(items, at);
            told->has_setting = true;
            told->setting_tenths = tenths;
        }
    }
}

/* "turned it from 3 liters to 2", "pase de 3 litros a 2" */
static bool
is_turned_from(const struct items *items, size_t at)
{
    size_t to = over_turning(items, at + 1);

    return at > 0 && token_among(items->tokens, items->list[at].from - 1, " from de del ") &&
           to > at + 1 && may_be_setting(items, to) &&
           token_among(items->tokens, items->list[to].from - 1, " to a al ");
}

/* Of a cylinder the number is a flow. */
static void
read_flow(struct items *items, struct told *told)
{
    size_t at;

    for (at = 0; at < items->count; at++) {
        bool flow = item_in(items, at, UNIT_FLOW) && !items->list[at].spent;

        if (!flow && !(told->flow_tenths == 0 && is_setting(items, at, told))) {
            continue;
        }
        items_spend(items, at, 1);
        if (flow && is_turned_from(items, at)) {
            told->flow_tenths = items->list[over_turning(items, at + 1)].value / 100;
            items_spend(items, over_turning(items, at + 1), 1);
            return;
        }
        if (items->list[at].negative) {
            told->impossible = true;
            told->impossible_what = items_words(items, at, 1);
            told->missing |= MISSING_FLOW;
        } else {
            told->flow_tenths = higher_tenths(items, at);
        }
    }
}

/* "my prescription is 2 but up here they told me 3": of two settings the higher, for it uses more.
 */
static void
take_higher(struct items *items, struct told *told)
{
    size_t at;

    for (at = 1; told->has_setting && at < items->count; at++) {
        int tenths = items->list[at].value / 100;

        if (may_be_setting(items, at) && !items->list[at].one && at + 1 == clause_end(items, at) &&
            token_among(items->tokens, items->list[at].from - 1,
                        " me us him her said says use uso usar "
                        "subo subirle subir ") &&
            tenths > told->setting_tenths && tenths <= 6 * 10) {
            told->setting_tenths = tenths;
            items_spend(items, at, 1);
        }
    }
}

void
settings_read(struct items *items, struct told *told)
{
    read_mode(items, told);
    if (told->kind == TOLD_CYLINDER && (!told->has_mode || told->mode == MODE_CONTINUOUS)) {
        read_flow(items, told);
        return;
    }
    settings_of_each(items, told);
    read_setting(items, told);
    setting_of_one(items, told);
    take_higher(items, told);
}
