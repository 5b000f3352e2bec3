/* What is told of things and figures beside the signs: it takes some away and adds some. */
#include <assert.h>
#include <string.h>

#include "blood_pressure.h"
#include "display.h"
#include "found.h"
#include "heart_device.h"
#include "memory.h"
#include "ordered_setting.h"
#include "steps.h"
#include "supply_worse.h"
#include "vital_signs.h"
#include "worn_device.h"

static const char heart_racing[] = "heart-racing";

/*
 * "It says FAN STOPPED": staff are called for what the display shows. A sign that its words only
 * look like gives way to that; one that the rest of the text shows stays, and so does an emergency,
 * a unit without flow and what the words themselves tell of the unit ("UNIT TOO HOT").
 */
static void
leave_out_display(const struct asked *whole, struct found *found)
{
    size_t start, end, i = 0;
    const struct alarm *alarm = display_shown(whole, whole->equipment, &start, &end);
    const char *without;

    if (display_is_word(whole, whole->text)) {
        found->count = 0;
        return;
    }
    if (alarm != NULL) { /* its own table tells more than what any unit may show */
        found_leave_out(found, "unit-message");
    }
    if (alarm == NULL || !alarm->oxygen_stops || found->count == 0) {
        return;
    }
    without = memory_format(whole->arena, "%.*s %s", (int)start, whole->text, whole->text + end);
    while (i < found->count) {
        const struct sign *sign = found->list[i].sign;

        if (sign->level == SIGN_EMERGENCY || found_is_no_flow(sign) ||
            found_on(whole, without, sign->id) ||
            (sign->level == SIGN_EQUIPMENT && found_on(whole, alarm->shows, sign->id))) {
            i++;
        } else {
            found_leave_out(found, sign->id);
        }
    }
}

/* "The other one is dead": tokens [at, end) tell that of a battery that is not in use; 0 if not. */
static size_t
tells_other_empty(const struct tokens *tokens, size_t at)
{
    size_t i = at + 1;

    if (!token_among(tokens, at, " other others second spare spares third otra otras segunda ")) {
        return 0;
    }
    while (token_among(tokens, i,
                       " one ones two battery batteries is are was s its all both nearly almost "
                       "completely bateria pila baterias pilas esta estan casi ya ")) {
        i++;
    }
    return token_among(tokens, i,
                       " dead empty flat gone drained done out died muerta muertas vacia vacias "
                       "descargada descargadas ")
               ? i + 1
               : 0;
}

/* "4 lights in the unit and the other is dead": the unit runs, and it is a battery that is dead. */
static void
leave_out_other_empty(const struct asked *whole, struct found *found)
{
    const struct tokens *tokens = &whole->tokens;
    const char *without;
    size_t at = 0, end = 0, i;

    while (at < tokens->count && (end = tells_other_empty(tokens, at)) == 0) {
        at++;
    }
    if (at == tokens->count || !found_tells_charge(whole->told) ||
        tokens_have(tokens,
                    "silent|quiet|dark|black|off|stopped|callado|callada|apagado|apagada")) {
        return;
    }
    without = memory_format(whole->arena, "%.*s %s", (int)tokens->list[at].start, whole->text,
                            whole->text + tokens->list[end - 1].end);
    for (i = found->count; i > 0; i--) {
        const struct sign *sign = found->list[i - 1].sign;

        if (found_is_no_flow(sign) && !found_on(whole, without, sign->id)) {
            found_leave_out(found, sign->id);
        }
    }
}

/* "Battery died and so did my dad": what is like having no oxygen left is a death. */
static void
add_death_beside_battery(const struct asked *whole, struct found *found)
{
    const struct sign *death = kb_sign(whole->context->kb, "death-told", whole->language);

    if (death != NULL && ran_out_with_somebody(whole)) {
        found_leave_out(found, "no-oxygen-source");
        found_add(found, death);
    }
}

/* What these words show of people without the rest of the text, by a phrase: what a part is like
 * ("he was just sleeping") tells too little. */
static void
add_shown_by(const struct asked *whole, const char *text, struct found *found)
{
    struct sign_match matches[SIGNS_MAX];
    size_t count = kb_find_signs(whole->context->kb, whole->context->workspace, text, matches,
                                 SIGNS_MAX),
           i;

    for (i = 0; i < count; i++) {
        if (matches[i].sign->level != SIGN_EQUIPMENT && !matches[i].by_likeness) {
            found_add(found, matches[i].sign);
        }
    }
}

