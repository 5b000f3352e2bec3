/*
 * A number between 30 and 100 is an oximeter value when a cue ("o2", "sat", "oximeter") leads to
 * it over words that only say "is". Strong cues name the instrument or the value and allow any
 * words between; weak ones ("oxygen", "reading") allow only linking words, because "oxygen
 * battery 84" is no oximeter value. In doubt it is one: a needless call beats a missed one.
 */
#include "oximeter.h"

#include <string.h>

#include "blood_pressure.h"
#include "memory.h"
#include "oximeter_parts.h"
#include "persons.h"
#include "reaction.h"
#include "slip.h"

enum { LOWEST = 30, HIGHEST = 100, STRONG_REACH = 8, BACK_REACH = 8 };

static const char strong_cues[] = " spo2 sp02 sats sat satu satting sating saturation saturating "
                                  "saturacion satura saturando saturaba "
                                  "pulseox pulsox pulsiox o2sat o2sats ";
/* Words that begin so are strong cues too, however they end. */
static const char *const strong_beginnings[] = {
    "oxim", "oxym", "oxom", "oxem", "saturac", "oxigenac", "oxygenat", "pulseox", "pulsox"};
/* A thing on a finger is one, whatever it is called. */
static const char fingers[] = " finger fingertip fingers dedo dedito dedos ";
static const char things[] = " clip clips thing thingy thingie meter gadget reader monitor device "
                             "gizmo sensor machine aparato aparatito aparatico cosa cosita cosito "
                             "medidor pinza pinzita maquinita ";
static const char weak_cues[] = " o2 02 ox oxy oxi oxygen oxigeno reading readings readout level "
                                "levels stats number numbers lectura "
                                "nivel ";
/* One slip of the finger away from these it is the same: "satuation", "oxigen". */
static const char *const strong_words[] = {"saturation", "saturacion", "oximeter", "oximetro"};
static const char *const weak_words[] = {"oxygen", "oxigeno"};
static const char whose[] = " my his her moms dads mi su ";
static const char linking[] =
    " is s its it was says said say at reads read reading shows show showing showed now just only "
    "down dropped drops dropping fell went going to of like about around under below near "
    "approx level levels sat sats saturation number numbers my his her moms dads the hovering "
    "between in low mid high upper keeps keep staying stays running been are came comes back up "
    "got gets as = : - , ~ < > ( \" ? . oxygen o2 and then or from meter ox thing clip finger "
    "esta es en a de bajo marca dice sale tiene me mi su salio oxigeno solo y today hoy "
    "ahora ahorita ";
const char oximeter_batteries[] =
    " battery batteries batt batts bat pack packs brick bricks bateria "
    "baterias pila pilas charge charged ";
const char oximeter_other_things[] =
    " battery batteries batt batts bat pack packs brick bricks bateria baterias pila pilas charge "
    "charged tank cylinder "
    "setting room cabin unit apt liters lpm light lights bars ";
static const char other_units[] =
    " min mins minute minutes minutos m h hr hrs hour hours hora horas am pm f c degrees grados ft "
    "feet foot pies liters liter litros l lpm lights light bars bar psi pounds lbs lb dollars "
    "bucks miles mi km meters metros st nd rd th days day years year yrs old bpm watts volts wh "
    "anos ano dias pesos dolares millas kilos pounds hundred mil ";

static bool
is_time_or_date(const struct tokens *tokens, size_t at, size_t after)
{
    bool clock = token_is(tokens, after, ":") && after + 1 < tokens->count &&
                 tokens->list[after + 1].kind == TOKEN_NUMBER && tokens->list[after + 1].glued;
    bool after_colon = at > 1 && token_is(tokens, at - 1, ":") && tokens->list[at].glued &&
                       tokens->list[at - 2].kind == TOKEN_NUMBER;
    bool money = at > 0 && token_is(tokens, at - 1, "$");

    return clock || after_colon || money;
}

/* "84 % battery", "84 lights"; but "o2 84 % battery 50" and "at 78 battery dead" tell two things.
 */
