/* What is wished for: see state_goals.h. */
#include "state_goals.h"

#include "clocks.h"
#include "hedges.h"

enum { PHRASE_REACH = 4, WAY_UP_MIN = 20 };

/* "full by 7", "llenas para las 8", "full by then" */
static bool
is_due(const struct items *items, size_t at)
{
    size_t i;

    for (i = at + 1; item_is(items, at, ITEM_BY) && i < at + 4 && i < items->count; i++) {
        if (items->list[i].is == ITEM_CLOCK || items->list[i].is == ITEM_NUMBER ||
            item_is(items, i, ITEM_DAY) || item_is(items, i, ITEM_DAYPART) ||
            item_is(items, i, ITEM_DEPART) || item_text(items, i, "then") ||
            item_is(items, i, ITEM_EVENT)) {
            return !item_text(items, at, "for") || items->list[i].is == ITEM_CLOCK;
        }
    }
    return false;
}

/* "1 at 30 on the wall. both full?" */
static bool
is_asked(const struct items *items, size_t before, size_t after)
{
    return item_text(items, after, "?") &&
           (item_is(items, before, ITEM_BOTH) || item_is(items, before, ITEM_ALL)) &&
           (items_any(items, ITEM_POWER) || items_any(items, ITEM_DEPART));
}

static bool
needs(const struct items *items, size_t at)
{
    return token_among(items->tokens, items->list[at].from,
                       " need needs necesito ocupo necesitamos ") ||
           (items->list[at].to - items->list[at].from == 2 &&
            token_is(items->tokens, items->list[at].to - 1, "need"));
}

/* "dead", "empty": nobody wishes for it, but "time to empty" and "til its dead" do not tell it. */
static bool
is_low_word(const struct items *items, size_t at)
{
    int charge = item_value(items, at, ITEM_CHARGE);

    return charge >= 0 && charge % 1000 <= 10;
}

/* "a que hora me quedo sin nada" */
static bool
is_feared(const struct items *items, size_t at)
{
    size_t first = items->list[at].from;

    return first > 0 && (token_among(items->tokens, first - 1,
                                     " quede queden quedar quedarme quedarse quedamos ") ||
                         (first > 1 && token_among(items->tokens, first - 1, " quedo queda ") &&
                          token_among(items->tokens, first - 2, " me se ")));
}

/* "del 30 al 100": "al" stands between the ends of a way up. */
static bool
ends_way_from(const struct items *items, size_t at)
{
    return item_text(items, at, "al") && at >= 2 && item_is(items, at - 2, ITEM_FROM) &&
           (items->list[at - 1].is == ITEM_NUMBER || item_in(items, at - 1, UNIT_PERCENT)) &&
           lexicon_cue(items->tokens, CUE_CHARGING);
}

/* "get from 0 to 50 in an hour", "subir de 10 a 80": the higher end of a way up is wished for. */
static bool
ends_way_up(const struct items *items, size_t at)
{
    const struct item *low = at > 1 ? &items->list[at - 2] : NULL;
    size_t before = at > 2 ? at - 3 : at;
    bool asks_way = tokens_have(items->tokens, "falta de|falta del|tarda de|how long from");
    bool is_to = item_is(items, at - 1, ITEM_TO) || item_text(items, at - 1, "al") ||
                 item_text(items, at - 1, "a");

    if (low == NULL || at < 3 || !is_to || item_text(items, at - 1, "or") ||
        item_text(items, at - 1, "o") || item_text(items, at - 1, "-") ||
        (low->is != ITEM_NUMBER && !item_in(items, at - 2, UNIT_PERCENT)) ||
        items->list[at].value < low->value + (asks_way ? 1 : WAY_UP_MIN * 1000)) {
        return false;
    }
    return item_is(items, before, ITEM_FROM) || item_text(items, before, "from") ||
           item_text(items, before, "de") || item_text(items, before, "del") ||
           item_text(items, before, "desde");
}

