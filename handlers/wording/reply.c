#include "reply.h"

#include <string.h>

#include "emergency.h"
#include "in_words.h"
#include "memory.h"
#include "parts.h"
#include "said_once.h"
#include "say.h"
#include "steps.h"

enum { PARTS_TOGETHER = 3, PARTS_WITH_EXTRAS = 2, COPY_PAUSE_S = 60 };

static char *
say_whole(const struct asked *whole, enum phrase phrase, const char *argument)
{
    return say(whole->arena, whole->context->house, whole->language, phrase, argument, NULL);
}

/* As it goes out: as the record says that this phone, or its renter, is to be told. */
static char *
as_sent(const struct asked *whole, const char *text)
{
    char *plain = parts_plain(whole->arena, reach_words(whole, text));

    return reach_is_in_words(whole) ? in_words(whole->arena, whole->language, plain) : plain;
}

static void
add_reply(const struct asked *whole, struct verdict *verdict, const char *text,
          enum urgency urgency, bool holds_time)
{
    bool is_first_part = urgency == URGENCY_EMERGENCY && verdict->reply_count == 0;
    const char *sent = as_sent(whole, text);

    if (is_first_part && parts_count(sent).parts > 1) {
        sent = parts_plain(whole->arena, text); /* it stands alone, whatever its signs */
    }
    if (verdict->reply_count < VERDICT_REPLIES_MAX) {
        verdict->replies[verdict->reply_count++] =
            (struct reply){.text = sent, .urgency = urgency, .holds_time = holds_time};
    }
}

static bool
is_first_of_conversation(const struct context *context)
{
    return context->conversation.last_utc_s == 0 ||
           context->now_utc_s - context->conversation.last_utc_s > context->house->conversation_s;
}

/* "You wrote at 2:05 am:" if the text took long to reach us, else NULL. */
static char *
late_words(const struct asked *whole)
{
    const struct context *context = whole->context;
    int64_t sent_utc_s = whole->message->sent_utc_s;

    if (context->now_utc_s - sent_utc_s <= context->house->late_s) {
        return NULL;
    }
    return say_whole(whole, SAY_YOU_WROTE_AT, say_clock(whole->arena, context->zone, sent_utc_s));
}

/* Told for the third time and more, and answered within the last minute. */
static bool
is_one_more_copy(const struct asked *whole, const struct verdict *verdict)
{
    const struct context *context = whole->context;

    return verdict->repeats > 1 &&
           context->now_utc_s - context->conversation.last_utc_s < COPY_PAUSE_S;
}

/*
 * The first part and the second. Who texts the same again in the next minutes has both on the
 * screen: they get the first part once more, and from then on not within a minute.
 */
static void
compose_emergency(const struct asked *whole, struct verdict *verdict)
{
    char *second = emergency_second_part(whole, verdict);
    char *late = late_words(whole);
    size_t i;

    if (is_one_more_copy(whole, verdict)) {
        return;
    }
    for (i = 0; i < verdict->answer_count; i++) {
        if (verdict->answers[i].route == ROUTE_EMERGENCY) {
            add_reply(whole, verdict, verdict->answers[i].text, URGENCY_EMERGENCY, false);
            break;
        }
    }
    if (verdict->repeats > 0) {
        return;
    }
    if (late != NULL) {
        second = memory_format(whole->arena, "%s %s", late, second);
    }
    add_reply(whole, verdict, second, URGENCY_EMERGENCY, false);
}

/* The last sentence tells when to call the emergency number. */
static bool
ends_with_emergency(const char *text, const char *number)
{
    size_t length = strlen(text), at;

    for (at = length; at > 1; at--) {
        bool sentence_begins = text[at - 1] == ' ' && at < length - 1 &&
                               (text[at - 2] == '.' || text[at - 2] == '!' || text[at - 2] == '?');

        if (sentence_begins) {
            break;
        }
    }
    return strstr(text + (at > 1 ? at : 0), number) != NULL;
}

static bool
is_said_before(const struct verdict *verdict, size_t at)
{
    size_t i;

    for (i = 0; i < at; i++) {
        if (strcmp(verdict->answers[i].text, verdict->answers[at].text) == 0) {
            return true;
        }
    }
    return false;
}