/* "Before the battery died he was ok now hes grey": the battery's words drown what is told of the
 * person, so that is looked at without them as well. */
static void
add_beside_empty(const struct asked *whole, struct found *found)
{
    const struct emptied *emptied = &whole->emptied;

    if (emptied->tank || emptied->battery) {
        assert(emptied->end <= strlen(whole->text));
        add_shown_by(whole,
                     memory_format(whole->arena, "%.*s. %s", (int)emptied->start, whole->text,
                                   whole->text + emptied->end),
                     found);
    }
}

/* "False alarm from the unit hes limp": so do those of an all-clear. */
static void
add_beside_all_clear(const struct asked *whole, struct found *found)
{
    const char *beside = is_over_beside(whole);

    if (beside != NULL && !is_over_told(whole)) {
        add_shown_by(whole, beside, found);
    }
}

static void
add_by_id(const struct asked *whole, const char *id, struct found *found)
{
    const struct sign *sign = kb_sign(whole->context->kb, id, whole->language);

    if (sign != NULL) {
        found_add(found, sign);
    }
}

/* Staff look at it; so high or low that it is looked at now, with what to watch for; or farther
 * out than anybody should wait with. */
static void
add_blood_pressure(const struct asked *whole, struct found *found)
{
    struct blood_pressure pressure;

    if (blood_pressure_read(&whole->tokens, &pressure)) {
        add_by_id(whole,
                  blood_pressure_is_grave(&pressure)     ? GRAVELY_ILL
                  : blood_pressure_is_extreme(&pressure) ? heart_racing
                                                         : "health-question",
                  found);
    }
}

static void
add_vital_signs(const struct asked *whole, struct found *found)
{
    enum vital pulse = vital_pulse(&whole->tokens);

    if (pulse != VITAL_NOT_FAR_OUT) {
        add_by_id(whole, pulse == VITAL_GRAVE ? GRAVELY_ILL : heart_racing, found);
    }
    if (vital_breaths(&whole->tokens) == VITAL_GRAVE) {
        add_by_id(whole, "trouble-breathing", found);
    }
}

/* What is told to be nearly empty or to have stopped once more is told anew. */
static void
add_worse_supply(const struct asked *whole, struct found *found)
{
    static const char *const ids[] = {[SUPPLY_STOPPED_AGAIN] = "unit-stopped",
                                      [SUPPLY_CYLINDER_LOW] = "cylinder-trouble",
                                      [SUPPLY_CYLINDER_LAST] = "cylinder-trouble",
                                      [SUPPLY_LAST] = "last-battery",
                                      [SUPPLY_NONE_LEFT] = "last-battery"};
    enum supply_worse worse = supply_worse_told(whole);

    found->none_left =
        worse == SUPPLY_NONE_LEFT || worse == SUPPLY_CYLINDER_LAST || supply_is_cut_off(whole);
    if (worse != SUPPLY_NOT_WORSE || found->none_left) {
        add_by_id(whole, ids[worse == SUPPLY_NOT_WORSE ? SUPPLY_LAST : worse], found);
    }
}

/* "His watch says low oxygen": it is his, whatever a unit's message looks like. */
static void
add_worn_device(const struct asked *whole, struct found *found)
{
    const struct sign *sign = kb_sign(whole->context->kb, "low-oxygen", whole->language);

    if (sign != NULL && worn_device_tells_low(&whole->tokens)) {
        found_leave_out(found, "unit-message");
        found_add(found, sign);
    }
}

void
found_leave_out_things(const struct asked *whole, struct found *found)
{
    leave_out_display(whole, found);
    leave_out_other_empty(whole, found);
    if (ordered_setting_is_asked(whole)) {
        found_leave_out(found, "change-setting");
    }
}

/* "Blackout", "powercut here", "apagon": by its name alone it may be asked of, or it is now. */
static void
add_outage_in_a_word(const struct asked *whole, struct found *found)
{
    static const char names[] = "blackout|powercut|power cut|outage|power outage|apagon|"
                                "corte de luz|corte de corriente";
    static const char around[] =
        " we have got a an the here there now in at cabin lodge house again "
        "hay aqui ahora un una en la el cabana casa otra vez ";
    struct tokens rest = tokens_without(whole->arena, &whole->tokens, names);

    if (rest.count < whole->tokens.count && tokens_words_among(&rest, around) &&
        !tokens_have(&whole->tokens, "?")) {
        add_by_id(whole, "power-out-now", found);
    }
}

