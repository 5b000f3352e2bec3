#include "states.h"

#include <string.h>

#include "asked_states.h"
#include "bare_numbers.h"
#include "beside_numbers.h"
#include "beside_part.h"
#include "corrections.h"
#include "hedges.h"
#include "lights.h"
#include "other_things.h"
#include "short_of_full.h"
#include "state_goals.h"
#include "state_nouns.h"
#include "states_past.h"
#include "tellings.h"

/* ---- what is denied, past, of something else ------------------------------------------------ */

static bool
is_denied(const struct items *items, size_t at)
{
    size_t before = back_over_links(items, at);

    if (token_is(items->tokens, tokens_back(items->list[at].from, 1), "quite") && before < at &&
        item_is(items, before, ITEM_NOT)) {
        return false; /* "not quite 75" */
    }
    return before < items->count && item_is(items, before, ITEM_NOT) &&
           !item_is(items, before, ITEM_LINK) &&
           (before == 0 || corrections_from(items) != before); /* "at 45 no 35" */
}

/* "the tank is half full" */
static bool
is_of_cylinder(const struct items *items, size_t at, size_t after)
{
    size_t from = at > clause_start(items, at) + 3 ? at - 3 : clause_start(items, at);

    if (items_any(items, ITEM_CYLINDER) && !items_any(items, ITEM_BATTERY)) {
        return true;
    }
    return items_find(items, from, at, ITEM_CYLINDER) < at ||
           items_find(items, after, after + 2 < items->count ? after + 2 : items->count,
                      ITEM_CYLINDER) < (after + 2 < items->count ? after + 2 : items->count);
}

/* ---- percent and words
 * --------------------------------------------------------------------------- */

static bool
percent_at(const struct items *items, size_t at, struct state *state)
{
    const struct item *item = &items->list[at];

    if (!item_in(items, at, UNIT_PERCENT)) {
        return false;
    }
    state->count = 1;
    state->cannot = item->negative || item->high > 100 * 1000;
    state->charge = (struct percent){item->value / 1000, round_up(item->high)};
    if (!state->cannot && item->hedged) {
        state->charge = hedge(state->charge, true);
    } else if (!state->cannot && item->value == item->high) {
        state->charge = hedge(state->charge, is_hedged(items, at, at + 1));
    }
    return true;
}

/* "lleno de gente", "full of people": of what is no battery */
static bool
is_full_of_something(const struct items *items, size_t at)
{
    size_t after = items->list[at].to;

    return item_is(items, at, ITEM_FULL) && token_among(items->tokens, after, " of de ") &&
           !token_among(items->tokens, after + 1,
                        " charge juice power carga energia bateria pila ") &&
           !item_is(items, at + 1, ITEM_OTHER) && !item_is(items, at + 2, ITEM_OTHER) &&
           !item_is(items, at + 2, ITEM_BATTERY) && !item_is(items, at + 2, ITEM_NUMBER);
}

/* Words that are no charge where time, money or a way stands behind them. */
static bool
is_part_of_other(const struct items *items, size_t at, size_t after)
{
    return item_is(items, after, ITEM_UNIT) || item_text(items, after, "past") ||
           item_text(items, after, "flight") || item_text(items, after, "trip") ||
           item_is(items, after, ITEM_CYLINDER) ||
           (at > 0 && items->list[at - 1].is == ITEM_AMOUNT && item_is(items, at - 1, ITEM_UNIT)) ||
           items->list[at].spent;
}

static int
fraction_of(const struct items *items, size_t at)
{
    if (item_is(items, at, ITEM_HALF)) {
        return 500;
    }
    if (item_is(items, at, ITEM_QUARTER)) {
        return 250;
    }
    if (item_is(items, at, ITEM_FRACTION)) {
        return item_value(items, at, ITEM_FRACTION);
    }
    return items->list[at].is == ITEM_NUMBER && items->list[at].fraction ? items->list[at].value
                                                                         : 0;
}

