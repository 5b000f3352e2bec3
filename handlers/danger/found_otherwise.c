/*
 * What is found in a text and yet is not told by it: it is only like a sign, or it is told of a
 * thing. Each of these must be sure, for the sign is not said then.
 */
#include <string.h>

#include "found.h"
#include "persons.h"
#include "steps.h"

/* Words that go with an oximeter's value and tell nothing else of the person. */
static const char around_a_value[] =
    " oxygen o2 sat sats saturation saturations spo2 oximeter ox pulse meter monitor finger clip "
    "thing gadget reading reads read level number says shows is at on the my mom moms dad dads her "
    "his hers it its now today this here i get got have of a and so percent hi hello oxigeno "
    "saturacion oximetro lectura nivel numero aparatito pinza dedo marca dice sale da tiene tengo "
    "esta en el la de del es me mi su mama papa ahora hoy aqui y por ciento hola good ok okay fine "
    "normal alright bien bueno ";

/* A battery or the unit swells, and nobody's limbs are named: what it is like is their swelling. */
static const char batteries[] =
    "battery|batteries|batt|batts|pack|packs|bateria|baterias|pila|pilas|charger|cargador";
static const char swells[] =
    "swollen|swelled|swell|swells|swelling|swole|bulged|bulging|bulges|puffed|puffy|bloated|hot|"
    "hinchada|hinchadas|hincho|inflada|inflo|abultada|caliente";
static const char limbs[] =
    "ankle|ankles|leg|legs|foot|feet|calf|calves|hand|hands|finger|fingers|knee|knees|shin|shins|"
    "toe|toes|face|lip|lips|throat|arm|arms|shoe|shoes|sock|socks|ring|rings|body|tobillo|"
    "tobillos|pierna|piernas|pie|pies|mano|manos|dedo|dedos|cara|brazo|brazos|zapato|zapatos";
static const char gases[] = "gas|fume|fumes|smell|smells|smelled|stink|stinks|carbon|co|exhaust|"
                            "propane|huele|olor|humo|monoxido|escape";

bool
found_beside_value(const struct asked *whole, const char *text)
{
    static const char *const of_value[] = {"low-reading", "reading", "low-oxygen", "asks-emergency",
                                           "need-at-all"};
    struct tokens tokens = tokens_read(whole->arena, text);
    struct sign_match matches[SIGNS_MAX];
    size_t count, i, j;
    bool is_alone = true;

    for (i = 0; i < tokens.count; i++) {
        is_alone = is_alone &&
                   (tokens.list[i].kind != TOKEN_WORD || token_among(&tokens, i, around_a_value) ||
                    token_among(&tokens, i, person_words));
    }
    if (is_alone) {
        return false;
    }
    count = kb_find_signs(whole->context->kb, whole->context->workspace, text, matches, SIGNS_MAX);
    for (i = 0; i < count; i++) {
        for (j = 0; j < sizeof of_value / sizeof of_value[0] &&
                    strcmp(matches[i].sign->id, of_value[j]) != 0;
             j++) {
        }
        if (j == sizeof of_value / sizeof of_value[0]) {
            return true;
        }
    }
    return false;
}

static bool
is_told_of_battery(const struct tokens *tokens, const struct sign_match *match)
{
    const char *id = match->sign->id;

    return tokens_have(tokens, batteries) && tokens_have(tokens, swells) &&
           ((strcmp(id, "swollen-ankles") == 0 && !tokens_have(tokens, limbs)) ||
            (strcmp(id, "bad-gas") == 0 && match->by_likeness && !tokens_have(tokens, gases)));
}

static bool
is_of_hiss(const struct sign *sign)
{
    return strcmp(sign->id, "battery-smoking") == 0 || strcmp(sign->id, "cylinder-leaking") == 0;
}

/* "Its hissing loud and wont stop" is like an alarm that stays, but no alarm hisses: it is danger,
 * and only where that is answered (equipment_trouble.c) does the alarm give way to it. */
static bool
is_danger_like_alarm(const struct asked *whole, const struct tokens *tokens,
                     const struct sign_match *match)
{
    return match->by_likeness && strcmp(match->sign->id, "alarm-stays") == 0 &&
           tokens_have(tokens, "hiss|hissing|hisses|silba|silbando") &&
           !tokens_have(tokens, "alarm|alarms|beep|beeps|beeping|alarma|pita|pitando|pitido") &&
           equipment_trouble_told(whole) == TROUBLE_DANGER;
}

/* "The battery just died" is told of no person, and what is only like a last battery is answered
 * as an empty one, which asks whether oxygen flows (ran_out.c). */
static bool
is_of_empty_battery(const struct asked *whole, const struct sign_match *match)
{
    const char *id = match->sign->id;

    return (strcmp(id, "unresponsive") == 0 || strcmp(id, "death-told") == 0 ||
            (match->by_likeness && strcmp(id, "last-battery") == 0)) &&
           ran_out_is_all(whole);
}

/* "The thing quit beeping" shows a unit that stopped; "the nurse says hes ok. bleeding stopped"
 * after an emergency a mother who nurses. */
static bool
is_lesser_beside_all_clear(const struct asked *whole, const struct sign *sign)
{
    return strcmp(sign->id, "asks-emergency") == 0 || strcmp(sign->id, "unit-stopped") == 0 ||
           (sign->level == SIGN_CLINICAL && open_emergency_stands(whole->context));
}

/*
 * It is only like a sign, and the text in which it was found tells otherwise: "my saturation is at
 * 92" is like texts that tell of a low one, but a value with nothing beside it says itself how
 * grave it is; in "my dad is 79 and uses oxygen" there is none (introduces.c), and yet it is like
 * them; "ya me siento mejor" and "paramedics are here" are like texts of those who are not well.
 */
bool
found_told_otherwise(const struct asked *whole, const struct tokens *found_in,
                     const struct sign_match *match, int reading)
{
    return (match->by_likeness && reading > 0 && tokens_words_among(found_in, around_a_value)) ||
           ((match->by_likeness || is_lesser_beside_all_clear(whole, match->sign)) &&
            (is_over_told(whole) ||
             (open_emergency_stands(whole->context) && is_over_of_anything(whole)))) ||
           /* "no le sale nada" is like a stroke, but it answers what we asked */
           (match->by_likeness && flowing_is_denied(whole)) ||
           (match->by_likeness && found_in == &whole->tokens && introduces_told(whole)) ||
           (match->by_likeness && is_over_of_smell(match->sign) && is_over_was_cooking(whole)) ||
           is_told_of_battery(found_in, match) || is_of_empty_battery(whole, match) ||
           is_danger_like_alarm(whole, found_in, match) ||
           (is_of_hiss(match->sign) && hissing_is_of_cylinder(whole, whole->text)) ||
           (strcmp(match->sign->id, "asks-emergency") == 0 &&
            open_emergency_stands(whole->context) && open_emergency_is_helped(whole)) ||
           staff_says_of_renter(whole, match) ||
           (match->sign->level != SIGN_EMERGENCY && staff_absent_told(whole));
}
