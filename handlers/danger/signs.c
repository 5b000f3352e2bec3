/*
 * Warning signs come before everything else. What the text shows is found (found.h); what is
 * decided here is how grave it is together: an oximeter value with a symptom, a unit that gives no
 * oxygen with a symptom, and a sign that two texts make only when read as one.
 */
#include <string.h>

#include "beside_emergency.h"
#include "emergency.h"
#include "fill.h"
#include "found.h"
#include "memory.h"
#include "say.h"
#include "steps.h"

static const char low_reading[] = "low-reading";
static const char reading_sign[] = "reading";
static const char death_told[] = "death-told";
static const char last_battery[] = "last-battery";

static const char *
filled(const struct asked *whole, const struct sign *sign, enum phrase otherwise)
{
    const struct filling with = {.house = whole->context->house, .language = whole->language};

    return sign != NULL
               ? fill(whole->arena, sign->reply, &with, NULL)
               : say(whole->arena, whole->context->house, whole->language, otherwise, NULL);
}

/* The sign's own words, or what is said to who has called already; of a unit that stopped also the
 * backup as the record has it. */
static const char *
words_of(const struct asked *whole, const struct sign *sign)
{
    const char *to_backup = outage_words(whole, sign);
    const char *words = to_backup != NULL ? to_backup : filled(whole, sign, SAY_EMERGENCY_FIRST);
    const char *of_help = strcmp(sign->id, "asks-emergency") == 0 ? help_told_words(whole) : NULL;

    if (of_help != NULL) {
        return of_help;
    }
    if (to_backup != NULL || !found_is_no_flow(sign) || whole->rental == NULL ||
        !whole->rental->backup.known) {
        return words; /* "if you have it" is in the sign's words */
    }
    return memory_format(
        whole->arena, "%s %s", words,
        say_use_backup(whole->arena, whole->context->house, whole->language, whole->rental));
}

/*
 * Spanish if all signs are, or some are and the text itself does not tell; else the text's, for
 * what is a sign in both languages may be found in the other one.
 */
static enum language
language_of(const struct asked *whole, const struct found *found)
{
    enum language told;
    size_t spanish = 0, i;

    for (i = 0; i < found->count; i++) {
        spanish += found->list[i].sign->language == LANGUAGE_ES;
    }
    if (spanish > 0 &&
        (spanish == found->count || !words_tell_language(whole->arena, whole->text, &told))) {
        return LANGUAGE_ES;
    }
    return whole->language;
}

/* The sign in the language that is spoken; as it fired if it has no partner there. */
static const struct sign *
sign_to_say(const struct asked *whole, const struct sign *fired, enum language language)
{
    const struct sign *sign = kb_sign(whole->context->kb, fired->id, language);

    return sign != NULL ? sign : fired;
}

static void
add_sign(const struct asked *whole, struct verdict *verdict, const struct sign_match *match)
{
    static const enum route routes[] = {[SIGN_CLINICAL] = ROUTE_CLINICAL,
                                        [SIGN_EQUIPMENT] = ROUTE_EQUIPMENT,
                                        [SIGN_EMERGENCY] = ROUTE_EMERGENCY};
    const struct sign *sign = match->sign;
    const struct sign *for_staff = sign_to_say(whole, sign, LANGUAGE_EN);
    struct answer *answer = verdict_add(verdict, ANSWER_SIGN, routes[sign->level], sign->id);

    answer->text = words_of(whole, sign_to_say(whole, sign, whole->language));
    answer->why = (struct why){.score = 1000, .nearest = match->phrase};
    verdict_alert(verdict, sign->level == SIGN_EMERGENCY ? ALERT_EMERGENCY : ALERT_URGENT, true,
                  memory_format(whole->arena, "sign:%s", sign->id), for_staff->in_brief);
}

