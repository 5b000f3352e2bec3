#include "settings.h"

#include "charges.h"
#include "corrections.h"
#include "setting_leads.h"
#include "settings_each.h"
#include "subjects.h"

enum { TENTHS_MIN = 1, CHANGE_REACH = 10 };

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
    for (i = at + 1; i < to && i < at + CHANGE_REACH; i++) {
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

/* "Three, on pulse." */
static bool
is_sentence_before_mode(const struct items *items, size_t at)
{
    size_t mode = at + 2;

    mode += item_is(items, mode, ITEM_AT) ? 1 : 0;
    return sentence_start(items, at) == at && at + 1 < items->count &&
           items->list[at + 1].is == ITEM_PAUSE && item_is(items, mode, ITEM_MODE) &&
           sentence_end(items, at) == mode + 1 && items->list[at].value <= 6 * 1000;
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
    if (is_sentence_before_mode(items, at)) {
        return true;
    }
    return (led && !counts_something(items, at + 1, strong)) ||
           (leads_mode(items, at) && !item->one);
}

/* "It was on 3" does not hold any more. */
static bool
is_past(const struct items *items, size_t at)
{
    size_t from = clause_start(items, at), i;

    for (i = at > from + 4 ? at - 4 : from; i < at; i++) {
        if ((item_is(items, i, ITEM_WAS) && item_text(items, i, "was")) ||
            items_have_word(items, i, i + 1, " estaba iba andaba tenia traia ")) {
            return true;
        }
    }
    return token_is(items->tokens, items->list[at - (at > 0)].from, "had") &&
           items_have_word(items, at, sentence_end(items, at),
                           " last yesterday ago before earlier was "); /* "had me on 4 last week" */
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

/* "66 right now, 2." */
static bool
is_behind_charge(const struct items *items, size_t at)
{
    size_t last = at - 1;

    if (!item_text(items, last, ",")) {
        return false;
    }
    while (last > 0 &&
           (item_is(items, last - 1, ITEM_NOW) || item_is(items, last - 1, ITEM_LEFT))) {
        last--;
    }
    return last > 0 && last < at - 1 && items->list[last - 1].spent &&
           (item_in(items, last - 1, UNIT_PERCENT) || items->list[last - 1].is == ITEM_NUMBER);
}

/* "60 and a full one. 2. how long": a sentence of nothing but a number, where charges are told. */
static void
read_setting_alone(struct items *items, struct told *told)
{
    size_t at;

    for (at = 1; !told->has_setting && told_has_charge(told) && at < items->count; at++) {
        if (may_be_setting(items, at) && !items->list[at].one && items->list[at].digits &&
            items->list[at].value <= 6 * 1000 && sentence_end(items, at) == at + 1 &&
            ((sentence_start(items, at) == at && told->kind != TOLD_WATCH) ||
             is_behind_charge(items, at))) {
            told->has_setting = true;
            told->setting_tenths = items->list[at].value / 100;
            items_spend(items, at, 1);
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

        if (item_value(items, at, ITEM_UNIT) == UNIT_FLOW && told->flow_tenths == 0 &&
            token_among(items->tokens, tokens_back(items->list[at].from, 1), " un a one ")) {
            told->flow_tenths = 10; /* "a liter a minute" */
        }
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
    read_setting_alone(items, told);
    setting_of_one(items, told);
    take_higher(items, told);
}
