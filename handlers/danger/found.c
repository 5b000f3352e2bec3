#include "found.h"

#include <string.h>

#include "bare_charge.h"
#include "display.h"
#include "last_cylinder.h"
#include "memory.h"
#include "oximeter.h"
#include "steps.h"
#include "yes_no.h"

/* Clinical signs that are a wish or a question, not something that somebody feels. */
static const char *const no_symptoms[] = {
    "alcohol",         "change-setting", "child-or-pet", "danger-signs",   "death-told",
    "health-question", "medicines",      "more-oxygen",  "need-at-all",    "pregnancy",
    "rationing",       "reading",        "sharing",      "shower-without", "sleep-without",
};
/* A danger around somebody who may feel nothing yet. */
static const char *const no_ills[] = {"bad-gas"};
/* After these the renter is asked whether oxygen flows again. */
static const char *const no_flow[] = {"unit-stopped", "power-out-now"};
static const char battery_hot[] = "battery-hot";
static const char no_source[] = "no-oxygen-source";

static bool
is_one_of(const char *id, const char *const *ids, size_t count)
{
    size_t i;

    for (i = 0; i < count; i++) {
        if (strcmp(ids[i], id) == 0) {
            return true;
        }
    }
    return false;
}

bool
found_is_symptom(const struct sign *sign)
{
    return (sign->level == SIGN_EMERGENCY &&
            !is_one_of(sign->id, no_ills, sizeof no_ills / sizeof no_ills[0])) ||
           (sign->level == SIGN_CLINICAL &&
            !is_one_of(sign->id, no_symptoms, sizeof no_symptoms / sizeof no_symptoms[0]));
}

bool
found_has(const struct found *found, const char *id)
{
    size_t i;

    for (i = 0; i < found->count; i++) {
        if (strcmp(found->list[i].sign->id, id) == 0) {
            return true;
        }
    }
    return false;
}

/* The texts of the last 3 minutes before this one, oldest first, each with this after it. */
static char *
recent_texts(const struct asked *whole, const char *after)
{
    const struct context *context = whole->context;
    char *joined = memory_copy(whole->arena, "");
    size_t i;

    for (i = 0; i < context->recent_count; i++) {
        const char *text = context->recent[i].text;

        if (whole->message->sent_utc_s - context->recent[i].sent_utc_s <= JOIN_RECENT_S &&
            !staff_spoke_of_renter(whole, text) && !hissing_is_of_cylinder(whole, text) &&
            !display_is_word(whole, text)) {
            memory_append(&joined, "%s%s", text, after);
        }
    }
    return joined;
}

bool
found_is_no_flow(const struct sign *sign)
{
    return is_one_of(sign->id, no_flow, sizeof no_flow / sizeof no_flow[0]);
}

/*
 * True if the texts before show the sign by themselves already; or one as grave, if the match takes
 * in all of them: then it is their likeness as a whole, of which the words of the sign are a part.
 */
static bool
was_shown(const struct asked *whole, const struct sign_match *match)
{
    const struct context *context = whole->context;
    const char *each = recent_texts(whole, "\n"); /* as texts of their own */
    struct sign_match earlier[SIGNS_MAX];
    size_t count = kb_find_signs(context->kb, context->workspace, each, earlier, SIGNS_MAX), i;

    for (i = 0; i < count; i++) {
        if (strcmp(earlier[i].sign->id, match->sign->id) == 0 ||
            (match->start == 0 && earlier[i].sign->level >= match->sign->level)) {
            return true;
        }
    }
    return false;
}

static void
leave_out_told_otherwise(const struct asked *whole, struct found *found)
{
    size_t i, kept = 0;

    for (i = 0; i < found->count; i++) {
        if (!found_told_otherwise(whole, &whole->tokens, &found->list[i], found->reading)) {
            found->list[kept++] = found->list[i];
        }
    }
    found->count = kept;
}

