/*
 * What renters say to an answer without asking anything more: "did that", "is that ok?". They get a
 * short word back, and what we asked and wait for is asked again.
 */
#include "memory.h"
#include "say.h"
#include "steps.h"

enum { ANSWERED_S = 30 * 60 };

static const char did[] = " did done hice hecho hicimos hizo ";
static const char around_did[] =
    " i we he she that it this so just have ok okay yes now all already "
    "got ya lo la los las eso asi si esta quedo todo listo and "
    "thanks thank you gracias , . ! ";
static const char is_it[] = "is that ok|is that okay|is it ok|is it okay|is this ok|is this okay|"
                            "is that right|is this right|that ok|that okay|esta bien asi|"
                            "asi esta bien|eso esta bien|esta bien eso|esta bien|asi";
static const char around_is_it[] =
    " is that it this ok okay right so and esta bien asi eso y ? , . ";

static bool
has_only(const struct tokens *tokens, const char *words, const char *or_of)
{
    size_t i;

    for (i = 0; i < tokens->count; i++) {
        if (!token_among(tokens, i, words) && !token_among(tokens, i, or_of)) {
            return false;
        }
    }
    return tokens->count > 0;
}

static bool
says_did(const struct tokens *tokens)
{
    return tokens_any_among(tokens, 0, did) && has_only(tokens, did, around_did);
}

static bool
asks_whether_so(const struct tokens *tokens)
{
    return tokens_have(tokens, is_it) && tokens_have(tokens, "?") &&
           has_only(tokens, around_is_it, around_is_it);
}

/* Something grave is open: what they did, and whether that is right, a person hears. */
static bool
is_called(const struct context *context)
{
    size_t i;

    for (i = 0; i < context->alert_count; i++) {
        if (context->alerts[i].level >= ALERT_URGENT) {
            return true;
        }
    }
    return false;
}

bool
done_so_decide(const struct asked *whole, struct verdict *verdict)
{
    const struct context *context = whole->context;
    const struct last_answer *last = &context->conversation.last;
    enum open_question open = asked_open_question(whole);
    bool asks = asks_whether_so(&whole->tokens);
    struct answer *answer;
    const char *text;

    if (verdict->answer_count > 0 || last->at_utc_s == 0 ||
        context->now_utc_s - last->at_utc_s > ANSWERED_S || is_called(context) ||
        (open != QUESTION_NONE && open != QUESTION_PLUG) || (!asks && !says_did(&whole->tokens))) {
        return false;
    }
    text = say(whole->arena, context->house, whole->language, asks ? SAY_OK_IF_SO : SAY_DID_SO,
               context->house->phone, NULL);
    if (open == QUESTION_PLUG) {
        plug_ask_again(whole, verdict);
        answer = &verdict->answers[verdict->answer_count - 1];
        answer->text = memory_format(whole->arena, "%s %s", text, answer->text);
        return true;
    }
    answer = verdict_add(verdict, ANSWER_COURTESY, ROUTE_SMALLTALK, asks ? "ok-so" : "did-so");
    answer->text = text;
    return true;
}