/* "how long till it says a hundred", but not "plugged in when it said 15" */
static bool
is_awaited(const struct items *items, size_t at)
{
    static const char past[] =
        " said showed displayed dropped decia marcaba iba andaba marco dijo ";
    size_t from = clause_start(items, at), i = back_over_links(items, at);

    if (!item_is(items, i, ITEM_SHOWS)) {
        return false;
    }
    for (; i > from && at - i < PHRASE_REACH + 2; i--) {
        if (token_among(items->tokens, items->list[i - 1].from,
                        " till til until hasta before antes cuando when ")) {
            return !item_is(items, i - 1, ITEM_THEN_LEFT) && !items_have_word(items, i, at, past) &&
                   items_find(items, i, at, ITEM_WAS) == at &&
                   (lexicon_cue(items->tokens, CUE_CHARGING) || items_any(items, ITEM_POWER));
        }
        if (!item_is(items, i - 1, ITEM_LINK) && !item_is(items, i - 1, ITEM_SHOWS) &&
            !item_is(items, i - 1, ITEM_ARTICLE) && !item_is(items, i - 1, ITEM_AT) &&
            !item_is(items, i - 1, ITEM_NOW_IS) && !item_is(items, i - 1, ITEM_BATTERY)) {
            return false;
        }
    }
    return false;
}

/* "llenas hoy a las 10?", "will it be full at 5 pm" */
static bool
is_due_at_clock(const struct items *items, size_t after)
{
    size_t i = after;

    while (i < after + 3 && (item_is(items, i, ITEM_DAY) || item_is(items, i, ITEM_TONIGHT) ||
                             item_is(items, i, ITEM_AT) || item_is(items, i, ITEM_CLOCK_LEAD) ||
                             item_is(items, i, ITEM_HEDGE) || item_is(items, i, ITEM_DAYPART))) {
        i++;
    }
    return i < items->count && items->list[i].is == ITEM_CLOCK && clock_role(items, i) == CLOCK_BY;
}

/* "the one with a dent that is full": told of a battery at the beginning of the clause */
static bool
begins_with_one(const struct items *items, size_t at)
{
    size_t first = clause_start(items, at);

    while (item_is(items, first, ITEM_AND) || item_is(items, first, ITEM_LINK)) {
        first++;
    }
    return first < at && items->list[first].is == ITEM_NUMBER && items->list[first].one &&
           items_find(items, first, at, ITEM_WILL_BE) == at;
}

/* "almost dead, 60, topped off": the last of charges told */
static bool
ends_list(const struct items *items, size_t at)
{
    return at > 1 && (item_is(items, at - 1, ITEM_AND) || items->list[at - 1].is == ITEM_PAUSE) &&
           items->list[at - 2].spent &&
           (items->list[at - 2].is == ITEM_NUMBER || item_in(items, at - 2, UNIT_PERCENT)) &&
           items->list[at - 2].value > 9 * 1000 && clause_end(items, at) == at + 1;
}

/* "2 full", "the other is full", "full ones": some batteries are said to be so already. */
static bool
has_own_subject(const struct items *items, size_t at)
{
    size_t before = back_over_links(items, at), last = items->list[at].to - 1;

    if (at > clause_start(items, at) &&
        (item_is(items, at - 1, ITEM_THEN_LEFT) ||
         item_value(items, at - 1, ITEM_POWER) == POWER_WORD_BATTERY)) {
        return true; /* "unplugged fully charged at 7" */
    }
    if (ends_list(items, at) || begins_with_one(items, at) ||
        (at + 1 < items->count && items->list[at + 1].one)) {
        return true; /* "and a full one" */
    }
    if (item_is(items, at + 1, ITEM_AT) &&
        (item_is(items, at + 2, ITEM_OTHER) || item_is(items, at + 2, ITEM_ORDINAL) ||
         (at + 2 < items->count && items->list[at + 2].one))) {
        return true; /* "full on the other" */
    }
    if (before < items->count && item_is(items, before, ITEM_WORD) &&
        token_among(items->tokens, items->list[before].from,
                    " thinks think believes says guesses cree dice piensa ")) {
        return true; /* "the spare he thinks is full" */
    }
    while (before < items->count &&
           (item_is(items, before, ITEM_AT) || item_is(items, before, ITEM_SHOWS) ||
            item_is(items, before, ITEM_BATTERY) || item_is(items, before, ITEM_HEDGE))) {
        if (item_is(items, before, ITEM_BATTERY) && item_value(items, before, ITEM_BATTERY) == 1) {
            return true;
        }
        before = back_over_links(items, before);
    }
    return before < items->count
               ? items->list[before].is == ITEM_NUMBER || item_is(items, before, ITEM_OTHER) ||
                     item_is(items, before, ITEM_ORDINAL) || item_is(items, before, ITEM_HAVE) ||
                     item_is(items, at - 1, ITEM_ARTICLE) ||
                     items->list[before].is == ITEM_AMOUNT ||
                     token_among(items->tokens, last, " one ones fulls ") ||
                     item_is(items, at + 1, ITEM_BATTERY) || item_text(items, at - 1, "la")
               : item_is(items, at - 1, ITEM_ARTICLE) || item_is(items, at + 1, ITEM_BATTERY) ||
                     token_among(items->tokens, last, " one ones fulls ");
}

