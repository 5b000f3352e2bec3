/*
 * Values without an instrument named: "it says 86 after my walk", "she's at 89", "is 90 ok", "88
 * then 84 now 80", "94 asleep, 97 awake". A narrow range, no unit behind, and nothing in the
 * sentence that has numbers of its own: a battery, a thermostat, a room.
 */
#include <stdint.h>

#include "oximeter_parts.h"
#include "persons.h"
#include "vital_signs.h"

enum {
    LOWEST_OF_FINGER = 40, /* where the instrument is named by where it sits */
    HIGHEST_BARE = 99,
    LEAD_REACH = 5,
    JUDGED_REACH = 4,
    SERIES_REACH = 4,
    LIST_MIN = 3
};

/* What tells a value, and what may stand between that and the number. */
static const char telling[] =
    " says said reads reading read shows showing showed dropped drops dropping fell fallen "
    "hovering hovers hits hit marca marco dice trae anda sale salio bajo bajando satura subio "
    "registers registering ";
static const char follows_person[] =
    " and but now so when while what is right resting asleep awake with on even at for y pero "
    "percent porciento por ahora que cuando con despues sitting walking still again today tonight "
    "% ";

static const char of_someone_is[] = " is s has at now was still only esta tiene trae en a , : = - ";

static const char judged[] =
    " ok okay alright fine good bad normal low high safe enough dangerous bien mal bajo alto "
    "bueno baja alta buena malo peligroso ";
static const char judging[] =
    " is are that a it its thats esta eso es un una too all right considered , y o or still pretty "
    "muy this ";
/* A number that begins a statement about someone: "87 and panting". */
static const char goes_on_with[] =
    " and but y pero this now again since after before when while ahora desde despues cuando "
    "marca dice says reads ";
static const char raises[] = "go up|turn it up|turn her up|turn him up|bump it|le subo|subirle|"
                             "le subimos|subo a|higher number";

static const char asks[] = " is are esta es was ";

static const char states[] =
    " asleep awake sleeping slept resting rest dormida dormido durmiendo despierta despierto "
    "caminando reposo descansando walking walk sitting standing exertion stairs sentado sentada "
    "acostado acostada ";
static const char state_links[] =
    " % percent at when while i he she we im hes shes is was and , al en cuando si estoy esta y "
    "just for a second got to the top of after my his her ";

static const char series_links[] =
    " then now to and y luego ahora despues , . - > went back up down % percent it was ";
static const char moving[] = " then now dropping drops falling fell keeps luego ahora bajando baja "
                             "cayendo down bajo ";

/* A text that asks for hours speaks of batteries, unless the value is a person's. */
const char oximeter_hours_asked[] =
    "left in it|left in that one|how long|how many hours|how much time|how many more|will * "
    "last|hours left|cuanto * dura|"
    "cuanto * queda|cuanto * rato|cuanto * tiempo|cuantas horas|me dura|me alcanza|me rinde";

/* "3 batteries. theyre at 90, 80 and half": so many charges in a row, once batteries are named. */
static bool
lists_batteries(const struct tokens *tokens, size_t person, size_t at)
{
    static const char plain[] = " , and & n y about like maybe % percent one at ";
    static const char charges[] = " half full empty dead quarter media llena vacia muerta ";
    size_t count = 0, taken, i;
    int thousandths;

    if (!token_among(tokens, person, " they theyre ")) {
        return false;
    }
    for (i = at; i<tokens->count; i += taken> 0 ? taken : 1) {
        taken = tokens_number(tokens, i, false, &thousandths);
        count += taken > 0 || token_among(tokens, i, charges) ? 1 : 0;
        if (taken == 0 && !token_among(tokens, i, charges) && !token_among(tokens, i, plain)) {
            break;
        }
    }
    return count >= LIST_MIN &&
           tokens_between_among(tokens, 0, person, " batteries batts bats packs baterias pilas ");
}

/* "Pulse 95": no setting of a mode, which is smaller. */
static bool
is_pulse_at(const struct tokens *tokens, size_t at)
{
    enum { THOUSAND = 1000, SLOWEST = 35 };
    int thousandths;

    return token_among(tokens, at, " pulse pulso ") &&
           tokens_number(tokens, vital_number_behind(tokens, at + 1), false, &thousandths) > 0 &&
           thousandths >= SLOWEST * THOUSAND;
}

/* "Reads 66 pulse 95": an oximeter shows both. */
static bool
is_beside_pulse(const struct tokens *tokens)
{
    size_t i;

    for (i = 0; i < tokens->count; i++) {
        if (is_pulse_at(tokens, i)) {
            return true;
        }
    }
    return false;
}

