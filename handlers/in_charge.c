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

static bool
leads(const struct asked *whole)
{
    return whole->context->conversation.in_charge != NULL &&
           whole->context->role != SENDER_STAFF; /* their own texts are orders */
}

bool
in_charge_decide(const struct asked *whole, struct verdict *verdict)
{
    if (!leads(whole)) {
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

/* "12 Ana: is the road open?" */
static char *
passed_on(const struct asked *whole)
{
    const struct context *context = whole->context;
    const struct message *message = whole->message;
    const char *holder = context->conversation.in_charge;
    char *text = memory_copy(whole->arena, "");
    size_t i;

    for (i = 0; i < context->alert_count && text[0] == '\0'; i++) {
        if (context->alerts[i].taken_by != NULL &&
            strcmp(context->alerts[i].taken_by, holder) == 0) {
            memory_append(&text, "%lld ", (long long)context->alerts[i].number);
        }
    }
    memory_append(&text, "%s: %s%s",
                  whole->rental != NULL ? whole->rental->first_name : message->sender,
                  message->text, message->attachments > 0 ? " (with a picture)" : "");
    return parts_plain(whole->arena, text);
}

void
in_charge_pass_on(const struct asked *whole, struct verdict *verdict)
{
    bool with_sign = shows_sign(verdict);
    size_t i;

    if (!leads(whole)) {
        return;
    }
    for (i = 0; i < verdict->answer_count; i++) {
        if (!is_said(&verdict->answers[i], with_sign)) {
            verdict->answers[i].text = "";
        }
    }
    verdict->relay =
        (struct relay){.to = whole->context->conversation.in_charge, .text = passed_on(whole)};
}

char *
handlers_talk_ends(void *arena, const struct house *house, enum language language,
                   enum talk_end end)
{
    return say(arena, house, language, end == TALK_CLOSED ? SAY_TALK_CLOSED : SAY_TALK_NO_WORD,
               NULL);
}