static bool
is_of_something_else(const struct tokens *tokens, size_t after)
{
    size_t thing = after + (token_among(tokens, after, " % percent pct ") ? 1 : 0);
    size_t i, taken;
    int thousandths;

    if (!token_among(tokens, thing, oximeter_other_things) || oximeter_is_spent(tokens, thing)) {
        return false;
    }
    for (i = thing + 1; i <= thing + 3; i++) {
        taken = tokens_number(tokens, i, false, &thousandths);
        if (taken > 0) {
            return false;
        }
    }
    return true;
}

/* "pulse 72", "heart rate is 110", "aged 84". */
static bool
is_named_otherwise(const struct tokens *tokens, size_t at)
{
    static const char names[] = " pulse pulso rate hr bpm heart frecuencia corazon age aged edad ";
    size_t back = at;

    while (back > 0 && token_among(tokens, back - 1, " is of at was : = es esta de en the ")) {
        back--;
    }
    return back > 0 && token_among(tokens, back - 1, names);
}

/* "sat 84 hr 110": what follows is the heart rate, no hours. */
static bool
is_heart_rate(const struct tokens *tokens, size_t at)
{
    return token_is(tokens, at, "hr") && at + 1 < tokens->count &&
           tokens->list[at + 1].kind == TOKEN_NUMBER;
}

/* "81 mi mama": mine, no miles. */
static bool
is_mine(const struct tokens *tokens, size_t at)
{
    return token_is(tokens, at, "mi") && token_among(tokens, at + 1, person_words);
}

int
oximeter_value(const struct tokens *tokens, size_t at, size_t *taken)
{
    int thousandths, value, second;
    size_t after;

    *taken = tokens_number(tokens, at, false, &thousandths);
    if (*taken == 0) {
        return 0;
    }
    value = thousandths / 1000;
    after = at + *taken;
    if (value >= 3 && value <= 9 && token_is(tokens, after, "o") && tokens->list[after].glued) {
        value *= 10; /* "8o" */
        after = at + ++*taken;
    }
    if (value >= 6 && value <= 9 && *taken == 1 && !token_among(tokens, after, " a an un una ") &&
        tokens_number(tokens, after, true, &second) == 1 && second < 10 * 1000 &&
        tokens->list[at].kind == tokens->list[after].kind) { /* "eight four" */
        value = 10 * value + second / 1000;
        after = at + ++*taken;
    }
    if (value < LOWEST || value > HIGHEST ||
        (token_among(tokens, after, other_units) && !is_heart_rate(tokens, after) &&
         !is_mine(tokens, after)) ||
        is_time_or_date(tokens, at, after) || is_named_otherwise(tokens, at)) {
        return 0;
    }
    return is_of_something_else(tokens, after) ? 0 : value;
}

/* True if the word begins as the name of the instrument or of the value. */
static bool
begins_strong(const struct tokens *tokens, size_t at)
{
    size_t i;

    for (i = 0; i < sizeof strong_beginnings / sizeof strong_beginnings[0]; i++) {
        if (tokens->list[at].kind == TOKEN_WORD &&
            strncmp(tokens->list[at].text, strong_beginnings[i], strlen(strong_beginnings[i])) ==
                0) {
            return true;
        }
    }
    return false;
}

static bool
is_slip_of(const struct tokens *tokens, size_t at, const char *const *words, size_t count)
{
    size_t i;

    for (i = 0; i < count && tokens->list[at].kind == TOKEN_WORD; i++) {
        if (slip_between(tokens->list[at].text, words[i]) != SLIP_NONE) {
            return true;
        }
    }
    return false;
}

/* "finger clip", "the clip on my finger", "aparatito del dedo". */
static bool
is_on_finger(const struct tokens *tokens, size_t at)
{
    size_t back;

    if (!token_among(tokens, at, fingers)) {
        return false;
    }
    for (back = 1; back <= 3 && back <= at; back++) {
        if (token_among(tokens, at - back, things)) {
            return true;
        }
    }
    return token_among(tokens, at + 1, things) || token_is(tokens, at, "fingertip");
}