/* "Grandpa 95 pulse 66", "84, pulse 110"; "he is 72, pulse 80" may tell his age. */
static bool
is_shown_with_pulse(const struct tokens *tokens, size_t at, size_t after)
{
    bool is_apart = token_is(tokens, after, ",");

    return is_pulse_at(tokens, after + (is_apart || token_is(tokens, after, "%") ? 1 : 0)) &&
           !(is_apart && at > 0 &&
             token_among(tokens, at - 1, " is im hes shes es tengo tiene age aged "));
}

/* "She's at 89", "he is on 2 liters and at 84": somebody, and nothing behind that it could count.
 */
static bool
is_led_by_someone(const struct tokens *tokens, size_t at, size_t after)
{
    size_t person = oximeter_who_leads(tokens, at);

    return person < at && !lists_batteries(tokens, person, at) &&
           (after >= tokens->count || tokens->list[after].kind == TOKEN_SIGN ||
            token_among(tokens, after, follows_person) ||
            (token_among(tokens, after, oximeter_asks_how) && oximeter_is_of_someone(tokens, at)) ||
            oximeter_tells_of_thing(tokens, after, tokens->count));
}

/* "it says 86", "dropped to 88", "marca 90". */
static bool
is_told(const struct tokens *tokens, size_t at, bool of_hours)
{
    size_t back;

    for (back = 1; back <= LEAD_REACH && back <= at; back++) {
        if (token_among(tokens, at - back, telling)) {
            return !of_hours;
        }
        if (!token_among(tokens, at - back, oximeter_between)) {
            return false;
        }
    }
    return false;
}

/* "esta en 81 mi mama": whose it is comes behind. */
static bool
is_told_of(const struct tokens *tokens, size_t at, size_t after)
{
    return at > 1 && token_among(tokens, at - 1, " en a ") &&
           token_among(tokens, at - 2, " esta anda va ") &&
           token_among(tokens, after, " mi su la el ") &&
           token_among(tokens, after + 1, person_words);
}

/* "dad is 83%", "wife 82 percent"; "my wife has 84". An age is neither. */
static bool
is_percent_of_someone(const struct tokens *tokens, size_t at, size_t after)
{
    bool is_percent = token_among(tokens, after, " % percent pct ");
    bool has = at > 0 && token_is(tokens, at - 1, "has");
    size_t end = is_percent ? after + 1 : after, back = at;

    while (back > 0 && token_among(tokens, back - 1, of_someone_is)) {
        back--;
    }
    return (is_percent || has) && back > 0 && oximeter_is_someone(tokens, back - 1) &&
           (end >= tokens->count || tokens->list[end].kind == TOKEN_SIGN ||
            token_among(tokens, end, follows_person));
}

/* "is 90 ok", "89, is that bad", "esta bien 90". */
static bool
is_judged(const struct tokens *tokens, size_t at, size_t after)
{
    size_t i;

    if (at > 1 && token_among(tokens, at - 1, judged) && token_among(tokens, at - 2, asks)) {
        return true;
    }
    for (i = after; i < after + JUDGED_REACH && i < tokens->count; i++) {
        if (token_among(tokens, i, judged) ||
            (token_is(tokens, i, "right") && token_is(tokens, i - 1, "all"))) {
            return true;
        }
        if (!token_among(tokens, i, judging)) {
            return false;
        }
    }
    return false;
}

/* "one at 70, the rest dead" */
static bool
is_remainder(const struct tokens *tokens, size_t at)
{
    return token_is(tokens, at, "rest") && token_is(tokens, at - 1, "the") &&
           token_among(tokens, at + 1, " dead empty full are is at flat charged unchecked ");
}

/* "94 asleep", "86 when I got up the stairs", "dormido 87". */
static bool
is_of_a_state(const struct tokens *tokens, size_t at, size_t after)
{
    size_t i;

    if (at > 0 && token_among(tokens, at - 1, states)) {
        return true;
    }
    for (i = after; i < tokens->count && !oximeter_ends_sentence(tokens, i); i++) {
        if (token_among(tokens, i, states)) {
            return !is_remainder(tokens, i);
        }
        if (!token_among(tokens, i, state_links)) {
            return false;
        }
    }
    return false;
}

/* "87 and panting", "88 this morning when I woke", "81 marca el dedal". */
static bool
is_leading(const struct tokens *tokens, size_t at, size_t after)
{
    int thousandths;

    return (at == 0 || oximeter_ends_sentence(tokens, at - 1)) &&
           token_among(tokens, after, goes_on_with) && after + 1 < tokens->count &&
           tokens->list[after + 1].kind == TOKEN_WORD &&
           tokens_number(tokens, after + 1, false, &thousandths) == 0;
}

/* "88 then 84 now 80": another value close by, and word of a change. */
static bool
is_in_series(const struct tokens *tokens, size_t at, size_t after)
{
    bool moves = at > 0 && token_among(tokens, at - 1, moving);
    size_t i, taken;

    for (i = after; i < after + SERIES_REACH && i < tokens->count; i++) {
        int value = oximeter_value(tokens, i, &taken);

        if (value >= OXIMETER_LOWEST_BARE && value <= HIGHEST_BARE) {
            return moves;
        }
        moves = moves || token_among(tokens, i, moving);
        if (!token_among(tokens, i, series_links)) {
            return false;
        }
    }
    return false;
}