/* A wall, a car or a plug is spoken of. */
static bool
is_fed(const struct items *items)
{
    size_t at;

    for (at = 0; at < items->count; at++) {
        int power = item_value(items, at, ITEM_POWER);

        if (power == POWER_WORD_WALL || power == POWER_WORD_CAR || power == POWER_WORD_PLUG) {
            return !lexicon_cue(items->tokens, CUE_TRIP);
        }
    }
    return false;
}

/* When charging is asked about, "full" without batteries of its own is what it should become. */
static bool
is_what_charging_is_for(const struct items *items, size_t at)
{
    size_t from = clause_start(items, at);

    return item_is(items, at, ITEM_FULL) &&
           (lexicon_cue(items->tokens, CUE_CHARGING) || is_fed(items)) &&
           !lexicon_cue(items->tokens, CUE_FLIGHT) && !has_own_subject(items, at) &&
           items_find(items, from, at, ITEM_WAS) == at;
}

/* "la bateria A llena", "la A llena": which battery, but "la bateria a 100" is a way up. */
static bool
is_letter_a(const struct items *items, size_t at, size_t charge)
{
    return item_text(items, at, "a") && at > 0 &&
           (item_is(items, charge, ITEM_FULL) || item_is(items, charge, ITEM_CHARGE) ||
            item_is(items, charge, ITEM_HALF)) &&
           (item_value(items, at - 1, ITEM_BATTERY) == 1 || item_text(items, at - 1, "la"));
}

/* "it cant go below 20", "que no baje de 20": a bound, no charge. */
static bool
is_bound(const struct items *items, size_t at)
{
    static const char moves[] =
        " go get drop fall dip goes gets drops falls going getting keep stay "
        "bajar baje bajen bajara llegar llegue ";
    size_t first = items->list[at].from, i;

    if (first == 0 || !(item_in(items, at, UNIT_PERCENT) || items->list[at].is == ITEM_NUMBER ||
                        item_is(items, at, ITEM_HALF) || item_is(items, at, ITEM_QUARTER))) {
        return false;
    }
    for (i = first; i > 0 && first - i < 3; i--) {
        if (token_among(items->tokens, i - 1, " below under beneath above over de del debajo ") &&
            i > 1 && token_among(items->tokens, i - 2, moves)) {
            return true;
        }
    }
    return false;
}

/* "is it possible to be at 100 by noon", "deben estar al cien": what is to become. */
static bool
is_to_become(const struct items *items, size_t at, size_t after)
{
    size_t verb = items->list[at].from;

    while (verb > 0 && token_among(items->tokens, verb - 1, " at al en a back all ")) {
        verb--;
    }
    if (verb < 2) {
        return false;
    }
    return (token_is(items->tokens, verb - 1, "be") &&
            token_among(items->tokens, verb - 2, " to can must will gotta ") &&
            item_is(items, after, ITEM_BY)) ||
           (token_among(items->tokens, verb - 1, " estar quedar llegar ") &&
            token_among(items->tokens, verb - 2, " deben debe deberian tienen tiene que "));
}

/* "¿carga completa?": asked by itself */
static bool
is_asked_by_itself(const struct items *items, size_t at, size_t after, bool full)
{
    return full && at == clause_start(items, at) && item_text(items, after, "?") &&
           (lexicon_cue(items->tokens, CUE_CHARGING) || items_any(items, ITEM_DEPART)) &&
           token_among(items->tokens, items->list[at].to - 1, " completa charge charged ");
}

/* "3 horas parados sin nada": no plug, and no word of a battery. */
static bool
is_without_plug(const struct items *items, size_t at)
{
    size_t i;

    if (!token_is(items->tokens, items->list[at].to - 1, "nada")) {
        return false;
    }
    for (i = clause_start(items, at); i < at; i++) {
        if (item_in(items, i, UNIT_MINUTE)) {
            return true;
        }
    }
    return false;
}

/* The clause has one of the words before `at`. */
static bool
is_behind(const struct items *items, size_t at, const char *words)
{
    return items_have_word(items, clause_start(items, at), at, words);
}

