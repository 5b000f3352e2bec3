#include "other_numbers.h"

static bool
is_number(const struct items *items, size_t at)
{
    return at < items->count && items->list[at].is == ITEM_NUMBER;
}

/* "cortan la luz de 9 a 15", "de 23 a 5": hours, of which nobody knows more */
static void
hours_of_day(struct items *items, size_t at)
{
    const struct item *first, *last;

    if (!items->spanish || at == 0 || !is_number(items, at) || !is_number(items, at + 2) ||
        !item_text(items, at + 1, "a")) {
        return;
    }
    first = &items->list[at];
    last = &items->list[at + 2];
    if (!first->digits || !last->digits ||
        !token_among(items->tokens, first->from - 1, " de entre ") || first->value < 1000 ||
        first->value > 24 * 1000 || last->value > 24 * 1000 ||
        (first->value <= 12 * 1000 && last->value <= 12 * 1000) ||
        item_is(items, at + 3, ITEM_UNIT) ||
        (first->value < last->value && lexicon_cue(items->tokens, CUE_CHARGING))) {
        return;
    }
    items_spend(items, at, 3);
}

/* "it chirps every ten minutes", "cada medio minuto" */
static void
every_so_long(struct items *items, size_t at)
{
    size_t before = at < items->count ? tokens_back(items->list[at].from, 1) : 0;

    if (token_among(items->tokens, before, " about like como unos ")) {
        before = tokens_back(before, 1);
    }
    if (item_in(items, at, UNIT_MINUTE) && token_among(items->tokens, before, " every cada ")) {
        items_spend(items, at, 1);
    }
}

/* "el contrato corre del 3 al 17": days; of a battery "del 30 al 100" asks how long it charges. */
static void
dates(struct items *items, size_t at)
{
    if (is_number(items, at) && is_number(items, at + 2) && at > 0 &&
        token_is(items->tokens, items->list[at].from - 1, "del") &&
        item_text(items, at + 1, "al") && items->list[at + 2].value <= 31 * 1000 &&
        !item_is(items, at + 3, ITEM_UNIT) && !lexicon_cue(items->tokens, CUE_CHARGING) &&
        !items_any(items, ITEM_BATTERY)) {
        items_spend(items, at, 3);
    }
}

/* "un enchufe de 12", "el fusible es de 10", "es del 98": volts, amperes, a year */
static void
of_circuit(struct items *items, size_t at)
{
    size_t from = sentence_start(items, at), first = at < items->count ? items->list[at].from : 0;

    if (is_number(items, at) && !item_is(items, at + 1, ITEM_UNIT) &&
        !item_is(items, at + 1, ITEM_TO) && !item_is(items, at + 1, ITEM_AT) &&
        ((token_among(items->tokens, first - (first > 0), " de a of ") &&
          items_have_word(items, from, at, " fusible fuse voltios volts toma salida enchufe ") &&
          items->list[at].value <= 24 * 1000 && items->list[at].value >= 10 * 1000) ||
         (token_is(items->tokens, first - (first > 0), "del") &&
          items_have_word(items, from, at, " auto carro coche camioneta modelo ")))) {
        items_spend(items, at, 1);
    }
}

/* "48 horas antes", "a form signed 48 hours in advance", "nine hours worth": no length of a flight
 */
static void
required_length(struct items *items, size_t at)
{
    size_t from = clause_start(items, at), after;
    bool ahead, asked;

    if (!item_in(items, at, UNIT_MINUTE) || !lexicon_cue(items->tokens, CUE_FLIGHT)) {
        return;
    }
    after = items->list[at].to;
    ahead = items->list[at].value >= 6 * 60 &&
            tokens_phrase_at(items->tokens, after,
                             "worth|in advance|ahead of|notice|de anticipacion|antes|de antelacion|"
                             "before the flight|before we fly|beforehand|before flying") > 0;
    asked = items_find(items, from, at, ITEM_BATTERY) < at &&
            items_have_word(items, from, at,
                            " exige exigen pide piden requires require wants demands ") &&
            token_among(items->tokens, tokens_back(items->list[at].from, 1), " para for ");
    if (ahead || asked) { /* "nos exige baterias para nueve horas" */
        items_spend(items, at, 1);
    }
}

/* "i walked 2 miles yesterday", "I slept 9 hours", "I was in hospital for 10 days": over, and
 * nothing that is asked
 */
static void
of_yesterday(struct items *items, size_t at)
{
    size_t from = clause_start(items, at), to = clause_end(items, at);
    bool days = at < items->count && items->list[at].days &&
                items_have_word(items, from, at, " was were been spent estuve estuvo estuvimos ");
    bool slept =
        at < items->count && token_among(items->tokens, tokens_back(items->list[at].from, 1),
                                         " slept dormi durmio dormimos ");
    bool past = items_have_word(items, from, to, " yesterday ayer anoche ") ||
                tokens_phrase_at(items->tokens, at < items->count ? items->list[at].to : 0,
                                 "last night|last week|last weekend|la semana pasada|the other "
                                 "day|el otro dia") > 0;

    if ((item_in(items, at, UNIT_MINUTE) || item_in(items, at, UNIT_MILE) ||
         item_in(items, at, UNIT_KM)) &&
        (slept || past || days) && items_find(items, from, to, ITEM_BATTERY) == to &&
        items_find(items, from, to, ITEM_FULL) == to &&
        items_find(items, from, to, ITEM_AGO) == to &&
        items_find(items, from, to, ITEM_POWER) == to) {
        items_spend(items, at, 1);
    }
}

/* "the clock is 10 minutes slow", "llegan 20 minutos tarde", "give me 5 minutes" */
static void
of_a_clock(struct items *items, size_t at)
{
    if (item_in(items, at, UNIT_MINUTE) &&
        (token_among(items->tokens, items->list[at].to,
                     " slow fast late early tarde atrasado atrasada adelantado adelantada ") ||
         token_among(items->tokens, tokens_back(items->list[at].from, 1), " gimme deme dame ") ||
         tokens_phrase_at(items->tokens, tokens_back(items->list[at].from, 2), "give me") == 2)) {
        items_spend(items, at, 1);
    }
}

/* "its 90 outside", "hace 35 afuera": of the air */
static void
of_weather(struct items *items, size_t at)
{
    if (is_number(items, at) && !item_is(items, at + 1, ITEM_UNIT) &&
        (token_among(items->tokens, items->list[at].to, " outside outdoors afuera ") ||
         tokens_phrase_at(items->tokens, items->list[at].to,
                          "in the shade|in the sun|en la sombra|out there|out here") > 0) &&
        (item_is(items, at - 1, ITEM_NOW_IS) ||
         token_among(items->tokens, tokens_back(items->list[at].from, 1),
                     " its is hits hit hace estamos near about like "))) {
        items_spend(items, at, 1);
    }
}

void
other_number_put_aside(struct items *items, size_t at)
{
    hours_of_day(items, at);
    every_so_long(items, at);
    dates(items, at);
    of_circuit(items, at);
    required_length(items, at);
    of_yesterday(items, at);
    of_a_clock(items, at);
    of_weather(items, at);
}
