#include "emergency.h"

#include <string.h>

#include "found.h"
#include "memory.h"
#include "say.h"
#include "steps.h"

/*
 * Signs of someone who gets too little oxygen: only for these are sitting up, the wall plug and
 * the backup named. After a fire, or for someone who does not wake, they would be wrong.
 */
static const char *const short_of_oxygen[] = {
    "trouble-breathing", "blue-lips",           "low-reading",     "chest-pain", "no-oxygen-source",
    "unit-and-symptom",  "reading-and-symptom", "no-oxygen-still", "low-oxygen", "confusion",
};

static const char *const fires[] = {"face-burn-fire", "battery-smoking", "battery-hot",
                                    "battery-and-symptom"};
static const char *const no_wall[] = {"power-out-now", "last-battery", "unit-wet"};
static const char *const not_to_sit_up[] = {"unresponsive", "seizure", "choking", "poison",
                                            "bad-gas"};

/*
 * Whose first part goes out if a text shows several: first what drives people out of the room, then
 * what cannot wait for the others (common practice, for a clinician to set). One that is not listed
 * comes behind these.
 */
static const char *const gravest_first[] = {
    "battery-smoking", "face-burn-fire",    "bad-gas",           "unresponsive",
    "choking",         "seizure",           "pregnant-bleeding", "bleeding",
    "poison",          "in-danger",         "allergic-reaction", "stroke-signs",
    "chest-pain",      "trouble-breathing", "no-oxygen-source",  "blue-lips",
    "coughing-blood",  "low-oxygen",        "head-injury",       "scald",
    "self-harm",       "missing-person",    "stranded",          "confusion",
    "severe-pain",     "sudden-illness",
};

int
emergency_reading(const struct context *context)
{
    int highest = context->house->emergency_reading;
    size_t i;

    for (i = 0; i < context->rental_count; i++) {
        const struct rental *rental = &context->rentals[i];

        if (rental_is_active(rental) && rental->call_below_reading - 1 > highest) {
            highest = rental->call_below_reading - 1;
        }
    }
    return highest;
}

size_t
emergency_order(const char *id)
{
    const size_t count = sizeof gravest_first / sizeof gravest_first[0];
    size_t i = 0;

    while (i < count && strcmp(gravest_first[i], id) != 0) {
        i++;
    }
    return i;
}

static bool
any_sign_of(const struct verdict *verdict, const char *const *ids, size_t count)
{
    size_t i, j;

    for (i = 0; i < verdict->answer_count; i++) {
        for (j = 0; j < count; j++) {
            if (strcmp(verdict->answers[i].id, ids[j]) == 0) {
                return true;
            }
        }
    }
    return false;
}

#define ANY_SIGN_OF(verdict, ids) any_sign_of(verdict, ids, sizeof(ids) / sizeof((ids)[0]))

bool
emergency_is_fire(const struct verdict *verdict)
{
    return ANY_SIGN_OF(verdict, fires);
}

static void
append(const struct asked *whole, char **text, enum phrase phrase, const char *argument)
{
    memory_append(
        text, " %s",
        say(whole->arena, whole->context->house, whole->language, phrase, argument, NULL));
}

const char *
emergency_address(const struct asked *whole)
{
    const struct context *context = whole->context;
    const char *found = NULL;
    size_t i;

    if (whole->rental != NULL) {
        return whole->rental->emergency_address;
    }
    for (i = 0; i < context->rental_count; i++) {
        const struct rental *rental = &context->rentals[i];

        if (!rental_is_active(rental)) {
            continue;
        }
        if (rental->emergency_address == NULL ||
            (found != NULL && strcmp(found, rental->emergency_address) != 0)) {
            return NULL;
        }
        found = rental->emergency_address;
    }
    return found;
}

/* In this text or in what is open. */
#define ANY_OF(whole, verdict, ids)                                                                \
    (ANY_SIGN_OF(verdict, ids) ||                                                                  \
     found_alerted_of((whole)->context, ids, sizeof(ids) / sizeof((ids)[0])))

const char *
emergency_steps(const struct asked *whole, const struct verdict *verdict)
{
    const struct house *house = whole->context->house;
    char *text = memory_copy(whole->arena, "");

    if (ANY_OF(whole, verdict, short_of_oxygen) && !ANY_OF(whole, verdict, not_to_sit_up) &&
        !ANY_OF(whole, verdict, fires)) {
        memory_append(&text, "%s", say(whole->arena, house, whole->language, SAY_SIT_UP, NULL));
        if (!ran_out_of_backup(whole)) {
            memory_append(&text, " %s",
                          say_use_backup(whole->arena, house, whole->language, whole->rental));
        }
    }
    return text;
}

static void
append_steps(const struct asked *whole, const struct verdict *verdict, char **text)
{
    append(whole, text, SAY_SIT_UP, NULL);
    if (!ANY_SIGN_OF(verdict, no_wall) && !plug_is_missing(verdict)) {
        append(whole, text, SAY_PLUG_IN, NULL);
    }
    if (!ran_out_of_backup(whole)) {
        memory_append(
            text, " %s",
            say_use_backup(whole->arena, whole->context->house, whole->language, whole->rental));
    }
}

/* What the first part does not name: the other signs of the text, in brief. */
static void
append_other_signs(const struct asked *whole, const struct verdict *verdict, char **text)
{
    char *others = memory_copy(whole->arena, "");
    bool is_first = true;
    size_t i;

    for (i = 0; i < verdict->answer_count; i++) {
        const char *id = verdict->answers[i].id;
        const struct sign *sign = kb_sign(whole->context->kb, id, whole->language);

        if (verdict->answers[i].kind != ANSWER_SIGN ||
            verdict->answers[i].route != ROUTE_EMERGENCY) {
            continue;
        }
        if (!is_first && sign != NULL && strcmp(id, "asks-emergency") != 0) {
            memory_append(&others, "%s%s", others[0] == '\0' ? "" : ", ", sign->in_brief);
        }
        is_first = false;
    }
    if (others[0] != '\0') {
        append(whole, text, SAY_TELL_TOO, others);
    }
}

char *
emergency_second_part(const struct asked *whole, const struct verdict *verdict)
{
    char *text = say(whole->arena, whole->context->house, whole->language, SAY_AUTOMATIC, NULL);
    const char *where = emergency_address(whole), *calling = cannot_call_words(whole);
    const char *steps = calling == NULL ? "" : emergency_steps(whole, verdict);

    if (calling == NULL && calling_asks_whether(whole)) {
        append(whole, &text, SAY_IT_CANNOT_CALL, NULL);
    }
    if (calling != NULL) {
        memory_append(&text, " %s%s%s", calling, steps[0] == '\0' ? "" : " ", steps);
    }
    append_other_signs(whole, verdict, &text);
    if (where != NULL) {
        append(whole, &text, SAY_ADDRESS, where);
    }
    if (calling == NULL && ANY_SIGN_OF(verdict, short_of_oxygen) &&
        !ANY_SIGN_OF(verdict, not_to_sit_up) && !emergency_is_fire(verdict)) {
        append_steps(whole, verdict, &text);
    }
    append(whole, &text, cannot_call_told(whole) ? SAY_STAFF_CALL_FOR_YOU : SAY_DO_NOT_WAIT, NULL);
    return text;
}
