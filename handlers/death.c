/*
 * A renter has died. The program says one thing, asks nothing, starts nothing more for the rental,
 * and calls a person, who writes; until that alert is closed it is silent except for signs and
 * keywords, and whatever is texted reaches the alert.
 */
#include <string.h>

#include "fill.h"
#include "found.h"
#include "steps.h"

static const char reason[] = "sign:death-told";

void
death_answer(const struct asked *whole, struct verdict *verdict, const struct sign *sign)
{
    const struct filling with = {.house = whole->context->house, .language = whole->language};
    struct answer *answer = verdict_add(verdict, ANSWER_SIGN, ROUTE_STAFF, sign->id);

    answer->text = fill(whole->arena, sign->reply, &with, NULL);
    answer->why.score = 1000;
    verdict_alert(verdict, ALERT_URGENT, true, reason, sign->in_brief);
    verdict->rests = true;
    open_question_close(verdict);
}

/* An emergency told after the death: somebody else is in danger, and is helped. */
static bool
tells_emergency(const struct asked *whole, const char *reasons)
{
    while (reasons != NULL) {
        const struct sign *sign = found_next_reason(whole, &reasons);

        if (sign != NULL && sign->level == SIGN_EMERGENCY) {
            return true;
        }
    }
    return false;
}

bool
death_is_told(const struct asked *whole)
{
    const struct context *context = whole->context;
    bool is_told = context->rests;
    size_t i;

    for (i = 0; i < context->alert_count && !is_told; i++) {
        const char *told = strstr(context->alerts[i].reasons, reason);

        is_told = told != NULL && !tells_emergency(whole, told);
    }
    return is_told && context->role != SENDER_STAFF;
}

/* The one who writes breathes from a unit or a cylinder too, and that is empty. */
static bool
tells_own_supply_empty(const struct asked *whole)
{
    return whole->emptied.own && ran_out_told(whole) != RAN_OUT_NOTHING;
}

bool
death_decide(const struct asked *whole, struct verdict *verdict)
{
    if (!death_is_told(whole) || tells_own_supply_empty(whole)) {
        return false;
    }
    verdict_add(verdict, ANSWER_OFFICE, ROUTE_STAFF, "death-told-before");
    verdict_alert(verdict, ALERT_OFFICE, false, "wrote-again", "wrote again");
    return true;
}