static void
add_reading(const struct asked *whole, struct verdict *verdict, const struct found *found,
            bool emergency)
{
    bool names_symptom = found->new_symptom && verdict->alert.level < ALERT_EMERGENCY;
    const char *id = emergency ? low_reading : reading_sign;
    struct answer *answer =
        verdict_add(verdict, ANSWER_SIGN, emergency ? ROUTE_EMERGENCY : ROUTE_CLINICAL, id);
    const struct sign *sign = kb_sign(whole->context->kb, id, whole->language);

    answer->text = filled(whole, sign, emergency ? SAY_EMERGENCY_FIRST : SAY_CLINICAL_READING);
    answer->why.score = 1000;
    answer->why.nearest = memory_format(whole->arena, "%d", found->reading);
    verdict_alert(verdict, emergency ? ALERT_EMERGENCY : ALERT_URGENT, true,
                  memory_format(whole->arena, "sign:%s", id),
                  memory_format(whole->arena, "reading %d%s", found->reading,
                                names_symptom ? WITH_SYMPTOM : ""));
}

/* What is no emergency by itself but is one with a symptom: a value, or a unit in trouble. */
static void
add_combined(const struct asked *whole, struct verdict *verdict, const char *id, const char *brief)
{
    struct answer *answer = verdict_add(verdict, ANSWER_SIGN, ROUTE_EMERGENCY, id);

    answer->text =
        filled(whole, kb_sign(whole->context->kb, id, whole->language), SAY_EMERGENCY_FIRST);
    answer->why.score = 1000;
    verdict_alert(verdict, ALERT_EMERGENCY, true, memory_format(whole->arena, "sign:%s", id),
                  brief);
}

/* The next of this level, emergencies by their order; found->count if there is none. */
static size_t
next_of_level(const struct found *found, bool emergency, const bool *added)
{
    size_t next = found->count, i;

    for (i = 0; i < found->count; i++) {
        const struct sign *sign = found->list[i].sign;

        if (!added[i] && (sign->level == SIGN_EMERGENCY) == emergency &&
            (next == found->count ||
             emergency_order(sign->id) < emergency_order(found->list[next].sign->id))) {
            next = i;
        }
    }
    return next;
}

static void
add_level(const struct asked *whole, struct verdict *verdict, const struct found *found,
          bool emergency)
{
    bool added[SIGNS_MAX] = {false};
    size_t next;

    while ((next = next_of_level(found, emergency, added)) < found->count) {
        added[next] = true;
        add_sign(whole, verdict, &found->list[next]);
    }
}

/* It drives them out, or needs hands at once: nothing goes before it. */
static bool
has_what_cannot_wait(const struct found *found)
{
    size_t i;

    for (i = 0; i < found->count; i++) {
        if (emergency_order(found->list[i].sign->id) < emergency_order("stroke-signs")) {
            return true;
        }
    }
    return false;
}

/* Nobody is to sit up beside a battery that may burn: these are the first words, whatever
 * symptom comes with it. */
static void
add_battery_and_symptom(const struct asked *whole, struct verdict *verdict)
{
    struct answer *answer =
        verdict_add(verdict, ANSWER_SIGN, ROUTE_EMERGENCY, "battery-and-symptom");

    answer->text =
        say(whole->arena, whole->context->house, whole->language, SAY_BATTERY_AND_SYMPTOM, NULL);
    answer->why.score = 1000;
    verdict_alert(verdict, ALERT_EMERGENCY, true, "sign:battery-and-symptom",
                  "hot battery + symptom");
}

