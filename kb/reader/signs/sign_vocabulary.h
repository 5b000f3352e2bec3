/*
 * The words of all signs of one language, and how a word of a text is taken for one of them: by its
 * stem, by a slip of the finger or the ear (sign_slips.h), as part of several words that are an
 * entry of a class, or for its class. Private to the library.
 */
#ifndef SIGN_VOCABULARY_H
#define SIGN_VOCABULARY_H

#include <stdbool.h>
#include <stddef.h>

#include "fault.h"
#include "sign_classes.h"
#include "sign_roles.h"
#include "words.h"

/* One word of a text, ready to be compared. */
enum { HEARD_MEANINGS_MAX = 16 };
struct heard_word {
    const char *spelt;                /* as the text has it */
    const char *text;                 /* as it sounds (sound.h) */
    const char *stem;                 /* of that */
    unsigned roles;                   /* sum of enum role */
    int meanings[HEARD_MEANINGS_MAX]; /* ids of the vocabulary that it may stand for */
    int more[HEARD_MEANINGS_MAX];     /* words after this one that the meaning takes as well */
    int meaning_count;
    size_t start, end; /* bytes of the text */
    int sentence;
    bool comma_before;
    int run_end;    /* place of the last of the several words that begin here; its own if none */
    bool is_in_run; /* it belongs to several words that begin before it */
};

struct heard {
    struct heard_word *list;
    size_t count;
};

/* Texts are heard with this shorthand expanded; NULL for none; it must outlive the vocabulary. */
struct shorthand;
struct vocabulary;
struct vocabulary *vocabulary_new(void *arena, enum language language,
                                  const struct shorthand *shorthand);

/*
 * While it is being built: a word of a phrase (slips count as the word only if `may_slip`); a
 * class; and a word that the content has. A class is added once however often it is named. Returns
 * 0, or -1 with *refused set to the entry that has no words.
 */
const char *vocabulary_add(struct vocabulary *vocabulary, const struct heard_word *word,
                           bool may_slip);
struct class_added {
    const char *key;
    bool has_person; /* an entry of it is a person */
};
int vocabulary_add_class(struct vocabulary *vocabulary, struct workspace *workspace,
                         const struct sign_class *class, struct class_added *added,
                         const char **refused);
enum word_source {
    WORD_OF_PHRASE, /* it may be a misspelling that a phrase lists */
    WORD_OF_OFFICE, /* spelt right */
    WORD_FOREIGN    /* another language's */
};
void vocabulary_know(struct vocabulary *vocabulary, const char *text, enum word_source source);

/* Ends the building; only now may the functions below be called. */
void vocabulary_close(struct vocabulary *vocabulary, struct workspace *workspace);

enum language vocabulary_language(const struct vocabulary *vocabulary);
const struct shorthand *vocabulary_shorthand(const struct vocabulary *vocabulary);

/* How many ids there are: 0 to count - 1. */
int vocabulary_count(const struct vocabulary *vocabulary);

/* True for a word that the content uses as it stands, or that stands in a phrase. */
bool vocabulary_has(const struct vocabulary *vocabulary, void *arena, const char *text);

/* True for a word that only another language has. */
bool vocabulary_is_foreign(const struct vocabulary *vocabulary, const char *text);

/* True for one that was taken as rightly spelt. */
bool vocabulary_has_right(const struct vocabulary *vocabulary, const char *text);

/* The id of a key, or -1. */
int vocabulary_id(const struct vocabulary *vocabulary, const char *key);

/*
 * Hears a text that was read in any language, with or without stems: shorthand, two words that are
 * also one made one, their sound, roles and meanings looked up, blanks mended. Lives in `arena`.
 * Without meanings before vocabulary_close().
 */
struct heard vocabulary_hear(const struct vocabulary *vocabulary, void *arena,
                             struct workspace *workspace, struct words words);

/* The same for a text that was not read yet. */
struct heard vocabulary_hear_text(const struct vocabulary *vocabulary, void *arena,
                                  struct workspace *workspace, const char *text);

#endif