/* "a third" is a battery in "a third one is dead", "a fourth at 25". */
static bool
is_third_battery(const struct items *items, size_t at)
{
    size_t from = clause_start(items, at);

    return (item_value(items, at, ITEM_FRACTION) == 333 ||
            token_is(items->tokens, items->list[at].to - 1, "fourth")) &&
           (items_have_word(
                items, from, at,
                " lend lends lent loans loaned borrow borrowed borrowing lending rent rented "
                "renting buy bought gave need needs ") ||
            item_is(items, at + 1, ITEM_BATTERY) || item_text(items, at + 1, "one") ||
            item_text(items, at + 1, "is") || item_text(items, at + 1, "that") ||
            item_value(items, at + 1, ITEM_AT) == AT_AT || item_is(items, at + 1, ITEM_HAVE));
}

/* "half the town" */
static bool
half_of_the(const struct items *items, size_t at)
{
    return item_is(items, at, ITEM_HALF) &&
           token_among(items->tokens, items->list[at + 1 < items->count ? at + 1 : at].from,
                       " the my our this that ");
}

/* "half loaded", "media manana", "en el medio": no half of a battery */
static bool
is_half_of_other(const struct items *items, size_t at)
{
    size_t last = items->list[at].to - 1;

    if (item_text(items, at, "medio") &&
        !token_among(items->tokens, tokens_back(items->list[at].from, 1),
                     " a marca dice casi como queda ")) {
        return true;
    }
    if (token_is(items->tokens, last, "medias")) {
        return token_among(items->tokens, tokens_back(last, 2), " quedan queda quede quedo yo se ");
    }
    if (at > 1 && item_is(items, at - 1, ITEM_AND) && item_is(items, at - 2, ITEM_WORD) &&
        items->list[at - 2].meaning_count == 0 && item_text(items, at, "a") &&
        clause_start(items, at) < at - 1) {
        return !item_is(items, at + 1, ITEM_BATTERY); /* "a good yard and a half" */
    }
    return token_among(items->tokens, last, " half halfway medio media quarter third ") &&
           (item_is(items, at, ITEM_HALF) || item_is(items, at, ITEM_QUARTER) ||
            item_is(items, at, ITEM_FRACTION)) &&
           has_noun_behind(items, at + (half_of_the(items, at) ? 1 : 0)) &&
           items_find(items, clause_start(items, at), clause_end(items, at), ITEM_BATTERY) ==
               clause_end(items, at);
}

/* "el cuarto donde carga", "cuarto lleno" */
static bool
is_room(const struct items *items, size_t at)
{
    size_t first = items->list[at].from;

    if (item_text(items, at, "un") && items->list[at].to == first + 2 &&
        token_is(items->tokens, first + 1, "cuarto")) {
        return token_among(items->tokens, items->list[at].to,
                           " sin con donde que frio chico chiquito grande cerrado oscuro aparte ");
    }
    if (item_text(items, at, "cuarto") && !token_among(items->tokens, tokens_back(first, 1),
                                                       " a al marca dice como casi queda un ")) {
        return true; /* "en el otro cuarto", "compartir cuarto" */
    }
    return item_text(items, at, "cuarto") &&
           (item_is(items, at + 1, ITEM_FULL) || item_is(items, at + 1, ITEM_CHARGE) ||
            (first > 0 &&
             token_among(items->tokens, first - 1, " el del mi su al este ese nuestro ")));
}

static bool
fraction_at(const struct items *items, size_t at, struct state *state)
{
    int part = fraction_of(items, at);
    size_t after = at + 1;
    bool hedged;

    if (part > 0 && item_is(items, at - 1, ITEM_BETWEEN) && item_is(items, after, ITEM_AND) &&
        fraction_of(items, after + 1) > part) { /* "between half and three quarters" */
        state->charge = (struct percent){part / 10, round_up(fraction_of(items, after + 1) * 100)};
        state->count = 3;
        return true;
    }
    if (part == 0 || is_room(items, at) || is_half_of_other(items, at) ||
        (item_is(items, at, ITEM_DIM) && items_any(items, ITEM_LIGHT)) ||
        tokens_phrase_at(items->tokens, items->list[at].to,
                         "de vuelta|de regreso|de ida|de camino|de bajada|de subida") > 0 ||
        is_part_of_other(items, at, after) || is_third_battery(items, at) ||
        (item_is(items, at, ITEM_QUARTER) && after < items->count &&
         items->list[after].is == ITEM_NUMBER && items->list[after].digits)) {
        return false;
    }
    if (part < 1000 && is_used_up(items, at, after)) {
        part = 1000 - part;
        after += item_is(items, after, ITEM_CHARGE) ? 1 : 0;
    }
    state->charge = (struct percent){part / 10, (part + 9) / 10};
    state->cannot = part > 1000;
    hedged = is_hedged(items, at, after);
    after += item_is(items, after, ITEM_FULL) ? 1 : 0; /* "three quarters full" */
    after += part == 500 && item_value(items, after, ITEM_CHARGE) == 0 ? 1 : 0; /* "half empty" */
    after += item_text(items, after, "-") && item_is(items, after + 1, ITEM_FULL) ? 2 : 0;
    state->count = after - at; /* "a three-quarters-full one" */
    if (!state->cannot) {
        state->charge = beside_part(items, at, hedge(state->charge, hedged));
    }
    return true;
}

