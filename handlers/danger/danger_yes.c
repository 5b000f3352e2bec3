/*
 * What we say to a symptom or to trouble ends with when to call the emergency number: "Trouble
 * breathing, chest pain, blue lips or confused? Call 911 now." A bare YES to that waits for nothing
 * else, so it is taken for one, and the person who has the alert is called again.
 */
#include <string.h>

#include "say.h"
#include "steps.h"
#include "yes_no.h"

enum { ANSWERS_S = 20 * 60, WORDS_MAX = 4 };

/* "Si, un poco", "yes both", "peor". */
static const char says_so[] = " yes yeah yep yup y si simon claro a bit little some both all of it "
                              "them worse un poco las dos todo de peor mucho ";

static bool
says_only_so(const struct tokens *tokens)
{
    size_t words = 0, i;

    for (i = 0; i < tokens->count; i++) {
        if (tokens->list[i].kind != TOKEN_SIGN && !token_among(tokens, i, says_so)) {
            return false;
        }
        words += tokens->list[i].kind == TOKEN_WORD;
    }
    return words <= WORDS_MAX &&
           (yes_no_begins_with_yes(tokens) || tokens_have(tokens, "worse|peor"));
}

/* Something was told lately that staff are urgently called about. */
static bool
was_told_of_danger(const struct context *context)
{
    size_t i;

    for (i = 0; i < context->alert_count; i++) {
        if (context->alerts[i].level >= ALERT_URGENT &&
            (strstr(context->alerts[i].reasons, "sign:") != NULL ||
             strstr(context->alerts[i].reasons, "trouble:") != NULL)) {
            return context->now_utc_s - context->conversation.last_utc_s <= ANSWERS_S;
        }
    }
    return false;
}

bool
danger_yes_decide(const struct asked *whole, struct verdict *verdict)
{
    if (whole->context->role == SENDER_STAFF || verdict->answer_count > 0 ||
        asked_open_question(whole) != QUESTION_NONE || open_emergency_is(whole->context) ||
        !was_told_of_danger(whole->context) || !says_only_so(&whole->tokens)) {
        return false;
    }
    verdict_add(verdict, ANSWER_OFFICE, ROUTE_CLINICAL, "danger-yes")->text =
        say(whole->arena, whole->context->house, whole->language, SAY_DANGER_YES, NULL);
    verdict_alert(verdict, ALERT_URGENT, true, "danger:yes", "says yes to danger");
    return true;
}
