/*
 * The clause around a word: what is said there is said of it, and not what stands in the next one.
 * Pure.
 */
#ifndef CLAUSE_H
#define CLAUSE_H

#include "tokens.h"

/* Tokens [from, end) that no sign, "and" or "but" divides, around `at`. */
struct clause {
    size_t from, end;
};
struct clause clause_around(const struct tokens *tokens, size_t at);
bool clause_has(const struct tokens *tokens, struct clause clause, const char *words);
/* One of the phrases, parted by |, begins in it. */
bool clause_tells(const struct tokens *tokens, struct clause clause, const char *phrases);
/* A denial (yes_no_denies_at()) stands in it. */
bool clause_denies(const struct tokens *tokens, struct clause clause);

#endif