static bool
ends_in_plural(const struct items *items, size_t at)
{
    const char *text = items->tokens->list[items->list[at].to - 1].text;
    size_t length = strlen(text);

    return items->spanish && length > 2 && text[length - 1] == 's' &&
           (text[length - 2] == 'a' || text[length - 2] == 'o');
}

/* "it is haaf full": a word that is not understood says how full. */
static bool
is_unclear(const struct items *items, size_t at)
{
    return at > 1 && item_is(items, at, ITEM_FULL) && item_is(items, at - 1, ITEM_WORD) &&
           token_among(items->tokens, items->list[at - 1].from - 1,
                       " is are its was were s es esta estan ");
}

/* "the flow is maxed out", "el flujo a tope" */
static bool
is_of_dial(const struct items *items, size_t at)
{
    size_t before = back_over_links(items, at), i;

    if (before >= at || item_is(items, at + 1, ITEM_BATTERY) ||
        item_is(items, before, ITEM_OTHER)) { /* "la de la maquina" */
        return false;
    }
    for (i = items->list[before].from; i < items->list[before].to; i++) {
        if (token_among(items->tokens, i,
                        " turned turn set dial flow pulse knob setting machine flujo dosis perilla "
                        "pulso maquina aparato ")) {
            return true;
        }
    }
    return false;
}

/* "both are charged to 80", "is charged about half": how far, and not all the way. */
static bool
is_charged_so_far(const struct items *items, size_t at)
{
    size_t next = at + 1;

    if (!token_is(items->tokens, items->list[at].to - 1, "charged") ||
        !token_among(items->tokens, items->list[at].from, " are is both all ")) {
        return false;
    }
    while (next < at + 5 && (item_is(items, next, ITEM_LINK) || item_is(items, next, ITEM_AT) ||
                             item_is(items, next, ITEM_TO) || item_is(items, next, ITEM_HEDGE) ||
                             item_is(items, next, ITEM_ARTICLE) || item_is(items, next, ITEM_BY))) {
        next++;
    }
    return item_free_number(items, next) || item_in(items, next, UNIT_PERCENT) ||
           item_is(items, next, ITEM_HALF) || item_is(items, next, ITEM_QUARTER) ||
           item_is(items, next, ITEM_FRACTION) || item_is(items, next, ITEM_CHARGE) ||
           (next < items->count && items->list[next].is == ITEM_CLOCK) ||
           (item_text(items, sentence_end(items, at), "?") &&
            token_among(items->tokens, items->list[sentence_start(items, at)].from,
                        " are is will when do does can "));
}

static bool
word_at(const struct items *items, size_t at, struct state *state)
{
    int charge = item_value(items, at, ITEM_CHARGE);
    bool full = item_is(items, at, ITEM_FULL);

    if ((!full && charge < 0) || is_part_of_other(items, at, at + 1) ||
        is_full_of_something(items, at) || is_of_no_battery(items, at) ||
        is_charged_so_far(items, at) || item_text(items, at - 1, "how") ||
        item_text(items, at - 1, "tan") || is_unclear(items, at) || is_of_dial(items, at)) {
        return false;
    }
    state->charge =
        full ? (struct percent){100, 100} : (struct percent){charge / 1000, charge % 1000};
    if (charge >= 0 && charge / 1000 == 0 && charge % 1000 >= 25 &&
        is_slight(items, items->list[at].from)) {
        state->charge.low = state->charge.high - BESIDE; /* "a smidge" + "under a quarter" */
    }
    state->count = 1;
    state->adjacent = item_free_number(items, at - 1) && at > 0;
    state->plural = ends_in_plural(items, at);
    return true;
}

