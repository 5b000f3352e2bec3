/*
 * A renter has died. The program says one thing, asks nothing, starts nothing more for the rental,
 * and calls a person, who writes; until that alert is closed it is silent except for signs and
 * keywords, and whatever is texted reaches the alert. Who is at the end of their life lives: what
 * is asked for them is answered.
 */
#include <string.h>

#include "fill.h"
#include "found.h"
#include "say.h"
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

static const char at_the_end[] =
    "hospice|dnr|do not resuscitate|dont resuscitate|do not intubate|comfort care|palliative|polst|"
    "no resucitar|no reanimar|cuidados paliativos|paliativos|hospicio";

bool
death_is_only_near(const struct asked *whole)
{
    static const char has_died[] =
        " died dead passed passes gone deceased death lost funeral late rip heaven lord peace away "
        "over slipped buried expired murio fallecio fallecido fallecida falleci muerto muerta "
        "muerte descanse fue difunto difunta enterramos went longer left widow widower sorry ";

    return tokens_have(&whole->tokens, at_the_end) &&
           !tokens_any_among(&whole->tokens, 0, has_died);
}

bool
death_is_all_told(const struct asked *whole)
{
    static const char gone[] = "shes gone|hes gone|she is gone|he is gone|mom is gone|moms gone|"
                               "dad is gone|dads gone|grandma is gone|grandpa is gone|"
                               "ya se nos fue|se nos fue|ya fallecio|ya murio";
    static const char beside[] =
        " yes no need to call anyone anybody 911 an ambulance the nurse for now already thank you "
        "it "
        "was peaceful peacefully please dont just so si hace falta llamar a nadie gracias ya no ";
    struct tokens rest = tokens_without(whole->arena, &whole->tokens, gone);

    return rest.count < whole->tokens.count && tokens_words_among(&rest, beside);
}

bool
hospice_decide(const struct asked *whole, struct verdict *verdict)
{
    enum { SHORT = 12 };

    if (verdict->answer_count > 0 || whole->tokens.count > SHORT ||
        !tokens_have(&whole->tokens, at_the_end) ||
        tokens_have(&whole->tokens, "?|need|necesito") || open_emergency_stands(whole->context) ||
        (whole->search.count > 0 && whole->search.sureness == SURE)) {
        return false;
    }
    verdict_add(verdict, ANSWER_OFFICE, ROUTE_STAFF, HOSPICE_REASON)->text =
        say(whole->arena, whole->context->house, whole->language, SAY_HOSPICE, NULL);
    verdict_alert(verdict, ALERT_OFFICE, false, HOSPICE_REASON, "tells of hospice or DNR");
    return true;
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
