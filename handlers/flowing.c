/*
 * "Is oxygen flowing again?", asked after a unit stopped or the power went. It is the one question
 * of ours that a life may hang on, so no other question takes its place while it is open, a text
 * that may mean NO counts as NO, and one that says neither is answered and asked again.
 */
#include <string.h>

#include "memory.h"
#include "say.h"
#include "steps.h"
#include "yes_no.h"

static const struct yes_no_about oxygen_flows = {
    .things = " oxygen o2 air flow flowing coming working work works power electricity light unit "
              "machine concentrator running back oxigeno aire sale luz corriente funciona prende "
              "maquina equipo ",
    .well = "flowing|is working|its working|working now|working again|works now|works again|"
            "it works|running again|running now|its running|back on|came back|is back|its back|"
            "on again|coming out|coming again|getting oxygen|getting air|ok now|okay now|"
            "fine now|good now|all good|all set|is fixed|got it fixed|got it working|"
            "ya funciona|ya sale|ya volvio|volvio la luz|ya hay|ya prendio|ya esta|ya quedo|"
            "sale oxigeno|esta saliendo",
    .ill = " still yet same sigue igual stopped quit died dead off out worse muerto apagado "
           "apagada parado peor ",
};

static enum yes_no
told(const struct asked *asked)
{
    return yes_no_read(&asked->tokens, &oxygen_flows);
}

static bool
is_open(const struct asked *whole)
{
    return asked_open_question(whole) == QUESTION_FLOWING;
}

void
flowing_ask(const struct asked *asked, struct verdict *verdict)
{
    struct answer *answer = verdict_add(verdict, ANSWER_ASK, ROUTE_EQUIPMENT, "flowing");

    answer->text = say(asked->arena, asked->context->house, asked->language, SAY_FLOWING, NULL);
    open_question_ask(asked, verdict, QUESTION_FLOWING);
}

void
flowing_still_none(const struct asked *whole, struct verdict *verdict)
{
    struct answer *answer = verdict_add(verdict, ANSWER_SIGN, ROUTE_EMERGENCY, "no-oxygen-still");

    answer->text = say(whole->arena, whole->context->house, whole->language, SAY_FLOWING_NO, NULL);
    verdict_alert(verdict, ALERT_EMERGENCY, true, "flowing:no", "still no oxygen");
    open_question_close(verdict);
}

/* It flows: closes the question. Staff still come back to them. */
static void
flowing_again(const struct asked *whole, struct verdict *verdict)
{
    struct answer *answer = verdict_add(verdict, ANSWER_OFFICE, ROUTE_EQUIPMENT, "flowing-again");

    answer->text = say(whole->arena, whole->context->house, whole->language, SAY_FLOWING_YES, NULL);
    open_question_close(verdict);
}

bool
flowing_decide(const struct asked *whole, struct verdict *verdict)
{
    if (whole->context->role == SENDER_STAFF || !is_open(whole)) {
        return false;
    }
    switch (told(whole)) {
    case SAID_NO:
        flowing_still_none(whole, verdict);
        return true;
    case SAID_YES:
        if (verdict->answer_count > 0) {
            return false; /* a sign came with it, so it stays open */
        }
        flowing_again(whole, verdict);
        return !yes_no_goes_on(&whole->tokens); /* "yes when is it due": that is answered too */
    case SAID_NEITHER:
        break;
    }
    return false;
}

bool
flowing_may_be_none(const struct asked *whole)
{
    /* "yes but he is dizzy": it flows, and that is another matter */
    return is_open(whole) && !yes_no_begins_with_yes(&whole->tokens);
}

void
flowing_ask_again(const struct asked *whole, struct verdict *verdict)
{
    struct answer *answer;
    size_t i;

    if (!is_open(whole) || verdict->conversation.question != QUESTION_FLOWING) {
        return;
    }
    for (i = 0; i < verdict->answer_count; i++) {
        if (strcmp(verdict->answers[i].id, "flowing") == 0) {
            return;
        }
    }
    flowing_ask(whole, verdict);
    answer = &verdict->answers[verdict->answer_count - 1];
    answer->text = memory_format(
        whole->arena, "%s %s",
        say_use_backup(whole->arena, whole->context->house, whole->language, whole->rental),
        answer->text); /* until it flows, that comes first */
}
