#include "tokens.h"

#include <stdint.h>
#include <string.h>

#include <utf8proc.h>

#include "memory.h"
#include "number_words.h"

enum { FOLDED_MAX = 16, WORD_MAX = 64 };

/* One character of the text, folded to what words are made of. */
struct folded {
    char text[FOLDED_MAX]; /* UTF-8, may be "" for a mark that only combines */
    size_t length;         /* bytes of the original */
    bool letter, digit, blank;
};

static struct folded
fold(const char *text, size_t length)
{
    const utf8proc_option_t how = UTF8PROC_CASEFOLD | UTF8PROC_STRIPMARK | UTF8PROC_COMPAT |
                                  UTF8PROC_DECOMPOSE | UTF8PROC_IGNORE;
    struct folded folded = {.length = 1, .blank = true};
    utf8proc_int32_t code, out[FOLDED_MAX / 4];
    utf8proc_ssize_t read, count, i;
    utf8proc_category_t category;
    size_t used = 0;
    int last = UTF8PROC_BOUNDCLASS_START;

    read = utf8proc_iterate((const utf8proc_uint8_t *)text, (utf8proc_ssize_t)length, &code);
    if (read <= 0) {
        return folded; /* a byte that is no character parts words */
    }
    folded.length = (size_t)read;
    count = utf8proc_decompose_char(code, out, FOLDED_MAX / 4, how, &last);
    if (count < 0 || count > FOLDED_MAX / 4) {
        return folded;
    }
    for (i = 0; i < count; i++) {
        used += (size_t)utf8proc_encode_char(out[i], (utf8proc_uint8_t *)folded.text + used);
    }
    folded.text[used] = '\0';
    category = count > 0 ? utf8proc_category(out[0]) : UTF8PROC_CATEGORY_MN;
    folded.letter = category <= UTF8PROC_CATEGORY_LO || category == UTF8PROC_CATEGORY_MN;
    folded.digit = count == 1 && out[0] >= '0' && out[0] <= '9';
    folded.blank = count > 0 && (category >= UTF8PROC_CATEGORY_ZS || out[0] < ' ');
    folded.letter = folded.letter && category != UTF8PROC_CATEGORY_CN;
    return folded;
}

/* Fractions that are one character are read as their words: "2\u00bd" is "2", "half". */
static const char *
fraction_word(const char *text)
{
    if (strncmp(text, "\xc2\xbd", 2) == 0) {
        return "half";
    }
    if (strncmp(text, "\xc2\xbc", 2) == 0) {
        return "quarter";
    }
    return strncmp(text, "\xc2\xbe", 2) == 0 ? "threequarters" : NULL;
}

static bool
is_apostrophe(const char *text)
{
    return text[0] == '\'' || strncmp(text, "\xe2\x80\x99", 3) == 0 ||
           strncmp(text, "\xe2\x80\x98", 3) == 0;
}

static bool
is_digit(char byte)
{
    return byte >= '0' && byte <= '9';
}

/* Reads digits with "1,000" and one decimal point or comma; returns the bytes taken. */
static size_t
read_digits(const char *text, int *thousandths)
{
    long long value = 0;
    size_t at = 0;
    int places = 3;

    for (;;) {
        if (is_digit(text[at])) {
            value = value < TOKEN_NUMBER_MAX ? value * 10 + (text[at] - '0') : value;
        } else if (text[at] != ',' || at == 0 || !is_digit(text[at + 1]) ||
                   !is_digit(text[at + 2]) || !is_digit(text[at + 3]) || is_digit(text[at + 4])) {
            break;
        }
        at++;
    }
    if ((text[at] == '.' || text[at] == ',') && is_digit(text[at + 1])) {
        for (at++; is_digit(text[at]); at++) {
            if (places > 0) {
                value = value < TOKEN_NUMBER_MAX ? value * 10 + (text[at] - '0') : value;
                places--;
            }
        }
    }
    while (places-- > 0 && value < TOKEN_NUMBER_MAX) {
        value *= 10;
    }
    *thousandths = value < TOKEN_NUMBER_MAX ? (int)value : TOKEN_NUMBER_MAX;
    return at;
}

