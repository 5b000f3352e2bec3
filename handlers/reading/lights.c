/* Gauge lights: see lights.h. */
#include "lights.h"

enum { LIGHTS_MAX = 10, GAUGE_LIGHTS = 4 };

static size_t
over_all_lights(const struct items *items, size_t at, int *all)
{
    size_t next = at;

    if (!item_is(items, next, ITEM_OF) && !item_text(items, next, "/")) {
        return at;
    }
    next++;
    if (next < items->count &&
        token_among(items->tokens, items->list[next].from, " them em those these ellas esas ")) {
        return at; /* "two of them 4 lights": batteries */
    }
    next += item_is(items, next, ITEM_LINK) || item_text(items, next, "its") ? 1 : 0;
    if (!item_free_number(items, next) || items->list[next].value % 1000 != 0) {
        return at;
    }
    *all = items->list[next].value / 1000;
    return next + 1;
}

/* Items of "and a half" behind lights: a light that is half lit, which is not counted. */
static size_t
dim_half_at(const struct items *items, size_t at)
{
    size_t next = at + 1;

    next += item_is(items, next, ITEM_ARTICLE) ? 1 : 0;
    return item_is(items, at, ITEM_AND) && item_is(items, next, ITEM_HALF) &&
                   !item_is(items, next + 1, ITEM_BATTERY) && !item_is(items, next + 1, ITEM_FULL)
               ? next + 1 - at
               : 0;
}

/* "of the 4 lights 2 are lit": what the gauge has. */
static bool
is_gauge(const struct items *items, size_t at)
{
    size_t before = at;

    while (before > 0 &&
           (item_is(items, before - 1, ITEM_LINK) || item_text(items, before - 1, "its")) &&
           !item_is(items, before - 1, ITEM_OF)) {
        before--;
    }
    return item_is(items, before - 1, ITEM_OF) && before > 0 &&
           (before < 2 || items->list[before - 2].is != ITEM_NUMBER) &&
           !item_is(items, before - 2, ITEM_LIGHT) && !item_is(items, before - 2, ITEM_BATTERY) &&
           !item_is(items, before - 2, ITEM_OTHER);
}

static size_t
over_article(const struct items *items, size_t at)
{
    return at + (item_is(items, at, ITEM_LINK) && !item_is(items, at, ITEM_LIGHT) ? 1U : 0U);
}

/* "4 lights, but the 4th one is blinking", "4 lights, one of them blinking": one less */
static bool
one_of_them_is_dim(const struct items *items, size_t after, int lit)
{
    size_t to = sentence_end(items, after), i;
    bool of_them = false, last;

    for (i = after; i < to && i < after + 8; i++) {
        if (item_is(items, i, ITEM_DIM)) {
            return of_them;
        }
        of_them =
            of_them ||
            (item_is(items, i, ITEM_ORDINAL) && item_value(items, i, ITEM_ORDINAL) == lit) ||
            (i < items->count && items->list[i].ordinal && items->list[i].value == lit * 1000) ||
            (items->list[i].one && token_among(items->tokens, items->list[i].to, " of de ") &&
             token_among(items->tokens, items->list[i].to + 1, " them those ellas esas "));
        last = items_have_word(items, i, i + 1, " last top final ultima ultimo highest end ");
        of_them = of_them || last;
        if (item_is(items, i, ITEM_LIGHT) && !last && !of_them) {
            return false;
        }
    }
    return false;
}

/* "tiene prendidas 3" */
static bool
is_behind_lit(const struct items *items, size_t at)
{
    return at > 1 && item_free_number(items, at) && items->list[at].value <= LIGHTS_MAX * 1000 &&
           item_value(items, at - 1, ITEM_LIGHT) == 2 && clause_stops(items, at + 1) &&
           token_among(items->tokens, items->list[at - 1].from,
                       " prendidas encendidas prendidos encendidos ") &&
           token_among(items->tokens, tokens_back(items->list[at - 1].from, 1),
                       " tiene trae hay muestra marca veo tengo ");
}

/* "lights: 3" */
static bool
is_behind_label(const struct items *items, size_t at)
{
    return at > 1 && item_free_number(items, at) && items->list[at].value <= LIGHTS_MAX * 1000 &&
           items->list[at].value % 1000 == 0 && !items->list[at].fraction &&
           (item_text(items, at - 1, ":") || item_text(items, at - 1, "=")) &&
           item_value(items, at - 2, ITEM_LIGHT) == 2 && !item_is(items, at + 1, ITEM_LIGHT) &&
           !item_is(items, at + 1, ITEM_BATTERY) &&
           (at < 3 || items->list[at - 3].is != ITEM_NUMBER);
}

static bool
is_range_of_lights(const struct items *items, size_t at)
{
    return item_free_number(items, at) && item_is(items, at + 1, ITEM_TO) &&
           item_free_number(items, at + 2) && item_is(items, at + 3, ITEM_LIGHT) &&
           items->list[at + 2].value > items->list[at].value && !items->list[at].one;
}

