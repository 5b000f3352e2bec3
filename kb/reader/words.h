/*
 * Reading a text: from the bytes of a stranger to words that can be compared.
 *
 * Unicode clean-up (utf8proc: NFKC, case folding, marks stripped, ignorables dropped, curly quotes
 * and dashes made plain) and word forms (libstemmer); then texting shorthand (shorthand.h) and
 * spelling repair (spelling.h). The same pipeline serves topics and signs, so a word looks the
 * same to both.
 */
#ifndef WORDS_H
#define WORDS_H

#include <stdbool.h>
#include <stddef.h>

enum language { LANGUAGE_EN, LANGUAGE_ES, LANGUAGE_COUNT };

/* "en", "es" and back; language_named() returns LANGUAGE_COUNT for anything else. */
const char *language_code(enum language language);
enum language language_named(const char *code);

/*
 * Stemmer handles: mutable, so they come in as an argument and are never shared between threads.
 * Free with workspace_free(), which accepts NULL.
 */
struct workspace;
struct workspace *workspace_new(void);
void workspace_free(struct workspace *workspace);

struct word {
    const char *text;  /* cleaned: lower case, no marks; digits kept; % $ & are words */
    const char *stem;  /* its stem in the language that it was read for */
    size_t start, end; /* bytes [start, end) of the original text that it came from */
    int sentence;      /* counts up at . ! ? ; and line ends */
    bool comma_before; /* a comma, colon, dash or bracket stands between it and the word before */
};

struct words {
    const struct word *list;
    size_t count;
    enum language language; /* the language whose stems these are */
};

/* Most bytes of a text that are read; a longer text is cut at a character border. */
enum { WORDS_TEXT_MAX = 4096 };

/*
 * Reads a text as `language`. Any bytes may come in: what is not UTF-8 is skipped. Contractions
 * lose their apostrophe ("can't" is "cant"); a number keeps its inner signs (2.5, 9:30, 1/2) and
 * loses a unit written onto it ("30min" is two words). Everything returned lives in `arena`.
 * Without a workspace (NULL) no stems are made: each word's stem is its text.
 */
struct words words_read(void *arena, struct workspace *workspace, const char *text,
                        enum language language);

/* The stem of one cleaned word, as words_read() would give it. */
const char *words_stem(void *arena, struct workspace *workspace, const char *text,
                       enum language language);

/* The likelier language of a text by its commonest words and letters: false, nothing set, if they
 * do not tell. */
bool words_tell_language(void *arena, const char *text, enum language *language);
/* The same of words that were read, without the letters. */
bool words_told_language(const struct words *words, enum language *language);
/* The same of a text; EN if nothing tells. */
enum language words_language(void *arena, const char *text);

/*
 * True if a text is in a language or script that is none of ours: most letters of another script,
 * more words of another language than of ours, or at least four words of which hardly one is known
 * (`is_known`). A name, a number, "ok", thanks or an emoji is not foreign.
 */
typedef bool word_is_known(const void *user, const char *word);
bool words_are_foreign(void *arena, const char *text, word_is_known *is_known, const void *user);

#endif