static void
add_all(const struct asked *whole, struct verdict *verdict, const struct found *found)
{
    bool grave_reading = found->reading > 0 &&
                         (found->symptom || found->reading <= emergency_reading(whole->context));

    /* Emergencies first: the first answer's text is the first part that goes out. */
    if (found->hot_battery && found->symptom && found_unit_and_symptom(found) &&
        !has_what_cannot_wait(found)) {
        add_battery_and_symptom(whole, verdict);
    }
    add_level(whole, verdict, found, true);
    if (found->reading > 0) {
        add_reading(whole, verdict, found, grave_reading);
    }
    if (found->earlier_reading && found->new_symptom && verdict->alert.level < ALERT_EMERGENCY) {
        add_combined(whole, verdict, "reading-and-symptom", "reading + symptom");
    }
    if (found_no_source(whole, found) && verdict->alert.level < ALERT_EMERGENCY) {
        add_combined(whole, verdict, "no-oxygen-source", "no oxygen source");
    }
    if (found_unit_and_symptom(found) && verdict->alert.level < ALERT_EMERGENCY) {
        add_combined(whole, verdict, "unit-and-symptom", "unit + symptom");
    }
    add_level(whole, verdict, found, false);
    if (found->cylinder_hisses) {
        hissing_answer(whole, verdict);
    }
}

/* What is only like the words of a wish to die is none where a death is all that is told. */
static void
find_death_told_plainly(const struct asked *whole, struct found *found)
{
    const struct sign *death = kb_sign(whole->context->kb, death_told, whole->language);

    if (death == NULL || !death_is_all_told(whole) ||
        !(found->count == 0 || found_has(found, "self-harm"))) {
        return;
    }
    found_leave_out(found, "self-harm");
    found_add(found, death);
}

static const char unresponsive[] = "unresponsive";
static const char not_sure_of_death[] =
    "think he|think hes|think she|think shes|think my|think dad|think mom|think grandma|"
    "think grandpa|seems dead|looks dead|may be dead|might be dead|maybe dead|creo que se|"
    "creo que ya|creo que mi|creo que esta|parece que se|parece que ya|parece muerto|"
    "parece muerta|a lo mejor se murio";

/*
 * Someone has died: nothing that hurts to read is said or asked, and a person writes. An emergency
 * told with it goes first, for "he stopped breathing, he is dead" may still be saved, and so may
 * who is only thought to be dead. `found` is left without that sign.
 */
static bool
is_death(const struct asked *whole, struct found *found)
{
    bool is_told = found_has(found, death_told) && !death_is_only_near(whole);
    const struct sign *may_live = kb_sign(whole->context->kb, unresponsive, whole->language);

    found_leave_out(found, death_told);
    if (is_told && may_live != NULL && tokens_have(&whole->tokens, not_sure_of_death)) {
        found_add(found, may_live);
    }
    return is_told && !found_has_level(found, SIGN_EMERGENCY) &&
           (found->reading == 0 || found->reading > emergency_reading(whole->context));
}

/*
 * After a death nobody is told to go on with the oxygen: what was theirs is no longer needed, and
 * what only the texts read as one seem to tell ("she died", "we need no machine") is not so; unless
 * it is the writer's own that is empty.
 */
static void
leave_out_after_death(const struct asked *whole, struct found *found)
{
    size_t i = 0;

    if (!death_is_told(whole) || whole->emptied.own) {
        return;
    }
    found_leave_out(found, "need-at-all");
    while (i < found->count) {
        const struct sign *sign = found->list[i].sign;

        if (sign->level == SIGN_EQUIPMENT && !found_alone(whole, sign->id)) {
            found_leave_out(found, sign->id);
        } else {
            i++;
        }
    }
}

/* "Can i hit his back" has no pain there. What burns, bleeds, chokes or poisons is never only asked
 * about, nor is what they name: "can i pull the burning battery". */
static bool
may_be_only_asked(const struct sign_match *match)
{
    static const char *const never[] = {
        "battery-smoking", "face-burn-fire",    "bad-gas",  "battery-hot", "unresponsive",
        "choking",         "pregnant-bleeding", "bleeding", "poison",
    };
    size_t i;

    for (i = 0; i < sizeof never / sizeof never[0]; i++) {
        if (strcmp(never[i], match->sign->id) == 0) {
            return false;
        }
    }
    return match->by_likeness && match->sign->level == SIGN_EMERGENCY;
}

