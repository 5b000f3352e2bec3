/*
 * A person has this conversation: what the renter texts is passed on to them, and the program is
 * silent but for signs, what is asked with one, and consent.
 */
#include <string.h>

#include "handlers.h"
#include "memory.h"
#include "parts.h"
#include "say.h"
#include "steps.h"

bool
in_charge_leads(const struct asked *whole)
{
    return whole->context->conversation.in_charge != NULL &&
           whole->context->role != SENDER_STAFF; /* their own texts are orders */
}

bool
in_charge_decide(const struct asked *whole, struct verdict *verdict)
{
    if (!in_charge_leads(whole)) {
        return false;
    }
    verdict_add(verdict, ANSWER_OFFICE, ROUTE_STAFF, "in-charge");
    return true;
}

static bool
shows_sign(const struct verdict *verdict)
{
    size_t i;

    for (i = 0; i < verdict->answer_count; i++) {
        if (verdict->answers[i].kind == ANSWER_SIGN) {
            return true;
        }
    }
    return false;
}

/* "yes it flows" is heard, and not answered. What is asked with a sign is waited for. */
static bool
is_said(const struct answer *answer, bool with_sign)
{
    return answer->kind == ANSWER_SIGN || answer->kind == ANSWER_CONSENT ||
           answer->route == ROUTE_EMERGENCY || (with_sign && answer->kind == ANSWER_ASK);
}

/* "12 Ana: is the road open?"; `alert` NULL: without its number. */
static char *
passed_on(const struct asked *whole, const struct open_alert *alert, const char *from)
{
    const struct message *message = whole->message;
    char *text = memory_copy(whole->arena, "");

    if (alert != NULL) {
        memory_append(&text, "%lld ", (long long)alert->number);
    }
    memory_append(&text, "%s: %s%s", from, message->text,
                  message->attachments > 0 ? " (with a picture)" : "");
    return parts_plain(whole->arena, text);
}

/* The alert that this person has in hand. */
static const struct open_alert *
alert_of(const struct context *context, const char *holder)
{
    size_t i;

    for (i = 0; i < context->alert_count; i++) {
        if (context->alerts[i].taken_by != NULL &&
            strcmp(context->alerts[i].taken_by, holder) == 0) {
            return &context->alerts[i];
        }
    }
    return NULL;
}

/*
 * A person has the conversation with another phone of the rental: they see what this one texts, and
 * the program goes on answering it, for nobody writes to it.
 */
static void
show_beside(const struct asked *whole, struct verdict *verdict)
{
    const struct context *context = whole->context;
    size_t i;

    for (i = 0; i < context->alert_count && context->role == SENDER_RENTER; i++) {
        const struct open_alert *alert = &context->alerts[i];

        if (alert->has_talk && alert->taken_by != NULL) {
            verdict->relay = (struct relay){
                .to = alert->taken_by,
                .text = passed_on(
                    whole, alert,
                    memory_format(whole->arena, "%s%s%s",
                                  whole->rental != NULL ? whole->rental->first_name : "",
                                  whole->rental != NULL ? ", " : "", whole->message->sender)),
                .number = alert->number};
            return;
        }
    }
}

void
in_charge_pass_on(const struct asked *whole, struct verdict *verdict)
{
    const char *holder = whole->context->conversation.in_charge;
    bool with_sign = shows_sign(verdict);
    size_t i;

    if (!in_charge_leads(whole)) {
        show_beside(whole, verdict);
        return;
    }
    for (i = 0; i < verdict->answer_count; i++) {
        if (!is_said(&verdict->answers[i], with_sign)) {
            verdict->answers[i].text = "";
        }
    }
    verdict->relay =
        (struct relay){.to = holder,
                       .text = passed_on(whole, alert_of(whole->context, holder),
                                         whole->rental != NULL ? whole->rental->first_name
                                                               : whole->message->sender)};
}

char *
handlers_nobody_yet(void *arena, const struct house *house, enum language language)
{
    return say(arena, house, language, SAY_NOBODY_YET, NULL);
}

char *
handlers_someone_has_it(void *arena, const struct house *house, enum language language,
                        const char *holder)
{
    return say(arena, house, language, SAY_SOMEONE_HAS_IT, holder, NULL);
}

char *
handlers_talk_ends(void *arena, const struct house *house, enum language language,
                   enum talk_end end)
{
    return say(arena, house, language, end == TALK_CLOSED ? SAY_TALK_CLOSED : SAY_TALK_NO_WORD,
               NULL);
}