/* "No tank left", "the cylinder is empty": spoken of, but nothing to breathe from. */
static bool
tells_backup(const struct tokens *tokens)
{
    size_t i, j;

    for (i = 0; i < tokens->count; i++) {
        bool is_gone = false;

        if (!token_among(tokens, i,
                         " tank tanks cylinder cylinders backup bottle tanque tanques "
                         "cilindro cilindros reserva respaldo ")) {
            continue;
        }
        for (j = tokens_back(i, 4); j < i + 4; j++) {
            is_gone = is_gone || yes_no_denies_at(tokens, j) ||
                      token_among(tokens, j,
                                  " empty dead gone out vacio vacia acabo too also tambien "
                                  "tampoco ");
        }
        if (!is_gone) {
            return true;
        }
    }
    return false;
}

/* "Yes have the tank", after a battery that is empty: the two make no "tank empty". */
static bool
is_answered_by_backup(const struct asked *whole, const struct sign *sign)
{
    return strcmp(sign->id, no_source) == 0 && tells_backup(&whole->tokens) &&
           (yes_no_begins_with_yes(&whole->tokens) ||
            tokens_have(&whole->tokens,
                        "have|got|on|using|switched|opened|tengo|tenemos|hay|puse|con|uso|usando"));
}

/* Joining can only add: what stood wholly in an earlier text was answered then. */
static void
find_joined(const struct asked *whole, struct found *found)
{
    char *joined = recent_texts(whole, " ");
    size_t before = strlen(joined), count, i, start, end;
    struct sign_match matches[SIGNS_MAX];
    struct tokens tokens;
    int reading = 0;

    if (before == 0 || display_is_word(whole, whole->text) ||
        is_over_told(whole) /* "it beeps", "it stopped beeping" */ || is_over_of_supply(whole) ||
        is_over_of_anything(whole) || explained_jests(&whole->tokens) ||
        introduces_is_age(whole) /* "he is 81 and uses oxygen", "no" */) {
        return;
    }
    memory_append(&joined, "%s", whole->text);
    tokens = tokens_read(whole->arena, joined);
    (void)oximeter_read(joined, &reading, &start, &end);
    count =
        kb_find_signs(whole->context->kb, whole->context->workspace, joined, matches, SIGNS_MAX);
    for (i = 0; i < count; i++) {
        const struct sign *sign = matches[i].sign;
        bool is_new = matches[i].end > before && !found_has(found, sign->id) &&
                      (matches[i].start >= before || !was_shown(whole, &matches[i]));

        if (found_told_otherwise(whole, &tokens, &matches[i], reading) ||
            is_answered_by_backup(whole, sign)) {
            continue;
        }
        found->symptom = found->symptom || found_is_symptom(sign);
        found->unit_trouble = found->unit_trouble || sign->level == SIGN_EQUIPMENT;
        found->hot_battery = found->hot_battery || strcmp(sign->id, battery_hot) == 0;
        if (is_new && found->count < SIGNS_MAX) {
            found->list[found->count++] = matches[i];
            found->new_symptom = found->new_symptom || found_is_symptom(sign);
            found->new_trouble = found->new_trouble || sign->level == SIGN_EQUIPMENT;
            found->no_flow = found->no_flow || found_is_no_flow(sign);
        }
    }
    if (found->reading == 0 && reading > 0) {
        if (end > before) {
            found->reading = reading;
        } else {
            found->earlier_reading = true;
        }
    }
}

/* So a reason begins that names a sign. */
static const char of_sign[] = "sign:";

const struct sign *
found_next_reason(const struct asked *whole, const char **reasons)
{
    const char *reason = *reasons;
    size_t length = strcspn(reason, ","), skip = sizeof of_sign - 1;

    *reasons = reason[length] == ',' ? reason + length + 1 : NULL;
    if (strncmp(reason, of_sign, skip) != 0) {
        return NULL;
    }
    /* in Spanish, else in English: any language's will do */
    return kb_sign(whole->context->kb, memory_copy_n(whole->arena, reason + skip, length - skip),
                   LANGUAGE_ES);
}

bool
found_alert_tells(const struct open_alert *alert, const char *id)
{
    const char *reason = alert->reasons;
    size_t skip = sizeof of_sign - 1, length = strlen(id);

    while (reason != NULL) {
        if (strncmp(reason, of_sign, skip) == 0 && strncmp(reason + skip, id, length) == 0 &&
            (reason[skip + length] == ',' || reason[skip + length] == '\0')) {
            return true;
        }
        reason = strchr(reason, ',');
        reason += reason != NULL;
    }
    return false;
}