/* "start with both full" */
static bool
is_started_with(const struct items *items, size_t at)
{
    size_t from = items->list[clause_start(items, at)].from, i;

    for (i = items->list[at].from; i > from + 1; i--) {
        if (token_among(items->tokens, i - 1, " with con ")) {
            return token_among(items->tokens, i - 2,
                               " start starting starts begin leave leaving out off go going "
                               "empiezo empezar empezamos arranco arrancamos salgo salimos salir ");
        }
    }
    return false;
}

/* "I want to leave with both full", "should we start with a full one?" */
static bool
is_start_wished(const struct items *items, size_t at)
{
    return is_started_with(items, at) &&
           is_behind(items, at,
                     " want wanna need needs should must hope hoping like gotta have quiero "
                     "queremos necesito necesitamos ocupo debo debemos deberia tengo tenemos ");
}

/* "before they are both dead", "a que hora me quedo sin nada" */
static bool
is_low_goal(const struct items *items, size_t at, size_t before)
{
    while (item_is(items, before, ITEM_BOTH) || item_is(items, before, ITEM_ALL) ||
           item_is(items, before, ITEM_OTHER)) {
        before = back_over_links(items, before);
    }
    return item_text(items, at - 1, "to") || item_text(items, before, "before") ||
           is_feared(items, at) ||
           (!item_is(items, at - 1, ITEM_ARTICLE) && item_is(items, before, ITEM_WILL_BE));
}

/* "let me know", "text me", "avisame": within the last words before `token` */
static bool
is_asked_to_tell(const struct items *items, size_t token, size_t from)
{
    size_t i;

    for (i = token; i > from && token - i < PHRASE_REACH; i--) {
        if (token_among(items->tokens, i - 1,
                        " know text txt tell warn alert ping buzz message msg remind holler shout "
                        "call notify warning heads nudge beep wake page mensaje texto avisa avise "
                        "avisen avisan avisas avisame aviseme avisenme avisanos dime digame "
                        "diganme recuerdame recuerdeme llamame llameme escribeme texteame ")) {
            return true;
        }
    }
    return false;
}

/* "let me know when nearly empty", "text me if it drops to 20", "avisame cuando esten vacias": what
 * is to come. But "tell me when 2 full ones run out" and "let me know if 2 full will do" tell. */
static bool
is_told_of_later(const struct items *items, size_t at)
{
    static const char leads[] = " its it is are im i am theyre they them the that this one ones "
                                "battery batteries both either all nearly almost about only "
                                "just close near down to at on be get gets goes go hit hits "
                                "reach reaches drop drops fall falls run runs running low under "
                                "below este esten esta estan se me quede queden quedan llegue "
                                "lleguen baje bajen bateria baterias la las una casi a al en por "
                                "ya un como ";
    static const char moves[] =
        " get gets go goes hit hits reach reaches drop drops fall falls run "
        "runs llegue llega baje baja quede queda ";
    size_t from = items->list[clause_start(items, at)].from, i = items->list[at].from;
    bool moved = false;

    if (i > 0 && token_among(items->tokens, i - 1, " one ones both all the ")) {
        return false; /* "when one full" */
    }
    for (; i > from && token_among(items->tokens, i - 1, leads); i--) {
        moved = moved || token_among(items->tokens, i - 1, moves);
    }
    return i > from &&
           (token_among(items->tokens, i - 1, " when once before cuando antes ") ||
            (moved && token_among(items->tokens, i - 1, " if si "))) &&
           is_asked_to_tell(items, i - 1, from);
}

/* By the words that lead to it, from `before` on backwards. */
static bool
is_led_as_goal(const struct items *items, size_t at, size_t before, size_t after, bool full)
{
    int steps = 0;

    while (before < items->count && steps++ < PHRASE_REACH) {
        if (item_is(items, before, ITEM_SHOWS) || item_is(items, before, ITEM_HAVE)) {
            return false;
        }
        if (item_text(items, before, "before") || item_text(items, before, "antes") ||
            item_is(items, before, ITEM_WILL_BE) ||
            ((full || item_is(items, after, ITEM_BY)) && needs(items, before))) {
            return true;
        }
        if (item_is(items, at, ITEM_CHARGE)) {
            return false;
        }
        if (item_is(items, before, ITEM_TO) && !item_text(items, before, "-") &&
            !item_text(items, before, "o") && !item_text(items, before, "or") &&
            (full || lexicon_cue(items->tokens, CUE_CHARGING))) {
            if (full && token_among(items->tokens, items->list[at].to - 1, " one ones ")) {
                return false; /* "swapped to a fresh one" */
            }
            return full || !item_text(items, before, "a") ||
                   is_behind(items, before, " cargar cargarla cargarlas subir subirla subirlas ") ||
                   items_find(items, clause_start(items, at), before, ITEM_FROM) < before;
        }
        if (!item_is(items, before, ITEM_HEDGE) && !item_is(items, before, ITEM_ALL) &&
            !token_among(items->tokens, items->list[before].to - 1, " least menos minimo ") &&
            !item_is(items, before, ITEM_BOTH) && !item_is(items, before, ITEM_AT) &&
            !item_is(items, before, ITEM_BATTERY) &&
            !(items->list[before].is == ITEM_NUMBER && full &&
              item_is(items, back_over_links(items, before), ITEM_WILL_BE) &&
              lexicon_cue(items->tokens, CUE_CHARGING))) {
            return false;
        }
        before = back_over_links(items, before);
    }
    return false;
}

