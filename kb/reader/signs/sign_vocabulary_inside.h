/* What a vocabulary is made of. Private to sign_vocabulary.c, sign_hear.c and sign_slips.c. */
#ifndef SIGN_VOCABULARY_INSIDE_H
#define SIGN_VOCABULARY_INSIDE_H

#include "sign_vocabulary.h"
#include "spelling.h"

/* A spelling of the phrases. Forms of one word share a key; two words of one stem do not. */
struct sign_spelling {
    const char *text, *stem, *key;
    size_t length; /* of the text */
    int id;        /* of the key, when closed */
    bool may_slip;
    uint32_t next; /* of the same hash of the stem: place + 1; 0 is the last */
};

enum { STEM_HEADS = 4096 };

/* How a spelling sounds (sign_slips.h). */
struct sign_sound {
    const char *sound;
    int id;
};

/* All that there is to know of a word that the content has, found by how it is spelt. While the
 * vocabulary is open, only `spelt` and whose word it is. */
struct sign_form {
    const char *spelt, *text, *stem; /* see struct heard_word */
    unsigned roles;
    int id; /* of the stem, or -1; of a foreign word always -1 */
    bool may_pair;
    bool is_foreign;     /* none of this language's words */
    bool is_shared;      /* a word of this language that another one has too */
    bool is_spelt_right; /* it stands in what the office wrote, or in a list of words */
};

/* Several words that are one entry of a class. */
enum { RUN_WORDS_MAX = 5 };
struct sign_run {
    const char *keys[RUN_WORDS_MAX];
    int ids[RUN_WORDS_MAX]; /* when closed */
    int count;
    const char *key;
    int id;
};

/* An entry and the class that it belongs to. */
struct sign_member {
    const char *entry, *class;
    int entry_id, class_id; /* when closed */
    bool is_person;
};

struct vocabulary {
    enum language language;
    const struct shorthand *shorthand;
    struct roles *roles;
    struct sign_spelling *spellings; /* by text, each once, when closed */
    size_t spelling_count;
    uint32_t stem_heads[STEM_HEADS]; /* by hash of the stem: place of a spelling + 1 */
    const char *
        *keys; /* of words, classes and runs by bytes, each once, when closed; index is id */
    size_t key_count;
    struct sign_form *forms; /* open addressing by `spelt` */
    uint32_t form_mask, form_count;
    uint32_t right_count;      /* of the forms, those spelt right */
    struct spelling slips;     /* the spellings that may slip, and their stems, when closed */
    int *slip_ids;             /* of each of its words: the id that it stands for */
    struct sign_sound *sounds; /* by sound, when closed */
    size_t sound_count;
    struct sign_run *runs; /* by the id of their first word, longest first, when closed */
    size_t run_count;
    struct sign_member *members; /* by entry id, when closed */
    size_t member_count;
    bool is_closed;
};

/* What is known of a word of `length` bytes spelt so, or NULL: the content has no such word. */
const struct sign_form *vocabulary_form(const struct vocabulary *vocabulary, const char *spelt,
                                        size_t length);

/* True for forms of one word ("stop", "stopped"), false for two of one stem ("several",
 * "severed"). Spanish has too many endings to tell. */
bool vocabulary_is_kin(const struct vocabulary *vocabulary, const char *one, const char *other);

/* The first spelling with this stem that is a form of the word, or NULL. */
struct sign_spelling *vocabulary_kin(const struct vocabulary *vocabulary, const char *text,
                                     const char *stem);

/* The id of a word by its stem, if the signs have a form of that very word; else -1. */
int vocabulary_id_of(const struct vocabulary *vocabulary, const char *text, const char *stem);

/* Makes the table of forms, empty. */
void vocabulary_open_forms(struct vocabulary *vocabulary);

/* Fills the forms, when all else is closed. */
void vocabulary_close_forms(struct vocabulary *vocabulary, struct workspace *workspace);

/* The spelling of these `length` bytes, or NULL. */
const struct sign_spelling *vocabulary_spelling(const struct vocabulary *vocabulary,
                                                const char *text, size_t length);

/* Takes a heard word for this id and for the classes that it belongs to. */
void vocabulary_mean(const struct vocabulary *vocabulary, struct heard_word *word, int id);

#endif
