/*
 * A value where one was told not long ago: "84", "its 83 now", "ya va en 82", "dropped to 82". What
 * it is of is known, so every number counts that is not told of something else.
 */
#include "memory.h"
#include "oximeter.h"
#include "oximeter_parts.h"
#include "persons.h"
#include "reaction.h"

/* Longer texts tell what their numbers are. */
enum { SHORT_TEXT = 16, LOWEST_AGAIN = 40 };

/* A battery's, or a time's, whether or not it is named. */
static const char otherwise[] = " left remaining queda quedan both each ambas cada "
                                "half full llena llenas vacia vacias ";
static const char of_time[] = " in by for until hasta para por durante until til # ";
/* What goes on behind a value; another word makes it an address, a name, a count. */
static const char goes_on[] =
    " % s ish percent percento por porciento ciento pct now and but so y pero o or still again "
    "today "
    "tonight at on with when while after even only just then right rn i im we its it that this is "
    "are was what should do does can help please oh ok okay no not too que ahora ahorita ya "
    "todavia sigue otra vez con cuando despues aun apenas esta es bajando subiendo baja sube "
    "dropping falling going down up dice marca says said reads mi me se le ayuda por ";

/* "In 40", "by 40": a time; "va por 75" tells how far it fell. */
static bool
is_time(const struct tokens *tokens, size_t at)
{
    return at > 0 && token_among(tokens, at - 1, of_time) &&
           !(at > 1 && token_is(tokens, at - 1, "por") &&
             token_among(tokens, at - 2, " va anda iba vamos "));
}

static bool
is_told_again(const struct tokens *tokens, size_t at, size_t after)
{
    return !oximeter_is_of_thing(tokens, at) && !is_time(tokens, at) &&
           (after >= tokens->count || tokens->list[after].kind != TOKEN_WORD ||
            token_among(tokens, after, goes_on) || token_among(tokens, after, person_words));
}

bool
oximeter_read_again(const char *text, int *percent)
{
    void *scratch = memory_must(talloc_new(NULL));
    struct tokens tokens = tokens_read(scratch, reaction_without_copy(scratch, text));
    bool is_else = tokens.count > SHORT_TEXT || tokens_have(&tokens, oximeter_hours_asked) ||
                   tokens_any_among(&tokens, 0, otherwise);
    size_t at = 0, taken;
    int lowest = 0;

    while (at < tokens.count && !is_else) {
        int value = oximeter_value(&tokens, at, &taken);
        size_t after = at + (taken == 0 ? 1 : taken);

        if (value >= LOWEST_AGAIN && (lowest == 0 || value < lowest) &&
            is_told_again(&tokens, at, after)) {
            lowest = value;
        }
        at = after;
    }
    talloc_free(scratch);
    if (lowest > 0) {
        *percent = lowest;
    }
    return lowest > 0;
}