/* "no tiene que ser llena", "doesnt have to be full" */
static bool
is_not_needed(const struct items *items, size_t at)
{
    size_t from = items->list[clause_start(items, at)].from, i = items->list[at].from;

    while (i > from && token_among(items->tokens, i - 1,
                                   " be have to need needs it them all que ser estar tiene tienen "
                                   "necesita necesito hace falta este esten ocupo a both ")) {
        i--;
    }
    return i > from && i + 1 < items->list[at].from &&
           token_among(items->tokens, i - 1, " no dont doesnt not neednt didnt ");
}

/* "sank to 5" tells, "from 20 to 80" and "til 80" wish. */
bool
state_is_goal(const struct items *items, size_t at, size_t after, bool full)
{
    size_t before = back_over_links(items, at);

    if (at > 1 && item_text(items, at - 1, "do") && item_is(items, at - 1, ITEM_LINK)) {
        return false; /* "what should it do full" */
    }
    if (tokens_phrase_at(items->tokens, items->list[after - 1].to,
                         "me basta|me conformo|me es suficiente|is good enough|is plenty|"
                         "would be enough|will be enough|is all i need|is enough for me|"
                         "would be plenty|will be plenty") > 0 &&
        lexicon_cue(items->tokens, CUE_CHARGING)) {
        return true; /* "con 70 me basta" */
    }
    if (tokens_phrase_at(items->tokens, items->list[after - 1].to,
                         "is what i want|is what we want|is the goal|is the plan|is what i need|"
                         "es lo que quiero|es lo que ocupo|es la idea") > 0) {
        return true;
    }
    if (is_told_of_later(items, at) || (full && is_not_needed(items, at))) {
        return true;
    }
    if (is_low_word(items, at)) {
        return is_low_goal(items, at, before) || is_without_plug(items, at);
    }
    if (is_letter_a(items, before, at) ||
        (is_started_with(items, at) && is_behind(items, at, " if si "))) {
        return false; /* "if I start with both full at 7 am" */
    }
    if (full && items->list[at].from > 1 &&
        token_among(items->tokens, items->list[at].to - 1, " charge completa ") &&
        token_among(items->tokens, items->list[at].from - 1, " a una ") &&
        token_among(items->tokens, items->list[at].from - 2,
                    " for to until till til para hasta ")) {
        return true; /* "how long for a full charge" */
    }
    if (full && item_text(items, back_over_links(items, at), "para") &&
        !item_text(items, at - 1, "la")) {
        return true; /* "cuanto le falta para llena" */
    }
    if (is_start_wished(items, at) || is_awaited(items, at) ||
        (full && is_due_at_clock(items, after)) || is_what_charging_is_for(items, at) ||
        ends_way_from(items, before) || ends_way_up(items, at) || is_bound(items, at) ||
        is_to_become(items, at, after) || is_asked_by_itself(items, at, after, full)) {
        return true;
    }
    if (full &&
        (is_due(items, after) ||
         token_among(items->tokens, items->list[at].to, " from takes take desde ") ||
         (item_text(items, after, "when") && !item_is(items, after, ITEM_THEN_LEFT) &&
          items_find(items, clause_start(items, at), at, ITEM_WAS) == at &&
          !item_is(items, after + 1, ITEM_THEN_LEFT) && !item_is(items, after + 1, ITEM_WAS)) ||
         item_text(items, after, "cuando"))) {
        return true;
    }
    if (full && is_asked(items, before, after)) {
        return true;
    }
    return is_led_as_goal(items, at, before, after, full);
}
