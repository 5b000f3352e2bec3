#include "asks.h"

#include <string.h>

#include "amounts.h"
#include "clocks.h"
#include "legs.h"
#include "surroundings.h"

enum { POUNDS_MAX = 400 }; /* that somebody weighs; more is pressure */

static bool
has(const struct items *items, enum cue cue)
{
    return lexicon_cue(items->tokens, cue);
}

/* "how long does an E last on 2 liters" */
static bool
is_of_lettered_cylinder(const struct items *items)
{
    size_t at;

    for (at = 0; at < items->count && !item_in(items, at, UNIT_FLOW) &&
                 !(item_free_number(items, at) && items->list[at].value >= POUNDS_MAX * 1000);
         at++) {
    }
    return at < items->count && !items_any(items, ITEM_BATTERY) &&
           tokens_have(items->tokens, "an e|a d|the e|the d|my e|my d|una e|una d|un e|un d");
}

/* "needle is on 500", "gauge says 1500": no battery has so much. */
static bool
is_on_gauge(const struct items *items)
{
    size_t at;

    for (at = 0; at < items->count; at++) {
        if (item_free_number(items, at) && items->list[at].value >= 400 * 1000 &&
            items->list[at].value <= 3500 * 1000 && items->list[at].value % (50 * 1000) == 0 &&
            !item_is(items, at + 1, ITEM_UNIT)) {
            return !items_any(items, ITEM_BATTERY) &&
                   tokens_have(items->tokens, "needle|needles|pointer|gauge|dial|aguja|manometro");
        }
    }
    return false;
}

/* "how long until we need the cylinder", "before I switch to the tank": of the battery, for which
 * the cylinder stands by. */
static bool
is_cylinder_kept(const struct items *items)
{
    return (items_any(items, ITEM_BATTERY) || items_any(items, ITEM_POWER) ||
            items_any(items, ITEM_SHOWS) || items_any(items, ITEM_FULL)) &&
           tokens_have(items->tokens,
                       "need the cylinder|need the tank|need the bottle|need a tank|"
                       "need the backup tank|need to use the tank|switch to the tank|"
                       "switch to the cylinder|switch to a tank|go to the tank|go on the tank|"
                       "get the tank|get the tank out|get out the tank|get the cylinder|"
                       "onto the tank|over to the tank|over to the cylinder|break out the tank|"
                       "use the tank|use the cylinder|use the backup tank|start the tank|"
                       "open the tank|grab the tank|tank is for backup|tank as backup|"
                       "saco el tanque|usar el tanque|cambiar al tanque|pasar al tanque|"
                       "cambio al tanque|paso al tanque|sacar el tanque|ocupe el tanque|"
                       "necesite el tanque|usar el cilindro|pasar al cilindro|"
                       "cambiar al cilindro|abrir el tanque|prender el tanque");
}

/* The battery or the cylinder that stands nearest to the question. */
static bool
cylinder_is_asked(const struct items *items)
{
    size_t at;
    bool pressure = false, cylinder = items_any(items, ITEM_CYLINDER);

    for (at = 0; at < items->count; at++) {
        pressure = pressure || item_in(items, at, UNIT_PSI) ||
                   (item_in(items, at, UNIT_POUND) && items->list[at].value > POUNDS_MAX * 1000) ||
                   (item_in(items, at, UNIT_BAR) && items->list[at].value > 10 * 1000) ||
                   item_value(items, at, ITEM_UNIT) == UNIT_PSI || cylinder_size_at(items, at);
    }
    if ((!cylinder && !pressure && !is_of_lettered_cylinder(items) && !is_on_gauge(items)) ||
        (!pressure && is_cylinder_kept(items))) {
        return false;
    }
    return !has(items, CUE_BATTERY_ASKED);
}

/* "On the plane now, 2 lights, how long": hours left, no flight to plan. */
static bool
is_on_plane(const struct items *items)
{
    size_t at;

    for (at = 0; at < items->count; at++) {
        if (item_is_duration(items, at) && !items->list[at].spent) {
            return false;
        }
    }
    return has(items, CUE_ON_PLANE) && has(items, CUE_LEFT) && !has(items, CUE_HOW_MANY);
}