static bool
has_more_than_courtesy(const struct verdict *verdict)
{
    size_t i;

    for (i = 0; i < verdict->answer_count; i++) {
        if (verdict->answers[i].kind != ANSWER_COURTESY && verdict->answers[i].text[0] != '\0') {
            return true;
        }
    }
    return false;
}

/* Whether this answer's text goes out, beside the others. */
static bool
is_sent(const struct asked *whole, const struct verdict *verdict, size_t at)
{
    const struct answer *answer = &verdict->answers[at];

    if (answer->text[0] == '\0' || is_said_before(verdict, at)) {
        return false;
    }
    if (answer->kind == ANSWER_COURTESY && has_more_than_courtesy(verdict)) {
        return false;
    }
    if (answer->kind == ANSWER_SIGN && is_one_more_copy(whole, verdict)) {
        return false;
    }
    return !whole->context->conversation.opted_out || answer->kind == ANSWER_CONSENT;
}

static bool
holds_time(const struct answer *answer)
{
    return answer->estimate != NULL && (answer->estimate->kind == ESTIMATE_HOURS_LEFT ||
                                        answer->estimate->kind == ESTIMATE_CHARGING ||
                                        answer->estimate->kind == ESTIMATE_CYLINDER);
}

/* A text in the making. */
struct draft {
    char *text;
    bool holds_time;
    bool any; /* an answer is in it, not only what leads */
};

static void
append(char **text, const char *more)
{
    memory_append(text, "%s%s", (*text)[0] == '\0' ? "" : " ", more);
}

static void
lead(const struct asked *whole, const struct verdict *verdict, struct draft *draft)
{
    char *late = late_words(whole);
    bool of_staff = whole->context->role == SENDER_STAFF;

    *draft = (struct draft){.text = memory_copy(whole->arena, "")};
    if (is_first_of_conversation(whole->context) && !of_staff && verdict->route != ROUTE_CONSENT) {
        append(&draft->text, say_whole(whole, SAY_AUTOMATIC, NULL));
    }
    if (late != NULL && !of_staff) {
        append(&draft->text, late);
    }
}

/* We wait for their answer, or a person's: meanwhile something may go wrong. */
static bool
leaves_open(const struct verdict *verdict)
{
    size_t i;

    for (i = 0; i < verdict->answer_count; i++) {
        if (verdict->answers[i].kind == ANSWER_ASK || verdict->answers[i].kind == ANSWER_GAP) {
            return true;
        }
    }
    return false;
}

/*
 * What is clinical ends with when to call the emergency number, and so does what leaves a renter
 * waiting; unit trouble names it somewhere.
 */
static void
append_when_to_call(const struct asked *whole, const struct verdict *verdict, char **text)
{
    const char *number = whole->context->house->emergency_number;
    bool ends = ends_with_emergency(*text, number);
    bool waits = verdict->route > ROUTE_EQUIPMENT && leaves_open(verdict) && !ends &&
                 (asked_is_active_renter(whole) || verdict->alert.level >= ALERT_URGENT);

    if (verdict->route == ROUTE_CLINICAL && !ends) {
        append(text, say_whole(whole, SAY_CALL_911_IF, NULL));
    } else if (waits || (verdict->route == ROUTE_EQUIPMENT && strstr(*text, number) == NULL)) {
        append(text, say_whole(whole, SAY_BREATHING_911, NULL));
    }
}

/* Sends the draft and begins another with this answer. */
static void
next_draft(const struct asked *whole, struct verdict *verdict, struct draft *draft,
           const struct answer *answer, enum urgency urgency)
{
    if (verdict->route == ROUTE_CLINICAL) {
        append_when_to_call(whole, verdict, &draft->text);
    }
    add_reply(whole, verdict, draft->text, urgency, draft->holds_time);
    *draft = (struct draft){.text = memory_copy(whole->arena, answer->text)};
}