/*
 * While an emergency is open: "911 hung up" asks for what they have been told already, whoever asks
 * how to do chest compressions has no pain there, the wish to keep somebody from calling is no
 * illness, and a few words of a call or a place are only like a sign. See open_emergency.c.
 */
static void
leave_out_of_help(struct asked *whole, struct found *found)
{
    enum { SHORT = 8 };
    enum beside beside = beside_emergency_read(whole);
    bool is_short_of_help = (beside_emergency_of_call(beside) || beside == BESIDE_PLACE) &&
                            beside != BESIDE_HOSPICE && whole->tokens.count <= SHORT &&
                            ran_out_told(whole) == RAN_OUT_NOTHING;
    bool only_asks = beside == BESIDE_ASKS_WHAT_TO_DO && beside_emergency_only_asks(whole);
    const char *rest = first_aid_left_out(whole);
    size_t i = 0;

    if (beside_emergency_of_call(beside) || open_emergency_is_helped(whole)) {
        found_leave_out(found, "asks-emergency");
    }
    while (i < found->count) {
        const struct sign_match *match = &found->list[i];
        bool is_only_asked = only_asks && may_be_only_asked(match);
        bool is_of_aid =
            beside == BESIDE_ASKS_WHAT_TO_DO && !found_on(whole, rest, match->sign->id);
        bool is_of_call = match->by_likeness &&
                          (is_short_of_help ||
                           ((beside_emergency_calls_off(beside) || beside == BESIDE_HOSPICE) &&
                            match->sign->level == SIGN_CLINICAL));
        bool is_fear_of_call = beside == BESIDE_REFUSES && strcmp(match->sign->id, "anxious") == 0;

        if (is_only_asked || is_of_aid || is_of_call || is_fear_of_call) {
            whole->sign_left_out = whole->sign_left_out || is_only_asked;
            found_leave_out(found, match->sign->id);
        } else {
            i++;
        }
    }
}

/* Leaves a sign out that no line of it tells. */
static void
leave_out_likeness(struct found *found, const char *id)
{
    size_t i;

    for (i = 0; i < found->count; i++) {
        if (found->list[i].by_likeness && strcmp(found->list[i].sign->id, id) == 0) {
            found_leave_out(found, id);
            return;
        }
    }
}

/* What an emergency that is open makes of it. */
static void
find_in_open_emergency(struct asked *whole, struct found *found)
{
    const struct sign *self_harm = kb_sign(whole->context->kb, "self-harm", whole->language);

    if (open_emergency_is(whole->context)) {
        leave_out_of_help(whole, found);
    }
    if (self_harm != NULL && self_harm_goes_on(whole)) {
        leave_out_likeness(found, "poison"); /* the pills are held, not taken */
        if (!found_has_level(found, SIGN_EMERGENCY)) {
            found_leave_out(found, "medicines");
            found_add(found, self_harm);
        }
    }
    if (found_has(found, "self-harm") && self_harm_is_own_wish(whole)) {
        found_leave_out(found, "in-danger");
    }
}

/* Its own words say what may not be done, or they ask just that. */
static bool
has_words_for_emergency(const char *id)
{
    static const char *const ids[] = {"change-setting", "rationing", "sharing",    "child-or-pet",
                                      "need-at-all",    "alcohol",   "more-oxygen"};
    size_t i;

    for (i = 0; i < sizeof ids / sizeof ids[0]; i++) {
        if (strcmp(ids[i], id) == 0) {
            return true;
        }
    }
    return false;
}

/* What is new in an open emergency is part of it, however mild it would be alone: who has the alert
 * is called again, and the renter is told to whom to tell it. */