/* Charging is asked about unless it only tells how things are ("it is not charging, how long?"). */
static bool
charging_is_asked(const struct items *items)
{
    return has(items, CUE_CHARGING) &&
           !tokens_have(
               items->tokens,
               "can plug in at|could plug in at|get to plug in at|able to plug in at|let me "
               "plug in at|let us plug in at|not charging|isnt charging|wont charge|car charger "
               "broke|"
               "no charging|on a charge|per charge|single charge|"
               "one charge|run on a full charge|runs on a full charge|go on a full charge|goes "
               "on a full charge|get on a full charge|get from a full "
               "charge|out of a full charge|run off a full charge|on a "
               "full charge|no esta cargando|una sola carga|"
               "sin cargar|sin donde cargar|no hay donde cargar|ni donde "
               "cargar|without charging|sin poder cargar|"
               "cant charge|no carga|a full charge last|"
               "cannot charge|not be charging|unplugged fully charged|"
               "unplugged it fully charged|left fully charged|"
               "started fully charged");
}

/* "Text me an hour and a half before it runs out" */
static bool
reminds(const struct items *items)
{
    size_t at, i, to;

    for (at = 0; at < items->count; at++) {
        to = sentence_end(items, at);
        for (i = sentence_start(items, at); item_is(items, at, ITEM_REMIND) && i < to; i++) {
            if (item_is_duration(items, i) &&
                (item_is(items, i + 1, ITEM_BEFORE) || item_is(items, i + 1, ITEM_LEFT) ||
                 (item_is(items, i + 1, ITEM_LINK) && item_is(items, i + 2, ITEM_LEFT)))) {
                return true;
            }
        }
    }
    return false;
}

static bool
begins_with(const struct items *items, size_t token, const char *const *stems, size_t count)
{
    const char *text = token < items->tokens->count ? items->tokens->list[token].text : "";
    size_t i;

    for (i = 0; i < count; i++) {
        if (strncmp(text, stems[i], strlen(stems[i])) == 0) {
            return true;
        }
    }
    return false;
}

/* "call me at 555-0134" */
static bool
is_telephone(const struct tokens *tokens, size_t at)
{
    return at + 2 < tokens->count && tokens->list[at].kind == TOKEN_NUMBER &&
           tokens->list[at].thousandths >= 100 * 1000 &&
           tokens->list[at + 2].kind == TOKEN_NUMBER && token_is(tokens, at + 1, "-");
}

/* "text me at 5", "buzz us when ..", "despiertenme": whoever can be told is asked to tell. */
static bool
asks_to_be_told(const struct items *items)
{
    static const char *const stems[] = {"avis",  "recuerd", "record", "despiert", "despert",
                                        "alert", "notifi",  "acuerd", "mensaje",  "textea"};
    static const char verbs[] = " text tell ping buzz call ring wake warn alert notify message "
                                "remind nudge shout yell beep poke prompt msg page txt ";
    static const char when[] = " at when before if once in on as about around with by the one "
                               "half a an when whenever tomorrow tonight today monday tuesday "
                               "wednesday thursday friday saturday sunday noon midnight ";
    size_t token, length;

    for (token = 0; token + 1 < items->tokens->count; token++) {
        const struct token *word = &items->tokens->list[token];

        length = strlen(word->text);
        if (length > 6 && begins_with(items, token, stems, sizeof stems / sizeof stems[0]) &&
            (strcmp(word->text + length - 2, "me") == 0 ||
             strcmp(word->text + length - 3, "nos") == 0)) {
            return true;
        }
        if (token_among(items->tokens, token, verbs) &&
            token_among(items->tokens, token + 1, " me us him her ") &&
            token + 2 < items->tokens->count && !is_telephone(items->tokens, token + 3) &&
            (token_among(items->tokens, token + 2, when) ||
             items->tokens->list[token + 2].kind == TOKEN_NUMBER)) {
            return !token_among(items->tokens, token + 2, " if the about one a ") ||
                   reminds(items) || !token_is(items->tokens, token, "tell");
        }
    }
    return false;
}

/* "at 6", "30 min before ..", "cuando queden 30 min": in the same sentence, behind the token */
static bool
tells_when(const struct items *items, size_t token)
{
    size_t at;

    for (at = 0; at < items->count && items->list[at].from < token; at++) {
    }
    for (; at < items->count && items->list[at].is != ITEM_STOP; at++) {
        if ((item_is_duration(items, at) || items->list[at].is == ITEM_CLOCK) &&
            !items->list[at].spent) {
            return true;
        }
    }
    return false;
}

/* "me puede mandar mensaje", "me avisa", "escribame", "let us know", "send a text": whoever can
 * tell is asked to, where it stands when. */
