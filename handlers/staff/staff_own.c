#include "staff_own.h"

#include <string.h>

#include "found.h"
#include "memory.h"
#include "staff_meant.h"

static const char themselves[] = " i im ive ill id me my mine myself we weve us our ourselves ";
static const char others[] = " you your u ur youre youve he hes him his himself she shes her hers "
                             "herself they theyre theyve them their somebody someone anybody "
                             "anyone everybody everyone nobody ";
/* Somebody whom no alert is about. */
static const char newcomers[] = " guest guests customer visitor neighbor coworker colleague "
                                "stranger someone somebody kid child baby man woman "
                                "lady guy boy girl tourist person people ";
static const char kin[] = " wife husband partner mom mum mother dad father son daughter kid kids "
                          "baby brother sister friend coworker colleague boss ";
/* "She told me that ..." goes on with what she said. */
static const char says_to[] =
    " told tell tells asked ask asks texted texts called calls says said ";
/* No longer of who was spoken of before: "im coming, if it gets worse call 911". */
static const char begins_anew[] = " if when whenever in should ";

static bool
begins_of_themselves(const struct tokens *tokens, size_t at)
{
    return token_among(tokens, at, themselves) &&
           !(token_is(tokens, at, "me") && at > 0 && token_among(tokens, at - 1, says_to));
}

static size_t
end_of_own(const struct asked *whole, size_t at)
{
    const struct tokens *tokens = &whole->tokens;

    while (at < tokens->count && !token_among(tokens, at, others) &&
           !token_among(tokens, at, " . ! ? ; ") && !staff_names_renter(whole, at) &&
           !(token_is(tokens, at, ",") && token_among(tokens, at + 1, begins_anew))) {
        at++;
    }
    return at;
}

/* "We cant get to you" */
static bool
is_done_to_another(const struct tokens *tokens, size_t end)
{
    return end < tokens->count && token_among(tokens, end, others) &&
           token_among(tokens, end - 1, " to for with at by reach see help ");
}

/* Who says so has help called for another, or does so now. */
static const char calls_help[] = " called calling call rang phoned sent sending send with waiting "
                                 "coming near way ";

/* "A guest", "my wife": what follows is told of them, "he" and "she" too. */
static bool
begins_of_newcomer(const struct tokens *tokens, size_t at)
{
    static const char of_theirs[] = " your ur his her their the ";

    return token_among(tokens, at, newcomers) ||
           (token_among(tokens, at, kin) && (at == 0 || !token_among(tokens, at - 1, of_theirs)));
}

static size_t
end_of_newcomer(const struct tokens *tokens, size_t at)
{
    while (at < tokens->count && !token_among(tokens, at, " . ! ? ; ") &&
           !token_among(tokens, at, begins_anew)) {
        at++;
    }
    return at;
}

/* What stands there shows a sign, and not only that of who calls for help. */
static bool
shows_sign(const struct asked *whole, size_t at, size_t end)
{
    const struct tokens *tokens = &whole->tokens;
    size_t start = tokens->list[at].start;
    size_t stop = end < tokens->count ? tokens->list[end].start : strlen(whole->text);
    const char *own = memory_copy_n(whole->arena, whole->text + start, stop - start);
    struct sign_match matches[SIGNS_MAX];
    size_t count =
        kb_find_signs(whole->context->kb, whole->context->workspace, own, matches, SIGNS_MAX);
    size_t i;

    for (i = 0; i < count; i++) {
        if (strcmp(matches[i].sign->id, "asks-emergency") != 0 ||
            !tokens_between_among(tokens, at, end, calls_help)) {
            return true;
        }
    }
    return false;
}

bool
staff_shows_sign(const struct asked *whole, size_t at)
{
    return at < whole->tokens.count && shows_sign(whole, at, whole->tokens.count);
}

bool
staff_tells_own(const struct asked *whole, size_t at)
{
    const struct tokens *tokens = &whole->tokens;

    while (at < tokens->count) {
        size_t end = at + 1;

        if (begins_of_newcomer(tokens, at) &&
            shows_sign(whole, at, end_of_newcomer(tokens, at + 1))) {
            return true;
        }
        if (token_is(tokens, at, "myself") && shows_sign(whole, 0, tokens->count)) {
            return true;
        }
        if (begins_of_themselves(tokens, at)) {
            end = end_of_own(whole, at + 1);
            if (!is_done_to_another(tokens, end) && shows_sign(whole, at, end)) {
                return true;
            }
        }
        at = end;
    }
    return false;
}
