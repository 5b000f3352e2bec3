#include "vital_signs.h"

enum {
    THOUSAND = 1000,
    PULSE_MIN = 20, /* no heart beats slower, and settings are below */
    PULSE_MAX = 300,
    PULSE_LOW = 50,
    PULSE_HIGH = 120,
    PULSE_GRAVE_LOW = 39,
    PULSE_GRAVE_HIGH = 150,
    BREATHS_MAX = 90,
    BREATHS_LOW = 8,
    BREATHS_HIGH = 25,
    FILLERS_MAX = 7
};

static const char supposed[] = "if|in case|should be|supposed to be|si sube|si baja|si pasa|"
                               "si llega|deberia|debe estar|en caso";
static const char long_ago[] = "yesterday|last night|last week|last month|last year|ayer|anoche|"
                               "la semana pasada|el mes pasado|el ano pasado";

static const char hearts[] = "heart rate|heartrate|heart beat|heartbeat|heart beats|"
                             "heart is beating|heart beating|heart going|heart is going|heart at|"
                             "heart is at|hr|bpm|pulse|pulse rate|pulso|"
                             "frecuencia cardiaca|ritmo cardiaco|latidos|palpitaciones|"
                             "corazon late|corazon esta|corazon va|corazon anda|corazon le late";
static const char beats[] = "bpm|beats a minute|beats per minute|beats per min|beats / min|"
                            "beats a min|latidos por minuto|latidos al minuto|latidos por min|"
                            "pulsaciones|lpm de pulso";
/* "On pulse 40 left" names the mode. */
static const char before_mode[] = " on in mode modo setting dose by using en con ";
/* "2 hr 45", "half an hr" */
static const char before_hours[] = " an a half per each every one two three four five six eight "
                                   "couple few several last next ";

static const char breaths_named[] =
    "breathing rate|breath rate|breaths rate|respiratory rate|respiration rate|resp rate|"
    "respirations|respiration|resps|rr|breaths per minute|breaths a minute|breaths per min|"
    "breaths a min|frecuencia respiratoria|respiraciones por minuto|respiraciones";
static const char breaths[] = " breaths breath respirations respiraciones respiros ";
static const char times[] = " times veces x ";
static const char breathes[] =
    " breathe breathes breathing breath breaths respira respiro respiran "
    "respirando respiraciones respiracion ";
static const char in_a_minute[] =
    "a minute|per minute|a min|per min|every minute|each minute|in a minute|in one minute|/ min|"
    "/ minute|por minuto|al minuto|en un minuto|cada minuto|x minuto|por min|x min";
static const char of_machine[] = "beep|beeps|beeping|puff|puffs|pitido|pitidos|liter|liters|litros|"
                                 "battery|bateria|setting";

static const char fillers[] =
    " is at was of rate now = : reading reads says shows down up to around about like only just "
    "over under below above in the between dropped dropping jumped jumps hits hit went going goes "
    "gets got its been resting beating steady currently still almost nearly approximately - ~ "
    "de en a esta anda va es cardiaco cardiaca bajo subio como mas menos tiene marca salio le late "
    "sigue ya casi ";
static const char other_units[] =
    " % percent min mins minute minutes hour hours hr hrs h psi bar bars light lights left lpm l "
    "liters litres battery batteries dollars miles mg ft feet degrees minutos horas hora luces "
    "rayas litros bateria baterias pila pilas millas pesos grados / ";

/* The whole number at `at`, and how many tokens tell it; 0 if there is none. */
static size_t
whole_at(const struct tokens *tokens, size_t at, int *value)
{
    int thousandths = 0;
    size_t taken = tokens_number(tokens, at, false, &thousandths);

    *value = thousandths / THOUSAND;
    return thousandths % THOUSAND == 0 ? taken : 0;
}

size_t
vital_number_behind(const struct tokens *tokens, size_t at)
{
    size_t end = at + FILLERS_MAX;

    while (at < end && token_among(tokens, at, fillers)) {
        at++;
    }
    return at;
}

bool
vital_is_of_else(const struct tokens *tokens, size_t behind)
{
    return token_among(tokens, behind, other_units) ||
           tokens_phrase_at(tokens, behind, "por ciento") > 0;
}