static bool
asks_for_word(const struct items *items)
{
    static const char *const telling[] = {"avis",     "recuerd", "record", "escrib",
                                          "despiert", "despert", "llam",   "texte"};
    static const char aids[] = " puede pueden podria podrian puedes podrias va van a pudiera ";
    static const char words[] = " mensaje mensajito texto recordatorio aviso message text heads ";
    const struct tokens *tokens = items->tokens;
    size_t at, verb;

    for (at = 0; at < tokens->count; at++) {
        bool asked = false;

        if (token_among(tokens, at, " me nos ")) {
            for (verb = at + 1; token_among(tokens, verb, aids); verb++) {
            }
            asked =
                begins_with(items, verb, telling, sizeof telling / sizeof telling[0]) ||
                (token_among(tokens, verb, " manda mandan mande mandar pone poner ") &&
                 (token_among(tokens, verb + 1, words) || token_among(tokens, verb + 2, words)));
        } else if (token_among(tokens, at,
                               " mandarme mandarnos mandeme mandame enviarme enviame "
                               "send ")) {
            asked = token_among(tokens, at + 1, words) || token_among(tokens, at + 2, words);
        }
        asked = asked || token_among(tokens, at, " escribame escribeme escribanme escribirme ") ||
                tokens_phrase_at(tokens, at, "let us know|let him know|let her know") == 3;
        if (asked && tells_when(items, at)) {
            return true;
        }
    }
    return false;
}

/* "the shuttle picks us up at 6, flight is at 10, will they be ready by then" */
static bool
is_of_pickup(const struct items *items, size_t at)
{
    size_t from = clause_start(items, at), to = clause_end(items, at);

    return clock_role(items, at) == CLOCK_DEPART &&
           items_have_word(items, from, to,
                           " pick picks picking pickup recoge recogen recogernos buscar pasa pasan "
                           "viene vienen ") &&
           tokens_have(items->tokens, "ready|full|charged|listas|lista|llenas|llena|cargadas|"
                                      "cargada");
}

/* A clock time by which something is wanted, and no length of a flight. */
static bool
is_due_at_clock(const struct items *items)
{
    bool due = false;
    size_t at;

    for (at = 0; at < items->count; at++) {
        if (item_is_duration(items, at) && !items->list[at].spent) {
            return false;
        }
        due = due || (items->list[at].is == ITEM_CLOCK &&
                      (clock_role(items, at) == CLOCK_BY || is_of_pickup(items, at)));
    }
    return due && !has(items, CUE_HOW_MANY);
}

/* "plane at 6, how long do they need to charge": of no flight whose length is told */
static bool
asks_how_long_charging(const struct items *items)
{
    size_t at;

    for (at = 0; at < items->count; at++) {
        if (item_is_duration(items, at) || item_is(items, at, ITEM_GATE) ||
            item_is(items, at, ITEM_AIR)) {
            return false;
        }
    }
    return has(items, CUE_HOW_LONG) && !has(items, CUE_HOW_MANY) &&
           tokens_have(items->tokens, "to charge|charging take|charge from|to fill|to get full|"
                                      "en cargar|en cargarse|en llenarse|en llenar|para llenarse|"
                                      "para cargarse");
}

/* "boleto dice 2 horas 15", "2 h 10 gate to gate": the length that a ticket has, of no bus. */
static bool
has_figure_of_flight(const struct items *items)
{
    bool figure = false;
    size_t at;

    for (at = 0; at < items->count; at++) {
        int going = item_value(items, at, ITEM_GOING);

        if (going == LEG_DRIVE || going == LEG_OTHER || going == LEG_HIKE) {
            return false;
        }
        figure = figure || item_value(items, at, ITEM_GATE) == 0 ||
                 (item_value(items, at, ITEM_GATE) == 1 && item_is_duration(items, at + 1));
    }
    return figure;
}

enum told_kind
asks_by_words(const struct items *items)
{
    if (has(items, CUE_WATCH) || reminds(items) || asks_to_be_told(items) || asks_for_word(items)) {
        return TOLD_WATCH;
    }
    if (cylinder_is_asked(items)) {
        return TOLD_CYLINDER;
    }
    if (has(items, CUE_FLIGHT) && charging_is_asked(items) &&
        (is_due_at_clock(items) || asks_how_long_charging(items))) {
        return TOLD_CHARGING; /* "flight's at 6, I want them full by 4" */
    }
    if (has(items, CUE_FLIGHT) || has_figure_of_flight(items)) {
        return is_on_plane(items) ? TOLD_HOURS_LEFT : TOLD_FLIGHT;
    }
    return charging_is_asked(items) ? TOLD_CHARGING : TOLD_NOTHING;
}