/* Puts this answer into the draft, or into the next one; false if no reply is left for it. */
static bool
add_to_draft(const struct asked *whole, struct verdict *verdict, struct draft *draft,
             const struct answer *answer, enum urgency urgency)
{
    char *joined = memory_copy(whole->arena, draft->text);

    append(&joined, answer->text);
    if (!draft->any || parts_count(as_sent(whole, joined)).parts <= PARTS_TOGETHER) {
        draft->text = joined;
    } else if (verdict->reply_count < VERDICT_REPLIES_MAX - 1) {
        next_draft(whole, verdict, draft, answer, urgency);
    } else {
        return false; /* the draft in hand is the last that goes out */
    }
    draft->any = true;
    draft->holds_time = draft->holds_time || holds_time(answer);
    return true;
}

/* All that is sent, as if in one text. */
static const char *
whole_text(const struct asked *whole, const struct verdict *verdict)
{
    struct draft draft;
    size_t i;

    lead(whole, verdict, &draft);
    for (i = 0; i < verdict->answer_count; i++) {
        if (is_sent(whole, verdict, i)) {
            append(&draft.text, verdict->answers[i].text);
        }
    }
    append_when_to_call(whole, verdict, &draft.text);
    return parts_plain(whole->arena, draft.text);
}

/* Says what is said only if there is room for it. */
static void
take_extras(const struct asked *whole, struct verdict *verdict)
{
    size_t i, j;

    for (i = 0; i < verdict->answer_count; i++) {
        struct answer *answer = &verdict->answers[i];

        for (j = 0; j < answer->extra_count; j++) {
            const char *without = answer->text;

            answer->text = memory_format(whole->arena, "%s %s", without, answer->extras[j]);
            if (parts_count(whole_text(whole, verdict)).parts > PARTS_WITH_EXTRAS) {
                answer->text = without;
            }
        }
        answer->extra_count = 0;
    }
}

/* Several signs: each later one's words are said as far as an earlier one has not said them. */
static void
say_signs_once(const struct asked *whole, struct verdict *verdict)
{
    char *said = memory_copy(whole->arena, "");
    size_t i;

    for (i = 0; i < verdict->answer_count; i++) {
        struct answer *answer = &verdict->answers[i];

        if (answer->kind == ANSWER_SIGN) {
            answer->text = said_once(whole->arena, said, answer->text);
            memory_append(&said, "%s%s", said[0] == '\0' ? "" : " ", answer->text);
        }
    }
}

static void
compose_answers(const struct asked *whole, struct verdict *verdict)
{
    bool grave = verdict->route == ROUTE_CLINICAL || verdict->route == ROUTE_EQUIPMENT;
    enum urgency urgency = grave ? URGENCY_URGENT : URGENCY_REPLY;
    bool is_cut = verdict_overflowed(verdict), fits = true;
    struct draft draft;
    size_t i;

    say_signs_once(whole, verdict);
    take_extras(whole, verdict);
    lead(whole, verdict, &draft);
    for (i = 0; i < verdict->answer_count && fits; i++) {
        if (is_sent(whole, verdict, i)) {
            fits = add_to_draft(whole, verdict, &draft, &verdict->answers[i], urgency);
        }
    }
    if (!draft.any) {
        return;
    }
    if (is_cut || !fits) {
        append(&draft.text, say_whole(whole, SAY_REST_TO_PERSON, NULL));
        verdict_alert(verdict, ALERT_OFFICE, false, "too-many-questions", "many questions");
    }
    append_when_to_call(whole, verdict, &draft.text);
    add_reply(whole, verdict, draft.text, urgency, draft.holds_time);
}

/* Power and backup asked for in the same text as an emergency: a text of its own, after it. */
static void
compose_aid(const struct asked *whole, struct verdict *verdict)
{
    struct draft draft = {.text = memory_copy(whole->arena, "")};
    size_t i;

    for (i = 0; i < verdict->answer_count; i++) {
        const struct answer *answer = &verdict->answers[i];

        if (answer->kind == ANSWER_TOPIC || answer->kind == ANSWER_ESTIMATE) {
            append(&draft.text, answer->text);
            draft.holds_time = draft.holds_time || holds_time(answer);
        }
    }
    if (draft.text[0] != '\0') {
        add_reply(whole, verdict, draft.text, URGENCY_URGENT, draft.holds_time);
    }
}