/* "the other", "la segunda" */
static bool
names_another(const struct items *items, size_t at)
{
    return item_is(items, at, ITEM_OTHER) || item_is(items, at, ITEM_ORDINAL);
}

/* "none on the third", "nada en la segunda": empty, where a battery is named */
static bool
nothing_at(const struct items *items, size_t at, struct state *state)
{
    if (!token_among(items->tokens, items->list[at].from, " none nothing nada zip ") ||
        items->list[at].to != items->list[at].from + 1 ||
        !(names_another(items, at + 1) ||
          (token_among(items->tokens, items->list[at].to, " on in en ") &&
           names_another(items, at + 2))) ||
        !tells_other_before(items, at)) {
        return false;
    }
    state->count = 1;
    return true;
}

/* "went from 50 to 62": the first is of then, the second of now and no goal. */
static bool
has_gone_from(const struct items *items, size_t at)
{
    return (items->list[at].is == ITEM_NUMBER || item_in(items, at, UNIT_PERCENT)) &&
           item_is(items, at + 1, ITEM_TO) &&
           tokens_phrase_at(items->tokens, tokens_back(items->list[at].from, 2),
                            "went from|gone from|came from|fell from|dropped from|climbed from|"
                            "paso de|subio de|bajo de") == 2;
}

/* "from 100 to 60", "from 4 lights to 2": the second is of now, unless it is charged. */
static bool
has_sunk(const struct items *items, size_t after, const struct state *state)
{
    const struct item *next = after + 1 < items->count ? &items->list[after + 1] : NULL;
    int first = state->is_lights ? state->lights : state->charge.low;

    if (item_is(items, state->from, ITEM_FULL) && item_text(items, after, "to") &&
        token_among(items->tokens, items->list[state->from].from - 1, " from de ")) {
        return item_is(items, after + 1, ITEM_HALF) || item_is(items, after + 1, ITEM_QUARTER) ||
               item_is(items, after + 1, ITEM_CHARGE); /* "goes from full to half" */
    }
    if (has_gone_from(items, state->from)) {
        return true;
    }
    return item_is(items, after, ITEM_TO) && !item_text(items, after, "-") && (next != NULL) &&
           (next->is == ITEM_NUMBER || next->is == ITEM_AMOUNT) && next->value / 1000 < first &&
           (item_is(items, back_over_links(items, state->from), ITEM_FROM) ||
            item_text(items, state->from - 1, "from"));
}

/* "sixty something", "70 y pico": up to the next ten */
static void
add_something(const struct items *items, struct state *state)
{
    size_t after = state->from + state->count;

    if (item_is(items, after, ITEM_SOMETHING) && !state->is_lights &&
        items->list[state->from].value % 10000 == 0) {
        state->charge.low = items->list[state->from].value / 1000;
        state->charge.high = state->charge.low + 9 > 100 ? 100 : state->charge.low + 9;
        state->count++;
        state->count += item_is(items, after + 1, ITEM_UNIT) ? 1 : 0;
    }
}

/* "none of my 3 batteries are full", "ninguna llena" */
static bool
is_none_of_them(const struct items *items, size_t at)
{
    size_t from = items->list[clause_start(items, at)].from, i;

    for (i = items->list[at].from; item_is(items, at, ITEM_FULL) && i > from; i--) {
        if (token_among(items->tokens, i - 1, " none neither ninguna ninguno nobody nadie ") ||
            (token_is(items->tokens, i - 1, "no") &&
             token_among(items->tokens, i, " batteries battery packs ones baterias pilas "))) {
            return true;
        }
        if (token_among(items->tokens, i - 1, " but pero except menos one una ")) {
            return false;
        }
    }
    return false;
}