/*
 * Reads a word: letters, then letters and digits ("o2"), but a unit written onto a number ends
 * where the next number begins ("2h30"); apostrophes inside vanish.
 */
static size_t
read_word(void *arena, const char *text, size_t length, bool is_unit, const char **word)
{
    char folded[WORD_MAX + FOLDED_MAX];
    size_t at = 0, used = 0;

    while (at < length) {
        struct folded next = fold(text + at, length - at);
        bool inside = at > 0 && is_apostrophe(text + at);

        if (!inside && !(next.letter || (next.digit && at > 0 && !is_unit))) {
            break;
        }
        if (fraction_word(text + at) != NULL) {
            break;
        }
        if (!inside && used < WORD_MAX) {
            size_t bytes = strlen(next.text);

            memcpy(folded + used, next.text, bytes);
            used += bytes;
        }
        at += next.length;
    }
    *word = memory_copy_n(arena, folded, used);
    return at;
}

static size_t
read_token(void *arena, const char *text, size_t length, bool after_number, struct token *token)
{
    struct folded first = fold(text, length);
    const char *fraction = fraction_word(text);

    if (fraction != NULL) {
        token->kind = TOKEN_WORD;
        token->text = fraction;
        return 2;
    }
    if (is_digit(text[0])) {
        size_t taken = read_digits(text, &token->thousandths);

        token->kind = TOKEN_NUMBER;
        token->text = memory_copy_n(arena, text, taken);
        return taken;
    }
    if (first.letter && first.text[0] != '\0') {
        token->kind = TOKEN_WORD;
        return read_word(arena, text, length, after_number && token->glued, &token->text);
    }
    token->kind = TOKEN_SIGN;
    token->text = memory_copy(arena, first.text);
    return first.length;
}

struct tokens
tokens_read(void *arena, const char *text)
{
    size_t length = strnlen(text, TOKENS_TEXT_MAX), at = 0;
    char *copy = memory_copy_n(arena, text, length); /* so that reading ahead meets the NUL */
    struct tokens tokens = {0};
    bool glued = false;

    while (at < length) {
        struct folded next = fold(copy + at, length - at);

        if (next.blank || next.text[0] == '\0') {
            at += next.length;
            glued = false;
            continue;
        }
        tokens.list = memory_grow(arena, struct token, tokens.list, tokens.count);
        tokens.list[tokens.count] = (struct token){.glued = glued, .start = at};
        at += read_token(arena, copy + at, length - at,
                         tokens.count > 0 && tokens.list[tokens.count - 1].kind == TOKEN_NUMBER,
                         &tokens.list[tokens.count]);
        tokens.list[tokens.count++].end = at;
        glued = true;
    }
    return tokens;
}

bool
token_is(const struct tokens *tokens, size_t at, const char *text)
{
    return at < tokens->count && strcmp(tokens->list[at].text, text) == 0;
}

bool
token_is_word(const struct tokens *tokens, size_t at, const char *word, size_t length)
{
    const char *text;

    if (at >= tokens->count || tokens->list[at].text[0] != word[0]) { /* most differ there */
        return false;
    }
    text = tokens->list[at].text;
    return strncmp(text, word, length) == 0 && text[length] == '\0';
}

bool
token_among(const struct tokens *tokens, size_t at, const char *words)
{
    const char *found = words;
    size_t length;

    if (at >= tokens->count || tokens->list[at].text[0] == '\0') {
        return false;
    }
    length = strlen(tokens->list[at].text);
    while ((found = strstr(found, tokens->list[at].text)) != NULL) {
        if (found > words && found[-1] == ' ' && found[length] == ' ') {
            return true;
        }
        found++;
    }
    return false;
}

