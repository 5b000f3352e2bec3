/*
 * Floods: a machine that answers each of our texts, somebody who sends hundreds, a gateway gone
 * wild. Past the limits nothing is sent but what somebody's safety may hang on, so a loop ends and
 * a flood costs nothing; what is decided, kept and told to staff urgently stays as it is.
 */
#include "say.h"
#include "steps.h"

enum { URGENT_PAUSE_S = 60 };

static bool
shows_sign(const struct verdict *verdict)
{
    size_t i;

    for (i = 0; i < verdict->answer_count; i++) {
        if (verdict->answers[i].kind == ANSWER_SIGN) {
            return true;
        }
    }
    return verdict->route == ROUTE_EMERGENCY;
}

/* Beside signs: an urgent matter that is told again and again is answered once a minute. */
static bool
must_be_answered(const struct asked *whole, const struct verdict *verdict)
{
    const struct context *context = whole->context;
    int64_t silent_s = context->now_utc_s - context->conversation.last_utc_s;

    return shows_sign(verdict) || verdict->consent == CONSENT_OUT ||
           (verdict->alert.level >= ALERT_URGENT && silent_s >= URGENT_PAUSE_S);
}

/* What staff do is always confirmed; a machine that answers on a staff phone does nothing. */
static bool
is_done_by_staff(const struct asked *whole, const struct verdict *verdict)
{
    return whole->context->role == SENDER_STAFF &&
           (verdict->alert_change.step != ALERT_STEP_NONE || verdict->confirms_turn ||
            verdict->phone_link.step != PHONE_LINK_NONE);
}

/* A question that is not sent is not open. */
static void
hold_replies(const struct asked *whole, struct verdict *verdict)
{
    const struct conversation *before = &whole->context->conversation;
    struct conversation *after = &verdict->conversation;

    if (after->question != before->question && after->question != QUESTION_NONE) {
        *after = *before;
    }
    after->last_utc_s = before->last_utc_s;
    verdict->reply_count = 0;
}

static bool
is_told(const struct asked *whole)
{
    const struct context *context = whole->context;

    return context->limit_told || context->role == SENDER_STAFF ||
           context->conversation.opted_out ||
           (context->limit == LIMIT_ALL && context->role == SENDER_STRANGER);
}

static void
tell(const struct asked *whole, struct verdict *verdict)
{
    const struct context *context = whole->context;
    enum phrase phrase = context->limit == LIMIT_ALL ? SAY_TOO_MANY_ALL : SAY_TOO_MANY;
    struct answer *answer = verdict_add(verdict, ANSWER_OFFICE, ROUTE_SMALLTALK, "too-many-texts");

    answer->text = say(whole->arena, context->house, verdict->language, phrase, NULL);
    verdict->replies[verdict->reply_count++] =
        (struct reply){.text = answer->text, .urgency = URGENCY_REPLY};
    verdict->conversation.last_utc_s = context->now_utc_s;
    verdict->conversation_changed = true;
    verdict_alert(verdict, ALERT_OFFICE, false, "too-many-texts", "very many texts");
}

void
limited_hold(const struct asked *whole, struct verdict *verdict)
{
    if (whole->context->limit == LIMIT_NONE || must_be_answered(whole, verdict) ||
        is_done_by_staff(whole, verdict)) {
        return;
    }
    hold_replies(whole, verdict);
    verdict->relay = (struct relay){0}; /* nor is a person's phone flooded */
    if (verdict->alert.level <= ALERT_OFFICE) {
        verdict->alert = (struct alert_call){0};
    }
    if (!is_told(whole)) {
        tell(whole, verdict);
    } else {
        verdict_add(verdict, ANSWER_OFFICE, ROUTE_SMALLTALK, "held-back");
    }
}