bool
found_alerted_of(const struct context *context, const char *const *ids, size_t count)
{
    size_t i, j;

    for (i = 0; i < context->alert_count; i++) {
        for (j = 0; j < count; j++) {
            if (found_alert_tells(&context->alerts[i], ids[j])) {
                return true;
            }
        }
    }
    return false;
}

bool
found_alerted_only(const struct asked *whole, const char *const *ids, size_t count)
{
    size_t i;

    for (i = 0; i < whole->context->alert_count; i++) {
        const char *reasons = whole->context->alerts[i].reasons;

        while (reasons != NULL) {
            const struct sign *sign = found_next_reason(whole, &reasons);

            if (sign != NULL && !is_one_of(sign->id, ids, count)) {
                return false;
            }
        }
    }
    return true;
}

bool
found_alerted_because(const struct context *context, const char *reason)
{
    size_t i;

    for (i = 0; i < context->alert_count; i++) {
        if (strstr(context->alerts[i].reasons, reason) != NULL) {
            return true;
        }
    }
    return false;
}

/* What an alert tells that no person has closed yet, as long as the conversation goes on. */
static void
find_in_alerts(const struct asked *whole, struct found *found)
{
    const struct context *context = whole->context;
    size_t i;

    for (i = 0; i < context->alert_count && context->role != SENDER_STAFF; i++) {
        const struct open_alert *alert = &context->alerts[i];
        bool is_old = context->now_utc_s - alert->opened_utc_s > context->house->conversation_s;
        const char *reasons = is_old ? NULL : alert->reasons;

        while (reasons != NULL) {
            const struct sign *sign = found_next_reason(whole, &reasons);

            if (sign != NULL) {
                found->symptom = found->symptom || found_is_symptom(sign);
                found->earlier_reading = found->earlier_reading || strcmp(sign->id, "reading") == 0;
                found->hot_battery = found->hot_battery || strcmp(sign->id, battery_hot) == 0;
            }
        }
    }
}

bool
found_on(const struct asked *whole, const char *text, const char *id)
{
    struct found alone = {0};

    alone.count =
        kb_find_signs(whole->context->kb, whole->context->workspace, text, alone.list, SIGNS_MAX);
    return found_has(&alone, id);
}

bool
found_alone(const struct asked *whole, const char *id)
{
    return found_on(whole, whole->text, id);
}

bool
found_tells_charge(const struct told *told)
{
    size_t i;

    for (i = 0; i < told->charge_count; i++) {
        if (told->charges[i].high > 0) {
            return true;
        }
    }
    for (i = 0; i < told->light_count; i++) {
        if (told->lights[i] > 0) {
            return true;
        }
    }
    return false;
}

void
found_read(const struct asked *whole, struct found *found)
{
    bool asks_of_renter = staff_asks_of_renter(whole);
    enum trouble trouble = asks_of_renter ? TROUBLE_NONE : equipment_trouble_told(whole);
    int still_low = is_over_still_low(whole);
    size_t i, start, end;

    *found = (struct found){0};
    found->count = kb_find_signs(whole->context->kb, whole->context->workspace, whole->text,
                                 found->list, SIGNS_MAX);
    found_leave_out_things(whole, found);
    if (!oximeter_read(whole->text, &found->reading, &start, &end)) {
        found->reading = bare_percent_as_reading(whole);
        found->reading = found->reading > 0 ? found->reading : introduces_as_reading(whole);
        found->reading = found->reading > 0 ? found->reading : measured_again(whole);
    }
    found->reading = still_low > 0 ? still_low : found->reading;
    found->reading = introduces_told(whole) || is_over_reads_well(whole) ? 0 : found->reading;
    leave_out_told_otherwise(whole, found);
    found_add_told(whole, found);
    found->no_flow = trouble == TROUBLE_STOPPED || flowing_may_be_none(whole);
    found->new_trouble = trouble == TROUBLE_STOPPED || trouble == TROUBLE_DANGER ||
                         (!asks_of_renter && ran_out_told(whole) != RAN_OUT_NOTHING);
    for (i = 0; i < found->count; i++) {
        found->new_symptom = found->new_symptom || found_is_symptom(found->list[i].sign);
        found->no_flow = found->no_flow || found_is_no_flow(found->list[i].sign);
        found->new_trouble = found->new_trouble || found->list[i].sign->level == SIGN_EQUIPMENT;
    }
    found->symptom = found->new_symptom;
    found->hot_battery = found_has(found, battery_hot);
    found->cylinder_hisses = !asks_of_renter && hissing_is_of_cylinder(whole, whole->text);
    if (!asks_of_renter) {
        find_joined(whole, found);
    }
    found_leave_out_explained(whole, found);
    find_in_alerts(whole, found);
    found->unit_trouble = found->unit_trouble || found->new_trouble || found->no_flow;
}

