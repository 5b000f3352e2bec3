#include "staff_outcome.h"

#include <string.h>

#include "staff_say.h"
#include "steps.h"

/* By themselves these tell nothing of an outcome. */
static const char says_nothing[] =
    " ok okay k yes yeah yep yup y no nope not nothing idk dont know sure hm hmm mm um uh oh well "
    "what who huh sorry oops thanks thank you thx ty please pls right good great fine got it i the "
    "a is will do never mind nevermind cancel stop sorted done that this and one sec second minute "
    "min moment later hi hello hey . , ! ? - : # ";
/* It is not over yet. */
static const char is_to_come[] =
    " still yet wait waiting will ill well shell theyll gonna going soon lemme let driving calling "
    "trying checking omw way later until maybe hopefully tomorrow stays stay keep reopen undo "
    "worse fell need needs "
    "needed help wrong locked answer answering nobody ";
/* Said to somebody, not of something. */
static const char asks_or_orders[] =
    " how what when where why who which can could should do does did is are tell ask go come sit "
    "lie breathe hold please dont ";
static const char before_you[] = " thank thanks ";

static bool
is_said_to_somebody(const struct tokens *tokens)
{
    size_t i, head = 0;

    while (token_among(tokens, head, " ok okay good great fine and so . , ! ")) {
        head++;
    }
    if (token_among(tokens, head, asks_or_orders)) {
        return true;
    }
    for (i = 0; i < tokens->count; i++) {
        if (token_is(tokens, i, "?") || (token_among(tokens, i, " you your u ur youre ") &&
                                         (i == 0 || !token_among(tokens, i - 1, before_you)))) {
            return true;
        }
    }
    return false;
}

bool
staff_outcome_is_told(const struct asked *whole)
{
    const struct tokens *tokens = &whole->tokens;

    return !tokens_any_among(tokens, 0, is_to_come) && !tokens_words_among(tokens, says_nothing) &&
           !is_said_to_somebody(tokens);
}

void
staff_outcome_ask(const struct asked *whole, struct verdict *verdict,
                  const struct open_alert *alert, bool only_this)
{
    struct conversation *conversation = &verdict->conversation;
    const char *number = staff_say_number(whole, alert->number);

    staff_say(whole, verdict, SAY_STAFF_OUTCOME, number, NULL);
    if (open_question_ask(whole, verdict, QUESTION_WHICH_RENTAL)) {
        conversation->choices[conversation->choice_count++] = number;
        if (only_this) {
            conversation->choices[conversation->choice_count++] = "only";
        }
    }
}

const struct open_alert *
staff_outcome_awaited(const struct asked *whole, bool *only_this)
{
    const struct context *context = whole->context;
    const struct conversation *conversation = &context->conversation;
    size_t i;

    if (!staff_meant_waits(whole->context) || conversation->choice_count == 0) {
        return NULL;
    }
    *only_this = conversation->choice_count > 1;
    for (i = 0; i < context->alert_count; i++) {
        if (strcmp(staff_say_number(whole, context->alerts[i].number), conversation->choices[0]) ==
            0) {
            return &context->alerts[i];
        }
    }
    return NULL;
}
