/*
 * "Nobody picks up", "hello??" after a unit stopped, while we wait to hear whether oxygen flows:
 * who was told that a person calls has reached nobody and has not told that it flows. That is an
 * emergency now, not when the answer is overdue.
 */
#include "steps.h"

/* The whole of a text that only knocks. */
static const char knocks[] =
    " hello hi hey anyone anybody someone there is are you answer me please "
    "pick up help us still here waiting yall guys omg where hola bueno alo "
    "hay alguien ahi contesten contesteme conteste contestame oigan oiga "
    "por favor siguen estan nadie me nos aqui esperando donde ";
static const char asks_who[] =
    " anyone anybody answer pick where waiting alguien contesten contesteme "
    "conteste contestame nadie esperando ? ";

static const char nobody_answers[] =
    "nobody answers|nobody answered|nobody answering|nobody is answering|no one answers|"
    "no one answered|no one is answering|noone answers|not answering|dont answer|isnt answering|"
    "arent answering|wont answer|no answer|nobody picks up|no one picks up|nobody picked up|"
    "nobody is picking up|no one is picking up|isnt picking up|not picking up|goes to voicemail|"
    "went to voicemail|get voicemail|just rings|rings and rings|keeps ringing|nobody there|"
    "cant get anyone|cant reach anyone|cant get through|nobody called|no one called|"
    "nadie contesta|nadie me contesta|nadie contesto|no contesta nadie|no contestan|"
    "nadie responde|nadie me responde|no responden|nadie me llama|nadie llama|nadie ha llamado|"
    "nomas suena|solo suena|manda a buzon|me manda al buzon|no me contestan";

static bool
only_knocks(const struct tokens *tokens)
{
    enum { SHORT = 10 };
    size_t i;

    for (i = 0; i < tokens->count; i++) {
        if (tokens->list[i].kind == TOKEN_NUMBER ||
            (tokens->list[i].kind == TOKEN_WORD && !token_among(tokens, i, knocks))) {
            return false;
        }
    }
    return tokens->count <= SHORT && tokens_any_among(tokens, 0, asks_who);
}

bool
unheard_decide(const struct asked *whole, struct verdict *verdict)
{
    const struct conversation *conversation = &whole->context->conversation;

    if (whole->context->role == SENDER_STAFF || verdict->answer_count > 0 ||
        asked_open_question(whole) != QUESTION_FLOWING ||
        flowing_unanswered_level(conversation) < ALERT_EMERGENCY || in_charge_leads(whole) ||
        open_emergency_is(whole->context) || is_over_told(whole) ||
        !(only_knocks(&whole->tokens) || tokens_have(&whole->tokens, nobody_answers))) {
        return false;
    }
    flowing_still_none(whole, verdict);
    return true;
}