bool
found_no_flow_sign(const struct found *found)
{
    size_t i;

    for (i = 0; i < found->count; i++) {
        if (found_is_no_flow(found->list[i].sign)) {
            return true;
        }
    }
    return false;
}

bool
found_has_level(const struct found *found, enum sign_level level)
{
    size_t i;

    for (i = 0; i < found->count; i++) {
        if (found->list[i].sign->level == level) {
            return true;
        }
    }
    return false;
}

/* What charge is told of; "the unit went dead" tells of a unit that stopped, and of nothing else
 * that there may be. */
static const char supplies[] =
    "battery|batteries|batt|batts|pack|packs|spare|spares|light|lights|bar|bars|percent|charge|"
    "charged|power|electricity|outage|%|bateria|baterias|pila|pilas|luz|luces|raya|rayas|carga|"
    "corriente|electricidad|apagon|por ciento";

/* Charges are told and every one of them is empty. */
static bool
tells_only_empty(const struct asked *whole, const char *text)
{
    const struct tokens tokens = tokens_read(whole->arena, text);
    struct told told;

    if (!tokens_have(&tokens, supplies)) {
        return false;
    }
    told_read(whole->arena, whole->context->lexicon, text, &told);
    return told_has_charge(&told) && !found_tells_charge(&told);
}

bool
found_no_source(const struct asked *whole, const struct found *found)
{
    if (!staff_asks_of_renter(whole) && ran_out_of_everything(whole)) {
        return true;
    }
    if (found->none_left || (found->no_flow && last_cylinder_ends(whole))) {
        return true;
    }
    if (!found->no_flow || tells_backup(&whole->tokens)) {
        return false;
    }
    return tells_only_empty(whole, whole->text) ||
           (found->new_trouble && tells_only_empty(whole, recent_texts(whole, " ")));
}

bool
found_unit_and_symptom(const struct found *found)
{
    return (found->new_trouble && found->symptom) || (found->unit_trouble && found->new_symptom);
}

void
found_leave_out(struct found *found, const char *id)
{
    size_t i, kept = 0;

    for (i = 0; i < found->count; i++) {
        if (strcmp(found->list[i].sign->id, id) != 0) {
            found->list[kept++] = found->list[i];
        }
    }
    found->count = kept;
}

void
found_add(struct found *found, const struct sign *sign)
{
    if (!found_has(found, sign->id) && found->count < SIGNS_MAX) {
        found->list[found->count++] =
            (struct sign_match){.sign = sign, .phrase = sign->title, .by_likeness = true};
    }
}

int
found_repeats(const struct asked *whole, const struct found *found)
{
    const struct context *context = whole->context;
    int counts[SIGNS_MAX] = {0}, least = 0;
    size_t i, j;

    if (found->count == 0 || found->reading > 0 ||
        (context->rental_count > 1 && asked_named_rental(whole) != NULL)) {
        return 0;
    }
    for (i = 0; i < context->recent_count; i++) {
        struct found earlier = {0};

        if (whole->message->sent_utc_s - context->recent[i].sent_utc_s <= JOIN_RECENT_S) {
            earlier.count = kb_find_signs(context->kb, context->workspace, context->recent[i].text,
                                          earlier.list, SIGNS_MAX);
        }
        for (j = 0; j < found->count; j++) {
            counts[j] += found_has(&earlier, found->list[j].sign->id);
        }
    }
    for (j = 0; j < found->count; j++) {
        least = j == 0 || counts[j] < least ? counts[j] : least;
    }
    return least;
}