/* Past what joins the values of one list: "91, 89 and 86". */
static size_t
past_joints(const struct tokens *tokens, size_t at)
{
    while (token_among(tokens, at, " , and y or % percent ")) {
        at++;
    }
    return at;
}

/* "Dad is 79, on setting 2, reads 84, should I turn it up": his age, for a value is told behind. */
static bool
is_age_beside_value(const struct tokens *tokens, size_t at, size_t after)
{
    size_t before = at, i, taken;

    before -= before > 0 && token_among(tokens, before - 1, " is es tiene de , ");
    if (before == 0 || !oximeter_is_someone(tokens, before - 1) ||
        token_among(tokens, after, " % percent pct ")) {
        return false;
    }
    for (i = after; i + 1 < tokens->count; i++) {
        size_t value = i + 1;

        value += token_among(tokens, value, " at is en a is now ") ? 1 : 0;
        if (token_among(tokens, i, telling) && oximeter_value(tokens, value, &taken) > 0) {
            return true;
        }
    }
    return false;
}

/* "mom 84", "hers is 84 now", "ayuda 79": nothing else is said. In doubt a person is called. */
static bool
is_whole_text(const struct tokens *tokens, size_t at, size_t after)
{
    static const char before[] = " my mi is at : = , de hers his suya suyo la el en esta - ";
    static const char behind[] = " now rn right % percent . ! ? , ahora ahorita again still ";
    static const char cries[] = " help helpp ayuda ayudenme ayudeme ayudame auxilio socorro sos ";
    bool of_someone = false;
    size_t i;

    for (i = 0; i < at; i++) {
        if (!token_among(tokens, i, before) && !oximeter_is_someone(tokens, i) &&
            !token_among(tokens, i, cries) && !token_among(tokens, i, " ! . ")) {
            return false;
        }
        of_someone = of_someone || oximeter_is_someone(tokens, i) || token_among(tokens, i, cries);
    }
    for (i = after; token_among(tokens, i, behind) || token_among(tokens, i, cries); i++) {
        of_someone = of_someone || token_among(tokens, i, cries);
    }
    return of_someone && i == tokens->count;
}

/* "On 3 liters 77", "77 on 3 liters": who tells the flow tells their value beside it. */
static bool
is_all_beside_flow(const struct tokens *tokens, size_t at, size_t after)
{
    size_t behind = after;

    behind += token_among(tokens, behind, " on at con en ") ? 1 : 0;
    return (oximeter_is_flow(tokens, at - 2) && at <= 3 && after == tokens->count) ||
           (at == 0 && oximeter_is_flow(tokens, behind) && behind + 2 == tokens->count);
}

void
oximeter_read_bare(const struct tokens *tokens, struct lowest *lowest)
{
    bool of_hours = tokens_have(tokens, oximeter_hours_asked);
    bool raised = tokens_have(tokens, raises);
    int lowest_told =
        tokens_have(tokens, "finger|dedo|dedito|oximeter|oximetro") || is_beside_pulse(tokens)
            ? LOWEST_OF_FINGER
            : OXIMETER_LOWEST_BARE;
    bool goes_on = false;                    /* the number before was a value of a series */
    size_t at = 0, taken, listed = SIZE_MAX; /* where a list of someone's values goes on */

    while (at < tokens->count) {
        int value = oximeter_value(tokens, at, &taken);
        size_t after = at + (taken == 0 ? 1 : taken);
        bool is_series;

        if (value < lowest_told || value > HIGHEST_BARE || oximeter_is_of_thing(tokens, at) ||
            is_age_beside_value(tokens, at, after)) {
            goes_on = goes_on && taken == 0;
            at = after;
            continue;
        }
        is_series = is_in_series(tokens, at, after);
        if (((goes_on || is_series || is_judged(tokens, at, after) || raised ||
              is_leading(tokens, at, after)) &&
             !of_hours) ||
            at == listed || is_told(tokens, at, of_hours) || is_led_by_someone(tokens, at, after) ||
            is_told_of(tokens, at, after) || is_percent_of_someone(tokens, at, after) ||
            is_of_a_state(tokens, at, after) || is_whole_text(tokens, at, after) ||
            is_all_beside_flow(tokens, at, after) || is_shown_with_pulse(tokens, at, after)) {
            oximeter_keep(tokens, at, taken, value, oximeter_who_leads(tokens, at) < at, lowest);
            listed = oximeter_is_of_someone(tokens, at) || at == listed ? past_joints(tokens, after)
                                                                        : listed;
        }
        goes_on = is_series;
        at = after;
    }
}