/* "down to its last light", "en la ultima rayita", but no "lost its last light" */
static bool
is_last_light(const struct items *items, size_t at)
{
    static const char gone[] = " lost losing fue apago murio ";

    return token_among(items->tokens, items->list[at].to - 1, " last final ultima ultimo ") &&
           item_value(items, at + 1, ITEM_LIGHT) == 1 &&
           !token_among(items->tokens, items->list[at + 1].to,
                        " is went has goes just se apago died turned dropped blinked quit ") &&
           !token_among(items->tokens, items->list[at].from - 1, gone) &&
           !token_among(items->tokens, items->list[at].from - 2, gone) &&
           !item_is(items, at + 2, ITEM_DIM);
}

/* "all the lights", "its last light", "lights: 3" */
static bool
lights_without_count_at(const struct items *items, size_t at, struct state *state)
{
    int all = 0;

    if (item_is(items, at, ITEM_ALL) &&
        item_value(items, over_article(items, at + 1), ITEM_LIGHT) == 2) {
        *state = (struct state){.is_lights = true, .lights = GAUGE_LIGHTS, .from = at};
        state->count = over_article(items, at + 1) + 1 - at;
        return true;
    }
    if (token_is(items->tokens, items->list[at].to - 1, "single") &&
        item_value(items, at + 1, ITEM_LIGHT) == 1) {
        *state = (struct state){.is_lights = true, .lights = 1, .from = at, .count = 2};
        return true; /* "a single light showing" */
    }
    if (is_last_light(items, at)) {
        *state = (struct state){.is_lights = true, .lights = 1, .from = at, .count = 2};
        return true;
    }
    if (is_behind_label(items, at) || is_behind_lit(items, at)) {
        *state =
            (struct state){.is_lights = true, .lights = items->list[at].value / 1000, .from = at};
        state->count = over_all_lights(items, at + 1, &all) - at;
        state->cannot = all > 0 && state->lights > all;
        return true;
    }
    return false;
}

/* "una luz roja", "a red light": it warns, and is none of the gauge. */
static bool
is_warning(const struct items *items, size_t at)
{
    static const char colours[] = " roja rojo amarilla amarillo anaranjada naranja azul ambar red "
                                  "yellow amber orange ";
    size_t last = items->list[at].from;

    while (last < items->list[at].from + 3 && !token_among(items->tokens, last, colours)) {
        last++;
    }
    return last < items->list[at].from + 3 && items->list[at].value <= 1000 &&
           (item_is(items, at, ITEM_ARTICLE) || items->list[at].one);
}

/* "one light blinking one solid": only the solid one is lit. */
static bool
is_dim_beside_lit(const struct items *items, size_t at)
{
    size_t to = clause_end(items, at);

    return items->list[at].value <= 1000 && item_is(items, at + 1, ITEM_LIGHT) &&
           item_is(items, at + 2, ITEM_DIM) && items_find(items, at + 3, to, ITEM_LIGHT) < to;
}

/* "tiene 4 foquitos y prenden 2": of `all` lights of the gauge so many are lit. */
static int
lit_of_gauge(const struct items *items, size_t at, size_t after, int all)
{
    size_t to = sentence_end(items, at), i;

    if (!items_have_word(items, tokens_back(at, 2), at, " tiene trae son has have had with ")) {
        return all;
    }
    for (i = after; i + 1 < to && i < after + 6; i++) {
        if (token_among(items->tokens, items->list[i].to - 1,
                        " prenden prende encienden enciende alumbran solo light only ") &&
            item_free_number(items, i + 1) && items->list[i + 1].value <= LIGHTS_MAX * 1000 &&
            !item_is(items, i + 2, ITEM_UNIT) && !item_is(items, i + 2, ITEM_LIGHT)) {
            return items->list[i + 1].value / 1000 < all ? items->list[i + 1].value / 1000 : all;
        }
        if (token_among(items->tokens, items->list[i].from, " cuantas cuantos how ") &&
            items_have_word(items, i, to, " prender prenderse encender light lit prendidas ")) {
            return 0;
        }
    }
    return all;
}

/* Lights that tell no charge. */
static bool
is_of_no_gauge(const struct items *items, size_t at)
{
    size_t next = at + 1;

    if (item_text(items, at, "una") && item_text(items, at + 1, "de") &&
        item_free_number(items, at + 2) && item_is(items, at + 3, ITEM_LIGHT) &&
        items_any(items, ITEM_OTHER)) {
        return true; /* "una de 4 luces y otra de 2 luces": batteries */
    }
    if (item_is(items, at, ITEM_ARTICLE) && item_text(items, next, "light") &&
        !item_is(items, at - 1, ITEM_HAVE) && !item_is(items, next + 1, ITEM_LEFT)) {
        return true; /* "there is a light on it", "out like a light" */
    }
    return is_warning(items, at) || is_dim_beside_lit(items, at);
}