/* One was told in a text just before. */
static bool
was_shocked(const struct asked *whole)
{
    const struct context *context = whole->context;
    size_t i;

    for (i = 0; i < context->recent_count; i++) {
        struct tokens tokens = tokens_read(whole->arena, context->recent[i].text);

        if (heart_shock_told(&tokens).often != NOT_SHOCKED) {
            return true;
        }
    }
    return false;
}

static bool
has_symptom(const struct found *found)
{
    size_t i;

    for (i = 0; i < found->count; i++) {
        if (found_is_symptom(found->list[i].sign)) {
            return true;
        }
    }
    return false;
}

/* The text without tokens [from, end). */
static const char *
text_without(const struct asked *whole, size_t from, size_t end)
{
    const struct token *list = whole->tokens.list;

    return memory_format(whole->arena, "%.*s %s", (int)list[from].start, whole->text,
                         whole->text + list[end - 1].end);
}

/* "Me dio una descarga" is a line of who was electrocuted, and here of nothing but the shock. */
static void
leave_out_current(const struct asked *whole, const struct heart_shock *shock, struct found *found)
{
    static const char electrocuted[] = "head-injury";
    const struct token *list = whole->tokens.list;
    size_t i;

    for (i = 0; i < found->count; i++) {
        const struct sign_match *match = &found->list[i];

        if (strcmp(match->sign->id, electrocuted) == 0 && match->start <= list[shock->at].start &&
            match->end >= list[shock->end - 1].end &&
            match->start >= list[shock->clause.from].start &&
            !found_on(whole, text_without(whole, shock->at, shock->end), electrocuted)) {
            found_leave_out(found, electrocuted);
            return;
        }
    }
}

/* Its words are only like another emergency: true if so, for then it is grave. What the rest of the
 * text is like as well stays. */
static bool
leave_out_like_shock(const struct asked *whole, const struct heart_shock *shock,
                     struct found *found)
{
    const char *rest = text_without(whole, shock->clause.from, shock->clause.end);
    bool is_left_out = false;
    size_t i = 0;

    while (i < found->count) {
        const struct sign_match *match = &found->list[i];

        if (match->by_likeness && match->sign->level == SIGN_EMERGENCY &&
            !found_on(whole, rest, match->sign->id)) {
            found_leave_out(found, match->sign->id);
            is_left_out = true;
        } else {
            i++;
        }
    }
    return is_left_out;
}

/* What else they feel makes a shock grave, and so does who presses. */
static void
add_heart_shock(const struct asked *whole, struct found *found)
{
    struct heart_shock shock = heart_shock_told(&whole->tokens);
    bool was = was_shocked(whole), is_grave;

    if (shock.often == NOT_SHOCKED) {
        if (was && has_symptom(found) && !found_has_level(found, SIGN_EMERGENCY)) {
            add_by_id(whole, GRAVELY_ILL, found);
        }
        return;
    }
    leave_out_current(whole, &shock, found);
    found_leave_out(found, "unit-shocks");
    is_grave = leave_out_like_shock(whole, &shock, found) || shock.often == SHOCKED_SEVERAL_TIMES ||
               was || has_symptom(found) ||
               tokens_have(&whole->tokens, "hurry|help|come quick|apurense|apurele|ayuda|ayudenme");
    add_by_id(whole, is_grave ? GRAVELY_ILL : heart_racing, found);
}

static void
add_counted_dose(const struct asked *whole, struct found *found)
{
    enum dose dose = counted_dose_told(whole);
    const struct sign *sign = kb_sign(
        whole->context->kb, dose == DOSE_TOO_MUCH ? "poison" : "medicines", whole->language);

    if (sign != NULL && dose != DOSE_NONE) {
        found_add(found, sign);
    }
}

static void
add_unknown_medicine(const struct asked *whole, struct found *found)
{
    static const char medicines[] = "medicines";
    const struct sign *sign = kb_sign(whole->context->kb, medicines, whole->language);

    if (sign != NULL && !found_has(found, medicines) && unknown_medicine_told(whole)) {
        found_add(found, sign);
    }
}

void
found_add_told(const struct asked *whole, struct found *found)
{
    add_unknown_medicine(whole, found);
    add_counted_dose(whole, found);
    add_blood_pressure(whole, found);
    add_vital_signs(whole, found);
    add_worse_supply(whole, found);
    add_worn_device(whole, found);
    add_heart_shock(whole, found);
    add_outage_in_a_word(whole, found);
    add_beside_empty(whole, found);
    add_beside_all_clear(whole, found);
    add_death_beside_battery(whole, found);
}
