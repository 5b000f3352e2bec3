/*
 * "Can i take ..." and a word that nobody knows: nearly always the name of a medicine, and names of
 * medicines are endless. The content lists the usual ones (words/LANG-classes.txt); of the others a
 * person is called too, for the topics would only guess at what is spelt alike.
 */
#include <string.h>

#include "steps.h"

enum { SHORTEST = 5 /* letters; a shorter one is a slip of the thumb */, ASKS_WITHIN = 6 };

static const char asks[] = " can could may should must ok okay safe alright puedo puede podemos "
                           "podria debo debe deberia bien ";
static const char takes[] = " take taking tomar tomarme tomarse tomo ";
/* What may follow; "take Rover up" and "take Jonna with me" are trips. */
static const char goes_on[] = " with while before after on at for and or during if tonight today "
                              "tomorrow too daily every con mientras antes despues en por y o hoy "
                              "si cada tambien ";
static const char company[] = " me us him her them mi nosotros ";

static bool
is_known(const struct asked *whole, const char *word)
{
    int language;

    for (language = 0; language < LANGUAGE_COUNT; language++) {
        if (kb_is_ordinary(whole->context->kb, word, (enum language)language)) {
            return true;
        }
    }
    return false;
}

static bool
may_end(const struct tokens *tokens, size_t at)
{
    return at >= tokens->count || tokens->list[at].kind != TOKEN_WORD ||
           (token_among(tokens, at, goes_on) && !token_among(tokens, at + 1, company));
}

bool
unknown_medicine_told(const struct asked *whole)
{
    const struct tokens *tokens = &whole->tokens;
    size_t i;

    for (i = 0; i + 1 < tokens->count; i++) {
        const struct token *name = &tokens->list[i + 1];

        if (token_among(tokens, i, takes) &&
            tokens_between_among(tokens, tokens_back(i, ASKS_WITHIN), i, asks) &&
            name->kind == TOKEN_WORD && strlen(name->text) >= SHORTEST && may_end(tokens, i + 2) &&
            is_known(whole, tokens->list[i].text) /* words are listed */ &&
            !is_known(whole, name->text)) {
            return true;
        }
    }
    return false;
}