/* "3 of the 4 are full", "2 of 4 are at 50": batteries, whose charge stands from `next` on */
static bool
are_so_full(const struct items *items, size_t next)
{
    size_t i;

    for (i = next; i < next + 3 && !clause_stops(items, i); i++) {
        if (item_is(items, i, ITEM_FULL) || item_is(items, i, ITEM_CHARGE) ||
            item_is(items, i, ITEM_HALF) || item_in(items, i, UNIT_PERCENT) ||
            (items->list[i].is == ITEM_NUMBER && items->list[i].value > LIGHTS_MAX * 1000)) {
            return token_among(items->tokens, items->list[next].from, " are were is estan ");
        }
    }
    return false;
}

/* "down 3 lights": so many lit, or so many gone out; the fewer */
static int
lit_if_down(const struct items *items, size_t at, int lit)
{
    bool down = token_is(items->tokens, tokens_back(items->list[at].from, 1), "down");

    return down && lit < GAUGE_LIGHTS && GAUGE_LIGHTS - lit < lit ? GAUGE_LIGHTS - lit : lit;
}

bool
lights_at(const struct items *items, size_t at, struct state *state)
{
    size_t next = at + 1;
    int lit, all = 0;
    bool noun, none = (item_is(items, at, ITEM_NOT) || item_text(items, at, "ninguna")) &&
                      item_is(items, at + 1, ITEM_LIGHT) && !item_is(items, at, ITEM_AT) &&
                      !item_is(items, at + 2, ITEM_TO);
    bool bars;

    if (lights_without_count_at(items, at, state)) {
        return true;
    }
    if (is_of_no_gauge(items, at)) {
        return false;
    }
    if (!none &&
        !(item_is(items, at, ITEM_ARTICLE) && item_is(items, next, ITEM_LIGHT) &&
          (!item_is(items, next + 1, ITEM_WORD) ||
           token_among(items->tokens, items->list[next].to, " showing lit prendida "))) &&
        !(item_free_number(items, at) && !items->list[at].ordinal && !items->list[at].fraction &&
          (!item_is(items, at - 1, ITEM_DIM) || item_is(items, next, ITEM_LIGHT)))) {
        return false;
    }
    if (!none && item_is(items, next, ITEM_LIGHT) && is_gauge(items, at)) {
        return false;
    }
    lit = none ? 0 : item_free_number(items, at) ? items->list[at].value / 1000 : 1;
    if (!none) {
        next = over_all_lights(items, next, &all);
        next += item_is(items, next, ITEM_LINK) && item_is(items, next + 1, ITEM_LIGHT) ? 1 : 0;
    }
    if (is_range_of_lights(items, at)) {
        next = at + 3; /* "2 or 3 lights": as low as may be */
    }
    noun = item_is(items, next, ITEM_LIGHT);
    if (!noun && !none && all == 0 && item_is(items, next, ITEM_AND) &&
        !(items->list[at].one && /* "2 lights on one", "3 lights one and 1 light the other" */
          (item_is(items, at - 1, ITEM_AT) || item_is(items, at - 1, ITEM_LIGHT))) &&
        item_free_number(items, next + 1) && item_is(items, next + 2, ITEM_LIGHT)) {
        *state = (struct state){.is_lights = true, .lights = lit, .from = at, .count = 1};
        return lit <= LIGHTS_MAX; /* "3 and 2 lights" */
    }
    if (!noun && (all != 4 || are_so_full(items, next) || item_is(items, next, ITEM_UNIT) ||
                  lit == 0 || lit > LIGHTS_MAX || item_is(items, next, ITEM_BATTERY) ||
                  item_text(items, at + 1, "/") || item_is(items, next, ITEM_FULL))) {
        return false;
    }
    next += noun ? 1 : 0;
    if (noun && all == 0) {
        next = over_all_lights(items, next, &all); /* "2 luces de 4" */
    }
    next += dim_half_at(items, next);
    lit -= !none && lit > 0 && one_of_them_is_dim(items, next, lit) ? 1 : 0;
    bars = lit > LIGHTS_MAX && all == 0;
    lit = lit_of_gauge(items, at, next, lit);
    lit = all == 0 && noun ? lit_if_down(items, at, lit) : lit;
    state->is_lights = true;
    state->lights = lit;
    state->cannot = (all > 0 && lit > all) || (items->list[at].negative && !none);
    state->count = next - at;
    return !bars;
}

bool
fraction_of_lights_at(const struct items *items, size_t at, struct state *state)
{
    const struct item *item = &items->list[at];

    if (item->is == ITEM_NUMBER && item->fraction && item_is(items, at + 1, ITEM_LIGHT)) {
        state->is_lights = true;
        state->lights = item->value * 4 / 1000;
        state->cannot = item->value > 1000;
        state->count = 2;
        return true;
    }
    return false;
}
