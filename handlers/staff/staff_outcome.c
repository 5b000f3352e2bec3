#include "staff_outcome.h"

#include <string.h>

#include "staff_own.h"
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
    " still yet wait waiting will shell theyll gonna going soon lemme let driving calling "
    "trying checking omw way later until maybe hopefully tomorrow stays stay keep reopen undo "
    "need needs ";
/* "We'll", unless it stands behind a word: "breathing well". */
static const char will[] = " ill well ";
/* Nor this, as long as nobody has taken them into their care. */
static const char is_trouble[] = " worse fell needed help wrong locked answer answering nobody ";
static const char helpers[] = " ambulance ems medic medics paramedic paramedics emt emts 911 er "
                              "hospital clinic police sheriff deputies rescue firefighters dept "
                              "doctor ";
static const char in_care[] = " took taken takes takin picked came arrived brought transported "
                              "called died admitted checking treating ";
/* Behind helpers, or before where they work: "medics are with him", "at the er". */
static const char behind_helpers[] = " has have got with there here ";
static const char before_helpers[] = " at in ";
/* Who tells this as well tells no end: "called 911 no answer", "doctor has to see him". */
static const char no_end[] =
    " no not nobody none isnt arent havent hasnt worse again locked full never "
    "dying get send need needs bad ";
static const char is_past[] =
    " was were wasnt had hadnt did didnt couldnt took went gave got passed woke found died felt "
    "came "
    "called slipped fainted collapsed swapped plugged moved stopped helped brought drove ";
static const char is_now[] = " is isnt are arent has hasnt have havent cant cannot wont hes shes "
                             "theyre keeps getting turning starts another else someone somebody ";
static const char ends_well[] = " ok okay fine better good well calm woke awake home safe stable "
                                "pink helped fixed sleeping ";
static const char is_well[] = " ok okay fine better good well calm at with home safe gone ";
/* "He stopped breathing" is not over. */
static const char vital[] = " breathing moving responding answering talking ";
/* Said to somebody, not of something. */
static const char asks_or_orders[] =
    " how what when where why who which can could should do does did is are tell ask go come sit "
    "lie breathe hold please dont call send unlock rest stand lean relax ";
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

static bool
is_still_to_come(const struct tokens *tokens)
{
    size_t i;

    for (i = 0; i < tokens->count; i++) {
        if (token_among(tokens, i, will) && (i == 0 || tokens->list[i - 1].kind == TOKEN_SIGN ||
                                             token_among(tokens, i - 1, " and but so then "))) {
            return true;
        }
    }
    return tokens_any_among(tokens, 0, is_to_come);
}

static bool
is_in_care(const struct tokens *tokens)
{
    enum { NEAR = 2 };
    bool is_cared_for = tokens_any_among(tokens, 0, in_care);
    size_t i;

    if (tokens_any_among(tokens, 0, no_end) || tokens_have(tokens, "has to|have to")) {
        return false;
    }
    for (i = 0; i < tokens->count; i++) {
        if (token_among(tokens, i, helpers) &&
            (is_cared_for || tokens_between_among(tokens, i + 1, i + 1 + NEAR, behind_helpers) ||
             tokens_between_among(tokens, tokens_back(i, NEAR), i, before_helpers))) {
            return true;
        }
    }
    return false;
}

bool
staff_outcome_is_told(const struct asked *whole)
{
    const struct tokens *tokens = &whole->tokens;

    return !is_still_to_come(tokens) &&
           (is_in_care(tokens) || !tokens_any_among(tokens, 0, is_trouble)) &&
           !tokens_words_among(tokens, says_nothing) && !is_said_to_somebody(tokens);
}

/* "Now ok", "but pink now" */
static bool
tells_well_now(const struct tokens *tokens, size_t at)
{
    return token_among(tokens, at + 1, is_well) ||
           tokens_between_among(tokens, tokens_back(at, 1), at, is_well) ||
           tokens_between_among(tokens, tokens_back(at, 3), at, " but then ");
}

/* "Couldnt breathe, now ok" is over; "has chest pain now" is not. */
static bool
is_over(const struct tokens *tokens)
{
    size_t i;

    for (i = 0; i < tokens->count; i++) {
        if ((token_among(tokens, i, is_now) && !token_among(tokens, i + 1, is_well)) ||
            (token_is(tokens, i, "stopped") && token_among(tokens, i + 1, vital)) ||
            (token_is(tokens, i, "now") && !tells_well_now(tokens, i))) {
            return false;
        }
    }
    return tokens_any_among(tokens, 0, is_past) && tokens_any_among(tokens, 0, ends_well);
}

bool
staff_outcome_tells_signs(const struct asked *whole)
{
    bool only_this;

    return staff_outcome_awaited(whole, &only_this) != NULL &&
           (is_in_care(&whole->tokens) ||
            (staff_outcome_is_told(whole) && is_over(&whole->tokens))) &&
           !staff_tells_own(whole, 0);
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
