/*
 * "Can i take ..." and a word that nobody knows: nearly always the name of a medicine, and names of
 * medicines are endless. The content lists the usual ones (words/LANG-classes.txt); of the others a
 * person is called too, for the topics would only guess at what is spelt alike. So also of "can mom
 * have her ...  tonight" and, without a question, of "took an extra ... by accident".
 */
#include <string.h>

#include "persons.h"
#include "steps.h"

enum { SHORTEST = 5 /* letters; a shorter one is a slip of the thumb */, ASKS_WITHIN = 6 };

static const char asks[] = " can could may should must ok okay safe alright puedo puede podemos "
                           "podria debo debe deberia bien ";
static const char takes[] = " take taking tomar tomarme tomarse tomo ";
/* Other things may be had or taken too: a dose is somebody's own, and has its hour. */
static const char has[] = " have give giving darle take taking tomar ";
static const char owners[] = " her his my su sus mi mis ";
static const char hours[] = " tonight before bed bedtime again early late yet with noche antes "
                            "dormir esta ";
/* What was taken by mistake, or too often. */
static const char took[] = " took taken take gave given had tomo tome tomado dio di ";
static const char amounts[] = " her his my our the a an some another extra second double two su "
                              "mi la el una un otra otro dos ";
static const char mistakes[] = "extra|second|double|twice|by accident|by mistake|accidentally|"
                               "de mas|doble|dos veces|por error|por accidente|sin querer";
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

static bool
is_unknown(const struct asked *whole, size_t at)
{
    const struct tokens *tokens = &whole->tokens;

    return at < tokens->count && tokens->list[at].kind == TOKEN_WORD &&
           strlen(tokens->list[at].text) >= SHORTEST && !is_known(whole, tokens->list[at].text);
}

/* Past words of these behind `at`. */
static size_t
behind(const struct tokens *tokens, size_t at, const char *words)
{
    do {
        at++;
    } while (token_among(tokens, at, words));
    return at;
}

/* "Can i take ...", "can mom have her ... tonight" */
static bool
asks_to_take(const struct asked *whole, size_t at)
{
    const struct tokens *tokens = &whole->tokens;
    size_t to = at + (token_among(tokens, at + 1, owners) ? 2 : 1); /* "give my dad his ..." */
    size_t owned = behind(tokens, token_among(tokens, to, person_words) ? to : at, owners);

    return tokens_between_among(tokens, tokens_back(at, ASKS_WITHIN), at, asks) &&
           ((token_among(tokens, at, takes) && is_unknown(whole, at + 1) &&
             may_end(tokens, at + 2)) ||
            (token_among(tokens, at, has) && token_among(tokens, owned - 1, owners) &&
             is_unknown(whole, owned) && token_among(tokens, owned + 1, hours) &&
             !token_among(tokens, owned + 2, company)));
}

bool
unknown_medicine_told(const struct asked *whole)
{
    const struct tokens *tokens = &whole->tokens;
    bool is_mistake = tokens_have(tokens, mistakes);
    size_t i, name;

    for (i = 0; i + 1 < tokens->count; i++) {
        name = behind(tokens, i, amounts);
        if (is_known(whole, tokens->list[i].text) /* words are listed */ &&
            (asks_to_take(whole, i) || (is_mistake && token_among(tokens, i, took) &&
                                        name > i + 1 && is_unknown(whole, name)))) {
            return true;
        }
    }
    return false;
}