static enum vital
pulse_of(int value)
{
    if (value < PULSE_MIN || value > PULSE_MAX) {
        return VITAL_NOT_FAR_OUT;
    }
    if (value <= PULSE_GRAVE_LOW || value >= PULSE_GRAVE_HIGH) {
        return VITAL_GRAVE;
    }
    return value <= PULSE_LOW || value >= PULSE_HIGH ? VITAL_FAR_OUT : VITAL_NOT_FAR_OUT;
}

static enum vital
breaths_of(int value)
{
    return (value >= BREATHS_HIGH && value <= BREATHS_MAX) || (value > 0 && value <= BREATHS_LOW)
               ? VITAL_GRAVE
               : VITAL_NOT_FAR_OUT;
}

/* The name at `at` is that of a mode, or of hours. */
static bool
names_else(const struct tokens *tokens, size_t at)
{
    size_t before = tokens_back(at, 1);

    if (token_among(tokens, at, " pulse pulso ")) {
        return at > 0 && token_among(tokens, before, before_mode);
    }
    return token_is(tokens, at, "hr") && at > 0 &&
           (tokens->list[before].kind == TOKEN_NUMBER || token_among(tokens, before, before_hours));
}

/* Of what is named at `at`, "heart rate is at 165": what `of` makes of its number. */
static enum vital
named_at(const struct tokens *tokens, size_t at, const char *names, enum vital (*of)(int))
{
    size_t words = tokens_phrase_at(tokens, at, names), taken;
    int value;

    if (words == 0 || names_else(tokens, at)) {
        return VITAL_NOT_FAR_OUT;
    }
    at = vital_number_behind(tokens, at + words);
    taken = whole_at(tokens, at, &value);
    return taken == 0 || vital_is_of_else(tokens, at + taken) ? VITAL_NOT_FAR_OUT : of(value);
}

/* "140 bpm" */
static enum vital
beats_at(const struct tokens *tokens, size_t at)
{
    int value;
    size_t taken = whole_at(tokens, at, &value);

    return taken > 0 && tokens_phrase_at(tokens, at + taken, beats) > 0 ? pulse_of(value)
                                                                        : VITAL_NOT_FAR_OUT;
}

/* "30 breaths a minute", "respira 35 veces por minuto", "breathing 40 a minute": few only of what
 * is counted by its name. */
static enum vital
breaths_at(const struct tokens *tokens, size_t at)
{
    int value;
    size_t taken = whole_at(tokens, at, &value), behind = at + taken;
    bool is_counted = token_among(tokens, behind, breaths) ||
                      (token_among(tokens, behind, times) && tokens_any_among(tokens, 0, breathes));

    if (taken == 0 ||
        (!is_counted && (value < BREATHS_HIGH || !tokens_any_among(tokens, 0, breathes)))) {
        return VITAL_NOT_FAR_OUT;
    }
    return tokens_phrase_at(tokens, behind + is_counted, in_a_minute) > 0 ? breaths_of(value)
                                                                          : VITAL_NOT_FAR_OUT;
}

static enum vital
graver(enum vital one, enum vital other)
{
    return one > other ? one : other;
}

enum vital
vital_pulse(const struct tokens *tokens)
{
    enum vital told = VITAL_NOT_FAR_OUT;
    size_t i;

    for (i = 0; i < tokens->count && !tokens_have(tokens, supposed); i++) {
        told = graver(told, graver(named_at(tokens, i, hearts, pulse_of), beats_at(tokens, i)));
    }
    return told == VITAL_GRAVE && tokens_have(tokens, long_ago) ? VITAL_FAR_OUT : told;
}

enum vital
vital_breaths(const struct tokens *tokens)
{
    enum vital told = VITAL_NOT_FAR_OUT;
    size_t i;

    if (tokens_have(tokens, supposed) || tokens_have(tokens, of_machine) ||
        tokens_have(tokens, long_ago)) {
        return VITAL_NOT_FAR_OUT;
    }
    for (i = 0; i < tokens->count; i++) {
        told = graver(
            told, graver(named_at(tokens, i, breaths_named, breaths_of), breaths_at(tokens, i)));
    }
    return told;
}