bool
tokens_any_among(const struct tokens *tokens, size_t from, const char *words)
{
    return tokens_between_among(tokens, from, tokens->count, words);
}

bool
tokens_between_among(const struct tokens *tokens, size_t from, size_t to, const char *words)
{
    while (from < to && !token_among(tokens, from, words)) {
        from++;
    }
    return from < to;
}

bool
tokens_words_among(const struct tokens *tokens, const char *words)
{
    size_t i;

    for (i = 0; i < tokens->count; i++) {
        if (tokens->list[i].kind == TOKEN_WORD && !token_among(tokens, i, words)) {
            return false;
        }
    }
    return true;
}

/* Takes the word at `at` if it is of this kind; returns the tokens taken. */
static size_t
word_of_kind(const struct tokens *tokens, size_t at, enum number_word_kind kind, int *value)
{
    return at < tokens->count && tokens->list[at].kind == TOKEN_WORD &&
                   number_word(tokens->list[at].text, value) == kind
               ? 1
               : 0;
}

/* Below a hundred: "five", "eighty-five", "ochenta y cinco". */
static size_t
below_hundred(const struct tokens *tokens, size_t at, int *value)
{
    size_t taken, next;
    int unit = 0;

    if (word_of_kind(tokens, at, NUMBER_WORD_UNIT, value) > 0 ||
        word_of_kind(tokens, at, NUMBER_WORD_TEEN, value) > 0) {
        return 1;
    }
    taken = word_of_kind(tokens, at, NUMBER_WORD_TENS, value);
    if (taken == 0) {
        return 0;
    }
    next = at + taken + (token_among(tokens, at + taken, " y - ") ? 1 : 0);
    if ((word_of_kind(tokens, next, NUMBER_WORD_UNIT, &unit) > 0 && unit >= 1) ||
        (token_among(tokens, next, " un una ") && token_is(tokens, next - 1, "y"))) {
        *value += unit >= 1 ? unit : 1;
        return next + 1 - at;
    }
    return taken;
}

/* Below a thousand: "a hundred and ten", "fifteen hundred", "ciento noventa". */
static size_t
below_thousand(const struct tokens *tokens, size_t at, int *value)
{
    size_t taken = below_hundred(tokens, at, value), more;
    int hundred, rest;

    if (taken == 0 && token_is(tokens, at, "a") &&
        word_of_kind(tokens, at + 1, NUMBER_WORD_HUNDRED, &hundred) > 0) {
        *value = 1;
        taken = 1;
    }
    if (taken == 0 && at > 0 && token_is(tokens, at - 1, "a")) { /* "at a" went before */
        taken = word_of_kind(tokens, at, NUMBER_WORD_HUNDRED, value);
    } else if (taken > 0) {
        more = word_of_kind(tokens, at + taken, NUMBER_WORD_HUNDRED, &hundred);
        if (more == 0) {
            return taken;
        }
        *value *= hundred;
        taken += more;
    } else {
        taken = word_of_kind(tokens, at, NUMBER_WORD_SUM, value);
    }
    if (taken == 0) {
        return 0;
    }
    more = token_is(tokens, at + taken, "and") ? 1 : 0;
    more = below_hundred(tokens, at + taken + more, &rest) > 0
               ? more + below_hundred(tokens, at + taken + more, &rest)
               : 0;
    if (more > 0 && rest == 1 &&
        token_among(tokens, at + taken + more, " at is says has thats with full half dead ")) {
        more = 0; /* "one at a hundred and one at fifty" */
    }
    *value += more > 0 ? rest : 0;
    return taken + more;
}