/* "finger at 58", "el del dedo me marca 92": what is on it, by its value; no "finger 3 times". */
static bool
is_finger_with_value(const struct tokens *tokens, size_t at)
{
    static const char leads[] = " at is says said reads reading shows showing was now its : = , - "
                                "a en me le marca marco dice da esta trae sale ";
    size_t next = at + 1, taken;

    if (!token_among(tokens, at, fingers)) {
        return false;
    }
    while (next <= at + 3 && token_among(tokens, next, leads)) {
        next++;
    }
    return oximeter_value(tokens, next, &taken) > 0;
}

/* "79 en el dedo", "81% on her finger", "55 dedo": the value right before it; with no word between
 * only if that is all, for "cut 50 finger" may be anything. */
static bool
is_finger_behind_value(const struct tokens *tokens, size_t at)
{
    enum { WORDS_OF_VALUE = 3 };
    size_t back = at, words, taken;
    bool is_end = at + 1 >= tokens->count || tokens->list[at + 1].kind == TOKEN_SIGN;

    if (!token_among(tokens, at, fingers)) {
        return false;
    }
    while (back > 0 && token_among(tokens, back - 1,
                                   " the my his her moms dads el la mi su un on in of en del de % "
                                   "percent pct por ciento ")) {
        back--;
    }
    for (words = 1; words <= WORDS_OF_VALUE && words <= back; words++) {
        if (oximeter_value(tokens, back - words, &taken) > 0 && taken == words) {
            return back < at || (back == words && is_end);
        }
    }
    return false;
}

/* "5 am sat. ones at 80", "7 am sat, both at 75": batteries follow, and no value of hers. */
static bool
is_saturday(const struct tokens *tokens, size_t at)
{
    return at > 0 && token_is(tokens, at, "sat") && token_among(tokens, at - 1, " am pm m ") &&
           token_among(tokens, at + 1, " . , ; ") &&
           token_among(tokens, at + 2, " ones one both batteries battery all two three packs ");
}

static bool
is_weak_cue(const struct tokens *tokens, size_t at)
{
    return token_among(tokens, at, weak_cues) ||
           is_slip_of(tokens, at, weak_words, sizeof weak_words / sizeof weak_words[0]);
}

static bool
is_cue(const struct tokens *tokens, size_t at, bool *strong)
{
    bool pulse_ox = token_among(tokens, at, " ox oxy oxi ") && at > 0 &&
                    token_among(tokens, at - 1, " pulse puls pulso ");
    bool sat_down = token_is(tokens, at, "sat") &&
                    token_among(tokens, at + 1, " down on in here there around by for ");

    if (sat_down || is_saturday(tokens, at)) {
        return false;
    }
    *strong = pulse_ox || token_among(tokens, at, strong_cues) || begins_strong(tokens, at) ||
              is_slip_of(tokens, at, strong_words, sizeof strong_words / sizeof strong_words[0]) ||
              is_on_finger(tokens, at) || is_finger_with_value(tokens, at) ||
              is_finger_behind_value(tokens, at);
    if (at > 0 && token_among(tokens, at - 1, whose)) {
        return *strong || is_weak_cue(tokens, at); /* "2 batteries, my reading 78" */
    }
    if (!*strong && ((at > 0 && token_among(tokens, at - 1, oximeter_other_things)) ||
                     (at > 1 && token_among(tokens, at - 2, oximeter_other_things)))) {
        return false; /* "battery level 84" */
    }
    if (!*strong && at > 3 && token_is(tokens, at, "reading") &&
        (token_among(tokens, at - 3, oximeter_other_things) ||
         token_among(tokens, at - 4, oximeter_other_things))) {
        return false; /* "has 2 batteries, both reading 80%" */
    }
    return *strong || is_weak_cue(tokens, at);
}

void
oximeter_keep(const struct tokens *tokens, size_t at, size_t taken, int value, bool sure,
              struct lowest *lowest)
{
    lowest->sure = lowest->sure || sure;
    if (lowest->value == 0 || value < lowest->value) {
        lowest->value = value;
        lowest->start = tokens->list[at].start;
        lowest->end = tokens->list[at + taken - 1].end;
    }
}