static void
raise_to_open_emergency(const struct asked *whole, struct verdict *verdict)
{
    size_t i;

    if (verdict->alert.level != ALERT_URGENT) {
        return;
    }
    verdict->alert.level = ALERT_EMERGENCY;
    for (i = 0; i < verdict->answer_count; i++) {
        struct answer *answer = &verdict->answers[i];

        if (answer->route == ROUTE_CLINICAL && self_harm_stands(whole)) {
            answer->text = self_harm_words(whole);
        } else if (answer->route == ROUTE_CLINICAL && !has_words_for_emergency(answer->id)) {
            answer->text =
                say(whole->arena, whole->context->house, whole->language, SAY_TELL_911_THIS, NULL);
        }
    }
}

/* Beside what else is new, staff hear that help is refused or may be sent back, and the renter that
 * it is to come all the same. */
static void
tell_of_calling_off(const struct asked *whole, struct verdict *verdict)
{
    enum beside beside = beside_emergency_read(whole);
    const struct beside_words *words = beside_emergency_words(beside);
    size_t i;

    if (!beside_emergency_calls_off(beside) || verdict->alert.level < ALERT_EMERGENCY) {
        return;
    }
    if (verdict->route == ROUTE_EMERGENCY) {
        verdict_alert(verdict, ALERT_EMERGENCY, true, words->reason, words->brief);
    } else {
        verdict->alert.reason = words->reason;
        verdict->alert.brief =
            memory_format(whole->arena, "%s + %s", words->brief, verdict->alert.brief);
    }
    for (i = 0; i < verdict->answer_count; i++) {
        struct answer *answer = &verdict->answers[i];
        const char *own = has_words_for_emergency(answer->id) ? answer->text : "";

        if (answer->route == ROUTE_CLINICAL && !self_harm_stands(whole)) {
            answer->text = memory_format(
                whole->arena, "%s%s%s",
                say(whole->arena, whole->context->house, whole->language, words->phrase, NULL),
                own[0] == '\0' ? "" : " ", own);
            return;
        }
    }
}

bool
signs_decide(struct asked *whole, struct verdict *verdict)
{
    struct found found;

    if (staff_relays(whole)) {
        return false;
    }
    found_read(whole, &found);
    leave_out_after_death(whole, &found);
    find_in_open_emergency(whole, &found);
    threat_find(whole, &found);
    find_death_told_plainly(whole, &found);
    whole->language = verdict->language = language_of(whole, &found);
    if (is_death(whole, &found)) {
        death_answer(whole, verdict, kb_sign(whole->context->kb, death_told, whole->language));
        if (open_emergency_is(whole->context) && verdict->alert.level == ALERT_URGENT) {
            verdict->alert.level = ALERT_EMERGENCY; /* "he is gone" may still be saved */
        }
        return true;
    }
    add_all(whole, verdict, &found);
    if (found.reading > 0 && asked_open_question(whole) == QUESTION_READING_OR_AGE) {
        open_question_close(verdict); /* that it is a reading is told */
    }
    if (open_emergency_is(whole->context)) {
        raise_to_open_emergency(whole, verdict);
        tell_of_calling_off(whole, verdict);
    }
    if (verdict->alert.level == ALERT_EMERGENCY && cannot_call_told(whole)) {
        verdict->alert.brief =
            memory_format(whole->arena, "%s + %s", cannot_call_brief(whole), verdict->alert.brief);
    }
    verdict->repeats = found_repeats(whole, &found);
    if (found_has(&found, last_battery)) {
        plug_settled(verdict); /* that there is none is told */
    }
    if (verdict->route == ROUTE_EMERGENCY || verdict->answer_count == 0) {
        return verdict->answer_count > 0;
    }
    if (!found_no_flow_sign(&found)) {
        return false;
    }
    if (flowing_is_told_again(whole, verdict)) {
        flowing_still_none(whole, verdict); /* told once more while we wait for YES or NO */
        return true;
    }
    flowing_ask(whole, verdict);
    return false;
}
