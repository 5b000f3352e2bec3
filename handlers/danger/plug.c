/*
 * A plug near the renter: asked for when little time is left on battery, and told by renters
 * unasked ("last battery and no plug here").
 */
#include <string.h>

#include "broken_plug.h"
#include "in_car.h"
#include "memory.h"
#include "say.h"
#include "steps.h"
#include "yes_no.h"

static const char no_plug[] = "no-plug";

static const struct yes_no_about plug_is_near = {
    .things = " plug plugs outlet outlets socket sockets power electricity enchufe enchufes toma "
              "tomas corriente contacto luz ",
    .well = "there is one|theres one|there is a|theres a|have one|got one|found one|plugged in|"
            "plugged it in|si hay|hay uno|hay un|ya esta enchufado|lo enchufe",
    .ill = " nowhere ",
    .takes_doubt = true,
};

static const char there_is_none[] =
    "no plug|no plugs|no outlet|no outlets|no socket|no sockets|nowhere to plug|no where to plug|"
    "no place to plug|cant plug it|cant plug in|cannot plug|not near a plug|not near an outlet|"
    "no way to charge|nowhere to charge|no place to charge|cant charge it here|"
    "sin enchufe|no hay enchufe|no hay enchufes|no hay donde enchufar|no tengo donde enchufar|"
    "no hay toma|no hay donde cargar";
/* Of a part, or of another day. */
static const char not_of_here[] = "charger has|cord has|cable has|brick has|case has|came without|"
                                  "tomorrow|next week|will be|well be|manana|mientras";
/* In a text that asks something these tell that it is so now, and no plan. */
static const char is_now[] = "here|last battery|last one|running low|getting low|almost out|"
                             "almost dead|nearly out|nearly dead|about to die|dying|left|aqui|"
                             "ultima bateria|ya casi|me queda|nos queda";
static const char asks[] = " how what when where which is are can could do does will should como "
                           "que cuando donde puedo ";

bool
plug_is_missing(const struct verdict *verdict)
{
    size_t i;

    for (i = 0; i < verdict->answer_count; i++) {
        if (strcmp(verdict->answers[i].id, no_plug) == 0) {
            return true;
        }
    }
    return false;
}

void
plug_ask_again(const struct asked *asked, struct verdict *verdict)
{
    verdict_add(verdict, ANSWER_ASK, ROUTE_ANSWER, "plug")->text =
        say(asked->arena, asked->context->house, asked->language, SAY_PLUG, NULL);
}

bool
plug_ask(const struct asked *asked, struct verdict *verdict)
{
    if (!open_question_ask(asked, verdict, QUESTION_PLUG)) {
        return false;
    }
    plug_ask_again(asked, verdict);
    return true;
}

void
plug_settled(struct verdict *verdict)
{
    if (verdict->conversation.question == QUESTION_PLUG) {
        open_question_close(verdict);
    }
}

/* Someone is called; what can be done meanwhile is as the record has it. */
static void
answer_no_plug(const struct asked *asked, struct verdict *verdict)
{
    const struct house *house = asked->context->house;
    struct answer *answer = verdict_add(verdict, ANSWER_OFFICE, ROUTE_EQUIPMENT, no_plug);
    const char *in_car = in_car_words(asked);

    answer->text = memory_format(
        asked->arena, "%s %s", say(asked->arena, house, asked->language, SAY_NO_PLUG, NULL),
        say_use_backup(asked->arena, house, asked->language, asked->rental));
    if (in_car != NULL) {
        answer->text = memory_format(asked->arena, "%s %s", in_car, answer->text);
    }
    verdict_alert(verdict, ALERT_URGENT, false, "power:no-plug", "on battery, no plug");
    plug_settled(verdict);
}

bool
plug_answered(const struct asked *asked, struct verdict *verdict)
{
    struct answer *answer;

    switch (yes_no_read(&asked->tokens, &plug_is_near)) {
    case SAID_NO:
        answer_no_plug(asked, verdict);
        return !yes_no_goes_on(&asked->tokens);
    case SAID_YES:
        plug_settled(verdict);
        answer = verdict_add(verdict, ANSWER_OFFICE, ROUTE_ANSWER, "plug-near");
        answer->text = say(asked->arena, asked->context->house, asked->language, SAY_PLUG_IN, NULL);
        return !yes_no_goes_on(&asked->tokens);
    case SAID_NEITHER:
        break;
    }
    return false;
}

/* Of a trip that is planned: the trip is worked out (trip_answer.c), which calls staff if need be.
 */
static bool
plans_trip(const struct asked *asked)
{
    struct told told;

    told_read(asked->arena, asked->context->lexicon, asked->text, &told);
    return told.kind == TOLD_TRIP && told.leg_count > 0 && asked->rental != NULL &&
           !tokens_have(&asked->tokens, is_now);
}

bool
plug_decide(const struct asked *asked, struct verdict *verdict)
{
    const struct tokens *tokens = &asked->tokens;

    if (told_has_charge(asked->told) || told_has_charge(asked->message_told) ||
        (asked->account != NULL && asked->account->known)) {
        broken_plug_call(asked, verdict);
    }
    if (!tokens_have(tokens, there_is_none) || tokens_have(tokens, not_of_here) ||
        token_among(tokens, 0, asks) || plug_is_missing(verdict) ||
        (tokens_have(tokens, "?") && !tokens_have(tokens, is_now)) || plans_trip(asked)) {
        return false;
    }
    answer_no_plug(asked, verdict);
    if (told_has_charge(asked->told)) {
        (void)power_decide(asked, verdict); /* how long that is, beside it */
    }
    return true;
}
