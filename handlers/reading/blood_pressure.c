#include "blood_pressure.h"

#include "persons.h"
#include "vital_signs.h"

enum {
    UPPER_MIN = 50,
    UPPER_MAX = 280,
    LOWER_MIN = 20,
    LOWER_MAX = 180,
    NO_PERCENT_FROM = 101,
    HIGH_UPPER = 180,
    HIGH_LOWER = 120,
    LOW_UPPER = 90,
    GRAVE_HIGH_UPPER = 220,
    GRAVE_HIGH_LOWER = 130,
    GRAVE_LOW_UPPER = 75
};

static int
whole_number_at(const struct tokens *tokens, size_t at)
{
    return at < tokens->count && tokens->list[at].kind == TOKEN_NUMBER &&
                   tokens->list[at].thousandths % 1000 == 0
               ? tokens->list[at].thousandths / 1000
               : 0;
}

/* Two numbers that a pressure may be: "80/40", "80 over 40", "80 sobre 40"; behind its name also
 * "70 40", "70 con 40". */
static bool
pair_at(const struct tokens *tokens, size_t at, bool named, struct blood_pressure *pressure)
{
    bool is_joined = token_among(tokens, at + 1, " / over sobre ") ||
                     (named && token_among(tokens, at + 1, " con entre - "));
    size_t second = is_joined ? at + 2 : at + 1;
    int upper = whole_number_at(tokens, at), lower = whole_number_at(tokens, second);

    if ((!is_joined && !named) || upper < UPPER_MIN || upper > UPPER_MAX || lower < LOWER_MIN ||
        lower > LOWER_MAX || lower >= upper || token_is(tokens, second + 1, "/")) { /* a date */
        return false;
    }
    *pressure = (struct blood_pressure){upper, lower, at, second + 1};
    return true;
}

/* "Her bp is 210", "le subio la presion a 200": a cylinder's gauge tells a pressure too. */
static bool
alone_at(const struct tokens *tokens, size_t at, struct blood_pressure *pressure)
{
    size_t words = tokens_phrase_at(tokens, at,
                                    "bp|blood pressure|presion arterial|su presion|mi presion|"
                                    "le subio la presion|me subio la presion|"
                                    "le bajo la presion|me bajo la presion");
    size_t number = vital_number_behind(tokens, at + words);

    *pressure = (struct blood_pressure){
        .upper = whole_number_at(tokens, number), .first = number, .behind = number + 1};
    return words > 0 && pressure->upper >= UPPER_MIN && pressure->upper <= UPPER_MAX &&
           blood_pressure_is_extreme(pressure) && !vital_is_of_else(tokens, number + 1);
}

static bool
is_named(const struct tokens *tokens)
{
    return tokens_have(tokens, "bp|b p|blood pressure|pressure is|pressure was|pressure of|"
                               "pressure at|presion|presion arterial|tension|mm hg|mmhg|cuff|"
                               "baumanometro|tensiometro");
}

/* Batteries, settings and times have pairs of their own, and an oximeter tells a pulse as well. */
static bool
is_of_else(const struct tokens *tokens)
{
    return tokens_have(
        tokens, "battery|batteries|batt|batts|bat|bats|pack|packs|spare|setting|charge|"
                "charged|hours|hrs|lights|bars|bateria|baterias|pila|pilas|horas|rayas|"
                "luces|psi|tank|cylinder|tanque|cilindro|sat|sats|o2|oxygen|oxigeno|spo2|"
                "oximeter|oximetro|saturation|saturacion|room|%|miles|odds|finger|clip|ox|dedo|"
                "level|levels|numbers|nivel|pinza|pulse|pulso");
}

bool
blood_pressure_read(const struct tokens *tokens, struct blood_pressure *pressure)
{
    bool named = is_named(tokens), else_ = is_of_else(tokens);
    size_t at;

    for (at = 0; at < tokens->count; at++) {
        if (pair_at(tokens, at, named, pressure) &&
            ((named && (!else_ || pressure->upper >= NO_PERCENT_FROM)) ||
             (!else_ &&
              (pressure->upper >= NO_PERCENT_FROM || tokens_any_among(tokens, 0, person_words) ||
               tokens_have(tokens, "my|mi|tiene|faint|dizzy|weak|mareada|mareado"))))) {
            return true;
        }
    }
    for (at = 0; at < tokens->count && !else_; at++) {
        if (alone_at(tokens, at, pressure)) {
            return true;
        }
    }
    return false;
}

bool
blood_pressure_is_extreme(const struct blood_pressure *pressure)
{
    return pressure->upper >= HIGH_UPPER || pressure->lower >= HIGH_LOWER ||
           pressure->upper <= LOW_UPPER;
}

bool
blood_pressure_is_grave(const struct blood_pressure *pressure)
{
    return pressure->upper >= GRAVE_HIGH_UPPER || pressure->lower >= GRAVE_HIGH_LOWER ||
           pressure->upper <= GRAVE_LOW_UPPER;
}
