#include "clause.h"

#include "yes_no.h"

struct clause
clause_around(const struct tokens *tokens, size_t at)
{
    static const char divides[] = " . , ; ! ? : and y but pero so now ahora ";
    struct clause clause = {at, at};

    while (clause.from > 0 && !token_among(tokens, clause.from - 1, divides)) {
        clause.from--;
    }
    while (clause.end < tokens->count && !token_among(tokens, clause.end, divides)) {
        clause.end++;
    }
    return clause;
}

bool
clause_has(const struct tokens *tokens, struct clause clause, const char *words)
{
    return tokens_between_among(tokens, clause.from, clause.end, words);
}

bool
clause_tells(const struct tokens *tokens, struct clause clause, const char *phrases)
{
    size_t i;

    for (i = clause.from; i < clause.end; i++) {
        if (tokens_phrase_at(tokens, i, phrases) > 0) {
            return true;
        }
    }
    return false;
}

bool
clause_denies(const struct tokens *tokens, struct clause clause)
{
    size_t i;

    for (i = clause.from; i < clause.end; i++) {
        if (yes_no_denies_at(tokens, i)) {
            return true;
        }
    }
    return false;
}