/* "it lost 20 percent", "used 30": how much less, not how much */
static bool
is_difference(const struct items *items, size_t at)
{
    size_t first = items->list[at].from;

    first -= first > 0 && token_among(items->tokens, first - 1, " about like around como un el ");
    return first > 0 && (item_in(items, at, UNIT_PERCENT) || items->list[at].is == ITEM_NUMBER) &&
           token_among(items->tokens, first - 1,
                       " lost loses lose losing used uses using burned burns burn by perdio perdi "
                       "pierde gasto gaste gasta subido sube subio gained gains gain ");
}

static const char more_words[] = " more over above mas pasa llega ";

/* "no more than half", "no tiene mas de la mitad" */
static bool
tells_at_most(const struct items *items, size_t at)
{
    size_t from = items->list[clause_start(items, at)].from, more = items->list[at].from, i;

    while (more > from && token_among(items->tokens, more - 1, " than of de a the la un una ")) {
        more--;
    }
    more -= more < items->list[at].from && more > from ? 1 : 0;
    if (!token_among(items->tokens, more, more_words)) {
        more -= more > from ? 1 : 0; /* "not over half" */
    }
    for (i = more; i > from && more - i < 3; i--) {
        if (token_among(items->tokens, i - 1,
                        " no not isnt arent never doesnt dont hasnt nunca ni ")) {
            return token_among(items->tokens, more, more_words);
        }
    }
    return false;
}

/* A goal, which is remembered: where nothing else is told, it may be what charging starts at. */
static bool
is_wished(struct items *items, size_t at, size_t after, bool full)
{
    bool dies = item_is(items, at - 1, ITEM_ARTICLE) && /* "how long til a full one dies" */
                token_among(items->tokens, items->list[after - 1].to,
                            " dies quits runs ends expires goes ");

    items->list[at].wished =
        !dies && !(at > 1 && has_gone_from(items, at - 2)) && state_is_goal(items, at, after, full);
    return items->list[at].wished;
}

bool
state_at(struct items *items, size_t at, bool after_state, struct state *state)
{
    bool full = item_is(items, at, ITEM_FULL) ||
                ((item_in(items, at, UNIT_PERCENT) || items->list[at].is == ITEM_NUMBER) &&
                 items->list[at].value == 100 * 1000);
    size_t after, now;
    bool at_most;

    *state = (struct state){.from = at};
    if (items->list[at].spent) {
        return false;
    }
    if (short_of_full_at(items, at, state)) {
        return true;
    }
    if (!lights_at(items, at, state) && !fraction_of_lights_at(items, at, state) &&
        !percent_at(items, at, state) && !fraction_at(items, at, state) &&
        !word_at(items, at, state) && !nothing_at(items, at, state) &&
        !telling_word_at(items, at, state) && !bare_number_at(items, at, after_state, state)) {
        return false;
    }
    add_something(items, state);
    if (!state->is_lights && !state->cannot && items->list[at].value == items->list[at].high) {
        state->charge = hedge_under(items, at, state->charge);
    }
    at_most = !state->is_lights && !state->cannot && tells_at_most(items, at);
    if (at_most) {
        state->charge = (struct percent){0, state->charge.low};
    }
    after = at + state->count;
    if (is_of_other_thing(items, at) || (!state->is_lights && is_of_weather(items, at)) ||
        has_sunk(items, after, state)) {
        items_spend(items, at, state->count);
        return false;
    }
    if (state->is_lights && lights_are_past(items, at, after, &now)) {
        items_spend(items, at, state->count);
        if (now == items->count) {
            return false; /* those of now have their own word */
        }
        items_spend(items, now, 1);
        state->lights = items->list[now].value / 1000;
        state->from = now;
        state->count = 1;
        return true;
    }
    if (is_none_of_them(items, at) || is_difference(items, at) ||
        (!state->is_lights && state_is_asked(items, at, after))) {
        items_spend(items, at, state->count);
        return false;
    }
    if (!state->is_lights &&
        (is_wished(items, at, after, full) || (!at_most && is_denied(items, at)) ||
         state_is_past(items, at, after) || is_of_cylinder(items, at, after))) {
        items_spend(items, at, state->count);
        return false;
    }
    return true;
}
