/*
 * Texts that come while an emergency is open and show no sign of their own. What counts then is
 * that somebody has called the emergency number, and after that only power and backup; all else
 * waits for the person who has the alert, who hears of each text.
 */
#include <string.h>

#include "cut.h"
#include "say.h"
#include "steps.h"
#include "yes_no.h"

static const char *const aid_topics[] = {
    "hours-left",  "battery-life", "backup",       "cylinder-left", "swap-battery",
    "charge-home", "charge-car",   "charge-level", "power-outage",  "power-source",
};

bool
open_emergency_is(const struct context *context)
{
    size_t i;

    for (i = 0; i < context->alert_count && context->role != SENDER_STAFF; i++) {
        if (context->alerts[i].level == ALERT_EMERGENCY) {
            return true;
        }
    }
    return false;
}

static bool
is_of_aid(const struct asked *question)
{
    size_t i;

    for (i = 0; i < sizeof aid_topics / sizeof aid_topics[0]; i++) {
        if (asked_is_surely_about(question, aid_topics[i])) {
            return true;
        }
    }
    return false;
}

/* False, verdict untouched, if neither. */
static bool
answer_aid(const struct asked *question, struct verdict *verdict)
{
    return cylinder_left_decide(question, verdict) || power_decide(question, verdict) ||
           (is_of_aid(question) && topics_decide(question, verdict));
}

bool
open_emergency_aid(const struct asked *question, struct verdict *verdict)
{
    const struct verdict before = *verdict;
    size_t i;

    if (!(power_asks_how_long(question) || is_of_aid(question)) || !answer_aid(question, verdict)) {
        return false;
    }
    for (i = before.answer_count; i < verdict->answer_count; i++) {
        if (verdict->answers[i].kind == ANSWER_ASK) {
            *verdict = before; /* nothing is asked beside "call 911" */
            return false;
        }
    }
    return true;
}

static bool
is_courtesy(const struct pieces *pieces)
{
    size_t i;

    for (i = 0; i < pieces->count; i++) {
        if (!pieces->list[i].courtesy) {
            return false;
        }
    }
    return true;
}

/* They have called, and help is coming or there. */
static const char help_comes[] =
    "already called|i called|we called|i did call|called 911|called them|on their way|on the way|"
    "they are here|theyre here|are coming|is coming|ambulance|paramedics|medics|ya llame|"
    "ya llamamos|ya vienen|ya llegaron|ya estan aqui|ambulancia";

/* Thanks, or YES to whether they called: nothing to say to that. "No, not yet" is neither. */
static bool
wants_nothing(const struct asked *whole, const struct pieces *pieces)
{
    static const struct yes_no_about calling = {.things = " ", .well = "", .ill = " "};

    if (tokens_have(&whole->tokens, "hello|hi|hey|hola|?")) {
        return false; /* somebody waits for a word */
    }
    return yes_no_begins_with_yes(&whole->tokens) ||
           ((is_courtesy(pieces) || tokens_have(&whole->tokens, help_comes)) &&
            yes_no_read(&whole->tokens, &calling) != SAID_NO);
}

bool
open_emergency_decide(const struct asked *whole, struct verdict *verdict)
{
    struct pieces pieces = cut_questions(whole->arena, whole->text, whole->language);
    struct answer *answer;
    size_t i;

    if (!open_emergency_is(whole->context) || verdict->answer_count > 0) {
        return false;
    }
    verdict_alert(verdict, ALERT_OFFICE, false, "wrote-again", "wrote again");
    answer = verdict_add(verdict, ANSWER_OFFICE, ROUTE_STAFF, "called-911");
    if (!wants_nothing(whole, &pieces)) {
        answer->text =
            say(whole->arena, whole->context->house, whole->language, SAY_CALLED_911, NULL);
    }
    for (i = 0; i < pieces.count; i++) {
        struct asked piece = asked_question(whole, pieces.list[i].text, whole->message->sent_utc_s);

        if (!open_question_decide(&piece, verdict) && !pieces.list[i].courtesy) {
            (void)answer_aid(&piece, verdict);
        }
    }
    return true;
}
