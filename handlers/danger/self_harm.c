/*
 * After somebody told that they, or one with them, wish to die: each text of the next hours gets
 * the line of those who listen, whatever else is said to texts of an open emergency. "Bye", "i have
 * the pills here", "nobody cares" call a person again; thanks and words of comfort do not. How long
 * that holds is common practice, no source. Texting the line, and how in Spanish: the facts, E3.
 */
#include <string.h>

#include "found.h"
#include "memory.h"
#include "say.h"
#include "steps.h"

static const char self_harm[] = "self-harm";
static const char in_danger[] = "in-danger";

enum { STANDS_S = 6 * 3600 };

/* One that a person may show beside it, of the body or from others: that goes first then. What they
 * took is part of the wish. */
static bool
tells_another_emergency(const struct asked *asked, const struct open_alert *alert)
{
    const char *reasons = alert->reasons;

    while (reasons != NULL) {
        const struct sign *sign = found_next_reason(asked, &reasons);

        if (sign != NULL && sign->level == SIGN_EMERGENCY && strcmp(sign->id, self_harm) != 0 &&
            strcmp(sign->id, in_danger) != 0 && strcmp(sign->id, "poison") != 0 &&
            strcmp(sign->id, "asks-emergency") != 0) {
            return true;
        }
    }
    return false;
}

static bool
is_told_lately(const struct context *context, const struct open_alert *alert)
{
    return alert->level == ALERT_EMERGENCY && found_alert_tells(alert, self_harm) &&
           context->now_utc_s - alert->grave_utc_s <= STANDS_S;
}

bool
self_harm_was_told(const struct context *context)
{
    size_t i;

    for (i = 0; i < context->alert_count && context->role != SENDER_STAFF; i++) {
        if (is_told_lately(context, &context->alerts[i])) {
            return true;
        }
    }
    return false;
}

/* "Im gonna kill my brother in law", and nothing of oneself. */
bool
self_harm_was_of_another(const struct asked *asked)
{
    static const char kills[] =
        "kill my|kill him|kill her|kill them|kill that|kill you|murder my|murder him|murder her|"
        "strangle my|strangle him|strangle her|mato a mi|matar a mi|lo mato|la mato|lo voy a matar|"
        "la voy a matar|ahorco a mi|lo ahorco|la ahorco";
    static const char own[] = "myself|my self|my life|kill me|killing me|die|dead|suicide|suicidal|"
                              "end it|ending it|pills|gun|knife|matarme|morir|morirme|suicid|"
                              "pistola|cuchillo|pastillas";
    size_t i;
    bool is_told = false;

    for (i = 0; i < asked->context->alert_count; i++) {
        const char *texts = asked->context->alerts[i].grave_texts;
        struct tokens tokens = tokens_read(asked->arena, texts == NULL ? "" : texts);

        if (tokens_have(&tokens, own)) {
            return false;
        }
        is_told = is_told || tokens_have(&tokens, kills);
    }
    return is_told;
}

bool
self_harm_stands(const struct asked *asked)
{
    size_t i;

    if (!self_harm_was_told(asked->context) ||
        (explained_takes_back(&asked->tokens) && self_harm_was_of_another(asked))) {
        return false;
    }
    for (i = 0; i < asked->context->alert_count; i++) {
        if (tells_another_emergency(asked, &asked->context->alerts[i])) {
            return false;
        }
    }
    return true;
}

/* What it may be done with, or from where. */
static bool
tells_means(const struct tokens *tokens)
{
    static const char means[] =
        " pill pills tablets bottle gun pistol rifle shotgun knife blade razor rope noose belt "
        "bridge ledge cliff balcony roof morphine insulin pastilla pastillas frasco pistola arma "
        "escopeta cuchillo navaja soga cuerda cinturon puente balcon barranco azotea morfina "
        "insulina trigger overdose sobredosis ";

    return tokens_any_among(tokens, 0, means);
}

bool
self_harm_goes_on(const struct asked *asked)
{
    static const char put_away[] =
        "put away|gave * pills|gave them to|took * away|flushed|threw|locked up|refill|ya las tire|"
        "ya se las quite|las escondi|me las quitaron|se las quitamos|tire las pastillas|hid the";

    return self_harm_was_told(asked->context) && tells_means(&asked->tokens) &&
           !tokens_have(&asked->tokens, put_away);
}

bool
self_harm_is_own_wish(const struct asked *asked)
{
    static const char own_wish[] =
        "me quiero matar|me quiero pegar|me quiero golpear|me voy a pegar|la quiero matar|"
        "lo quiero matar|los quiero matar|las quiero matar|la quiero golpear|lo quiero golpear|"
        "la voy a matar|lo voy a matar|los voy a matar";
    struct tokens rest = tokens_without(asked->arena, &asked->tokens, own_wish);
    char *text = memory_copy(asked->arena, "");
    size_t i;

    for (i = 0; i < rest.count; i++) {
        memory_append(&text, "%s%s", i > 0 ? " " : "", rest.list[i].text);
    }
    return rest.count < asked->tokens.count && !found_on(asked, text, in_danger);
}

/* Nothing in it calls for a person at once: thanks, help that listens, an all-clear. */
static bool
is_comfort(const struct asked *asked, bool is_courtesy)
{
    static const char farewell[] = " bye goodbye adios goodnight farewell perdon perdoname sorry "
                                   "forgive love amo quiero chao ";
    static const char listens[] =
        "calling 988|called 988|talking to 988|on with 988|texting 988|texted 988|they helped|they "
        "are helping|feel better|llamando al 988|llame al 988|hablando con|hable con|me ayudaron|"
        "me siento mejor";

    if (tokens_any_among(&asked->tokens, 0, farewell)) {
        return false;
    }
    return is_courtesy ||
           (explained_takes_back(&asked->tokens) && self_harm_was_of_another(asked)) ||
           (tokens_have(&asked->tokens, listens) && !cannot_call_told(asked));
}

const char *
self_harm_words(const struct asked *asked)
{
    return say(asked->arena, asked->context->house, asked->language, SAY_988_AGAIN, NULL);
}

void
self_harm_alert(const struct asked *asked, struct verdict *verdict, bool is_courtesy)
{
    if (is_comfort(asked, is_courtesy)) {
        verdict_alert(verdict, ALERT_OFFICE, false, "wrote-again", "wrote again");
    } else if (cannot_call_told(asked)) {
        verdict_alert(verdict, ALERT_EMERGENCY, true, "help:cannot-call",
                      tokens_have(&asked->tokens, "988") ? "988 does not answer them"
                                                         : cannot_call_brief(asked));
    } else {
        verdict_alert(verdict, ALERT_EMERGENCY, true, "help:self-harm", "after self-harm, more");
    }
}
