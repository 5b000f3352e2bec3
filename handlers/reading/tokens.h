/*
 * A text as tokens for the readers of numbers: words folded (lower case, no marks, no apostrophes),
 * numbers with their value, everything else as signs of one character. Pure.
 *
 * kb's words_read() is for meaning and drops most punctuation; here "3/4", "12:30" and "2.5"
 * matter.
 */
#ifndef TOKENS_H
#define TOKENS_H

#include <stdbool.h>
#include <stddef.h>

enum token_kind { TOKEN_WORD, TOKEN_NUMBER, TOKEN_SIGN };

struct token {
    enum token_kind kind;
    const char *text;  /* folded; of a number its digits as written */
    int thousandths;   /* of a number: 2.5 is 2500; at most TOKEN_NUMBER_MAX */
    bool glued;        /* no blank between it and the token before */
    bool used;         /* a reader has taken it; starts false */
    size_t start, end; /* bytes [start, end) of the text */
};

struct tokens {
    struct token *list;
    size_t count;
};

enum { TOKEN_NUMBER_MAX = 1000000000, TOKENS_TEXT_MAX = 4096 };

/* Any bytes may come in; past TOKENS_TEXT_MAX the text is not read. Lives in `arena`. */
struct tokens tokens_read(void *arena, const char *text);

/* True if token `at` is there and is this word or sign. */
bool token_is(const struct tokens *tokens, size_t at, const char *text);

/* The same for a word of `length` bytes. */
bool token_is_word(const struct tokens *tokens, size_t at, const char *word, size_t length);

/* The same for any of several, in one string with a blank before and after each: " min mins ". */
bool token_among(const struct tokens *tokens, size_t at, const char *words);

/* True if any token from `from` on is among them; or any of [from, to), which may reach past the
 * end. */
bool tokens_any_among(const struct tokens *tokens, size_t from, const char *words);
bool tokens_between_among(const struct tokens *tokens, size_t from, size_t to, const char *words);

/* True if no word (numbers and signs aside) is another than these. */
bool tokens_words_among(const struct tokens *tokens, const char *words);

/* So many tokens before `at`, or the first. */
static inline size_t
tokens_back(size_t at, size_t by)
{
    return at > by ? at - by : 0;
}

/*
 * The number at `at`, in digits or in English or Spanish words ("eighty five", "ochenta y cinco",
 * "ciento noventa", "two thousand"), in thousandths; returns how many tokens tell it, 0 if it is no
 * number. "a", "one" and "una" alone count as 1 only when `article_counts`.
 */
size_t tokens_number(const struct tokens *tokens, size_t at, bool article_counts, int *thousandths);

/*
 * True if the text has this phrase: its words in order, "*" for up to two words in between, "|"
 * between phrases: "how long|cuanto * dura".
 */
bool tokens_have(const struct tokens *tokens, const char *phrases);

/* How many tokens the longest of these phrases takes at one place, 0 if none stands there. */
size_t tokens_phrase_at(const struct tokens *tokens, size_t at, const char *phrases);

/* The tokens that none of these phrases (without "*") takes, in `arena`; of several at one place
 * the longest takes its own. */
struct tokens tokens_without(void *arena, const struct tokens *tokens, const char *phrases);

#endif