size_t
tokens_number(const struct tokens *tokens, size_t at, bool article_counts, int *thousandths)
{
    size_t taken, more;
    int value = 1, thousand, rest;

    if (at >= tokens->count) {
        return 0;
    }
    if (tokens->list[at].kind == TOKEN_NUMBER) {
        *thousandths = tokens->list[at].thousandths;
        return 1;
    }
    taken = below_thousand(tokens, at, &value);
    more = taken == 0 && token_is(tokens, at, "a") ? 1 : taken;
    if (word_of_kind(tokens, at + more, NUMBER_WORD_THOUSAND, &thousand) > 0) {
        value = (more == 0 ? 1 : value) * thousand;
        taken = more + 1;
        more = below_thousand(tokens, at + taken, &rest);
        value += more > 0 ? rest : 0;
        taken += more;
    }
    if (taken > 1 || (taken == 1 && !token_among(tokens, at, " one uno "))) {
        *thousandths = value * 1000;
        return taken;
    }
    if (token_among(tokens, at, " a an one un una uno ")) {
        *thousandths = 1000;
        return article_counts ? 1 : 0;
    }
    return 0;
}

/* False if the phrase begins with another letter than the token: most do. */
static bool
may_begin(const struct tokens *tokens, size_t at, const char *phrase)
{
    return phrase[0] == '*' || (at < tokens->count && tokens->list[at].text[0] == phrase[0]);
}

/* The end of the first of some phrases. */
static size_t
phrase_length(const char *phrases)
{
    const char *end = strchr(phrases, '|');

    return end == NULL ? strlen(phrases) : (size_t)(end - phrases);
}

/* How many tokens one phrase takes at one place, 0 if it is not there; `length` bytes of words
 * parted by single blanks. */
static size_t
phrase_at(const struct tokens *tokens, size_t at, const char *phrase, size_t length)
{
    size_t skip = 0, first = at;

    while (length > 0) {
        size_t word = 0;

        while (word < length && phrase[word] != ' ') {
            word++;
        }
        if (word == 1 && phrase[0] == '*') {
            skip = 2;
        } else {
            while (skip > 0 && at < tokens->count && !token_is_word(tokens, at, phrase, word)) {
                at++;
                skip--;
            }
            if (!token_is_word(tokens, at, phrase, word)) {
                return 0;
            }
            at++;
            skip = 0;
        }
        phrase += word;
        length -= word;
        if (length > 0) {
            phrase++;
            length--;
        }
    }
    return at - first;
}

/* The bit of a first letter; other signs share them. */
static uint32_t
letter_bit(const char *word)
{
    return (uint32_t)1 << ((unsigned char)*word & 31);
}

bool
tokens_have(const struct tokens *tokens, const char *phrases)
{
    uint32_t letters = letter_bit("*");
    size_t at;

    for (at = 0; at < tokens->count; at++) {
        letters |= letter_bit(tokens->list[at].text);
    }
    while (*phrases != '\0') {
        size_t length = phrase_length(phrases);
        bool may_be_there = (letters & letter_bit(phrases)) != 0; /* most are not */

        for (at = 0; may_be_there && at < tokens->count; at++) {
            if (may_begin(tokens, at, phrases) && phrase_at(tokens, at, phrases, length) > 0) {
                return true;
            }
        }
        phrases += length + (phrases[length] == '|' ? 1 : 0);
    }
    return false;
}

size_t
tokens_phrase_at(const struct tokens *tokens, size_t at, const char *phrases)
{
    size_t longest = 0;

    while (*phrases != '\0') {
        size_t length = phrase_length(phrases);
        size_t taken = may_begin(tokens, at, phrases) ? phrase_at(tokens, at, phrases, length) : 0;

        longest = taken > longest ? taken : longest;
        phrases += length + (phrases[length] == '|' ? 1 : 0);
    }
    return longest;
}

struct tokens
tokens_without(void *arena, const struct tokens *tokens, const char *phrases)
{
    struct tokens rest = {.list = memory_array(arena, struct token, tokens->count + 1)};
    size_t at = 0;

    while (at < tokens->count) {
        size_t taken = tokens_phrase_at(tokens, at, phrases);

        if (taken == 0) {
            rest.list[rest.count++] = tokens->list[at++];
        }
        at += taken;
    }
    return rest;
}