/* "its reading 76": of whatever it is; "my reading" and "oxygen" are of a person. */
static bool
names_no_oxygen(const struct tokens *tokens, size_t cue)
{
    return token_among(tokens, cue, " reading readings readout number numbers lectura ") &&
           !token_among(tokens, tokens_back(cue, 1), whose);
}

/* Every value that this cue leads to: "sat went from 92 to 84" has two. */
static void
read_after_cue(const struct tokens *tokens, size_t cue, bool strong, struct lowest *lowest)
{
    size_t at = cue + 1, passed = 0, taken;
    bool sure = strong || !names_no_oxygen(tokens, cue);

    while (at < tokens->count && passed < STRONG_REACH) {
        int value = oximeter_value(tokens, at, &taken);

        if (value > 0 && !strong && names_no_oxygen(tokens, cue) &&
            oximeter_is_watched_battery(tokens, at)) {
            return;
        }
        if (value > 0) {
            oximeter_keep(tokens, at, taken, value, sure, lowest);
            at += taken;
            passed = 0;
            strong = false;
            while (token_among(tokens, at, " % percent pct s ish ")) {
                at++;
            }
            continue;
        }
        if (token_among(tokens, at, oximeter_other_things)) {
            return;
        }
        if (taken > 0 ? !strong : !(strong || token_among(tokens, at, linking))) {
            return;
        }
        at += taken > 0 ? taken : 1;
        passed++;
    }
}

/* A battery right before takes the number: "battery 84, o2 on", "battery reading 50 my reading 79".
 * A flow or a room does not: "on 3 liters at 62 sat" has told its own. */
static bool
is_charge(const struct tokens *tokens, size_t at)
{
    while (at > 0 && token_among(tokens, at - 1, " is at says said reads reading shows ")) {
        at--;
    }
    return at > 0 && token_among(tokens, at - 1, oximeter_batteries);
}

/* "84 on my oximeter", "86% o2", "says 84 oxygen". */
static void
read_before_cue(const struct tokens *tokens, size_t cue, bool strong, struct lowest *lowest)
{
    size_t back, taken;

    for (back = 1; back <= BACK_REACH && back <= cue; back++) {
        size_t at = cue - back;
        int value = oximeter_value(tokens, at, &taken);

        if (value > 0) {
            if (strong || !is_charge(tokens, at)) {
                oximeter_keep(tokens, at, taken, value, strong || !names_no_oxygen(tokens, cue),
                              lowest);
            }
            return;
        }
        if (token_among(tokens, at, oximeter_other_things) ||
            token_among(tokens, at, " . , ; ? ! and ") ||
            !(strong || token_among(tokens, at, " % percent pct por ciento de on the my "))) {
            return;
        }
    }
}

bool
oximeter_read_how(const char *text, int *percent, size_t *start, size_t *end, bool *sure)
{
    void *scratch = memory_must(talloc_new(NULL));
    struct tokens tokens = tokens_read(scratch, reaction_without_copy(scratch, text));
    struct lowest lowest = {0};
    struct blood_pressure pressure;
    size_t at;
    bool strong;

    if (blood_pressure_read(&tokens, &pressure)) {
        for (at = pressure.first; at < pressure.behind; at++) { /* its lower value may be untold */
            if (tokens.list[at].kind == TOKEN_NUMBER) {
                tokens.list[at].kind = TOKEN_SIGN;
                tokens.list[at].text = "";
            }
        }
    }
    for (at = 0; at < tokens.count; at++) {
        if (is_cue(&tokens, at, &strong)) {
            read_after_cue(&tokens, at, strong, &lowest);
            read_before_cue(&tokens, at, strong, &lowest);
        }
    }
    oximeter_read_bare(&tokens, &lowest);
    talloc_free(scratch);
    if (lowest.value == 0) {
        return false;
    }
    *percent = lowest.value;
    *start = lowest.start;
    *end = lowest.end;
    *sure = lowest.sure;
    return true;
}

bool
oximeter_read(const char *text, int *percent, size_t *start, size_t *end)
{
    bool sure;

    return oximeter_read_how(text, percent, start, end, &sure);
}
