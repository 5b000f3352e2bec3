/*
 * Texts that come while an emergency is open and show no sign of their own. What counts then is
 * that somebody has called the emergency number, and after that only power and backup; all else
 * waits for the person who has the alert, who hears of each text. Once the renter has told that it
 * is over, or two hours after it was last told, a text is answered again that the topics leave no
 * doubt about, though staff have not closed it; "it started again" and "nobody came" leave some.
 */
#include <string.h>

#include "cut.h"
#include "emergency.h"
#include "memory.h"
#include "say.h"
#include "steps.h"
#include "yes_no.h"

static const char *const aid_topics[] = {
    "hours-left",  "battery-life", "backup",       "cylinder-left", "swap-battery",
    "charge-home", "charge-car",   "charge-level", "power-outage",  "power-source",
};

enum { FRESH_S = 2 * 3600 };

/* Of what else is told after it, none of these is. */
static const char *const grave_reasons[] = {"sign:", "trouble:", "flowing:", "help", "asks-"};

static bool
begins(const char *reason, const char *with)
{
    return strncmp(reason, with, strlen(with)) == 0;
}

static bool
is_told_over(const struct open_alert *alert)
{
    const char *reason = alert->reasons;
    bool is_over = false;
    size_t i;

    while (reason != NULL && *reason != '\0') {
        is_over = is_over || begins(reason, IS_OVER_REASON);
        for (i = 0; i < sizeof grave_reasons / sizeof grave_reasons[0]; i++) {
            is_over = is_over && !begins(reason, grave_reasons[i]);
        }
        reason += strcspn(reason, ",");
        reason += *reason == ',' ? 1 : 0;
    }
    return is_over;
}

/* True if an emergency is open; `pressing` asks for one that is neither told to be over nor old. */
static bool
stands(const struct context *context, bool pressing)
{
    size_t i;

    for (i = 0; i < context->alert_count && context->role != SENDER_STAFF; i++) {
        const struct open_alert *alert = &context->alerts[i];

        if (alert->level == ALERT_EMERGENCY &&
            (!pressing ||
             (!is_told_over(alert) && context->now_utc_s - alert->grave_utc_s <= FRESH_S))) {
            return true;
        }
    }
    return false;
}

bool
open_emergency_stands(const struct context *context)
{
    return stands(context, false);
}

bool
open_emergency_is(const struct context *context)
{
    return stands(context, true);
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

/* Somebody waits for a word of ours. */
static bool
waits_for_word(const struct tokens *tokens)
{
    return tokens_have(tokens, "hello|hi|hey|hola|?|wrong|busy|hold|nobody|no one|nadie|ocupado|"
                               "equivocado");
}

/* What is said of calling, beside what is no answer to it. */
static enum yes_no
said_of_calling(const struct asked *whole)
{
    static const struct yes_no_about calling = {.things = " ", .well = "", .ill = " "};

    return yes_no_read(&whole->tokens, &calling);
}

bool
open_emergency_is_helped(const struct asked *whole)
{
    return tokens_have(&whole->tokens, help_comes) && !help_is_late_told(whole) &&
           !waits_for_word(&whole->tokens) && said_of_calling(whole) != SAID_NO;
}

/* Thanks, or YES to whether they called: nothing to say to that. "No, not yet" is neither. */
static bool
wants_nothing(const struct asked *whole, const struct pieces *pieces)
{
    if (waits_for_word(&whole->tokens)) {
        return false;
    }
    return yes_no_begins_with_yes(&whole->tokens) || open_emergency_is_helped(whole) ||
           (is_courtesy(pieces) && said_of_calling(whole) != SAID_NO);
}

/* Every question of it is surely of a topic. */
static bool
is_ordinary(const struct asked *whole, const struct pieces *pieces)
{
    size_t i;

    for (i = 0; i < pieces->count; i++) {
        struct asked piece =
            asked_question(whole, pieces->list[i].text, whole->message->sent_utc_s);

        if (!pieces->list[i].courtesy &&
            (piece.search.count == 0 || piece.search.sureness != SURE)) {
            return false;
        }
    }
    return !is_courtesy(pieces);
}

/* Whether they have called, unless they cannot or ask for something that counts now. */
static const char *
words_for(const struct asked *whole, const struct verdict *verdict, const struct pieces *pieces)
{
    const char *words = cannot_call_words(whole), *steps = "";
    enum phrase staff = SAY_STAFF_ALERTED;

    words = words != NULL ? words : beside_emergency_words(whole);
    if (cannot_call_told(whole) && open_emergency_is(whole->context)) {
        staff = SAY_STAFF_CALL_FOR_YOU;
        steps = emergency_steps(whole, verdict);
    }
    if (words != NULL) {
        return memory_format(
            whole->arena, "%s %s%s%s", words, steps, steps[0] == '\0' ? "" : " ",
            say(whole->arena, whole->context->house, whole->language, staff, NULL));
    }
    return wants_nothing(whole, pieces)
               ? ""
               : say(whole->arena, whole->context->house, whole->language, SAY_CALLED_911, NULL);
}

bool
open_emergency_decide(const struct asked *whole, struct verdict *verdict)
{
    struct pieces pieces = cut_questions(whole->arena, whole->text, whole->language);
    struct answer *answer;
    size_t i;

    if (!open_emergency_stands(whole->context) || verdict->answer_count > 0) {
        return false;
    }
    if (is_over_decide(whole, verdict)) {
        return true;
    }
    if (cannot_call_told(whole) && open_emergency_is(whole->context)) {
        verdict_alert(verdict, ALERT_EMERGENCY, true, "help:cannot-call", cannot_call_brief(whole));
    } else if (nobody_gets_through_told(whole) && open_emergency_is(whole->context)) {
        verdict_alert(verdict, ALERT_EMERGENCY, true, "help:no-way", "no ambulance gets there");
    } else if (help_is_late_told(whole) && open_emergency_is(whole->context)) {
        verdict_alert(verdict, ALERT_EMERGENCY, true, "help:late", "help does not come");
    } else {
        verdict_alert(verdict, ALERT_OFFICE, false, "wrote-again", "wrote again");
    }
    if (!open_emergency_is(whole->context) && is_ordinary(whole, &pieces)) {
        return false;
    }
    answer = verdict_add(verdict, ANSWER_OFFICE, ROUTE_STAFF, "called-911");
    answer->text = words_for(whole, verdict, &pieces);
    for (i = 0; i < pieces.count; i++) {
        struct asked piece = asked_question(whole, pieces.list[i].text, whole->message->sent_utc_s);

        if (!open_question_decide(&piece, verdict) && !pieces.list[i].courtesy) {
            (void)answer_aid(&piece, verdict);
        }
    }
    return true;
}