/* They asked something that we may not answer by text: a person finds another way. */
static void
compose_opted_out(const struct asked *whole, struct verdict *verdict)
{
    if (verdict->route == ROUTE_CLINICAL || verdict->route == ROUTE_EQUIPMENT) {
        add_reply(whole, verdict, say_whole(whole, SAY_CALL_911_IF, NULL), URGENCY_URGENT, false);
    } else if (verdict->route != ROUTE_CONSENT && verdict->route != ROUTE_SMALLTALK &&
               asked_is_active_renter(whole)) {
        verdict_alert(verdict, ALERT_OFFICE, false, "opted-out", "asks, wants no texts");
    }
}

/* An alert that this text joins tells it already, before what this text adds: what is graver goes
 * in front, and a brief that grows long is cut at its end. */
static bool
is_warned(const struct asked *whole, const struct verdict *verdict, const char *note)
{
    const struct context *context = whole->context;
    size_t i;

    for (i = 0; i < context->alert_count; i++) {
        const struct open_alert *alert = &context->alerts[i];
        bool is_same = verdict->rental_id == NULL || alert->rental_id == NULL
                           ? strcmp(alert->phone, whole->message->sender) == 0
                           : strcmp(alert->rental_id, verdict->rental_id) == 0;

        if (is_same && alert->level >= verdict->alert.level && strstr(alert->brief, note) != NULL) {
            return true;
        }
    }
    return false;
}

/* How to reach them: their carrier may hold back what we text to a number that opted out, and some
 * are never rung. */
static void
warn_staff(const struct asked *whole, struct verdict *verdict)
{
    struct alert_call *alert = &verdict->alert;
    bool opted_out = whole->context->conversation.opted_out, by_text = reach_is_by_text(whole);
    const char *note = reach_is_landline(whole) ? "landline: ring"
                       : opted_out && by_text
                           ? "never ring; opted out, carrier may block our text: go there"
                       : opted_out ? "opted out: carrier may block our text, ring"
                       : by_text   ? "never ring, text"
                                   : NULL;

    if (alert->level == ALERT_NONE || note == NULL) {
        return;
    }
    alert->ring = alert->ring || (opted_out && !reach_is_landline(whole));
    if (!is_warned(whole, verdict, note)) {
        alert->brief = memory_format(whole->arena, "%s; %s", alert->brief, note);
    }
}

/*
 * The record says that this phone is a landline: what we would text goes to a person, who rings.
 * But for the emergency line, which they have asked for by texting. A question that is not sent is
 * not open.
 */
static void
hold_for_landline(const struct asked *whole, struct verdict *verdict)
{
    if (!reach_is_landline(whole) || verdict->route == ROUTE_EMERGENCY) {
        return;
    }
    if (verdict->reply_count > 0 && verdict->route != ROUTE_SMALLTALK) {
        verdict_alert(verdict, ALERT_OFFICE, false, "landline", "asks by landline");
    }
    verdict->reply_count = 0;
    verdict->reminder.step =
        verdict->reminder.step == REMINDER_CANCEL ? REMINDER_CANCEL : REMINDER_KEEP;
    if (verdict->conversation.question != whole->context->conversation.question) {
        verdict->conversation.question = QUESTION_NONE;
    }
}

static void
settle_conversation(const struct asked *whole, struct verdict *verdict)
{
    struct conversation *conversation = &verdict->conversation;

    if (verdict->reply_count > 0) {
        conversation->last_utc_s = whole->context->now_utc_s;
        verdict->conversation_changed = true;
    }
    if (verdict->rental_id != NULL && whole->context->rental_count > 1) {
        conversation->rental_id = verdict->rental_id;
        verdict->conversation_changed = true;
    }
}

void
reply_compose(const struct asked *whole, struct verdict *verdict)
{
    if (verdict->route == ROUTE_EMERGENCY) {
        compose_emergency(whole, verdict);
        compose_aid(whole, verdict);
    } else {
        compose_answers(whole, verdict);
        if (whole->context->conversation.opted_out && verdict->reply_count == 0) {
            compose_opted_out(whole, verdict);
        }
    }
    hold_for_landline(whole, verdict);
    warn_staff(whole, verdict);
    settle_conversation(whole, verdict);
}
